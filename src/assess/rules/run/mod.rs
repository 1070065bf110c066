//! The `run/` rules: what stands in a row fits its wall, opens beside it, and stands up under the ceiling.

pub mod ceiling;
pub mod ends;
pub mod filler;
pub mod sum;

use crate::book::{Part, PartIs, Room};
use crate::units::Length;

/// The width of a part: as written, or as its opening measures.
fn width(room: &Room, is: &PartIs, written: Option<Length>) -> Option<Length> {
    match is {
        PartIs::Filler(wide) | PartIs::Panel(wide) | PartIs::Gap(wide) => Some(*wide),
        PartIs::Opening(name) => room.opening(name)?.governing_width(),
        PartIs::Cabinet(_) | PartIs::Tall(_) => written,
    }
}

/// The widths of the parts of a row; none while one is not known.
fn widths(room: &Room, parts: &[Part]) -> Option<Vec<Length>> {
    parts.iter().map(|part| width(room, &part.is, part.width.get().copied())).collect()
}
