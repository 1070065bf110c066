//! Clear distances of a kitchen: aisles, the triangle, counter.

use crate::book::{ClearDistance, End, Frontage, Room, Stretch};
use crate::site::plan::{Aisle, HoleIs, Plan, RowOf, Thing, What};
use crate::site::{Placement, Site};
use crate::units::{Length, Phrase, phrase};
use crate::vocabulary::{Kind, Mention, Trait};

use super::{Distance, least};

/// The aisles in which one works, or the ways along which one only passes, with what to call each: the
/// one measured, else each of the plan of a room where one cooks.
pub fn aisles(site: &Site<'_>, room: &Room, work: bool) -> Vec<(Phrase, Distance)> {
    let aisle = if work { ClearDistance::WorkAisle } else { ClearDistance::Walkway };
    if let Some(written) = room.clearances.distances.least(aisle) {
        return vec![(phrase!("the {aisle}", aisle), written.into())];
    }
    if !work && is_gone_through(site, room) {
        return past_what_stands_there(site, room);
    }
    let Some(plan) = site.sound_plan(room).filter(|plan| cooks(plan)) else { return vec![] };
    let aisles = plan.aisles().into_iter().filter(|aisle| aisle.is_for_work() == work);
    let told = aisles.map(|between| {
        let name = phrase!("the {aisle} between `{}` and `{}`", aisle, between.from.name, between.to.name(plan));
        (name, Distance::planned(between.wide, between.from.span))
    });
    told.collect()
}

/// What is written of an aisle may be so much more than the plan leaves: 2 in (common practice: doors and handles
/// across).
const WRITTEN_PAST_THE_PLAN: Length = Length::from_inches(2);

/// An aisle for work as it would be with an option that can still be taken.
#[derive(Clone, Copy, Debug)]
pub struct AisleWith<'a> {
    /// The option at its opening.
    pub with: Placement<'a>,
    /// How wide it would be.
    pub wide: Distance,
    /// Whether a wider one is written, which then is not so.
    pub is_written_wider: bool,
}

/// The aisles for work before what is still to be chosen, with each option whose door stands out past all else there:
/// the others are those of [`aisles`].
pub fn aisles_with_options<'a>(site: &Site<'a>, room: &Room) -> Vec<AisleWith<'a>> {
    let Some(plan) = site.sound_plan(room).filter(|plan| cooks(plan)) else { return vec![] };
    let written = room.clearances.distances.least(ClearDistance::WorkAisle).map(|written| written.value);
    let open = site.fitted_in(room).filter(|fitted| !fitted.is_settled());
    let aisles = plan.aisles();
    let told = open.filter_map(|with| {
        let thing = plan.opening(with.opening)?;
        let front = plan.front_with(thing, Some(with.option));
        if front <= plan.front(thing) {
            return None;
        }
        // Between the same sides it may be as narrow already, which is told of the room.
        let is_there = |aisle: &Aisle<'_, '_>| {
            let both = [Some(aisle.from), aisle.to.thing()];
            aisle.is_for_work() && both.into_iter().flatten().any(|one| one.stands == thing.stands)
        };
        let there = aisles.iter().filter(|aisle| is_there(aisle)).map(|aisle| aisle.wide).min();
        let wide = plan.aisle_before(thing, front).filter(|wide| there.is_none_or(|there| *wide < there))?;
        let is_written_wider = written.is_some_and(|written| written > wide + WRITTEN_PAST_THE_PLAN);
        let counts = written.is_none() || is_written_wider;
        counts.then(|| AisleWith { with, wide: Distance::planned(wide, thing.span), is_written_wider })
    });
    told.collect()
}

/// A room no wider than that, with a doorway at either end, is gone through whatever it is called (common practice).
const HALL: Length = Length::from_inches(72);

