//! The words of `room.yaml`.

use super::access::{ACCESS, PROFILES};
use super::clearances::{CLEARANCES, LANDING, SEATING};
use super::layout::{DOORWAY, FIXTURE, HUNG, WALL, WINDOW};
use super::project::{NARROW, WAIVER};
use super::run::{ISLAND, RUN};
use super::shape::{Field, NameOf, Record, Shape};

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
            Shape::Either(&Shape::Text, &Shape::Record(&super::PHOTO)),
            "the picture that opens the room",
            "room.jpg",
        ),
        Field::optional(
            "photos",
            Shape::List(&Shape::Either(&Shape::Text, &Shape::Record(&super::PHOTO))),
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
            Shape::Named(&Shape::Record(&super::COUNTER_RUN)),
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
    ],
};

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
            "what is above it",
            "{what: wood cabinet, height: 66\"}",
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
            "service",
            Shape::Record(&SERVICE),
            "what is there to connect it to",
            "{power: 120 V 15 A 5-15, gas: 65000 Btu/h}",
        ),
        Field::optional(
            "below",
            Shape::Either(&Shape::Text, &Shape::Record(&super::BELOW)),
            "what stands below a cooktop or a sink",
            "{what: drawer, clear: 5\"}",
        ),
        Field::optional("apron opening", Shape::Length, "height left in the cabinet's front for a sink's apron", "8\""),
        Field::optional(
            "hollow",
            Shape::Record(&super::HOLLOW),
            "the wall that it goes into, probed",
            "{cavity: 3 1/2\"}",
        ),
        Field::optional(
            "pair",
            Shape::Text,
            "the opening beside or above it whose thing is joined to this one",
            "freezer",
        ),
        Field::optional(
            "service points",
            Shape::Record(&super::POINTS),
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

/// Who measured.
pub const MEASURED: Record = Record {
    name: "measurement",
    about: "who measured an opening, when, and with what",
    fields: &[
        Field::optional("on", Shape::Date, "the day", "2027-01-11"),
        Field::optional("by", Shape::Text, "who", "site lead"),
        Field::optional("with", Shape::Text, "the instrument", "steel tape"),
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

/// What stands beside or above.
pub const NEIGHBOUR: Record = Record {
    name: "neighbour",
    about: "what stands beside or above an opening",
    fields: &[
        Field::required("what", Shape::Text, "what it is", "wall"),
        Field::optional(
            "gap",
            Shape::Length,
            "from the opening's edge to it, trim and baseboard counted as part of it",
            "2 1/2\"",
        ),
        Field::optional("height", Shape::Length, "its lower edge from the finished floor, for what is above", "66\""),
        Field::optional("depth", Shape::Length, "how far it stands out from the wall", "12\""),
    ],
};

/// The cabinet that something is cut into.
pub const INSIDE: Record = Record {
    name: "housing cabinet",
    about: "the cabinet that an oven, cooktop or sink is cut into, inside",
    fields: &[
        Field::optional("inside width", Shape::Length, "clear between its sides", "34 1/2\""),
        Field::optional(
            "inside depth",
            Shape::Length,
            "from its front edge to the back panel, or to an outlet that stands proud",
            "23 1/2\"",
        ),
        Field::optional("inside height", Shape::Length, "clear height", "28\""),
        Field::optional("outside width", Shape::Length, "over its sides or stiles", "36\""),
        Field::optional(
            "back panel",
            Shape::OneOf(&["whole", "cut away"]),
            "whether the back panel is cut away behind it",
            "whole",
        ),
    ],
};

/// What is there to connect to.
pub const SERVICE: Record = Record {
    name: "services",
    about: "power, gas, water and air as they are at the opening",
    fields: &[
        Field::optional("power", Shape::Text, "volts, amperes and receptacle", "120 V 15 A 5-15"),
        Field::optional("gas", Shape::Text, "what the branch carries", "65000 Btu/h"),
        Field::optional("water", Shape::Text, "line and valve", "1/4\" with shut-off, 8\" AFF"),
        Field::optional("drain", Shape::Text, "size and height", "1 1/2\", 16\" AFF"),
        Field::optional("duct", Shape::Text, "size and way out", "8\" round, through the roof"),
        Field::optional("blocking", Shape::Text, "what holds brackets and bars", "solid blocking 66\" to 70\" AFF"),
    ],
};
