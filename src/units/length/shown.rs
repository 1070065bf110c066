//! How a length is printed: inches to a grain, with rounding marked, or millimetres.

use super::super::figure::{Figure, round_half_even};
use super::{INCH, Length, MILLIMETRE, SIXTY_FOURTH};
use std::fmt;

/// How fine an imperial figure is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Grain {
    /// 1/16 in, the usual grain on site.
    #[default]
    Sixteenth,
    /// 1/32 in, for close work.
    ThirtySecond,
}

impl Grain {
    /// Parts in an inch.
    pub const fn parts(self) -> i64 {
        match self {
            Grain::Sixteenth => 16,
            Grain::ThirtySecond => 32,
        }
    }
}

/// A length rounded for print, ties to even, in parts, so that a page can set a real fraction.
///
/// As plain text: `34 1/2"`, `2'-10 1/2"` (drafting style, SD-28), `≈ 23 5/8"`, `876 mm`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Shown {
    /// Whole feet; none when it is told in inches alone.
    pub feet: Option<i64>,
    /// Whole inches, below twelve where feet stand before them.
    pub inches: i64,
    /// Above the line; zero for no fraction.
    pub numerator: i64,
    /// Below the line, in lowest terms.
    pub denominator: i64,
    /// False when rounding changed the value: print `≈` before it.
    pub exact: bool,
    /// A minus sign stands before it.
    pub negative: bool,
    /// A figure in millimetres, which then stands in place of feet, inches and fraction.
    pub metric: Option<Figure>,
}

/// Nanometres in a tenth of a millimetre.
const TENTH: i64 = MILLIMETRE / 10;

/// From here on what comes from inches is told in whole millimetres: a gap is shorter, a thing is longer.
const WHOLE_FROM: u64 = 50 * MILLIMETRE.unsigned_abs();

impl Shown {
    pub(super) fn imperial(length: Length, grain: Grain) -> Shown {
        Shown::in_inches(length.nanometres(), grain.parts())
    }

    pub(super) fn in_inches(nanometres: i64, parts: i64) -> Shown {
        let (size, rounded) =
            (i128::from(INCH), round_half_even(i128::from(nanometres) * i128::from(parts), INCH.into()));
        let exact = rounded * size == i128::from(nanometres) * i128::from(parts);
        // No larger than an i64 again: an inch is millions of nanometres, and a grain a 64th at most.
        let whole = i64::try_from(rounded.abs()).unwrap_or(i64::MAX);
        let (mut numerator, mut denominator) = (whole % parts, parts);
        while numerator % 2 == 0 && denominator > 1 {
            (numerator, denominator) = (numerator / 2, denominator / 2);
        }
        Shown { feet: None, inches: whole / parts, numerator, denominator, exact, negative: rounded < 0, metric: None }
    }

    /// What is in tenths of a millimetre, and no whole number of 64ths, was written so and stays so.
    pub(super) fn metric(length: Length) -> Shown {
        let nanometres = length.nanometres();
        let is_written = nanometres % TENTH == 0 && nanometres % SIXTY_FOURTH != 0;
        let to_a_tenth = is_written || nanometres.unsigned_abs() < WHOLE_FROM;
        let step = if to_a_tenth { TENTH } else { MILLIMETRE };
        let rounded = round_half_even(nanometres.into(), step.into()).saturating_mul(step.into());
        // Nobody measures finer than that, so the figure bears no mark; but nothing is not said of something.
        let exact = rounded != 0 || nanometres == 0;
        let figure = Figure { exact, ..Figure::new(rounded, MILLIMETRE.into(), "mm") };
        Shown {
            feet: None,
            inches: 0,
            numerator: 0,
            denominator: 1,
            exact: figure.exact,
            negative: figure.tenths < 0,
            metric: Some(figure),
        }
    }

    /// The same in inches alone: `40 1/2"`. A metric figure stays as it is.
    pub fn inches(self) -> Shown {
        let inches = self.feet.unwrap_or(0) * 12 + self.inches;
        Shown { feet: None, inches, ..self }
    }

    /// The same in feet and inches: `3'-4 1/2"`, `0'-0 3/4"` (SD-28). A metric figure stays as it is.
    pub fn feet_and_inches(self) -> Shown {
        if self.metric.is_some() {
            return self;
        }
        let inches = self.inches().inches;
        Shown { feet: Some(inches / 12), inches: inches % 12, ..self }
    }
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(figure) = self.metric {
            return figure.fmt(f);
        }
        let mark = if self.exact { "" } else { "≈ " };
        let sign = if self.negative { "−" } else { "" };
        write!(f, "{mark}{sign}")?;
        if let Some(feet) = self.feet {
            write!(f, "{feet}'-")?;
        }
        match (self.inches, self.numerator, self.denominator) {
            (whole, 0, _) => write!(f, "{whole}\""),
            (0, over, under) if self.feet.is_none() => write!(f, "{over}/{under}\""),
            (whole, over, under) => write!(f, "{whole} {over}/{under}\""),
        }
    }
}
