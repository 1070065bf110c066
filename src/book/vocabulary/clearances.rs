//! The words for what is clear in a room: distances that a designer measures on site or plans.

use super::shape::{Field, Record, Shape};

/// Distances in a room.
pub const CLEARANCES: Record = Record {
    name: "clearances",
    about: "distances in the room as measured or planned; a list where there are several, of which the least counts",
    fields: &[
        Field::optional(
            "doorways",
            Shape::Named(&Shape::Length),
            "clear width of each doorway, between the open leaf and the stop",
            "{hall door: 32\"}",
        ),
        at("work aisle", "between counters or appliances that face each other", "42\""),
        at("walkway", "a way through, with a counter or an appliance on one side at most", "36\""),
        Field::optional(
            "triangle",
            Shape::Record(&TRIANGLE),
            "the ways between sink, cooking and refrigerator",
            "{sink to cooking: 60\", cooking to refrigerator: 72\", refrigerator to sink: 84\"}",
        ),
        Field::optional(
            "preparation counter",
            Shape::Sides,
            "the unbroken counter beside a sink where food is prepared, width and depth",
            "36\" x 24\"",
        ),
        Field::optional(
            "counter frontage",
            Shape::Either(&Shape::Length, &Shape::List(&Shape::Record(&STRETCH))),
            "all counter that can be worked at, along its front, or each stretch of it",
            "[{length: 96\", depth: 25 1/2\", clear above: 18\"}]",
        ),
        at("dishwasher to sink", "from the dishwasher's edge to the nearest edge of a sink", "24\""),
        at("standing space at dishwasher", "between the dishwasher and whatever stands at a right angle to it", "21\""),
        at("shoulder height", "height of the cook's shoulder from the finished floor", "56\""),
        at("in front of toilet", "clear floor from the toilet's front to whatever is opposite", "30\""),
        at("in front of bidet", "clear floor from the bidet's front to whatever is opposite", "30\""),
        at("in front of basin", "clear floor from the basin's front to whatever is opposite", "30\""),
        at("in front of tub", "clear floor from the tub's side to whatever is opposite", "30\""),
        at("in front of shower", "clear floor in front of the shower's entry", "30\""),
        at("toilet to side", "from the toilet's centre to the nearest wall, cabinet or tub beside it", "18\""),
        at("toilet to next fixture", "from the toilet's centre to the centre of the fixture beside it", "36\""),
        Field::optional(
            "toilet compartment",
            Shape::Sides,
            "inside of a compartment for the toilet, width and depth",
            "36\" x 66\"",
        ),
        at("paper holder ahead of bowl", "from the toilet's front edge forward to the paper", "10\""),
        at("paper holder height", "centre of the paper from the finished floor", "26\""),
        at("basin to side", "from the basin's centre to the wall or anything tall beside it", "20\""),
        at("basin edge to wall", "from the edge of a basin that hangs or stands free to the wall beside it", "4\""),
        at("basin to basin", "from centre to centre of two basins", "36\""),
        at("basin height", "top of the basin's rim from the finished floor", "34\""),
        Field::optional("shower", Shape::Sides, "inside of the shower between finished faces", "36\" x 42\""),
        at("shower seat height", "top of the shower's seat from its floor", "18\""),
        at("shower seat depth", "depth of a seat that is fixed in the shower", "15\""),
        at("shower head", "height of the shower head's outlet in the wall, from the shower's floor", "80\""),
        at("shower wall covering", "how high the waterproof covering goes, from the shower's floor", "84\""),
        at("headroom at shower", "ceiling above the shower's floor under the head", "84\""),
        at("headroom at toilet", "ceiling above the toilet and the floor in front of it", "84\""),
        at("headroom at basin", "ceiling above the basin and the floor in front of it", "84\""),
        at("headroom at tub", "ceiling above the tub and the floor in front of it", "84\""),
    ],
};

