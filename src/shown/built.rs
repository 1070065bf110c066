//! What an opening is built from: its own figures, and those of the maker's sheet of all that may still stand in it.
//! Its mark stands on the sheet of the opening, and a new reading changes it.

use serde_json::Value;

use crate::book::{Book, Opening, ProductOption, Room, Selection};
use crate::ledger::IssuedOpening;
use crate::vocabulary::{Shown, ShownField, ShownGroup, ShownValue, Since, Version};

use super::changes::{Change, leaves};
use super::{as_written, of, written};

/// Every opening as it would be issued, in the book's order.
pub fn built(book: &Book) -> Vec<IssuedOpening> {
    let rooms = book.rooms.iter().flat_map(|room| room.openings.iter().map(move |opening| (room, opening)));
    rooms.map(|(room, opening)| built_of(room, opening)).collect()
}

/// An opening as it would be issued.
pub fn built_of(room: &Room, opening: &Opening) -> IssuedOpening {
    let content = written::content(&value(room, opening), Version::Second);
    IssuedOpening { room: room.folder.clone(), opening: opening.name.value.clone(), mark: of(&content), content }
}

/// What changed between two contents of an opening.
pub fn built_changes(before: &Value, after: &Value) -> Vec<Change> {
    let mut found = Vec::new();
    leaves(&as_written::read(before), &as_written::read(after), &mut found);
    found
}

fn value(room: &Room, opening: &Opening) -> ShownValue {
    let goes_in = |selection: &&Selection| selection.place.get() == Some(&opening.name.value);
    let things = room.selections.iter().filter(goes_in);
    let things = things.flat_map(|selection| selection.standing().iter().map(move |option| thing(selection, option)));
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
