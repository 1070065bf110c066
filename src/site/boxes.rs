//! Switches and outlets in the walls of a room, against what else is there.

use crate::book::{DoorHinge, DoorSwing, Doorway, PartIs, Room, WallBox};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

use super::counters::covers;
use super::plan::{Hole, HoleIs, Plan, RowOf, Stands, Thing, casing_width};

/// How far a single box reaches to each side of its centre, at least (common practice: 2" wide, or 60 mm round).
const HALF: Length = Length::from_inches(1);
/// How much farther with each device more (common practice: they are 1 13/16" or 71 mm apart).
const HALF_A_DEVICE: Length = Length::from_sixty_fourths(57);
/// How far one reaches up and down.
const HALF_HIGH: Length = Length::from_inches(1);
/// Whoever stands in a tub or a shower reaches so high, or a little more (common practice).
const REACHED: Length = Length::from_inches(90);
/// What is less deep is a pane or a set, and no place to stand in.
const THINNER: Length = Length::from_inches(12);
/// What stands no farther before a wall covers what is in it.
const BEFORE: Length = Length::from_inches(3);
/// What stands up so high behind a counter at most is an upstand, and no tiled wall (common practice).
const UPSTAND: Length = Length::from_inches(8);
/// So near to a jamb one looks for the switch of a room (common practice).
const AT_THE_JAMB: Length = Length::from_inches(12);

/// A switch or an outlet in its wall.
#[derive(Clone, Copy)]
pub struct SetBox<'a> {
    /// Its name.
    pub name: &'a str,
    /// Where it is written.
    pub span: Span,
    /// Its centre from the finished floor.
    pub height: Option<Length>,
    wall: usize,
    along: Length,
    half: Length,
    is_switch: bool,
}

