//! The words of `room.yaml`.

use super::{
    ACCESS, CLEARANCES, COUNTER_RUN, DOORWAY, FIXTURE, HUNG, ISLAND, MATERIAL, NARROW, OPENING, PHOTO, PROFILES, RUN,
    SEATING, WAIVER, WALL, WINDOW,
};
use crate::vocabulary::{Field, NameOf, Record, Shape};

/// `room.yaml`.
pub const ROOM: Record = Record {
    name: "room",
    about: "the room as measured: size, ceiling, floor, openings",
    fields: &[
        Field::required("name", Shape::Text, "what the household calls it", "Kitchen"),
        Field::optional("letter", Shape::Text, "the letter of its sheets; the name's first letter if left out", "K"),
        Field::optional("where", Shape::Text, "where in the house it is", "ground floor, rear ell"),
        Field::optional(
            "intro",
            Shape::Markdown,
            "a sentence that opens the room's page",
            "A galley between party wall and yard.",
        ),
        Field::optional(
            "outline",
            Shape::Either(&Shape::Sides, &Shape::List(&Shape::List(&Shape::Length))),
            "length and width between finished faces, or its corners going round: to the right, and up, as on paper",
            "15' 6\" x 12' 0\"",
        ),
        Field::optional(
            "walls",
            Shape::Named(&Shape::Record(&WALL)),
            "what is to be said of its walls, by their letters: A from the first corner to the second, and so on \
             around; of a rectangle A is the far long wall, then clockwise",
            "{A: {name: party wall}, C: {is: half wall, height: 42\"}}",
        ),
        Field::optional(
            "doors",
            Shape::Named(&Shape::Record(&DOORWAY)),
            "doors and cased openings, by name",
            "{hall door: {wall: D, at: 20\", width: 34\", hinge: left, swings: in}}",
        ),
        Field::optional(
            "windows",
            Shape::Named(&Shape::Record(&WINDOW)),
            "windows, by name",
            "{over sink: {wall: C, at: 62\", width: 34\", sill: 42\", height: 44\"}}",
        ),
        Field::optional(
            "runs",
            Shape::Named(&Shape::Record(&RUN)),
            "cabinets, fillers and appliances in a row along a wall, by name",
            "{range wall: {wall: A, depth: 24\", parts: [{filler: 3\"}, {opening: range}]}}",
        ),
        Field::optional(
            "islands",
            Shape::Named(&Shape::Record(&ISLAND)),
            "islands and peninsulas, by name",
            "{island: {wall: A, at: 40\", away: 68\", size: 96\" x 42\"}}",
        ),
        Field::optional(
            "fixtures",
            Shape::Named(&Shape::Record(&FIXTURE)),
            "things set out by their centreline, by name",
            "{toilet: {wall: A, centre: 18\", selection: Toilet}}",
        ),
        Field::optional(
            "lights",
            Shape::Named(&Shape::Record(&HUNG)),
            "lights set out over an island or a run, by name",
            "{pendants: {selection: Pendants, over: island, count: 3}}",
        ),
        Field::optional(
            "ceiling",
            Shape::Either(&Shape::Length, &Shape::Record(&CEILING)),
            "ceiling height from the finished floor",
            "8' 1\"",
        ),
        Field::optional(
            "floor build-up",
            Shape::Length,
            "still to be laid on the floor that the openings were measured from",
            "3/4\"",
        ),
        Field::optional("cooks", Shape::Whole, "how many people cook at once", "2"),
        Field::optional(
            "clearances",
            Shape::Record(&CLEARANCES),
            "distances in the room as measured or planned",
            "{work aisle: 42\", in front of toilet: 30\"}",
        ),
        Field::optional(
            "seating",
            Shape::Named(&Shape::Record(&SEATING)),
            "where people sit at a counter or table, by name",
            "{island: {edge: 72\", seats: 3, height: 36\", knee depth: 15\", behind: 44\", traffic: walk past}}",
        ),
        Field::optional(
            "access profile",
            PROFILES,
            "the standard of access that this room is planned by, where it differs from the book's",
            "2010 ADA",
        ),
        Field::optional(
            "access",
            Shape::Record(&ACCESS),
            "what the room offers to somebody in a wheelchair or on weak legs",
            "{turning circle: 60\"}",
        ),
        Field::optional(
            "photo",
            Shape::Either(&Shape::Text, &Shape::Record(&PHOTO)),
            "the picture that opens the room",
            "room.jpg",
        ),
        Field::optional(
            "photos",
            Shape::List(&Shape::Either(&Shape::Text, &Shape::Record(&PHOTO))),
            "more pictures of the room",
            "[range-wall.jpg]",
        ),
        Field::optional(
            "openings",
            Shape::Named(&Shape::Record(&OPENING)),
            "the holes that things go into, by name",
            "{range: {takes: range, width: 30\"}}",
        ),
        Field::optional(
            "counters",
            Shape::Named(&Shape::Record(&COUNTER_RUN)),
            "stretches of counter between sink, cooktop and refrigerator, by name",
            "{left of range: {length: 4', receptacles: 1}}",
        ),
        Field::optional(
            "way in",
            Shape::List(&Shape::Record(&NARROW)),
            "narrow points on the way to this room, after those of the book",
            "[{name: stair, width: 32\", height: 76\"}]",
        ),
        Field::optional("private", Shape::Markdown, "a note for the office alone", "Neighbour holds the alley key."),
        Field::optional(
            "waive",
            Shape::List(&Shape::Record(&WAIVER)),
            "findings set aside for this room",
            "[{rule: …, because: …, by: …, on: …}]",
        ),
    ],
};

/// A ceiling.
pub const CEILING: Record = Record {
    name: "ceiling",
    about: "a ceiling as measured, or one that rises from one side to the other",
    fields: &[
        Field::optional(
            "height",
            Shape::Readings,
            "height of a level ceiling at several points; the least governs",
            "[96\", 95 7/8\"]",
        ),
        Field::optional(
            "measured from",
            Shape::OneOf(&["finished floor", "present floor"]),
            "the floor that its heights were measured from; the finished one if left out",
            "present floor",
        ),
        Field::optional("low", Shape::Length, "the least height of one that slopes", "7' 10\""),
        Field::optional("high", Shape::Length, "its greatest height", "10' 2\""),
        Field::optional("rises along", Shape::OneOf(&["length", "width"]), "the direction in which it rises", "width"),
        Field::optional("low at", Shape::Name(NameOf::Wall), "the wall from which it rises", "C"),
        MATERIAL,
    ],
};
