//! Floor for a wheelchair as the plan leaves it: to turn on, and around a toilet.

use crate::book::{AccessDistance, End, Room, ShowerType};
use crate::site::plan::{Met, Plan, Thing, What};
use crate::units::Length;
use crate::vocabulary::Kind;

use super::Distance;

/// The clear floor around a toilet, from the wall at its side and from the one behind it (2010 ADA Standards 604.3.1).
const AROUND: (Length, Length) = (Length::from_inches(60), Length::from_inches(56));
/// The circle in which a chair turns (2010 ADA Standards 304.3.1).
const TURNS: Length = Length::from_inches(60);

/// A distance for access that follows from the plan of a bath.
pub fn planned(plan: &Plan<'_>, name: AccessDistance) -> Option<Distance> {
    at_most(plan, name, Length::ZERO).filter(|distance| is_short(name, distance.value) || is_drawn(plan))
}

/// The same, as far as what is asked or, where that is more, what is written of it: as what is drawn leaves it, whatever
/// else may stand there.
pub fn at_most(plan: &Plan<'_>, name: AccessDistance, written: Length) -> Option<Distance> {
    let toilet = plan.of_kind(Kind::Toilet).next()?;
    let space = |side: Length, rear: Length| around(plan, toilet, (AROUND.0.max(side), AROUND.1.max(rear)));
    match name {
        AccessDistance::TurningCircle => {
            let wide = plan.greatest_circle(TURNS.max(written), &|thing| leaves_room(plan.room, thing))?;
            Some(Distance::planned(wide, plan.room.outline.span()?))
        }
        AccessDistance::ToiletSpaceFromSideWall => space(written, Length::ZERO).map(|at| at.0),
        AccessDistance::ToiletSpaceFromRearWall => space(Length::ZERO, written).map(|at| at.1),
        _ => None,
    }
}

/// Whether that much is less than is asked: whatever else the plan may lack, it does not become more.
fn is_short(name: AccessDistance, value: Length) -> bool {
    match name {
        AccessDistance::TurningCircle => value < TURNS,
        AccessDistance::ToiletSpaceFromSideWall => value < AROUND.0,
        _ => value < AROUND.1,
    }
}

/// Whether everything that takes floor is in the plan.
fn is_drawn(plan: &Plan<'_>) -> bool {
    const TAKE_FLOOR: [Kind; 7] = [
        Kind::Toilet,
        Kind::Basin,
        Kind::Bathtub,
        Kind::ShowerTray,
        Kind::ShowerGlass,
        Kind::Cabinet,
        Kind::StorageFurniture,
    ];
    let room = plan.room;
    let is_in_it = |name: &str, place: Option<&String>| {
        let drawn = |thing: &Thing<'_>| match thing.what {
            What::Fixture(fixture) => fixture.selection.get().is_some_and(|own| own == name),
            _ => false,
        };
        let stands = |thing: &Thing<'_>| thing.opening.is_some_and(|own| Some(&own.name.value) == place);
        plan.things.iter().any(|thing| drawn(thing) || stands(thing))
    };
    let mut all = room.selections.iter().filter(|selection| selection.is_any(&TAKE_FLOOR));
    all.all(|selection| is_in_it(&selection.name.value, selection.place.get()))
}

/// What a chair goes under, or into: a basin on the wall, a shower to roll into; and what hangs flat on a wall.
fn leaves_room(room: &Room, thing: &Thing<'_>) -> bool {
    let rolls_in = room.access.shower_type.get() == Some(&ShowerType::RollIn);
    let shower = [Kind::ShowerSet, Kind::ShowerTray].iter().any(|kind| thing.is(*kind));
    let basin = thing.is(Kind::Basin) && thing.row.is_none();
    basin || (shower && rolls_in) || is_held_on_to(thing)
}

/// Bars, rails, paper holders and what else may reach into that floor (2010 ADA Standards 604.3.2, from memory).
fn is_held_on_to(thing: &Thing<'_>) -> bool {
    [Kind::GrabBar, Kind::Bar, Kind::Hook, Kind::Shelf, Kind::Mirror].iter().any(|kind| thing.is(*kind))
        || thing.out.1 <= thing.out.0
}

/// Clear floor around a toilet from the nearer wall at its side, and from the wall behind it: as much as is asked where
/// nothing stands in it. Of what does, the direction tells in which less is missing.
fn around(plan: &Plan<'_>, toilet: &Thing<'_>, wanted: (Length, Length)) -> Option<(Distance, Distance)> {
    let wall_at = |end: End| Some((end, plan.wall_beside(toilet, end)?));
    let walls = [End::Left, End::Right].into_iter().filter_map(wall_at);
    let (end, wall) = walls.min_by_key(|(_, wall)| (toilet.centre() - *wall).abs())?;
    let from_wall = |(first, last): (Length, Length)| if end == End::Left { first - wall } else { wall - last };
    let reach = if end == End::Left { (wall, wall + wanted.0) } else { (wall - wanted.0, wall) };
    let mut least = wanted;
    for (other, shape) in plan.on_the_floor() {
        let is_left_out = match other {
            Met::Thing(thing) => thing.is(Kind::Toilet) || is_held_on_to(thing),
            Met::Wall(_) => false,
        };
        let along = shape.beside(&toilet.frame, (Length::ZERO, wanted.1));
        let Some((along, out)) = along.zip(shape.within(&toilet.frame, reach)).filter(|_| !is_left_out) else {
            continue;
        };
        let (from_side, from_rear) = (from_wall(along), out.0);
        let is_beside_it = from_rear < toilet.out.1 && from_side <= from_wall(toilet.along);
        if is_beside_it || from_side >= wanted.0 || from_rear >= wanted.1 {
            continue;
        }
        if wanted.0 - from_side <= wanted.1 - from_rear {
            least.0 = least.0.min(from_side);
        } else {
            least.1 = least.1.min(from_rear);
        }
    }
    let told = |value| Distance::planned(value, toilet.span);
    Some((told(least.0), told(least.1)))
}
