//! What changed of an item, from what to what, in words.

use std::collections::BTreeSet;

use serde_json::{Map, Value};

use crate::units::Length;
use crate::units::length::Grain;

/// One thing that is no longer as it was shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// What: `width`, or `steel: width` where several options stand.
    pub what: String,
    /// What it was; nothing where it was not there.
    pub from: Option<String>,
    /// What it is; nothing where it is gone.
    pub to: Option<String>,
}

impl Change {
    /// In a phrase: "width from 29 7/8" (758.8 mm) to 30" (762 mm)".
    pub fn words(&self) -> String {
        match (&self.from, &self.to) {
            (Some(from), Some(to)) => format!("{} from {from} to {to}", self.what),
            (Some(from), None) => format!("{} gone, which was {from}", self.what),
            (None, Some(to)) => format!("{} new: {to}", self.what),
            (None, None) => self.what.clone(),
        }
    }
}

/// What changed between two contents of an item, in the order of the fields.
pub fn changes(before: &Value, after: &Value) -> Vec<Change> {
    let mut found = Vec::new();
    let empty = Map::new();
    let fields = |value: &Value| value.as_object().cloned().unwrap_or_else(|| empty.clone());
    let (old, new) = (fields(before), fields(after));
    for key in keys(&old, &new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        match key.as_str() {
            "options" => options(old, new, &mut found),
            _ => compare(key, old, new, &mut found),
        }
    }
    found
}

/// Options are known by their id, wherever they stand.
fn options(before: &Value, after: &Value, found: &mut Vec<Change>) {
    let (old, new) = (list(before), list(after));
    let named = |options: &[Value], id: &str| options.iter().find(|option| id_of(option) == id).cloned();
    let ids: Vec<&str> = old.iter().map(id_of).chain(new.iter().map(id_of)).collect();
    let mut seen = BTreeSet::new();
    let several = old.len() > 1 || new.len() > 1;
    for id in ids.into_iter().filter(|id| seen.insert(*id)) {
        let name = |option: &Value| option["name"].as_str().unwrap_or(id).to_string();
        match (named(old, id), named(new, id)) {
            (Some(old), Some(new)) => {
                let lead = if several { format!("{id}: ") } else { String::new() };
                fields(&lead, &old, &new, found);
            }
            (Some(old), None) => {
                found.push(Change { what: format!("option `{id}`"), from: Some(name(&old)), to: None });
            }
            (None, Some(new)) => {
                found.push(Change { what: format!("option `{id}`"), from: None, to: Some(name(&new)) });
            }
            (None, None) => {}
        }
    }
}

/// The fields of one option, those of `size` and `details` by their own names.
fn fields(lead: &str, before: &Value, after: &Value, found: &mut Vec<Change>) {
    let none = Map::new();
    let (old, new) = (before.as_object().unwrap_or(&none), after.as_object().unwrap_or(&none));
    for key in keys(old, new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        match key.as_str() {
            "size" | "details" => fields(lead, old, new, found),
            "pictures" => pictures(lead, list(old), list(new), found),
            // The total says again what price, quantity and accessories say.
            "total" if before["price"] != after["price"] || before["quantity"] != after["quantity"] => {}
            _ => compare(&format!("{lead}{key}"), old, new, found),
        }
    }
}

/// Pictures by their place in the row: nobody can say a picture in words.
fn pictures(lead: &str, old: &[Value], new: &[Value], found: &mut Vec<Change>) {
    for at in 0..old.len().max(new.len()) {
        let (before, after) = (old.get(at), new.get(at));
        if before == after {
            continue;
        }
        let shown = |picture: Option<&Value>| {
            picture.map(|picture| picture["caption"].as_str().unwrap_or("a picture").to_string())
        };
        let what = format!("{lead}picture {}", at + 1);
        match (shown(before), shown(after)) {
            (from, to) if from == to => found.push(Change { what: format!("{what} is another"), from: None, to: None }),
            (from, to) => found.push(Change { what, from, to }),
        }
    }
}

fn compare(what: &str, old: &Value, new: &Value, found: &mut Vec<Change>) {
    if old != new {
        found.push(Change { what: what.into(), from: said(old), to: said(new) });
    }
}

