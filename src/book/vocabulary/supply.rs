//! The words of places: where a service comes out of a wall, and where a maker's sheet wants it.

use super::shape::{Field, Record, Shape};

/// Where services come out at an opening.
pub const POINTS: Record = Record {
    name: "service points",
    about: "where each service comes out at the opening",
    fields: &[
        Field::optional("power", Shape::Record(&POINT), "the receptacle or box", "{from left: 6\", height: 12\"}"),
        Field::optional(
            "gas",
            Shape::Record(&POINT),
            "the stub or valve",
            "{from left: 15\", height: 4\", proud: 1\"}",
        ),
        Field::optional("water", Shape::Record(&POINT), "the stop valve", "{from left: 3\", height: 8\"}"),
        Field::optional("drain", Shape::Record(&POINT), "the centre of the drain", "{from left: 12\", height: 16\"}"),
        Field::optional("duct", Shape::Record(&POINT), "the centre of the duct", "{from left: 18\", height: 84\"}"),
    ],
};

/// Where a service comes out.
pub const POINT: Record = Record {
    name: "service point",
    about: "where a service comes out, seen from the front",
    fields: &[
        Field::optional("from left", Shape::Length, "from the opening's left edge to its centre", "6\""),
        Field::optional("height", Shape::Length, "its centre from the finished floor", "12\""),
        Field::optional("proud", Shape::Length, "how far it stands out from the finished wall", "1 1/2\""),
        Field::optional("beside", Shape::YesNo, "whether it is in the cabinet beside, not behind the thing", "true"),
    ],
};

/// Where a maker's sheet wants services.
pub const ZONES: Record = Record {
    name: "service zones",
    about: "where the maker's sheet wants each service to come out",
    fields: &[
        Field::optional(
            "power",
            Shape::Record(&ZONE),
            "the receptacle or box",
            "{from left: 2\" to 28\", height: at most 6\"}",
        ),
        Field::optional("gas", Shape::Record(&ZONE), "the stub or valve", "{height: 2\" to 5\", proud: 1\"}"),
        Field::optional("water", Shape::Record(&ZONE), "the stop valve", "{beside: true}"),
        Field::optional("drain", Shape::Record(&ZONE), "the centre of the drain", "{height: at most 20\"}"),
        Field::optional("duct", Shape::Record(&ZONE), "the centre of the duct", "{from left: 17 3/4\" to 18 1/4\"}"),
    ],
};

/// A zone.
pub const ZONE: Record = Record {
    name: "service zone",
    about: "where the maker's sheet wants a service to come out, seen from the front",
    fields: &[
        Field::optional("from left", Shape::LengthRange, "from the opening's left edge to its centre", "2\" to 28\""),
        Field::optional("height", Shape::LengthRange, "its centre from the finished floor", "at most 6\""),
        Field::optional("proud", Shape::Length, "the most that it may stand out from the finished wall", "1\""),
        Field::optional(
            "beside",
            Shape::YesNo,
            "whether it must be in the cabinet beside, not behind the thing",
            "true",
        ),
    ],
};

/// Counters with their receptacles.
pub const COUNTER_RUN: Record = Record {
    name: "counter",
    about: "a stretch of counter, unbroken by sink, cooktop or refrigerator, and what is plugged in along it",
    fields: &[
        Field::required("length", Shape::Length, "its length", "8'"),
        Field::optional("depth", Shape::Length, "its depth", "25 1/2\""),
        Field::optional("island", Shape::YesNo, "whether it is an island or a peninsula", "true"),
        Field::optional("receptacles", Shape::Whole, "receptacles that serve it", "2"),
        Field::optional("provision", Shape::YesNo, "whether a box is provided for a later receptacle", "true"),
    ],
};
