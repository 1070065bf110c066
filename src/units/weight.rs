//! Weights, held exactly as whole nanograms: a pound is 453.59237 g, an ounce a sixteenth of it.

use super::figure::Figure;
use super::measure::{MeasureError, measure};
use super::{Kind, POUND};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Sub};

/// A weight in whole nanograms, the coarsest step that holds both grams and ounces exactly.
///
/// What can be read is at most 1 000 t. Sums stop at the end of the range instead of wrapping.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Weight(i64);

/// Nanograms in a kilogram.
const KILOGRAM: i64 = 1_000_000_000_000;

impl Weight {
    /// No weight.
    pub const ZERO: Weight = Weight(0);

    /// The heaviest that can be read: 1 000 t.
    pub const HEAVIEST: Weight = Weight(1_000_000 * KILOGRAM);

    /// So many nanograms.
    pub const fn from_nanograms(nanograms: i64) -> Weight {
        Weight(nanograms)
    }

    /// So many whole pounds.
    pub const fn from_pounds(pounds: i64) -> Weight {
        Weight(pounds.saturating_mul(POUND as i64))
    }

    /// The weight in nanograms.
    pub const fn nanograms(self) -> i64 {
        self.0
    }

    /// Reads a weight with its unit: `205 lb`, `93 kg`, `12 oz`.
    ///
    /// # Errors
    /// Says what is wrong, and its remedy how to write it; a bare number is [`MeasureError::Bare`].
    pub fn parse(text: &str) -> Result<Weight, MeasureError> {
        let nanograms = measure(text, Kind::Weight, Weight::HEAVIEST.0.into())?;
        i64::try_from(nanograms).map(Weight).map_err(|_| MeasureError::TooLarge(Kind::Weight, text.trim().into()))
    }

    /// This weight so many times.
    pub const fn times(self, count: i64) -> Weight {
        Weight(self.0.saturating_mul(count))
    }

    /// In pounds, to the nearest tenth.
    pub fn imperial(self) -> Figure {
        Figure::new(self.0.into(), POUND, "lb")
    }

    /// In kilograms, to the nearest tenth.
    pub fn metric(self) -> Figure {
        Figure::new(self.0.into(), KILOGRAM.into(), "kg")
    }
}

impl Add for Weight {
    type Output = Weight;

    fn add(self, other: Weight) -> Weight {
        Weight(self.0.saturating_add(other.0))
    }
}

impl Sub for Weight {
    type Output = Weight;

    fn sub(self, other: Weight) -> Weight {
        Weight(self.0.saturating_sub(other.0))
    }
}

impl Sum for Weight {
    fn sum<I: Iterator<Item = Weight>>(weights: I) -> Weight {
        weights.fold(Weight::ZERO, Add::add)
    }
}

impl std::str::FromStr for Weight {
    type Err = MeasureError;

    fn from_str(text: &str) -> Result<Weight, MeasureError> {
        Weight::parse(text)
    }
}

/// Both systems, pounds first: `205 lb (≈ 93 kg)`.
impl fmt::Display for Weight {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.imperial(), self.metric())
    }
}
