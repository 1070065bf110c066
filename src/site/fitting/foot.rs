//! What an opening stands on.

use crate::book::{Opening, Room};
use crate::site::counter_height;
use crate::units::Length;
use crate::vocabulary::Trait;

use super::Stack;

/// Where the bottom of an opening is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foot {
    /// On the floor.
    Floor,
    /// So high above the finished floor.
    Above(Length),
    /// It stands on no floor, and nobody says how high it is.
    Unknown,
}

/// The bottom of an opening, as its sill has it; a hole that something is let into from above hangs under its counter,
/// as deep as it is high.
pub fn foot(room: &Room, opening: &Opening) -> Foot {
    let stack = Stack::of(room, opening).filter(|stack| !stack.is_lower(opening));
    if let Some(bottom) = stack.and_then(|stack| stack.upper_bottom(room)) {
        return Foot::Above(bottom);
    }
    if let Some(sill) = opening.sill.get() {
        return Foot::Above(*sill);
    }
    if opening.stands_on_the_floor() {
        return Foot::Floor;
    }
    let top = counter_height(room, opening).value().filter(|_| opening.takes_one(Trait::DropsIn));
    let high = opening.height.get().and_then(|height| height.greatest()).map(|height| height.value);
    let under = top.zip(high).map(|(top, high)| top - high).filter(|under| *under > Length::ZERO);
    under.map_or(Foot::Unknown, Foot::Above)
}
