//! What is in a wall to fix something heavy to.

use super::{InWords, denied, is_none};

/// What brackets and bars are fixed to, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Blocking {
    /// Whether there is something that holds, where the words tell.
    pub is: Option<Backing>,
}

/// What is in the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Backing {
    /// Wood, steel or masonry, set there to be fixed to.
    There,
    /// Nothing but the board, whatever is put through that; or nothing yet.
    NotThere,
    /// The frame of the wall as it stands, which holds only where its studs happen to be.
    StudsAlone,
}

/// What holds, in one or in several.
const HOLDS: [&str; 71] = [
    "vollziegel",
    "holzbalken",
    "massiv",
    "massive",
    "massivwand",
    "maciza",
    "macizo",
    "montageelement",
    "blocking",
    "blocked",
    "backing",
    "backer",
    "solid",
    "rail",
    "cleat",
    "ply",
    "plywood",
    "osb",
    "wood",
    "wooden",
    "timber",
    "lumber",
    "header",
    "sill",
    "nogging",
    "noggin",
    "dwang",
    "batten",
    "pattress",
    "board",
    "plank",
    "plate",
    "steel",
    "bracket",
    "frame",
    "carrier",
    "strap",
    "masonry",
    "brick",
    "brickwork",
    "concrete",
    "block",
    "blockwork",
    "stone",
    "2x",
    "1x",
    "3x",
    "4x",
    "holz",
    "holzlatte",
    "holzplatte",
    "traverse",
    "traversen",
    "latte",
    "mauerwerk",
    "beton",
    "betonwand",
    "vorwand",
    "vorwandelement",
    "installationselement",
    "multiplex",
    "multiplexplatte",
    "refuerzo",
    "madera",
    "tablero",
    "listón",
    "liston",
    "bastidor",
    "ladrillo",
    "hormigón",
    "muro",
];
/// How a German word for what holds ends: `Holztraverse`, `Kantholz`, `Stahlbeton`.
const ENDS: [&str; 12] = [
    "traverse",
    "traversen",
    "holz",
    "hölzer",
    "bohle",
    "bohlen",
    "element",
    "elemente",
    "beton",
    "verstärkung",
    "verstärkungen",
    "balken",
];
/// What is put through a board and held by that alone.
const ANCHORS: [&str; 16] = [
    "anchor",
    "toggle",
    "molly",
    "drywall screw",
    "plasterboard fixing",
    "cavity fixing",
    "wall plug",
    "rawlplug",
    "hollow wall",
    "hohlraumdübel",
    "dübel",
    "taco",
    "anclaje",
    "spring bolt",
    "butterfly",
    "cheville",
];
/// What a wall is closed with, and holds nothing heavy.
const BOARDS: [&str; 14] = [
    "drywall",
    "plasterboard",
    "sheetrock",
    "gypsum",
    "plaster",
    "wallboard",
    "gipskarton",
    "rigips",
    "gk platte",
    "pladur",
    "cartón yeso",
    "yeso laminado",
    "tile only",
    "placo",
];
/// What was not set yet, or is not there, wherever in a phrase.
const NOT_YET: [&str; 21] = [
    "not yet",
    "none",
    "no fixing",
    "nothing",
    "yet",
    "to come",
    "to be set",
    "to be added",
    "to be installed",
    "to add",
    "later",
    "missing",
    "lacking",
    "needed",
    "forgotten",
    "falta",
    "pendiente",
    "fehlt",
    "noch nicht",
    "kein",
    "ninguno",
];
/// Uprights of the wall as they stand.
const STUDS: [&str; 8] = ["stud", "montante", "ständer", "framing", "upright", "metal track", "perfil", "joist"];

