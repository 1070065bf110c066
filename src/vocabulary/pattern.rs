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
        (Self::Herringbone, &["herringbone", "chevron", "fishbone"]),
        (Self::Diagonal, &["diagonal", "on the diamond", "45"]),
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
}

impl InWords for Pattern {
    fn of_words(words: &str) -> Self {
        let lower = words.to_lowercase();
        let any = |names: &[&str]| names.iter().any(|name| lower.contains(name));
        let named = Bond::WORDS.into_iter().find(|(_, names)| any(names));
        Self {
            bond: named.map_or(Bond::Straight, |(bond, _)| bond),
            less_than_half: any(&LESS_THAN_HALF),
            one_sheet: lower.contains("one sheet"),
            sheets: lower.contains("sheet"),
            directed: Mention::Direction.is_in(words),
        }
    }
}

/// How the edges of tile end, as far as it is told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct EdgeTrim {
    /// Whether one word says that there is none.
    pub is_none: bool,
    /// How much of it there is, where its words say so once; a profile's own size is no length of it.
    pub length: Option<Length>,
}

/// What is longer than that in the words of an edge is no size of its profile (common practice).
const PROFILE: Length = Length::from_inches(12);

impl InWords for EdgeTrim {
    fn of_words(words: &str) -> Self {
        let mut long = lengths(words).into_iter().map(|told| told.length).filter(|length| *length > PROFILE);
        let length = long.next().filter(|_| long.next().is_none());
        Self { is_none: matches!(words.trim().to_lowercase().as_str(), "none" | "no"), length }
    }
}
