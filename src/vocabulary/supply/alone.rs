//! What the words of a circuit tell of what else is on it.

use super::denied;
use crate::vocabulary::{Mention, words_of};

/// A circuit, or what guards one, by the beginnings of words.
const CIRCUITS: [&str; 18] = [
    "circuit",
    "breaker",
    "radial",
    "line",
    "branch",
    "mcb",
    "rcbo",
    "stromkreis",
    "sicherung",
    "absicherung",
    "abgesichert",
    "zuleitung",
    "automat",
    "circuito",
    "línea",
    "linea",
    "magnetotérmic",
    "ligne",
];
/// What makes one of those a thing's own, by the beginnings of words.
const OWN: [&str; 10] =
    ["own", "separat", "individual", "independ", "eigen", "propi", "einzeln", "propre", "indépend", "solo"];
/// What is on a circuit, by the beginnings of words.
const LOADS: [&str; 11] =
    ["outlet", "receptacle", "socket", "point", "load", "thing", "appliance", "device", "steckdose", "enchufe", "toma"];
/// One of something and no more.
const ONE: [&str; 7] = ["one", "only", "single", "sole", "einzige", "único", "única"];
/// No more than what is named.
const ALONE: [&str; 9] = ["only", "alone", "solely", "nur", "allein", "solo", "sólo", "únicamente", "seulement"];
/// What a circuit is for.
const FOR: [&str; 8] = ["for", "serves", "feeds", "supplies", "für", "para", "pour", "alimenta"];
/// What joins two things that are on it, and what there are several in.
const SEVERAL: [&str; 18] = [
    "and", "y", "e", "und", "et", "plus", "others", "kitchen", "bath", "bathroom", "laundry", "room", "counter",
    "lights", "küche", "bad", "cocina", "baño",
];
/// What stands between a thing's own and its circuit: `own 20 A double-pole breaker`.
const RATINGS: [&str; 8] = ["a", "amp", "amps", "v", "volt", "double", "single", "pole"];
/// What says by itself that nothing else is there.
const ITSELF: [&str; 19] = [
    "to itself",
    "sole use",
    "nothing else on",
    "nothing else is on",
    "nothing else off",
    "nothing else connected",
    "no other load",
    "no other outlet",
    "no other receptacle",
    "no other appliance",
    "alone on",
    "on it alone",
    "sonst nichts",
    "keine weiteren verbraucher",
    "kein weiterer verbraucher",
    "nada más",
    "sin otros",
    "sin compartir",
    "rien d'autre",
];
/// What denies that something is shared.
const NOT_SHARED: [&str; 8] = ["not", "no", "nicht", "never", "sin", "non", "unshared", "nothing"];
/// What makes of a phrase one that has still to be found out, or is done without.
const UNSURE: [&str; 12] = [
    "if",
    "whether",
    "check",
    "checked",
    "maybe",
    "perhaps",
    "probably",
    "unless",
    "needed",
    "required",
    "necessary",
    "possible",
];

/// What a circuit comes from, whatever it is called by.
const SOURCES: [&str; 10] =
    ["consumer", "board", "panel", "distribution", "fusebox", "switchboard", "cuadro", "verteiler", "tableau", "db"];

/// Whether nothing else is on the circuit, or something is, as far as its words tell.
pub(super) fn alone(lower: &str) -> Option<bool> {
    let parts: Vec<&str> = lower.split([',', ';', '(', ')']).collect();
    let shared: Vec<&&str> = parts.iter().filter(|part| Mention::SharesACircuit.is_in(part)).collect();
    // A spur from the panel is that of one thing, and a `circuito derivado` any branch circuit.
    let is_of_the_source = |part: &str| has(part, &SOURCES) || has(part, &["circuito"]) && has(part, &["derivado"]);
    let shared: Vec<&&str> = shared.into_iter().filter(|part| !is_of_the_source(part)).collect();
    if shared.iter().any(|part| !has(part, &NOT_SHARED)) {
        return Some(false);
    }
    // `not shared with the dryer` leaves others.
    let unshared = shared
        .iter()
        .any(|part| !has(part, &UNSURE) && (!has(part, &["with", "mit", "con"]) || has(part, &["anything"])));
    let (own, denied): (Vec<&str>, Vec<&str>) =
        parts.into_iter().filter(|part| is_own(part)).partition(|part| !is_denied(part));
    match (unshared || !own.is_empty(), denied.iter().any(|part| !has(part, &UNSURE))) {
        (true, _) => Some(true),
        (false, true) => Some(false),
        (false, false) => None,
    }
}

fn has(part: &str, known: &[&str]) -> bool {
    words_of(part).iter().any(|word| known.contains(&word.as_str()))
}

fn begins(word: &str, known: &[&str]) -> bool {
    known.iter().any(|known| word.starts_with(known))
}