/// Whether a room is there to be gone through: by its name or, narrow and with two doorways, by its plan. What one
/// washes or cooks in is not, whatever it is called: its floor has rules of its own.
fn is_gone_through(site: &Site<'_>, room: &Room) -> bool {
    let is_used =
        |kind: Kind| kind == Kind::Toilet || kind == Kind::Basin || kind.is(Trait::Bathes) || kind.is(Trait::Cooks);
    let chosen = room.selections.iter().filter_map(|selection| selection.kind.get());
    let set_out = room.fixtures.iter().filter_map(|fixture| fixture.takes.get());
    let openings = room.openings.iter().filter_map(|opening| opening.takes.get());
    if chosen.chain(set_out).chain(openings).any(|kind| is_used(*kind)) {
        return false;
    }
    let is_narrow = |plan: &Plan<'_>| {
        let shortest = plan.walls.iter().map(|wall| wall.frame.length()).min();
        let doorways = plan.holes.iter().filter(|hole| matches!(hole.is, HoleIs::Door(_))).count();
        doorways > 1 && shortest.is_some_and(|wide| wide <= HALL)
    };
    Mention::Hall.is_in(room.name.text()) || site.sound_plan(room).is_some_and(is_narrow)
}

/// The ways along a hall: past each thing that stands there, to the wall or the thing across.
fn past_what_stands_there(site: &Site<'_>, room: &Room) -> Vec<(Phrase, Distance)> {
    let named = |name: &str| phrase!("the way past `{name}`", name);
    let openings = room.openings.iter().filter_map(|opening| {
        let free = opening.in_front.spanned()?;
        Some((named(&opening.name), Distance::from(free)))
    });
    let mut all: Vec<(Phrase, Distance)> = openings.collect();
    let Some(plan) = site.sound_plan(room) else { return all };
    let mut rows = Vec::new();
    for thing in plan.things.iter().filter(|thing| thing.is_in_the_way() && thing.out.1 > thing.out.0) {
        let is_told = thing.opening.is_some_and(|opening| !opening.in_front.is_absent())
            || thing.row.is_some_and(|row| rows.contains(&row));
        let Some(clear) = plan.clear_before(thing).filter(|_| !is_told) else { continue };
        rows.extend(thing.row);
        all.push((named(thing.name), Distance::planned(clear.distance, thing.span)));
    }
    all
}

fn cooks(plan: &Plan<'_>) -> bool {
    plan.things.iter().any(|thing| thing.has(Trait::Cooks))
}

/// A distance of the kitchen that follows from the plan.
pub fn planned<'a>(plan: &Plan<'a>, name: ClearDistance) -> Option<Distance> {
    match name {
        ClearDistance::WorkAisle if cooks(plan) => {
            let aisles = plan.aisles().into_iter().filter(crate::site::plan::Aisle::is_for_work);
            least(aisles.map(|aisle| Distance::planned(aisle.wide, aisle.from.span)))
        }
        ClearDistance::DishwasherToSink => {
            let washers = plan.things.iter().filter(|thing| thing.has(Trait::WashesDishes));
            let to_sink = |washer: &Thing<'a>| {
                least(plan.of_kind(Kind::Sink).map(|sink| Distance::planned(plan.apart(washer, sink), washer.span)))
            };
            least(washers.filter_map(to_sink))
        }
        _ => None,
    }
}

/// The ways between sink, cooking and refrigerator.
#[derive(Clone, Copy, Debug)]
pub struct Triangle {
    /// From sink to cooking, on to the refrigerator, and back.
    pub legs: [Option<Distance>; 3],
    /// How far a way cuts across an island.
    pub cut: Option<Distance>,
}

