//! The codes that count for a book, and the house around its rooms.

use super::Slot;
use crate::source::Spanned;

/// The codes that count.
#[derive(Clone, Debug, Default)]
pub struct Codes {
    /// Editions by name and year.
    pub adopts: Vec<Spanned<String>>,
    /// Figures that differ here.
    pub figures: Vec<OwnFigure>,
}

/// A figure that differs here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnFigure {
    /// Its name.
    pub figure: Spanned<String>,
    /// Its value as written.
    pub is: Spanned<String>,
    /// Why.
    pub because: String,
    /// Who says so.
    pub by: String,
}

/// The house around the rooms.
#[derive(Clone, Debug, Default)]
pub struct House {
    /// Whether an appliance in it draws its air from the rooms and vents by its own draft.
    pub open_flue: Slot<bool>,
    /// Of the gas: Btu for a cubic foot.
    pub heating_value: Slot<u32>,
}