impl InWords for Blocking {
    fn of_words(words: &str) -> Self {
        // `2x4 studs` are the frame of the wall, and not set there to be fixed to.
        let lower = words.to_lowercase().replace(['-', '‐', '‑'], " ");
        let lower = lower.replace("2x4 stud", "stud").replace("2x6 stud", "stud");
        let parts: Vec<&str> = lower.split([',', ';', '(', ')']).map(str::trim).collect();
        let said = |part: &&str, known: &[&str]| {
            known.iter().flat_map(|word| part.match_indices(word)).any(|(at, _)| begins(part, at))
        };
        let held = |part: &&str| {
            let mut met = HOLDS.iter().flat_map(|word| part.match_indices(word));
            met.any(|(at, word)| {
                let after = part.get(at + word.len()..).unwrap_or_default();
                // `blocking needed`: it is not there.
                let is_to_come = NOT_YET.iter().any(|yet| after.contains(yet));
                let is_denied = denied(part.get(..at).unwrap_or_default());
                is_whole(part, at, after) && !is_of_a_board(part, at) && !is_denied && !is_to_come
            }) || ends_so(part)
        };
        let between = |part: &&str| part.contains("between") || part.contains("entre") || part.contains("zwischen");
        let lacks = |part: &&str| is_none(part) || said(part, &NOT_YET) || named_denied(part);
        let is = if parts.iter().any(|part| held(part) && (!said(part, &STUDS) || between(part) || names_wood(part))) {
            Some(Backing::There)
        } else if parts.iter().any(lacks) || parts.iter().any(|part| said(part, &ANCHORS)) {
            Some(Backing::NotThere)
        } else if parts.iter().any(|part| said(part, &STUDS)) {
            Some(Backing::StudsAlone)
        } else if parts.iter().any(|part| said(part, &BOARDS)) {
            Some(Backing::NotThere)
        } else {
            None
        };
        Self { is }
    }
}

/// Whether a word of several in one says that something holds, and nothing before it or behind it denies it.
fn ends_so(part: &str) -> bool {
    let is_to_come = NOT_YET.iter().any(|yet| part.contains(yet));
    let ends = |word: &str| ENDS.iter().any(|end| word.len() > end.len() && word.ends_with(end));
    let mut before = String::new();
    let held = part.split_whitespace().any(|word| {
        let said = ends(word.trim_matches(|letter: char| !letter.is_alphanumeric())) && !denied(&before);
        before = format!("{before} {word}");
        said
    });
    held && !is_to_come
}

fn begins(part: &str, at: usize) -> bool {
    part.get(..at).and_then(|before| before.chars().next_back()).is_none_or(|before| !before.is_alphanumeric())
}

/// Whether it is a word of its own, of one or of several.
fn is_whole(part: &str, at: usize, after: &str) -> bool {
    begins(part, at) && !after.strip_prefix('s').unwrap_or(after).starts_with(char::is_alphabetic)
}

/// `wall board`, `gypsum board`, `tile backer board`: no board that holds.
fn is_of_a_board(part: &str, at: usize) -> bool {
    let before = part.get(..at).unwrap_or_default().trim_end();
    let is_board = part.get(at..).is_some_and(|from| from.starts_with("board") || from.starts_with("block wall"));
    is_board && ["gypsum", "wall", "plaster", "cement", "backer", "skirting"].iter().any(|word| before.ends_with(word))
}

/// Whether what holds is named and denied: `no blocking`, `without a rail`.
fn named_denied(part: &str) -> bool {
    let met = HOLDS.iter().flat_map(|word| part.match_indices(word)).map(|(at, _)| at);
    met.filter(|at| begins(part, *at)).any(|at| denied(part.get(..at).unwrap_or_default()))
}

