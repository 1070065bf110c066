//! Windows, and other glass in walls.

use super::Slot;
use crate::source::{Span, Spanned};
use crate::units::Length;

/// A window.
#[derive(Clone, Debug)]
pub struct Window {
    /// Its name in the room.
    pub name: Spanned<String>,
    /// Its width.
    pub width: Slot<Length>,
    /// Its height.
    pub height: Slot<Length>,
    /// Its lower edge from the finished floor.
    pub sill: Slot<Length>,
    /// Whether it can be opened.
    pub opens: Slot<bool>,
    /// Its glass.
    pub glass: Slot<String>,
    /// Level distance to the edge of the nearest tub or shower.
    pub from_water: Slot<Length>,
    /// What stands under it.
    pub above: Slot<String>,
    /// Where it is written.
    pub span: Span,
}
