//! The pages of figures: of codes, guidelines and the trade, each with its value and source.

use crate::assess::codes::{Basis, Figure, Value, all};

use crate::units::System;

use super::page::{cut, entry, heading, paragraph};

/// Every figure with its value and where it comes from.
pub fn list(units: System) -> String {
    let mut text = heading("Figures");
    text += &paragraph(
        "What the rules go by where neither a maker's sheet nor the field says otherwise. A code's figure stops the \
         work where the book adopts its edition; advice and practice only ask. None of them approves anything: the \
         code in force, the maker's instructions and licensed trades do.",
    );
    for figure in all() {
        text += &entry(figure.name, &format!("{}; {}", value(figure, units), figure.source));
    }
    text + "\n"
}

/// The figure of that name, in small letters.
pub fn named(name: &str) -> Option<&'static Figure> {
    all().find(|figure| figure.name.to_lowercase() == name)
}

/// A figure's page.
pub fn page(figure: &Figure, units: System) -> String {
    let mut text = heading(&format!("{} (figure)", figure.name));
    text += &paragraph(&format!("{}: {}.", value(figure, units), basis(figure)));
    text += &paragraph(&format!("Source: {}.", figure.source));
    text += &paragraph("Where the place of work or the firm sets another one, write in `book.yaml`:");
    text += &cut(&format!("    codes: {{figures: [{{figure: {}, is: …, because: …, by: …}}]}}", figure.name));
    text + "\n"
}

fn value(figure: &Figure, units: System) -> String {
    match figure.value {
        Value::Length(length) => units.in_a_row(&length.to_string(), &length.metric().to_string()),
        Value::Number(number, "") => number.to_string(),
        Value::Number(number, unit) => format!("{number} {unit}"),
    }
}

fn basis(figure: &Figure) -> String {
    match figure.basis {
        Basis::Code(family, first, 9999) => format!("a code's, {} {first} and later", family.name()),
        Basis::Code(family, first, last) => format!("a code's, {} {first} to {last}", family.name()),
        Basis::Guideline => "a guideline's: advice, never a code".into(),
        Basis::Practice => "the trade's".into(),
    }
}
