//! What changed of the things of a list, and of the rows of a table: cell by cell.

use std::collections::BTreeSet;

use crate::shown::field::{ChangedField, MarkedField};
use crate::units::Phrase;
use crate::vocabulary::{ShownValue, Words};

use super::{Change, differ, id, leaves_under, pairs, said};

/// The key of the rows of a table.
const ROWS: &str = "rows";

/// The columns that name a row; of several that a table has, the first of these.
pub(super) const ROW_NAMES: [&str; 19] = [
    "name",
    "seen side of",
    "panel for",
    "built around",
    "let in",
    "lies on",
    "hole for",
    "light",
    "box",
    "thing",
    "piece",
    "seam",
    "tap",
    "fixture",
    "part",
    "for",
    "row",
    "counter",
    "at",
];

/// The things of a list, each known by its id: what of one is another, and those that came or are gone, told as that.
pub(super) fn in_list(told_as: &ChangedField, (old, new): (&ShownValue, &ShownValue), found: &mut Vec<Change>) {
    let ids: BTreeSet<&str> = old.values().iter().chain(new.values()).filter_map(id).collect();
    for wanted in ids {
        let known = |list: &ShownValue| list.values().iter().find(|one| id(one) == Some(wanted)).cloned();
        match (known(old), known(new)) {
            (Some(was), Some(is)) => {
                let first = found.len();
                leaves_under(&[], &was, &is, found);
                found.iter_mut().skip(first).for_each(|change| {
                    let within = change.of.take().filter(|within| !within.is_empty());
                    change.of = Some(within.map_or_else(|| name(&is), |within| format!("{}: {within}", name(&is))));
                });
            }
            (was, is) => {
                let plain = |there: Option<ShownValue>| there.map(|thing| Phrase::plain(&name(&thing)));
                found.push(Change::new(told_as.clone(), plain(was), plain(is)));
            }
        }
    }
}

/// What a thing of a list is called; a table also by what it is of.
fn name(thing: &ShownValue) -> String {
    let text = |key: &str| thing.get(key).and_then(ShownValue::text).unwrap_or_default();
    match text("of") {
        "" => text(MarkedField::Name.word()).to_string(),
        of => format!("{}, {of}", text(MarkedField::Name.word())),
    }
}

/// Whether a list under that key is the rows of a table.
pub(super) fn are_rows(key: &str, (old, new): (&ShownValue, &ShownValue)) -> bool {
    let is_row = |value: &ShownValue| !value.fields().is_empty();
    key == ROWS && old.values().iter().chain(new.values()).all(is_row)
}

/// Whether two lists are of groups that have names, such as the narrow points of a way in.
pub(super) fn are_named((old, new): (&ShownValue, &ShownValue)) -> bool {
    let is_named = |value: &ShownValue| ROW_NAMES.iter().any(|key| value.get(key).is_some());
    !(old.values().is_empty() || new.values().is_empty()) && old.values().iter().chain(new.values()).all(is_named)
}

/// The rows of a table, or the groups of a list that stands `under` those names, each known by its own: the cells of it
/// that are not the same, and those that came or are gone.
pub(super) fn rows(under: Option<&str>, (old, new): (&ShownValue, &ShownValue), found: &mut Vec<Change>) {
    let (mut gone, mut come) = (without(old.values(), new.values()), without(new.values(), old.values()));
    if gone.is_empty() && come.is_empty() {
        let order = under.map_or("order of its rows".into(), |under| format!("{under}: order"));
        found.push(Change::new(ChangedField::Fact(order), None, None));
        return;
    }
    gone.retain(|was| {
        // Of several that are called alike the one of which the fewest cells are others.
        let others = |is: &ShownValue| pairs(was, is).filter(|(_, old, new)| differ(old, new)).count();
        let alike = come.iter().enumerate().filter(|(_, is)| row_name(is) == row_name(was));
        let Some((at, _)) = alike.min_by_key(|(_, is)| others(is)) else { return true };
        let is = come.remove(at);
        let other = pairs(was, is).filter(|(_, old, new)| differ(old, new));
        found.extend(other.map(|(key, old, new)| Change {
            of: Some(under.map_or_else(|| row_name(is), |under| format!("{under}: {}", row_name(is)))),
            ..Change::new(ChangedField::Fact(key.to_string()), said(old), said(new))
        }));
        false
    });
    let what =
        |row| ChangedField::Fact(under.map_or_else(|| "row".into(), |under| format!("{under}: {}", row_name(row))));
    found.extend(gone.into_iter().map(|row| Change::new(what(row), said(row), None)));
    found.extend(come.into_iter().map(|row| Change::new(what(row), None, said(row))));
}

fn row_name(row: &ShownValue) -> String {
    let named = ROW_NAMES.iter().find_map(|key| said(row.get(key)?));
    // Both sides of one thing are two rows.
    let parts = named.into_iter().chain(row.get("side").and_then(said));
    Phrase::joined(parts, ", ").to_string()
}

/// The values of a list that are not in another, or are there more rarely.
fn without<'v>(these: &'v [ShownValue], others: &[ShownValue]) -> Vec<&'v ShownValue> {
    let mut left: Vec<&ShownValue> = others.iter().collect();
    let is_more = |value: &&ShownValue| match left.iter().position(|other| other == value) {
        Some(at) => {
            left.remove(at);
            false
        }
        None => true,
    };
    these.iter().filter(is_more).collect()
}

/// The same, each for itself.
pub(super) fn only(these: &[ShownValue], others: &[ShownValue]) -> Vec<ShownValue> {
    without(these, others).into_iter().cloned().collect()
}
