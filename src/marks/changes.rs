//! What changed of an item, from what to what, in words.

use std::collections::BTreeSet;

use serde_json::{Map, Value};

use crate::units::length::Grain;
use crate::units::{Currency, Length, Money};

/// One thing that is no longer as it was shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The option that it is of, by name, where several stand.
    pub of: Option<String>,
    /// What: `width`.
    pub what: String,
    /// What it was; nothing where it was not there.
    pub from: Option<Said>,
    /// What it is; nothing where it is gone.
    pub to: Option<Said>,
}

/// What something was, or is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Said {
    /// An amount: what stands where prices stand.
    Amount(Money),
    /// Anything else, as one would say it.
    Words(String),
}

impl Said {
    /// The amount, if it is one.
    pub fn amount(&self) -> Option<Money> {
        if let Self::Amount(money) = self { Some(*money) } else { None }
    }
}

impl std::fmt::Display for Said {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Amount(money) => write!(f, "{} {}", money.plain(), money.currency),
            Self::Words(words) => f.write_str(words),
        }
    }
}

impl Change {
    /// Of the item as a whole.
    fn new(what: impl Into<String>, from: Option<String>, to: Option<String>) -> Self {
        Self { of: None, what: what.into(), from: from.map(Said::Words), to: to.map(Said::Words) }
    }

    /// What, with the option that it is of: `steel: width`.
    pub fn named(&self) -> String {
        self.of.as_ref().map_or_else(|| self.what.clone(), |of| format!("{of}: {}", self.what))
    }

    /// In a phrase: "width from 29 7/8" (758.8 mm) to 30" (762 mm)".
    pub fn words(&self) -> String {
        let what = self.named();
        match (&self.from, &self.to) {
            (Some(from), Some(to)) => format!("{what} from {from} to {to}"),
            (Some(from), None) => format!("{what} gone, which was {from}"),
            (None, Some(to)) => format!("{what} new: {to}"),
            (None, None) => what,
        }
    }
}

/// What changed between two contents of an item, in the order of the fields.
pub fn changes(before: &Value, after: &Value) -> Vec<Change> {
    let mut found = Vec::new();
    let empty = Map::new();
    let fields = |value: &Value| value.as_object().cloned().unwrap_or_else(|| empty.clone());
    let (old, new) = (fields(before), fields(after));
    let (names, later) = (Names::of(before), Names::of(after));
    for key in keys(&old, &new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        match key.as_str() {
            "options" => options(old, new, &mut found),
            "chosen" if old != new => {
                let (from, to) = (names.called(old), later.called(new));
                found.push(Change::new(key, from, to));
            }
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
        let of = |option: &Value, all: &[Value]| name(option, all);
        match (named(old, id), named(new, id)) {
            (Some(before), Some(after)) => {
                let first = found.len();
                fields(&before, &after, found);
                let lead = several.then(|| of(&after, new));
                found.iter_mut().skip(first).for_each(|change| change.of.clone_from(&lead));
            }
            (Some(gone), None) => {
                found.push(Change::new("option", Some(of(&gone, old)), None));
            }
            (None, Some(added)) => {
                found.push(Change::new("option", None, Some(of(&added, new))));
            }
            (None, None) => {}
        }
    }
}

/// The fields of one option, those of `size` and `details` by their own names.
fn fields(before: &Value, after: &Value, found: &mut Vec<Change>) {
    let none = Map::new();
    let (old, new) = (before.as_object().unwrap_or(&none), after.as_object().unwrap_or(&none));
    for key in keys(old, new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        match key.as_str() {
            "size" => sizes(old, new, found),
            "details" => details(old, new, found),
            "pictures" => pictures(list(old), list(new), found),
            // The total says again what price, quantity and accessories say.
            "total" if before["price"] != after["price"] || before["quantity"] != after["quantity"] => {}
            "price" | "total" => amounts(key, old, new, found),
            _ => compare(key, old, new, found),
        }
    }
}

/// What a kind tells besides, by its own names: whatever they are, none is an amount.
fn details(before: &Value, after: &Value, found: &mut Vec<Change>) {
    let none = Map::new();
    let (old, new) = (before.as_object().unwrap_or(&none), after.as_object().unwrap_or(&none));
    for key in keys(old, new) {
        compare(key, old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null), found);
    }
}

/// An amount, as the contents of an item hold it: `3180.00 USD`.
fn amounts(key: &str, old: &Value, new: &Value, found: &mut Vec<Change>) {
    if old == new {
        return;
    }
    let amount = |value: &Value| {
        let text = value.as_str()?;
        let money = || {
            let (figure, code) = text.rsplit_once(' ')?;
            Money::parse(figure, Currency::parse(code).ok()?).ok()
        };
        Some(money().map_or_else(|| Said::Words(text.into()), Said::Amount))
    };
    found.push(Change { of: None, what: key.into(), from: amount(old), to: amount(new) });
}

