//! A duct: a pipe for air, what it is made of, what its bends cost, and where it ends.

#[cfg(test)]
mod tests;

use crate::units::Length;

use super::InWords;
use super::bare::with_units;
use super::phrase;
use super::pipe::{Pipe, run, with_nominal_sizes};

/// A duct, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Duct {
    /// The pipe.
    pub pipe: Pipe,
    /// Whether it is said to be rigid or smooth.
    pub rigid: bool,
    /// Whether it is said to be of metal.
    pub metal: bool,
    /// Whether it is said to be flexible, or not to be.
    pub flexible: Option<bool>,
    /// Whether all that bends of it is called a transition, as the short piece at a dryer is, and it is rigid besides.
    pub transition: bool,
    /// Whether it is said to be of plastic, or not to be.
    pub plastic: Option<bool>,
    /// What each bend of 90° takes off the length that is allowed, where a sheet says it.
    pub off_for_bend: Option<Length>,
    /// Where it ends.
    pub ends: Option<Ends>,
    /// Whether something else is said to blow into it too.
    pub shared: bool,
    /// Whether it is said to be led through a flue, or into one.
    pub in_a_flue: bool,
    /// Whether it is said to be held together by screws.
    pub screws: bool,
}

/// Where air is blown to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// Into a hollow or a room of the house.
    Inside,
    /// Out of the house.
    Outside,
}

/// Words of what bends by hand, by their beginnings.
const FLEXIBLE: [&str; 11] = [
    "flex",
    "aluflex",
    "foil",
    "corrugated",
    "concertina",
    "accordion",
    "slinky",
    "hose",
    "semi rigid",
    "semirigid",
    "schlauch",
];
/// Words of what keeps its shape and is smooth within.
const RIGID: [&str; 11] = [
    "rigid",
    "smooth",
    "spiral",
    "galvani",
    "sheet metal",
    "metal pipe",
    "steel pipe",
    "snap lock",
    "snaplock",
    "wickelfalz",
    "starr",
];
/// Words of metals.
const METAL: [&str; 5] = ["metal", "steel", "galvani", "alumini", "aluminum"];
/// Words of plastics.
const PLASTIC: [&str; 5] = ["vinyl", "plastic", "pvc", "polypropylene", "plástico"];
/// Words that deny what follows them.
const DENIED: [&str; 15] = [
    "no", "not", "never", "without", "nor", "non", "sin", "ni", "kein", "keine", "keinen", "nicht", "ohne", "sans",
    "pas",
];
/// Words of what more than one thing blows into.
const SHARED: [&str; 22] = [
    "shared",
    "shares",
    "sharing",
    "joins",
    "joined to",
    "joined with",
    "joined into",
    "tied into",
    "tees",
    "teed",
    "tee into",
    "wye with",
    "common with",
    "common duct",
    "together with",
    "combined with",
    "same duct as",
    "compartid",
    "junto con",
    "gemeinsam mit",
    "zusammen mit",
    "geteilt",
];
/// What leads away what something burns.
const FLUES: [&str; 19] = [
    "flue",
    "chimney",
    "boiler",
    "furnace",
    "water heater",
    "fireplace",
    "gas vent",
    "b vent",
    "type b",
    "schornstein",
    "kamin",
    "abgas",
    "heizkessel",
    "caldera",
    "calentador",
    "chimenea",
    "humero",
    "conduit de fumée",
    "cheminée",
];
/// How something is led through another thing, or into it.
const LED: [&str; 13] =
    ["through", "into", "up", "in", "via", "using", "uses", "joins", "por", "al", "en", "durch", "dans"];
/// How something is led by another thing.
const PAST: [&str; 11] =
    ["beside", "past", "around", "next", "near", "clear", "behind", "away", "junto", "neben", "vorbei"];
