//! Areas, held exactly as whole square nanometres.

use super::figure::{Figure, round_half_even};
use super::length::Length;
use super::measure::{MeasureError, measure};
use super::{FOOT, Kind};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Mul, Sub};

/// An area in whole square nanometres: exact for every length times a length.
///
/// What can be read is at most 1 km². Sums stop at the end of the range instead of wrapping.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i128);

/// Square nanometres in a square foot.
const SQUARE_FOOT: i128 = FOOT * FOOT;
/// Square nanometres in a square metre.
const SQUARE_METRE: i128 = 10_i128.pow(18);

impl Area {
    /// No area.
    pub const ZERO: Area = Area(0);

    /// The largest area that can be read: 1 km².
    pub const LARGEST: Area = Area(1_000_000 * SQUARE_METRE);

    /// So many square nanometres.
    pub const fn from_square_nanometres(square_nanometres: i128) -> Area {
        Area(square_nanometres)
    }

    /// The area in square nanometres.
    pub const fn square_nanometres(self) -> i128 {
        self.0
    }

    /// Reads an area with its unit: `42 sq ft`, `42.5 ft2`, `3.9 m²`, `600 sq in`.
    ///
    /// # Errors
    /// Says what is wrong, and its remedy how to write it; a bare number is [`MeasureError::Bare`].
    pub fn parse(text: &str) -> Result<Area, MeasureError> {
        measure(text, Kind::Area, Area::LARGEST.0).map(Area)
    }

    /// This area so many times.
    pub const fn times(self, count: i64) -> Area {
        Area(self.0.saturating_mul(count as i128))
    }

    /// In square feet, to the nearest tenth.
    pub fn imperial(self) -> Figure {
        Figure::new(self.0, SQUARE_FOOT, "sq ft")
    }

    /// In square metres, to the nearest tenth.
    pub fn metric(self) -> Figure {
        Figure::new(self.0, SQUARE_METRE, "m²")
    }

    /// Its share of `total` in thousandths, ties to even; zero when either is not above zero.
    pub fn share_of(self, total: Area) -> u32 {
        if self.0 <= 0 || total.0 <= 0 {
            return 0;
        }
        u32::try_from(round_half_even(self.0.saturating_mul(1000), total.0)).unwrap_or(u32::MAX)
    }
}

impl Mul for Length {
    type Output = Area;

    /// Never too large: the product of two `i64` fits an `i128`.
    fn mul(self, other: Length) -> Area {
        Area(i128::from(self.nanometres()) * i128::from(other.nanometres()))
    }
}

impl Add for Area {
    type Output = Area;

    fn add(self, other: Area) -> Area {
        Area(self.0.saturating_add(other.0))
    }
}

impl Sub for Area {
    type Output = Area;

    fn sub(self, other: Area) -> Area {
        Area(self.0.saturating_sub(other.0))
    }
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Area>>(areas: I) -> Area {
        areas.fold(Area::ZERO, Add::add)
    }
}

impl std::str::FromStr for Area {
    type Err = MeasureError;

    fn from_str(text: &str) -> Result<Area, MeasureError> {
        Area::parse(text)
    }
}

/// Square feet to a tenth, as [`Area::imperial`].
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.imperial().fmt(f)
    }
}
