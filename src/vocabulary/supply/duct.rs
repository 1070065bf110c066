//! A duct: a pipe for air, what it is made of, what its bends cost, and where it ends.

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
        let is_hard = parts.iter().any(|part| {
            said(&part.replace("semi rigid", ""), &[&RIGID[..], &METAL[..]].concat()) == Some(true)
                && !is_transition(part)
        });
        let run_of_it = parts.iter().filter(|part| !(is_hard && is_transition(part)));
        let flexible = run_of_it.into_iter().find_map(|part| said(part, &FLEXIBLE));
        Self {
            pipe: Pipe::of_words(&of_pipe.join(",")),
            rigid: parts.iter().any(|part| said(&part.replace("semi rigid", ""), &RIGID) == Some(true)),
            metal: told(&METAL) == Some(true),
            flexible,
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

/// Whether a phrase tells of the one piece between a dryer and its duct, which may bend where it is seen.
fn is_transition(part: &str) -> bool {
    let has = |words: &[&str]| words.iter().any(|word| part.contains(word));
    let of_the_machine = has(&["dryer", "machine", "2158a", "trockner", "secadora"]);
    let named = has(&["transition", "at the machine alone", "at the dryer alone", "2158a"]);
    let hidden = has(&["wall", "ceiling", "attic", "joist", "floor", "conceal", "crawl"]);
    named && of_the_machine && !hidden && run(part).is_none_or(|run| run <= LONGEST_TRANSITION)
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_it_is_made_of_is_read_and_what_is_denied_is_not() {
        for words in [
            "4\" flexible foil, 8 ft",
            "4\" flex",
            "4 in. semi-rigid",
            "white vinyl hose",
            "corrugated aluminium",
            "Alu flex",
        ] {
            let duct = Duct::of_words(words);
            assert!(duct.flexible == Some(true) && !duct.rigid, "{words}: {duct:?}");
        }
        for words in
            ["4\" rigid metal, at most 25 ft", "galvanised steel, 125 mm", "4\" smooth, no foil", "spiral duct, 6\""]
        {
            let duct = Duct::of_words(words);
            assert!(duct.rigid && duct.flexible != Some(true), "{words}: {duct:?}");
        }
        assert_eq!(Duct::of_words("8\" round, no flexible duct").flexible, Some(false));
        assert_eq!(Duct::of_words("4\" metal, not plastic").plastic, Some(false));
        assert_eq!(Duct::of_words("PVC, 125 mm").plastic, Some(true));
        assert_eq!(Duct::of_words("8\" round").flexible, None);
        for denied in ["150 mm, kein Flexschlauch", "150 mm, nicht flexibel", "150 mm, ohne Schlauch"] {
            assert_eq!(Duct::of_words(denied).flexible, Some(false), "{denied}");
        }
        assert_eq!(Duct::of_words("150 mm Flexschlauch, 3 m").flexible, Some(true));
        for pipe in ["4\" metal pipe, 12 ft", "4\" snap-lock, 12 ft", "150 mm Wickelfalzrohr", "tubo rígido 150 mm"] {
            assert!(Duct::of_words(pipe).rigid, "{pipe}");
        }
        assert!(!Duct::of_words("4\" flexible metal, 12 ft").rigid);
    }

    #[test]
    fn a_dryer_s_transition_piece_may_bend() {
        for piece in [
            "4\" steel, 12 ft, 2 bends, foil transition duct behind the dryer",
            "4\" rigid metal, 12 ft, two elbows, the flexible piece at the machine alone, in sight, 3 ft",
            "4\" rigid metal, 12 ft, UL 2158A transition hose at the dryer",
        ] {
            assert_eq!(Duct::of_words(piece).flexible, None, "{piece}");
        }
        for flexible in [
            "4\" foil, 12 ft, from the dryer",
            "4\" steel, 12 ft, foil transition duct in the wall behind the dryer",
            "4\" steel, 12 ft, 10 ft foil transition behind the dryer",
            "4\" foil transition duct behind the dryer, 12 ft",
            "8\" steel, 9 ft, flexible at the hood",
        ] {
            assert_eq!(Duct::of_words(flexible).flexible, Some(true), "{flexible}");
        }
    }

    #[test]
    fn a_duct_that_was_or_another_one_has_no_size_here() {
        let narrowest = |words: &str| Duct::of_words(words).pipe.narrowest;
        for words in [
            "8\" steel, 9 ft, replaces the old 6\" duct",
            "8\" steel 9 ft, old 6\" hole enlarged",
            "8\" rigid 9 ft, roof; make-up air 6\" not required",
            "8\" steel 9 ft, no reduction to 6\"",
            "8\" steel, wall cap, 6\" above the sill",
        ] {
            assert_eq!(narrowest(words), narrowest("8\""), "{words}");
        }
        for words in ["8\" steel, into the old 6\" duct", "8\" steel 9 ft, reduced to 6\"", "8\", old 6\" hole"] {
            assert_eq!(narrowest(words), narrowest("6\""), "{words}");
        }
        assert_eq!(narrowest("tubo rígido 150 mm, 3 m, sin reducción a 125 mm"), narrowest("150 mm"));
    }

    #[test]
    fn what_else_blows_into_it_and_a_flue_are_read() {
        for shared in [
            "8\" round, shared with the dryer, through the roof",
            "shared with the bath fan, 4\" rigid",
            "4\", joins the fan's duct",
            "120 mm, compartido con el baño",
            "150 mm, gemeinsam mit dem Trockner",
        ] {
            assert!(Duct::of_words(shared).shared, "{shared}");
        }
        for own in ["8\" round, not shared", "8\" round, joints taped", "4\" rigid, through the roof"] {
            assert!(!Duct::of_words(own).shared, "{own}");
        }
        for flue in [
            "through the existing 8\" flue of the boiler",
            "8\" up the chimney",
            "150 mm into the old furnace flue",
            "150 mm, por la chimenea",
            "durch den Schornstein",
        ] {
            assert!(Duct::of_words(flue).in_a_flue, "{flue}");
        }
        for other in [
            "8\" round, through the wall past the flue",
            "6\" round, in the hood's chimney",
            "8\" round, through the wall beside the chimney",
            "8\" not through the flue",
        ] {
            assert!(!Duct::of_words(other).in_a_flue, "{other}");
        }
        assert!(
            Duct::of_words("4\" rigid with screws, 14 ft").screws && !Duct::of_words("4\" rigid, no screws").screws
        );
    }

    #[test]
    fn what_a_bend_costs_and_where_it_ends_is_read() {
        let off = |words: &str| Duct::of_words(words).off_for_bend;
        assert_eq!(off("4\", at most 25 ft, less 5 ft for each 90 degree elbow"), Some("5'".parse().unwrap()));
        assert_eq!(off("100 mm, at most 12 m, minus 1.5 m per bend"), Some("1.5 m".parse().unwrap()));
        assert_eq!(off("4\", at most 25 ft"), None);
        let ends = |words: &str| Duct::of_words(words).ends;
        for words in [
            "120 mm, 3 m, al falso techo",
            "6\" round, ends in the attic",
            "150 mm into the loft",
            "4\" to the roof space",
        ] {
            assert_eq!(ends(words), Some(Ends::Inside), "{words}");
        }
        for words in
            ["6\" round, up through the attic to a roof cap", "4\" rigid, 9 ft to the yard", "through the wall"]
        {
            assert_eq!(ends(words), Some(Ends::Outside), "{words}");
        }
        assert_eq!(ends("8\" round, 20 ft"), None);
    }
}