fn keys<'m>(old: &'m Map<String, Value>, new: &'m Map<String, Value>) -> BTreeSet<&'m String> {
    old.keys().chain(new.keys()).collect()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn id_of(option: &Value) -> &str {
    option["id"].as_str().unwrap_or_default()
}

/// A value as one would say it; nothing where there is none.
fn said(value: &Value) -> Option<String> {
    match value {
        Value::Null => None,
        Value::String(text) => Some(length(text).unwrap_or_else(|| text.clone())),
        Value::Bool(yes) => Some(if *yes { "yes" } else { "no" }.into()),
        Value::Number(number) => Some(number.to_string()),
        Value::Array(values) => Some(joined(values.iter().filter_map(said), "; ")),
        Value::Object(fields) => object(fields),
    }
}

fn object(fields: &Map<String, Value>) -> Option<String> {
    let of = |key: &str| fields.get(key).and_then(said);
    if let Some(length) = of("length") {
        return Some(length);
    }
    if let Some(sides) = fields.get("sides") {
        return Some(joined(list(sides).iter().filter_map(said), " × "));
    }
    match (fields.contains_key("least"), of("least"), of("most")) {
        (true, Some(least), Some(most)) if least == most => Some(least),
        (true, Some(least), Some(most)) => Some(format!("{least} to {most}")),
        (true, Some(least), None) => Some(format!("at least {least}")),
        (true, None, Some(most)) => Some(format!("at most {most}")),
        (true, None, None) => None,
        _ => {
            let told = fields.iter().filter_map(|(key, value)| Some(format!("{key} {}", said(value)?)));
            Some(joined(told, ", "))
        }
    }
}

fn joined(words: impl Iterator<Item = String>, by: &str) -> String {
    words.collect::<Vec<_>>().join(by)
}

/// Whole nanometres in both systems; nothing where the text is no such figure.
///
/// Six figures at least: shorter ones are less than a millimetre, and such a text is a number of
/// something else.
fn length(text: &str) -> Option<String> {
    let digits = text.strip_prefix('-').unwrap_or(text);
    if digits.len() < 6 || !digits.bytes().all(|digit| digit.is_ascii_digit()) {
        return None;
    }
    let length = Length::from_nanometres(text.parse().ok()?);
    let sixteenth = length.imperial(Grain::Sixteenth);
    let inches = if sixteenth.exact { sixteenth } else { length.imperial(Grain::ThirtySecond) };
    Some(format!("{inches} ({})", length.metric()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn told(before: &Value, after: &Value) -> Vec<String> {
        changes(before, after).iter().map(Change::words).collect()
    }

    fn range(width: &str, price: &str, picture: &str) -> Value {
        json!({"name": "Range", "chosen": null, "options": [{
            "id": "steel", "name": "Brassel 30", "size": {"width": width, "height": {"least": "908050000", "most": null}},
            "price": price, "total": price, "pictures": [{"sha256": picture, "caption": "The front"}],
        }]})
    }

    #[test]
    fn what_stayed_is_not_told() {
        assert_eq!(told(&range("762000000", "3180.00 USD", "a"), &range("762000000", "3180.00 USD", "a")), [""; 0]);
    }

    #[test]
    fn lengths_and_amounts_are_told_from_and_to() {
        let (before, after) = (range("758825000", "3180.00 USD", "a"), range("762000000", "3280.00 USD", "a"));
        assert_eq!(
            told(&before, &after),
            ["price from 3180.00 USD to 3280.00 USD", "width from 29 7/8\" (≈ 758.8 mm) to 30\" (762 mm)"]
        );
    }

    #[test]
    fn a_picture_that_is_another_is_told_by_its_place() {
        let (before, after) = (range("762000000", "1.00 USD", "a"), range("762000000", "1.00 USD", "b"));
        assert_eq!(told(&before, &after), ["picture 1 is another"]);
    }

    #[test]
    fn options_are_known_by_their_id_and_named_where_there_are_several() {
        let before = json!({"options": [{"id": "a", "name": "Ash"}, {"id": "b", "name": "Birch", "finish": "oil"}]});
        let after = json!({"options": [{"id": "b", "name": "Birch", "finish": "wax"}, {"id": "c", "name": "Cherry"}]});
        assert_eq!(
            told(&before, &after),
            ["option `a` gone, which was Ash", "b: finish from oil to wax", "option `c` new: Cherry"]
        );
    }

    #[test]
    fn ranges_and_sides_are_said_as_one_says_them() {
        let with = |value: Value| json!({"options": [{"id": "a", "details": {"drop": value}}]});
        let before = with(json!({"least": "254000000", "most": "508000000"}));
        let after = with(json!({"sides": ["254000000", "508000000"]}));
        assert_eq!(
            told(&before, &after),
            ["drop from 10\" (254 mm) to 20\" (508 mm) to 10\" (254 mm) × 20\" (508 mm)"]
        );
        assert_eq!(told(&with(Value::Null), &with(json!({"length": "254000000"}))), ["drop new: 10\" (254 mm)"]);
    }
}