/// The triangle as written, each leg that is not from the plan.
pub fn triangle(site: &Site<'_>, room: &Room) -> Triangle {
    let none = crate::book::Triangle::default();
    let written = room.clearances.triangle.get().unwrap_or(&none);
    let legs = [&written.sink_to_cooking, &written.cooking_to_refrigerator, &written.refrigerator_to_sink];
    let mut triangle = Triangle {
        legs: legs.map(|leg| leg.spanned().map(Distance::from)),
        cut: written.cuts_into_island.spanned().map(Distance::from),
    };
    let Some(plan) = site.sound_plan(room) else { return triangle };
    let cleanup = |thing: &&Thing<'_>| {
        let landing = thing.opening.and_then(|opening| opening.landing.get());
        thing.is(Kind::Sink) && landing.is_none_or(|landing| landing.second_sink.get() != Some(&true))
    };
    let sink = plan.things.iter().find(cleanup);
    let cooking = plan.things.iter().find(|thing| thing.has(Trait::Cooks));
    let cold = plan.with(Trait::Cools).next();
    let mut cuts = Vec::new();
    for (leg, (from, to)) in triangle.legs.iter_mut().zip([(sink, cooking), (cooking, cold), (cold, sink)]) {
        let (Some(from), Some(to)) = (from, to) else { continue };
        let way = plan.way(from, to);
        let islands = way.crosses.iter().filter(|(thing, _)| matches!(thing.what, What::Island(_)));
        cuts.extend(islands.map(|(island, through)| Distance::planned(*through, island.span)));
        leg.get_or_insert(Distance::planned(way.length, from.span));
    }
    triangle.cut = triangle.cut.or_else(|| cuts.into_iter().max_by_key(|cut| cut.value));
    triangle
}

/// Length and depth of the longest counter beside a sink.
pub fn preparation(site: &Site<'_>, room: &Room) -> Option<(Distance, Distance)> {
    if let Some(written) = super::rectangle(room, ClearDistance::PreparationCounter) {
        let (length, depth) = written.value;
        return Some((Distance::written(length, written.span), Distance::written(depth, written.span)));
    }
    let plan = site.sound_plan(room).filter(|plan| cooks(plan))?;
    let beside = plan.of_kind(Kind::Sink).flat_map(|sink| {
        [End::Left, End::Right].map(|end| {
            let counter = plan.row_of(sink)?.counter?;
            let landing = plan.landing(sink, end)?;
            let length = landing.counter + landing.around_corner.unwrap_or_default();
            Some((Distance::planned(length, sink.span), Distance::planned(counter.depth(), sink.span)))
        })
    });
    let all: Option<Vec<_>> = beside.collect();
    all?.into_iter().max_by_key(|(length, depth)| (depth.value >= Length::from_inches(24), length.value))
}

/// Counter that can be worked at, counted where it is deep enough and free enough above: its length in
/// all, and how much was left out; `enough` says whether a length is at least what is advised. From the plan, where every run is known and no island adds to it.
pub fn frontage(
    site: &Site<'_>,
    room: &Room,
    deep: Length,
    free: Length,
    enough: impl Fn(Length, Length) -> bool,
) -> Option<(Distance, Length)> {
    let counts = |least: Length, there: Option<Length>| there.is_none_or(|there| enough(there, least));
    let Some(written) = room.clearances.frontage.spanned() else {
        let plan = site.sound_plan(room).filter(|plan| cooks(plan))?;
        // A plan without its sink is not all of a kitchen yet.
        plan.of_kind(Kind::Sink).next()?;
        let run = plan.rows.iter().find(|row| matches!(row.of, RowOf::Run(_)))?;
        if !room.islands.is_empty() || plan.rows.iter().any(|row| !row.is_whole) {
            return None;
        }
        let (counted, left_out): (Vec<_>, Vec<_>) = plan
            .stretches()
            .into_iter()
            .partition(|one| counts(deep, Some(one.depth)) && counts(free, one.clear_above));
        let sum =
            |pieces: Vec<crate::site::plan::Stretch<'_, '_>>| -> Length { pieces.iter().map(|one| one.length()).sum() };
        return Some((Distance::planned(sum(counted), run.of.span()), sum(left_out)));
    };
    let (counted, left_out) = match &written.value {
        Frontage::InAll(length) => (*length, Length::ZERO),
        Frontage::Stretches(stretches) => {
            let (counted, left_out): (Vec<_>, Vec<_>) = stretches.iter().partition(|one| {
                counts(deep, one.depth.get().copied()) && counts(free, one.clear_above.get().copied())
            });
            let sum = |pieces: Vec<&Stretch>| pieces.into_iter().map(|one| one.length).sum();
            (sum(counted), sum(left_out))
        }
    };
    Some((Distance::written(counted, written.span), left_out))
}
