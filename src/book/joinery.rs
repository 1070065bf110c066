//! Cabinets: their fronts, and what they hold.

use super::Slot;
use crate::source::Spanned;
use crate::units::Length;

/// Doors and drawer fronts.
#[derive(Clone, Debug, Default)]
pub struct Fronts {
    /// Pulls or knobs that the doors take.
    pub doors: Slot<u32>,
    /// Pulls or knobs that the drawers take.
    pub drawers: Slot<u32>,
    /// Thickness that the screws go through.
    pub thickness: Slot<Length>,
}

/// Shelves and bins inside cabinets.
#[derive(Clone, Debug, Default)]
pub struct Stores {
    /// Depth of the shelves.
    pub depth: Slot<Length>,
    /// How the shelves are made.
    pub shelves: Slot<String>,
    /// The highest shelf, from the finished floor.
    pub highest: Slot<Length>,
    /// What bins for waste stand within a step of.
    pub bins_near: Vec<Spanned<&'static str>>,
}
