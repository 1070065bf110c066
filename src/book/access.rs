//! Access in a room, as measured or planned.

use std::collections::BTreeMap;

use crate::source::Spanned;
use crate::units::{Length, Percent};
use crate::vocabulary::{Named, Readings, Slot, record, words};

/// What a room offers to somebody in a wheelchair or on weak legs.
#[derive(Clone, Debug, Default)]
pub struct Access {
    /// Whether one can leave the kitchen at both ends.
    pub kitchen: Slot<&'static str>,
    /// Clear floor at each fixture or appliance, width and depth.
    pub clear_floor: Vec<ClearFloor>,
    /// Open space under a basin, a sink or a counter.
    pub knee_spaces: Named<KneeSpace>,
    /// What one must reach.
    pub controls: Named<Control>,
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

record! {
    named
    pub struct KneeSpace = KNEE_SPACE("knee space", "open space for feet and knees under a basin, a sink or a counter") {
        width: Slot<Length> = "width", "clear width", "36\"";
        height: Slot<Length> = "height", "clear height at the front", "27\"";
        depth: Slot<Length> = "depth", "clear depth at that height", "19\"";
        toe_depth: Slot<Length> = "toe depth", "clear depth for feet, up to 9\" above the floor", "17\"";
        knees: Vec<KneesAt> = "knees",
            "how deep it is at some heights between 9\" and 27\"",
            "[{at: 9\", deep: 11\"}, {at: 27\", deep: 8\"}]";
    }
}

record! {
    pub struct KneesAt = KNEES_AT("depth for knees", "how deep a knee space is at a height") {
        at: Length = "at", "the height above the floor", "27\"";
        deep: Spanned<Length> = "deep", "the clear depth there", "8\"";
    }
}

words! {
    /// How one comes up to what one must reach.
    pub enum Reach {
        Forward = "forward",
        Side = "side",
    }
}

record! {
    named
    pub struct Control = CONTROL("control", "a switch, a handle or a knob that one must reach from a chair") {
        height: Spanned<Length> = "height", "its height above the floor", "44\"";
        reach: Slot<Reach> = "reach", "how one comes up to it", "side";
        over_depth: Slot<Length> = "over depth", "depth of what one reaches over", "24\"";
        over_height: Slot<Length> = "over height", "height of what one reaches over", "34\"";
        twists: Slot<bool> = "twists", "whether it must be gripped tightly, pinched or twisted", "true";
    }
}
