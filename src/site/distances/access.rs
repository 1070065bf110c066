//! Distances for access that follow from what is ordered and where it goes.

use crate::book::{AccessDistance, Fixture, ProductOption, Room, Selection, ShowerType};
use crate::site::plan::{chosen_for, glass_for, leaf_of};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::Distance;

/// The lower edge of a mirror, the length of a bar that is called so, the step of a tray that one rolls onto.
pub fn as_ordered(room: &Room, name: AccessDistance) -> Option<Distance> {
    match name {
        AccessDistance::Mirror => mirror(room),
        AccessDistance::SideGrabBar => bar(room, Mention::AtTheSide, Mention::Behind),
        AccessDistance::RearGrabBar => bar(room, Mention::Behind, Mention::AtTheSide),
        AccessDistance::ShowerThreshold if room.access.shower_type.get() == Some(&ShowerType::RollIn) => {
            step(room).map(|(_, step)| Distance::from(&step))
        }
        AccessDistance::ShowerEntry => entry(room),
        AccessDistance::GrabBarHeight => bar_height(room),
        _ => None,
    }
}

/// The bar that is set out farthest from where bars are gripped, by its lower edge and how thick it is, where the plan has it.
fn bar_height(room: &Room) -> Option<Distance> {
    let is_bar = |fixture: &&Fixture| {
        let chosen = || chosen_for(room, fixture).is_some_and(|chosen| chosen.is(Kind::GrabBar));
        fixture.takes.get() == Some(&Kind::GrabBar) || chosen()
    };
    let tops = room.fixtures.iter().filter(is_bar).filter_map(|fixture| {
        let sill = fixture.sill.spanned()?;
        let thick = fixture.height.get().copied().unwrap_or_default();
        Some(Distance::from(&Spanned::new(sill.value + thick, sill.span)))
    });
    tops.max_by_key(|top| (top.value - GRIPPED).abs())
}

/// The middle of where the top of a bar is gripped (2010 ADA Standards 609.4: 33" to 36").
const GRIPPED: Length = Length::from_sixty_fourths(2208);

/// No entry that a chair or its user comes through is narrower (2010 ADA Standards 608.2.1).
const NARROWEST_ENTRY: Length = Length::from_inches(36);

/// The narrowest leaf of a shower's door: no more is clear than that. One that is wide enough says nothing yet of what is
/// clear between its hinges and its stop.
fn entry(room: &Room) -> Option<Distance> {
    let leaf = |fixture: &Fixture| {
        let set_out = fixture.door.spanned().map(|door| Spanned::new(door.value, door.span));
        set_out.or_else(|| leaf_of(fixture, glass_for(room, fixture)?.settled()?))
    };
    let leaves = room.fixtures.iter().filter_map(leaf).filter(|leaf| leaf.value < NARROWEST_ENTRY);
    leaves.min_by_key(|leaf| leaf.value).map(|leaf| Distance::from(&leaf))
}

/// The mirror that hangs lowest is the one to look into, sitting.
fn mirror(room: &Room) -> Option<Distance> {
    let is_one = |kind: Option<&Kind>| {
        kind.is_some_and(|kind| [Kind::Mirror, Kind::LitMirror, Kind::MirrorCabinet].contains(kind))
    };
    let openings = room.openings.iter().filter(|opening| is_one(opening.takes.get()));
    let fixtures = room.fixtures.iter().filter(|fixture| {
        let chosen = crate::site::plan::chosen_for(room, fixture);
        is_one(fixture.takes.get()) || is_one(chosen.and_then(|one| one.kind.get()))
    });
    let sills = openings.map(|opening| &opening.sill).chain(fixtures.map(|fixture| &fixture.sill));
    sills.filter_map(|sill| sill.spanned()).min_by_key(|sill| sill.value).map(Distance::from)
}

fn settled(room: &Room, kind: Kind) -> impl Iterator<Item = (&Selection, &ProductOption)> {
    room.selections.iter().filter(move |one| one.is(kind)).filter_map(|one| Some((one, one.settled()?)))
}

/// The longest bar that is called so, in a room with a toilet, and not as one of a shower or tub.
fn bar(room: &Room, own: Mention, other: Mention) -> Option<Distance> {
    room.selections.iter().find(|selection| selection.is(Kind::Toilet))?;
    let bars = settled(room, Kind::GrabBar).filter(|(bar, _)| {
        let name = &bar.name;
        let elsewhere = Mention::NoBowl.is_in(name) && !Mention::Toilet.is_in(name);
        own.is_in(name) && !other.is_in(name) && !elsewhere
    });
    let lengths = bars.filter_map(|(_, option)| option.size.length.spanned());
    lengths.max_by_key(|length| length.value).map(Distance::from)
}

/// The highest step of a room's trays: each is as high as its step, unless it is let into the floor.
pub fn step(room: &Room) -> Option<(&Selection, Spanned<Length>)> {
    let trays = settled(room, Kind::ShowerTray).filter(|(_, tray)| !Mention::Recessed.is_in(tray.mount_words()));
    let heights = trays.filter_map(|(selection, tray)| {
        let height = tray.size.height.spanned()?;
        let high: Length = height.value.most.or(height.value.least)?;
        Some((selection, Spanned::new(high, height.span)))
    });
    heights.max_by_key(|(_, step)| step.value)
}
