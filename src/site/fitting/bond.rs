//! How a pattern is laid, read from its words, and what it wastes.

use rust_decimal::Decimal;

use crate::book::ProductOption;
use crate::units::Percent;
use crate::vocabulary::{Kind, Trade};

/// How tiles or planks are laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bond {
    /// Joints in line.
    Straight,
    /// Each row shifted.
    Offset,
    /// Straight or shifted, at an angle to the walls.
    Diagonal,
    /// Herringbone or chevron.
    Herringbone,
}

/// The bond that the words of a pattern name.
pub fn bond(pattern: &str) -> Bond {
    let words = pattern.to_lowercase();
    let any = |names: &[&str]| names.iter().any(|name| words.contains(name));
    if any(&["herringbone", "chevron", "fishbone"]) {
        Bond::Herringbone
    } else if any(&["diagonal", "on the diamond", "45"]) {
        Bond::Diagonal
    } else if any(&["running bond", "offset", "brick", "half bond", "third bond", "staggered"]) {
        Bond::Offset
    } else {
        Bond::Straight
    }
}

/// What a surface wastes: what the book says, or what its pattern usually costs (trade practice: tile
/// 10, 15 and 20 %; planks and boards 7 %, otherwise 15 %). None for what is not laid in pieces.
pub fn waste(kind: Kind, option: &ProductOption) -> Option<Percent> {
    if let Some(waste) = option.laid.waste.get() {
        return Some(*waste);
    }
    let pattern = option.words("pattern").map_or("", |(words, _)| words);
    let percent = match (kind.trade(), kind, bond(pattern)) {
        (_, Kind::Floor, _) if pattern.to_lowercase().contains("one sheet") => 0,
        (_, Kind::Floor | Kind::Boarding, Bond::Straight | Bond::Offset) => 7,
        (_, Kind::Floor | Kind::Boarding, _) => 15,
        (Trade::Tile, _, Bond::Straight | Bond::Offset) => 10,
        (Trade::Tile, _, Bond::Diagonal) => 15,
        (Trade::Tile, _, Bond::Herringbone) => 20,
        _ => return None,
    };
    Percent::new(Decimal::from(percent))
}
