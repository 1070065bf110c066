//! What changed of an item, from what to what, in words.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::units::{Length, LengthRange, Money, Phrase, System, Value as Measured, Wrote, phrase};
use crate::vocabulary::{ShownField, ShownValue, Version, Words};

mod lists;
mod options;

use lists::{ROW_NAMES, are_named, are_rows, in_list, only, rows};
pub(super) use options::called;
use options::{choice, name, option, options};

use super::as_written;
use super::field::{ChangedField, MarkedField};
use super::written::later;

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

/// What changed between two contents of an item, whatever their versions, in the order of the fields' names.
pub fn changes(before: &Value, after: &Value) -> Vec<Change> {
    let (before, after) = (as_written::read(before), as_written::read(after));
    let mut found = Vec::new();
    for (key, old, new) in pairs(&before, &after) {
        let field = ChangedField::of(key);
        match field {
            ChangedField::Marked(MarkedField::Options) => {
                options((&before, &after), &mut found);
            }
            ChangedField::Marked(MarkedField::CounterLayout) => in_list(&field, (old, new), &mut found),
            ChangedField::Marked(MarkedField::Chosen) => found.extend(choice(&before, &after)),
            _ => compare(field, old, new, &mut found),
        }
    }
    found
}

/// Those of the changes that something else may rest on: not that a first choice was made, since all options were on
/// show, and nothing of an option that is not the one `chosen`, where one is.
pub fn changes_to_rest_on(before: &Value, after: &Value, chosen: Option<&str>) -> Vec<Change> {
    let mut found = changes(before, after);
    let (before, after) = (as_written::read(before), as_written::read(after));
    let named = |item: &ShownValue| chosen.and_then(|id| Some(name(option(item, id)?, item)));
    let (was, is) = (named(&before), named(&after));
    let is_called = |value: &Option<ChangedValue>, of: &Option<String>| {
        value.as_ref().zip(of.as_ref()).is_some_and(|(value, of)| value.phrase().text() == *of)
    };
    found.retain(|change| match (&change.what, &change.of) {
        (ChangedField::Marked(MarkedField::Chosen), _) => change.from.is_some(),
        (ChangedField::Option, _) if chosen.is_some() => is_called(&change.from, &was) || is_called(&change.to, &is),
        (_, Some(of)) => is.as_ref().is_none_or(|is| is == of),
        _ => true,
    });
    found
}

const NOTHING: ShownValue = ShownValue::Nothing;

/// The fields of two groups by their names, each with what it was and is.
fn pairs<'v>(
    before: &'v ShownValue,
    after: &'v ShownValue,
) -> impl Iterator<Item = (&'v str, &'v ShownValue, &'v ShownValue)> {
    let keys: BTreeSet<&str> = before.fields().iter().chain(after.fields()).map(|field| &*field.key).collect();
    keys.into_iter().map(|key| (key, before.get(key).unwrap_or(&NOTHING), after.get(key).unwrap_or(&NOTHING)))
}

/// Whether two are not the same; what is empty is the same as nothing.
fn differ(old: &ShownValue, new: &ShownValue) -> bool {
    old != new && later(old, Version::default()) != later(new, Version::default())
}

fn id(option: &ShownValue) -> Option<&str> {
    option.get(KNOWN_BY).and_then(ShownValue::text)
}

/// The fields of one option, those of `size` and `details` by their own names.
fn fields(before: &ShownValue, after: &ShownValue, found: &mut Vec<Change>) {
    let [price, quantity] = [MarkedField::Price, MarkedField::Quantity]
        .map(|field| (before.get(field.word()), after.get(field.word())))
        .map(|(old, new)| differ(old.unwrap_or(&NOTHING), new.unwrap_or(&NOTHING)));
    // That the book has it under another id is told of itself.
    for (key, old, new) in pairs(before, after).filter(|(key, ..)| *key != KNOWN_BY) {
        let field = ChangedField::of(key);
        match field {
            ChangedField::Marked(MarkedField::Size | MarkedField::Details) => {
                let facts = pairs(old, new).filter(|(_, old, new)| differ(old, new));
                found.extend(
                    facts.map(|(key, old, new)| Change::new(ChangedField::Fact(key.to_string()), said(old), said(new))),
                );
            }
            ChangedField::Marked(MarkedField::Pictures) => pictures(old.values(), new.values(), found),
            // The total says again what price, quantity and accessories say.
            ChangedField::Marked(MarkedField::Total) if price || quantity => {}
            ChangedField::Marked(MarkedField::Price | MarkedField::Total) => amounts(field, old, new, found),
            _ if !(old.fields().is_empty() && new.fields().is_empty()) => within(key, old, new, found),
            _ => compare(field, old, new, found),
        }
    }
}

