//! The values of single cells: what options agree on, what is open until one is chosen, what is needed nowhere.

use crate::book::{DetailName, ProductOption, Selection};
use crate::units::Length;
use crate::vocabulary::{Shown, ShownField, ShownValue, Since};

/// What stands open until an option is chosen.
pub const OPEN: ShownValue = ShownValue::Word("open until chosen");

/// What is needed nowhere in a row.
pub fn dash() -> ShownValue {
    ShownValue::Text("–".into())
}

/// A cell of a thing's own words.
pub fn text(words: impl Into<String>) -> ShownValue {
    ShownValue::Text(words.into())
}

/// A length, where it is known.
pub fn length(length: Option<Length>) -> ShownValue {
    length.map_or(ShownValue::Nothing, ShownValue::Length)
}

/// What is known, or what needs no answer.
pub fn or_dash(value: ShownValue) -> ShownValue {
    if value.is_empty() { dash() } else { value }
}

/// What all options that may still stand agree on; open where they do not.
pub fn agreed(selection: &Selection, of: impl Fn(&ProductOption) -> ShownValue) -> ShownValue {
    let mut values = selection.standing().iter().map(of);
    let first = values.next().unwrap_or(ShownValue::Nothing);
    if values.any(|other| other != first) { OPEN } else { first }
}

/// What is chosen for a place, by its name.
pub fn chosen(selection: &Selection) -> ShownValue {
    selection.settled().map_or(OPEN, |option| text(option.title()))
}

/// A selection by its number and name.
pub fn named(selection: &Selection) -> ShownValue {
    text(format!("{} {}", selection.tag, selection.name.value).trim().to_string())
}

/// A fact of the kind's own.
pub fn detail(option: &ProductOption, name: DetailName) -> ShownValue {
    option.detail(name).map_or(ShownValue::Nothing, |detail| detail.value.shown())
}

/// A length, and what it is taken from.
pub fn from(what: &str, length: Length) -> ShownValue {
    let field = |key, value| ShownField::new(key, Since::Second, value);
    ShownValue::Group(vec![field("name", text(what)), field("at", ShownValue::Length(length))])
}
