//! The doorway that a door is for, and the window that a blind is for.

use crate::book::{Doorway, Room, Selection, Window};
use crate::source::Spanned;

/// The doorway of a door: the one that is its `place`, or that is called as it is, or the only one of the room for its
/// only door. None where that can't be told.
pub fn doorway_of<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Doorway> {
    meant(room, selection, &room.doors, |door| &door.name)
}

/// The window of a blind, likewise.
pub fn window_of<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Window> {
    meant(room, selection, &room.windows, |window| &window.name)
}

fn meant<'a, T>(
    room: &Room,
    selection: &Selection,
    all: &'a [T],
    name: impl Fn(&T) -> &Spanned<String>,
) -> Option<&'a T> {
    if let Some(place) = selection.place.get() {
        return all.iter().find(|one| name(one).value == *place);
    }
    let called = all.iter().find(|one| name(one).value.eq_ignore_ascii_case(&selection.name.value));
    let alone = || {
        let same = room.selections.iter().filter(|other| other.kind.get() == selection.kind.get()).count();
        all.first().filter(|_| all.len() == 1 && same == 1)
    };
    called.or_else(alone)
}
