//! Clear distances: as they are written, and as the plan leaves them.

use crate::book::{ClearDistance, Opening, Room, Window};
use crate::site::Site;
use crate::site::distances::{self, before_its_entry, in_front_of, less_than_written, over_the_shower};
use crate::site::plan::{Clear, Met, Plan, Thing, What, chosen_for};
use crate::site::rims::rim_by_its_place;
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::site::water::from_water;
use crate::units::Length;
use crate::vocabulary::{Kind, Mount};

use super::{Differ, TOLERANCE, Twice};

/// What is written may be so much more than the plan leaves: 2 in (common practice: doors and handles
/// across, and a room that is out of square).
const ROOMS: Length = Length::from_inches(2);
/// The floor in front may be told so differently in two places: 1 in (common practice).
const FLOORS: Length = Length::from_inches(1);

/// Distances that a plan cannot have, by their names, with what they are.
const PLANNED: [(ClearDistance, &str); 6] = [
    (ClearDistance::WorkAisle, "the work aisle"),
    (ClearDistance::ToiletToSide, "the way from the toilet's centre to its side"),
    (ClearDistance::ToiletToNextFixture, "the way from the toilet's centre to the next fixture"),
    (ClearDistance::BasinToSide, "the way from the basin's centre to its side"),
    (ClearDistance::BasinToBasin, "the way from basin to basin"),
    (ClearDistance::DishwasherToSink, "the way from dishwasher to sink"),
];

/// On less floor than this nobody stands: 20 in (common practice).
const STOOD_ON: Length = Length::from_inches(20);

/// Floors before the fixtures of a bath, by their names, with what they are; a shower may be entered from another side.
const IN_FRONT: [(ClearDistance, &str); 4] = [
    (ClearDistance::InFrontOfToilet, "the floor in front of the toilet"),
    (ClearDistance::InFrontOfBidet, "the floor in front of the bidet"),
    (ClearDistance::InFrontOfBasin, "the floor in front of the basin"),
    (ClearDistance::InFrontOfTub, "the floor in front of the tub"),
];

/// Headrooms, by their names, with what they are.
const HEADROOMS: [(ClearDistance, &str); 4] = [
    (ClearDistance::HeadroomAtShower, "the headroom at the shower"),
    (ClearDistance::HeadroomAtToilet, "the headroom at the toilet"),
    (ClearDistance::HeadroomAtBasin, "the headroom at the basin"),
    (ClearDistance::HeadroomAtTub, "the headroom at the tub"),
];
/// What of a shower reaches up, with how far past the ceiling it may be told: a head hangs below it, and tile that goes
/// up to it may be told from a floor that lies lower (common practice).
const REACHES_UP: [(ClearDistance, &str, Length); 2] = [
    (ClearDistance::ShowerHead, "the height of the shower head", Length::ZERO),
    (ClearDistance::ShowerWallCovering, "the height of the shower's wall covering", ROOMS),
];

/// Distances of a room that two places tell differently.
pub(super) fn of_room<'a>(site: &'a Site<'a>, room: &'a Room) -> Vec<Twice<'a>> {
    let mut all: Vec<Twice<'a>> = room.openings.iter().filter_map(|one| in_front(site, room, one)).collect();
    all.extend(room.openings.iter().filter_map(|one| deeper_than_its_room(site, room, one)));
    all.extend(
        [Kind::Toilet, Kind::Basin, Kind::Bathtub, Kind::ShowerSet].into_iter().filter_map(|kind| before_a(room, kind)),
    );
    all.extend(doorways(room));
    all.extend(the_rim(room));
    all.extend(HEADROOMS.into_iter().filter_map(|(key, what)| under_the_ceiling(site, room, key, what)));
    all.extend(REACHES_UP.into_iter().filter_map(|reaches| past_the_ceiling(site, room, reaches)));
    if let Some(plan) = site.sound_plan(room) {
        all.extend(room.windows.iter().filter_map(|window| from_the_water(plan, window)));
        all.extend(PLANNED.into_iter().filter_map(|(key, what)| past_the_plan(room, plan, key, what)));
        all.extend(IN_FRONT.into_iter().filter_map(|(key, what)| before_fixtures(room, plan, key, what)));
    }
    all
}

