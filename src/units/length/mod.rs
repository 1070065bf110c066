//! Lengths, held exactly as whole nanometres: 1/64 in is 396 875 nm and 0.1 mm is 100 000 nm.

mod error;
mod parse;
mod shown;
#[cfg(test)]
mod tests;

pub use error::LengthError;
pub(crate) use parse::{parse_in, sole_unit};
pub use shown::{Grain, Shown};

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Neg, Sub};

/// A length in whole nanometres, so that inches to 1/64 and every metric decimal in use come out exact (UN-05).
///
/// What can be read is at most 1 km. Sums stop at the end of the range (9 million km) instead of
/// wrapping: no house holds that, so nothing fits it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

/// Nanometres in an inch: 25.4 mm exactly (UN-01).
const INCH: i64 = super::INCH as i64;
/// Nanometres in 1/64 in.
const SIXTY_FOURTH: i64 = INCH / 64;
/// Nanometres in a millimetre.
const MILLIMETRE: i64 = 1_000_000;

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);

    /// The longest length that can be read: 1 km.
    pub const LONGEST: Length = Length(1_000_000 * MILLIMETRE);

    /// So many nanometres.
    pub const fn from_nanometres(nanometres: i64) -> Length {
        Length(nanometres)
    }

    /// So many 64ths of an inch.
    pub const fn from_sixty_fourths(sixty_fourths: i64) -> Length {
        Length(sixty_fourths.saturating_mul(SIXTY_FOURTH))
    }

    /// So many whole inches.
    pub const fn from_inches(inches: i64) -> Length {
        Length(inches.saturating_mul(INCH))
    }

    /// So many whole millimetres.
    pub const fn from_millimetres(millimetres: i64) -> Length {
        Length(millimetres.saturating_mul(MILLIMETRE))
    }

    /// The length in nanometres.
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// Reads a length with its unit, such as `34 1/2"`, `3'-4½"` or `876 mm`.
    ///
    /// # Errors
    /// Says what is wrong, and [`LengthError::remedy`] how to write it. A number without a unit is
    /// [`LengthError::Bare`].
    pub fn parse(text: &str) -> Result<Length, LengthError> {
        parse_in(text, None)
    }

    /// The sum, unless it is past what can be held.
    pub fn checked_add(self, other: Length) -> Option<Length> {
        self.0.checked_add(other.0).map(Length)
    }

    /// This length so many times.
    pub const fn times(self, count: i64) -> Length {
        Length(self.0.saturating_mul(count))
    }

    /// Half of it, to the nanometre, a tie to the even one: exact down to 1/32 in and to 2 nm.
    pub fn half(self) -> Length {
        let down = self.0.div_euclid(2);
        Length(down + (self.0.rem_euclid(2) & down.rem_euclid(2)))
    }

    /// The length without its sign.
    pub const fn abs(self) -> Length {
        Length(self.0.saturating_abs())
    }

    /// True below zero.
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// In inches, as things and openings are told, to the nearest `grain`; [`Shown::feet_and_inches`] tells rooms.
    pub fn imperial(self, grain: Grain) -> Shown {
        Shown::imperial(self, grain)
    }

    /// In inches to the nearest sixteenth, or in thirty-seconds where those are exact.
    pub fn inches(self) -> Shown {
        let fine = self.imperial(Grain::ThirtySecond);
        if fine.exact { fine } else { self.imperial(Grain::Sixteenth) }
    }

    /// The exact value in millimetres, with as many decimals as it has, as one may write it in a book.
    pub fn in_millimetres(self) -> String {
        let sign = if self.is_negative() { "−" } else { "" };
        let (nanometres, millimetre) = (self.0.unsigned_abs(), MILLIMETRE.unsigned_abs());
        let decimals = format!("{:06}", nanometres % millimetre);
        let decimals = decimals.trim_end_matches('0');
        let point = if decimals.is_empty() { "" } else { "." };
        format!("{sign}{}{point}{decimals} mm", nanometres / millimetre)
    }

    /// In millimetres: in tenths where it was written so or is less than 50 mm, else in whole ones.
    pub fn metric(self) -> Shown {
        Shown::metric(self)
    }
}

impl Add for Length {
    type Output = Length;

    fn add(self, other: Length) -> Length {
        Length(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Length;

    fn sub(self, other: Length) -> Length {
        Length(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Length;

    fn neg(self) -> Length {
        Length(self.0.saturating_neg())
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

impl std::str::FromStr for Length {
    type Err = LengthError;

    fn from_str(text: &str) -> Result<Length, LengthError> {
        Length::parse(text)
    }
}

/// The exact value, as one may write it in a book: in inches when it is a whole number of 64ths,
/// else in millimetres with as many decimals as it has. Pages use [`Length::imperial`] and [`Length::metric`].
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0 % SIXTY_FOURTH == 0 {
            return Shown::in_inches(self.0, 64).fmt(f);
        }
        f.write_str(&self.in_millimetres())
    }
}
