//! The selections of a book by their names: looked up, not looked for.

use std::collections::HashMap;

use super::{Book, Room, Selection};

/// The selections of each room by name.
#[derive(Debug, Default)]
pub struct Names<'a>(HashMap<&'a str, (&'a Room, HashMap<&'a str, &'a Selection>)>);

impl<'a> Names<'a> {
    /// Of a whole book; of two of one name in a room, the first.
    pub fn of(book: &'a Book) -> Self {
        let mut rooms: HashMap<&str, (&Room, HashMap<&str, &Selection>)> = HashMap::new();
        for room in book.rooms.iter().rev() {
            let names = room.selections.iter().rev().map(|selection| (selection.name.as_str(), selection));
            rooms.insert(&room.folder, (room, names.collect()));
        }
        Self(rooms)
    }

    /// The selection of that name: in the room, or in another one as `room/name`.
    pub fn selection(&self, room: &Room, name: &str) -> Option<(&'a Room, &'a Selection)> {
        self.in_room(&room.folder, name).or_else(|| {
            let (folder, name) = name.split_once('/')?;
            self.in_room(folder.trim(), name.trim())
        })
    }

    fn in_room(&self, folder: &str, name: &str) -> Option<(&'a Room, &'a Selection)> {
        let (room, selections) = self.0.get(folder)?;
        Some((room, selections.get(name)?))
    }
}
