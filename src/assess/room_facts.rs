//! What is known of a room's clear distances, each with where it comes from.
//!
//! A rule asks here, once: a figure that somebody measured counts before any other.

use crate::assess::fitting::Side;
use crate::book::{Beside, Book, Frontage, Opening, Room};
use crate::source::{Span, Spanned};
use crate::units::Length;

/// A distance, and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fact {
    /// The distance.
    pub value: Length,
    /// Where it is written.
    pub at: Span,
    /// Who says so.
    pub whence: Whence,
}

/// Who says a distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whence {
    /// It stands in the book as measured or planned by hand.
    Written,
}

impl Fact {
    /// Nothing yet, written there.
    pub fn at(at: Span) -> Self {
        Self { value: Length::ZERO, at, whence: Whence::Written }
    }
}

impl From<&Spanned<Length>> for Fact {
    fn from(written: &Spanned<Length>) -> Self {
        Self { value: written.value, at: written.span, whence: Whence::Written }
    }
}

/// The distance that `clearances` calls so; the least, where it stands at several places.
pub fn distance(room: &Room, key: &str) -> Option<Fact> {
    room.clearances.least(key).map(Fact::from)
}

/// The distance that `access` calls so; the least, where it stands at several places.
pub fn for_access(room: &Room, key: &str) -> Option<Fact> {
    room.access.lengths.get(key)?.least().map(Fact::from)
}

/// Whether a room is planned by a standard of access: by its own word, else by the book's.
pub fn planned_for_access(book: &Book, room: &Room) -> bool {
    let profile = room.access_profile.get().or(book.project.access_profile.get());
    profile.is_some_and(|profile| *profile != "none")
}

/// Width and depth of what `clearances` calls so.
pub fn rectangle(room: &Room, key: &str) -> Option<Spanned<(Length, Length)>> {
    room.clearances.sides.get(key).cloned()
}

/// Clear width of each doorway, by its name.
pub fn doorways(room: &Room) -> Vec<(&str, Fact)> {
    room.clearances.doorways.iter().map(|(name, width)| (name.value.as_str(), width.into())).collect()
}

/// Clear floor in front of a fixture of the bath: as `clearances` has it, or at the opening that takes it.
pub fn in_front(room: &Room, fixture: &Fixture) -> Option<Fact> {
    distance(room, fixture.in_front).or_else(|| {
        let openings =
            room.openings.iter().filter(|opening| opening.takes.get().is_some_and(|kind| fixture.is(kind.name)));
        openings.filter_map(|opening| opening.in_front.spanned()).min_by_key(|floor| floor.value).map(Fact::from)
    })
}

/// A fixture of the bath, by the words for it.
#[derive(Clone, Copy, Debug)]
pub struct Fixture {
    /// What it is called.
    pub name: &'static str,
    /// The word of `clearances` for the floor in front of it.
    pub in_front: &'static str,
    /// The kind of opening that takes it, where there is one.
    pub kind: Option<&'static str>,
}

impl Fixture {
    fn is(&self, kind: &str) -> bool {
        self.kind == Some(kind)
    }
}

/// Fixtures that one stands in front of.
pub const FIXTURES: [Fixture; 5] = [
    Fixture { name: "toilet", in_front: "in front of toilet", kind: Some("toilet") },
    Fixture { name: "bidet", in_front: "in front of bidet", kind: None },
    Fixture { name: "basin", in_front: "in front of basin", kind: None },
    Fixture { name: "tub", in_front: "in front of tub", kind: Some("bathtub") },
    Fixture { name: "shower", in_front: "in front of shower", kind: None },
];

/// Counter that can be worked at, counted where it is deep enough and free enough above: its length in
/// all, and how much was left out.
pub fn frontage(room: &Room, deep: Length, free: Length) -> Option<(Fact, Length)> {
    let written = room.clearances.frontage.spanned()?;
    let (counted, left_out) = match &written.value {
        Frontage::InAll(length) => (*length, Length::ZERO),
        Frontage::Stretches(stretches) => {
            let counts = |least: Length, there: Option<&Length>| there.is_none_or(|there| *there >= least);
            let (counted, left_out): (Vec<_>, Vec<_>) =
                stretches.iter().partition(|one| counts(deep, one.depth.get()) && counts(free, one.clear_above.get()));
            let sum = |pieces: Vec<&crate::book::Stretch>| pieces.into_iter().map(|one| one.length).sum();
            (sum(counted), sum(left_out))
        }
    };
    Some((Fact { value: counted, at: written.span, whence: Whence::Written }, left_out))
}

/// Counter at a side of an opening.
pub fn landing_beside(opening: &Opening, side: Side) -> Option<&Spanned<Beside>> {
    let landing = opening.landing.get()?;
    match side {
        Side::Left => landing.left.spanned(),
        Side::Right => landing.right.spanned(),
    }
}
