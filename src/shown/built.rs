//! What an opening is built from: its own figures, those of the maker's sheet of all that may still stand in it, and
//! what its sheet shows of the room around it. Its mark stands on the sheet, and a new reading changes it.

mod around;

use std::collections::{BTreeSet, HashMap};

use serde_json::Value;

use crate::book::{Book, DetailName, Opening, ProductOption, Room, Selection, Setting};
use crate::ledger::IssuedSheet;
use crate::site::Around;
use crate::site::heat::HeatFigures;
use crate::site::plan::Plans;
use crate::vocabulary::{SheetVersion, Shown, ShownField, ShownGroup, ShownValue, Since, Version};

use super::changes::{Change, KNOWN_BY, differing, leaves};
use super::known::{as_known_by, version_of_sheet};
use super::sheet_of::SheetOf;
use super::trades::{Builders, InRoom};
use super::{as_written, of, plan, written};

/// The key of what a sheet shows of the room around its opening. Every sheet has some of it: a content without it was
/// issued before it was a part of the mark.
const AROUND: &str = "around";

/// The key of what is said of a measurement. Whether something was measured is a part of the mark; by whom and on which
/// day is not: the same figures are built from. Contents that were issued before hold it all, of a trade's sheet in a
/// list of all openings of the room.
const MEASURED: &str = "measured";

/// The key of the things on a trade's sheet.
const ITEMS: &str = "items";

/// Every opening, every trade's sheet and the plan of each room as they would be issued, in the book's order; with the
/// figures of heat where no maker gives any.
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
        sheet(SheetOf::Opening(opening.name.value.clone()), room, fields, Version::Second)
    });
    let at = InRoom::of(room, plans.room(room), book.project.units);
    let trades = Builders::ALL.into_iter().filter_map(|trade| trade.issued(at));
    let plan = plans.room(room).and_then(|plan| plan::issued(plan, book.project.units));
    issued.chain(trades).chain(plan).collect()
}

/// A sheet as it would be issued.
pub(super) fn sheet(of_what: SheetOf, room: &Room, mut fields: ShownGroup, version: Version) -> IssuedSheet {
    fields.push(field(SheetVersion::STATED_AS, SheetVersion::NEWEST.states().map(str::to_string).shown()));
    let content = written::content(&ShownValue::Group(fields), version);
    let (opening, trade) = of_what.names();
    IssuedSheet { room: room.folder.clone(), opening, trade, mark: of(&content), content }
}

/// Whether an issue was made before the trades' sheets were a part of it: it says nothing of them.
pub fn is_before_trades(issued: &[IssuedSheet]) -> bool {
    issued.iter().any(|sheet| sheet.trade.is_none() && sheet.content.get(AROUND).is_none())
}

/// Whether an issue was made before the plans of rooms were a part of it: it says nothing of them.
pub fn is_before_plans(issued: &[IssuedSheet]) -> bool {
    issued.iter().any(|sheet| version_of_sheet(&sheet.content) < SheetVersion::Second)
}

/// Whether two contents of a sheet are one. What either of them does not know of, since it was issued before it was a
/// part of the mark, makes no other sheet.
pub fn is_built_as(one: &IssuedSheet, other: &IssuedSheet) -> bool {
    if one.mark == other.mark {
        return true;
    }
    let (one, other) = alike(&one.content, &other.content);
    differing(&one, &other).is_empty()
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

/// Two contents, told by what both of them know of.
fn alike(before: &Value, after: &Value) -> (ShownValue, ShownValue) {
    let both = [before, after];
    let version = both.map(version_of_sheet).into_iter().min().unwrap_or(SheetVersion::NEWEST);
    let has_around = both.iter().all(|content| content.get(AROUND).is_some());
    let [before, after] = both.map(|content| {
        let mut known = unsigned(&as_known_by(version, content));
        if let Some(fields) = known.as_object_mut().filter(|_| !has_around) {
            fields.remove(AROUND);
        }
        as_written::read(&known)
    });
    (before, after)
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
        ("open", selection.settled().is_none().then_some(true).shown()),
        ("set", option.fact::<Setting>().map(|(set, _)| *set).shown()),
        ("panel", option.panel.shown()),
        ("note", option.note.shown()),
        ("apron height", option.length(DetailName::ApronHeight).map(|(height, _)| height).shown()),
    ])
}

fn group<const N: usize>(fields: [(&'static str, ShownValue); N]) -> ShownValue {
    ShownValue::Group(fields.into_iter().map(|(key, value)| field(key, value)).collect())
}

fn field(key: &'static str, value: ShownValue) -> ShownField {
    ShownField::new(key, Since::Second, value)
}
