//! A clear space that holds somewhere.

use crate::units::Length;

/// A clear space, and where it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clearance {
    /// How much.
    pub length: Length,
    /// Where, in the sheet's words: `above counter`; empty: everywhere.
    pub holds: String,
}
