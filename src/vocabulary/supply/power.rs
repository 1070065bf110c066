//! Power: volts, amperes, receptacle.

use crate::units::Length;

use super::InWords;
use super::figure::{Amount, Figure, Figures, Unit};
use super::phrase;
use super::plug::Plug;
use super::wire;
use crate::vocabulary::Mention;

/// A supply of power, as far as its words can be read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Power {
    /// Each voltage named: `120/240 V` names two.
    pub volts: Vec<u32>,
    /// Amperes: of several figures for one circuit, as of a breaker and a wire, from the least to the greatest.
    pub amps: Option<Amount>,
    /// Watts.
    pub watts: Option<Amount>,
    /// The receptacle's pattern.
    pub pattern: Option<Plug>,
    /// The most that its wire carries, in amperes, where its words give the wire's size.
    pub wire: Option<u32>,
    /// Whether nothing else is on the circuit, or something is, where its words tell.
    pub alone: Option<bool>,
    /// Connected without a plug.
    pub hardwired: bool,
    /// In a recessed box.
    pub recessed: bool,
    /// In a box that stands on the wall.
    pub on_the_surface: bool,
    /// How far it stands out from the wall, where its words say it.
    pub proud: Option<Length>,
    /// Its centre from the finished floor.
    pub height: Option<Length>,
}

impl InWords for Power {
    fn of_words(words: &str) -> Self {
        let lower = plain(&words.to_lowercase());
        let figures = Figures::of(words);
        // Two voltages apart may be two circuits, each with its amperes: the first counts.
        let of_one = figures.count(Unit::Volt) <= 1;
        let all_amps = || Amount::scaled(figures.ends(Unit::Ampere)?, 1, 1000);
        let shared = Mention::SharesACircuit.is_in(&lower).then_some(false);
        Self {
            volts: figures.all(Unit::Volt).flat_map(Figure::each).collect(),
            amps: if of_one { all_amps() } else { figures.whole(Unit::Ampere) },
            watts: figures.in_thousandths(Unit::Kilowatt).or_else(|| figures.whole(Unit::Watt)),
            pattern: Plug::of(&lower),
            wire: wire::carries(&lower),
            alone: shared.or_else(|| Mention::OwnCircuit.is_in(&lower).then_some(true)),
            hardwired: ["hardwired", "hard-wired", "hard wired", "fused spur"].iter().any(|word| lower.contains(word)),
            recessed: lower.contains("recessed") && !lower.contains("not recessed"),
            on_the_surface: ["surface", "not recessed", "on the wall"].iter().any(|word| lower.contains(word)),
            proud: phrase::proud(words),
            height: phrase::height(words),
        }
    }
}

impl Power {
    /// Whether the circuit has a voltage that this is made for.
    pub fn runs_on(&self, there: &Self) -> bool {
        let is_universal = self.volts.contains(&100) && self.volts.iter().any(|high| *high >= 240);
        let is_usual = |found: &u32| is_universal && (100..=240).contains(found);
        let meets = |found: &u32| is_usual(found) || self.volts.iter().any(|asked| is_one_supply(*asked, *found));
        self.volts.is_empty() || there.volts.is_empty() || there.volts.iter().any(meets)
    }
}

/// What one supply is called, by country, decade and maker's plate: 110 to 127 V (ANSI C84.1), 220 to 240 V, and
/// 380 to 415 V between phases (IEC 60038: 230/400 V within a tenth; both from memory).
const SUPPLIES: [(u32, u32); 3] = [(110, 127), (220, 240), (380, 415)];

fn is_one_supply(asked: u32, found: u32) -> bool {
    let within = |volts: u32, (low, high): (u32, u32)| (low..=high).contains(&volts);
    asked == found || SUPPLIES.iter().any(|supply| within(asked, *supply) && within(found, *supply))
}

/// With plain hyphens and plain spaces.
fn plain(text: &str) -> String {
    text.chars()
        .map(|letter| match letter {
            '‐' | '‑' | '‒' | '–' => '-',
            space if space.is_whitespace() => ' ',
            other => other,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nema(name: &str) -> Option<Plug> {
        Some(Plug::Nema(name.into()))
    }

    #[test]
    fn one_supply_goes_by_several_figures() {
        let runs = |asked: &str, there: &str| Power::of_words(asked).runs_on(&Power::of_words(there));
        for (asked, there) in [
            ("220-240 V 16 A", "230 V 16 A"),
            ("220–240 V", "230 V"),
            ("220/240 V", "230 V"),
            ("240 V", "230 V"),
            ("115 V", "120 V"),
            ("380-415 V 3N", "400 V 3N"),
            ("100-240 V", "120 V"),
            ("240 V", "120/240 V"),
            ("as the sheet says", "120 V"),
        ] {
            assert!(runs(asked, there), "{asked} on {there}");
        }
        for (asked, there) in [("240 V", "120 V"), ("400 V", "230 V"), ("120 V", "240 V"), ("240 V", "208 V")] {
            assert!(!runs(asked, there), "{asked} on {there}");
        }
    }

    #[test]
    fn of_a_breaker_and_a_wire_the_least_is_there() {
        let there = |words: &str| Power::of_words(words).amps.map(Amount::there);
        assert_eq!(there("240 V, 50 A breaker on 40 A wire"), Some(40));
        assert_eq!(there("two circuits: 240 V 30 A, 120 V 15 A"), Some(30));
        assert_eq!(Power::of_words("120 V 20 A, shared with the refrigerator").alone, Some(false));
        assert_eq!(Power::of_words("120 V 20 A, dedicated").alone, Some(true));
        assert_eq!(Power::of_words("120 V 20 A, circuit of its own").alone, Some(true));
    }

    #[test]
    fn the_trade_s_words_are_read() {
        let whole = |amount: Option<Amount>| amount.map(Amount::taken);
        let power = Power::of_words("120 V 15 A 5-15");
        assert_eq!((power.volts, whole(power.amps), power.pattern), (vec![120], Some(15), nema("5-15")));
        let range = Power::of_words("120/240 V, 50 A, NEMA 14-50R, 11.2 kW");
        assert_eq!((range.volts, whole(range.amps), whole(range.watts)), (vec![120, 240], Some(50), Some(11_200)));
        assert_eq!(range.pattern, nema("14-50"));
        assert_eq!(Power::of_words("240V 30A L6-30").pattern, nema("L6-30"));
        assert!(Power::of_words("240 V 40 A, hard-wired").hardwired);
        assert!(Power::of_words("120 V 20 A 5-20, recessed at the rear").recessed);
        assert_eq!(Power::of_words("as the sheet says"), Power::default());
        assert_eq!(whole(Power::of_words("1500 W at 120 V").watts), Some(1500));
    }
}
