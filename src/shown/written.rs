//! What is shown as JSON, by the version of the content.

use serde_json::{Map, Value, json};

use crate::units::{Length, Money};
use crate::vocabulary::{ShownField, ShownValue, Version, Words};

use super::field::MarkedField;

/// What is shown as a version writes it.
pub fn content(shown: &ShownValue, version: Version) -> Value {
    match version.states() {
        None => first(shown, false),
        Some(stated) => {
            let mut content = fields(shown.fields(), version);
            content.insert(Version::STATED_AS.into(), stated.into());
            Value::Object(content)
        }
    }
}

/// The first version: what is empty stands there as `null`. Only the kind's own facts tell which of them is a
/// length.
fn first(value: &ShownValue, is_fact: bool) -> Value {
    match value {
        ShownValue::Nothing => Value::Null,
        ShownValue::Length(one) if !is_fact => length(*one),
        ShownValue::Range(range) => json!({"least": range.least.map(length), "most": range.most.map(length)}),
        ShownValue::Amount(money) => amount(*money),
        ShownValue::List(values) => values.iter().map(|value| first(value, is_fact)).collect(),
        ShownValue::Group(fields) => {
            let stands = |field: &&ShownField| field.since.stands_in(Version::First);
            let field = |field: &ShownField| {
                (field.key.to_string(), first(&field.value, is_fact || field.key == MarkedField::Details.word()))
            };
            Value::Object(fields.iter().filter(stands).map(field).collect())
        }
        told => later(told, Version::First).unwrap_or(Value::Null),
    }
}

/// A version after the first: what is empty is left out, and every value tells what it is.
pub fn later(value: &ShownValue, version: Version) -> Option<Value> {
    if value.is_empty() {
        return None;
    }
    Some(match value {
        ShownValue::Nothing => Value::Null,
        ShownValue::Text(text) => text.as_str().into(),
        ShownValue::Word(word) => (*word).into(),
        ShownValue::Yes(yes) => (*yes).into(),
        ShownValue::Length(one) => json!({"length": length(*one)}),
        ShownValue::Range(range) => {
            let ends = [("least", range.least), ("most", range.most)];
            Value::Object(ends.into_iter().filter_map(|(key, end)| Some((key.into(), length(end?)))).collect())
        }
        ShownValue::Sides(sides) => json!({"sides": sides.iter().copied().map(length).collect::<Vec<_>>()}),
        // Exactly: in femtograms, in square nanometres.
        ShownValue::Weight(weight) => json!({"weight": weight.femtograms().to_string()}),
        ShownValue::Area(area) => json!({"area": area.square_nanometres().to_string()}),
        ShownValue::Amount(money) => json!({"amount": amount(*money)}),
        ShownValue::List(values) => values.iter().filter_map(|value| later(value, version)).collect(),
        ShownValue::Group(group) => {
            let held = fields(group, version);
            return (!held.is_empty()).then_some(Value::Object(held));
        }
    })
}

fn fields(group: &[ShownField], version: Version) -> Map<String, Value> {
    let stands = group.iter().filter(|field| field.since.stands_in(version));
    stands.filter_map(|field| Some((field.key.to_string(), later(&field.value, version)?))).collect()
}

/// Whole nanometres as text.
fn length(length: Length) -> Value {
    length.nanometres().to_string().into()
}

/// `3180.00 USD`.
fn amount(money: Money) -> Value {
    format!("{} {}", money.plain(), money.currency).into()
}
