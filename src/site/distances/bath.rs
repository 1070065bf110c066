//! Clear distances of a bath.

use crate::book::{ClearDistance, End, Opening, Room};
use crate::site::plan::{Met, Plan, Thing};
use crate::units::Length;
use crate::vocabulary::Kind;

use super::{Distance, least};

/// How far from a fixture's front one stands, for the headroom there (IRC P2705.1: 21" of floor).
const STANDS: Length = Length::from_inches(21);
/// What is higher than this is tall beside a basin.
const TALL: Length = Length::from_inches(48);

/// Fixtures that one stands before: the clear floor in front of each, and the headroom there.
const FIXTURES: [(Kind, ClearDistance, ClearDistance); 4] = [
    (Kind::Toilet, ClearDistance::InFrontOfToilet, ClearDistance::HeadroomAtToilet),
    (Kind::Basin, ClearDistance::InFrontOfBasin, ClearDistance::HeadroomAtBasin),
    (Kind::Bathtub, ClearDistance::InFrontOfTub, ClearDistance::HeadroomAtTub),
    (Kind::ShowerSet, ClearDistance::InFrontOfShower, ClearDistance::HeadroomAtShower),
];

/// The clear floor before a kind of fixture.
pub fn in_front_of(kind: Kind) -> Option<ClearDistance> {
    FIXTURES.iter().find(|(known, ..)| *known == kind).map(|(_, front, _)| *front)
}

/// Clear floor in front of a fixture, as the opening that takes it has it, less what stands out of it.
pub fn in_front_of_an_opening(room: &Room, name: ClearDistance) -> Option<Distance> {
    let (kind, ..) = FIXTURES.into_iter().find(|(_, front, _)| *front == name)?;
    let openings = room.openings.iter().filter(|opening| opening.takes_a(kind));
    least(openings.filter_map(|opening| {
        let free = opening.in_front.spanned()?;
        Some(Distance::written(free.value - stands_out(room, opening), free.span))
    }))
}

/// How far the deepest of what may be chosen stands out of its opening.
fn stands_out(room: &Room, opening: &Opening) -> Length {
    let bodies = room.goes_into(&opening.name).flat_map(|selection| selection.standing());
    let deepest = bodies.filter_map(|option| option.size.depth.get().copied()).max();
    let out = deepest.zip(opening.governing_depth()).map_or(Length::ZERO, |(body, deep)| body - deep);
    out.max(Length::ZERO)
}

/// A distance of the bath that follows from the plan.
pub fn planned<'a>(plan: &Plan<'a>, name: ClearDistance) -> Option<Distance> {
    for (kind, front, above) in FIXTURES {
        if name == front {
            return least(plan.of_kind(kind).filter_map(|thing| in_front(plan, thing)));
        }
        if name == above {
            let over = |thing| headroom(plan, thing, kind == Kind::ShowerSet);
            return least(plan.of_kind(kind).filter_map(over));
        }
    }
    let ends = [End::Left, End::Right];
    let of_ends = |kind: Kind, of: &dyn Fn(&Thing<'a>, End) -> Option<Length>| {
        let each =
            plan.of_kind(kind).flat_map(|thing| ends.map(|end| Some(Distance::planned(of(thing, end)?, thing.span))));
        least(each.flatten())
    };
    match name {
        ClearDistance::ToiletToSide => of_ends(Kind::Toilet, &|thing, end| Some(to_side(plan, thing, end)?.1)),
        ClearDistance::ToiletToNextFixture => {
            of_ends(Kind::Toilet, &|thing, end| Some(to_fixture(plan, thing, end)?.1))
        }
        ClearDistance::BasinToSide => of_ends(Kind::Basin, &|thing, end| {
            to_side(plan, thing, end).filter(|(met, _)| is_tall(met)).map(|(_, distance)| distance)
        }),
        ClearDistance::BasinToBasin => of_ends(Kind::Basin, &|thing, end| {
            to_fixture(plan, thing, end).filter(|(is_basin, _)| *is_basin).map(|(_, distance)| distance)
        }),
        _ => None,
    }
}

/// A fixture whose depth nobody knows has no front.
fn in_front<'a>(plan: &Plan<'a>, thing: &Thing<'a>) -> Option<Distance> {
    let own = Some(thing).filter(|own| own.out.1 > own.out.0)?;
    Some(Distance::planned(plan.clear_before(own)?.distance, own.span))
}

/// Over the floor in front of a fixture, and over all of a shower.
fn headroom<'a>(plan: &Plan<'a>, thing: &Thing<'a>, within: bool) -> Option<Distance> {
    let own = Some(thing).filter(|own| own.out.1 > own.out.0)?;
    let out = if within { own.out } else { (own.out.1, own.out.1 + STANDS) };
    Some(Distance::planned(plan.ceiling_over(own, out)?, own.span))
}

/// From a thing's centre to what stands beside it.
fn to_side<'a>(plan: &Plan<'a>, thing: &Thing<'a>, end: End) -> Option<(Beside, Length)> {
    let clear = plan.to_side(thing, end)?;
    let met = match clear.to {
        Met::Wall(_) => Beside::Wall,
        Met::Thing(other) => Beside::Thing(other.high),
    };
    Some((met, clear.distance))
}

/// What stands beside a fixture: a wall, or something so high.
enum Beside {
    Wall,
    Thing(Option<Length>),
}

fn is_tall(beside: &Beside) -> bool {
    match beside {
        Beside::Wall => true,
        Beside::Thing(high) => high.is_some_and(|high| high > TALL),
    }
}

/// From a thing's centre to the centre of the fixture beside it, and whether that is a basin.
fn to_fixture<'a>(plan: &Plan<'a>, thing: &Thing<'a>, end: End) -> Option<(bool, Length)> {
    let (other, distance) = plan.to_next_fixture(thing, end)?;
    Some((other.is(Kind::Basin), distance))
}
