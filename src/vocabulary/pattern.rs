//! How a surface is laid, read from the words of its pattern.

use super::Mention;
use super::supply::{InWords, lengths};
use crate::units::Length;

/// How tiles or planks are laid.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Bond {
    /// Joints in line.
    #[default]
    Straight,
    /// Each row shifted.
    Offset,
    /// Straight or shifted, at an angle to the walls.
    Diagonal,
    /// Herringbone or chevron.
    Herringbone,
}

impl Bond {
    /// Each with the words that name it; the others are laid straight.
    const WORDS: [(Self, &[&str]); 3] = [
        (
            Self::Herringbone,
            &[
                "herringbone",
                "herring-bone",
                "herring bone",
                "chevron",
                "fishbone",
                "fish-bone",
                "fish bone",
                "zigzag",
                "zig-zag",
                "espiga",
                "espina",
                "fischgr",
            ],
        ),
        (Self::Diagonal, &["diagonal", "on the diamond", "on point", "cartabón", "turned by an eighth"]),
        (Self::Offset, &["running bond", "offset", "brick", "half bond", "third bond", "staggered"]),
    ];
}

/// Words for an offset of less than half.
const LESS_THAN_HALF: [&str; 7] = ["third", "quarter", "1/3", "1/4", "33", "25", "random"];

/// A pattern, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pattern {
    /// The bond.
    pub bond: Bond,
    /// Whether rows are shifted by less than half, or by chance.
    pub less_than_half: bool,
    /// Whether it is laid in one sheet.
    pub one_sheet: bool,
    /// Whether it comes in sheets.
    pub sheets: bool,
    /// Whether its words say in which direction it is laid.
    pub directed: bool,
    /// Whether any of its words is known.
    pub known: bool,
}

/// Words, by their beginnings, of what is laid straight, or comes as it is.
const STRAIGHT: &[&str] = &[
    "straight",
    "stack",
    "grid",
    "align",
    "square",
    "plain",
    "linear",
    "mosaic",
    "level",
    "upright",
    "horizontal",
    "vertical",
    "plank",
    "board",
    "strip",
    "sheet",
    "slab",
    "roll",
    "one piece",
    "carpet",
    "hexagon",
    "penny",
    "fish scale",
    "scallop",
    "basket",
    "windmill",
    "versailles",
    "random",
    "width",
    "rect",
    "chequer",
    "checker",
    "harlequin",
    "corrida",
    "alinead",
    "tabla",
    "kreuzfuge",
    "gerade",
    "diele",
    "verband",
    "rett",
    "lige",
    "rak",
    "droit",
    "tongue",
    "shiplap",
    "v-groove",
    "bead",
    "along",
    "across",
    "parallel",
    "panel",
    "raised",
    "recessed",
    "board and batten",
    "wainscot",
    "lambri",
    "kassett",
    "füllung",
];

/// Words for a side of what is laid, of which is then said where it lies: `long way garage to kitchen`.
const WHICH_SIDE: &[&str] = &[
    "long way",
    "long side",
    "long dimension",
    "short way",
    "lado largo",
    "lado corto",
    "a lo largo",
    "lange seite",
    "dans le sens",
];

impl InWords for Pattern {
    fn of_words(words: &str) -> Self {
        let lower = words.to_lowercase();
        let any = |names: &[&str]| names.iter().any(|name| lower.contains(name));
        let named = Bond::WORDS.into_iter().find(|(_, names)| any(names)).map(|(bond, _)| bond);
        let turned = || turned_by_half_a_right_angle(&lower).then_some(Bond::Diagonal);
        Self {
            bond: named.filter(|bond| *bond == Bond::Herringbone).or_else(turned).or(named).unwrap_or_default(),
            less_than_half: any(&LESS_THAN_HALF),
            one_sheet: lower.contains("one sheet"),
            sheets: lower.contains("sheet"),
            directed: Mention::Direction.is_in(words) || any(WHICH_SIDE),
            known: named.is_some()
                || turned().is_some()
                || any(STRAIGHT)
                || any(&LESS_THAN_HALF)
                || lower.contains("bond"),
        }
    }
}

