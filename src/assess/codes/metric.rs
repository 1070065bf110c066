//! Figures in inches against lengths that were set out in millimetres.
//!
//! A kitchen that is planned in millimetres is planned in rounded feet: 600, 900, 1200. What is asked of it
//! is the figure as its source prints it in metric; where the source prints inches alone and only advises,
//! an inch counts for 25 mm (a foot for 300 mm). A length on the grid of 1/64" is one in inches, whatever
//! it is written in, and is held to the figure itself.

use crate::book::System;
use crate::units::Length;

/// How a source gives a figure in metric.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Printed {
    /// Not at all, and the figure is advice or practice: an inch counts for 25 mm (common practice).
    InInches,
    /// Beside the inches, in whole millimetres, as the model codes do (from memory).
    ToTheMillimetre,
    /// Beside the inches, to the nearest 5 mm, as the 2010 ADA Standards and ICC A117.1 do (34" is 865 mm).
    ToFiveMillimetres,
    /// The figure is the book's own.
    AsWritten,
}

/// An inch, and what is counted for it, in tenths of a millimetre.
const INCH: i64 = 254;
const ROUNDED_INCH: i64 = 250;
/// 1/64" in nanometres.
const GRID: i64 = 396_875;
const MILLIMETRE: i64 = 1_000_000;

impl Printed {
    /// The least that counts against a length.
    pub fn least(self, asked: Length, there: Length, units: System) -> Length {
        match self {
            _ if !is_metric(there, units) => asked,
            Self::AsWritten => asked,
            Self::InInches => in_millimetres(asked, units),
            Self::ToTheMillimetre => asked.min(to_nearest(asked, MILLIMETRE)),
            Self::ToFiveMillimetres => asked.min(to_nearest(asked, 5 * MILLIMETRE)),
        }
    }

    /// The most that counts against a length.
    pub fn most(self, asked: Length, there: Length, units: System) -> Length {
        match self {
            _ if !is_metric(there, units) => asked,
            Self::AsWritten => asked,
            Self::InInches => round_most(asked, units),
            Self::ToTheMillimetre => asked.max(to_nearest(asked, MILLIMETRE)),
            Self::ToFiveMillimetres => asked.max(to_nearest(asked, 5 * MILLIMETRE)),
        }
    }
}

/// What the trade or a guideline advises in inches alone, as the least that counts against a length.
pub fn advised(asked: Length, there: Length, units: System) -> Length {
    Printed::InInches.least(asked, there, units)
}

/// The same as the most that counts.
pub fn advised_most(asked: Length, there: Length, units: System) -> Length {
    Printed::InInches.most(asked, there, units)
}

/// Whether a length was set out in millimetres: in a metric book, or in whole ones, and never on the grid
/// of 1/64"; nothing is as much of either.
fn is_metric(there: Length, units: System) -> bool {
    let whole = |step: i64| there.nanometres() % step == 0;
    if there == Length::ZERO {
        return units.is_metric();
    }
    !whole(GRID) && (units.is_metric() || whole(MILLIMETRE))
}

/// At 25 mm an inch; in a metric book in round figures, the last five millimetres let go, as nobody there says 37.5 mm.
fn in_millimetres(asked: Length, units: System) -> Length {
    let scaled = i128::from(asked.nanometres()) * i128::from(ROUNDED_INCH) / i128::from(INCH);
    let scaled = i64::try_from(scaled).unwrap_or(i64::MAX);
    let odd = if units.is_metric() { scaled.rem_euclid(5 * MILLIMETRE) } else { 0 };
    Length::from_nanometres(scaled - odd)
}

/// The most, in a metric book in the round figure above it.
fn round_most(asked: Length, units: System) -> Length {
    let odd = asked.nanometres().rem_euclid(5 * MILLIMETRE);
    let more = if units.is_metric() && odd > 0 { 5 * MILLIMETRE - odd } else { 0 };
    Length::from_nanometres(asked.nanometres().saturating_add(more))
}

fn to_nearest(asked: Length, step: i64) -> Length {
    Length::from_nanometres(asked.nanometres().saturating_add(step / 2).div_euclid(step).saturating_mul(step))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(millimetres: i64) -> Length {
        Length::from_millimetres(millimetres)
    }

    #[test]
    fn a_foot_is_300_mm_against_what_is_planned_in_millimetres() {
        let (four_feet, metric) = (Length::from_inches(48), System::Metric);
        assert_eq!(advised(four_feet, mm(1200), metric), mm(1200));
        assert_eq!(advised(four_feet, mm(1199), System::Imperial), mm(1200));
        assert_eq!(advised(four_feet, Length::from_inches(47), metric), four_feet);
        assert_eq!(Printed::AsWritten.least(four_feet, mm(1200), metric), four_feet);
    }

    #[test]
    fn what_is_advised_in_a_metric_book_is_a_round_figure() {
        let beside_a_door = Length::from_sixty_fourths(96);
        for there in [0, 10, 30] {
            assert_eq!(advised(beside_a_door, mm(there), System::Metric), mm(35));
            assert_eq!(advised(Length::from_inches(3), mm(there), System::Metric), mm(75));
        }
        assert_eq!(advised_most(Length::from_inches(36), mm(950), System::Metric), mm(915));
        assert_eq!(advised_most(Length::from_inches(36), mm(950), System::Imperial), Length::from_inches(36));
        assert_eq!(advised(beside_a_door, Length::ZERO, System::Imperial), beside_a_door);
    }

    /// Source: 2010 ADA Standards 804.3 (865 mm beside 34"), 608.2.1 (915 mm beside 36"), 804.3 (760 mm beside 30").
    #[test]
    fn what_a_source_prints_in_metric_counts() {
        let inches = Length::from_inches;
        let ada = Printed::ToFiveMillimetres;
        assert_eq!(ada.most(inches(34), mm(865), System::Metric), mm(865));
        assert_eq!(ada.least(inches(30), mm(760), System::Metric), mm(760));
        assert_eq!(ada.least(inches(36), mm(914), System::Metric), inches(36));
        assert_eq!(Printed::ToTheMillimetre.least(inches(36), mm(914), System::Metric), mm(914));
        assert_eq!(Printed::ToTheMillimetre.least(inches(24), mm(609), System::Metric), inches(24));
    }
}