/// Whose chimney hides a duct and is no flue.
const HOODS: [&str; 3] = ["hood", "campana", "haube"];
/// Words of screws.
const SCREWS: [&str; 4] = ["screw", "tornillo", "schraub", "vis "];
/// Hollows and rooms of a house that air must not end in.
const INSIDE: [&str; 15] = [
    "attic",
    "loft",
    "roof space",
    "roof void",
    "crawl",
    "garage",
    "ceiling void",
    "basement",
    "falso techo",
    "techo falso",
    "altillo",
    "desván",
    "buhardilla",
    "garaje",
    "sótano",
];
/// What is out of the house, or leads there.
const OUTSIDE: [&str; 19] = [
    "patio", "fachada", "tejado", "azotea", "afuera", "al aire", "roof", "outside", "outdoor", "wall", "gable", "yard",
    "exterior", "eave", "soffit", "garden", "façade", "facade", "open air",
];

impl InWords for Duct {
    fn of_words(words: &str) -> Self {
        let sized = with_nominal_sizes(&with_units(&words.to_lowercase()), |size| Some(format!("{size} mm")));
        let lower = phrase::with_points(&sized);
        let whole: Vec<&str> = lower.split([',', ';']).collect();
        let of_pipe = whole.iter().copied().filter(|part| off_for_bend(part).is_none() && !is_another(part));
        let of_pipe: Vec<&str> = of_pipe.map(before_replaced).collect();
        let parts: Vec<String> = whole.iter().map(|part| plain(part)).collect();
        let told = |named: &[&str]| parts.iter().find_map(|part| said(part, named));
        let pieces: Vec<String> = parts.iter().flat_map(|part| pieces(part)).collect();
        let in_sight = pieces.iter().any(|piece| IN_SIGHT.iter().any(|word| piece.contains(word)));
        let is_at_machine = |piece: &str| is_transition(piece, in_sight) && names_a_dryer(piece);
        let is_hard = pieces.iter().any(|piece| {
            said(&piece.replace("semi rigid", ""), &[&RIGID[..], &METAL[..]].concat()) == Some(true)
                && !is_transition(piece, in_sight)
        });
        let run_of_it = || pieces.iter().filter(|piece| !(is_hard && is_at_machine(piece)));
        let flexible = run_of_it().find_map(|piece| said(piece, &FLEXIBLE));
        let mut bends = run_of_it().filter(|piece| said(piece, &FLEXIBLE) == Some(true)).peekable();
        let transition = is_hard && bends.peek().is_some() && bends.all(|piece| is_transition(piece, false));
        Self {
            pipe: Pipe::of_words(&of_pipe.join(",")),
            rigid: parts.iter().any(|part| said(&part.replace("semi rigid", ""), &RIGID) == Some(true)),
            metal: told(&METAL) == Some(true),
            flexible,
            transition,
            plastic: told(&PLASTIC),
            off_for_bend: parts.iter().find_map(|part| off_for_bend(part)),
            ends: ends(&parts),
            shared: parts.iter().any(|part| said(part, &SHARED) == Some(true)),
            in_a_flue: parts.iter().any(|part| is_led_into_a_flue(part)),
            screws: told(&SCREWS) == Some(true),
        }
    }
}

/// Whether a phrase tells of a duct that is no more, of another one, or of a reduction that is not there.
fn is_another(part: &str) -> bool {
    let part = plain(part);
    let has = |words: &[&str]| words.iter().any(|word| part.contains(word));
    let is_gone = has(&["old "]) && has(&["enlarged", "removed", "abandoned", "filled in", "closed up"]);
    let not_reduced = has(&["sin reducc", "no reduc", "not reduced", "without reduc", "ohne reduzier"]);
    let not_used = has(&["not used", "not needed", "not required", "no longer", "no se usa"]);
    is_gone || not_reduced || not_used || has(&["make up air"])
}

/// What a phrase says before it names what the duct takes the place of.
fn before_replaced(part: &str) -> &str {
    let ends = ["replaces ", "replacing ", "instead of ", "in place of ", "in lieu of "];
    let end = ends.iter().filter_map(|word| part.find(word)).min();
    end.and_then(|end| part.get(..end)).unwrap_or(part)
}

