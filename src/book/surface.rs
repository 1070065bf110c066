//! How tile, floors and wallpaper are sold, laid and hung.

use crate::source::Spanned;
use crate::units::{Area, Length, Percent, Quantity};
use crate::vocabulary::{Slot, record, words};

words! {
    /// How a tile's edges are made.
    pub enum TileEdges {
        Rectified = "rectified",
        Calibrated = "calibrated",
        HandMade = "hand-made",
    }
}

record! {
    group
    #[derive(Default)]
    pub struct Sold = SOLD("packing", "the boxes or rolls that a surface comes in") {
        box_holds: Slot<Quantity> = "box holds", "what one box holds: an area, or so many pieces", "9.7 sq ft";
        lot: Slot<String> = "lot", "lot and calibre, as printed on every box", "7714 / 03";
        roll: Slot<(Length, Length)> = "roll", "width and length of a roll of wallpaper", "20 1/2\" x 33'";
        repeat: Slot<Length> = "repeat", "after what length its pattern comes again", "21\"";
    }
}

record! {
    marked group
    #[derive(Default)]
    pub struct Laid = LAID("laying", "how a tile, floor or board is laid; makers' figures beside the setter's") {
        area: Slot<Area> = "area", "the area to be covered, openings left out", "117 sq ft" => unmarked "the quantity is signed";
        waste: Slot<Percent> = "waste", "more than the area, for cuts and breakage", "15 %" => unmarked "the quantity is signed";
        bed: Slot<Length> = "bed", "what lies below it: mortar, glue or an underlay, as thick as it is in the end", "3/16\"" => marked_since_2;
        runs: Slot<String> = "runs", "the direction of its long side, grain or figure", "long side level" => marked_since_2;
        starts: Slot<String> = "starts", "where the laying starts, and so where cuts fall", "centred on the window" => marked_since_2;
        offset: Slot<Percent> = "offset", "how far each row is shifted, of a tile's length", "33 %" => marked_since_2;
        edges: Slot<TileEdges> = "edges", "how its edges are made: ground to size, or sorted by size", "rectified" => marked_since_2;
        varies_by: Slot<Length> = "varies by", "how far faces of one lot differ in size", "1/16\"" => unmarked "it is the maker's figure, for the checks";
        warps_by: Slot<Length> = "warps by", "how far an edge bows", "1/32\"" => unmarked "it is the maker's figure, for the checks";
        least_joint: Slot<Length> = "least joint", "the narrowest joint that its maker allows", "1/8\"" => unmarked "it is the maker's figure; the joint itself is signed";
        behind: Vec<Spanned<String>> = "behind",
            "the runs behind whose counters it is set as a splash, by their names in the room",
            "[sink wall]" => marked_since_2;
        niche: Slot<String> = "niche", "a niche in it: where, how large, and how it is edged", "over the tub, 12\" x 24\", mitred" => marked_since_2;
        open_edges: Slot<Length> = "open edges", "length of edges that end against nothing", "14'" => unmarked "trim is counted by it, which is signed";
    }
}

record! {
    pub struct PaperedWalls = PAPERED("papered walls", "the walls that a wallpaper covers") {
        along: Length = "along", "length of all walls together", "40'";
        height: Length = "height", "height of the paper", "8'";
        trim: Slot<Length> = "trim", "cut off each strip, top and bottom together", "4\"";
    }
}