/// Something of wood that is fixed to studs holds.
fn names_wood(part: &str) -> bool {
    let of_frame = ["stud", "frame", "framing", "joist", "screw"];
    let is_wood = ["wood ", "timber ", "lumber ", "wooden "].iter().flat_map(|wood| part.match_indices(wood)).any(
        |(at, wood)| {
            let after = part.get(at + wood.len()..).unwrap_or_default();
            begins(part, at) && !of_frame.iter().any(|word| after.starts_with(word))
        },
    );
    let set = [
        "plank",
        "nogg",
        "dwang",
        "2 by ",
        "1 by ",
        "vorwand",
        "montageelement",
        "installationselement",
        "blocking",
        "backing",
        "rail",
        "cleat",
        "ply",
        "osb",
        "batten",
        "header",
        "board",
        "frame fixed",
        "2x",
        "1x",
        "steel frame",
        "refuerzo",
        "tablero",
        "traverse",
    ];
    is_wood || ends_so(part) || set.iter().flat_map(|word| part.match_indices(word)).any(|(at, _)| begins(part, at))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masonry_and_wood_hold_in_german() {
        for there in [
            "Vollziegel, verputzt",
            "Vollziegel oder Holzverstärkung",
            "Holzverstärkung 24 mm",
            "Holzbalken 60 x 80 mm",
        ] {
            assert_eq!(Blocking::of_words(there).is, Some(Backing::There), "{there}");
        }
    }

    #[test]
    fn something_that_holds_is_there_or_not_or_it_is_the_frame_alone() {
        let is = |words: &str| Blocking::of_words(words).is;
        for there in [
            "2x8 blocking, 76\" and 96\" AFF",
            "two rails, 72\" and 84\" AFF",
            "solid, 32\" to 38\" AFF",
            "18 mm ply behind the plasterboard",
            "18 mm plywood, 600 mm to 900 mm",
            "steel frame fixed to floor and studs",
            "header and sill between the studs",
            "2x10 all round at 34\" AFF",
            "wall frame",
            "board, 350 mm to 800 mm AFF",
            "brick wall",
            "blocking between the studs, no anchors",
            "noggins at 900 mm",
            "Traverse auf 600 mm",
            "refuerzo de madera",
            "two rails as the sheet asks",
        ] {
            assert_eq!(is(there), Some(Backing::There), "{there}");
        }
        for none in [
            "none",
            "none yet",
            "no fixing",
            "drywall only",
            "drywall only, no blocking",
            "drywall anchors",
            "toggle bolts",
            "plasterboard anchors",
            "heavy-duty wall plugs",
            "blocking to be added",
            "blocking needed",
            "1/2\" gypsum board",
            "sin refuerzo",
            "kein Holz",
            "Hohlraumdübel in Gipskarton",
            "tacos en pladur",
        ] {
            assert_eq!(is(none), Some(Backing::NotThere), "{none}");
        }
        for studs in ["existing studs", "into the studs", "metal studs", "2x4 studs at 16\""] {
            assert_eq!(is(studs), Some(Backing::StudsAlone), "{studs}");
        }
        for unread in ["as drawn", "by the framer"] {
            assert_eq!(is(unread), None, "{unread}");
        }
    }

    #[test]
    fn what_holds_is_known_by_what_each_country_calls_it() {
        let is = |words: &str| Blocking::of_words(words).is;
        for there in [
            "Holztraverse 24 mm auf 800 mm",
            "UA-Profile mit Waschtischtraverse",
            "massive Wand, Schwerlastdübel",
            "Massivwand",
            "Montageelement",
            "Installationselement in Ständerwand",
            "Kantholz zwischen den Ständern",
            "2-by lumber let into the studs at 78\"",
            "timber fixed to the studs",
            "pared maciza",
            "muro macizo de ladrillo",
        ] {
            assert_eq!(is(there), Some(Backing::There), "{there}");
        }
        for none in ["keine Holztraverse", "Waschtischtraverse fehlt", "Holztraverse noch nicht gesetzt"] {
            assert_eq!(is(none), Some(Backing::NotThere), "{none}");
        }
        for studs in ["wood screws into the studs", "timber studs", "UA-Profile an Ständern"] {
            assert_eq!(is(studs), Some(Backing::StudsAlone), "{studs}");
        }
    }
}