/// The floor before what stands in the plan of a bath, as `clearances` tells it, where that is more than the plan leaves.
fn before_fixtures<'a>(
    room: &'a Room,
    plan: &'a Plan<'a>,
    key: ClearDistance,
    what: &'static str,
) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(room.clearances.distances.least(key)?, Spot::Clearances);
    let of_kind = |thing: &&Thing<'a>| thing.kind.and_then(in_front_of) == Some(key);
    let each =
        plan.things.iter().filter(of_kind).filter_map(|own| Some((floor_before(room, plan, own)?.distance, own)));
    let (value, own) = each.min_by_key(|(distance, _)| *distance)?;
    let planned = SourcedFigure { value, at: own.span, provenance: Provenance::Plan, spot: Spot::Plan };
    (written.value > planned.value + ROOMS)
        .then(|| Some(Twice::of(room.name.spanned()?, what, (written, planned), Differ::Apart).asked()))?
}

/// The floor before a thing: from the front of the shallowest that may be chosen for it, where that stands back in its
/// place.
fn floor_before<'p, 'a>(room: &Room, plan: &'p Plan<'a>, own: &Thing<'a>) -> Option<Clear<'p, 'a>> {
    let own = Some(own).filter(|own| own.out.1 > own.out.0)?;
    let of_fixture = match own.what {
        What::Fixture(fixture) => chosen_for(room, fixture),
        _ => None,
    };
    let chosen = own.opening.into_iter().flat_map(|opening| room.goes_into(&opening.name)).chain(of_fixture);
    let bodies = chosen.flat_map(|one| one.standing());
    let shallow = bodies.filter_map(|option| option.size.depth.get()).min();
    let front = shallow.map_or(own.out.1, |deep| own.out.1.min(own.out.0 + *deep));
    before_its_entry(plan, own).or_else(|| plan.clear_before_its_middle(own, front))
}

/// More floor before an opening than the plan leaves before its better part.
fn in_front<'a>(site: &'a Site<'a>, room: &'a Room, opening: &'a Opening) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(opening.in_front.spanned()?, Spot::Opening(&opening.name));
    let plan = site.sound_plan(room)?;
    let own = plan.opening(opening)?;
    let clear = floor_before(room, plan, own)?;
    // In a closet nobody stands: the floor is that before its door.
    let is_closet = matches!(clear.to, Met::Wall(wall) if plan.has_a_door_before(own, wall));
    if is_closet && clear.distance < STOOD_ON {
        return None;
    }
    let (name, at) = match clear.to {
        Met::Thing(thing) => (thing.name, thing.span),
        Met::Wall(_) => ("wall", own.span),
    };
    let planned =
        SourcedFigure { value: clear.distance, at, provenance: Provenance::Plan, spot: Spot::ByThePlan(name) };
    (written.value > planned.value + ROOMS)
        .then(|| Twice::of(&opening.name, "the floor in front", (written, planned), Differ::Apart))
}

/// An opening that is deeper than there is from its back to the wall across.
fn deeper_than_its_room<'a>(site: &'a Site<'a>, room: &'a Room, opening: &'a Opening) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(opening.depth.get()?.least()?, Spot::Opening(&opening.name));
    let plan = site.sound_plan(room)?;
    let own = plan.opening(opening)?;
    let Clear { distance, to: Met::Wall(wall), .. } = plan.to_the_wall_before(own, own.out.0)? else { return None };
    let in_it = distance > Length::ZERO && !plan.has_a_door_before(own, wall);
    let value = Some(distance).filter(|_| in_it)?;
    let planned = SourcedFigure { value, at: own.span, provenance: Provenance::Plan, spot: Spot::Plan };
    (written.value > planned.value + ROOMS)
        .then(|| Twice::of(&opening.name, "the depth", (written, planned), Differ::Apart).asked())
}

/// The floor before all that takes a kind: at the openings, and among the clear distances.
fn before_a(room: &Room, kind: Kind) -> Option<Twice<'_>> {
    let told = SourcedFigure::written(room.clearances.distances.least(in_front_of(kind)?)?, Spot::Clearances);
    let takes = || room.openings.iter().filter(|opening| opening.takes_a(kind));
    if takes().any(|opening| opening.in_front.is_absent()) {
        return None;
    }
    let opening = takes().min_by_key(|opening| opening.in_front.get().copied())?;
    let own = SourcedFigure::written(opening.in_front.spanned()?, Spot::Opening(&opening.name));
    // The one is taken from the thing's front, the other from the opening's.
    let body =
        room.goes_into(&opening.name).flat_map(|one| one.standing()).filter_map(|one| one.size.depth.get()).min();
    let between = body.zip(opening.governing_depth()).map_or(Length::ZERO, |(body, deep)| (deep - *body).abs());
    ((own.value - told.value).abs() > FLOORS + between)
        .then(|| Twice::of(&opening.name, "the floor in front", (own, told), Differ::Apart))
}

