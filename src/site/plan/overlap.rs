//! Things that are written where other things stand.

use std::borrow::Cow;

use crate::book::PartIs;
use crate::units::Length;
use crate::vocabulary::{Kind, Trade};

use super::covered::Covered;
use super::fault::{PlanFault, Wrong};
use super::frame::nm;
use super::shape::ConvexShape;
use super::thing::{HEAD, RowOf, Stands, Thing, What};

use super::{Hole, HoleIs, Plan, casing_width};

/// How far before a wall a thing must stand clear of a doorway to leave it free.
const BEFORE_A_DOOR: Length = Length::from_inches(1);
/// Between the end of a row and a doorway's wall, nobody gets through a way so wide (common practice: one goes
/// sideways through 18").
const NO_WAY_THROUGH: Length = Length::from_inches(12);

/// A room of no more depth than that is a closet: one does not walk in, and what stands in it is reached through its
/// door (common practice).
const CLOSET: Length = Length::from_inches(42);

/// Looks for things in one another's place, each pair told once.
pub fn look(plan: &mut Plan<'_>) {
    let mut found = Vec::new();
    for (number, (thing, own)) in plan.standing().enumerate() {
        for (other, others) in plan.standing().take(number) {
            let apart = thing.within.is_some() || other.within.is_some() || same_row(thing, other);
            let overlaps = !apart && {
                let (mine, its) = (Body::of(thing, other, own), Body::of(other, thing, others));
                let (mine, its) = (mine.under_counter(plan, other), its.under_counter(plan, thing));
                mine.thing.is_level_with(its.thing.low, its.thing.top())
                    && mine.footprint.overlaps(&its.footprint)
                    && !is_mounted_on(&mine.thing, &its.thing)
                    && !is_in_a_shower(thing, other)
            };
            if overlaps {
                let (mine, its) = (Body::of(thing, other, own), Body::of(other, thing, others));
                let (mine, its) = (mine.under_counter(plan, other), its.under_counter(plan, thing));
                found.push(fault(&mine.thing, &seen(&mine.thing, &its.thing)));
            }
        }
    }
    for hole in &plan.holes {
        let mut taken: Vec<(Option<usize>, Length, PlanFault)> = Vec::new();
        for (thing, own) in plan.standing() {
            if is_told_of_its_counter(plan, hole, thing) {
                continue;
            }
            let Some((shared, fault)) =
                in_its_wall(hole, thing).or_else(|| across(hole, thing, (&own.footprint, &own.to_front)))
            else {
                continue;
            };
            // A row stands there once, whichever of its parts do: the one that is most in the way tells of it.
            match taken.iter_mut().find(|(row, ..)| row.is_some() && *row == thing.row) {
                Some(known) if known.1 < shared => *known = (thing.row, shared, fault),
                Some(_) => {}
                None => taken.push((thing.row, shared, fault)),
            }
        }
        found.extend(taken.into_iter().map(|(.., fault)| fault));
    }
    found.extend(holes(plan));
    plan.faults.extend(found);
}

impl<'a> Plan<'a> {
    /// The doorways and windows of other walls that a thing closes where its front is so far out, and how much of each.
    pub fn closed_by(&self, thing: &Thing<'a>, front: Length) -> Vec<(&Hole<'a>, Length)> {
        let (footprint, to_front) = (thing.footprint(), thing.covers(front));
        let closed = self.holes.iter().filter_map(|hole| Some((hole, across(hole, thing, (&footprint, &to_front))?.0)));
        closed.collect()
    }
}

/// How high one stands in a shower where nobody says it (common practice: its head is at 80").
const STOOD_IN: Length = Length::from_inches(80);
/// How thick a pane is that hangs flat on a wall, where nobody says it (common practice).
const PANE: Length = Length::from_sixty_fourths(32);

/// What a thing takes up against another: for what has no place in a shower that is all of its height, and what hangs
/// flat on a wall is as thick as a pane.
struct Body<'t, 'a> {
    thing: Cow<'t, Thing<'a>>,
    footprint: Cow<'t, ConvexShape>,
}

