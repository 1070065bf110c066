//! A figure with at most one decimal, as pages print it.

use std::fmt;

/// A value rounded to a tenth of a unit, ties to even, that knows whether rounding changed it.
///
/// Prints as `876.3 mm`, `42 sq ft` or `≈ 3.9 m²`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Figure {
    /// Tenths of the unit.
    pub tenths: i128,
    /// The unit as printed.
    pub unit: &'static str,
    /// False when rounding changed the value.
    pub exact: bool,
}

impl Figure {
    /// `value` in base units, shown in a unit that is `size` base units large.
    pub(crate) fn new(value: i128, size: i128, unit: &'static str) -> Figure {
        let tenths = round_half_even(value.saturating_mul(10), size);
        let exact = value.checked_mul(10).is_some_and(|tenfold| tenfold % size == 0);
        Figure { tenths, unit, exact }
    }
}

impl Figure {
    /// It without its unit: `876.3`.
    pub fn number(&self) -> String {
        let mark = if self.exact { "" } else { "≈ " };
        let sign = if self.tenths < 0 { "−" } else { "" };
        match (self.tenths.unsigned_abs() / 10, self.tenths.unsigned_abs() % 10) {
            (whole, 0) => format!("{mark}{sign}{whole}"),
            (whole, tenth) => format!("{mark}{sign}{whole}.{tenth}"),
        }
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.number(), self.unit)
    }
}

/// `value / step` to the nearest whole number; a tie goes to the even one. `step` is above zero.
pub(crate) fn round_half_even(value: i128, step: i128) -> i128 {
    let (down, rest) = (value.div_euclid(step), value.rem_euclid(step));
    let up = match rest.cmp(&(step - rest)) {
        std::cmp::Ordering::Less => false,
        std::cmp::Ordering::Greater => true,
        std::cmp::Ordering::Equal => down % 2 != 0,
    };
    down + i128::from(up)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tie_goes_to_the_even_neighbour() {
        let rows = [(5, 10, 0), (15, 10, 2), (25, 10, 2), (-5, 10, 0), (-15, 10, -2), (14, 10, 1), (-16, 10, -2)];
        for (value, step, rounded) in rows {
            assert_eq!(round_half_even(value, step), rounded, "{value}/{step}");
        }
    }

    #[test]
    fn a_figure_has_at_most_one_decimal_and_says_when_it_was_rounded() {
        assert_eq!(Figure::new(876_300, 1000, "mm").to_string(), "876.3 mm");
        assert_eq!(Figure::new(42_000, 1000, "sq ft").to_string(), "42 sq ft");
        assert_eq!(Figure::new(3_949, 1000, "m²").to_string(), "≈ 3.9 m²");
        assert_eq!(Figure::new(-1_500, 1000, "kg").to_string(), "−1.5 kg");
        assert_eq!(Figure::new(-1, 1000, "kg").to_string(), "≈ 0 kg");
    }
}
