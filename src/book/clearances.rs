//! What is clear in a room, as measured or planned.

use std::collections::BTreeMap;

use super::{Readings, Slot};
use crate::source::{Span, Spanned};
use crate::units::Length;

/// Distances in a room, by the words of the vocabulary.
#[derive(Clone, Debug, Default)]
pub struct Clearances {
    /// Clear width of each doorway, by its name.
    pub doorways: Vec<(Spanned<String>, Spanned<Length>)>,
    /// The ways between sink, cooking and refrigerator.
    pub triangle: Slot<Triangle>,
    /// All counter that can be worked at.
    pub frontage: Slot<Frontage>,
    /// Single distances.
    pub lengths: BTreeMap<&'static str, Readings>,
    /// Rectangles: width and depth.
    pub sides: BTreeMap<&'static str, Spanned<(Length, Length)>>,
}

impl Clearances {
    /// The least of the distances of that name.
    pub fn least(&self, key: &str) -> Option<&Spanned<Length>> {
        self.lengths.get(key)?.least()
    }
}

/// The ways between the three centres of a kitchen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Triangle {
    /// From sink to cooktop or range.
    pub sink_to_cooking: Slot<Length>,
    /// From cooktop or range to the refrigerator.
    pub cooking_to_refrigerator: Slot<Length>,
    /// From the refrigerator to the sink.
    pub refrigerator_to_sink: Slot<Length>,
    /// How far a way cuts across an island.
    pub cuts_into_island: Slot<Length>,
}

/// Counter that can be worked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Frontage {
    /// In all.
    InAll(Length),
    /// Each stretch of it.
    Stretches(Vec<Stretch>),
}

/// A straight piece of counter.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// Along its front.
    pub length: Length,
    /// From front to wall.
    pub depth: Slot<Length>,
    /// To whatever hangs over it.
    pub clear_above: Slot<Length>,
}

/// Counter to set things down on, around an opening.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Landing {
    /// To the left, seen from the front.
    pub left: Slot<Beside>,
    /// To the right.
    pub right: Slot<Beside>,
    /// Behind it, on an island.
    pub behind: Slot<Length>,
    /// On top of it, or above or below it.
    pub above: Slot<Length>,
    /// Across from it.
    pub across: Slot<Length>,
    /// How far away that is.
    pub across_at: Slot<Length>,
    /// Whether others walk between.
    pub across_a_walkway: Slot<bool>,
    /// From a sink's edge to an inside corner.
    pub to_corner: Slot<Length>,
    /// Clear counter around that corner.
    pub around_corner: Slot<Length>,
    /// Whether it is a sink besides the one for cleaning up.
    pub second_sink: Slot<bool>,
}

/// Counter at one side.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Beside {
    /// Its length along the front.
    pub counter: Length,
    /// The opening at its other end.
    pub to: Option<Spanned<String>>,
    /// Whether food is prepared there as well.
    pub preparation: bool,
}

/// Where people sit.
#[derive(Clone, Debug)]
pub struct Seating {
    /// What the room calls it.
    pub name: Spanned<String>,
    /// Length of the edge at which they sit.
    pub edge: Slot<Length>,
    /// How many.
    pub seats: Slot<u32>,
    /// Top of the surface from the finished floor.
    pub height: Slot<Length>,
    /// Clear for knees, from the edge inward.
    pub knee_depth: Slot<Length>,
    /// Clear floor behind, from the edge.
    pub behind: Slot<Length>,
    /// Whether others go by.
    pub traffic: Slot<&'static str>,
    /// Whether somebody goes by in a wheelchair.
    pub wheelchair: Slot<bool>,
    /// Where it is written.
    pub span: Span,
}
