//! Power: volts, amperes, receptacle.

use crate::units::Length;

use super::alone::alone;
use super::figure::{Amount, Figure, Figures, Unit};
use super::phrase;
use super::plug::{Plug, PlugStandard};
use super::wire;
use super::{InWords, denied};

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
    /// Of how many phases it is; what takes several ways of being connected names the fewest.
    pub phases: Option<u32>,
    /// Whether it is told as two lines of a house's supply, each with its amperes.
    pub two_lines: bool,
    /// Whether a plain receptacle of 120 V and 15 or 20 A is named.
    pub plain_receptacle: bool,
    /// Whether a socket of a house is named in 220 to 240 V, of which its country says the pattern.
    pub plain_socket: bool,
    /// Connected without a plug.
    pub hardwired: bool,
    /// Through a switched fuse, which may have a socket behind it.
    pub fused_spur: bool,
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
        let volts: Vec<u32> = figures.all(Unit::Volt).flat_map(Figure::each).collect();
        let two_lines = is_of_two_lines(&lower);
        let amps = if of_one { all_amps() } else { figures.whole(Unit::Ampere) };
        Self {
            plain_receptacle: is_plain_receptacle(&lower, &volts, amps),
            plain_socket: is_plain_socket(&lower, &volts, amps),
            volts,
            amps,
            watts: figures.in_thousandths(Unit::Kilowatt).or_else(|| figures.whole(Unit::Watt)),
            pattern: Plug::of(&lower),
            wire: wire::carries(&lower),
            alone: alone(&lower),
            phases: phases(&lower).or_else(|| two_lines.then_some(2)),
            two_lines,
            hardwired: HARDWIRED.iter().any(|word| is_told(&lower, word)) && !takes_a_cord_too(&lower),
            fused_spur: FUSED_SPURS.iter().any(|word| is_told(&lower, word)),
            recessed: RECESSED.iter().any(|word| is_told(&lower, word)),
            on_the_surface: ["surface", "not recessed", "on the wall"].iter().any(|word| lower.contains(word)),
            proud: phrase::proud(words),
            height: phrase::height(words),
        }
    }
}

/// Words of what is connected without a plug.
const HARDWIRED: [&str; 15] = [
    "hardwired",
    "hard-wired",
    "hard wired",
    "hardwire",
    "hard-wire",
    "direct wired",
    "direct-wired",
    "direct wire",
    "fused spur",
    "fused connection unit",
    "junction box",
    "conexión directa",
    "cableado directo",
    "festanschluss",
    "fest angeschlossen",
];
/// Those of them that a country's plug may be taken off for, or that feed a socket.
const FUSED_SPURS: [&str; 3] = ["fused spur", "fused connection unit", "fcu"];

/// Words of a box that stands back in its wall.
const RECESSED: [&str; 5] = ["recessed", "inset", "in a recess", "let into the wall", "clock outlet"];

/// Whether a text says so, and does not deny it.
fn is_told(lower: &str, word: &str) -> bool {
    lower.match_indices(word).any(|(at, _)| !denied(lower.get(..at).unwrap_or_default()))
}

/// Whether a cord is named beside the wiring, as another way to connect it: `hard-wired or cord kit`.
fn takes_a_cord_too(lower: &str) -> bool {
    let split = lower.split(|letter: char| !letter.is_alphanumeric());
    let words: Vec<&str> = split.filter(|word| !word.is_empty()).collect();
    let has = |named: &[&str]| words.iter().any(|word| named.contains(word));
    let is_a_choice =
        has(&["or", "o", "oder", "kit", "optional", "available", "accessory"]) || lower.contains("hard-wired/");
    let cords = ["cord", "plug", "cordón", "clavija", "enchufe"];
    is_a_choice && cords.iter().any(|word| words.contains(word) && is_told(lower, word))
}

/// What a receptacle is called, whatever its pattern.
const RECEPTACLES: [&str; 4] = ["duplex", "receptacle", "outlet", "quad"];
/// Words of receptacles that are not those of a house's branch circuits.
const LOCKING: [&str; 3] = ["locking", "twist", "rv "];
/// Volts and amperes of the receptacles that are in every room of a North American house (NEC 210.52, 210.21(B), from
/// memory).
const USUAL: ((u32, u32), (u32, u32)) = ((110, 127), (15, 20));

/// Whether a receptacle is named and nothing but the volts and amperes of a usual one: its pattern is 5-15 or 5-20.
fn is_plain_receptacle(lower: &str, volts: &[u32], amps: Option<Amount>) -> bool {
    let within = |figure: u32, (least, most): (u32, u32)| (least..=most).contains(&figure);
    let is_usual = !volts.is_empty() && volts.iter().all(|volts| within(*volts, USUAL.0));
    let carries = amps.is_some_and(|amps| within(amps.there(), USUAL.1) && within(amps.taken(), USUAL.1));
    let named = RECEPTACLES.iter().any(|word| is_told(lower, word));
    is_usual && carries && named && !LOCKING.iter().any(|word| lower.contains(word))
}

