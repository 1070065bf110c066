//! What an opening is built from: its own figures, those of the maker's sheet of all that may still stand in it, and
//! what its sheet shows of the room around it. Its mark stands on the sheet, and a new reading changes it.

mod around;

use std::collections::{BTreeSet, HashMap};

use serde_json::Value;

use crate::book::{Book, Opening, ProductOption, Room, Selection};
use crate::ledger::IssuedSheet;
use crate::site::Around;
use crate::site::heat::HeatFigures;
use crate::site::plan::Plans;
use crate::vocabulary::{Shown, ShownField, ShownGroup, ShownValue, Since, Version};

use super::changes::{Change, KNOWN_BY, differing, leaves};
use super::trades::{Builders, InRoom};
use super::{as_written, of, written};

/// The key of what a sheet shows of the room around its opening. Every sheet has some of it: a content without it was
/// issued before it was a part of the mark.
const AROUND: &str = "around";

/// The key of what is said of a measurement. Whether something was measured is a part of the mark; by whom and on which
/// day is not: the same figures are built from. Contents that were issued before hold it all, of a trade's sheet in a
/// list of all openings of the room.
const MEASURED: &str = "measured";

/// The key of the things on a trade's sheet.
const ITEMS: &str = "items";

/// Every opening and every trade's sheet as it would be issued, in the book's order; with the figures of heat where no
/// maker gives any.
pub fn built(book: &Book, plans: &Plans<'_>, figures: &HeatFigures) -> Vec<IssuedSheet> {
    book.rooms.iter().flat_map(|room| built_in((book, plans), room, figures)).collect()
}

fn built_in<'a>((book, plans): (&'a Book, &'a Plans<'a>), room: &'a Room, figures: &HeatFigures) -> Vec<IssuedSheet> {
    let mut placed: HashMap<&str, Vec<&Selection>> = HashMap::new();
    for selection in &room.selections {
        if let Some(place) = selection.place.get() {
            placed.entry(place).or_default().push(selection);
        }
    }
    let issued = room.openings.iter().map(|opening| {
        let things = placed.get(opening.name.value.as_str()).map_or(&[][..], Vec::as_slice);
        let at = (room, opening);
        let around = Around::of((book, plans), at, room.shown_at(opening), figures.clone());
        let mut fields = value(room, opening, things);
        fields.push(field(AROUND, around::shown(&around, room, opening)));
        let content = written::content(&ShownValue::Group(fields), Version::Second);
        let mark = of(&content);
        IssuedSheet { room: room.folder.clone(), opening: opening.name.value.clone(), trade: None, mark, content }
    });
    let at = InRoom::of(room, plans.room(room), book.project.units);
    let trades = Builders::ALL.into_iter().filter_map(|trade| trade.issued(at));
    issued.chain(trades).collect()
}

/// Whether an issue was made before the trades' sheets were a part of it: it says nothing of them.
pub fn is_before_trades(issued: &[IssuedSheet]) -> bool {
    issued.iter().any(|sheet| sheet.trade.is_none() && sheet.content.get(AROUND).is_none())
}

/// Whether two contents of an opening are one sheet. What either of them does not say, since it was issued before it
/// was a part of the mark, makes no other sheet.
pub fn is_built_as(one: &IssuedSheet, other: &IssuedSheet) -> bool {
    if one.mark == other.mark {
        return true;
    }
    let with_around = one.content.get(AROUND).is_some() == other.content.get(AROUND).is_some();
    let content = |sheet: &IssuedSheet| match with_around {
        true => of(&unsigned(&sheet.content)),
        false => of(&without_around(&unsigned(&sheet.content))),
    };
    content(one) == content(other)
}

/// A content without who measured, and when.
fn unsigned(content: &Value) -> Value {
    let mut content = content.clone();
    let Some(fields) = content.as_object_mut() else { return content };
    match fields.get_mut(MEASURED) {
        Some(list) if list.is_array() => {
            fields.remove(MEASURED);
        }
        Some(said) => *said = true.into(),
        None => {}
    }
    content
}

/// What changed between two contents of an opening.
pub fn built_changes(before: &Value, after: &Value) -> Vec<Change> {
    let (before, after) = alike(before, after);
    let mut found = Vec::new();
    leaves(&before, &after, &mut found);
    found
}

/// The fields of an opening that are not the same in two contents of it, and of the room around it, by their keys.
pub fn built_fields(before: &Value, after: &Value) -> Vec<String> {
    let (before, after) = alike(before, after);
    let around = |of: &ShownValue| of.get(AROUND).cloned().unwrap_or(ShownValue::Nothing);
    let own = differing(&before, &after).into_iter().filter(|key| key != AROUND).flat_map(|key| match key.as_str() {
        ITEMS => names_of_other(&before, &after),
        _ => vec![key],
    });
    own.chain(differing(&around(&before), &around(&after))).collect()
}

/// The things on a trade's sheet that are not the same, by name.
fn names_of_other(before: &ShownValue, after: &ShownValue) -> Vec<String> {
    let items = |of: &ShownValue| of.get(ITEMS).map(|items| items.values().to_vec()).unwrap_or_default();
    let (was, is) = (items(before), items(after));
    let other = was.iter().filter(|one| !is.contains(one)).chain(is.iter().filter(|one| !was.contains(one)));
    let names = other.filter_map(|item| item.get("name")?.text().map(str::to_string));
    names.collect::<BTreeSet<String>>().into_iter().collect()
}

/// Two contents, told by what both of them say.
fn alike(before: &Value, after: &Value) -> (ShownValue, ShownValue) {
    let both = [before, after].iter().all(|content| content.get(AROUND).is_some());
    let read = |content: &Value| match both {
        true => as_written::read(&unsigned(content)),
        false => as_written::read(&without_around(&unsigned(content))),
    };
    (read(before), read(after))
}

fn without_around(content: &Value) -> Value {
    let mut content = content.clone();
    if let Some(fields) = content.as_object_mut() {
        fields.remove(AROUND);
    }
    content
}

fn value(room: &Room, opening: &Opening, things: &[&Selection]) -> ShownGroup {
    let things = things.iter().flat_map(|selection| selection.standing().iter().map(|option| thing(selection, option)));
    let mut fields = vec![
        field("room", room.folder.shown()),
        field("opening", opening.name.shown()),
        field("floor build-up", room.floor_build_up.shown()),
        field("things", ShownValue::List(things.collect())),
    ];
    let own = opening.shown();
    fields.extend(own.fields().iter().filter(|field| field.key != MEASURED).cloned());
    fields.push(field(MEASURED, (!opening.measured.is_absent()).then_some(true).shown()));
    fields
}

/// A thing by the figures that an installer goes by.
fn thing(selection: &Selection, option: &ProductOption) -> ShownValue {
    let title = format!("{} ({})", selection.name.value, option.title());
    group([
        (KNOWN_BY, format!("{}/{}", selection.id, option.id.value).shown()),
        ("name", title.shown()),
        ("model", option.model.shown()),
        ("hinge", option.hinge.shown()),
        ("size", option.size.shown()),
        ("fit", option.fit.shown()),
        ("cut sheet", option.cut_sheet.shown()),
    ])
}

fn group<const N: usize>(fields: [(&'static str, ShownValue); N]) -> ShownValue {
    ShownValue::Group(fields.into_iter().map(|(key, value)| field(key, value)).collect())
}

fn field(key: &'static str, value: ShownValue) -> ShownField {
    ShownField::new(key, Since::Second, value)
}
