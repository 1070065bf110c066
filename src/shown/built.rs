//! What an opening is built from: its own figures, and those of the maker's sheet of all that may still stand in it.
//! Its mark stands on the sheet of the opening, and a new reading changes it.

use std::collections::HashMap;

use serde_json::Value;

use crate::book::{Book, Opening, ProductOption, Room, Selection};
use crate::ledger::IssuedOpening;
use crate::vocabulary::{Shown, ShownField, ShownGroup, ShownValue, Since, Version};

use super::changes::{Change, KNOWN_BY, leaves};
use super::{as_written, of, written};

/// Every opening as it would be issued, in the book's order.
pub fn built(book: &Book) -> Vec<IssuedOpening> {
    book.rooms.iter().flat_map(built_in).collect()
}

fn built_in(room: &Room) -> Vec<IssuedOpening> {
    let mut placed: HashMap<&str, Vec<&Selection>> = HashMap::new();
    for selection in &room.selections {
        if let Some(place) = selection.place.get() {
            placed.entry(place).or_default().push(selection);
        }
    }
    let issued = room.openings.iter().map(|opening| {
        let things = placed.get(opening.name.value.as_str()).map_or(&[][..], Vec::as_slice);
        let content = written::content(&value(room, opening, things), Version::Second);
        IssuedOpening { room: room.folder.clone(), opening: opening.name.value.clone(), mark: of(&content), content }
    });
    issued.collect()
}

/// What changed between two contents of an opening.
pub fn built_changes(before: &Value, after: &Value) -> Vec<Change> {
    let mut found = Vec::new();
    leaves(&as_written::read(before), &as_written::read(after), &mut found);
    found
}

fn value(room: &Room, opening: &Opening, things: &[&Selection]) -> ShownValue {
    let things = things.iter().flat_map(|selection| selection.standing().iter().map(|option| thing(selection, option)));
    let mut fields = vec![
        field("room", room.folder.shown()),
        field("opening", opening.name.shown()),
        field("floor build-up", room.floor_build_up.shown()),
        field("things", ShownValue::List(things.collect())),
    ];
    fields.extend(opening.shown().fields().iter().cloned());
    ShownValue::Group(fields)
}

/// A thing by the figures that an installer goes by.
fn thing(selection: &Selection, option: &ProductOption) -> ShownValue {
    let fields: ShownGroup = vec![
        field(KNOWN_BY, format!("{}/{}", selection.id, option.id.value).shown()),
        field("name", format!("{} ({})", selection.name.value, option.title()).shown()),
        field("model", option.model.shown()),
        field("hinge", option.hinge.shown()),
        field("size", option.size.shown()),
        field("fit", option.fit.shown()),
    ];
    ShownValue::Group(fields)
}

fn field(key: &'static str, value: ShownValue) -> ShownField {
    ShownField::new(key, Since::Second, value)
}
