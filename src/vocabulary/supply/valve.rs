//! The valve that shuts a line of water or gas, as its words tell of it.

use super::phrase;
use super::water::{COLD, HOT, begins, words_of};

/// What is said of the valve that shuts a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Valve {
    /// That it is there.
    There,
    /// That it is not, or does not work, or is still to come.
    NotThere,
}

/// What shuts a line, in whole words: an English name of several has its first. `stopped` and `shutters` shut nothing.
const VALVES: [&str; 27] = [
    "shut",
    "shutoff",
    "shutoffs",
    "valve",
    "valves",
    "valved",
    "stop",
    "stops",
    "stopcock",
    "stopcocks",
    "stoptap",
    "stoptaps",
    "stopvalve",
    "stopvalves",
    "cock",
    "cocks",
    "ballofix",
    "quarterturn",
    "minitap",
    "minitaps",
    "cisterntap",
    "cisterntaps",
    "machinetap",
    "machinetaps",
    "escuadra",
    "escuadras",
    "ventiler",
];
/// The same by the beginnings of words, whatever else is made of them.
const STEMS: [&str; 6] = ["isolat", "llave", "válvula", "valvula", "robinet", "absperr"];
/// How a German word for one ends: `Eckventil`, `Kombieckventile`, `Kugelhahn`.
const ENDS: [&str; 7] = ["ventil", "ventile", "ventilen", "ventils", "hahn", "hähne", "hähnen"];
/// Of those what shuts no line, by its beginning: it lets water flow one way, mixes it, or is a tap.
const NO_SHUT_OFF: [&str; 10] =
    ["rückschlag", "rückfluss", "sicherheits", "misch", "magnet", "entlüftung", "stand", "schwimmer", "füll", "wasser"];
/// Names of several words, and as one.
const IN_ONE: [(&str, &str); 13] = [
    ("quarter-turn", "quarterturn"),
    ("quarter turn", "quarterturn"),
    ("1/4-turn", "quarterturn"),
    ("1/4 turn", "quarterturn"),
    ("¼-turn", "quarterturn"),
    ("ball-o-fix", "ballofix"),
    ("ball cock", "ballcock"),
    ("mini tap", "minitap"),
    ("cistern tap", "cisterntap"),
    ("machine tap", "machinetap"),
    ("appliance tap", "machinetap"),
    ("grifo de lavavajillas", "machinetap"),
    ("grifo de lavadora", "machinetap"),
];
/// What is said of a valve that is not there, or shuts nothing.
pub(super) const NOT_THERE: [&str; 26] = [
    "no", "without", "not", "missing", "lacking", "lacks", "absent", "yet", "later", "come", "needed", "wanted",
    "required", "add", "added", "seized", "stuck", "broken", "leaks", "leaking", "dead", "sin", "falta", "ohne",
    "sans", "uten",
];
/// What shuts off gas besides, in whole words; a bayonet shuts itself.
const GAS_VALVES: [&str; 8] = ["gascock", "bayonet", "bayonets", "tap", "taps", "gassteckdose", "espita", "espitas"];

/// A text in small letters in which what has several words for a name has one.
pub(super) fn in_one(lower: &str) -> String {
    IN_ONE.iter().fold(lower.to_owned(), |text, (several, one)| text.replace(several, one))
}

/// Whether a word is one for what shuts a line of water.
pub(super) fn is_valve(word: &str) -> bool {
    let in_german = ENDS.iter().any(|end| word.ends_with(end)) && !begins(word, &NO_SHUT_OFF);
    VALVES.contains(&word) || begins(word, &STEMS) || in_german
}

fn is_gas_valve(word: &str) -> bool {
    is_valve(word) || GAS_VALVES.contains(&word)
}

/// What the words of a gas line tell of the valve that shuts it.
pub(super) fn valve_of_gas(words: &str) -> Option<Valve> {
    let lower = phrase::with_points(&in_one(&words.to_lowercase()));
    let parts: Vec<Vec<&str>> = lower.split([',', ';', '(', ')']).map(words_of).collect();
    told_of(&parts, is_gas_valve)
}

/// What the phrases tell of a valve: one that says that it is missing counts before one that names it.
pub(super) fn valve(parts: &[Vec<&str>]) -> Option<Valve> {
    told_of(parts, is_valve)
}

