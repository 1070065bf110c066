//! Gas: its kind, what an appliance takes, what a branch carries.

use crate::units::Length;
use crate::vocabulary::{Mention, words_of};

use super::figure::{Amount, Figures, Unit};
use super::gas_kind::{GasKind, Kinds};
use super::phrase;
use super::pipe::{Pipe, run};
use super::valve::{Valve, valve_of_gas};
use super::{InWords, denied};

/// A supply of gas, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Gas {
    /// Its kind, where its words name one; of what can be converted, the one that it is made for.
    pub kind: Option<GasKind>,
    /// How it goes with the other kind, where its words name both.
    pub both: Option<Both>,
    /// What is taken, or said to be carried, in Btu an hour.
    pub btu: Option<Amount>,
    /// Whether its words hold figures of heat that can be understood in more than one way: several to be added, or one
    /// among which another has its share.
    pub unclear: bool,
    /// Nominal size of the pipe.
    pub pipe: Option<Length>,
    /// What the pipe is made of, where that is said not to be steel.
    pub other_pipe: bool,
    /// Whether more than one thing is said to be on the branch.
    pub shared: bool,
    /// What is said of the valve that shuts it.
    pub valve: Option<Valve>,
    /// From the meter to the farthest outlet, by which every section is sized (IFGC 402.4.1, longest length).
    pub run: Option<Length>,
    /// Its centre from the finished floor.
    pub height: Option<Length>,
}

/// How a thing goes with the other gas than the one it is made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Both {
    /// It burns either as it comes.
    Either,
    /// It can be converted.
    Convertible,
    /// It can, and what it takes comes with it.
    KitComes,
}

/// Units that other countries count gas by, and hundredths of a Btu an hour in one: 1 Btu (IT) is
/// 1055.056 J (ISO 31-4, from memory).
const METRIC: [(Unit, u64); 2] = [(Unit::Megajoules, 94_782), (Unit::Kilowatt, 341_214)];
/// Units of heat an hour.
const HEAT: [Unit; 4] = [Unit::KiloBtu, Unit::Btu, Unit::Megajoules, Unit::Kilowatt];
/// Pipes that carry less than steel of the same name, which the code sizes by tables of their own.
const OTHER_PIPES: [&str; 9] =
    ["csst", "corrugat", "flexible", "copper", "cobre", "polyethylene", "plastic", "tubing", "multilayer"];

impl InWords for Gas {
    fn of_words(words: &str) -> Self {
        let lower = words.to_lowercase();
        let figures = Figures::of(words);
        let Kinds { kind, both } = Kinds::of(&lower);
        // Several figures, or one that may be a burner's.
        let told: usize = HEAT.iter().map(|unit| figures.count(*unit)).sum();
        let branch = without_connector(&lower);
        let part_of_all = told > 1 || told > 0 && ["burner", "quemador"].iter().any(|word| lower.contains(word));
        Self {
            kind,
            both,
            btu: heat(&figures),
            unclear: told > 0 && bare_number(&lower) || part_of_all && !has_a_total(&lower) || adds_up(&lower),
            pipe: Pipe::of_words(&branch).size,
            other_pipe: is_another_pipe(&branch),
            shared: is_shared(&lower),
            valve: valve_of_gas(words),
            run: run(&branch),
            height: phrase::height(words),
        }
    }
}

/// No branch of a house is wider; what is longer is no size of it.
const WIDEST_BRANCH: Length = Length::from_inches(4);

/// The words of the branch without those of the connector of one appliance behind it, if they name a pipe besides.
fn without_connector(lower: &str) -> String {
    let is_connector = |part: &str| ["connector", "latiguillo"].iter().any(|word| part.contains(word));
    if !is_connector(lower) {
        return lower.to_owned();
    }
    let joined = [" and ", " with ", " plus ", " + "];
    let apart = joined.iter().fold(phrase::with_points(lower), |text, word| text.replace(word, ", "));
    let others: Vec<&str> = apart.split([',', ';']).filter(|part| !is_connector(part)).collect();
    let others = others.join(",");
    let is_a_pipe = Pipe::of_words(&others).size.is_some_and(|size| size <= WIDEST_BRANCH);
    if is_a_pipe { others } else { lower.to_owned() }
}

/// Whether the words name a pipe that the table is not of: `no CSST` and `no copper, no tubing` name none.
fn is_another_pipe(branch: &str) -> bool {
    let is_named = |at: usize| {
        let before = branch.get(..at).and_then(|before| before.rsplit([',', ';']).next()).unwrap_or_default();
        let next = before.split_whitespace().next_back();
        let joins = next.is_some_and(|word| ["or", "nor", "any"].contains(&word));
        !(denied(next.unwrap_or_default()) || joins && denied(before))
    };
    OTHER_PIPES.iter().flat_map(|word| branch.match_indices(word)).any(|(at, _)| is_named(at))
}

