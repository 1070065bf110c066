//! Weights, held exactly as whole femtograms: a pound is 453.59237 g, an ounce a sixteenth of it.

use super::figure::Figure;
use super::measure::{MeasureError, measure};
use super::{Kind, POUND};
use std::fmt;

/// A weight in whole femtograms, a step so small that decimals and binary parts of grams, ounces
/// and pounds all come out exact.
///
/// What can be read is at most 1 000 t. Sums stop at the end of the range instead of wrapping.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Weight(i128);

/// Femtograms in a kilogram.
const KILOGRAM: i128 = 10_i128.pow(18);

impl Weight {
    /// No weight.
    pub const ZERO: Weight = Weight(0);

    /// The heaviest that can be read: 1 000 t.
    pub const HEAVIEST: Weight = Weight(1_000_000 * KILOGRAM);

    /// So many femtograms.
    pub const fn from_femtograms(femtograms: i128) -> Weight {
        Weight(femtograms)
    }

    /// So many whole pounds.
    pub const fn from_pounds(pounds: i64) -> Weight {
        Weight(POUND * pounds as i128)
    }

    /// The weight in femtograms.
    pub const fn femtograms(self) -> i128 {
        self.0
    }

    /// Reads a weight with its unit: `205 lb`, `93 kg`, `12 oz`.
    ///
    /// # Errors
    /// Says what is wrong, and its remedy how to write it; a bare number is [`MeasureError::Bare`].
    pub fn parse(text: &str) -> Result<Weight, MeasureError> {
        measure(text, Kind::Weight, Weight::HEAVIEST.0).map(Weight)
    }

    /// This weight so many times.
    pub const fn times(self, count: i64) -> Weight {
        Weight(self.0.saturating_mul(count as i128))
    }

    /// In pounds, to the nearest tenth.
    pub fn imperial(self) -> Figure {
        Figure::new(self.0, POUND, "lb")
    }

    /// In kilograms, to the nearest tenth.
    pub fn metric(self) -> Figure {
        Figure::new(self.0, KILOGRAM, "kg")
    }
}

super::measure::adds!(Weight);

/// Both systems, pounds first: `205 lb (≈ 93 kg)`.
impl fmt::Display for Weight {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.imperial(), self.metric())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Fault;

    #[test]
    fn a_weight_is_read_exactly_and_printed_in_both_systems() {
        let rows = [
            ("205 lb", 92_986_435_850_000_000_000, "205 lb (≈ 93 kg)"),
            ("93 kg", 93_000_000_000_000_000_000, "≈ 205 lb (93 kg)"),
            ("12 oz", 340_194_277_500_000_000, "≈ 0.8 lb (≈ 0.3 kg)"),
            ("8 oz", 226_796_185_000_000_000, "0.5 lb (≈ 0.2 kg)"),
            ("1 1/2 lbs", 680_388_555_000_000_000, "1.5 lb (≈ 0.7 kg)"),
            ("2 1/2 oz", 70_873_807_812_500_000, "≈ 0.2 lb (≈ 0.1 kg)"),
            ("500 g", 500_000_000_000_000_000, "≈ 1.1 lb (0.5 kg)"),
        ];
        for (written, femtograms, printed) in rows {
            let weight = Weight::parse(written).unwrap();
            assert_eq!(weight.femtograms(), femtograms, "{written}");
            assert_eq!(weight.to_string(), printed);
        }
    }

    #[test]
    fn sums_are_exact_and_order_is_kept() {
        let parts = ["12 oz", "4 oz"].map(|w| Weight::parse(w).unwrap());
        assert_eq!(parts.into_iter().sum::<Weight>(), Weight::from_pounds(1));
        assert!(Weight::parse("93 kg").unwrap() > Weight::from_pounds(205));
        assert_eq!(Weight::from_pounds(3) - Weight::from_pounds(1), Weight::from_pounds(1).times(2));
    }

    #[test]
    fn what_is_no_weight_says_so() {
        let rows = [
            (
                "",
                "a weight is wanted and nothing is written",
                "write a number and its unit, such as `42 lb` or `42 kg`",
            ),
            ("205", "`205` has no unit", "write `205 lb` or `205 kg`"),
            ("205 mm", "`mm` is not a unit for a weight", "write a number and its unit, such as `42 lb` or `42 kg`"),
            (
                "5 stone",
                "`stone` is not a unit for a weight",
                "write a number and its unit, such as `42 lb` or `42 kg`",
            ),
            ("5 lb 3 oz", "`5 lb 3 oz` is not a weight", "write a number and its unit, such as `42 lb` or `42 kg`"),
            ("-5 lb", "`-5 lb` is not a weight", "write a number and its unit, such as `42 lb` or `42 kg`"),
            ("1/7 g", "`1/7 g` can't be held exactly", "write it with fewer decimals"),
            ("1000001 kg", "`1000001 kg` is too large for a weight", "check the number and its unit"),
        ];
        for (written, message, remedy) in rows {
            let error = Weight::parse(written).unwrap_err();
            assert_eq!((error.to_string().as_str(), error.remedy().text()), (message, remedy));
        }
    }
}
