//! What changed of an item, from what to what, in words.

use std::collections::BTreeSet;

use serde_json::{Map, Value};

use crate::ledger::{ItemContent, OptionContent};
use crate::units::{Currency, Length, LengthRange, Money, Phrase, System, Value as Measured, Wrote, phrase};

use crate::vocabulary::Words;

use super::field::{ChangedField, MarkedField};

/// One thing that is no longer as it was shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The option that it is of, by name, where several stand.
    pub of: Option<String>,
    /// What: `width`.
    pub what: ChangedField,
    /// What it was; nothing where it was not there.
    pub from: Option<ChangedValue>,
    /// What it is; nothing where it is gone.
    pub to: Option<ChangedValue>,
}

/// What something was, or is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ChangedValue {
    /// An amount: what stands where prices stand.
    Amount(Money),
    /// Anything else, as one would say it.
    Other(Phrase),
}

impl ChangedValue {
    /// The amount, if it is one.
    pub fn amount(&self) -> Option<Money> {
        if let Self::Amount(money) = self { Some(*money) } else { None }
    }

    fn in_units(self, units: System) -> Self {
        match self {
            Self::Amount(money) => Self::Amount(money),
            Self::Other(said) => Self::Other(said.in_units(units)),
        }
    }

    /// As a sentence has it: an amount plainly, with its currency.
    pub fn phrase(&self) -> Phrase {
        match self {
            Self::Amount(money) => phrase!("{} {}", Wrote(&money.plain()), Wrote(money.currency.code())),
            Self::Other(said) => said.clone(),
        }
    }
}

impl Change {
    /// Of the item as a whole.
    fn new(what: ChangedField, from: Option<Phrase>, to: Option<Phrase>) -> Self {
        Self { of: None, what, from: from.map(ChangedValue::Other), to: to.map(ChangedValue::Other) }
    }

    /// The same in the units of its book.
    #[must_use]
    pub fn in_units(self, units: System) -> Self {
        let told = |value: Option<ChangedValue>| value.map(|value| value.in_units(units));
        Self { from: told(self.from), to: told(self.to), ..self }
    }

    /// What, with the option that it is of: `steel: width`.
    pub fn named(&self) -> String {
        self.of.as_ref().map_or_else(|| self.what.to_string(), |of| format!("{of}: {}", self.what))
    }