/// A part with fields of its own, such as a counter: each by its own name, and lists by what of them is another.
fn within(group: &str, before: &ShownValue, after: &ShownValue, found: &mut Vec<Change>) {
    for (key, old, new) in pairs(before, after).filter(|(_, old, new)| differ(old, new)) {
        let what = ChangedField::Within(group.to_string(), key.to_string());
        let (was, is) = of_a_list(old, new);
        found.push(Change::new(what, was, is));
    }
}

/// The keys under which two groups differ.
pub(super) fn differing(before: &ShownValue, after: &ShownValue) -> Vec<String> {
    pairs(before, after).filter(|(_, old, new)| differ(old, new)).map(|(key, _, _)| key.to_string()).collect()
}

/// Whatever differs in a group, each by the names that lead to it; what stands in a list by its id there.
pub(super) fn leaves(before: &ShownValue, after: &ShownValue, found: &mut Vec<Change>) {
    leaves_under(&[], before, after, found);
}

fn leaves_under(path: &[&str], before: &ShownValue, after: &ShownValue, found: &mut Vec<Change>) {
    for (key, old, new) in pairs(before, after).filter(|(_, old, new)| differ(old, new)) {
        let path: Vec<&str> = path.iter().copied().chain([key]).collect();
        let is_group = |value: &ShownValue| !value.fields().is_empty();
        if is_group(old) && (is_group(new) || new.is_empty()) || is_group(new) && old.is_empty() {
            leaves_under(&path, old, new, found);
        } else if old.values().iter().chain(new.values()).any(|value| id(value).is_some()) {
            let told_as = match key {
                TABLES => ChangedField::Fact("table".into()),
                CUT_SHEETS => ChangedField::Fact("maker's sheet".into()),
                _ if super::plan::LISTS.contains(&key) => ChangedField::Fact(key.to_string()),
                _ => ChangedField::Option,
            };
            in_list(&told_as, (old, new), found);
        } else if are_rows(key, (old, new)) {
            rows(None, (old, new), found);
        } else if are_named((old, new)) {
            rows(Some(&path.join(" ")), (old, new), found);
        } else if *key == *DIGEST {
            found.push(other_file(path.iter().rev().nth(1).copied(), (old, new)));
        } else {
            let what = match path.split_last() {
                Some((_, above)) if !above.is_empty() => ChangedField::Within(above.join(" "), key.to_string()),
                _ => ChangedField::Fact(key.to_string()),
            };
            let (was, is) = of_a_list(old, new);
            found.push(Change::new(what, was, is));
        }
    }
}

/// The key of the tables of a trade's sheet, and of a thing on it.
const TABLES: &str = "tables";

/// The key of the makers' own sheets that are attached to the things of a trade's sheet.
const CUT_SHEETS: &str = "cut sheets";

/// The key under which the digest of a file stands.
const DIGEST: &str = "sha256";

/// A file that is another: nobody can say its digest in words.
fn other_file(of: Option<&str>, (old, new): (&ShownValue, &ShownValue)) -> Change {
    let attached = |value: &ShownValue| (!value.is_empty()).then(|| Phrase::from("attached"));
    let what = |name: &str| ChangedField::Within(of.unwrap_or_default().to_string(), name.to_string());
    match (attached(old), attached(new)) {
        (Some(_), Some(_)) => Change::new(what("file is another"), None, None),
        (was, is) => Change::new(what("file"), was, is),
    }
}

/// The key by which the things of a list are known, whatever they are called.
pub(super) const KNOWN_BY: &str = "id";

/// An amount, or what stands in its place.
fn amounts(what: ChangedField, old: &ShownValue, new: &ShownValue, found: &mut Vec<Change>) {
    if !differ(old, new) {
        return;
    }
    let amount = |value: &ShownValue| match value {
        ShownValue::Amount(money) => Some(ChangedValue::Amount(*money)),
        other => said(other).map(ChangedValue::Other),
    };
    found.push(Change { of: None, what, from: amount(old), to: amount(new) });
}

