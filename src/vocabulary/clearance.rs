//! A clear space that holds somewhere.

use crate::units::Length;

/// A clear space, and where it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clearance {
    /// How much.
    pub length: Length,
    /// Where, in the sheet's words: `above counter`; empty: everywhere.
    pub holds: String,
    /// Whether that is above something: above the counter, above the cooking surface.
    pub above: bool,
}

impl Clearance {
    /// A clear space that holds where those words say.
    pub fn of(length: Length, holds: &str) -> Self {
        Self { length, holds: holds.to_string(), above: holds.contains("above") }
    }
}
