//! The words of counters: what they are made of, what carries them, and the slabs that they are cut from.

use super::shape::{Field, Record, Shape};

/// What counters are made of.
pub const MATERIALS: &[&str] =
    &["stone", "quartz", "porcelain", "concrete", "solid surface", "wood", "laminate", "metal"];

/// A counter.
pub const TOP: Record = Record {
    name: "top",
    about: "a counter or an island's top: its material, what carries it, and how it is cut from its slabs",
    fields: &[
        Field::optional("material", Shape::OneOf(MATERIALS), "what it is made of", "stone"),
        Field::optional(
            "lies on",
            Shape::List(&Shape::Text),
            "the runs, islands and places to sit that it covers, by their names in the room",
            "[range wall, island]",
        ),
        Field::optional("depth", Shape::Length, "from its back to its front edge, overhangs counted", "42\""),
        Field::optional("overhang", Shape::Length, "the farthest that it stands out past what carries it", "15\""),
        Field::optional(
            "free span",
            Shape::Length,
            "the widest gap below it with nothing that carries it, such as a dishwasher's",
            "24\"",
        ),
        Field::optional(
            "supports",
            Shape::Record(&SUPPORTS),
            "what carries its overhang",
            "{by: steel bars, out: 12\", in: 24\", apart: 24\"}",
        ),
        Field::optional(
            "slab",
            Shape::Record(&SLAB),
            "the slabs that are held for it",
            "{size: 126\" x 63\", usable: 122\" x 60\", kerf: 1/8\", direction: kept, count: 1}",
        ),
        Field::optional(
            "pieces",
            Shape::Named(&Shape::Sides),
            "what is cut in one piece, along the run and from front to back",
            "{left of range: 66\" x 25 1/2\"}",
        ),
        Field::optional(
            "seams",
            Shape::List(&Shape::Record(&SEAM)),
            "where pieces meet",
            "[{at: left of the sink, over: cabinet}]",
        ),
        Field::optional(
            "layout",
            Shape::OneOf(&["signed drawing", "fabricator decides"]),
            "who has the last word on seams and on the run of the veins",
            "signed drawing",
        ),
        Field::optional(
            "inside corners",
            Shape::Length,
            "radius of the inside corners of its cutouts; square is `0\"`",
            "3/8\"",
        ),
    ],
};

/// What carries an overhang.
pub const SUPPORTS: Record = Record {
    name: "supports",
    about: "what carries an overhang, as the fabricator asks for it",
    fields: &[
        Field::required("by", Shape::OneOf(&["brackets", "steel bars", "legs", "panels"]), "what they are", "legs"),
        Field::optional("out", Shape::Length, "how far they reach out past the cabinets", "12\""),
        Field::optional("in", Shape::Length, "how far they reach back over the cabinets", "24\""),
        Field::optional("apart", Shape::Length, "the widest distance between two of them", "24\""),
    ],
};

/// The slabs that are held.
pub const SLAB: Record = Record {
    name: "slab",
    about: "the slabs that a top is cut from, as the yard measured them",
    fields: &[
        Field::optional("size", Shape::Sides, "length and width", "126\" x 63\""),
        Field::optional("usable", Shape::Sides, "what is left of them without rough edges and flaws", "122\" x 60\""),
        Field::optional("kerf", Shape::Length, "what the saw takes", "1/8\""),
        Field::optional(
            "direction",
            Shape::OneOf(&["kept", "free"]),
            "whether every piece keeps the run of the stone, its first side along the slab's first, or may be turned",
            "kept",
        ),
        Field::optional("count", Shape::Whole, "how many are held", "2"),
    ],
};

/// Where two pieces meet.
pub const SEAM: Record = Record {
    name: "seam",
    about: "a place where two pieces of a top meet",
    fields: &[
        Field::required("at", Shape::Text, "where it is", "left of the sink"),
        Field::optional(
            "over",
            Shape::OneOf(&["cabinet", "dishwasher", "sink", "cooktop"]),
            "what stands below it, or the cutout that it runs through",
            "cabinet",
        ),
        Field::optional("on", Shape::Text, "the run that it is on, by its name in the room", "range wall"),
        Field::optional("from left", Shape::Length, "from the left end of that run's wall to it", "62\""),
        Field::optional("reinforced", Shape::YesNo, "whether it is reinforced from below", "true"),
    ],
};
