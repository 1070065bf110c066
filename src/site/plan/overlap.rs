//! Things that are written where other things stand.

use crate::units::Length;

use super::fault::{PlanFault, Wrong};
use super::thing::{Thing, What};
use super::{HoleIs, Plan, casing_width};

/// How far before a wall a thing must stand clear of a doorway to leave it free.
const BEFORE_A_DOOR: Length = Length::from_inches(1);

/// Looks for things in one another's place, each pair told once.
pub fn look(plan: &mut Plan<'_>) {
    let mut found = Vec::new();
    for (number, (thing, own)) in plan.standing().enumerate() {
        for (other, others) in plan.standing().take(number) {
            let apart = thing.within.is_some() || other.within.is_some() || same_row(thing, other);
            let overlaps =
                !apart && thing.is_level_with(other.low, other.high) && own.footprint.overlaps(&others.footprint);
            if overlaps {
                found.push(fault(thing, &seen(thing, other)));
            }
        }
        found.extend(in_a_hole(plan, thing));
    }
    found.extend(holes(plan));
    plan.faults.extend(found);
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
    let wrong = Wrong::Clashes {
        other: other.name.to_string(),
        along: other.along.map(|along| past(thing.along, along)),
        in_height,
        out: other.out.map(|out| past(thing.out, out)),
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
        height: Some((other.low, other.high)),
        out: shape.within(&thing.frame, thing.along),
    }
}

/// What stands in a doorway or hangs before a window.
fn in_a_hole(plan: &Plan<'_>, thing: &Thing<'_>) -> Vec<PlanFault> {
    let mut found = Vec::new();
    if matches!(thing.what, What::Island(_)) || thing.within.is_some() {
        return found;
    }
    for hole in &plan.holes {
        let (Some(low), true) = (hole.low, thing.out.0 < BEFORE_A_DOOR) else { continue };
        if thing.frame != hole.frame {
            continue;
        }
        let is_window = matches!(hole.is, HoleIs::Window(_));
        let is_in = |along: (Length, Length), low: Length, high: Option<Length>| {
            let shared = along.1.min(thing.along.1) - along.0.max(thing.along.0);
            shared > Length::ZERO && thing.is_level_with(low, high)
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
            continue;
        };
        let height = is_window.then_some((low, high));
        found.push(fault(thing, &Other { name, span: hole.span(), along: Some(along), height, out: None }));
    }
    found
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