/// What a socket is called where there are 220 to 240 V, whatever its pattern.
const SOCKETS: [&str; 8] = [
    "steckdose",
    "enchufe",
    "toma de corriente",
    "base de corriente",
    "toma con toma de tierra",
    "prise de courant",
    "socket",
    "stikkontakt",
];
/// Words of sockets that are not those of a house's rooms.
const OTHERS: [&str; 8] = ["cee", "perilex", "industri", "commando", "drehstrom", "herd", "trifásic", "camping"];
/// Volts of those, and the most amperes that they carry (IEC 60884-1, from memory).
const OF_ROOMS: ((u32, u32), u32) = ((220, 240), 16);

/// Whether a socket is named and nothing but the volts and amperes of a usual one.
fn is_plain_socket(lower: &str, volts: &[u32], amps: Option<Amount>) -> bool {
    let ((least, most), carries) = OF_ROOMS;
    let is_usual = volts.iter().all(|volts| (least..=most).contains(volts));
    let named = SOCKETS.iter().any(|word| is_told(lower, word));
    is_usual
        && amps.is_none_or(|amps| amps.taken() <= carries)
        && named
        && !OTHERS.iter().any(|word| lower.contains(word))
}

/// Numbers of phases in words.
const PHASES: [(u32, [&str; 6]); 3] = [
    (1, ["single phase", "single-phase", "einphasig", "monofásic", "monofasic", "monophas"]),
    (2, ["two phase", "two-phase", "zweiphasig", "bifásic", "bifasic", "biphas"]),
    (3, ["three phase", "three-phase", "dreiphasig", "drehstrom", "trifásic", "trifasic"]),
];

/// Between two lines of 230 V each, of two phases (IEC 60038, from memory).
const BETWEEN_LINES: u32 = 400;

/// Words of one connection by two lines; two sockets on one are none.
const AS_TWO_LINES: [&str; 6] = ["each", "perilex", "2n", "je ", "two phases", "2 phas"];

/// Whether a circuit is told as two lines: `2 x 230 V, 16 A each` is what a hob of 400 V 2N is connected to.
fn is_of_two_lines(lower: &str) -> bool {
    let close: String = lower.chars().filter(|letter| !letter.is_whitespace()).collect();
    let told = close.replace('×', "x");
    let is_line = |at: usize| !told.get(..at).unwrap_or_default().ends_with(|letter: char| letter.is_ascii_digit());
    let named = ["2x220v", "2x230v"].iter().any(|line| told.find(line).is_some_and(is_line));
    let sockets = SOCKETS.iter().any(|word| is_told(lower, word));
    named && !sockets && AS_TWO_LINES.iter().any(|word| lower.contains(word))
}

/// How many phases its words name; of several ways the one with the fewest.
fn phases(lower: &str) -> Option<u32> {
    let split = lower.split(|letter: char| letter.is_whitespace() || ",;()/".contains(letter));
    let words: Vec<&str> = split.filter(|word| !word.is_empty()).collect();
    let units = ["phase", "phases", "ph", "phasen", "fases", "phasig"];
    let signed = |count: u32| {
        let signs = ["n", "n~", "ph", "~", "p+n", "-phase", "-ph", "-phasig"];
        words.iter().any(|word| signs.iter().any(|sign| *word == format!("{count}{sign}")))
    };
    let followed = |count: u32| {
        let count = count.to_string();
        words.windows(2).any(|pair| matches!(pair, [number, unit] if *number == count && units.contains(unit)))
    };
    let named = |words: &[&str]| words.iter().any(|word| lower.contains(word));
    let told = PHASES.iter().filter(|(count, words)| signed(*count) || followed(*count) || named(words));
    told.map(|(count, _)| *count).min()
}

impl Power {
    /// Whether its receptacle is known, or known to take that plug: a plain one takes a 5-15, whichever of both it is.
    /// So does a plain socket, where it is the one that the rooms of its country have.
    pub fn tells_of(&self, plug: &Plug, of_the_country: Option<PlugStandard>) -> bool {
        let takes = |standard| plug.goes_into(&Plug::Other(standard));
        let plain = self.plain_receptacle && plug.is_usual() || self.plain_socket && of_the_country.is_some_and(takes);
        self.pattern.is_some() || plain
    }