/// A distance that may be measured at several places.
const fn at(key: &'static str, about: &'static str, example: &'static str) -> Field {
    Field::optional(key, Shape::Readings, about, example)
}

/// The ways between the three centres of a kitchen.
pub const TRIANGLE: Record = Record {
    name: "triangle",
    about: "the ways between sink, cooking and refrigerator, from the middle of each front",
    fields: &[
        Field::optional("sink to cooking", Shape::Length, "from the sink to cooktop or range", "60\""),
        Field::optional("cooking to refrigerator", Shape::Length, "from cooktop or range to the refrigerator", "72\""),
        Field::optional("refrigerator to sink", Shape::Length, "from the refrigerator to the sink", "84\""),
        Field::optional("cuts into island", Shape::Length, "how far one of them cuts across an island's corner", "6\""),
    ],
};

/// A stretch of counter.
pub const STRETCH: Record = Record {
    name: "stretch of counter",
    about: "a straight piece of counter that can be worked at",
    fields: &[
        Field::required("length", Shape::Length, "along its front", "96\""),
        Field::optional("depth", Shape::Length, "from front to wall", "25 1/2\""),
        Field::optional("clear above", Shape::Length, "to whatever hangs over it", "18\""),
    ],
};

/// Counter beside something, to set things down on.
pub const LANDING: Record = Record {
    name: "landing",
    about: "counter beside, behind or across from a sink or an appliance, to set things down on",
    fields: &[
        Field::optional(
            "left",
            Shape::Either(&Shape::Length, &Shape::Record(&SHARED)),
            "counter to the left, seen from the front",
            "24\"",
        ),
        Field::optional(
            "right",
            Shape::Either(&Shape::Length, &Shape::Record(&SHARED)),
            "counter to the right",
            "{counter: 36\", to: fridge}",
        ),
        Field::optional("behind", Shape::Length, "counter behind it, on an island", "9\""),
        Field::optional("above", Shape::Length, "counter on top of it, or above or below it", "24\""),
        Field::optional("across", Shape::Length, "counter across from it", "18\""),
        Field::optional("across at", Shape::Length, "how far away the counter across from it is", "42\""),
        Field::optional(
            "across a walkway",
            Shape::YesNo,
            "whether others walk between it and the counter across from it",
            "true",
        ),
        Field::optional("to corner", Shape::Length, "from a sink's edge to an inside corner of the counter", "3\""),
        Field::optional("return", Shape::Length, "clear counter around that corner", "21\""),
        Field::optional("second sink", Shape::YesNo, "whether it is a sink besides the one for cleaning up", "true"),
    ],
};

/// Counter between two things.
pub const SHARED: Record = Record {
    name: "shared counter",
    about: "counter that ends at another sink or appliance, and serves both",
    fields: &[
        Field::required("counter", Shape::Length, "its length along the front", "36\""),
        Field::optional("to", Shape::Name(super::NameOf::Opening), "the opening at its other end", "fridge"),
        Field::optional("preparation", Shape::YesNo, "whether food is prepared there as well", "true"),
    ],
};

/// Where people sit at a counter or table.
pub const SEATING: Record = Record {
    name: "seating",
    about: "a place at an island, a counter or a table where people sit",
    fields: &[
        Field::optional("edge", Shape::Length, "length of the edge at which they sit", "72\""),
        Field::optional("seats", Shape::Whole, "how many sit there", "3"),
        Field::optional("height", Shape::Length, "top of the surface from the finished floor", "36\""),
        Field::optional("knee depth", Shape::Length, "clear for knees, from the edge inward", "15\""),
        Field::optional("behind", Shape::Length, "clear floor from the edge to whatever is behind the seats", "44\""),
        Field::optional(
            "traffic",
            Shape::OneOf(&["none", "edge past", "walk past"]),
            "whether others go by behind the seats",
            "walk past",
        ),
        Field::optional("wheelchair", Shape::YesNo, "whether somebody goes by in a wheelchair", "true"),
    ],
};
