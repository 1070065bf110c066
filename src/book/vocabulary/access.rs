//! The words for access: what a room offers to somebody in a wheelchair, or on weak legs.

use crate::book::{Control, KneeSpace};
use crate::vocabulary::{Field, NamedValue, Record, Shape};

/// The standards that a book can be planned by.
pub const PROFILES: Shape = Shape::OneOf(&["2010 ADA", "none"]);

/// Access in a room.
pub const ACCESS: Record = Record {
    name: "access",
    about: "what the room offers to somebody in a wheelchair or on weak legs, as measured or planned",
    fields: &[
        Field::optional(
            "kitchen",
            Shape::OneOf(&["pass-through", "U-shaped"]),
            "whether one can leave it at both ends",
            "U-shaped",
        ),
        at("turning circle", "greatest circle of clear floor", "60\""),
        Field::optional(
            "clear floor",
            Shape::Named(&Shape::Sides),
            "clear floor at each fixture or appliance, width and depth",
            "{range: 30\" x 48\"}",
        ),
        Field::optional(
            "knee spaces",
            Shape::Named(&KneeSpace::SHAPE),
            "open space under a basin, a sink or a counter, by name",
            "{basin: {width: 30\", toe depth: 17\", knees: [{at: 9\", deep: 11\"}, {at: 27\", deep: 8\"}]}}",
        ),
        Field::optional(
            "controls",
            Shape::Named(&Control::SHAPE),
            "switches, handles and knobs that one must reach, by name",
            "{hood switch: {height: 44\", reach: forward, over depth: 25\"}}",
        ),
        at("counter heights", "heights at which one can work", "[34\", 42\"]"),
        at("work surface width", "width of the surface to sit at and work", "30\""),
        at("work surface height", "its height", "34\""),
        Field::optional("work surface adjusts", Shape::YesNo, "whether it can be set from 29\" to 36\"", "true"),
        at("sink rim", "height of the sink's rim, or of the counter around it", "34\""),
        at("sink bowl depth", "depth of the bowl over a knee space", "6\""),
        Field::optional("shelves in reach", Shape::Percent, "how much of the shelves is within reach", "50 %"),
        at("toilet space from side wall", "clear floor around the toilet, from the wall at its side", "60\""),
        at("toilet space from rear wall", "clear floor around the toilet, from the wall behind it", "56\""),
        at("side grab bar", "length of the bar at the toilet's side", "42\""),
        at("side grab bar from rear wall", "where that bar begins", "12\""),
        at("rear grab bar", "length of the bar behind the toilet", "36\""),
        at("grab bar height", "top of the gripping surface from the finished floor", "34\""),
        Field::optional(
            "shower type",
            Shape::OneOf(&["transfer", "roll-in"]),
            "whether one moves over to a seat, or rolls in",
            "roll-in",
        ),
        at("shower entry", "clear width of the shower's entry", "60\""),
        at("shower threshold", "height of the step at the shower's entry", "1/2\""),
        at("shower controls", "height of the shower's controls", "44\""),
        at("mirror", "lower edge of the mirror's glass over a basin", "40\""),
    ],
};

/// A distance that may be measured at several places.
const fn at(key: &'static str, about: &'static str, example: &'static str) -> Field {
    Field::optional(key, Shape::Readings, about, example)
}
