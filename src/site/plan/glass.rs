//! The door of a shower: as the plan sets it out, else that of the glass that is chosen for it.

use crate::book::{End, Fixture, Hinge, ProductOption, Room, Selection};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::Kind;

use super::fixed::chosen_for;

/// Wider than that is no leaf on hinges at one side: it is a screen with a door in it (common practice).
const WIDEST_LEAF: Length = Length::from_inches(36);

/// What one stands in behind glass.
const SHOWERS: [Kind; 4] = [Kind::ShowerSet, Kind::ShowerTray, Kind::ShowerGlass, Kind::Bathtub];

/// The glass of a fixture: the selection that it names, else the room's only glass for the only shower that it sets out.
pub fn glass_for<'a>(room: &'a Room, fixture: &Fixture) -> Option<&'a Selection> {
    let named = chosen_for(room, fixture).filter(|chosen| chosen.is(Kind::ShowerGlass));
    let only = || {
        let is_shower = |other: &&Fixture| kind_of(room, other).is_some_and(|kind| SHOWERS.contains(&kind));
        let is_alone = is_shower(&fixture) && room.fixtures.iter().filter(is_shower).count() == 1;
        let mut glass = room.selections.iter().filter(|selection| selection.is(Kind::ShowerGlass));
        let first = glass.next().filter(|_| is_alone && glass.next().is_none())?;
        // What has a place of its own is the glass of that.
        Some(first).filter(|first| first.place.is_absent())
    };
    named.or_else(only)
}

fn kind_of(room: &Room, fixture: &Fixture) -> Option<Kind> {
    let of_opening = || room.opening(fixture.opening.get()?)?.takes.get();
    fixture.takes.get().or_else(of_opening).or_else(|| chosen_for(room, fixture)?.kind.get()).copied()
}

/// The side that a glass door hangs on, where its option says one.
pub fn hung_at(option: &ProductOption) -> Option<End> {
    match option.hinge.get()? {
        Hinge::Left => Some(End::Left),
        Hinge::Right => Some(End::Right),
        Hinge::Either | Hinge::Both | Hinge::None => None,
    }
}

/// How wide the leaf of a fixture's glass is: by its sheet, else the glass itself, where all of it is one leaf that hangs.
pub fn leaf_of(fixture: &Fixture, option: &ProductOption) -> Option<Spanned<Length>> {
    let sheet = option.fit.get().and_then(|fit| fit.door.get()).and_then(|door| door.swings.spanned());
    let hangs = fixture.hinge.get().is_some() || hung_at(option).is_some();
    let own = || option.size.width.spanned().filter(|wide| hangs && wide.value <= WIDEST_LEAF);
    sheet.or_else(own).map(|leaf| Spanned::new(leaf.value, leaf.span))
}

/// The leaf of a shower's door and the side that it hangs on.
pub fn shower_door(room: &Room, fixture: &Fixture) -> Option<(Length, End)> {
    let glass = glass_for(room, fixture).and_then(|glass| glass.settled());
    let leaf = fixture.door.get().copied().or_else(|| Some(leaf_of(fixture, glass?)?.value))?;
    let hinge = fixture.hinge.get().copied().or_else(|| hung_at(glass?))?;
    Some((leaf, hinge))
}