/// Whether a phrase speaks of a circuit that serves one thing alone, be it denied or not.
fn is_own(part: &str) -> bool {
    let words = words_of(part);
    let told = || ITSELF.iter().any(|phrase| part.contains(phrase));
    Mention::OwnCircuit.is_in(part) || told() || is_a_thing_s_own(&words) || serves_one(&words) || has_one_load(&words)
}

/// Whether such a phrase denies it: `not on its own circuit`, and not `nothing else on it`.
fn is_denied(part: &str) -> bool {
    let words = words_of(part);
    let named = |word: &String| begins(word, &OWN) || begins(word, &["dedicat", "dedicad", "exclusiv", "itself"]);
    let Some(at) = words.iter().position(named) else { return false };
    denied(&words.get(..at).unwrap_or_default().join(" "))
}

/// `its own 20 A breaker`, `separat abgesichert`, `circuito independiente`.
fn is_a_thing_s_own(words: &[String]) -> bool {
    words.iter().enumerate().filter(|(_, word)| begins(word, &OWN)).any(|(at, _)| {
        let is_rating = |word: &&String| word.starts_with(char::is_numeric) || RATINGS.contains(&word.as_str());
        let after = words.get(at + 1..).unwrap_or_default().iter().find(|word| !is_rating(word));
        let before = at.checked_sub(1).and_then(|before| words.get(before));
        after.into_iter().chain(before).any(|word| begins(word, &CIRCUITS))
    })
}

/// `circuit for the refrigerator only`, and not `for lights and fan only`.
fn serves_one(words: &[String]) -> bool {
    let has = |known: &[&str]| words.iter().any(|word| known.contains(&word.as_str()));
    words.iter().any(|word| begins(word, &CIRCUITS)) && has(&FOR) && has(&ALONE) && !has(&SEVERAL)
}

/// `one outlet on the circuit`, and not `one outlet on the kitchen circuit`.
fn has_one_load(words: &[String]) -> bool {
    let between = ["on", "the", "its", "this", "that", "per"];
    words.windows(2).enumerate().any(|(at, pair)| {
        let [one, load] = pair else { return false };
        let mut rest = words.get(at + 2..).unwrap_or_default().iter();
        let next = rest.find(|word| !between.contains(&word.as_str()));
        ONE.contains(&one.as_str()) && begins(load, &LOADS) && next.is_some_and(|word| begins(word, &CIRCUITS))
    })
}

#[cfg(test)]
mod tests {
    use super::alone;

    #[test]
    fn a_circuit_is_a_thing_s_own_in_the_trade_s_words() {
        for own in [
            "120 v 20 a, dedicated",
            "230 v 16 a, dedicated spur from the consumer unit",
            "circuito derivado de 20 a, dedicado",
            "120 v 20 a, circuit of its own",
            "120 v 20 a circuit to itself",
            "120 v 20 a, own breaker",
            "on its own 20 a double-pole breaker",
            "120 v 20 a circuit for the refrigerator only",
            "230 v 32 a, sole use",
            "120 v 20 a, nothing else on it",
            "120 v 20 a, solo circuit #7, 5-20r",
            "120 v 20 a, nothing else on the circuit",
            "120 v 20 a, not shared",
            "230 v 16 a, nicht geteilt",
            "120 v 20 a, one outlet on the circuit",
            "single-outlet circuit, 120 v 20 a",
            "13 a socket (bs1363), own radial",
            "230 v, separat abgesichert 16 a",
            "eigener stromkreis, 230 v 16 a",
            "230 v 16 a, stromkreis nur für den kühlschrank",
            "230 v 16 a, circuito independiente",
            "230 v 16 a, línea propia",
            "230 v 16 a, circuito solo para el frigorífico",
            "230 v 16 a, sin compartir con nada",
        ] {
            assert_eq!(alone(own), Some(true), "{own}");
        }
    }

    #[test]
    fn a_circuit_that_is_shared_or_of_which_nothing_is_said_is_not_its_own() {
        for shared in [
            "120 v 20 a, shared",
            "120 v 20 a, shared with the refrigerator",
            "120 v 20 a, not on its own circuit",
            "120 v 20 a, no dedicated circuit",
            "230 v 16 a, kein eigener stromkreis",
            "120 v 20 a, own outlet, shared with the dryer",
        ] {
            assert_eq!(alone(shared), Some(false), "{shared}");
        }
        for unsaid in [
            "120 v 20 a",
            "120 v 20 a circuit only",
            "120 v 20 a, one outlet on the kitchen circuit",
            "one receptacle on a 20 a circuit",
            "20 a circuit for lights and fan only",
            "120 v 20 a, not shared with the dryer",
            "120 v 20 a, not shared if possible",
            "no dedicated circuit needed",
            "own switch, 120 v 20 a",
            "own outlet on circuit 12",
            "own fused spur",
            "circuit for the kitchen only",
            "own outlet behind the refrigerator",
            "13 a fused spur",
        ] {
            assert_eq!(alone(unsaid), None, "{unsaid}");
        }
    }
}
