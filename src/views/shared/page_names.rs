//! The name that each room, opening and item has in the paths of its pages: its own, as one types it on a keyboard
//! without accents.

use std::collections::{BTreeMap, HashMap, HashSet};

use crate::book::{Book, Opening, Room, Selection, page_name_of, short_name_of};
use crate::source::Span;
use crate::source::portable::{self, NameFault};

/// All names of a book; in one folder no two are the same.
pub struct PageNames<'a> {
    rooms: BTreeMap<&'a str, String>,
    /// By where each opening is named.
    openings: HashMap<Span, String>,
    /// Of the items that are not called by their ids.
    items: HashMap<(&'a str, &'a str), String>,
}

impl<'a> PageNames<'a> {
    /// Of a book.
    pub fn of(book: &'a Book) -> Self {
        Self { rooms: rooms(book), openings: openings(book), items: book.rooms.iter().flat_map(items).collect() }
    }

    /// A room's.
    pub fn room(&self, room: &Room) -> &str {
        self.rooms.get(room.folder.as_str()).map_or("room", String::as_str)
    }

    /// An opening's.
    pub fn opening(&self, opening: &Opening) -> &str {
        self.openings.get(&opening.name.span).map_or("opening", String::as_str)
    }

    /// An item's.
    pub fn item<'n>(&'n self, room: &'n Room, selection: &'n Selection) -> &'n str {
        let own = self.items.get(&(room.folder.as_str(), selection.id.as_str()));
        own.map_or(selection.id.as_str(), String::as_str)
    }
}

fn rooms(book: &Book) -> BTreeMap<&str, String> {
    let (mut names, mut taken): (BTreeMap<&str, String>, HashSet<String>) = (BTreeMap::new(), HashSet::new());
    // The last number that was tried of each name.
    let mut tried: HashMap<String, u32> = HashMap::new();
    for room in &book.rooms {
        let short = page_name_of(&room.folder);
        let mut name = short.clone();
        while !taken.insert(name.clone()) {
            let number = tried.entry(short.clone()).or_insert(1);
            *number += 1;
            name = format!("{short}-{number}");
        }
        names.insert(&room.folder, name);
    }
    names
}

/// Of several openings that are called alike the later ones have a number.
fn openings(book: &Book) -> HashMap<Span, String> {
    let mut names = HashMap::new();
    for room in &book.rooms {
        let mut same: HashMap<String, u32> = HashMap::new();
        for opening in &room.openings {
            // What some system takes for a device, or no disk holds, names no page.
            let short = match portable::fault(&page_name_of(&opening.name)) {
                Some(NameFault::Device) => format!("{}-opening", page_name_of(&opening.name)),
                _ => page_name_of(&opening.name).chars().take(portable::LONGEST_NAME).collect(),
            };
            let count = same.entry(short.clone()).or_insert(0);
            *count += 1;
            let name = if *count == 1 { short } else { format!("{short}-{count}") };
            names.insert(opening.name.span, name);
        }
    }
    names
}

/// An id is signed, and leaves out what is no plain letter; where it was made of the name, the page has the letters.
fn items(room: &Room) -> Vec<((&str, &str), String)> {
    let ids: HashSet<&str> = room.selections.iter().map(|selection| selection.id.as_str()).collect();
    let mut found: Vec<((&str, &str), String)> = Vec::new();
    let mut own = HashSet::new();
    for selection in &room.selections {
        let (id, short) = (selection.id.as_str(), short_name_of(&selection.name));
        let Some(number) = id.strip_prefix(short.as_str()) else { continue };
        let name = format!("{}{number}", page_name_of(&selection.name));
        if name == id || portable::fault(&name).is_some() || ids.contains(name.as_str()) || !own.insert(name.clone()) {
            continue;
        }
        found.push(((room.folder.as_str(), id), name));
    }
    found
}