impl<'t, 'a> Body<'t, 'a> {
    fn of(thing: &'t Thing<'a>, other: &Thing<'_>, covered: &'t Covered) -> Self {
        if is_stood_in(thing) && has_no_place_in_a_shower(other) && thing.out.1 > thing.out.0 {
            let high = Some(thing.low + STOOD_IN).max(thing.high);
            return Self {
                thing: Cow::Owned(Thing { high, ..thing.clone() }),
                footprint: Cow::Borrowed(&covered.footprint),
            };
        }
        let is_flat = (is_a_pane(thing) || hangs_flat(thing) && is_a_cabinet(other)) && thing.out.1 <= thing.out.0;
        if is_flat {
            let thing = Thing { out: (thing.out.0, thing.out.0 + PANE), ..thing.clone() };
            return Self { footprint: Cow::Owned(thing.footprint()), thing: Cow::Owned(thing) };
        }
        Self { thing: Cow::Borrowed(thing), footprint: Cow::Borrowed(&covered.footprint) }
    }
}

fn is_a_pane(thing: &Thing<'_>) -> bool {
    thing.is(Kind::Mirror) || thing.is(Kind::LitMirror)
}

/// What hangs on a wall, and of which nobody says how far it stands out: a cabinet that stands there hides it.
fn hangs_flat(thing: &Thing<'_>) -> bool {
    const KINDS: [Kind; 6] =
        [Kind::WallLight, Kind::Shelf, Kind::Bar, Kind::TowelWarmer, Kind::MirrorCabinet, Kind::Outlet];
    thing.low > Length::ZERO && thing.kind.is_some_and(|kind| KINDS.contains(&kind))
}

fn is_a_cabinet(thing: &Thing<'_>) -> bool {
    thing.part().is_some_and(|part| matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_)))
}

impl Body<'_, '_> {
    /// Against what hangs on the wall, a cabinet is as high as the counter that lies on it.
    fn under_counter(self, plan: &Plan<'_>, other: &Thing<'_>) -> Self {
        let row = self.thing.row.and_then(|row| plan.rows.get(row)).filter(|row| row.carries(&self.thing));
        let top = row.and_then(|row| row.counter?.height).filter(|_| other.low > Length::ZERO && other.row.is_none());
        match top {
            Some(top) if self.thing.high.is_some_and(|high| high < top) => {
                Self { thing: Cow::Owned(Thing { high: Some(top), ..self.thing.into_owned() }), ..self }
            }
            _ => self,
        }
    }
}

fn is_stood_in(thing: &Thing<'_>) -> bool {
    thing.is(Kind::ShowerSet) || thing.is(Kind::ShowerTray)
}

/// Whether a thing has its place where one stands in a shower: what bathes, its glass, and what hangs or is sat on there.
fn belongs_in_a_shower(thing: &Thing<'_>) -> bool {
    const KINDS: [Kind; 9] = [
        Kind::ShowerSet,
        Kind::ShowerTray,
        Kind::ShowerGlass,
        Kind::ShowerSeat,
        Kind::GrabBar,
        Kind::Bar,
        Kind::Hook,
        Kind::Drain,
        Kind::Shelf,
    ];
    thing.kind.is_some_and(|kind| KINDS.contains(&kind))
}

/// Whether one of them is where somebody stands in a shower, and the other belongs there: neither is in its place.
fn is_in_a_shower(one: &Thing<'_>, other: &Thing<'_>) -> bool {
    let is_there = |place: &Thing<'_>, thing: &Thing<'_>| is_stood_in(place) && belongs_in_a_shower(thing);
    is_there(one, other) || is_there(other, one)
}

/// What hangs on a wall, and not inside a shower.
fn has_no_place_in_a_shower(thing: &Thing<'_>) -> bool {
    const KINDS: [Kind; 7] = [
        Kind::MirrorCabinet,
        Kind::Mirror,
        Kind::LitMirror,
        Kind::TowelWarmer,
        Kind::Cabinet,
        Kind::Basin,
        Kind::WallLight,
    ];
    is_a_cabinet(thing) || thing.kind.is_some_and(|kind| KINDS.contains(&kind))
}

/// Whether a light is set on a mirror: it goes through the glass, which is asked about.
fn is_mounted_on(one: &Thing<'_>, other: &Thing<'_>) -> bool {
    let is_in = |light: &Thing<'_>, mirror: &Thing<'_>| {
        light.is(Kind::WallLight) && mirror.is(Kind::Mirror) && light.is_set_on(mirror)
    };
    is_in(one, other) || is_in(other, one)
}

