//! What is built in: a sheet's front panel, what stands below, the wall's hollow, drilled holes.

use super::Slot;
use crate::source::Spanned;
use crate::units::{Length, LengthRange, Weight};

/// The panel that a maker's sheet asks for.
#[derive(Clone, Debug, Default)]
pub struct AskedPanel {
    /// Width.
    pub width: Slot<LengthRange>,
    /// Height.
    pub height: Slot<LengthRange>,
    /// Thickness.
    pub thickness: Slot<LengthRange>,
    /// The most that it may weigh.
    pub weight: Slot<Weight>,
}

/// What stands below an opening in a counter.
#[derive(Clone, Debug)]
pub struct Below {
    /// What it is.
    pub what: Spanned<String>,
    /// From the top of the counter to it.
    pub clear: Slot<Length>,
}

/// The wall that something goes into.
#[derive(Clone, Debug, Default)]
pub struct Hollow {
    /// From the studs' face to whatever is behind.
    pub cavity: Slot<Length>,
    /// Still to come on the studs.
    pub build_up: Slot<Length>,
    /// What runs in it.
    pub holds: Slot<String>,
    /// To the centre of the toilet's outlet.
    pub rough_in: Slot<Length>,
    /// To the valve's mark.
    pub valve: Slot<Length>,
    /// `finished wall` or `studs`.
    pub from: Slot<&'static str>,
}

/// A hole that is drilled.
#[derive(Clone, Debug)]
pub struct Hole {
    /// What goes through it.
    pub purpose: Spanned<String>,
    /// Its diameter.
    pub diameter: Slot<Length>,
    /// From its centre to what is behind.
    pub behind: Slot<Length>,
}
