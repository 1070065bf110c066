//! The `finish/` rules: colours, hands, edges, joints and the hardware that goes on.

pub mod edge;
pub mod family;
pub mod hand;
pub mod hardware;
pub mod joint;
pub mod thickness;

use crate::book::{ProductOption, Selection};
use crate::vocabulary::{EdgeTrim, Kind};

/// Whether a selection is tile.
fn is_tile(selection: &Selection) -> bool {
    selection.is(Kind::Tile)
}

/// Whether the book says of a tile, in one word, that its edges get no trim.
fn has_no_trim(option: &ProductOption) -> bool {
    option.understood::<EdgeTrim>().is_some_and(|(trim, _)| trim.is_none && !trim.says_how)
}