/// Whether the words say that something else is on the branch: what is `on other branches` is not.
fn is_shared(lower: &str) -> bool {
    const ELSEWHERE: [&str; 5] =
        ["other branch", "another branch", "separate branch", "own branch", "branches of their"];
    const DENIES: [&str; 6] = ["not", "no", "nicht", "never", "sin", "without"];
    let is_elsewhere = |part: &str| {
        let joined = ["shar", "tee", "common", "compartid", "geteilt"].iter().any(|word| part.contains(word));
        !joined && ELSEWHERE.iter().any(|words| part.contains(words))
    };
    lower.split([',', ';', '(', ')']).filter(|part| !is_elsewhere(part)).any(|part| {
        let words: Vec<&str> = part.split_whitespace().collect();
        words.iter().enumerate().any(|(at, word)| {
            let before = words.get(at.saturating_sub(3)..at).unwrap_or_default();
            Mention::SharesABranch.is_in(word) && !before.iter().any(|word| DENIES.contains(word))
        })
    })
}

/// The heat that the words name: of several figures from the least to the greatest.
fn heat(figures: &Figures) -> Option<Amount> {
    let btu = |unit, numerator, denominator| Amount::scaled(figures.ends(unit)?, numerator, denominator);
    let metric = || METRIC.iter().find_map(|(unit, per_hundred)| btu(*unit, *per_hundred, 100_000));
    // Thousandths of a thousand are ones.
    btu(Unit::KiloBtu, 1, 1).or_else(|| btu(Unit::Btu, 1, 1000)).or_else(metric)
}

/// Whether a number that may be of heat stands without its unit: `total 84000, largest burner 18000 Btu/h`.
fn bare_number(lower: &str) -> bool {
    let words = lower.split([' ', ';', '(', ')', ':']).map(|word| word.trim_end_matches([',', '.']));
    let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
    let is_large = |word: &str| {
        let digits: String = word.chars().filter(char::is_ascii_digit).collect();
        digits.len() >= 4 && word.chars().all(|letter| letter.is_ascii_digit() || letter == ',')
    };
    let other = ["to", "-", "–", "—", "mm", "m", "ft", "pa", "mbar"];
    let joins = |next: &str| other.contains(&next) || next == "k" || Unit::read(next).is_some();
    let large = words.iter().enumerate().filter(|(_, word)| is_large(word));
    large.into_iter().any(|(at, _)| !words.get(at + 1).is_some_and(|next| joins(next)))
}

/// Whether one of several figures is told to be that of all.
fn has_a_total(lower: &str) -> bool {
    ["total", "in all", "altogether", "all burners"].iter().any(|word| lower.contains(word))
}

