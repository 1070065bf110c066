//! Lengths to places on the drawing, in whole thousandths of a user unit.

use crate::units::System;
use crate::units::length::Length;

/// Thousandths of a user unit; 96 user units are an inch of paper or screen.
pub type Mil = i64;

/// How many times smaller than life a drawing is on paper, and how much of its own size it takes there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scale {
    ratio: i64,
    printed: Printed,
}

/// How large a drawing is printed that is lettered for a screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Printed {
    /// As it is drawn.
    Whole,
    /// At three quarters: what is lettered at 12.5 units is printed at 7 pt.
    ThreeQuarters,
}

impl Printed {
    /// Parts on paper of so many as it is drawn.
    const fn share(self) -> (i64, i64) {
        match self {
            Self::Whole => (1, 1),
            Self::ThreeQuarters => (3, 4),
        }
    }
}

/// Where a drawing is seen, which decides its scale and how much it says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// A desk's screen or a printed sheet, where the scale holds: 1:24 or 1:10 where it fits.
    Desk,
    /// A telephone: smaller, with fewer figures in the same lettering.
    Phone,
}

const MILS_PER_INCH: i128 = 96_000;
const NANOMETRES_PER_INCH: i128 = 25_400_000;

impl Scale {
    /// One to `ratio`.
    pub const fn one_to(ratio: i64) -> Scale {
        Scale { ratio, printed: Printed::Whole }
    }

    /// The largest of the paper's scales at which `width` by `height` has room.
    pub fn fitting(paper: Paper, units: System, width: Length, height: Length) -> Scale {
        // With its strings a drawing takes a third of the width of an A4 or a Letter sheet, and less than half its
        // height: two stand beside what they are brought to.
        let (ratios, room, tall): (&[i64], Mil, Mil) = match (paper, units.is_metric()) {
            (Paper::Desk, false) => (&[24, 32, 48, 64, 96, 192], 230_000, 320_000),
            (Paper::Desk, true) => (&[10, 20, 50, 100, 200], 230_000, 510_000),
            (Paper::Phone, false) => (&[24, 32, 48, 64, 96, 192], 160_000, 420_000),
            (Paper::Phone, true) => (&[20, 50, 100, 200], 160_000, 420_000),
        };
        let printed = if paper == Paper::Desk { Printed::ThreeQuarters } else { Printed::Whole };
        Scale::largest((ratios, printed), (room, tall), (width, height))
    }

    /// The largest of the paper's scales at which an opening has room that is seen from above, with what stands across
    /// from it: under what it is brought to, on the same leaf as its other views.
    pub fn of_a_plan(paper: Paper, units: System, width: Length, deep: Length) -> Scale {
        let ratios: &[i64] = match (paper, units.is_metric()) {
            (Paper::Desk, false) => &[24, 32, 48, 64, 96, 192],
            (Paper::Desk, true) => &[10, 20, 50, 100, 200],
            (Paper::Phone, _) => return Scale::fitting(paper, units, width, deep),
        };
        Scale::largest((ratios, Printed::ThreeQuarters), (190_000, 140_000), (width, deep))
    }

    /// The largest of the paper's scales at which a room has room.
    pub fn of_a_room(paper: Paper, units: System, width: Length, height: Length) -> Scale {
        // With its walls and strings a plan keeps within the 184 mm that A4 leaves for text.
        let (ratios, room, tall): (&[i64], Mil, Mil) = match (paper, units.is_metric()) {
            (Paper::Desk, false) => (&[24, 32, 48, 64, 96, 128, 192], 560_000, 560_000),
            (Paper::Desk, true) => (&[20, 50, 100, 200], 560_000, 560_000),
            (Paper::Phone, false) => (&[32, 48, 64, 96, 128, 192], 280_000, 420_000),
            (Paper::Phone, true) => (&[50, 100, 200], 280_000, 420_000),
        };
        Scale::largest((ratios, Printed::Whole), (room, tall), (width, height))
    }

