//! The words for what is clear in a room: distances that a designer measures on site or plans.

use super::{STRETCH, TRIANGLE};
use crate::vocabulary::{Field, Record, Shape};

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