/// Whether figures are to be added or multiplied: `15000 + 18000`, `2 x 3.5 kW`, `9000 Btu/h each`.
fn adds_up(lower: &str) -> bool {
    let compact: String = lower.chars().filter(|letter| !letter.is_whitespace()).collect();
    let digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
    let times = compact.char_indices().any(|(at, letter)| {
        matches!(letter, 'x' | '×' | '*' | '+')
            && digit(compact.get(..at).and_then(|before| before.chars().next_back()))
            && digit(compact.get(at + letter.len_utf8()..).and_then(|after| after.chars().next()))
    });
    times || lower.contains('+') || words_of(lower).iter().any(|word| ["each", "apiece"].contains(&word.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kind_input_size_and_run_are_read() {
        let taken = |words: &str| Gas::of_words(words).btu.map(Amount::taken);
        let asked = Gas::of_words("natural gas, 51,000 Btu/h");
        assert_eq!((asked.kind, asked.btu.map(Amount::taken)), (Some(GasKind::Natural), Some(51_000)));
        for within in
            ["natural gas, 51,000 Btu/h, shut-off valve in reach", "natural gas, 51,000 Btu/h, reached from below"]
        {
            assert!(!Gas::of_words(within).unclear, "{within}");
        }
        assert!(Gas::of_words("natural gas, 9,000 Btu/h each").unclear);
        let branch = Gas::of_words("natural gas, 1/2\" pipe, 40 ft");
        assert_eq!((branch.pipe, branch.run), (Some("1/2\"".parse().unwrap()), Some("40'".parse().unwrap())));
        assert_eq!(taken("LPG, 65 kBtu/h"), Some(65_000));
        assert_eq!(taken("natural gas, 45 MJ/h"), Some(42_652));
        assert_eq!(Gas::of_words("natural gas, branch carries 60MJ/h").btu.map(Amount::there), Some(56_869));
        assert_eq!(taken("G20, 11 kW"), Some(37_534));
        assert_eq!(taken("70K BTUs"), Some(70_000));
        assert_eq!(Gas::of_words("yes"), Gas::default());
    }

    #[test]
    fn what_joins_an_appliance_to_the_branch_is_no_branch() {
        for steel in [
            "natural gas, 3/4\" black pipe, 40 ft, shut-off valve and 36\" flexible connector",
            "natural gas, 3/4\" pipe, 40 ft, no CSST",
            "natural gas, 3/4\" steel, 40 ft, no copper, no tubing",
            "natural gas, 3/4\" pipe, 40 ft, 3/8\" flexible connector",
        ] {
            let gas = Gas::of_words(steel);
            let read = (gas.pipe, gas.run, gas.other_pipe);
            assert_eq!(read, (Some("3/4\"".parse().unwrap()), Some("40'".parse().unwrap()), false), "{steel}");
        }
        for other in [
            "natural gas, 3/4\" CSST, 40 ft, and a flexible connector",
            "natural gas, 3/8\" flexible connector, 4 ft",
            "natural gas, 1/2\" copper, 40 ft, no CSST",
            "natural gas, 1/2\", not steel but copper, 40 ft",
            "natural gas, 3/8\" flexible connector, 18\" long",
        ] {
            assert!(Gas::of_words(other).other_pipe, "{other}");
        }
        for alone in [
            "natural gas, 3/4\" pipe, 40 ft; furnace and water heater on other branches; valve",
            "natural gas, 3/4\" pipe, 40 ft, not shared",
        ] {
            assert!(!Gas::of_words(alone).shared, "{alone}");
        }
        for shared in ["natural gas, 3/4\" pipe, 40 ft, furnace too", "natural gas, shared with the boiler"] {
            assert!(Gas::of_words(shared).shared, "{shared}");
        }
    }

    #[test]
    fn the_valve_that_shuts_it_is_read() {
        let valve = |words: &str| Gas::of_words(words).valve;
        for there in [
            "natural gas, 65000 Btu/h, shut-off in the pot cabinet",
            "110 MJ/h, isolating valve in the cupboard",
            "Erdgas, Gashahn",
            "gas natural, llave de corte",
            "natural gas, bayonet",
        ] {
            assert_eq!(valve(there), Some(Valve::There), "{there}");
        }
        for none in [
            "natural gas, 65000 Btu/h, no isolating valve",
            "Erdgas, ohne Absperrhahn",
            "gas natural, sin llave",
            "natural gas, shut-off to come",
        ] {
            assert_eq!(valve(none), Some(Valve::NotThere), "{none}");
        }
        assert_eq!(valve("natural gas, branch carries 65000 Btu/h"), None);
        for reached in [
            "natural gas 3/4\" pipe 40 ft, cock in the cabinet, no valve behind the range",
            "natural gas, new valve, old valve without handle removed",
            "natural gas, valve accessible in the drawer below, no valve in the wall",
        ] {
            assert_eq!(valve(reached), Some(Valve::There), "{reached}");
        }
        for far in [
            "natural gas, no valve behind the range",
            "natural gas, valve at the meter, no valve behind the range",
            "propane, valve at the tank, no valve behind the range",
            "natural gas, old valve missing",
            "natural gas, cock, no shut-off",
        ] {
            assert_eq!(valve(far), Some(Valve::NotThere), "{far}");
        }
    }

    #[test]
    fn figures_that_are_parts_of_a_whole_are_unclear() {
        for words in [
            "natural gas, 15000 + 18000 + 12000 + 9000 burners, oven 30000 Btu/h",
            "gas natural, 2 x 3.5 kW + 2 x 2 kW + 5 kW",
            "natural gas, 4 burners 9000 Btu/h each",
            "natural gas, burners 3.0, 3.0, 1.8, 1.8 and 5.0 kW",
            "natural gas, total 84000, largest burner 18000 Btu/h",
            "natural gas, carries 120000, 75000 Btu/h of it for the furnace",
            "natural gas, carries 120000 Btu/h, 75000 Btu/h of it for the furnace",
        ] {
            assert!(Gas::of_words(words).unclear, "{words}");
        }
        let total = Gas::of_words("natural gas, largest burner 18000 Btu/h, total 84000 Btu/h");
        assert_eq!((total.unclear, total.btu.map(Amount::taken)), (false, Some(84_000)));
        for clear in [
            "natural gas, 40,000–51,000 Btu/h",
            "natural gas, 40,000 to 51,000 Btu/h",
            "natural gas, 51000 Btu/h",
            "natural gas, 51,000 BTU/hr",
            "natural gas, 51000 btu per hour",
            "natural gas, 65 MBH",
        ] {
            assert!(!Gas::of_words(clear).unclear, "{clear}");
        }
    }
}
