//! How tile, floors and wallpaper are sold, laid and hung.

use super::Slot;
use crate::units::{Area, Length, Percent, Quantity};

/// The boxes or rolls that a surface comes in.
#[derive(Clone, Debug, Default)]
pub struct Sold {
    /// What one box holds: an area, or so many pieces.
    pub box_holds: Slot<Quantity>,
    /// Lot and calibre, as printed on the boxes.
    pub lot: Slot<String>,
    /// Width and length of a roll.
    pub roll: Slot<(Length, Length)>,
    /// After what length its pattern comes again.
    pub repeat: Slot<Length>,
}

/// How a tile, floor or board is laid.
#[derive(Clone, Debug, Default)]
pub struct Laid {
    /// The area to be covered.
    pub area: Slot<Area>,
    /// More than the area, for cuts and breakage.
    pub waste: Slot<Percent>,
    /// The direction of its long side, grain or figure.
    pub runs: Slot<String>,
    /// How far each row is shifted, of a tile's length.
    pub offset: Slot<Percent>,
    /// How its edges are made.
    pub edges: Slot<String>,
    /// How far faces of one lot differ in size.
    pub varies_by: Slot<Length>,
    /// How far an edge bows.
    pub warps_by: Slot<Length>,
    /// The narrowest joint that its maker allows.
    pub least_joint: Slot<Length>,
    /// Length of edges that end against nothing.
    pub open_edges: Slot<Length>,
}

/// The walls that a wallpaper covers.
#[derive(Clone, Debug)]
pub struct Papered {
    /// Length of all walls together.
    pub along: Length,
    /// Height of the paper.
    pub height: Length,
    /// Cut off each strip, top and bottom together.
    pub trim: Slot<Length>,
}
