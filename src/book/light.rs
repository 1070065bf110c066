//! Where lights hang.

use super::{Readings, Slot};
use crate::units::{Area, Length};

/// Where lights hang, each point in the same order.
#[derive(Clone, Debug, Default)]
pub struct Hanging {
    /// What they hang over.
    pub over: Slot<&'static str>,
    /// Length of what they hang over.
    pub length: Slot<Length>,
    /// Its top, from the finished floor.
    pub top: Slot<Length>,
    /// Their centres, from one end.
    pub at: Slot<Readings>,
    /// Lowest part of each, from the finished floor.
    pub bottom: Slot<Readings>,
    /// Height of the ceiling where each hangs.
    pub ceiling: Slot<Readings>,
    /// How far each hangs from the low side of a ceiling that slopes.
    pub from_low_side: Slot<Readings>,
    /// Level distance to the edge of the nearest tub or shower.
    pub from_tub: Slot<Length>,
    /// Top of that tub's rim or threshold, from the finished floor.
    pub rim: Slot<Length>,
    /// The work surface that they light by themselves.
    pub lights: Slot<Area>,
}
