//! Areas, held exactly as whole square nanometres.

use super::figure::{Figure, round_half_even};
use super::length::Length;
use super::measure::{MeasureError, measure};
use super::{FOOT, Kind};
use std::fmt;
use std::ops::Mul;

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

    /// The next whole tenth of a square metre, or of a square foot, that is no less: what may be told and is enough.
    pub const fn up_to_a_tenth(self, metric: bool) -> Area {
        let tenth = if metric { SQUARE_METRE / 10 } else { SQUARE_FOOT / 10 };
        let over = self.0.rem_euclid(tenth);
        if over == 0 { self } else { Area(self.0.saturating_add(tenth - over)) }
    }

    /// In square centimetres, to the nearest tenth, without the unit: `200`, `12.5`.
    pub fn square_centimetres(self) -> String {
        tenths(self.0, SQUARE_METRE / 10_000)
    }

    /// In square inches, likewise.
    pub fn square_inches(self) -> String {
        tenths(self.0, SQUARE_FOOT / 144)
    }

    /// Its share of `total` in thousandths, ties to even; zero when either is not above zero.
    pub fn share_of(self, total: Area) -> u32 {
        if self.0 <= 0 || total.0 <= 0 {
            return 0;
        }
        u32::try_from(round_half_even(self.0.saturating_mul(1000), total.0)).unwrap_or(u32::MAX)
    }
}

/// So many of a unit, to the nearest tenth; a whole number without one.
fn tenths(area: i128, unit: i128) -> String {
    let tenths = round_half_even(area.saturating_mul(10), unit);
    match tenths % 10 {
        0 => (tenths / 10).to_string(),
        tenth => format!("{}.{}", tenths / 10, tenth.abs()),
    }
}

impl Mul for Length {
    type Output = Area;

    /// Never too large: the product of two `i64` fits an `i128`.
    fn mul(self, other: Length) -> Area {
        Area(i128::from(self.nanometres()) * i128::from(other.nanometres()))
    }
}

super::measure::adds!(Area);

/// Square feet to a tenth, as [`Area::imperial`].
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.imperial().fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn an_area_is_read_exactly_and_printed_to_a_tenth() {
        let rows = [
            ("42 sq ft", "42 sq ft", "≈ 3.9 m²"),
            ("42.5 ft2", "42.5 sq ft", "≈ 3.9 m²"),
            ("42 sq. ft.", "42 sq ft", "≈ 3.9 m²"),
            ("3.9 m2", "≈ 42 sq ft", "3.9 m²"),
            ("3.9 m²", "≈ 42 sq ft", "3.9 m²"),
            ("720 sq in", "5 sq ft", "≈ 0.5 m²"),
            ("600 sq in", "≈ 4.2 sq ft", "≈ 0.4 m²"),
            ("12 SQUARE FEET", "12 sq ft", "≈ 1.1 m²"),
            ("30000 cm2", "≈ 32.3 sq ft", "3 m²"),
        ];
        for (written, imperial, metric) in rows {
            let area = Area::parse(written).unwrap();
            assert_eq!((area.imperial().to_string().as_str(), area.metric().to_string().as_str()), (imperial, metric));
        }
    }

    #[test]
    fn a_small_area_is_told_in_small_units() {
        let rows =
            [("200 cm2", "200", "31"), ("31 sq in", "200", "31"), ("2 sq in", "12.9", "2"), ("20000 mm²", "200", "31")];
        for (written, centimetres, inches) in rows {
            let area = Area::parse(written).unwrap();
            assert_eq!((area.square_centimetres().as_str(), area.square_inches().as_str()), (centimetres, inches));
        }
    }

    #[test]
    fn a_square_foot_is_a_foot_times_a_foot() {
        let foot = Length::from_inches(12);
        assert_eq!(foot * foot, Area::parse("1 sq ft").unwrap());
        assert_eq!(Area::parse("144 sq in"), Area::parse("1 sq ft"));
    }

    #[test]
    fn a_share_is_told_in_thousandths_with_ties_to_even() {
        let area = |n| Area::from_square_nanometres(n);
        let rows =
            [(1, 3, 333), (2, 3, 667), (1, 2000, 0), (3, 2000, 2), (0, 9, 0), (9, 9, 1000), (5, 0, 0), (-5, 9, 0)];
        for (part, total, permille) in rows {
            assert_eq!(area(part).share_of(area(total)), permille, "{part} of {total}");
        }
    }

    #[test]
    fn what_is_no_area_says_so() {
        let rows = [
            ("42", "`42` has no unit"),
            ("42 ft", "`'` is not a unit for an area"),
            ("42 sq yd", "`sq` is not a unit for an area"),
        ];
        for (written, message) in rows {
            assert_eq!(Area::parse(written).unwrap_err().to_string(), message);
        }
    }

    proptest! {
        #[test]
        fn the_sum_of_two_strips_is_the_whole_rectangle(w in 1..4000_i64, a in 1..4000_i64, b in 1..4000_i64) {
            let [w, a, b] = [w, a, b].map(Length::from_sixty_fourths);
            prop_assert_eq!([w * a, w * b].into_iter().sum::<Area>(), w * (a + b));
            prop_assert_eq!(w * (a + b) - w * b, w * a);
        }

        #[test]
        fn tenths_of_a_square_foot_are_read_as_printed(tenths in 0..1_000_000_i128) {
            let area = Area::from_square_nanometres(tenths * SQUARE_FOOT / 10);
            prop_assert_eq!(Area::parse(&area.imperial().to_string()), Ok(area));
        }
    }
}
