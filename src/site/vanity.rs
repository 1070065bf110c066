//! The cabinet that carries a washbasin which has no opening of its own.

use crate::book::{Opening, Room, Selection};
use crate::vocabulary::Kind;

/// A cabinet under a basin.
#[derive(Clone, Copy, Debug)]
pub struct Vanity<'a> {
    /// The cabinet.
    pub selection: &'a Selection,
    /// Where it stands, with the pipes in the wall.
    pub opening: &'a Opening,
}

/// The cabinet that a basin stands in or on: where one basin is chosen in a room, and one cabinet there stands
/// before pipes.
pub fn vanity_of<'a>(room: &'a Room, basin: &Selection) -> Option<Vanity<'a>> {
    let basins = room.selections.iter().filter(|selection| selection.is(Kind::Basin)).count();
    if basins != 1 || !basin.is(Kind::Basin) || !basin.place.is_absent() {
        return None;
    }
    let cabinets = room.selections.iter().filter(|selection| selection.is(Kind::Cabinet));
    let placed = cabinets.filter_map(|selection| {
        let opening = room.opening(selection.place.get()?)?;
        let pipes = !opening.service.drain.is_absent() || !opening.service.water.is_absent();
        pipes.then_some(Vanity { selection, opening })
    });
    let all: Vec<Vanity<'_>> = placed.collect();
    match all.as_slice() {
        [only] => Some(*only),
        _ => None,
    }
}