    /// Whether the circuit has a voltage that this is made for.
    pub fn runs_on(&self, there: &Self) -> bool {
        let is_universal = self.volts.contains(&100) && self.volts.iter().any(|high| *high >= 240);
        let is_usual = |found: &u32| is_universal && (100..=240).contains(found);
        let meets = |found: &u32| is_usual(found) || self.volts.iter().any(|asked| is_one_supply(*asked, *found));
        let between_lines = there.two_lines.then_some(BETWEEN_LINES);
        self.volts.is_empty() || there.volts.is_empty() || there.volts.iter().chain(&between_lines).any(meets)
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
            ("400 V 2N, 7.4 kW", "2 x 230 V, 16 A each, Perilex"),
        ] {
            assert!(runs(asked, there), "{asked} on {there}");
        }
        for (asked, there) in [
            ("240 V", "120 V"),
            ("400 V", "230 V"),
            ("400 V 2N", "2 x 230 V sockets, 16 A"),
            ("400 V", "2 x 230 V Steckdosen, je 16 A"),
            ("120 V", "240 V"),
            ("240 V", "208 V"),
        ] {
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

    /// Source: NEMA WD 6 (from memory): both receptacles of 125 V, 15 and 20 A, take a 5-15 plug.
    #[test]
    fn a_plain_receptacle_takes_the_usual_plug() {
        let takes = |there: &str, plug: &str| Power::of_words(there).tells_of(&nema(plug).unwrap(), None);
        for plain in [
            "split-wired duplex under the sink, 120 V 20 A",
            "120 V 20 A dedicated, GFCI, duplex receptacle",
            "120 V 15 A outlet in the cabinet",
            "115 V, 15 A quad in a surface box",
        ] {
            assert!(takes(plain, "5-15"), "{plain}");
            assert!(!takes(plain, "5-20") && !takes(plain, "14-50"), "{plain}");
        }
        for unsaid in [
            "120 V 20 A",
            "120 V 20 A, GFCI breaker",
            "240 V 20 A duplex",
            "120 V 30 A outlet",
            "120/240 V 20 A receptacle",
            "duplex",
            "120 V 20 A twist-lock receptacle",
            "120 V 20 A, no outlet",
        ] {
            assert!(!takes(unsaid, "5-15"), "{unsaid}");
        }
    }

    /// Source: CEE 7/4 (from memory): the socket of Germany's and Spain's rooms is Schuko.
    #[test]
    fn a_plain_socket_is_the_one_of_its_country() {
        let schuko = Plug::Other(PlugStandard::Schuko);
        let takes = |there: &str, country| Power::of_words(there).tells_of(&schuko, country);
        for plain in [
            "Steckdose 16 A, 230 V, hinter dem Gerät",
            "230 V, abgesichert 16 A, Doppelsteckdose",
            "enchufe 16 A detrás del frigorífico, 230 V",
            "circuito C2, 16 A, toma con toma de tierra",
        ] {
            assert!(takes(plain, Some(PlugStandard::Schuko)), "{plain}");
            assert!(!takes(plain, Some(PlugStandard::Bs1363)) && !takes(plain, None), "{plain}");
        }
        for other in [
            "230 V 16 A",
            "keine Steckdose",
            "CEE-Steckdose 16 A, 230 V",
            "Steckdose 400 V, 16 A",
            "Herdanschlussdose",
            "enchufe 25 A, 230 V",
            "enchufe 120 V",
        ] {
            assert!(!takes(other, Some(PlugStandard::Schuko)), "{other}");
        }
    }

    #[test]
    fn phases_are_counted_and_the_fewest_of_several_ways_is_asked_for() {
        let phases = |words: &str| Power::of_words(words).phases;
        for three in [
            "400 V 3N, 3 x 16 A",
            "380-415 V 3N, 7.4 kW",
            "400 V three-phase",
            "400 V, 3 phase",
            "400 V Drehstrom",
            "400 V trifásica",
            "400 V 3N~",
        ] {
            assert_eq!(phases(three), Some(3), "{three}");
        }
        assert_eq!(phases("400 V 2N, 2 x 16 A"), Some(2));
        assert_eq!(phases("2 × 230 V, 16 A each"), Some(2));
        assert_eq!(phases("220-240 V 1N / 380-415 V 2N / 3N"), Some(1));
        assert_eq!(phases("230 V single phase"), Some(1));
        for none in ["120/240 V 40 A 14-50", "230 V 16 A Schuko", "12-3 NM"] {
            assert_eq!(phases(none), None, "{none}");
        }
    }

    #[test]
    fn what_is_denied_is_not_told() {
        assert_eq!(Power::of_words("120 V 20 A, not shared").alone, Some(true));
        assert!(!Power::of_words("120 V 20 A 5-20, not hard-wired").hardwired);
        assert!(Power::of_words("240 V 30 A direct wired").hardwired);
        for either in
            ["120 V 15 A, hard-wired or cord kit", "120 V 15 A, cord or direct wire", "hard-wired, cord kit available"]
        {
            assert!(!Power::of_words(either).hardwired, "{either}");
        }
        for wired in
            ["120 V 15 A, hard-wired, no cord or plug", "hard-wired, cord not included", "240 V or 208 V, hard-wired"]
        {
            assert!(Power::of_words(wired).hardwired, "{wired}");
        }
        assert!(Power::of_words("230 V 3 A fused spur").fused_spur && Power::of_words("230 V 13 A FCU").fused_spur);
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
