//! How wide the doorways of a room are, clear.

use crate::book::{DoorHinge, Doorway, Hinge, Room, Selection};
use crate::site::Site;
use crate::site::doorways::doorway_of;
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::Distance;

/// What a leaf that stands open takes of its width (Kitchen and Bath Planning Guidelines, 2nd edition:
/// a leaf of 34" leaves 32").
const LEAF: Length = Length::from_inches(2);

/// Clear width of each doorway, by its name: as measured, else by its leaf, else between its jambs less what a leaf
/// that hangs there takes. For access one leaf of a pair must do, and a door that is only ordered, or only named as
/// the way in, counts too.
pub fn doorways<'a>(site: &Site<'a>, room: &'a Room, for_access: bool) -> Vec<(&'a str, Distance)> {
    let written = &room.clearances.doorways;
    let mut all: Vec<(&str, Distance)> =
        written.iter().map(|door| (door.name.value.as_str(), (&door.value).into())).collect();
    // How wide a doorway is follows from itself, wherever it stands.
    let is_sound = !room.partly_unread && site.plan(room).is_none_or(|plan| plan.is_sound());
    let doors = room.doors.iter().filter(|_| is_sound);
    let planned = doors.filter_map(|door| {
        let clear = clear_of(room, door, for_access)?;
        Some((door.name.value.as_str(), Distance::planned(clear, door.name.span)))
    });
    let mut more: Vec<(&str, Distance)> = planned.collect();
    more.extend(room.openings.iter().filter(|opening| opening.takes_a(Kind::Door)).filter_map(|opening| {
        let hangs = !room.goes_into(&opening.name).any(is_hung_by_nothing);
        let clear = opening.governing_width()? - if hangs { LEAF } else { Length::ZERO };
        Some((opening.name.value.as_str(), Distance::written(clear, opening.width.span().unwrap_or(opening.span))))
    }));
    if for_access {
        more.extend(room.selections.iter().filter_map(|door| ordered(room, door)));
        let ways = room.way_in.iter().filter(|point| Mention::Door.is_in(&point.name));
        more.extend(ways.map(|way| (way.name.as_str(), Distance::written(way.width, way.span))));
    }
    for (name, clear) in more {
        if !all.iter().any(|(known, _)| known.eq_ignore_ascii_case(name)) {
            all.push((name, clear));
        }
    }
    all
}

/// Between the open leaf and the stop.
fn clear_of(room: &Room, door: &Doorway, for_access: bool) -> Option<Length> {
    let between = door.width.get().copied();
    if door.slides.get() == Some(&true) {
        return between;
    }
    let is_a_pair = door.hinge.get() == Some(&DoorHinge::Both);
    let leaves = if is_a_pair && !for_access { 2 } else { 1 };
    let chosen = room.selections.iter().filter(|one| one.is(Kind::Door));
    let chosen = chosen.filter(|one| doorway_of(room, one).is_some_and(|own| std::ptr::eq(own, door)));
    let hung: Vec<&Selection> = chosen.filter(|one| !is_hung_by_nothing(one)).collect();
    let ordered = || hung.iter().filter_map(|one| one.settled()?.size.width.get().copied()).min();
    let hangs = door.hinge.get().is_some() || door.swings.get().is_some() || !hung.is_empty();
    let half = || between.filter(|_| hangs).map(|between| if is_a_pair { between.half() } else { between });
    let leaf = door.leaf.get().copied().or_else(ordered).or_else(half);
    leaf.map(|leaf| (leaf - LEAF).times(leaves)).into_iter().chain(between).min()
}

/// Whether a door slides, or is known to hang on no hinge.
fn is_hung_by_nothing(door: &Selection) -> bool {
    let slides = |text: &str| Mention::SlidingPane.is_in(text);
    let words = door.standing().iter().any(|option| slides(option.mount_words()) || slides(option.name.text()));
    let unhinged = door.standing().iter().any(|option| option.hinge.get() == Some(&Hinge::None));
    unhinged || words || slides(&door.name)
}

/// A door that has no doorway in the plan and no opening.
fn ordered<'a>(room: &'a Room, door: &'a Selection) -> Option<(&'a str, Distance)> {
    let is_placed =
        || doorway_of(room, door).is_some() || door.place.get().is_some_and(|it| room.opening(it).is_some());
    if !door.is(Kind::Door) || is_placed() {
        return None;
    }
    let widths = door.standing().iter().filter_map(|option| option.size.width.spanned());
    let least: &Spanned<Length> = widths.min_by_key(|width| width.value)?;
    let takes = if is_hung_by_nothing(door) { Length::ZERO } else { LEAF };
    Some((door.name.value.as_str(), Distance::written(least.value - takes, least.span)))
}