    /// In a phrase: "width from 29 7/8" (758.8 mm) to 30" (762 mm)".
    pub fn words(&self) -> Phrase {
        let named = self.named();
        let what = Wrote(&named);
        match (self.from.as_ref().map(ChangedValue::phrase), self.to.as_ref().map(ChangedValue::phrase)) {
            (Some(from), Some(to)) => phrase!("{what} from {from} to {to}", what, from, to),
            (Some(from), None) => phrase!("{what} gone, which was {from}", what, from),
            (None, Some(to)) => phrase!("{what} new: {to}", what, to),
            (None, None) => Phrase::plain(&named),
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
        let field = ChangedField::of(key);
        match field {
            ChangedField::Marked(MarkedField::Options) => options(ItemContent(before), ItemContent(after), &mut found),
            ChangedField::Marked(MarkedField::Chosen) if old != new => {
                found.push(Change::new(field, chosen(ItemContent(before)), chosen(ItemContent(after))));
            }
            _ => compare(field, old, new, &mut found),
        }
    }
    found
}

/// Options are known by their id, wherever they stand.
fn options(before: ItemContent<'_>, after: ItemContent<'_>, found: &mut Vec<Change>) {
    let several = before.options().nth(1).is_some() || after.options().nth(1).is_some();
    let ids = before.options().chain(after.options()).filter_map(OptionContent::id);
    let mut seen = BTreeSet::new();
    for id in ids.filter(|id| seen.insert(*id)) {
        match (before.option(id), after.option(id)) {
            (Some(was), Some(is)) => {
                let first = found.len();
                fields(was.0, is.0, found);
                let lead = several.then(|| name(is, after));
                found.iter_mut().skip(first).for_each(|change| change.of.clone_from(&lead));
            }
            (was, is) => {
                let (was, is) = (was.map(|was| name(was, before)), is.map(|is| name(is, after)));
                let plain = |name: String| Phrase::plain(&name);
                found.push(Change::new(ChangedField::Option, was.map(plain), is.map(plain)));
            }
        }
    }
}

/// The fields of one option, those of `size` and `details` by their own names.
fn fields(before: &Value, after: &Value, found: &mut Vec<Change>) {
    let none = Map::new();
    let (old, new) = (before.as_object().unwrap_or(&none), after.as_object().unwrap_or(&none));
    let [price, quantity] = [MarkedField::Price, MarkedField::Quantity].map(Words::word);
    let is_repriced = before[price] != after[price] || before[quantity] != after[quantity];
    for key in keys(old, new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        let field = ChangedField::of(key);
        match field {
            ChangedField::Marked(MarkedField::Size) => facts(old, new, measured, found),
            ChangedField::Marked(MarkedField::Details) => facts(old, new, said, found),
            ChangedField::Marked(MarkedField::Pictures) => pictures(list(old), list(new), found),
            // The total says again what price, quantity and accessories say.
            ChangedField::Marked(MarkedField::Total) if is_repriced => {}
            ChangedField::Marked(MarkedField::Price | MarkedField::Total) => amounts(field, old, new, found),
            _ => compare(field, old, new, found),
        }
    }
}

/// Sizes, or what a kind tells besides, by their own names: whatever they are, none is an amount.
fn facts(before: &Value, after: &Value, say: fn(&Value) -> Option<Phrase>, found: &mut Vec<Change>) {
    let none = Map::new();
    let (old, new) = (before.as_object().unwrap_or(&none), after.as_object().unwrap_or(&none));
    for key in keys(old, new) {
        let (old, new) = (old.get(key).unwrap_or(&Value::Null), new.get(key).unwrap_or(&Value::Null));
        if old != new {
            found.push(Change::new(ChangedField::Fact(key.clone()), say(old), say(new)));
        }
    }
}

/// An amount, as the contents of an item hold it: `3180.00 USD`.
fn amounts(what: ChangedField, old: &Value, new: &Value, found: &mut Vec<Change>) {
    if old == new {
        return;
    }
    let amount = |value: &Value| {
        let text = value.as_str()?;
        let money = || {
            let (figure, code) = text.rsplit_once(' ')?;
            Money::parse(figure, Currency::parse(code).ok()?).ok()
        };
        Some(money().map_or_else(|| ChangedValue::Other(Phrase::plain(text)), ChangedValue::Amount))
    };
    found.push(Change { of: None, what, from: amount(old), to: amount(new) });
}

/// What a client reads of an option; with its id where two read the same.
fn name(option: OptionContent<'_>, of: ItemContent<'_>) -> String {
    let id = option.id().unwrap_or_default();
    let name = option.name().unwrap_or(id);
    let alike = of.options().filter(|other| other.name() == Some(name)).count();
    if alike > 1 { format!("{name} ({id})") } else { name.to_string() }
}

/// The option that is chosen, by its name.
fn chosen(of: ItemContent<'_>) -> Option<Phrase> {
    let id = of.chosen()?;
    Some(Phrase::plain(&of.option(id).map_or_else(|| id.to_string(), |option| name(option, of))))
}

/// Pictures by their place in the row: nobody can say a picture in words.
fn pictures(old: &[Value], new: &[Value], found: &mut Vec<Change>) {
    for at in 0..old.len().max(new.len()) {
        let (before, after) = (old.get(at), new.get(at));
        if before == after {
            continue;
        }
        let shown = |picture: Option<&Value>| {
            picture.map(|picture| Phrase::plain(picture["caption"].as_str().unwrap_or("a picture")))
        };
        found.push(match (shown(before), shown(after)) {
            (from, to) if from == to => Change::new(ChangedField::Picture(at + 1), None, None),
            (from, to) => Change::new(ChangedField::Caption(at + 1), from, to),
        });
    }
}

fn compare(what: ChangedField, old: &Value, new: &Value, found: &mut Vec<Change>) {
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

/// A value as one would say it; nothing where there is none.
fn said(value: &Value) -> Option<Phrase> {
    match value {
        Value::Null => None,
        Value::String(text) => Some(Phrase::plain(text)),
        Value::Bool(yes) => Some(if *yes { "yes" } else { "no" }.into()),
        Value::Number(number) => Some(Phrase::plain(&number.to_string())),
        Value::Array(values) => Some(Phrase::joined(values.iter().filter_map(said), "; ")),
        Value::Object(fields) => object(fields),
    }
}

/// A length, or a range of them.
fn measured(value: &Value) -> Option<Phrase> {
    match value.as_str() {
        Some(text) => Some(length(value).map_or_else(|| Phrase::plain(text), in_both)),
        None => said(value),
    }
}

/// A value that says by its own keys what it is: only those are lengths.
fn object(fields: &Map<String, Value>) -> Option<Phrase> {
    if let Some(length) = fields.get("length").and_then(measured) {
        return Some(length);
    }
    if let Some(sides) = fields.get("sides") {
        return Some(Phrase::joined(list(sides).iter().filter_map(measured), " × "));
    }
    if fields.contains_key("least") {
        let [least, most] = ["least", "most"].map(|end| fields.get(end).and_then(length));
        let range = LengthRange { least, most };
        return (range != LengthRange::default()).then(|| ends(range));
    }
    let told = fields.iter().filter_map(|(key, value)| Some(phrase!("{key} {}", Wrote(key), said(value)?)));
    Some(Phrase::joined(told, ", "))
}

fn ends(LengthRange { least, most }: LengthRange) -> Phrase {
    match (least.map(in_both), most.map(in_both)) {
        (Some(only), Some(_)) if least == most => only,
        (Some(least), Some(most)) => phrase!("{least} to {most}", least, most),
        (Some(least), None) => phrase!("at least {least}", least),
        (None, Some(most)) => phrase!("at most {most}", most),
        (None, None) => Phrase::default(),
    }
}

/// Whole nanometres; nothing where it is no such figure.
fn length(value: &Value) -> Option<Length> {
    Some(Length::from_nanometres(value.as_str()?.parse().ok()?))
}

fn in_both(length: Length) -> Phrase {
    Measured::Length(length, System::Imperial).into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn told(before: &Value, after: &Value) -> Vec<String> {
        changes(before, after).iter().map(|change| change.words().to_string()).collect()
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
            ["price from 3180.00 USD to 3280.00 USD", "width from 29 7/8\" (759 mm) to 30\" (762 mm)"]
        );
    }

    /// A model that reads like an amount is a model, and a detail called `total` is a detail.
    #[test]
    fn only_what_stands_where_prices_stand_is_an_amount() {
        let with =
            |text: &str| json!({"options": [{"id": "a", "model": text, "price": text, "details": {"total": text}}]});
        let found = changes(&with("120.00 USD"), &with("130.00 USD"));
        let told: Vec<_> =
            found.iter().map(|one| (one.what.to_string(), one.to.as_ref().unwrap().amount().is_some())).collect();
        assert_eq!(
            told,
            [("total", false), ("model", false), ("price", true)].map(|(what, is)| (what.to_string(), is))
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