/// The rim of a room's only basin, as it is written and as counter, vanity or foot have it.
fn the_rim(room: &Room) -> Option<Twice<'_>> {
    let written = room.clearances.distances.least(ClearDistance::BasinHeight)?;
    let mut basins = room.selections.iter().filter(|one| one.is(Kind::Basin));
    let basin = basins.next().filter(|_| basins.next().is_none())?;
    // Of one that stands on its counter some tell the counter.
    let own = basin.settled().filter(|own| own.mount() != Some(Mount::OnCounter))?;
    let place = rim_by_its_place(room, basin, own)?;
    let written = SourcedFigure::written(written, Spot::Clearances);
    ((written.value - place.value).abs() > RIMS)
        .then(|| Twice::of(&basin.name, "the height of the rim", (written, place), Differ::Apart).asked())
}

/// The rim of a basin may be told so differently: 3/4 in (common practice: a top, and a floor that is still to come).
const RIMS: Length = Length::from_sixty_fourths(48);

/// A doorway that is clear for more than there is between its jambs.
fn doorways(room: &Room) -> impl Iterator<Item = Twice<'_>> {
    room.clearances.doorways.iter().filter_map(|doorway| {
        let door = room.doors.iter().find(|door| door.name.value == doorway.name.value)?;
        let between = SourcedFigure::planned(door.width.spanned()?, Spot::Doorway(&door.name));
        let clear = SourcedFigure::written(&doorway.value, Spot::Clearances);
        let how = Differ::MoreThan("the width between its jambs");
        (clear.value > between.value + TOLERANCE)
            .then(|| Twice::of(&door.name, "the clear width", (clear, between), how))
    })
}

/// A window that is farther from the water than the plan has it.
fn from_the_water<'a>(plan: &Plan<'a>, window: &'a Window) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(window.from_water.spanned()?, Spot::Window(&window.name));
    let (value, at) = from_water(plan, window)?;
    let planned = SourcedFigure { value, at, provenance: Provenance::Plan, spot: Spot::Plan };
    (written.value > planned.value + ROOMS)
        .then(|| Twice::of(&window.name, "the way to the water", (written, planned), Differ::Apart))
}

/// More than the plan leaves.
fn past_the_plan<'a>(room: &'a Room, plan: &Plan<'a>, key: ClearDistance, what: &'static str) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(room.clearances.distances.least(key)?, Spot::Clearances);
    let fact = distances::planned(plan, key)?;
    let planned = SourcedFigure { value: fact.value, at: fact.at, provenance: Provenance::Plan, spot: Spot::Plan };
    let name = room.name.spanned()?;
    (written.value > planned.value + ROOMS).then(|| Twice::of(name, what, (written, planned), Differ::Apart))
}

/// A headroom that is more than the ceiling leaves there.
fn under_the_ceiling<'a>(site: &Site<'a>, room: &'a Room, key: ClearDistance, what: &'static str) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(room.clearances.distances.least(key)?, Spot::Clearances);
    let there = less_than_written(site, room, key)?;
    let planned = SourcedFigure { value: there.value, at: there.at, provenance: Provenance::Plan, spot: Spot::Plan };
    Some(Twice::of(room.name.spanned()?, what, (planned, written), Differ::Apart).asked())
}

/// What of a shower is higher than the ceiling over it.
fn past_the_ceiling<'a>(
    site: &Site<'a>,
    room: &'a Room,
    (key, what, spare): (ClearDistance, &'static str, Length),
) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(room.clearances.distances.least(key)?, Spot::Clearances);
    let there = over_the_shower(site, room)?;
    let planned = SourcedFigure { value: there.value, at: there.at, provenance: Provenance::Plan, spot: Spot::Plan };
    let how = Differ::MoreThan("the ceiling over it");
    let name = room.name.spanned()?;
    (written.value > planned.value + spare).then(|| Twice::of(name, what, (written, planned), how).asked())
}
