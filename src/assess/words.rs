//! Lengths as findings say them: in the book's own units, the other system beside them.

use crate::finding::{Phrase, Piece, Say, Value, phrase};
use crate::ledger::Moment;
use crate::site::plan::HoleIs;
use crate::site::{BehindIs, Spot};
use crate::units::{Length, LengthRange, System};
use crate::vocabulary::Kind;

/// A length in both systems, the book's own first: `30 1/16" (763.6 mm)`.
pub fn say(length: Length, system: System) -> Value {
    Value::Length(length, system)
}

/// The casing of a door or a window.
pub fn casing(of: HoleIs<'_>) -> Phrase {
    match of {
        HoleIs::Door(door) => phrase!("the casing of the door `{}`", door.name.value),
        HoleIs::Window(window) => phrase!("the casing of the window `{}`", window.name.value),
    }
}

/// What stands up behind a counter.
pub fn behind(is: &BehindIs) -> Phrase {
    match is {
        BehindIs::Splash(of) => phrase!("the splash of `{}`", of),
        BehindIs::RaisedBack(of) => phrase!("the raised back of `{}`", of),
        BehindIs::Tile(name) => phrase!("the tile `{}`", name),
        BehindIs::Window(of) => phrase!("the sill and casing of `{}`", of),
    }
}

/// A range of lengths, the book's own units first: `2" to 28"`, `51 mm to 711 mm (2" to 28")`.
pub fn say_range(range: LengthRange, system: System) -> Value {
    Value::Range(range, system)
}

/// What says itself in a word or two of its own.
macro_rules! in_its_own_words {
    ($($of:ty),+ $(,)?) => {
        $(impl Say for $of {
            fn pieces(&self) -> Vec<Piece> {
                Phrase::from(self.to_string()).pieces().to_vec()
            }
        })+
    };
}

in_its_own_words! { Kind, Moment, Spot<'_> }
