//! The doorway that a door is for, the window that a blind is for, and the doorway through which all comes in.

use crate::book::{Doorway, NarrowPoint, Room, Selection, Slot, Window};
use crate::source::Spanned;
use crate::units::Length;

use super::plan::Plan;

/// How high a doorway is where nobody says it (common practice).
const HIGH: Length = Length::from_inches(80);

/// The doorway of a door: the one that is its `place`, or that is called as it is, or the only one of the room for its
/// only door. None where that can't be told.
pub fn doorway_of<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Doorway> {
    meant(room, selection, &room.doors, |door| &door.name)
}

/// The window of a blind, likewise.
pub fn window_of<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Window> {
    meant(room, selection, &room.windows, |window| &window.name)
}

/// The doorway through which all comes into a room.
#[derive(Clone, Debug)]
pub struct RoomDoor {
    /// How wide and high it is.
    pub point: NarrowPoint,
    /// Whether that is the plan's alone: nobody measured it.
    pub is_planned: bool,
}

/// The widest doorway of a room whose walls are drawn and closed: whatever comes in comes through it, or through a
/// narrower one. As measured, else between its jambs: a leaf comes off its hinges. None where a doorway has no width,
/// and where the room has a way in of its own.
pub fn way_through(plan: &Plan<'_>) -> Option<RoomDoor> {
    let room = plan.room;
    if !room.way_in.is_empty() || plan.walls.is_empty() || plan.walls.iter().any(super::plan::Wall::is_open) {
        return None;
    }
    let point = |door: &Doorway| {
        let measured = room.clearances.doorways.called(&door.name).map(|clear| (clear.value.value, clear.value.span));
        let (width, span) = measured.or_else(|| Some((*door.width.get()?, door.width.span()?)))?;
        let height = door.height.get().copied().unwrap_or(HIGH);
        let name = door.name.value.clone();
        let point = NarrowPoint { name, width, height, depth: Slot::Absent, turns: false, span };
        Some(RoomDoor { point, is_planned: measured.is_none() })
    };
    let all = room.doors.iter().map(point).collect::<Option<Vec<RoomDoor>>>()?;
    all.into_iter().max_by_key(|door| (door.point.width, door.point.height))
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
