//! What is written of an opening, against its row, its cabinet, the plan and the ceiling.

use crate::book::{Ceiling, Neighbour, Opening, Plainly, Room, Slot};
use crate::site::cabinet::{housed_in_a_cabinet, outside_width, spot_of};
use crate::site::fitting::{Side, flank};
use crate::site::plan::{Plan, Thing, What};
use crate::site::told::{Answer, Provenance, SourcedFigure, Spot};
use crate::site::{counter_depth, counter_height};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Mention;
use crate::vocabulary::supply::Worded;

use super::{ComparedValue, Differ, Joined, TOLERANCE, Twice, differing};

/// A ceiling's height may differ by so much: 1 in, since no ceiling is level (common practice).
const CEILINGS: Length = Length::from_inches(1);

/// A wall beside may be told to be so much farther than the plan has it: 2 in (common practice: a room that is out of
/// square). Nearer than by the plan, it takes nothing for granted.
const WALLS: Length = Length::from_inches(2);

/// Where nothing is told to be at a side, no wall is nearer than this (common practice: a hand finds room).
const NOTHING_IS_NEARER: Length = Length::from_inches(6);

/// What is written of an opening, and of the row, the cabinet and the plan around it.
pub(super) fn of_opening<'a>(room: &'a Room, opening: &'a Opening, plan: Option<&Plan<'a>>) -> Vec<Twice<'a>> {
    let differing = |what, answer: Answer<'a>| differing(&opening.name, what, &answer, TOLERANCE);
    let part = part_itself(room, opening);
    let sizes = [
        ("the width", Answer::of([of_readings(opening, &opening.width), part.and_then(|part| part.0)])),
        ("the depth", Answer::of([of_readings(opening, &opening.depth), part.and_then(|part| part.1)])),
        ("the counter height", counter_height(room, opening)),
        ("the counter depth", counter_depth(room, opening)),
        ("the outside width of the cabinet", outside_width(room, opening)),
        ("the sill", sill(room, opening)),
    ];
    let mut all: Vec<Twice<'a>> = sizes.into_iter().filter_map(|(what, answer)| differing(what, answer)).collect();
    all.extend(heights_of_services(opening));
    all.extend(inside_out(room, opening));
    all.extend(plan.and_then(|plan| above(opening, plan)));
    all.extend(ceiling_above(room, opening));
    all.extend([Side::Left, Side::Right].into_iter().filter_map(|side| to_the_wall(room, opening, plan, side)));
    all
}

/// How high a service comes out, as its words say and as its point has it.
fn heights_of_services(opening: &Opening) -> Vec<Twice<'_>> {
    let (Some(points), service) = (opening.points.get(), &opening.service) else { return vec![] };
    let of_words = [
        ("the height of the drain", in_words(&service.drain, |drain| drain.pipe.height), &points.drain),
        ("the height of the water", in_words(&service.water, |water| water.height), &points.water),
        ("the height of the power", in_words(&service.power, |power| power.height), &points.power),
        ("the height of the gas", in_words(&service.gas, |gas| gas.height), &points.gas),
    ];
    let told = of_words.into_iter().filter_map(|(what, words, point)| {
        let point = point.get().and_then(|point| point.height.spanned());
        let point = point.map(|told| SourcedFigure::written(told, Spot::ServicePoints));
        let spot = Spot::Service;
        let words = words.map(|(value, at)| SourcedFigure { value, at, provenance: Provenance::Written, spot });
        differing(&opening.name, what, &Answer::of([point, words]), TOLERANCE)
    });
    told.collect()
}

fn in_words<T>(slot: &Slot<Worded<T>>, height: impl Fn(&T) -> Option<Length>) -> Option<(Length, Span)> {
    let told = slot.spanned()?;
    Some((height(&told.is)?, told.span))
}

/// The least reading of an opening, as measured or as written.
fn of_readings<'a>(opening: &'a Opening, readings: &Slot<crate::vocabulary::Readings>) -> Option<SourcedFigure<'a>> {
    let least = readings.get()?.least()?;
    let provenance = if opening.measured.get().is_some() { Provenance::Measured } else { Provenance::Written };
    Some(SourcedFigure { provenance, ..SourcedFigure::written(least, Spot::Opening(&opening.name)) })
}

