//! What the layout of a counter is drawn from.

use crate::language::Words;
use crate::site::corners::JoinedCounter;
use crate::site::layout::CounterLayout;
use crate::units::System;

/// A counter of one run or island from above, its back up; or pieces of which nobody says where they lie.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CounterDrawing {
    /// A name that no other drawing of the page has.
    pub id: String,
    /// What it is of.
    pub name: String,
    /// What is drawn.
    pub laid: CounterLayout,
    /// The book's units.
    pub units: System,
    /// The language.
    pub words: Words,
}

/// Counters that meet at corners, from above.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CornerDrawing {
    /// A name that no other drawing of the page has.
    pub id: String,
    /// What it is of.
    pub name: String,
    /// What is drawn.
    pub joined: JoinedCounter,
    /// The book's units.
    pub units: System,
    /// The language.
    pub words: Words,
}
