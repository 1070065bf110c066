//! Counters: what they are made of, what carries them, and the slabs that they are cut from.

use super::Slot;
use crate::source::Spanned;
use crate::units::Length;

/// A counter or an island's top.
#[derive(Clone, Debug, Default)]
pub struct Top {
    /// What it is made of.
    pub material: Slot<&'static str>,
    /// The runs, islands and places to sit that it covers.
    pub lies_on: Vec<Spanned<String>>,
    /// From its back to its front edge, overhangs counted.
    pub depth: Slot<Length>,
    /// The farthest that it stands out past what carries it.
    pub overhang: Slot<Length>,
    /// The widest gap below it with nothing that carries it.
    pub free_span: Slot<Length>,
    /// What carries its overhang.
    pub supports: Slot<Supports>,
    /// The slabs that are held for it.
    pub slab: Slot<Slab>,
    /// What is cut in one piece: along the run, and from front to back.
    pub pieces: Vec<Piece>,
    /// Where pieces meet.
    pub seams: Vec<Seam>,
    /// Who has the last word on seams and veins.
    pub layout: Slot<&'static str>,
    /// Radius of the inside corners of its cutouts.
    pub inside_corners: Slot<Length>,
}

/// What carries an overhang.
#[derive(Clone, Debug)]
pub struct Supports {
    /// What they are.
    pub by: Spanned<&'static str>,
    /// How far they reach out past the cabinets.
    pub out: Slot<Length>,
    /// How far they reach back over the cabinets.
    pub inward: Slot<Length>,
    /// The widest distance between two of them.
    pub apart: Slot<Length>,
}

/// The slabs that are held.
#[derive(Clone, Debug, Default)]
pub struct Slab {
    /// Length and width.
    pub size: Slot<(Length, Length)>,
    /// What is left of them without rough edges and flaws.
    pub usable: Slot<(Length, Length)>,
    /// What the saw takes.
    pub kerf: Slot<Length>,
    /// `kept` or `free`.
    pub direction: Slot<&'static str>,
    /// How many are held.
    pub count: Slot<u32>,
}

/// What is cut in one.
#[derive(Clone, Debug)]
pub struct Piece {
    /// Its name in the book.
    pub name: Spanned<String>,
    /// Along the run.
    pub length: Length,
    /// From front to back.
    pub depth: Length,
}

/// Where two pieces meet.
#[derive(Clone, Debug)]
pub struct Seam {
    /// Where it is.
    pub at: Spanned<String>,
    /// What stands below it, or the cutout that it runs through.
    pub over: Slot<&'static str>,
    /// The run that it is on.
    pub on: Slot<String>,
    /// From the left end of that run's wall.
    pub from_left: Slot<Length>,
    /// Whether it is reinforced from below.
    pub reinforced: Slot<bool>,
}
