//! Gives each selection the tag under which it was issued: what a drawing once called K-04 stays K-04.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::{Book, Record, Room};
use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::source::{Span, Spanned};

use super::selection::{FreeTags, tag_order};

/// The tag under which each item was issued last, by room and item, with its name then.
struct AsIssued<'r> {
    items: BTreeMap<(&'r str, &'r str), (&'r str, &'r str)>,
}

impl<'r> AsIssued<'r> {
    fn of(record: &'r Record) -> Self {
        let issued = record.issues.values().flat_map(|issue| &issue.items);
        let items = issued
            .filter(|item| !item.tag.is_empty())
            .map(|item| ((item.room.as_str(), item.item.as_str()), (item.tag.as_str(), item.name.as_str())));
        Self { items: items.collect() }
    }

    fn tag(&self, room: &str, item: &str) -> Option<&'r str> {
        self.items.get(&(room, item)).map(|(tag, _)| *tag)
    }

    /// Each tag of a room that was issued, with the item that bears it: the first of two that do.
    fn of_room(&self, room: &str) -> BTreeMap<&'r str, (&'r str, &'r str)> {
        let mut tags = BTreeMap::new();
        for ((_, item), (tag, name)) in self.items.range((room, "")..).take_while(|((folder, _), _)| *folder == room) {
            tags.entry(*tag).or_insert((*item, *name));
        }
        tags
    }

    /// Each tag that was issued in another room and not in this one, with the name of its item then.
    fn of_others(&self, room: &str) -> BTreeMap<&'r str, &'r str> {
        let here = self.of_room(room);
        let others = self.items.iter().filter(|((folder, _), (tag, _))| *folder != room && !here.contains_key(tag));
        others.map(|(_, (tag, name))| (*tag, *name)).collect()
    }
}

/// Sets the tags of what was issued, and tells those that are written otherwise than they were issued.
pub fn as_issued(book: &mut Book, findings: &mut Vec<Finding>) {
    let issued = AsIssued::of(&book.record);
    for room in &mut book.rooms {
        let taken = Taken { here: issued.of_room(&room.folder), elsewhere: issued.of_others(&room.folder) };
        let bears_another = || room.selections.iter().any(|one| taken.elsewhere.contains_key(one.tag.as_str()));
        if !taken.here.is_empty() || bears_another() {
            written_otherwise(room, &issued, &taken, findings);
            set(room, &issued, &taken);
        }
    }
}

/// The tags that were issued, each with the item that bears it and its name then.
struct Taken<'r> {
    /// For things of the room.
    here: BTreeMap<&'r str, (&'r str, &'r str)>,
    /// For things of other rooms, of which one may have moved here, or have borne this room's name.
    elsewhere: BTreeMap<&'r str, &'r str>,
}

fn set(room: &mut Room, issued: &AsIssued<'_>, taken: &Taken<'_>) {
    let written = room.selections.iter().filter(|selection| selection.tag_at.is_some());
    let mut used: BTreeSet<String> = written.map(|selection| selection.tag.clone()).collect();
    let (folder, letter) = (room.folder.clone(), room.letter.clone());
    // What was issued first, so that nothing new takes a number that is spoken for.
    for selection in room.selections.iter_mut().filter(|selection| selection.tag_at.is_none()) {
        // Of two that were issued with one tag, the first bears it.
        let own = issued.tag(&folder, &selection.id).filter(|tag| !used.contains(*tag));
        let own = own.filter(|tag| taken.here.get(tag).is_some_and(|(item, _)| *item == selection.id));
        selection.tag = own.unwrap_or_default().to_string();
        used.extend(own.map(str::to_string));
    }
    used.extend(taken.here.keys().chain(taken.elsewhere.keys()).map(|tag| (*tag).to_string()));
    let mut numbers = FreeTags::of(&letter);
    for selection in room.selections.iter_mut().filter(|selection| selection.tag.is_empty()) {
        selection.tag = numbers.take(&mut used);
    }
    room.selections.sort_by_cached_key(|selection| tag_order(&selection.tag));
    room.was_changed();
}

fn written_otherwise(room: &Room, issued: &AsIssued<'_>, taken: &Taken<'_>, findings: &mut Vec<Finding>) {
    let mut tell = |at: Span, name: &Spanned<String>, message: Phrase, remedy: Phrase| {
        let remark = Remark::stop(at, message).room(&room.folder).selection(name);
        findings.push(remark.remedy(remedy).of(Code::TAG));
    };
    for selection in &room.selections {
        let (Some(at), name) = (selection.tag_at, &selection.name.value) else { continue };
        let tag = &selection.tag;
        match issued.tag(&room.folder, &selection.id) {
            Some(before) if before != tag => {
                let message =
                    phrase!("`{name}` was issued as `{before}`, and its tag is `{tag}` now", name, before, tag);
                tell(
                    at,
                    &selection.name,
                    message,
                    phrase!("write `{before}` after `tag`, or take the tag out: it keeps its number", before),
                );
            }
            Some(_) => {}
            None => {
                let here = taken.here.get(tag.as_str()).filter(|(item, _)| *item != selection.id);
                let elsewhere = || taken.elsewhere.get(tag.as_str()).copied();
                if let Some(other) = here.map(|(_, other)| *other).or_else(elsewhere) {
                    let message = phrase!(
                        "the tag `{tag}` was issued for `{other}`, and `{name}` bears it now",
                        tag,
                        other,
                        name
                    );
                    let remedy = match here {
                        Some(_) => "give it a number that was never issued, or take the tag out: it gets a free one",
                        None => {
                            "what goes to another room is another item: take the tag out, so that it gets a free \
                                 number; a folder that was renamed gets its name back"
                        }
                    };
                    tell(at, &selection.name, message, remedy.into());
                }
            }
        }
    }
}
