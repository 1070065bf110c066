//! The figures themselves, each with its source as its edition prints it.
//!
//! Where a source was not read it says `from memory`; where there is none, `common practice`.

mod bath;
mod hazard;
mod kitchen;
mod stone;

pub use bath::*;
pub use hazard::*;
pub use kitchen::*;
pub use stone::*;

use super::{Basis, Figure, Value};
use crate::units::Length;

const fn length(name: &'static str, sixty_fourths: i64, basis: Basis, source: &'static str) -> Figure {
    Figure { name, value: Value::Length(Length::from_sixty_fourths(sixty_fourths)), basis, source }
}

const fn millimetres(name: &'static str, millimetres: i64, basis: Basis, source: &'static str) -> Figure {
    Figure { name, value: Value::Length(Length::from_millimetres(millimetres)), basis, source }
}

const fn number(name: &'static str, value: u32, unit: &'static str, basis: Basis, source: &'static str) -> Figure {
    Figure { name, value: Value::Number(value, unit), basis, source }
}

/// Every figure.
pub fn all() -> impl Iterator<Item = &'static Figure> {
    [kitchen::ALL, hazard::ALL, bath::ALL, stone::ALL].into_iter().flatten().copied()
}
