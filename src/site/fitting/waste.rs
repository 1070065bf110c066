//! What a surface wastes, by the way in which it is laid.

use rust_decimal::Decimal;

use crate::book::ProductOption;
use crate::units::Percent;
use crate::vocabulary::{Bond, Kind, Pattern, Trade};

/// What a surface wastes: what the book says, or what its pattern usually costs (trade practice: tile
/// 10, 15 and 20 %; planks and boards 7 %, otherwise 15 %). None for what is not laid in pieces.
pub fn waste(kind: Kind, option: &ProductOption) -> Option<Percent> {
    if let Some(waste) = option.laid.waste.get() {
        return Some(*waste);
    }
    let pattern = option.understood::<Pattern>().map_or_else(Pattern::default, |(pattern, _)| *pattern);
    let percent = match (kind.trade(), kind, pattern.bond) {
        (_, Kind::Floor, _) if pattern.one_sheet => 0,
        (_, Kind::Floor | Kind::Boarding, Bond::Straight | Bond::Offset) => 7,
        (_, Kind::Floor | Kind::Boarding, _) => 15,
        // What is cut as one piece a field is ordered by its own size.
        (_, Kind::Splashback, _) => 0,
        (Trade::Tile, _, Bond::Straight | Bond::Offset) => 10,
        (Trade::Tile, _, Bond::Diagonal) => 15,
        (Trade::Tile, _, Bond::Herringbone) => 20,
        _ => return None,
    };
    Percent::new(Decimal::from(percent))
}
