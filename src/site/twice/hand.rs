//! The side that a door hangs on, at the thing and where it stands.

use crate::book::{End, Hinge, Part, PartIs, Room, Selection};
use crate::site::plan::chosen_for;
use crate::site::told::{SourcedFigure, Spot};

use super::Twice;

/// Hinge sides of a room that differ.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let parts = super::width::parts(room);
    let mut all: Vec<Twice<'_>> = parts.filter_map(|(row, part)| of_part(room, row, part)).collect();
    for fixture in &room.fixtures {
        let Some(hinge) = fixture.hinge.spanned() else { continue };
        let there = SourcedFigure::planned(hinge, Spot::Fixture(&fixture.name));
        all.extend(chosen_for(room, fixture).and_then(|selection| differs(selection, there)));
    }
    all
}

/// A part of a row whose door is that of what is chosen for it.
fn of_part<'a>(room: &'a Room, row: &'a str, part: &'a Part) -> Option<Twice<'a>> {
    let there = SourcedFigure::planned(part.hinge.spanned()?, Spot::Part(part.is.word(), row));
    let chosen = match &part.is {
        PartIs::Opening(name) => room.goes_into(name).next(),
        PartIs::Cabinet(_) | PartIs::Tall(_) => super::width::chosen_for(room, part)
            .or_else(|| part.holds.iter().find_map(|held| room.goes_into(held).find(|one| is_a_front(one)))),
        _ => None,
    };
    differs(chosen?, there)
}

/// Whether a thing has the only door of the part that it is let into.
fn is_a_front(selection: &Selection) -> bool {
    use crate::vocabulary::Kind::{MirrorCabinet, Refrigerator};
    selection.is_any(&[MirrorCabinet, Refrigerator])
}

/// What is chosen says one side, and the place the other.
fn differs<'a>(selection: &'a Selection, there: SourcedFigure<'a, End>) -> Option<Twice<'a>> {
    let hinge = selection.settled()?.hinge.spanned()?;
    let own = match hinge.value {
        Hinge::Left => End::Left,
        Hinge::Right => End::Right,
        Hinge::Either | Hinge::Both | Hinge::None => return None,
    };
    if own == there.value {
        return None;
    }
    Some(Twice::of_hinges(selection, (own, hinge.span), there))
}
