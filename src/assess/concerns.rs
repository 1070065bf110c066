//! Whom a finding concerns besides the office, which is told everything: as its rule says, and the client where
//! the designer lets it be told.

use std::collections::HashMap;

use crate::book::{Book, Room, Selection};
use crate::finding::{Finding, Id};

use super::rules::{self, Reader};

/// Whether a finding is told to that reader, in a room, of a selection or of none that the reader has a page of.
/// Its caution is everybody's, whatever this says.
pub fn is_told(reader: Reader, finding: &Finding, room: &Room, of: Option<&Selection>) -> bool {
    let concerns = rules::of(finding.rule).is_some_and(|rule| rule.tells.contains(&reader));
    concerns
        && match reader {
            Reader::Installer => true,
            Reader::Client => {
                let of_item = of.and_then(|selection| selection.tell_client.get());
                of_item.or(room.tell_client.get()) == Some(&true)
            }
        }
}

/// Finds what a finding is about, where a list tells those of a whole book.
pub struct Concerns<'a> {
    rooms: HashMap<&'a str, &'a Room>,
    selections: HashMap<Id, &'a Selection>,
}

impl<'a> Concerns<'a> {
    /// Of a book.
    pub fn of(book: &'a Book) -> Self {
        Self {
            rooms: book.rooms.iter().map(|room| (room.folder.as_str(), room)).collect(),
            selections: book.selections().map(|(_, selection)| (Id::of(&selection.name), selection)).collect(),
        }
    }

    /// Whether the client would read of a finding if the designer let it be told.
    pub fn may_tell_client(&self, finding: &Finding) -> bool {
        let tells = rules::of(finding.rule).is_some_and(|rule| rule.tells.contains(&Reader::Client));
        tells && finding.room.is_some() && !self.readers(finding).contains(&Reader::Client)
    }

    /// Who reads of a finding besides the office: what is of no room stays there.
    pub fn readers(&self, finding: &Finding) -> Vec<Reader> {
        let room = finding.room.as_deref().and_then(|room| self.rooms.get(room));
        let of = finding.subject.id().and_then(|id| self.selections.get(&id)).copied();
        let is_told = |reader: &Reader| room.is_some_and(|room| is_told(*reader, finding, room, of));
        [Reader::Client, Reader::Installer].into_iter().filter(is_told).collect()
    }
}