/// Whether words name an angle of 45°: a length of so many inches is none.
fn turned_by_half_a_right_angle(lower: &str) -> bool {
    const ANGLE: &str = "45";
    lower.match_indices(ANGLE).any(|(at, _)| {
        let before = lower.get(..at).and_then(|before| before.chars().next_back());
        let after = lower.get(at + ANGLE.len()..).unwrap_or_default().trim_start();
        let goes_on =
            |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit() || ".,/".contains(letter));
        let is_a_length = lengths(lower.get(at..).unwrap_or_default()).first().is_some_and(|told| {
            Length::parse(&format!("{ANGLE}{}", unit(after))).is_ok_and(|length| length == told.length)
        });
        !goes_on(before) && !after.starts_with(|letter: char| letter.is_ascii_digit()) && !is_a_length
    })
}

/// The sign or word that follows a number.
fn unit(after: &str) -> &str {
    let end = after.find(|letter: char| letter.is_whitespace() || ",;".contains(letter)).unwrap_or(after.len());
    after.get(..end).unwrap_or_default()
}

/// How the edges of tile end, as far as it is told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct EdgeTrim {
    /// Whether its words say that there is none.
    pub is_none: bool,
    /// Whether they go on to say how it ends there.
    pub says_how: bool,
    /// How much of it there is, where its words say so once; a profile's own size is no length of it.
    pub length: Option<Length>,
    /// How thick a tile its profile takes, where its words name one profile and one size of it.
    pub profile: Option<Length>,
}

/// What is longer than that in the words of an edge is no size of its profile (common practice).
const PROFILE: Length = Length::from_inches(12);

/// How the words of an edge begin that say that it has none.
const NONE: [&str; 10] = ["none", "no", "not", "n/a", "without", "nothing", "sin", "ninguno", "ninguna", "ohne"];

impl InWords for EdgeTrim {
    fn of_words(words: &str) -> Self {
        let mut long = lengths(words).into_iter().map(|told| told.length).filter(|length| *length > PROFILE);
        let length = long.next().filter(|_| long.next().is_none());
        let lower = words.trim().to_lowercase();
        let first = lower.split([' ', ',', ';', ':', '(']).next().unwrap_or_default();
        // `none; it ends at the casings` says how; a dash says nothing.
        let says_how = lower.contains([',', ';', ':']);
        let is_a_dash = !lower.contains(char::is_alphanumeric);
        let mut short = lengths(words).into_iter().map(|told| told.length).filter(|length| *length <= PROFILE);
        let profile = short.next().filter(|_| short.next().is_none() && Mention::Profile.is_in(&lower));
        Self { is_none: NONE.contains(&first) || is_a_dash, says_how, length, profile }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pattern_is_known_by_the_trade_s_words_and_an_angle_is_no_length() {
        let bond = |words: &str| Pattern::of_words(words).bond;
        for words in
            ["herringbone", "herring-bone", "Herring bone", "fish-bone", "zigzag", "en espiga", "chevron at 45"]
        {
            assert_eq!(bond(words), Bond::Herringbone, "{words}");
        }
        for words in ["diagonal", "set on point", "laid at 45°", "at 45 degrees", "a cartabón", "turned 45"] {
            assert_eq!(bond(words), Bond::Diagonal, "{words}");
        }
        for words in ["straight, 45\" from the door", "stacked, starts 45 mm off the corner", "straight, 45 in. up"] {
            assert_eq!(bond(words), Bond::Straight, "{words}");
        }
        assert_eq!(bond("brick, half offset"), Bond::Offset);
    }

    #[test]
    fn an_edge_without_trim_is_told_in_many_ways() {
        let told = |words: &str| {
            let trim = EdgeTrim::of_words(words);
            (trim.is_none, trim.says_how)
        };
        for words in ["none", "no trim needed", "n/a", "sin perfil", "ninguno", "not needed", "-", "–"] {
            assert_eq!(told(words), (true, false), "{words}");
        }
        assert_eq!(told("none; it ends at the casings"), (true, true));
        for words in ["glazed edge pieces, 14 ft", "mitred"] {
            assert!(!told(words).0, "{words}");
        }
    }
}
