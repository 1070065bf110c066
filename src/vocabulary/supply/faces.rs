//! The floors and walls that a length is counted from, as the words beside it name them.

/// The wall that a distance is counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wall {
    /// The one behind a thing, of which nothing else is said.
    Behind,
    /// One at its side.
    Beside,
}

/// The finished floor in one German word, by its beginning: `OKFFB`, `Fertigfußboden`.
const FLOORS: [&str; 3] = ["okf", "fertigfu", "fertigbod"];
/// The same, as it is: `Fußbodenheizung` is another thing.
const FLOOR: [&str; 4] = ["fußboden", "fußbodens", "fussboden", "fussbodens"];
/// The floor before it is finished, from which no height is counted here.
const ROUGH_FLOORS: [&str; 4] = ["okr", "rohfu", "rohbod", "rohdecke"];
/// A wall's face in other languages.
const WALLS: [&str; 12] = [
    "pared",
    "muro",
    "tabique",
    "alicatado",
    "azulejo",
    "azulejos",
    "enlucido",
    "revestimiento",
    "wand",
    "fertigwand",
    "fliese",
    "mur",
];
/// What says there that something is counted from it.
const FROM: [&str; 8] = ["de", "del", "desde", "von", "vom", "ab", "du", "depuis"];
/// What may stand between a length and the wall that it is counted from.
const BETWEEN: [&str; 16] = [
    "a", "al", "eje", "centro", "hasta", "el", "la", "los", "las", "cara", "der", "fertiger", "fertigen", "mitte",
    "le", "axe",
];
/// The wall that is not the one behind, by the beginnings of words.
const SIDES: [&str; 8] = ["derech", "izquierd", "lateral", "recht", "link", "seiten", "droit", "gauche"];

/// Whether words name the finished floor in German.
pub(super) fn names_a_finished_floor(words: &[&str]) -> bool {
    words.iter().any(|word| begins(word, &FLOORS) || FLOOR.contains(word))
}

/// Whether words name the floor as it is before its covering, as what something is counted from.
pub(super) fn names_a_rough_floor(words: &[&str]) -> bool {
    let has = |named: &[&str]| words.iter().any(|word| named.contains(word));
    let counted = has(&COUNTED_FROM) && !has(&NOT_ABOVE);
    let is_bare = |at: usize| {
        let next = words.get(at + 1).copied().unwrap_or_default();
        let word = words.get(at).copied().unwrap_or_default();
        // `rough-in` is another thing, and `sin acabar` two words.
        BARE.contains(&word) && next != "in" || word == "sin" && UNDONE.iter().any(|undone| next.starts_with(undone))
    };
    let bare = || (0..words.len()).any(is_bare) && !has(&["finished", "acabado", "terminado"]);
    words.iter().any(|word| begins(word, &ROUGH_FLOORS))
        || counted && has(&["subfloor", "forjado", "slab"])
        || counted && has(&["floor", "suelo", "solado", "sol"]) && bare()
}

/// What hangs from a floor or lies below it is not counted from it.
const NOT_ABOVE: [&str; 8] = ["below", "under", "beneath", "debajo", "bajo", "colgado", "colgada", "unter"];
/// What says that something is counted from a floor.
const COUNTED_FROM: [&str; 12] =
    ["above", "over", "off", "from", "de", "del", "desde", "sobre", "du", "au", "dessus", "a"];
/// A floor before its covering, beside its word.
const BARE: [&str; 8] = ["rough", "raw", "unfinished", "bare", "structural", "sub", "bruto", "brut"];
/// What is still to be done to it, after `sin`, by the beginnings of words.
const UNDONE: [&str; 4] = ["acab", "termin", "revest", "pavim"];

fn begins(word: &str, named: &[&str]) -> bool {
    named.iter().any(|named| word.starts_with(named))
}

/// `a 230 mm de la pared acabada`, `220 mm ab Fertigwand`: nothing but such words stands before the wall.
pub(super) fn from_a_wall(words: &[&str]) -> Option<Wall> {
    let wall = words.iter().position(|word| WALLS.contains(word))?;
    let before = words.get(..wall).unwrap_or_default();
    let counts = |word: &&str| FROM.contains(word) || BETWEEN.contains(word) || begins(word, &SIDES);
    if !before.iter().all(counts) || !before.iter().any(|word| FROM.contains(word)) {
        return None;
    }
    let near = words.get(..(wall + 3).min(words.len())).unwrap_or(words);
    Some(if near.iter().any(|word| begins(word, &SIDES)) { Wall::Beside } else { Wall::Behind })
}

/// Whether the wall that words name is one beside the thing, and not the one behind it: `17" from the left wall`.
pub(super) fn names_a_side_wall(words: &[&str]) -> bool {
    let beside = ["left", "right", "side", "hand", "adjacent", "adjoining", "tub", "shower", "vanity"];
    let is_wall = |word: &&str| ["wall", "walls", "sidewall", "sidewalls"].contains(word);
    words.iter().enumerate().any(|(at, word)| {
        let before = at.checked_sub(1).and_then(|before| words.get(before));
        is_wall(word) && (word.starts_with("side") || before.is_some_and(|before| beside.contains(before)))
    }) && !words.iter().any(|word| ["rough", "roughin", "back", "rear"].contains(word))
}