/// What stands tall reaches past a counter, also where nobody says how high it is.
fn standing_tall<'t, 'a>(thing: &'t Thing<'a>) -> Cow<'t, Thing<'a>> {
    let is_tall = thing.part().is_some_and(|part| matches!(part.is, PartIs::Tall(_)));
    if is_tall && thing.high.is_none() {
        return Cow::Owned(Thing { high: Some(thing.low + HEAD), ..thing.clone() });
    }
    Cow::Borrowed(thing)
}

/// Parts of one row stand one beside the other by their nature.
fn same_row(one: &Thing<'_>, other: &Thing<'_>) -> bool {
    one.row.is_some() && one.row == other.row
}

/// What a thing clashes with: its stretch along the thing's own frame, in height, and out from it.
struct Other<'a> {
    name: &'a str,
    span: crate::source::Span,
    along: Option<(Length, Length)>,
    height: Option<(Length, Option<Length>)>,
    out: Option<(Length, Length)>,
}

fn fault(thing: &Thing<'_>, other: &Other<'_>) -> PlanFault {
    // Whichever way is the shorter to move one of them past the other.
    let past = |own: (Length, Length), other: (Length, Length)| (own.1 - other.0).min(other.1 - own.0);
    let in_height = other.height.and_then(|(low, high)| {
        let up = high.map(|high| high - thing.low).filter(|_| thing.low > Length::ZERO);
        let down = thing.high.map(|high| high - low).filter(|_| low > Length::ZERO);
        up.into_iter().chain(down).min()
    });
    // What stands or hangs at a wall is not moved away from it.
    let out = other.out.filter(|_| thing.out.0 > Length::ZERO || matches!(thing.what, What::Island(_)));
    // Where its wall has no room for that, it is no way to mend it.
    let may_move = |own: (Length, Length), other: (Length, Length)| {
        let long = thing.frame.length();
        let is_at_a_wall = matches!(thing.stands, Stands::Wall(_)) && !matches!(thing.what, What::Island(_));
        !is_at_a_wall || other.0 - (own.1 - own.0) >= Length::ZERO || other.1 + (own.1 - own.0) <= long
    };
    let wrong = Wrong::Clashes {
        other: other.name.to_string(),
        along: other.along.filter(|along| may_move(thing.along, *along)).map(|along| past(thing.along, along)),
        in_height,
        out: out.map(|out| past(thing.out, out)),
    };
    PlanFault { wrong, item: Some(thing.name.to_string()), span: thing.span, also: Some(other.span) }
}

/// Where another thing is, seen from a thing's own frame.
fn seen<'a>(thing: &Thing<'_>, other: &Thing<'a>) -> Other<'a> {
    let shape = other.footprint();
    Other {
        name: other.name,
        span: other.span,
        along: shape.beside(&thing.frame, thing.out),
        height: Some((other.low, other.top())),
        out: shape.within(&thing.frame, thing.along),
    }
}

/// What stands in a doorway or hangs before a window of its own wall, and along how much of it.
fn in_its_wall(hole: &Hole<'_>, thing: &Thing<'_>) -> Option<(Length, PlanFault)> {
    if matches!(thing.what, What::Island(_)) || thing.within.is_some() || thing.frame != hole.frame {
        return None;
    }
    // The height of a shower is that of who stands in it: `clear/glazing` asks for the glass of its window.
    if is_stood_in(thing) && matches!(hole.is, HoleIs::Window(_)) {
        return None;
    }
    let thing = &*standing_tall(thing);
    let low = hole.low.filter(|_| thing.out.0 < BEFORE_A_DOOR)?;
    let is_window = matches!(hole.is, HoleIs::Window(_));
    let shared = |along: (Length, Length)| along.1.min(thing.along.1) - along.0.max(thing.along.0);
    let is_in = |along: (Length, Length), low: Length, high: Option<Length>| {
        shared(along) > Length::ZERO && thing.is_level_with(low, high)
    };
    let casing = casing_width(hole.is).copied().unwrap_or_default();
    let around = (hole.along.0 - casing, hole.along.1 + casing);
    // A door's casing ends at the floor.
    let below = if is_window { low - casing } else { low };
    let above = hole.high.map(|high| high + casing);
    let of_casing = format!("casing of {}", hole.name());
    let (name, along, low, high) = if is_in(hole.along, low, hole.high) {
        (hole.name(), hole.along, low, hole.high)
    } else if is_in(around, below, above) {
        (of_casing.as_str(), around, below, above)
    } else {
        return None;
    };
    let height = is_window.then_some((low, high));
    let other = Other { name, span: hole.span(), along: Some(along), height, out: None };
    Some((shared(along), fault(thing, &other)))
}

