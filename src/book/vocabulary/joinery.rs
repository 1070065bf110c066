//! The words of cabinets: their fronts, and what they hold.

use super::shape::{Field, Record, Shape};

/// Doors and drawers.
pub const FRONTS: Record = Record {
    name: "fronts",
    about: "doors and drawer fronts, as pulls and knobs are counted by",
    fields: &[
        Field::optional("doors", Shape::Whole, "pulls or knobs that the doors take", "6"),
        Field::optional("drawers", Shape::Whole, "pulls or knobs that the drawers take; a wide one takes two", "14"),
        Field::optional("thickness", Shape::Length, "thickness that the screws go through", "3/4\""),
    ],
};

/// What is inside.
pub const STORES: Record = Record {
    name: "storage",
    about: "shelves and bins inside cabinets",
    fields: &[
        Field::optional("depth", Shape::Length, "depth of the shelves", "24\""),
        Field::optional(
            "shelves",
            Shape::OneOf(&["fixed", "adjustable", "roll-out", "pull-out"]),
            "how the shelves are made",
            "roll-out",
        ),
        Field::optional("highest", Shape::Length, "the highest shelf, from the finished floor", "60\""),
        Field::optional(
            "bins near",
            Shape::List(&Shape::OneOf(&["sink", "cooktop", "preparation", "refrigerator"])),
            "what bins for waste stand within a step of",
            "[sink, preparation]",
        ),
    ],
};
