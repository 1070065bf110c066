//! The words of surfaces: how tile, floor and paper are sold, laid and hung.

use super::shape::{Field, Record, Shape};

/// How it is sold.
pub const SOLD: Record = Record {
    name: "packing",
    about: "the boxes or rolls that a surface comes in",
    fields: &[
        Field::optional("box holds", Shape::Quantity, "what one box holds: an area, or so many pieces", "9.7 sq ft"),
        Field::optional("lot", Shape::Text, "lot and calibre, as printed on every box", "7714 / 03"),
        Field::optional("roll", Shape::Sides, "width and length of a roll of wallpaper", "20 1/2\" x 33'"),
        Field::optional("repeat", Shape::Length, "after what length its pattern comes again", "21\""),
    ],
};

/// How it is laid.
pub const LAID: Record = Record {
    name: "laying",
    about: "how a tile, floor or board is laid; makers' figures beside the setter's",
    fields: &[
        Field::optional("area", Shape::Area, "the area to be covered, openings left out", "117 sq ft"),
        Field::optional("waste", Shape::Percent, "more than the area, for cuts and breakage", "15 %"),
        Field::optional("runs", Shape::Text, "the direction of its long side, grain or figure", "long side level"),
        Field::optional("offset", Shape::Percent, "how far each row is shifted, of a tile's length", "33 %"),
        Field::optional(
            "edges",
            Shape::OneOf(&["rectified", "calibrated", "hand-made"]),
            "how its edges are made: ground to size, or sorted by size",
            "rectified",
        ),
        Field::optional("varies by", Shape::Length, "how far faces of one lot differ in size", "1/16\""),
        Field::optional("warps by", Shape::Length, "how far an edge bows", "1/32\""),
        Field::optional("least joint", Shape::Length, "the narrowest joint that its maker allows", "1/8\""),
        Field::optional("open edges", Shape::Length, "length of edges that end against nothing", "14'"),
    ],
};

/// The walls that a paper covers.
pub const PAPERED: Record = Record {
    name: "papered walls",
    about: "the walls that a wallpaper covers",
    fields: &[
        Field::required("along", Shape::Length, "length of all walls together", "40'"),
        Field::required("height", Shape::Length, "height of the paper", "8'"),
        Field::optional("trim", Shape::Length, "cut off each strip, top and bottom together", "4\""),
    ],
};