/// Pictures by their place in the row: nobody can say a picture in words.
fn pictures(old: &[ShownValue], new: &[ShownValue], found: &mut Vec<Change>) {
    for at in 0..old.len().max(new.len()) {
        let (before, after) = (old.get(at), new.get(at));
        if !differ(before.unwrap_or(&NOTHING), after.unwrap_or(&NOTHING)) {
            continue;
        }
        let shown = |picture: Option<&ShownValue>| {
            picture
                .map(|picture| Phrase::plain(picture.get("caption").and_then(ShownValue::text).unwrap_or("a picture")))
        };
        let part = |picture: Option<&ShownValue>, key: &str| picture.and_then(|picture| picture.get(key)).cloned();
        let is_as = |key: &str| part(before, key) == part(after, key);
        if before.is_some() && after.is_some() && is_as(DIGEST) && is_as("caption") {
            let words = |picture| part(picture, "alt").as_ref().and_then(said);
            found.push(Change::new(ChangedField::PictureWords(at + 1), words(before), words(after)));
            continue;
        }
        found.push(match (shown(before), shown(after)) {
            (from, to) if from == to => Change::new(ChangedField::Picture(at + 1), None, None),
            (from, to) => Change::new(ChangedField::Caption(at + 1), from, to),
        });
    }
}

fn compare(what: ChangedField, old: &ShownValue, new: &ShownValue, found: &mut Vec<Change>) {
    if differ(old, new) {
        let (was, is) = of_a_list(old, new);
        found.push(Change::new(what, was, is));
    }
}

/// What two are said to be; of lists what went and what came, as often as it did, and of others in another order the whole.
fn of_a_list(old: &ShownValue, new: &ShownValue) -> (Option<Phrase>, Option<Phrase>) {
    let (gone, come) = (only(old.values(), new.values()), only(new.values(), old.values()));
    match gone.is_empty() && come.is_empty() {
        true => (said(old), said(new)),
        false => (said(&ShownValue::List(gone)), said(&ShownValue::List(come))),
    }
}

/// A value as one would say it; nothing where there is none.
fn said(value: &ShownValue) -> Option<Phrase> {
    match value {
        ShownValue::Nothing => None,
        ShownValue::Text(text) => Some(Phrase::plain(text)),
        ShownValue::Word(word) => Some(Phrase::plain(word)),
        ShownValue::Yes(yes) => Some(if *yes { "yes" } else { "no" }.into()),
        ShownValue::Length(length) => Some(in_both(*length)),
        ShownValue::Range(range) => (*range != LengthRange::default()).then(|| ends(*range)),
        ShownValue::Sides(sides) => Some(Phrase::joined(sides.iter().copied().map(in_both), " × ")),
        ShownValue::Weight(weight) => Some(Measured::Weight(*weight, System::Imperial).into()),
        ShownValue::Area(area) => Some(Measured::Area(*area, System::Imperial).into()),
        ShownValue::Amount(money) => Some(ChangedValue::Amount(*money).phrase()),
        ShownValue::List(values) if values.is_empty() => None,
        ShownValue::List(values) => Some(Phrase::joined(values.iter().filter_map(said), "; ")),
        ShownValue::Group(fields) => Some(group(fields)),
    }
}

/// Fields with their names; what says which one it is stands bare, as the first.
fn group(fields: &[ShownField]) -> Phrase {
    let first = ROW_NAMES.iter().find(|name| fields.iter().any(|field| *field.key == ***name));
    let is_name = |field: &&ShownField| NAMES.contains(&&*field.key) || first.is_some_and(|name| *field.key == **name);
    let names = fields.iter().filter(is_name).filter_map(|field| said(&field.value));
    let others = fields.iter().filter(|field| !is_name(field));
    let others = others.filter_map(|field| Some(phrase!("{key} {}", Wrote(&field.key), said(&field.value)?)));
    Phrase::joined(names.chain(others), ", ")
}

/// The fields that say which one of several it is.
const NAMES: [&str; 3] = ["name", "at", "for"];

fn ends(LengthRange { least, most }: LengthRange) -> Phrase {
    match (least.map(in_both), most.map(in_both)) {
        (Some(only), Some(_)) if least == most => only,
        (Some(least), Some(most)) => phrase!("{least} to {most}", least, most),
        (Some(least), None) => phrase!("at least {least}", least),
        (None, Some(most)) => phrase!("at most {most}", most),
        (None, None) => Phrase::default(),
    }
}

fn in_both(length: Length) -> Phrase {
    Measured::Length(length, System::Imperial).into()
}

#[cfg(test)]
mod tests;