/// The longest piece that joins a dryer to its duct: 8 ft (IRC M1502.4.3, from memory).
const LONGEST_TRANSITION: Length = Length::from_inches(96);

/// Words of what is not hidden.
const IN_SIGHT: [&str; 5] = ["in sight", "exposed", "visible", "in view", "a la vista"];

/// The phrases of a phrase: `4" steel with a short piece of foil`.
fn pieces(part: &str) -> Vec<String> {
    let joined = [" and ", " with ", " plus ", " + ", " con ", " mit ", " und "];
    let apart = joined.iter().fold(part.to_owned(), |text, word| text.replace(word, ","));
    apart.split(',').map(|piece| piece.trim().to_owned()).collect()
}

/// Whether a phrase names the machine itself.
fn names_a_dryer(part: &str) -> bool {
    ["dryer", "machine", "2158a", "trockner", "secadora"].iter().any(|word| part.contains(word))
}

/// Whether a phrase tells of the one piece between a dryer and its duct, which may bend where it is seen. What is at the
/// machine is one where some phrase says that it is in sight.
fn is_transition(part: &str, in_sight: bool) -> bool {
    let has = |words: &[&str]| words.iter().any(|word| part.contains(word));
    let alone = has(&["alone", "only"]) || in_sight;
    let named = has(&["transition", "2158a"]) || names_a_dryer(part) && alone;
    let hidden = has(&["wall", "ceiling", "attic", "joist", "floor", "conceal", "crawl"]);
    named && !hidden && run(part).is_none_or(|run| run <= LONGEST_TRANSITION)
}

/// With a space for each hyphen, and one between words; without the accent that English has not.
fn plain(part: &str) -> String {
    part.replace(['-', '‐', '‑'], " ").replace("rígid", "rigid").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether a phrase says one of those words, by their beginnings, or denies it.
fn said(part: &str, named: &[&str]) -> Option<bool> {
    let starts = |at: usize| part.get(..at).is_none_or(|before| before.is_empty() || before.ends_with([' ', '(']));
    let at = named.iter().flat_map(|name| part.match_indices(name)).map(|(at, _)| at).find(|at| starts(*at))?;
    let before = part.get(..at).unwrap_or_default();
    let mut near = before.split_whitespace().rev().take(3);
    Some(!near.any(|word| DENIED.contains(&word)))
}

/// `through the existing flue of the boiler`, and not `through the wall past the flue`.
fn is_led_into_a_flue(part: &str) -> bool {
    let met = FLUES.iter().flat_map(|flue| part.match_indices(flue)).map(|(at, _)| at).min();
    let Some(before) = met.and_then(|at| part.get(..at)) else { return false };
    let has = |known: &[&str]| before.split_whitespace().any(|word| known.contains(&word));
    let of_a_hood = HOODS.iter().any(|hood| part.contains(hood));
    said(part, &FLUES) == Some(true) && has(&LED) && !has(&PAST) && !of_a_hood
}

/// `less 5 ft for each elbow`, `minus 1.5 m per 90° bend`.
fn off_for_bend(part: &str) -> Option<Length> {
    let has = |words: &[&str]| words.iter().any(|word| part.contains(word));
    let told = has(&["less ", "minus ", "deduct", "subtract", "reduce", "takes off"])
        && has(&["each", "per ", "every", "a bend", "an elbow"])
        && has(&["bend", "elbow", "90"]);
    told.then(|| run(part)).flatten()
}

/// Where the words say that it ends: out of the house, if they name anything that is, however it gets there.
fn ends(parts: &[String]) -> Option<Ends> {
    let inside = |part: &str| said(part, &INSIDE) == Some(true);
    let without =
        |part: &str| ["roof space", "roof void"].iter().fold(part.to_owned(), |part, hollow| part.replace(hollow, ""));
    if parts.iter().any(|part| said(&without(part), &OUTSIDE) == Some(true)) {
        return Some(Ends::Outside);
    }
    parts.iter().any(|part| inside(part)).then_some(Ends::Inside)
}
