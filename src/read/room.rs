//! Reads rooms: `room.yaml`, the selections beside it, and the notes.

use std::collections::BTreeSet;

use rayon::prelude::*;

use crate::book::{Note, PartIs, Room, Selection};
use crate::finding::{Code, Finding, Remark, phrase};
use crate::source::Spanned;
use crate::source::yaml::{Node, Value as Yaml};
use crate::units::Currency;
use crate::vocabulary::{Faults, Value};

use super::load::Loaded;
use super::{project, selection};

/// What every room is read with.
pub struct Common<'a> {
    /// The files' trees.
    pub loaded: &'a Loaded,
    /// The currency of every amount.
    pub currency: Currency,
}

/// Reads every room, in the book's order.
pub fn read_all(common: &Common<'_>, order: &[Spanned<String>], findings: &mut Vec<Finding>) -> Vec<Room> {
    project::unknown_rooms(order, common.loaded, findings);
    let named = order.iter().map(|name| &name.value).filter(|name| common.loaded.rooms.contains_key(*name));
    let mut folders: Vec<&String> = Vec::new();
    for folder in named.chain(common.loaded.rooms.keys()) {
        if !folders.contains(&folder) {
            folders.push(folder);
        }
    }
    let one = |folder: &&String| {
        let mut faults = Faults::of_room(folder).in_currency(common.currency);
        (read(common, folder, &mut faults), faults.findings)
    };
    let read: Vec<(Room, Vec<Finding>)> = folders.par_iter().map(one).collect();
    let (mut rooms, told): (Vec<Room>, Vec<Vec<Finding>>) = read.into_iter().unzip();
    findings.extend(told.into_iter().flatten());
    letters(&mut rooms, findings);
    for room in &mut rooms {
        selection::number(room, findings);
    }
    rooms
}

fn read(common: &Common<'_>, folder: &str, faults: &mut Faults) -> Room {
    let paths = common.loaded.rooms.get(folder).map_or(&[][..], Vec::as_slice);
    let is_room = |path: &&String| path.ends_with("/room.yaml") || path.ends_with("/room.yml");
    let room_file = paths.iter().find(is_room);
    let by_another_name = |path: &String| path.to_lowercase() == format!("rooms/{folder}/room.yaml").to_lowercase();
    if room_file.is_none() && !common.loaded.unread_files.iter().any(by_another_name) {
        no_room_file(folder, faults);
    }
    let tree = room_file.and_then(|path| common.loaded.trees.get(path));
    let read = tree.and_then(|node| Room::read(node, faults)).unwrap_or_default();
    let partly_unread = faults.findings.iter().any(|fault| fault.rule.tells_of_unread_words());
    let mut room = Room { folder: folder.to_string(), partly_unread, ..read };
    room.notes = notes(common.loaded, folder);
    let files: Vec<&String> = paths.iter().filter(|path| !is_room(path)).collect();
    let read: Vec<(Vec<Selection>, Faults)> = files
        .par_iter()
        .filter_map(|path| common.loaded.trees.get(path.as_str()))
        .map(|node| {
            let mut faults = Faults::of_room(folder).in_currency(common.currency);
            (selections(common, node, &mut faults), faults)
        })
        .collect();
    for (mut selections, mut found) in read {
        room.selections.append(&mut selections);
        faults.findings.append(&mut found.findings);
    }
    room.partly_unread |= names_an_unknown_opening(&room);
    room.was_changed();
    room
}

/// Whether something in its plan names an opening that it does not have: that is told, and what stands there is not
/// known.
fn names_an_unknown_opening(room: &Room) -> bool {
    let parts = room.runs.iter().flat_map(|run| &run.parts);
    let parts = parts.chain(room.islands.iter().flat_map(|island| island.sides().flat_map(|side| &side.parts)));
    let own = parts.flat_map(|part| {
        let own = match &part.is {
            PartIs::Opening(name) => Some(name),
            _ => None,
        };
        own.into_iter().chain(&part.holds)
    });
    let of_fixtures = room.fixtures.iter().filter_map(|fixture| fixture.opening.spanned());
    own.chain(of_fixtures).any(|name| room.opening(name).is_none())
}

/// A file holds one record, or a list of them.
fn selections(common: &Common<'_>, node: &Node, faults: &mut Faults) -> Vec<Selection> {
    match &node.value {
        Yaml::List(items) => items.iter().filter_map(|item| selection::read(common, item, faults)).collect(),
        _ => selection::read(common, node, faults).into_iter().collect(),
    }
}

fn no_room_file(folder: &str, faults: &mut Faults) {
    let place = crate::source::Place::Path(format!("rooms/{folder}"));
    let message = phrase!("the room `{folder}` has no `room.yaml`", folder);
    let remark = Remark::stop(place, message);
    faults.add(remark.remedy("add a `room.yaml` with at least `name: …`").of(Code::FIELD));
}

fn notes(loaded: &Loaded, folder: &str) -> Vec<Note> {
    let prefix = format!("rooms/{folder}/");
    let notes = loaded.prose.range(prefix.clone()..).take_while(|(path, _)| path.starts_with(&prefix));
    notes.map(|(path, markdown)| Note { path: path.clone(), markdown: markdown.clone() }).collect()
}

/// Gives each room a letter of its own: the one written, or the first of its name that is free.
fn letters(rooms: &mut [Room], findings: &mut Vec<Finding>) {
    let mut taken = BTreeSet::new();
    for room in rooms.iter().filter(|room| !room.letter.is_empty()) {
        if let (false, Some(span)) = (taken.insert(room.letter.clone()), room.span) {
            let mut faults = Faults::of_room(&room.folder);
            let message = phrase!("two rooms have the letter `{}`", room.letter);
            faults.stop(Code::DUPLICATE, span, message, "give each room a letter of its own");
            findings.append(&mut faults.findings);
        }
    }
    for room in rooms.iter_mut().filter(|room| room.letter.is_empty()) {
        let name = room.title().to_uppercase();
        let own = name.chars().filter(char::is_ascii_alphabetic).map(|letter| letter.to_string());
        let pairs = ('A'..='Z').flat_map(|a| ('A'..='Z').map(move |b| format!("{a}{b}")));
        let free =
            own.chain(('A'..='Z').map(|letter| letter.to_string())).chain(pairs).find(|letter| !taken.contains(letter));
        room.letter = free.unwrap_or_else(|| room.folder.to_uppercase());
        taken.insert(room.letter.clone());
    }
}
