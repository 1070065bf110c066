//! Gas: its kind, what an appliance takes, what a branch carries.

use crate::units::Length;

use super::InWords;
use super::figure::{Amount, Figures, Unit};
use super::phrase;
use super::pipe::{Pipe, run};

/// A kind of gas.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GasKind {
    /// Natural gas, from the main.
    Natural,
    /// Propane or butane, from a tank or a bottle.
    Propane,
}

impl GasKind {
    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Natural => "natural gas",
            Self::Propane => "propane or butane",
        }
    }
}

/// A supply of gas, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Gas {
    /// Its kind.
    pub kind: Option<GasKind>,
    /// What is taken, or said to be carried, in Btu an hour.
    pub btu: Option<Amount>,
    /// Nominal size of the pipe.
    pub pipe: Option<Length>,
    /// From the meter to the farthest outlet, by which every section is sized (IFGC 402.4.1, longest length).
    pub run: Option<Length>,
    /// Its centre from the finished floor.
    pub height: Option<Length>,
}

/// Units that other countries count gas by, and hundredths of a Btu an hour in one: 1 Btu (IT) is
/// 1055.056 J (ISO 31-4, from memory).
const METRIC: [(Unit, u64); 2] = [(Unit::Megajoules, 94_782), (Unit::Kilowatt, 341_214)];

impl InWords for Gas {
    fn of_words(words: &str) -> Self {
        let lower = words.to_lowercase();
        let has = |words: &[&str]| words.iter().any(|word| lower.contains(word));
        let is_a_word =
            |known: &[&str]| lower.split(|letter: char| !letter.is_alphanumeric()).any(|word| known.contains(&word));
        let kind = if has(&[
            "propan",
            "butan",
            "lp gas",
            "lpg",
            "l.p.",
            "bottle",
            "bombona",
            "tank",
            "flüssiggas",
            "fluessiggas",
            "licuado",
        ]) || is_a_word(&["glp", "gpl", "g30", "g31", "lp"])
        {
            Some(GasKind::Propane)
        } else if has(&["natural", "naturel", "erdgas", "mains", "nat. gas", "nat gas"])
            || is_a_word(&["ng", "g20", "g25"])
        {
            Some(GasKind::Natural)
        } else {
            None
        };
        let figures = Figures::of(words);
        let metric = || {
            METRIC
                .iter()
                .find_map(|(unit, per_hundred)| Amount::scaled(figures.thousandths(*unit)?, *per_hundred, 100_000))
        };
        Self {
            kind,
            // Thousandths of a thousand are ones.
            btu: figures.in_thousandths(Unit::KiloBtu).or_else(|| figures.whole(Unit::Btu)).or_else(metric),
            pipe: Pipe::of_words(words).size,
            run: run(&lower),
            height: phrase::height(words),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kind_input_size_and_run_are_read() {
        let taken = |words: &str| Gas::of_words(words).btu.map(Amount::taken);
        let asked = Gas::of_words("natural gas, 51,000 Btu/h");
        assert_eq!((asked.kind, asked.btu.map(Amount::taken)), (Some(GasKind::Natural), Some(51_000)));
        let branch = Gas::of_words("natural gas, 1/2\" pipe, 40 ft");
        assert_eq!((branch.pipe, branch.run), (Some("1/2\"".parse().unwrap()), Some("40'".parse().unwrap())));
        assert_eq!(taken("LPG, 65 kBtu/h"), Some(65_000));
        assert_eq!(taken("natural gas, 45 MJ/h"), Some(42_652));
        assert_eq!(Gas::of_words("natural gas, branch carries 60MJ/h").btu.map(Amount::there), Some(56_869));
        assert_eq!(taken("G20, 11 kW"), Some(37_534));
        assert_eq!(Gas::of_words("NG 65 MBH").kind, Some(GasKind::Natural));
        assert_eq!(Gas::of_words("existing tubing, 65 MBH").kind, None);
        for words in ["mains gas, 9 kW", "nat. gas", "Erdgas E", "gas natural"] {
            assert_eq!(Gas::of_words(words).kind, Some(GasKind::Natural), "{words}");
        }
        for words in ["LPG", "Flüssiggas 50 mbar", "bottled gas", "gas licuado"] {
            assert_eq!(Gas::of_words(words).kind, Some(GasKind::Propane), "{words}");
        }
        // Gas that a town makes is neither.
        assert_eq!(Gas::of_words("town gas").kind, None);
        assert_eq!(Gas::of_words("yes"), Gas::default());
    }
}
