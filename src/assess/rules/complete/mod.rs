//! The `complete/` rules: nothing needed is missing.

pub mod accessory;
pub mod cut_sheet;
pub mod datum;
pub mod field;
pub mod language;
pub mod measured;
pub mod opening;
pub mod photo;
pub mod site;
pub mod undecided;
