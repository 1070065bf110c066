//! The words of what is built in: a sheet's front panel, what stands below, the wall's hollow, drilled holes.

use super::shape::{Field, Record, Shape};

/// The panel that a maker's sheet asks for.
pub const ASKED_PANEL: Record = Record {
    name: "asked panel",
    about: "the front panel that the maker's sheet asks for",
    fields: &[
        Field::optional("width", Shape::LengthRange, "width", "23 3/4\""),
        Field::optional("height", Shape::LengthRange, "height", "29 13/16\" to 30 1/4\""),
        Field::optional("thickness", Shape::LengthRange, "thickness", "5/8\" to 3/4\""),
        Field::optional("weight", Shape::Weight, "the most that it may weigh", "20 lb"),
    ],
};

/// What stands below an opening in a counter.
pub const BELOW: Record = Record {
    name: "below",
    about: "what stands below a cooktop or a sink",
    fields: &[
        Field::required("what", Shape::Text, "what it is", "drawer"),
        Field::optional("clear", Shape::Length, "from the top of the counter to it", "5\""),
    ],
};

/// The wall behind an opening.
pub const HOLLOW: Record = Record {
    name: "wall",
    about: "the wall that something goes into, probed",
    fields: &[
        Field::optional("cavity", Shape::Length, "from the studs' face to whatever is behind", "3 1/2\""),
        Field::optional("build-up", Shape::Length, "board, mortar and tile still to come on the studs", "7/8\""),
        Field::optional("holds", Shape::Text, "what runs in it where the thing goes", "vent pipe"),
        Field::optional(
            "rough-in",
            Shape::Length,
            "to the centre of the toilet's outlet, from where `from` says",
            "12\"",
        ),
        Field::optional("valve", Shape::Length, "to the valve's mark, from where `from` says", "3\""),
        Field::optional("from", Shape::OneOf(&["finished wall", "studs"]), "what these are measured from", "studs"),
    ],
};

/// A hole that is drilled.
pub const HOLE: Record = Record {
    name: "hole",
    about: "a hole to be drilled in a counter or a sink",
    fields: &[
        Field::required("for", Shape::Text, "what goes through it", "kitchen tap"),
        Field::optional("diameter", Shape::Length, "its diameter", "1 3/8\""),
        Field::optional("behind", Shape::Length, "from its centre to the splash, sill or wall behind", "2 1/2\""),
    ],
};
