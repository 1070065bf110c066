//! The words of lights: where they hang.

use super::shape::{Field, Record, Shape};

/// Where lights hang.
pub const HANGING: Record = Record {
    name: "hanging",
    about: "where lights hang, each point in the same order",
    fields: &[
        Field::optional("over", Shape::OneOf(&["island", "counter", "table", "path"]), "what they hang over", "island"),
        Field::optional("length", Shape::Length, "length of what they hang over", "10'"),
        Field::optional("top", Shape::Length, "its top, from the finished floor", "36\""),
        Field::optional("at", Shape::Readings, "their centres, from one end", "[20\", 60\", 100\"]"),
        Field::optional("bottom", Shape::Readings, "lowest part of each, from the finished floor", "68\""),
        Field::optional(
            "ceiling",
            Shape::Readings,
            "height of the ceiling where each hangs, from the finished floor",
            "[96\", 111\", 126\"]",
        ),
        Field::optional(
            "from low side",
            Shape::Readings,
            "under a ceiling that slopes, how far each hangs from its low side",
            "[30\", 60\"]",
        ),
        Field::optional("from tub", Shape::Length, "level distance to the edge of the nearest tub or shower", "40\""),
        Field::optional("rim", Shape::Length, "top of that tub's rim or threshold, from the finished floor", "20\""),
        Field::optional("lights", Shape::Area, "the work surface that they light by themselves", "16 sq ft"),
    ],
};