/// Width and depth that a row gives the opening that stands in it.
fn part_itself<'a>(
    room: &'a Room,
    opening: &Opening,
) -> Option<(Option<SourcedFigure<'a>>, Option<SourcedFigure<'a>>)> {
    let holder = room.part_of(&opening.name)?;
    let run = holder.run.map(|run| Spot::Run(&run.name));
    let row = run.or_else(|| holder.island.map(|island| Spot::Island(&island.name)))?;
    let told = |slot: &Slot<Length>| slot.spanned().map(|told| SourcedFigure::planned(told, row));
    Some((told(&holder.part.width), told(&holder.part.depth)))
}

/// How far its bottom is above the finished floor.
fn sill<'a>(room: &'a Room, opening: &'a Opening) -> Answer<'a> {
    let written = opening.sill.spanned().map(|told| SourcedFigure::written(told, Spot::Opening(&opening.name)));
    let fixture = room.fixtures.iter().find(|fixture| fixture.opening.get() == Some(&opening.name.value));
    let fixture =
        fixture.and_then(|fixture| Some(SourcedFigure::planned(fixture.sill.spanned()?, Spot::Fixture(&fixture.name))));
    Answer::of([written, fixture])
}

/// An inside that is larger than the cabinet is outside.
fn inside_out<'a>(room: &'a Room, opening: &'a Opening) -> Vec<Twice<'a>> {
    let Some(cabinet) = opening.cabinet.get() else { return vec![] };
    let spot = Spot::CabinetOf(&opening.name);
    let holder = housed_in_a_cabinet(room, opening);
    let planned = |slot: &Slot<Length>| Some(SourcedFigure::planned(slot.spanned()?, spot_of(holder.as_ref()?)));
    let part = holder.map(|holder| holder.part);
    let depth = part.and_then(|part| planned(&part.depth)).or_else(|| {
        let of_run =
            holder?.run.and_then(|run| Some(SourcedFigure::planned(run.depth.spanned()?, Spot::Run(&run.name))));
        let island = holder?.island;
        of_run
            .or_else(|| island.and_then(|it| Some(SourcedFigure::planned(it.depth.spanned()?, Spot::Island(&it.name)))))
    });
    let pairs = [
        ("the inside width of the cabinet", &cabinet.inside_width, outside_width(room, opening).best().copied()),
        ("the inside depth of the cabinet", &cabinet.inside_depth, depth),
        ("the inside height of the cabinet", &cabinet.inside_height, part.and_then(|part| planned(&part.height))),
    ];
    let larger = pairs.into_iter().filter_map(|(what, inside, outside)| {
        let (inside, outside) = (SourcedFigure::written(inside.spanned()?, spot), outside?);
        let wrong = inside.value > outside.value;
        wrong.then(|| Twice::of(&opening.name, what, (inside, outside), Differ::InsideOut))
    });
    larger.collect()
}

/// What the opening says of the wall beside it, against where row and plan put that wall, past fillers and panels; and
/// of anything else there, that would stand in that wall, or of nothing where the wall is.
fn to_the_wall<'a>(room: &'a Room, opening: &'a Opening, plan: Option<&Plan<'a>>, side: Side) -> Option<Twice<'a>> {
    let said = side.of(opening).spanned()?;
    let plan = plan.filter(|plan| plan.is_sound());
    let there = flank(room, plan, opening, side).filter(|there| there.is_built)?;
    let (provenance, spot) = (Provenance::Plan, Spot::ByThePlan("wall"));
    let planned = SourcedFigure { value: there.gap, at: there.span, provenance, spot };
    if said.is_nothing() {
        let spot = Spot::Opening(&opening.name);
        let counts = SourcedFigure { value: "nothing", at: said.span, provenance: Provenance::Written, spot };
        let what = if side == Side::Left { "what is at the left" } else { "what is at the right" };
        let near = planned.value < NOTHING_IS_NEARER;
        return near.then(|| Twice {
            joined: Joined::Of,
            about: &opening.name,
            what,
            counts: counts.map(ComparedValue::Word),
            differs: planned.map(ComparedValue::Length),
            how: Differ::Apart,
            decides_a_fit: true,
        });
    }
    let written = SourcedFigure::written(said.gap.spanned()?, Spot::Opening(&opening.name));
    let what = match (side, is_a_wall(said)) {
        (Side::Left, true) => "the gap to the wall at the left",
        (Side::Right, true) => "the gap to the wall at the right",
        (Side::Left, false) => "the gap at the left",
        (Side::Right, false) => "the gap at the right",
    };
    (written.value > planned.value + WALLS).then(|| Twice::of(&opening.name, what, (written, planned), Differ::Apart))
}

