//! What a service is, read from the trade's words: `120 V 15 A 5-15`, `natural gas, 51000 Btu/h`.
//!
//! The book keeps the words, which are printed as they stand, with what is understood of them, which is compared.

mod alone;
mod bare;
mod blocking;
mod drain;
mod duct;
mod faces;
mod figure;
mod gas;
mod gas_kind;
mod hole;
mod lines;
mod phrase;
mod pipe;
mod plug;
mod power;
mod raised;
mod side;
mod sizes;
mod valve;
mod walls;
mod water;
mod wire;
mod worded;

use figure::{Figures, Unit};

pub use blocking::{Backing, Blocking};
pub use drain::{Drain, DrainWay, DrainWays, OutletGoes};
pub use duct::{Duct, Ends};
pub use figure::Amount;
pub use gas::{Both, Gas};
pub use gas_kind::GasKind;
pub(super) use phrase::lengths;
pub use phrase::{Face, above_the_rough_floor, heights, one_length};

use crate::units::LengthRange;
pub use pipe::{Pipe, Section};
pub use plug::{Plug, PlugStandard};
pub use power::Power;
pub use side::Side;
pub use valve::Valve;
pub use water::{Water, is_smaller};
pub use worded::{InWords, Worded};

/// Airflow in cubic feet a minute: of `300–600 cfm` the most that is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Airflow(pub u32);

impl InWords for Option<Airflow> {
    fn of_words(words: &str) -> Self {
        airflow(words).map(Airflow)
    }
}

/// A spread in the trade's words: a length, or two as a range, as far as it can be understood in one way.
impl InWords for Option<LengthRange> {
    fn of_words(words: &str) -> Self {
        if let Ok(range) = LengthRange::parse(words) {
            return Some(range);
        }
        match lengths(words).as_slice() {
            [one] => LengthRange::between(one.length, one.to.unwrap_or(one.length)).ok(),
            [one, other] if one.length < other.length => LengthRange::between(one.length, other.length).ok(),
            _ => None,
        }
    }
}

fn airflow(words: &str) -> Option<u32> {
    let figures = Figures::of(words);
    let of = |unit, numerator: u64, denominator: u64| {
        let (_, most) = figures.thousandths(unit)?;
        u32::try_from(most.checked_mul(numerator)? / denominator / 1000).ok()
    };
    // A foot is 0.3048 m exactly: 1 cfm is 1.699 010 795 52 m³/h, or 0.471 947 443 2 l/s.
    figures
        .whole(Unit::Cfm)
        .map(Amount::taken)
        .or_else(|| of(Unit::CubicMetres, 1_000_000_000, 1_699_010_796))
        .or_else(|| of(Unit::Litres, 10_000_000_000, 4_719_474_432))
}

/// Words that deny what follows them.
const DENIES: [&str; 13] =
    ["no", "not", "never", "without", "nor", "non", "neither", "sin", "ni", "ohne", "kein", "keine", "sans"];

/// Whether one of the last words of what stands before something denies it.
fn denied(before: &str) -> bool {
    before.split_whitespace().rev().take(3).any(|word| DENIES.contains(&word))
}

/// Words that say that a service is not there, by themselves.
const NONE: [&str; 6] = ["none", "no", "nothing", "not there", "absent", "capped off"];
/// Words of air that is blown back into the room.
const NOWHERE: [&str; 3] = ["recirculat", "ductless", "unvented"];
/// How the words of a duct begin where a dryer keeps its air and needs none.
const KEEPS_ITS_AIR: [&str; 3] = ["condens", "heat pump", "heat-pump"];
/// What is told not to be there, after `no`.
const OF: [&str; 14] = [
    "gas",
    "water",
    "drain",
    "duct",
    "power",
    "outlet",
    "receptacle",
    "circuit",
    "supply",
    "line",
    "pipe",
    "vent",
    "electricity",
    "blocking",
];

/// Whether the trade's words say that a service is not there: `none`, `no gas in the house`.
pub fn is_none(words: &str) -> bool {
    let lower = words.trim().to_lowercase();
    let mut each = lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let denied = matches!(each.next(), Some("no" | "none")) && each.next().is_some_and(|word| OF.contains(&word));
    // `1/2" hot, recirculation not needed` is a line of water.
    let is_of_water = || {
        let water = Water::of_words(&lower);
        water.hot || water.cold
    };
    let nowhere = |word: &&str| lower.starts_with(*word) || lower.contains(*word) && !is_of_water();
    let goes_nowhere = NOWHERE.iter().any(nowhere);
    // `none, condensing`: what follows a sign says why.
    let first = lower.split([',', ';', ':', '(', '.', '–', '—']).next().unwrap_or_default();
    let first = first.split(" - ").next().unwrap_or_default().trim();
    // `no. 2 valve` counts valves.
    let by_itself = NONE.contains(&first) && !lower.starts_with("no.");
    by_itself || denied || goes_nowhere
}

/// Whether the words of a duct say that none is needed: as of any service, or `condensing` of a dryer.
pub fn is_no_duct(words: &str) -> bool {
    let lower = words.trim().to_lowercase();
    is_none(&lower) || KEEPS_ITS_AIR.iter().any(|word| lower.starts_with(word))
}

#[cfg(test)]
mod tests {
    use super::{airflow, is_no_duct, is_none};

    #[test]
    fn what_is_told_not_to_be_there_is_read() {
        for words in ["none", "None", "no gas in the house", "no water", "nothing", "no outlet behind it", "Ductless"] {
            assert!(is_none(words), "{words}");
        }
        for words in ["none, condensing", "None (heat pump)", "none – condenses", "nothing; it condenses", "no, none"]
        {
            assert!(is_none(words) && is_no_duct(words), "{words}");
        }
        assert!(is_no_duct("condensing") && !is_none("heat pump dryer, hose 3/4\"") && !is_no_duct("4\" rigid"));
        assert!(!is_none("1/2\" hot and cold with stops, recirculation not needed"));
        assert!(!is_none("1/2\" hot, recirculation line") && is_none("hood, recirculating"));
        for words in ["1/2\" hot", "no. 2 valve, 3/8\"", "north wall", "1/4\", no shut-off", "none of brass, 3/8\""] {
            assert!(!is_none(words), "{words}");
        }
    }

    /// Source: the foot of 0.3048 m (international yard and pound agreement): 680 m³/h and 188.9 l/s are 400 cfm.
    #[test]
    fn airflow_is_read_in_every_unit_and_typography() {
        for words in
            ["300–400 cfm", "400 CFM", "≥ 400\u{a0}cfm", "680 m³/h", "680\u{202f}m3/h", "189 l/s", "up to 400 cfm"]
        {
            assert_eq!(airflow(words), Some(400), "{words}");
        }
        assert_eq!(airflow("1,200 cfm"), Some(1200));
        assert_eq!(airflow("strong"), None);
    }
}
