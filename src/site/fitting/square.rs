//! How far an opening is out of square, and how far it may be.

use crate::book::{Opening, Room};
use crate::source::Span;
use crate::units::Length;

/// How far diagonals or sides may be out where no sheet says: 1/8" (common practice).
const USUAL: Length = Length::from_sixty_fourths(8);

/// What tells that an opening is out of square.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Skew {
    /// Its two diagonals differ.
    Diagonals,
    /// A side wanders from the plumb line over its height.
    Side,
}

/// How far an opening is out, against how far it may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfSquare {
    /// What tells it.
    pub by: Skew,
    /// How far it is out.
    pub out: Length,
    /// How far it may be.
    pub within: Length,
    /// Whether a maker's sheet says so.
    pub of_sheet: bool,
    /// Where the readings are written.
    pub at: Span,
}

impl OutOfSquare {
    /// Whether it is out by more than it may be; exactly as much passes.
    pub fn is_too_far(&self) -> bool {
        self.out > self.within
    }
}

/// How far an opening may be out, and whether a sheet says so: the least figure among the sheets of
/// what may go in, or the usual one.
pub fn square_within(room: &Room, opening: &Opening) -> (Length, bool) {
    let here = room.goes_into(&opening.name);
    let asked = here.flat_map(|selection| selection.standing()).filter_map(|option| option.fit.get()?.square.get());
    let strictest = asked.min().copied();
    (strictest.unwrap_or(USUAL), strictest.is_some())
}

/// How far an opening is out by its diagonals or by its plumb readings; none without either. Where
/// both are too far out the diagonals tell it: one fault, told once.
pub fn out_of_square(room: &Room, opening: &Opening) -> Option<OutOfSquare> {
    let (within, of_sheet) = square_within(room, opening);
    let told = |by, out, at| OutOfSquare { by, out, within, of_sheet, at };
    let diagonals = opening.diagonals.spanned().map(|both| {
        let (one, other) = both.value;
        told(Skew::Diagonals, (one - other).abs(), both.span)
    });
    let sides = opening.plumb.spanned().and_then(|plumb| {
        let out = wander(&plumb.value.left)?.max(wander(&plumb.value.right)?);
        Some(told(Skew::Side, out, plumb.span))
    });
    match (diagonals, sides) {
        (Some(diagonals), Some(sides)) if sides.is_too_far() && !diagonals.is_too_far() => Some(sides),
        (Some(diagonals), _) => Some(diagonals),
        (None, sides) => sides,
    }
}

/// How far a side wanders from the plumb line.
fn wander(readings: &[Length]) -> Option<Length> {
    Some(*readings.iter().max()? - *readings.iter().min()?)
}