/// What is wrong with its place.
#[derive(Clone, Copy)]
pub enum Misplaced<'a> {
    /// It is where a door or a window is.
    InAHole(&'a str, Span),
    /// It is where the trim around one is.
    InACasing(&'a str, Span),
    /// It is above the ceiling, which is so high there.
    AboveTheCeiling(Length),
    /// It is in the wall of a tub or a shower, within reach of whoever is in it.
    InTheWet(&'a str, Span),
    /// It is behind something that stands there.
    Behind(&'a str, Span),
    /// It is in what stands up behind the counter of a run, so high.
    InAnUpstand(&'a str, Length),
    /// Another is in its place.
    WithAnother(&'a str, Span),
    /// It is on the side that a door hangs on which swings into the room.
    BehindADoor(&'a str, Span),
}

/// Every switch and outlet of a room whose place is known, each with the worst that is wrong with it.
pub fn misplaced<'a>(plan: &'a Plan<'a>) -> Vec<(SetBox<'a>, Misplaced<'a>)> {
    let boxes = boxes(plan);
    let each = boxes.iter().enumerate().filter_map(|(number, one)| {
        let wrong = in_a_hole(plan, one)
            .or_else(|| above_the_ceiling(plan, one))
            .or_else(|| in_the_wet(plan, one))
            .or_else(|| behind(plan, one))
            .or_else(|| in_a_casing(plan, one))
            .or_else(|| in_an_upstand(plan, one))
            .or_else(|| with_another(one, boxes.get(..number)?))
            .or_else(|| behind_a_door(plan, one))?;
        Some((*one, wrong))
    });
    each.collect()
}

fn boxes<'a>(plan: &'a Plan<'a>) -> Vec<SetBox<'a>> {
    let is_switch = |one: &WallBox| plan.room.switches.iter().any(|switch| std::ptr::eq(switch, one));
    let set = plan.boxes.iter().filter_map(|placed| {
        let (Stands::Wall(wall), Some(along)) = (placed.stands, placed.along) else { return None };
        let more = HALF_A_DEVICE.times(i64::from(placed.of.holds().clamp(1, MOST_DEVICES)) - 1);
        Some(SetBox {
            name: &placed.of.name.value,
            span: placed.of.name.span,
            height: placed.of.height.get().copied(),
            wall,
            along,
            half: HALF + more,
            is_switch: is_switch(placed.of),
        })
    });
    set.chain(of_fixtures(plan)).collect()
}

/// More than are in any one box.
const MOST_DEVICES: u32 = 12;

/// Those that are set out as fixtures are, by their bottom and their height.
fn of_fixtures<'a>(plan: &'a Plan<'a>) -> impl Iterator<Item = SetBox<'a>> {
    let fixtures = plan.room.fixtures.iter().filter(|fixture| fixture.takes.get() == Some(&Kind::Outlet));
    fixtures.filter_map(|fixture| {
        let wall = plan.wall_named(fixture.wall.get()?)?;
        let long = plan.walls.get(wall)?.frame.length();
        let centre = *fixture.centre.get()?;
        let along = if fixture.from == crate::book::End::Right { long - centre } else { centre };
        let sill = fixture.sill.get().copied();
        let height = sill.map(|sill| sill + fixture.height.get().copied().unwrap_or_default().half());
        let span = fixture.name.span;
        Some(SetBox { name: &fixture.name.value, span, height, wall, along, half: HALF, is_switch: false })
    })
}

fn in_a_hole<'a>(plan: &'a Plan<'a>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let is_in = |hole: &&Hole<'_>| {
        hole.wall == one.wall && hole.along.0 < one.along && one.along < hole.along.1 && is_level(hole, one)
    };
    let hole = plan.holes.iter().find(is_in)?;
    Some(Misplaced::InAHole(hole.name(), hole.span()))
}

/// Whether it is as high as a door or a window, of which both ends are known; a door begins at the floor.
fn is_level(hole: &Hole<'_>, one: &SetBox<'_>) -> bool {
    let Some(height) = one.height else { return matches!(hole.is, HoleIs::Door(_)) && hole.high.is_none() };
    let is_door = matches!(hole.is, HoleIs::Door(_));
    let below = hole.high.map_or(is_door, |high| height < high);
    below && hole.low.is_some_and(|low| height > low)
}

/// The trim that the book gives a width, past the side of its door or window.
fn in_a_casing<'a>(plan: &'a Plan<'a>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let is_in = |hole: &&Hole<'_>| {
        let Some(wide) = casing_width(hole.is).filter(|_| hole.wall == one.wall && is_level(hole, one)) else {
            return false;
        };
        let (from, to) = (one.along - one.half, one.along + one.half);
        from < hole.along.1 + *wide && to > hole.along.0 - *wide
    };
    let hole = plan.holes.iter().find(is_in)?;
    Some(Misplaced::InACasing(hole.name(), hole.span()))
}

fn above_the_ceiling<'a>(plan: &Plan<'_>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let there = plan.ceiling_at(plan.walls.get(one.wall)?.frame.at(one.along, Length::ZERO))?;
    (one.height? > there).then_some(Misplaced::AboveTheCeiling(there))
}

/// In the wall of a tub or a shower, wherever that stands in the corner.
fn in_the_wet<'a>(plan: &'a Plan<'a>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let frame = plan.walls.get(one.wall)?.frame;
    let place = frame.at(one.along, HALF);
    let is_wet = |thing: &&Thing<'_>| {
        let deep = (thing.out.1 - thing.out.0).min(thing.width());
        thing.has(Trait::Bathes) && deep >= THINNER && thing.footprint().contains(place)
    };
    let thing = plan.things.iter().find(is_wet).filter(|_| one.height.is_none_or(|height| height < REACHED))?;
    // What feeds a tub's own pump is behind its apron, below the rim.
    let is_below = one.height.zip(thing.top()).is_some_and(|(height, rim)| height < rim && thing.is(Kind::Bathtub));
    if is_below {
        return None;
    }
    Some(Misplaced::InTheWet(thing.name, thing.span))
}

