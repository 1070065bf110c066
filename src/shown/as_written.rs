//! What an issue holds of an item, read again as a typed value: by the version that it was made under.

use serde_json::{Map, Value};

use crate::units::{Area, Currency, Length, LengthRange, Money, Weight};
use crate::vocabulary::{ShownField, ShownValue, Since, Version, Words};

use super::field::MarkedField;

/// The version of a content; one that states another is read as the newest: reading the record has told it.
pub fn version(content: &Value) -> Version {
    Version::stated(content.get(Version::STATED_AS).and_then(Value::as_str)).unwrap_or_default()
}

/// A content as the value that it was written from.
pub fn read(content: &Value) -> ShownValue {
    match version(content) {
        Version::First => loosely(content, ""),
        Version::Second | Version::Third => {
            let fields = content.as_object().into_iter().flatten().filter(|(key, _)| *key != Version::STATED_AS);
            sorted(fields.map(|(key, value)| field(key, plainly(value))))
        }
    }
}

/// What tells by itself what it is.
fn plainly(value: &Value) -> ShownValue {
    match value {
        Value::Null => ShownValue::Nothing,
        Value::Bool(yes) => ShownValue::Yes(*yes),
        Value::String(text) => ShownValue::Text(text.clone()),
        Value::Number(number) => ShownValue::Text(number.to_string()),
        Value::Array(values) => ShownValue::List(values.iter().map(plainly).collect()),
        Value::Object(fields) => telling(fields).unwrap_or_else(|| group(fields, |_, value| plainly(value))),
    }
}

/// The first version, where the key of a text tells whether it is a length or an amount.
fn loosely(value: &Value, within: &str) -> ShownValue {
    match value {
        Value::String(text) if MarkedField::Size.word() == within => {
            length(value).map_or_else(|| ShownValue::Text(text.clone()), ShownValue::Length)
        }
        Value::String(text) if [MarkedField::Price, MarkedField::Total].iter().any(|one| one.word() == within) => {
            amount(text).map_or_else(|| ShownValue::Text(text.clone()), ShownValue::Amount)
        }
        Value::Array(values) => ShownValue::List(values.iter().map(|value| loosely(value, "")).collect()),
        Value::Object(fields) if MarkedField::Details.word() == within => group(fields, |_, value| plainly(value)),
        Value::Object(fields) if MarkedField::Size.word() == within => {
            telling(fields).unwrap_or_else(|| group(fields, |_, value| loosely(value, within)))
        }
        Value::Object(fields) => group(fields, loosely_under),
        other => plainly(other),
    }
}

fn loosely_under(key: &str, value: &Value) -> ShownValue {
    loosely(value, key)
}

fn group(fields: &Map<String, Value>, read: impl Fn(&str, &Value) -> ShownValue) -> ShownValue {
    sorted(fields.iter().map(|(key, value)| field(key, read(key, value))))
}

/// Fields by their keys: the record writes them so, and the book as it stands has them in an order of its own.
fn sorted(fields: impl Iterator<Item = ShownField>) -> ShownValue {
    let mut fields: Vec<ShownField> = fields.collect();
    fields.sort_by(|one, other| one.key.cmp(&other.key));
    ShownValue::Group(fields)
}

fn field(key: &str, value: ShownValue) -> ShownField {
    ShownField::new(key.to_string(), Since::First, value)
}

/// An object whose keys say that it is a length, a range, sides or an amount.
fn telling(fields: &Map<String, Value>) -> Option<ShownValue> {
    let only = |key: &str| fields.get(key).filter(|_| fields.len() == 1);
    if let Some(one) = only("length") {
        return length(one).map(ShownValue::Length);
    }
    if let Some(sides) = only("sides").and_then(Value::as_array) {
        return sides.iter().map(length).collect::<Option<Vec<_>>>().map(ShownValue::Sides);
    }
    if let Some(weight) = only("weight") {
        return weight.as_str()?.parse().ok().map(|weight| ShownValue::Weight(Weight::from_femtograms(weight)));
    }
    if let Some(area) = only("area") {
        return area.as_str()?.parse().ok().map(|area| ShownValue::Area(Area::from_square_nanometres(area)));
    }
    if let Some(money) = only("amount") {
        return amount(money.as_str()?).map(ShownValue::Amount);
    }
    let is_end = |key: &String| key == "least" || key == "most";
    if fields.is_empty() || !fields.keys().all(is_end) {
        return None;
    }
    let [least, most] = ["least", "most"].map(|end| fields.get(end).and_then(length));
    Some(ShownValue::Range(LengthRange { least, most }))
}

/// Whole nanometres; nothing where it is no such figure.
fn length(value: &Value) -> Option<Length> {
    Some(Length::from_nanometres(value.as_str()?.parse().ok()?))
}

/// `3180.00 USD`.
fn amount(text: &str) -> Option<Money> {
    let (figure, code) = text.rsplit_once(' ')?;
    Money::parse(figure, Currency::parse(code).ok()?).ok()
}
