//! Access in a room, as measured or planned.

use std::collections::BTreeMap;

use super::{Readings, Slot};
use crate::source::{Span, Spanned};
use crate::units::{Length, Percent};

/// What a room offers to somebody in a wheelchair or on weak legs.
#[derive(Clone, Debug, Default)]
pub struct Access {
    /// Whether one can leave the kitchen at both ends.
    pub kitchen: Slot<&'static str>,
    /// Clear floor at each fixture or appliance, width and depth.
    pub clear_floor: Vec<ClearFloor>,
    /// Open space under a basin, a sink or a counter.
    pub knee_spaces: Vec<KneeSpace>,
    /// What one must reach.
    pub controls: Vec<Control>,
    /// Whether the work surface can be set to several heights.
    pub work_surface_adjusts: Slot<bool>,
    /// How much of the shelves is within reach.
    pub shelves_in_reach: Slot<Percent>,
    /// Whether one moves over to the shower's seat, or rolls in.
    pub shower_type: Slot<&'static str>,
    /// Single distances, by the words of the vocabulary.
    pub lengths: BTreeMap<&'static str, Readings>,
}

/// Clear floor beside something.
#[derive(Clone, Debug)]
pub struct ClearFloor {
    /// What it is beside.
    pub name: Spanned<String>,
    /// Width and depth.
    pub sides: Spanned<(Length, Length)>,
}

/// Open space for feet and knees.
#[derive(Clone, Debug)]
pub struct KneeSpace {
    /// Where it is.
    pub name: Spanned<String>,
    /// Clear width.
    pub width: Slot<Length>,
    /// Clear height at the front.
    pub height: Slot<Length>,
    /// Clear depth at that height.
    pub depth: Slot<Length>,
    /// Clear depth for feet.
    pub toe_depth: Slot<Length>,
    /// Depths at some heights: height, then depth.
    pub knees: Vec<(Length, Spanned<Length>)>,
}

/// Something that one must reach.
#[derive(Clone, Debug)]
pub struct Control {
    /// What it is.
    pub name: Spanned<String>,
    /// Its height above the floor.
    pub height: Spanned<Length>,
    /// Whether one comes up to it with one's side.
    pub from_the_side: bool,
    /// Depth of what one reaches over.
    pub over_depth: Slot<Length>,
    /// Height of what one reaches over.
    pub over_height: Slot<Length>,
    /// Whether it must be gripped tightly, pinched or twisted.
    pub twists: Slot<bool>,
    /// Where it is written.
    pub span: Span,
}
