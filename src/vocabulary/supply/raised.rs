//! A hose that is held up under a counter, in words that do not call it a loop.

/// What is led up, by the beginnings of words.
const HOSES: [&str; 5] = ["hose", "manguera", "schlauch", "ablaufschlauch", "pipe"];
/// That it is up.
const UP: [&str; 12] =
    ["high", "up", "raised", "elevad", "alta", "alto", "arriba", "hoch", "oben", "hochgehängt", "raise", "elevated"];
/// What holds it there, by the beginnings of words.
const HELD: [&str; 14] = [
    "fasten",
    "hook",
    "tied",
    "tie",
    "clip",
    "strap",
    "secur",
    "hung",
    "sujet",
    "fijad",
    "grapad",
    "befestigt",
    "gehängt",
    "cable-tied",
];
/// What it is led up to: the underside of the counter.
const UNDERSIDES: [&str; 14] = [
    "under the counter",
    "under the worktop",
    "under the countertop",
    "under the top",
    "under the bench",
    "underside of",
    "up under",
    "bajo la encimera",
    "bajo encimera",
    "debajo de la encimera",
    "unter der arbeitsplatte",
    "unter die arbeitsplatte",
    "sous le plan",
    "up and over",
];

/// `hose hooked high under the worktop`, `manguera elevada bajo la encimera`: a hose that is held up under the counter.
pub(super) fn is_led_up(part: &str) -> bool {
    let words: Vec<&str> =
        part.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let begins = |known: &[&str]| words.iter().any(|word| known.iter().any(|known| word.starts_with(known)));
    let is_up = words.iter().any(|word| UP.iter().any(|up| word == up || up.len() > 5 && word.starts_with(up)));
    let under = UNDERSIDES.iter().any(|place| part.contains(place));
    let is_low = begins(&["low", "baja", "tief"])
        || ["not ", "high spigot", "high level"].iter().any(|not| part.contains(not))
        || denied_anywhere(&words);
    begins(&HOSES) && (is_up && (begins(&HELD) || under) || part.contains("up and over")) && !is_low
}

fn denied_anywhere(words: &[&str]) -> bool {
    words
        .iter()
        .any(|word| ["no", "not", "never", "sin", "nicht", "ohne", "later", "yet", "missing", "needed"].contains(word))
}
