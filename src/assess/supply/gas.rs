//! Gas: its kind, what an appliance takes, what a branch carries.

use crate::assess::codes::gas;
use crate::units::Length;

use super::figure::{End, Figures, Unit};
use super::pipe::{Pipe, run};

/// A kind of gas.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GasKind {
    /// Natural gas, from the main.
    Natural,
    /// Propane, from a tank.
    Propane,
}

impl GasKind {
    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Natural => "natural gas",
            Self::Propane => "propane",
        }
    }
}

/// A supply of gas, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Gas {
    /// Its kind.
    pub kind: Option<GasKind>,
    /// What is taken, or said to be carried, in Btu an hour.
    pub btu: Option<u32>,
    /// Nominal size of the pipe.
    pub pipe: Option<Length>,
    /// From the meter to the farthest outlet, by which every section is sized (IFGC 402.4.1, longest length).
    pub run: Option<Length>,
}

/// Units that other countries count gas by, and hundredths of a Btu an hour in one: 1 Btu (IT) is
/// 1055.056 J (ISO 31-4, from memory).
const METRIC: [(Unit, u64); 2] = [(Unit::Megajoules, 94_782), (Unit::Kilowatt, 341_214)];

impl Gas {
    /// What a thing takes: of `40000–51000 Btu/h` the 51,000.
    pub fn asked(text: &str) -> Self {
        Self::read(text, End::Taken)
    }

    /// What a branch carries: of `40000–51000 Btu/h` the 40,000.
    pub fn there(text: &str) -> Self {
        Self::read(text, End::There)
    }

    fn read(text: &str, end: End) -> Self {
        let lower = text.to_lowercase();
        let has = |words: &[&str]| words.iter().any(|word| lower.contains(word));
        let kind = if has(&["propane", "lp gas", "lpg", "l.p.", "bottled", "tank"]) {
            Some(GasKind::Propane)
        } else if has(&["natural"]) || lower.split(|letter: char| !letter.is_alphanumeric()).any(|word| word == "ng") {
            Some(GasKind::Natural)
        } else {
            None
        };
        let figures = Figures::of(text);
        // Thousandths of a thousand are ones.
        let thousands = figures.thousandths(Unit::KiloBtu, end).and_then(|btu| u32::try_from(btu).ok());
        let metric = METRIC.iter().find_map(|(unit, per_hundred)| {
            let btu = figures.thousandths(*unit, end)?.checked_mul(*per_hundred)?;
            let whole = if end == End::Taken { btu.div_ceil(100_000) } else { btu / 100_000 };
            u32::try_from(whole).ok()
        });
        Self {
            kind,
            btu: thousands.or_else(|| figures.whole(Unit::Btu, end)).or(metric),
            pipe: Pipe::read(text).size,
            run: run(&lower),
        }
    }

    /// What the branch carries, in Btu an hour: as the book says, or by the table for its size and run.
    pub fn carries(&self, heating_value: u32) -> Option<u32> {
        let by_table = || gas::carries(self.pipe?, self.run?)?.checked_mul(heating_value);
        self.btu.or_else(by_table)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kind_input_size_and_run_are_read() {
        let asked = Gas::asked("natural gas, 51,000 Btu/h");
        assert_eq!((asked.kind, asked.btu), (Some(GasKind::Natural), Some(51_000)));
        let branch = Gas::asked("natural gas, 1/2\" pipe, 40 ft");
        assert_eq!(branch.run, Some("40'".parse().unwrap()));
        assert_eq!(branch.carries(1000), Some(81_000));
        assert_eq!(Gas::asked("natural gas, 12.7 mm pipe, 12 m").carries(1000), Some(81_000));
        assert_eq!(Gas::asked("LPG, 65 kBtu/h").btu, Some(65_000));
        assert_eq!(Gas::asked("natural gas, 45 MJ/h").btu, Some(42_652));
        assert_eq!(Gas::there("natural gas, branch carries 60MJ/h").btu, Some(56_869));
        assert_eq!(Gas::asked("G20, 11 kW").btu, Some(37_534));
        assert_eq!(Gas::asked("NG 65 MBH").kind, Some(GasKind::Natural));
        assert_eq!(Gas::asked("existing tubing, 65 MBH").kind, None);
        assert_eq!(Gas::asked("yes"), Gas::default());
    }
}
