//! Clear distances of a bath.

use crate::book::{ClearDistance, End, Fixture, Opening, Room};
use crate::site::plan::{Clear, Met, Plan, Thing, What, chosen_for};
use crate::site::rims::rim_of;
use crate::units::Length;
use crate::vocabulary::Kind;

use super::{Distance, least};

/// How far from a fixture's front one stands, for the headroom there (IRC P2705.1: 21" of floor).
const STANDS: Length = Length::from_inches(21);
/// How wide the entry of a tub or a shower is (IRC P2708.1.1, from memory: 22" clear).
const ENTRY: Length = Length::from_inches(22);
/// What is higher than this is tall beside a basin.
const TALL: Length = Length::from_inches(48);

/// A fixture that one stands before or in.
struct StoodAt {
    /// The kinds that stand for it.
    kinds: &'static [Kind],
    /// The clear floor in front of it.
    front: ClearDistance,
    /// The headroom there, where it is asked for.
    above: Option<ClearDistance>,
    /// How deep one is where nobody says it (common practice).
    usual_depth: Length,
    /// Whether one gets in over its side.
    entered: bool,
    /// Whether one stands in it.
    within: bool,
}

const FIXTURES: [StoodAt; 5] = [
    StoodAt {
        kinds: &[Kind::Toilet],
        front: ClearDistance::InFrontOfToilet,
        above: Some(ClearDistance::HeadroomAtToilet),
        usual_depth: Length::from_inches(27),
        entered: false,
        within: false,
    },
    StoodAt {
        kinds: &[Kind::Bidet],
        front: ClearDistance::InFrontOfBidet,
        above: None,
        usual_depth: Length::from_inches(24),
        entered: false,
        within: false,
    },
    StoodAt {
        kinds: &[Kind::Basin],
        front: ClearDistance::InFrontOfBasin,
        above: Some(ClearDistance::HeadroomAtBasin),
        usual_depth: Length::from_inches(18),
        entered: false,
        within: false,
    },
    StoodAt {
        kinds: &[Kind::Bathtub],
        front: ClearDistance::InFrontOfTub,
        above: Some(ClearDistance::HeadroomAtTub),
        usual_depth: Length::from_inches(30),
        entered: true,
        within: false,
    },
    // Whatever of a shower the plan has: its set, its tray or its glass.
    StoodAt {
        kinds: &[Kind::ShowerSet, Kind::ShowerTray, Kind::ShowerGlass],
        front: ClearDistance::InFrontOfShower,
        above: Some(ClearDistance::HeadroomAtShower),
        usual_depth: Length::from_inches(30),
        entered: true,
        within: true,
    },
];

impl StoodAt {
    fn is_of(&self, kind: Kind) -> bool {
        self.kinds.contains(&kind)
    }
}

/// The clear floor before a kind of fixture.
pub fn in_front_of(kind: Kind) -> Option<ClearDistance> {
    FIXTURES.iter().find(|known| known.is_of(kind)).map(|known| known.front)
}

