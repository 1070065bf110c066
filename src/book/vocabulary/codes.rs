//! The words by which a book adopts codes, names local amendments, and sets stricter figures of its own.

use super::shape::{Field, Record, Shape};

/// The codes that count for a book.
pub const CODES: Record = Record {
    name: "codes",
    about: "the editions that the place of work has adopted, local amendments, and the firm's own figures",
    fields: &[
        Field::optional(
            "adopts",
            Shape::List(&Shape::Text),
            "editions by name and year: their figures stop the work, where a general default only asks",
            "[IRC 2021, NEC 2020, IFGC 2021]",
        ),
        Field::optional(
            "figures",
            Shape::List(&Shape::Record(&FIGURE)),
            "figures that differ here: a local amendment, or the firm's own",
            "[{figure: work aisle for one cook, is: 44\", because: two of them bake, by: the firm}]",
        ),
    ],
};

/// A figure that differs here.
pub const FIGURE: Record = Record {
    name: "figure",
    about: "a figure of a code or guideline that differs in this book, and who says so",
    fields: &[
        Field::required(
            "figure",
            Shape::Text,
            "its name, as `bookmatch explain figures` lists it",
            "work aisle for one cook",
        ),
        Field::required("is", Shape::Text, "its value here, with its unit", "44\""),
        Field::required("because", Shape::Text, "the amendment's number, or the reason", "town amendment 12-4"),
        Field::required("by", Shape::Text, "who says so", "town of Wexmarrow"),
    ],
};

/// The house around the rooms.
pub const HOUSE: Record = Record {
    name: "house",
    about: "what the rules must know of the house around the rooms",
    fields: &[
        Field::optional(
            "open flue",
            Shape::YesNo,
            "whether an appliance in the house draws its air from the rooms and vents by its own draft",
            "true",
        ),
        Field::optional("heating value", Shape::Whole, "of the gas, in Btu for a cubic foot, from the utility", "1030"),
    ],
};
