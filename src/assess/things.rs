//! Which selection a finding speaks of: by where its own name is written, or that of its opening.

use std::collections::HashMap;

use crate::book::{Book, Room, Selection};
use crate::finding::{Finding, Id};

/// The things of a book by where they are named.
pub struct Things<'a>(HashMap<Id, (&'a Room, &'a Selection)>);

impl<'a> Things<'a> {
    /// Every selection, and every opening by what goes into it first.
    pub fn of(book: &'a Book) -> Self {
        let mut things = HashMap::new();
        for (room, selection) in book.selections() {
            if let Some(opening) = selection.place.get().and_then(|place| room.opening(place)) {
                things.entry(Id::of(&opening.name)).or_insert((room, selection));
            }
            things.insert(Id::of(&selection.name), (room, selection));
        }
        Self(things)
    }

    /// The selection that a finding is about, or that goes into the opening that it is about.
    pub fn of_finding(&self, finding: &Finding) -> Option<(&'a Room, &'a Selection)> {
        self.0.get(&finding.subject.id()?).copied()
    }
}
