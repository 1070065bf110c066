//! The words of an order: quotation, availability, order, promise.

use super::shape::{Field, Record, Shape};

/// How an order stands.
pub const ORDER: Record = Record {
    name: "order",
    about: "what the supplier has said and when, and whether it is ordered",
    fields: &[
        Field::optional("quote", Shape::Text, "the number of the supplier's quotation", "Q-1182"),
        Field::optional("good until", Shape::Date, "the last day on which the quotation holds", "2027-02-28"),
        Field::optional(
            "available on",
            Shape::Date,
            "the day on which the supplier last said that it can be had",
            "2027-01-12",
        ),
        Field::optional("placed on", Shape::Date, "the day on which it was ordered", "2027-01-14"),
        Field::optional("promised for", Shape::Date, "the day on which the supplier says it comes", "2027-03-30"),
    ],
};
