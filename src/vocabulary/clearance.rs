//! A clear space that holds somewhere.

use crate::units::{Area, Length};

/// A clear space, and where it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clearance {
    /// How much.
    pub length: Length,
    /// Where, in the sheet's words: `above counter`; empty: everywhere.
    pub holds: String,
    /// Whether that is above something: above the counter, above the cooking surface.
    pub above: bool,
    /// The free cross-section that is asked for instead: `200 cm2`; no length is asked for then.
    pub vent: Option<Area>,
}

impl Clearance {
    /// A clear space that holds where those words say.
    pub fn of(length: Length, holds: &str) -> Self {
        Self { length, holds: holds.to_string(), above: holds.contains("above"), vent: None }
    }

    /// A free cross-section, and no length.
    pub fn of_vent(vent: Area) -> Self {
        Self { vent: Some(vent), ..Self::of(Length::ZERO, "") }
    }
}
