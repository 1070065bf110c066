//! What is known of a room's clear distances, each with where it comes from.
//!
//! A rule asks here, once: a figure that somebody measured counts before what follows from the plan.
//! A plan that cannot be as it is written answers nothing.

mod access;
mod access_by_plan;
mod bath;
mod doors;
mod kitchen;
mod landing;
mod named;
mod overhead;
mod pipes;
mod seats;
mod shower;
#[cfg(test)]
mod tests;

pub use access::step;
pub use bath::{before_its_entry, in_front_of, rims};
pub use doors::doorways;
pub use kitchen::{AisleWith, Triangle, aisles, aisles_with_options, frontage, preparation, triangle};
pub use landing::{Around, behind, landing_of};
pub use overhead::{headroom, less_than_written, over_the_shower};
pub use pipes::{bowls, covered, knees_under_a_bowl, pipes_covered};
pub use seats::{Seats, seats};
pub use shower::{ShowerInside, inside_of_a_shower};

use crate::book::{AccessDistance, AccessProfile, Book, ClearDistance, Room};
use crate::source::{Span, Spanned};
use crate::units::Length;

use crate::site::plan::Plan;
use crate::site::{Provenance, Site};

/// A distance, and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Distance {
    /// The distance.
    pub value: Length,
    /// Where it is written, or the thing that it was asked of.
    pub at: Span,
    /// Who says so.
    pub provenance: Provenance,
}

impl Distance {
    /// A distance that is written there.
    pub fn written(value: Length, at: Span) -> Self {
        Self { value, at, provenance: Provenance::Written }
    }

    /// A distance that follows from the plan, asked of what is written there.
    pub fn planned(value: Length, at: Span) -> Self {
        Self { value, at, provenance: Provenance::Plan }
    }
}

impl From<&Spanned<Length>> for Distance {
    fn from(written: &Spanned<Length>) -> Self {
        Self::written(written.value, written.span)
    }
}

/// The distance that `clearances` calls so, the least where it stands at several places; else the
/// plan's. A ceiling is no higher than the plan has it, whatever is written.
pub fn distance(site: &Site<'_>, room: &Room, name: ClearDistance) -> Option<Distance> {
    if let Some(lower) = less_than_written(site, room, name) {
        return Some(lower);
    }
    let written = room.clearances.distances.least(name).map(Distance::from);
    let at_the_opening = || bath::in_front_of_an_opening(room, name);
    let highest_rim =
        || rims(room).into_iter().max_by_key(|rim| rim.value).filter(|_| name == ClearDistance::BasinHeight);
    let by_the_plan = || planned(site.sound_plan(room)?, name);
    // For access a toilet stands to one side of its place, and not in the middle.
    let named = || named::to_what_is_named(room, name).filter(|_| !planned_for_access(site.book, room));
    let around = || least([by_the_plan(), named()].into_iter().flatten());
    written.or_else(at_the_opening).or_else(highest_rim).or_else(around)
}

/// The distance of that name that follows from the plan.
pub fn planned(plan: &Plan<'_>, name: ClearDistance) -> Option<Distance> {
    kitchen::planned(plan, name).or_else(|| bath::planned(plan, name))
}

/// The least of some distances.
fn least(facts: impl Iterator<Item = Distance>) -> Option<Distance> {
    facts.min_by_key(|fact| fact.value)
}

/// The distance that `access` calls so; the least, where it stands at several places; else as what is ordered and where
/// it goes have it.
pub fn for_access(room: &Room, name: AccessDistance) -> Option<Distance> {
    room.access.distances.least(name).map(Distance::from).or_else(|| access::as_ordered(room, name))
}

/// The same, and as the plan of the room leaves it.
pub fn for_access_there(site: &Site<'_>, room: &Room, name: AccessDistance) -> Option<Distance> {
    for_access(room, name).or_else(|| access_by_plan::planned(site.sound_plan(room)?, name))
}

/// As much as the plan leaves for access, where that is less than what is written of it under `access`.
pub fn less_for_access(site: &Site<'_>, room: &Room, name: AccessDistance) -> Option<Distance> {
    let written = room.access.distances.least(name)?;
    let there = access_by_plan::at_most(site.sound_plan(room)?, name, written.value)?;
    (there.value < written.value).then_some(there)
}

/// Whether a room is planned by a standard of access: by its own word, else by the book's.
pub fn planned_for_access(book: &Book, room: &Room) -> bool {
    let profile = room.access_profile.get().or(book.project.access_profile.get());
    profile.is_some_and(|profile| *profile != AccessProfile::None)
}

/// Width and depth of what `clearances` calls so.
pub fn rectangle(room: &Room, name: ClearDistance) -> Option<Spanned<(Length, Length)>> {
    room.clearances.distances.sides.get(&name).cloned()
}