/// Clear floor in front of a fixture, as the opening that takes it has it, less what stands out of it.
pub fn in_front_of_an_opening(room: &Room, name: ClearDistance) -> Option<Distance> {
    let known = FIXTURES.iter().find(|known| known.front == name)?;
    let takes = |opening: &&Opening| opening.takes.get().is_some_and(|kind| known.is_of(*kind));
    let openings = room.openings.iter().filter(takes);
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

/// The rims of a room's basins from the finished floor, as `clearances` says, else each by how it is set.
pub fn rims(room: &Room) -> Vec<Distance> {
    if let Some(written) = room.clearances.distances.least(ClearDistance::BasinHeight) {
        return vec![Distance::from(written)];
    }
    let basins = room.selections.iter().filter(|selection| selection.is(Kind::Basin));
    let options = basins.flat_map(|basin| basin.standing().iter().filter_map(move |one| rim_of(room, basin, one)));
    options.map(|rim| Distance { value: rim.value, at: rim.at, provenance: rim.provenance }).collect()
}

/// A distance of the bath that follows from the plan.
pub fn planned<'a>(plan: &Plan<'a>, name: ClearDistance) -> Option<Distance> {
    for known in &FIXTURES {
        let placed = || plan.things.iter().filter(|thing| thing.kind.is_some_and(|kind| known.is_of(kind)));
        if name == known.front {
            return least(placed().filter_map(|thing| in_front(plan, thing, known)));
        }
        if Some(name) == known.above {
            let over = placed().filter_map(|thing| headroom(plan, thing, known));
            return least(over.chain(without_a_size(plan, known)));
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

/// A fixture whose depth nobody knows has no front. A tub or a shower is entered where there is the most floor before
/// it: what stands beside its entry has a rule of its own.
fn in_front<'a>(plan: &Plan<'a>, thing: &Thing<'a>, known: &StoodAt) -> Option<Distance> {
    let own = Some(thing).filter(|own| own.out.1 > own.out.0)?;
    let clear = if known.entered { before_its_entry(plan, own) } else { plan.clear_before(own) };
    Some(Distance::planned(clear?.distance, own.span))
}

/// The floor before the stretch of a tub or a shower at which one gets in; none of another thing.
pub fn before_its_entry<'p, 'a>(plan: &'p Plan<'a>, thing: &Thing<'a>) -> Option<Clear<'p, 'a>> {
    let is_entered = thing.kind.is_some_and(|kind| FIXTURES.iter().any(|known| known.entered && known.is_of(kind)));
    if is_entered { plan.clear_before_its_best(thing, ENTRY) } else { None }
}

/// Over the floor in front of a fixture, and over all of a shower; one whose depth nobody knows is as deep as usual.
fn headroom<'a>(plan: &Plan<'a>, thing: &Thing<'a>, known: &StoodAt) -> Option<Distance> {
    let (back, front) = thing.out;
    let front = if front > back { front } else { back + known.usual_depth };
    let out = if known.within { (back, front) } else { (front, front + STANDS) };
    Some(Distance::planned(plan.ceiling_over(thing, out)?, thing.span))
}

/// The most headroom that is anywhere over the floor before a fixture, and over a tub; none where one of them has no size.
pub fn most_headroom(plan: &Plan<'_>, name: ClearDistance) -> Option<Distance> {
    let known = FIXTURES.iter().find(|known| known.above == Some(name))?;
    let placed = plan.things.iter().filter(|thing| thing.kind.is_some_and(|kind| known.is_of(kind)));
    let each = placed.map(|thing| {
        let from = if known.entered { thing.out.0 } else { thing.out.1 };
        let out = (from, thing.out.1 + STANDS);
        let is_deep = thing.out.1 > thing.out.0;
        Some(Distance::planned(is_deep.then(|| plan.most_ceiling_over(thing, out)).flatten()?, thing.span))
    });
    let each = each.collect::<Option<Vec<_>>>().filter(|_| without_a_size(plan, known).next().is_none())?;
    each.into_iter().max_by_key(|there| there.value)
}

/// The same of fixtures that stand on their centreline and have no width yet: over that line.
fn without_a_size<'p>(plan: &'p Plan<'_>, known: &'p StoodAt) -> impl Iterator<Item = Distance> + use<'p> {
    let is_of = |fixture: &&Fixture| kind_of(plan.room, fixture).is_some_and(|kind| known.is_of(kind));
    let is_placed =
        |fixture: &Fixture| plan.things.iter().any(|thing| matches!(thing.what, What::Fixture(own) if own == fixture));
    let fixtures = plan.room.fixtures.iter().filter(is_of).filter(move |fixture| !is_placed(fixture));
    fixtures.filter_map(move |fixture| {
        let frame = plan.walls.get(plan.wall_named(fixture.wall.get()?)?)?.frame;
        let centre = *fixture.centre.get()?;
        let centre = if fixture.from == End::Right { frame.length() - centre } else { centre };
        let back = fixture.off_wall.get().copied().unwrap_or_default();
        let front = back + known.usual_depth;
        let out = if known.within { [back, front] } else { [front, front + STANDS] };
        let least = out.iter().filter_map(|out| plan.ceiling_at(frame.at(centre, *out))).min()?;
        Some(Distance::planned(least, fixture.name.span))
    })
}

/// The kind of a fixture: its own word, else that of its opening or of what is chosen for it.
fn kind_of(room: &Room, fixture: &Fixture) -> Option<Kind> {
    let of_opening = || room.opening(fixture.opening.get()?)?.takes.get();
    let of_choice = || chosen_for(room, fixture)?.kind.get();
    fixture.takes.get().or_else(of_opening).or_else(of_choice).copied()
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