/// What a client reads of an option; with its id where two read the same.
fn name(option: &Value, all: &[Value]) -> String {
    let id = id_of(option);
    let name = option["name"].as_str().unwrap_or(id);
    let alike = all.iter().filter(|other| other["name"].as_str() == Some(name)).count();
    if alike > 1 { format!("{name} ({id})") } else { name.to_string() }
}

/// The options of an item, which can be called by name.
struct Names<'v>(&'v [Value]);

impl<'v> Names<'v> {
    fn of(content: &'v Value) -> Self {
        Self(list(&content["options"]))
    }

    /// The option of an id.
    fn called(&self, id: &Value) -> Option<String> {
        let id = id.as_str()?;
        let option = self.0.iter().find(|option| id_of(option) == id);
        Some(option.map_or_else(|| id.to_string(), |option| name(option, self.0)))
    }
}

/// The sizes of an option: lengths, each of them.
fn sizes(before: &Value, after: &Value, found: &mut Vec<Change>) {
    let none = Map::new();
    let (old, new) = (before.as_object().unwrap_or(&none), after.as_object().unwrap_or(&none));
    for key in keys(old, new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        if old != new {
            found.push(Change::new(key, measured(old), measured(new)));
        }
    }
}

/// Pictures by their place in the row: nobody can say a picture in words.
fn pictures(old: &[Value], new: &[Value], found: &mut Vec<Change>) {
    for at in 0..old.len().max(new.len()) {
        let (before, after) = (old.get(at), new.get(at));
        if before == after {
            continue;
        }
        let shown = |picture: Option<&Value>| {
            picture.map(|picture| picture["caption"].as_str().unwrap_or("a picture").to_string())
        };
        let what = format!("picture {}", at + 1);
        found.push(match (shown(before), shown(after)) {
            (from, to) if from == to => Change::new(format!("{what} is another"), None, None),
            (from, to) => Change::new(what, from, to),
        });
    }
}

fn compare(what: &str, old: &Value, new: &Value, found: &mut Vec<Change>) {
    if old != new {
        found.push(Change::new(what, said(old), said(new)));
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
        Value::String(text) => Some(text.clone()),
        Value::Bool(yes) => Some(if *yes { "yes" } else { "no" }.into()),
        Value::Number(number) => Some(number.to_string()),
        Value::Array(values) => Some(joined(values.iter().filter_map(said), "; ")),
        Value::Object(fields) => object(fields),
    }
}

/// A length, or a range of them.
fn measured(value: &Value) -> Option<String> {
    match value {
        Value::String(text) => Some(length(text).unwrap_or_else(|| text.clone())),
        other => said(other),
    }
}

/// A value that says by its own keys what it is: only those are lengths.
fn object(fields: &Map<String, Value>) -> Option<String> {
    let of = |key: &str| fields.get(key).and_then(measured);
    if let Some(length) = of("length") {
        return Some(length);
    }
    if let Some(sides) = fields.get("sides") {
        return Some(joined(list(sides).iter().filter_map(measured), " × "));
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
fn length(text: &str) -> Option<String> {
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

    /// A model that reads like an amount is a model, and a detail called `total` is a detail.
    #[test]
    fn only_what_stands_where_prices_stand_is_an_amount() {
        let with =
            |text: &str| json!({"options": [{"id": "a", "model": text, "price": text, "details": {"total": text}}]});
        let found = changes(&with("120.00 USD"), &with("130.00 USD"));
        let told: Vec<_> =
            found.iter().map(|one| (one.what.as_str(), one.to.as_ref().unwrap().amount().is_some())).collect();
        assert_eq!(told, [("total", false), ("model", false), ("price", true)]);
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
            ["option gone, which was Ash", "Birch: finish from oil to wax", "option new: Cherry"]
        );
    }

    #[test]
    fn a_choice_is_told_by_its_name_and_a_number_that_is_no_length_stays_as_it_is() {
        let tap = |chosen: &str, model: &str| {
            let option =
                |id: &str, name: &str| json!({"id": id, "name": name, "model": model, "details": {"lamp": model}});
            json!({"chosen": chosen, "options": [option("a", "Ash"), option("b", "Birch")]})
        };
        assert_eq!(told(&tap("a", "1"), &tap("b", "1")), ["chosen from Ash to Birch"]);
        assert_eq!(
            told(&tap("a", "30480000"), &tap("a", "30480001"))[..2],
            ["Ash: lamp from 30480000 to 30480001", "Ash: model from 30480000 to 30480001"]
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
