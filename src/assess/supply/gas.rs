//! Gas: its kind, what an appliance takes, what a branch carries.

use crate::assess::codes::gas;
use crate::units::Length;

use super::number_before;
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

impl Gas {
    /// Reads what can be read.
    pub fn read(text: &str) -> Self {
        let lower = text.to_lowercase();
        let has = |words: &[&str]| words.iter().any(|word| lower.contains(word));
        let kind = if has(&["propane", "lp gas", "lpg", "l.p.", "bottled", "tank"]) {
            Some(GasKind::Propane)
        } else if has(&["natural", "ng,"]) {
            Some(GasKind::Natural)
        } else {
            None
        };
        let thousands = number_before(text, &["kbtu/h", "kbtu", "mbh"]).and_then(|kilo| kilo.checked_mul(1000));
        Self {
            kind,
            btu: thousands.or_else(|| number_before(text, &["btu/h", "btuh", "btu"])),
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
        let asked = Gas::read("natural gas, 51,000 Btu/h");
        assert_eq!((asked.kind, asked.btu), (Some(GasKind::Natural), Some(51_000)));
        let branch = Gas::read("natural gas, 1/2\" pipe, 40 ft");
        assert_eq!(branch.run, Some("40'".parse().unwrap()));
        assert_eq!(branch.carries(1000), Some(81_000));
        assert_eq!(Gas::read("natural gas, 12.7 mm pipe, 12 m").carries(1000), Some(81_000));
        assert_eq!(Gas::read("LPG, 65 kBtu/h").btu, Some(65_000));
        assert_eq!(Gas::read("yes"), Gas::default());
    }
}
