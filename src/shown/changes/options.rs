//! What changed of the options of an item, each held beside the one that it was.

use crate::shown::field::{ChangedField, MarkedField};
use crate::units::Phrase;
use crate::vocabulary::{ShownValue, Words};

use super::{Change, KNOWN_BY, differ, fields, id};

/// An option as it was, and as it is.
type Pair<'v> = (Option<&'v ShownValue>, Option<&'v ShownValue>);

fn options_of(item: &ShownValue) -> &[ShownValue] {
    item.get(MarkedField::Options.word()).map_or(&[], ShownValue::values)
}

pub(super) fn option<'v>(item: &'v ShownValue, wanted: &str) -> Option<&'v ShownValue> {
    options_of(item).iter().find(|option| id(option) == Some(wanted))
}

/// Whether two options show the same, under whatever id.
fn is_same_thing(one: &ShownValue, other: &ShownValue) -> bool {
    let shown = |option: &ShownValue| {
        let fields = option.fields().iter().filter(|field| *field.key != *KNOWN_BY);
        ShownValue::Group(fields.cloned().collect())
    };
    !differ(&shown(one), &shown(other))
}

fn is_same_id(one: &ShownValue, other: &ShownValue) -> bool {
    id(one) == id(other)
}

fn is_unchanged(one: &ShownValue, other: &ShownValue) -> bool {
    is_same_id(one, other) && is_same_thing(one, other)
}

/// Each option beside the one that it was: what stands as it stood, then what shows the same under another id, then what
/// bears the same id. In the order of those that were, then those that came.
fn pairs<'v>(before: &'v ShownValue, after: &'v ShownValue) -> Vec<Pair<'v>> {
    let mut left: Vec<&ShownValue> = options_of(after).iter().collect();
    let mut found: Vec<Pair<'v>> = options_of(before).iter().map(|was| (Some(was), None)).collect();
    let ways: [fn(&ShownValue, &ShownValue) -> bool; 3] = [is_unchanged, is_same_thing, is_same_id];
    for is_it in ways {
        for (was, is) in found.iter_mut().filter(|(_, is)| is.is_none()) {
            let at = was.and_then(|was| left.iter().position(|one| is_it(was, one)));
            *is = at.map(|at| left.remove(at));
        }
    }
    found.into_iter().chain(left.into_iter().map(|is| (None, Some(is)))).collect()
}

/// What of each option is another, and which came or are gone.
pub(super) fn options((before, after): (&ShownValue, &ShownValue), found: &mut Vec<Change>) {
    let several = options_of(before).len() > 1 || options_of(after).len() > 1;
    for pair in pairs(before, after) {
        let first = found.len();
        match pair {
            (Some(was), Some(is)) => {
                if id(was) != id(is) {
                    let told = |option: &ShownValue| id(option).map(Phrase::plain);
                    found.push(Change::new(ChangedField::OptionId, told(was), told(is)));
                }
                fields(was, is, found);
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
    found.extend(another_order(before, after));
}

/// The options that stay, in another order.
fn another_order(before: &ShownValue, after: &ShownValue) -> Option<Change> {
    let was: Vec<&ShownValue> = pairs(before, after).into_iter().filter_map(|(was, is)| was.and(is)).collect();
    let stays = |option: &&ShownValue| was.iter().any(|one| std::ptr::eq(*one, *option));
    let is: Vec<&ShownValue> = options_of(after).iter().filter(stays).collect();
    let told = |options: &[&ShownValue]| {
        Some(Phrase::joined(options.iter().map(|option| Phrase::plain(&name(option, after))), ", "))
    };
    let moved = was.iter().zip(&is).any(|(was, is)| !std::ptr::eq(*was, *is));
    moved.then(|| Change::new(ChangedField::OptionOrder, told(&was), told(&is)))
}

/// That another option is chosen: another thing, whatever their ids.
pub(super) fn choice(before: &ShownValue, after: &ShownValue) -> Option<Change> {
    let chosen_id = |item: &'_ ShownValue| -> Option<String> {
        item.get(MarkedField::Chosen.word()).and_then(ShownValue::text).map(str::to_string)
    };
    let (was, is) = (chosen_id(before), chosen_id(after));
    let thing = |item, id: &Option<String>| id.as_deref().and_then(|id| option(item, id));
    let is_same = match (thing(before, &was), thing(after, &is)) {
        (Some(was), Some(is)) => pairs(before, after).iter().any(|pair| match pair {
            (Some(one), Some(other)) => std::ptr::eq(*one, was) && std::ptr::eq(*other, is),
            _ => false,
        }),
        _ => was == is,
    };
    let field = ChangedField::Marked(MarkedField::Chosen);
    (!is_same).then(|| Change::new(field, chosen(before), chosen(after)))
}

/// What a client reads of an option; with its id where two read the same.
pub(super) fn name(option: &ShownValue, of: &ShownValue) -> String {
    let named =
        |option: &ShownValue| option.get(MarkedField::Name.word()).and_then(ShownValue::text).map(str::to_string);
    let id = id(option).unwrap_or_default();
    let name = named(option).unwrap_or_else(|| id.to_string());
    let alike = options_of(of).iter().filter(|other| named(other).as_ref() == Some(&name)).count();
    if alike > 1 { format!("{name} ({id})") } else { name }
}

/// What a client read of the option of that id; of one without a name, as labour, what the item is called.
pub(in crate::shown) fn called(item: &ShownValue, wanted: &str) -> Option<String> {
    let own = |option: &ShownValue| {
        let name = option.get(MarkedField::Name.word()).and_then(ShownValue::text);
        name.filter(|name| !name.is_empty()).map(str::to_string)
    };
    let option = option(item, wanted)?;
    if own(option).is_some() {
        return Some(name(option, item));
    }
    let alike = options_of(item).iter().filter(|other| own(other).is_none()).count();
    let of_item = own(item)?;
    Some(if alike > 1 { format!("{of_item} ({wanted})") } else { of_item })
}

/// The option that is chosen, by its name.
fn chosen(of: &ShownValue) -> Option<Phrase> {
    let id = of.get(MarkedField::Chosen.word()).and_then(ShownValue::text)?;
    Some(Phrase::plain(&option(of, id).map_or_else(|| id.to_string(), |option| name(option, of))))
}
