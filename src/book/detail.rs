//! Facts that only some kinds have, by the keys that they stand under.

use super::{CabinetEnds, CutOut, DetailName, FitsFronts, Grain, Reveal, Setting};
use crate::source::{Span, Spanned};
use crate::units::{Length, LengthRange, Sides};
use crate::vocabulary::supply::{Airflow, Side, Worded};
use crate::vocabulary::{
    EdgeTrim, Gathers, Mount, Pattern, Pitch, Rating, Shown, ShownField, ShownValue, Since, Words as _,
};

/// A fact of the kind's own, as the book words it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Detail {
    /// Its name.
    pub name: DetailName,
    /// What is written.
    pub value: DetailValue,
    /// Where.
    pub span: Span,
}

/// A type that a fact of the kind's own may have.
pub trait Fact: Sized {
    /// As one of all facts.
    fn value(self) -> DetailValue;

    /// Out of one, if it is of this type.
    fn of(value: &DetailValue) -> Option<&Self>;
}

/// Every type of facts, each with how its words are shown; none for lengths, which pages word in the book's units.
macro_rules! facts {
    ($($(#[$about:meta])* $name:ident: $of:ty, $words:expr;)*) => {
        /// What a fact holds.
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub enum DetailValue {
            $($(#[$about])* $name($of),)*
        }

        $(impl Fact for $of {
            fn value(self) -> DetailValue {
                DetailValue::$name(self)
            }

            fn of(value: &DetailValue) -> Option<&Self> {
                match value {
                    DetailValue::$name(value) => Some(value),
                    _ => None,
                }
            }
        })*

        impl DetailValue {
            /// As written, where it is no length.
            pub fn words(&self) -> Option<String> {
                match self {
                    $(Self::$name(value) => {
                        let words: fn(&$of) -> Option<String> = $words;
                        words(value)
                    })*
                }
            }
        }
    };
}

facts! {
    /// Words.
    Words: String, |words| Some(words.clone());
    /// A number.
    Count: u32, said;
    /// A length.
    Length: Length, |_| None;
    /// A range of lengths.
    Range: LengthRange, |_| None;
    /// Two or three lengths.
    Sides: Sides, |_| None;
    /// Where its front is meant to be.
    Setting: Setting, said;
    /// How a unit is made to be set in.
    CutOut: CutOut, said;
    /// Which sides of cabinets are finished.
    CabinetEnds: CabinetEnds, said;
    /// How the rim of a bowl stands.
    Reveal: Reveal, said;
    /// The fronts that a pull goes on.
    Fits: FitsFronts, said;
    /// The direction of the grain.
    Grain: Grain, said;
    /// The most that is moved.
    Airflow: Worded<Option<Airflow>>, said;
    /// How a bowl is fixed.
    Mount: Worded<Option<Mount>>, said;
    /// How wet the place may be.
    Rating: Worded<Option<Rating>>, said;
    /// The side of an outlet.
    Outlet: Worded<Option<Side>>, said;
    /// The distance between outer holes.
    Spread: Worded<Option<LengthRange>>, said;
    /// The slope that a canopy is made for.
    Slope: Worded<Option<Pitch>>, said;
    /// How it is laid.
    Pattern: Worded<Pattern>, said;
    /// How its edges end.
    EdgeTrim: Worded<EdgeTrim>, said;
}

#[allow(clippy::unnecessary_wraps)]
fn said(value: &impl ToString) -> Option<String> {
    Some(value.to_string())
}

impl<T: Fact> Gathers<T> for Vec<Detail> {
    type Name = DetailName;

    fn gather(&mut self, name: DetailName, value: Spanned<T>) {
        self.push(Detail { name, value: value.value.value(), span: value.span });
    }
}

/// A group of them, each value telling what it is.
impl Shown for Vec<Detail> {
    fn shown(&self) -> ShownValue {
        let field = |detail: &Detail| ShownField::new(detail.name.word(), Since::First, detail.value.shown());
        ShownValue::Group(self.iter().map(field).collect())
    }
}

impl Shown for DetailValue {
    fn shown(&self) -> ShownValue {
        match self {
            Self::Length(length) => length.shown(),
            Self::Range(range) => range.shown(),
            Self::Sides(sides) => ShownValue::Sides(sides.sides().to_vec()),
            words => words.words().shown(),
        }
    }
}