/// Behind what stands before it: a switch behind anything, an outlet behind a tall unit that nothing is built into.
fn behind<'a>(plan: &'a Plan<'a>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let height = one.height?;
    let hides = |thing: &&Thing<'_>| {
        let at_its_wall = thing.stands == Stands::Wall(one.wall) && thing.out.0 < BEFORE && thing.out.1 > thing.out.0;
        let covers = thing.along.0 < one.along && one.along < thing.along.1;
        let is_level = thing.low < height && thing.top().is_some_and(|top| height < top);
        at_its_wall && covers && is_level && thing.within.is_none()
    };
    let is_closed = |thing: &&Thing<'_>| {
        thing.part().is_some_and(|part| matches!(part.is, PartIs::Tall(_)) && part.holds.is_empty())
            && thing.opening.is_none()
    };
    let mut hiding = plan.things.iter().filter(hides);
    let thing = hiding.find(|thing| one.is_switch && !thing.is(Kind::Outlet) || is_closed(thing))?;
    Some(Misplaced::Behind(thing.name, thing.span))
}

/// In a strip of stone or tile that stands up behind a counter.
fn in_an_upstand<'a>(plan: &'a Plan<'a>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let height = one.height?;
    let rows = plan.rows.iter().filter(|row| row.stands == Stands::Wall(one.wall));
    let here = rows.filter(|row| row.along.0 < one.along && one.along < row.along.1);
    here.filter_map(|row| {
        let RowOf::Run(run) = row.of else { return None };
        let top = row.counter?.height?;
        let high = upstand(plan.room, &run.name.value).or_else(|| run.counter.splash.get()?.height.get().copied())?;
        let carried = row.things.iter().filter_map(|at| plan.things.get(*at));
        let is_carried = carried
            .into_iter()
            .any(|thing| plan.lies_over(row, thing) && thing.along.0 < one.along && one.along < thing.along.1);
        let is_in = high <= UPSTAND && height + HALF_HIGH > top && height - HALF_HIGH < top + high;
        (is_carried && is_in).then_some(Misplaced::InAnUpstand(&run.name.value, high))
    })
    .next()
}

/// How high the counter of a run stands up behind, as the counter that is chosen has it.
fn upstand(room: &Room, run: &str) -> Option<Length> {
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let own = counters.flat_map(|counter| counter.standing()).filter(|option| covers(room, option, run));
    own.filter_map(|option| option.top.get()?.splash.get()?.height.get().copied()).max()
}

/// Two whose bodies are in one place; where no height is told, they may be one above the other.
fn with_another<'a>(one: &SetBox<'_>, others: &[SetBox<'a>]) -> Option<Misplaced<'a>> {
    let height = one.height?;
    let shares = |other: &&SetBox<'_>| {
        other.wall == one.wall
            && (other.along - one.along).abs() < one.half + other.half
            && other.height.is_some_and(|its| (its - height).abs() < HALF_HIGH + HALF_HIGH)
    };
    let other = others.iter().find(shares)?;
    Some(Misplaced::WithAnother(other.name, other.span))
}

/// A switch where a door stands open before it: beside the jamb that the door hangs on.
fn behind_a_door<'a>(plan: &'a Plan<'a>, one: &SetBox<'_>) -> Option<Misplaced<'a>> {
    let hangs_there = |hole: &&Hole<'_>| {
        let HoleIs::Door(door) = hole.is else { return false };
        let (left, right) = (hole.along.0 - one.along, one.along - hole.along.1);
        let near = |away: Length| away > Length::ZERO && away <= AT_THE_JAMB;
        hole.wall == one.wall
            && match hinge(door) {
                Some(DoorHinge::Left) => near(left),
                Some(DoorHinge::Right) => near(right),
                Some(DoorHinge::Both) | None => false,
            }
    };
    let hole = plan.holes.iter().find(hangs_there).filter(|_| one.is_switch)?;
    Some(Misplaced::BehindADoor(hole.name(), hole.span()))
}

/// The side that a door hangs on which swings into the room.
fn hinge(door: &Doorway) -> Option<DoorHinge> {
    let swings_in = door.swings.get() == Some(&DoorSwing::In) && door.slides.get() != Some(&true);
    door.hinge.get().copied().filter(|_| swings_in)
}