/// A wall, and no trim or corner of it that may stand nearer.
fn is_a_wall(said: &Neighbour) -> bool {
    said.plainly() == Some(Plainly::Wall)
        || (Mention::Wall.is_in(&said.what)
            && !Mention::Furniture.is_in(&said.what)
            && !Mention::Tall.is_in(&said.what))
}

/// What the opening says of its `above`, against the lowest thing that the plan hangs over it.
fn above<'a>(opening: &'a Opening, plan: &Plan<'a>) -> Option<Twice<'a>> {
    let written = opening.above.get().filter(|above| !above.is_nothing() && !is_ceiling(above))?.height.spanned()?;
    let own = plan.opening(opening)?;
    let over: Vec<&Thing<'a>> = plan.things.iter().filter(|thing| hangs_over(thing, own)).collect();
    // Of what hangs one over the other, the opening may name any.
    let agrees = |thing: &&Thing<'a>| (thing.low - written.value).abs() <= TOLERANCE;
    if over.iter().any(agrees) {
        return None;
    }
    let lowest = over.into_iter().min_by_key(|thing| thing.low)?;
    let spot = match lowest.row.and_then(|row| plan.rows.get(row)) {
        Some(row) => Spot::Part(lowest.name, row.of.name()),
        None => Spot::Opening(lowest.name),
    };
    let differs = SourcedFigure { value: lowest.low, at: lowest.span, provenance: Provenance::Plan, spot };
    let counts = SourcedFigure::written(written, Spot::Opening(&opening.name));
    Some(Twice::of(&opening.name, "the lower edge of what is above", (counts, differs), Differ::Apart).at_it())
}

/// Whether a thing hangs over the better part of another that stands at the same wall.
fn hangs_over(thing: &Thing<'_>, own: &Thing<'_>) -> bool {
    let shared = thing.along.1.min(own.along.1) - thing.along.0.max(own.along.0);
    let is_above = thing.low > own.high.unwrap_or(own.low) && thing.low > own.low;
    thing.stands == own.stands
        && is_above
        && shared > own.width().half()
        && !matches!(thing.what, What::Island(_))
        && !thing.is_closure()
}

fn is_ceiling(above: &Neighbour) -> bool {
    above.plainly() == Some(Plainly::Ceiling)
}

/// A ceiling that is named above an opening, against a level room's own.
fn ceiling_above<'a>(room: &'a Room, opening: &'a Opening) -> Option<Twice<'a>> {
    let above = opening.above.get().filter(|above| is_ceiling(above))?.height.spanned()?;
    let answer = Answer::of([Some(SourcedFigure::written(above, Spot::Opening(&opening.name))), level_ceiling(room)]);
    differing(&opening.name, "the ceiling", &answer, CEILINGS)
}

fn level_ceiling(room: &Room) -> Option<SourcedFigure<'_>> {
    let ceiling = room.ceiling.spanned()?;
    match ceiling.value {
        Ceiling::Level(value) => {
            Some(SourcedFigure { value, at: ceiling.span, provenance: Provenance::Plan, spot: Spot::Room })
        }
        Ceiling::Sloped { .. } => None,
    }
}
