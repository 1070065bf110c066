//! What the book notes for those who build: at openings, of what is chosen, and of what the plan has.

use crate::book::{Opening, Part, Room, Selection, Slot};
use crate::vocabulary::ShownValue;

use super::built::BuiltTable;
use super::cells::{named, text};

/// What is noted of what: at openings that concern a trade, and of the things that do.
pub fn notes<'a>(
    room: &'a Room,
    concerns: impl Fn(&Opening) -> bool,
    things: impl IntoIterator<Item = &'a Selection>,
) -> BuiltTable {
    let row = |opening: &'a Opening| {
        let name = room.goes_into(&opening.name).next().map_or_else(|| text(opening.name.value.clone()), named);
        Some(vec![name, text(opening.note.get()?.clone())])
    };
    let mut rows: Vec<Vec<ShownValue>> =
        room.openings.iter().filter(|opening| concerns(opening)).filter_map(row).collect();
    for thing in things {
        rows.extend(of_thing(thing).into_iter().map(|note| vec![named(thing), text(note)]));
    }
    BuiltTable { key: "notes", of: String::new(), columns: vec!["thing", "note"], rows }
}

/// What is noted of a thing, and beside the figures of its sheet: of each option that may still stand, once.
pub fn of_thing(thing: &Selection) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for option in thing.standing() {
        let of_sheet = option.fit.get().and_then(|fit| fit.note.get());
        for note in option.note.get().into_iter().chain(of_sheet) {
            if !all.contains(note) {
                all.push(note.clone());
            }
        }
    }
    all
}

/// What is noted of lights that hang.
pub fn of_lights(room: &Room) -> Vec<Vec<ShownValue>> {
    let row = |selection: &Selection| Some(vec![named(selection), text(selection.hangs.get()?.note.get()?.clone())]);
    room.selections.iter().filter_map(row).collect()
}

/// What is noted of rows, islands, doors and windows, by their names: the plan's own words.
pub fn of_plan(room: &Room) -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = Vec::new();
    let mut tell = |name: &str, note: &Slot<String>| all.extend(note.get().map(|note| (name.to_owned(), note.clone())));
    for run in &room.runs {
        tell(&run.name.value, &run.note);
        run.parts.iter().for_each(|part| tell(&of_part(&run.name.value, part), &part.note));
    }
    for island in &room.islands {
        tell(&island.name.value, &island.note);
        let parts = island.sides().flat_map(|side| &side.parts);
        parts.for_each(|part| tell(&of_part(&island.name.value, part), &part.note));
    }
    room.doors.iter().for_each(|door| tell(&door.name.value, &door.note));
    room.windows.iter().for_each(|window| tell(&window.name.value, &window.note));
    all
}

fn of_part(row: &str, part: &Part) -> String {
    format!("{row}, {}", part.is.word())
}
