//! The words of an opening: what goes in, how it was measured, what stands around it.

use super::{BELOW, HOLLOW, INSIDE, LANDING, MEASURED, NEIGHBOUR, POINTS, SERVICE, WAIVER};
use crate::book::{CutOut, Setting};
use crate::vocabulary::{Field, NameOf, Record, Shape, Value};

/// An opening.
pub const OPENING: Record = Record {
    name: "opening",
    about: "a hole that something goes into: measured, with what stands around it",
    fields: &[
        Field::required("takes", Shape::Name(NameOf::Kind), "the kind of thing that goes in", "range"),
        Field::optional("wall", Shape::Name(NameOf::Wall), "the wall that it is at, where no run holds it", "A"),
        Field::optional("at", Shape::Length, "from that wall's left end, seen from inside the room, to it", "40\""),
        Field::optional(
            "width",
            Shape::Readings,
            "clear width at the floor, in the middle and at the top; the least governs",
            "[30 1/16\", 30\", 30 1/8\"]",
        ),
        Field::optional(
            "height",
            Shape::Readings,
            "clear height at the left, in the middle and at the right",
            "[70 1/2\", 70 1/2\", 70 5/8\"]",
        ),
        Field::optional(
            "depth",
            Shape::Readings,
            "clear depth from the front edge to the wall or whatever stands before it",
            "25 1/2\"",
        ),
        Field::optional(
            "diagonals",
            Shape::List(&Shape::Length),
            "both diagonals, to see whether it is square",
            "[46 7/8\", 47\"]",
        ),
        Field::optional(
            "plumb",
            Shape::Record(&PLUMB),
            "distances of each side from one plumb line",
            "{left: [1\", 1 1/8\", 1\"], right: [31\", 31\", 31 1/8\"]}",
        ),
        Field::optional(
            "sill",
            Shape::Length,
            "how far its bottom is above the finished floor; left out, it stands on the floor",
            "31\"",
        ),
        Field::optional(
            "measured from",
            Shape::OneOf(&["finished floor", "present floor"]),
            "the floor its height was measured from",
            "finished floor",
        ),
        Field::optional(
            "measured between",
            Shape::OneOf(&["finished walls", "studs"]),
            "the faces that its width and depth were measured from; finished ones if left out",
            "studs",
        ),
        Field::optional(
            "wall build-up",
            Shape::Record(&WALL_BUILD_UP),
            "board, mortar and tile still to come on the studs that it was measured between",
            "{left: 5/8\", right: 5/8\", back: 7/8\"}",
        ),
        Field::optional(
            "measured",
            Shape::Record(&MEASURED),
            "who measured, and when; left out, it is as planned",
            "{on: 2027-01-11, by: site lead}",
        ),
        Field::optional(
            "left",
            Shape::Either(&Shape::Text, &Shape::Record(&NEIGHBOUR)),
            "what stands to the left of it",
            "base cabinet",
        ),
        Field::optional(
            "right",
            Shape::Either(&Shape::Text, &Shape::Record(&NEIGHBOUR)),
            "what stands to the right of it",
            "{what: wall, gap: 2 1/2\"}",
        ),
        Field::optional(
            "above",
            Shape::Either(&Shape::Text, &Shape::Record(&NEIGHBOUR)),
            "what is above it; `nothing`, where nothing stands or hangs there up to the ceiling",
            "{what: wall cabinet, height: 66\", material: burns}",
        ),
        Field::optional("in front", Shape::Length, "clear floor in front of it, to whatever stands opposite", "42\""),
        Field::optional(
            "counter depth",
            Shape::Length,
            "from the wall to the counter's front edge beside it",
            "25 1/2\"",
        ),
        Field::optional(
            "counter height",
            Shape::Length,
            "top of the counter beside it, from the finished floor",
            "36\"",
        ),
        Field::optional(
            "landing",
            Shape::Record(&LANDING),
            "counter beside, behind or across from it, to set things down on",
            "{left: 12\", right: 15\"}",
        ),
        Field::optional(
            "cabinet",
            Shape::Record(&INSIDE),
            "the cabinet that it is cut into",
            "{inside width: 34 1/2\", inside depth: 23 1/2\"}",
        ),
        Field::optional(
            "set",
            Setting::SHAPE,
            "where the front of what goes in is meant to be: in one plane with the fronts beside it, or before them",
            "flush",
        ),
        Field::optional("made for", CutOut::SHAPE, "the type of unit that it is made for", "slide-in"),
        Field::optional(
            "service",
            Shape::Record(&SERVICE),
            "what is there to connect it to",
            "{power: 120 V 15 A 5-15, gas: 65000 Btu/h}",
        ),
        Field::optional(
            "below",
            Shape::Either(&Shape::Text, &Shape::Record(&BELOW)),
            "what stands below a cooktop or a sink",
            "{what: drawer, clear: 5\"}",
        ),
        Field::optional("apron opening", Shape::Length, "height left in the cabinet's front for a sink's apron", "8\""),
        Field::optional("hollow", Shape::Record(&HOLLOW), "the wall that it goes into, probed", "{cavity: 3 1/2\"}"),
        Field::optional(
            "pair",
            Shape::Text,
            "the opening beside or above it whose thing is joined to this one",
            "freezer",
        ),
        Field::optional(
            "service points",
            Shape::Record(&POINTS),
            "where each service comes out",
            "{power: {from left: 6\", height: 12\"}}",
        ),
        Field::optional("note", Shape::Text, "a line for the installer", "Old flue behind: probe before fixing."),
        Field::optional(
            "waive",
            Shape::List(&Shape::Record(&WAIVER)),
            "findings set aside for this opening",
            "[{rule: …, because: …, by: …, on: …}]",
        ),
    ],
};

/// What is still to come on bare walls.
pub const WALL_BUILD_UP: Record = Record {
    name: "wall build-up",
    about: "what is still to come on each of the walls that an opening was measured between; left out, nothing",
    fields: &[
        Field::optional("left", Shape::Length, "on the wall at its left", "5/8\""),
        Field::optional("right", Shape::Length, "on the wall at its right", "5/8\""),
        Field::optional("back", Shape::Length, "on the wall behind it", "7/8\""),
    ],
};

/// Distances from one plumb line.
pub const PLUMB: Record = Record {
    name: "plumb readings",
    about: "distances of the left and the right side from one plumb line, at the same heights",
    fields: &[
        Field::required(
            "left",
            Shape::List(&Shape::Length),
            "from the line to the left side, at the floor, in the middle, at the top",
            "[1\", 1 1/8\", 1\"]",
        ),
        Field::required(
            "right",
            Shape::List(&Shape::Length),
            "from the line to the right side, at the same heights",
            "[31\", 31\", 31 1/8\"]",
        ),
    ],
};