fn told_of(parts: &[Vec<&str>], is_named: fn(&str) -> bool) -> Option<Valve> {
    let told = parts.iter().filter(|part| part.iter().any(|word| is_named(word)));
    let (missing, there): (Vec<&Vec<&str>>, Vec<&Vec<&str>>) = told.partition(|part| is_missing(part, is_named));
    let has = |part: &[&str], known: &[&str]| part.iter().any(|word| known.contains(word));
    let is_near = there.iter().any(|part| !has(part, &FAR));
    let is_another = |part: &[&str]| {
        let is_one = has(part, &OF_ANOTHER_KIND) || is_near && has(part, &ELSEWHERE);
        is_one && !part.iter().any(|word| is_of_a_side(word))
    };
    match (missing.is_empty(), there.is_empty()) {
        (true, true) => None,
        (true, false) => Some(Valve::There),
        // `cock in the cabinet, no valve behind the range`: what is denied is another one.
        (false, false) if missing.iter().all(|part| is_another(part)) => Some(Valve::There),
        (false, _) => Some(Valve::NotThere),
    }
}

/// Where a valve is that shuts a house, and not what stands at an opening.
const FAR: [&str; 15] = [
    "meter", "main", "basement", "cellar", "outside", "outdoors", "crawl", "street", "tank", "cylinder", "bottle",
    "manifold", "garage", "contador", "keller",
];
/// Words of a valve of a kind that nobody wants, or that was: that it is not there says nothing of the others.
const OF_ANOTHER_KIND: [&str; 3] = ["saddle", "piercing", "old"];
/// Words of a place that a valve near the opening need not be at.
const ELSEWHERE: [&str; 2] = ["behind", "wall"];
/// Words that deny what comes behind them.
const WITHOUT: [&str; 5] = ["without", "sin", "ohne", "sans", "uten"];
/// What a valve can't be turned without.
const HANDLES: [&str; 7] = ["handle", "handles", "lever", "knob", "key", "griff", "maneta"];

pub(super) fn is_of_a_side(word: &str) -> bool {
    begins(word, &HOT) || begins(word, &COLD)
}

/// Whether the words of a phrase that names a valve say that it is missing: `stops without drain screw` does not.
fn is_missing(part: &[&str], is_named: fn(&str) -> bool) -> bool {
    let first = part.iter().position(|word| is_named(word)).unwrap_or_default();
    part.iter().enumerate().filter(|(_, word)| NOT_THERE.contains(word)).any(|(at, word)| {
        let rest = part.get(at + 1..).unwrap_or_default();
        let of_the_valve =
            at < first || rest.is_empty() || rest.iter().any(|word| HANDLES.contains(word) || is_named(word));
        !WITHOUT.contains(word) || of_the_valve
    })
}

#[cfg(test)]
mod tests {
    use super::super::{InWords, Water};
    use super::*;

    #[test]
    fn what_is_denied_beside_a_valve_is_no_valve() {
        for there in [
            "1/2\" hot and cold, isolation valves, no saddle valves",
            "1/2\" hot and cold, stops without drain screw",
            "15 mm cold, shut-offs accessible without tools",
            // A toilet's tank is beside it; whatever the place, the saddle valve is another one.
            "1/2\" cold, stop at the tank, no saddle valve",
            "1/2\" cold, old valve removed, no longer leaking, new stops",
        ] {
            assert_eq!(Water::of_words(there).valve, Some(Valve::There), "{there}");
        }
        for missing in [
            "1/2\" hot with shut-off, 1/2\" cold without shut-off",
            "hot with stop, no valve on the cold",
            "cold, stopcock without handle",
            "stop at the main, no valve behind the washer",
            "cold, no saddle valve",
            "cold pipe without any isolating valve",
            "cold valve, without a stop",
        ] {
            assert_eq!(Water::of_words(missing).valve, Some(Valve::NotThere), "{missing}");
        }
    }

    #[test]
    fn a_word_that_only_begins_like_a_valve_is_none() {
        for none in ["1/2\" cold, stopped off", "cold, stopper at the end", "1/2\" hot, shutters", "cold, Ventilator"] {
            assert_eq!(Water::of_words(none).valve, None, "{none}");
        }
        for none in ["natural gas, joints taped", "natural gas, 1/2\" tapped tee", "natural gas, stopped off"] {
            assert_eq!(valve_of_gas(none), None, "{none}");
        }
        for there in
            ["cold, stops", "cold, shut-offs", "kalt, Eckventile", "frío, llaves de escuadra", "cold, isolators"]
        {
            assert_eq!(Water::of_words(there).valve, Some(Valve::There), "{there}");
        }
    }
}