    /// The largest of the paper's scales at which counters that meet have room, with strings on every side.
    pub fn of_counters(paper: Paper, units: System, width: Length, height: Length) -> Scale {
        let (ratios, room): (&[i64], Mil) = match (paper, units.is_metric()) {
            (Paper::Desk, false) => (&[24, 32, 48, 64, 96, 128, 192], 440_000),
            (Paper::Desk, true) => (&[20, 50, 100, 200], 440_000),
            (Paper::Phone, false) => (&[32, 48, 64, 96, 128, 192], 190_000),
            (Paper::Phone, true) => (&[50, 100, 200], 190_000),
        };
        Scale::largest((ratios, Printed::Whole), (room, room), (width, height))
    }

    /// The first of some scales, largest first, at which a width and a height have room.
    fn largest(
        (ratios, printed): (&[i64], Printed),
        (room, tall): (Mil, Mil),
        (width, height): (Length, Length),
    ) -> Scale {
        let fits = |ratio: &&i64| {
            let scale = Scale { ratio: **ratio, printed };
            scale.of(width) <= room && scale.of(height) <= tall
        };
        Scale { ratio: *ratios.iter().find(fits).or(ratios.last()).unwrap_or(&1), printed }
    }

    /// How wide what is so many thousandths of a unit wide is printed, in thousandths of a millimetre.
    pub const fn printed(self, wide: Mil) -> Mil {
        let (parts, of) = self.printed.share();
        wide * 254 * parts / (960 * of)
    }

    /// A length on the drawing, rounded to the nearest thousandth of a unit.
    pub fn of(self, length: Length) -> Mil {
        let (parts, of) = self.printed.share();
        let top = i128::from(length.nanometres()) * MILS_PER_INCH * i128::from(of);
        let below = NANOMETRES_PER_INCH * i128::from(self.ratio * parts);
        let rounded = (2 * top + below).div_euclid(2 * below);
        Mil::try_from(rounded).unwrap_or(Mil::MAX)
    }

    /// As it is written under a view: `1:16`.
    pub fn words(self) -> String {
        format!("1:{}", self.ratio)
    }
}

/// A coordinate as SVG writes it: `144.857`.
pub fn units(mil: Mil) -> String {
    let sign = if mil < 0 { "-" } else { "" };
    let (whole, rest) = (mil.unsigned_abs() / 1000, mil.unsigned_abs() % 1000);
    if rest == 0 {
        return format!("{sign}{whole}");
    }
    let rest = format!("{rest:03}");
    format!("{sign}{whole}.{}", rest.trim_end_matches('0'))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 96 CSS pixels are one inch (CSS Values and Units 3, section 6.2), so at 1:16 an inch is 6.
    #[test]
    fn an_inch_is_six_units_at_one_to_sixteen() {
        let inch = Length::from_nanometres(25_400_000);
        assert_eq!(units(Scale::one_to(16).of(inch)), "6");
        assert_eq!(units(Scale::one_to(24).of(inch)), "4");
        assert_eq!(units(Scale::one_to(32).of(inch)), "3");
    }

    #[test]
    fn a_coordinate_is_rounded_to_the_nearest_thousandth() {
        let sixteenth = Length::from_nanometres(1_587_500);
        assert_eq!(units(Scale::one_to(16).of(sixteenth)), "0.375");
        let millimetre = Length::from_nanometres(1_000_000);
        assert_eq!(units(Scale::one_to(16).of(millimetre)), "0.236");
        assert_eq!(units(Scale::one_to(16).of(Length::ZERO - millimetre)), "-0.236");
    }

    #[test]
    fn a_wide_alcove_is_drawn_smaller_than_a_narrow_one() {
        let inches = |n: i64| Length::from_nanometres(n * 25_400_000);
        let scale = |w| Scale::fitting(Paper::Desk, System::Imperial, inches(w), inches(34)).words();
        assert_eq!(scale(36), "1:24");
        assert_eq!(scale(54), "1:32");
    }

    /// ISO 5455:1979, table 1: reduction scales 1:2, 1:5, 1:10 and their multiples by ten.
    #[test]
    fn a_metric_book_is_drawn_at_metric_scales() {
        let scale = |w, h| {
            let (w, h) = (Length::from_millimetres(w), Length::from_millimetres(h));
            Scale::fitting(Paper::Desk, System::Metric, w, h).words()
        };
        assert_eq!(scale(400, 870), "1:10");
        assert_eq!(scale(600, 870), "1:20");
        assert_eq!(scale(900, 2000), "1:20");
        assert_eq!(scale(1800, 2400), "1:50");
    }
}
