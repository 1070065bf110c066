//! The words for what stands in a row: runs of cabinets, their parts, islands and their sides.

use super::{ENDS, MATERIAL};
use crate::vocabulary::{Field, NameOf, Record, Shape};

/// A run.
pub const RUN: Record = Record {
    name: "run",
    about: "cabinets, fillers, appliances and gaps in a row along a wall",
    fields: &[
        Field::optional("wall", Shape::Name(NameOf::Wall), "the wall that it stands against", "A"),
        Field::optional("from", Shape::OneOf(ENDS), "the end from which it is set out; the left if left out", "left"),
        Field::optional("starts", Shape::Length, "from that end of the wall to its first part", "25 1/2\""),
        Field::optional(
            "above floor",
            Shape::Length,
            "its lower edge from the finished floor, for wall cabinets and shelves; left out, it stands on the floor",
            "54\"",
        ),
        Field::optional("depth", Shape::Length, "from the wall to the front of its doors", "24\""),
        Field::optional("height", Shape::Length, "height of its cabinets", "34 1/2\""),
        Field::optional("counter", Shape::Record(&COUNTER), "the counter on it", "{depth: 25 1/2\", height: 36\"}"),
        Field::optional("handles", Shape::Length, "how far its handles stand out from the doors", "1 3/8\""),
        Field::optional("crown", Shape::Length, "height of the moulding or closure above its cabinets", "3\""),
        Field::optional(
            "space",
            Shape::Readings,
            "clear length from end to end as measured; the least governs",
            "[73 1/2\", 73 5/8\"]",
        ),
        Field::optional("left end", Shape::OneOf(RUN_ENDS), "what it meets at its left end", "wall"),
        Field::optional("right end", Shape::OneOf(RUN_ENDS), "what it meets at its right end", "open"),
        MATERIAL,
        Field::optional(
            "parts",
            Shape::List(&Shape::Record(&PART)),
            "what stands in it, one beside the other from the end where it starts",
            "[{filler: 3\"}, {cabinet: drawers, width: 24\", drawers: 3}, {opening: range}]",
        ),
    ],
};

/// What a run can meet at its ends.
pub const RUN_ENDS: &[&str] = &["wall", "corner", "open"];

/// The counter of a run.
pub const COUNTER: Record = Record {
    name: "counter of a run",
    about: "the counter that lies on a run's cabinets",
    fields: &[
        Field::optional("depth", Shape::Length, "from the wall to its front edge", "25 1/2\""),
        Field::optional("height", Shape::Length, "its top from the finished floor", "36\""),
    ],
};

/// A part of a run.
pub const PART: Record = Record {
    name: "part of a run",
    about: "one thing in a run: a cabinet, a tall unit, a filler, a panel, a gap, or an opening by its name",
    fields: &[
        Field::optional("cabinet", Shape::Text, "a cabinet, by what it is", "drawers"),
        Field::optional("tall", Shape::Text, "a tall unit, by what it is", "pantry"),
        Field::optional("filler", Shape::Length, "a filler so wide", "3\""),
        Field::optional("panel", Shape::Length, "a panel so thick", "3/4\""),
        Field::optional("gap", Shape::Length, "nothing, so wide", "36\""),
        Field::optional("opening", Shape::Name(NameOf::Opening), "an opening, as wide as it measures", "range"),
        Field::optional("width", Shape::Length, "width of a cabinet or tall unit", "24\""),
        Field::optional("depth", Shape::Length, "depth, where it is not the run's", "15\""),
        Field::optional("height", Shape::Length, "height, where it is not the run's", "90\""),
        Field::optional("doors", Shape::Whole, "how many doors", "2"),
        Field::optional("drawers", Shape::Whole, "how many drawers or pull-outs", "3"),
        Field::optional("hinge", Shape::OneOf(ENDS), "the side a single door hangs on", "left"),
        Field::optional("stiles", Shape::Length, "width of each stile of its face frame", "1 1/2\""),
        MATERIAL,
        Field::optional(
            "holds",
            Shape::List(&Shape::Name(NameOf::Opening)),
            "openings cut into it: a sink, a cooktop, an oven",
            "[sink]",
        ),
    ],
};

/// An island.
pub const ISLAND: Record = Record {
    name: "island",
    about: "an island or peninsula, set out from a wall that it is parallel to",
    fields: &[
        Field::optional("wall", Shape::Name(NameOf::Wall), "the wall that it is set out from", "A"),
        Field::optional("at", Shape::Length, "from the wall's left end to its left end", "40\""),
        Field::optional("away", Shape::Length, "from the wall's face to the edge of its counter", "67 1/2\""),
        Field::optional("size", Shape::Sides, "its counter, along the wall and away from it", "96\" x 42\""),
        Field::optional(
            "turned",
            Shape::YesNo,
            "whether it is turned by a quarter, the first side of its size away from the wall",
            "true",
        ),
        Field::optional("height", Shape::Length, "its top from the finished floor", "36\""),
        Field::optional("depth", Shape::Length, "depth of its cabinets, where a part gives none", "24\""),
        Field::optional("handles", Shape::Length, "how far its handles stand out from the doors", "1 3/8\""),
        Field::optional("wall side", Shape::Record(&SIDE), "the side that faces the wall", "{parts: […]}"),
        Field::optional("room side", Shape::Record(&SIDE), "the side away from it", "{overhang: 15\", seats: 3}"),
        Field::optional("left side", Shape::Record(&SIDE), "its left side, seen facing the wall", "{overhang: 1\"}"),
        Field::optional("right side", Shape::Record(&SIDE), "its right side", "{overhang: 12\", seats: 1}"),
    ],
};

/// A side of an island.
pub const SIDE: Record = Record {
    name: "side of an island",
    about: "a side of an island: how far the counter overhangs, who sits there, what stands in it",
    fields: &[
        Field::optional("overhang", Shape::Length, "from the body to the counter's edge", "15\""),
        Field::optional("seats", Shape::Whole, "how many sit there", "3"),
        Field::optional(
            "parts",
            Shape::List(&Shape::Record(&PART)),
            "what stands in it from left to right, seen from that side",
            "[{cabinet: drawers, width: 36\", drawers: 3}]",
        ),
    ],
};