/// What stands at another wall, or at none, and reaches before a doorway so near that nobody gets through, or
/// before a window's own pane; and how much of it that takes.
fn across(
    hole: &Hole<'_>,
    thing: &Thing<'_>,
    (footprint, to_front): (&ConvexShape, &ConvexShape),
) -> Option<(Length, PlanFault)> {
    // The place that is kept for a fixture is no body, nor is that where one stands in a shower before a window.
    let is_stood_in = is_stood_in(thing) && matches!(hole.is, HoleIs::Window(_));
    let is_kept = is_stood_in
        || matches!(thing.what, What::Opening) && thing.kind.is_none_or(|kind| kind.trade() != Trade::Appliance);
    if is_kept || thing.within.is_some() || thing.frame == hole.frame || !thing.is_level_with(hole.low?, hole.high) {
        return None;
    }
    if matches!(hole.is, HoleIs::Door(_)) && is_reached_through(hole, thing) {
        return None;
    }
    // A fixture that one walks around stands nearer before many a door of a bath.
    let (shape, near) = match hole.is {
        HoleIs::Door(_) if thing.row.is_some() => (to_front, NO_WAY_THROUGH),
        HoleIs::Door(_) => (to_front, BEFORE_A_DOOR),
        HoleIs::Window(_) => (footprint, BEFORE_A_DOOR),
    };
    let (first, last) = shape.beside(&hole.frame, (Length::ZERO, near))?;
    let shared = last.min(hole.along.1) - first.max(hole.along.0);
    if shared <= Length::ZERO {
        return None;
    }
    let by = PlanFault {
        wrong: Wrong::Closes { door: hole.name().to_string(), by: shared, of: hole.along.1 - hole.along.0 },
        item: Some(thing.name.to_string()),
        span: thing.span,
        also: Some(hole.span()),
    };
    Some((shared, by))
}

/// Whether a cabinet reaches past the sill of a window only by what a usual counter takes of the height of its own: that
/// the counter does is told of it, and how high the cabinet is nobody says.
fn is_told_of_its_counter(plan: &Plan<'_>, hole: &Hole<'_>, thing: &Thing<'_>) -> bool {
    let row = thing.row.and_then(|row| plan.rows.get(row)).filter(|row| row.carries(thing));
    let counter = row.and_then(|row| row.counter?.height);
    let is_said = match row.map(|row| row.of) {
        Some(RowOf::Run(run)) => !run.height.is_absent() || thing.part().is_some_and(|part| !part.height.is_absent()),
        _ => true,
    };
    let past = thing.high.zip(hole.low).map(|(high, low)| high - low);
    matches!(hole.is, HoleIs::Window(_))
        && !is_said
        && counter.zip(hole.low).is_some_and(|(counter, low)| counter > low)
        && past.is_some_and(|past| past <= UNDER_A_COUNTER)
}

/// No counter is thicker, as is usual (common practice).
const UNDER_A_COUNTER: Length = Length::from_inches(2);

/// Whether a thing stands in a closet with its front to that door.
fn is_reached_through(hole: &Hole<'_>, thing: &Thing<'_>) -> bool {
    let from_its_wall = thing.frame.local(hole.frame.at(hole.along.0, Length::ZERO)).1;
    thing.frame.faces(&hole.frame) && matches!(thing.stands, Stands::Wall(_)) && from_its_wall <= nm(CLOSET)
}

/// Doors and windows in one another's place.
fn holes(plan: &Plan<'_>) -> Vec<PlanFault> {
    let mut found = Vec::new();
    for (number, one) in plan.holes.iter().enumerate() {
        for other in plan.holes.iter().take(number).filter(|other| other.wall == one.wall) {
            let shared = one.along.1.min(other.along.1) - one.along.0.max(other.along.0);
            let both_windows = matches!((one.is, other.is), (HoleIs::Window(_), HoleIs::Window(_)));
            let above = both_windows && (one.low >= other.high || other.low >= one.high);
            if shared > Length::ZERO && !above {
                let wrong = Wrong::Overlaps { other: other.name().to_string(), by: shared };
                let item = Some(one.name().to_string());
                found.push(PlanFault { wrong, item, span: one.span(), also: Some(other.span()) });
            }
        }
    }
    found
}
