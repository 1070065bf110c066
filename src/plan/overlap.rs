//! Things that are written where other things stand.

use crate::units::Length;

use super::fault::{Fault, Wrong};
use super::thing::{Thing, What};
use super::{HoleIs, Plan};

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
                found.push(fault(thing, other.name, other.span, along(thing, other)));
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

fn fault(thing: &Thing<'_>, other: &str, also: crate::source::Span, by: Option<Length>) -> Fault {
    let wrong = Wrong::Overlaps { other: other.to_string(), by };
    Fault { wrong, item: Some(thing.name.to_string()), span: thing.span, also: Some(also) }
}

/// How far two things at one wall share it.
fn along(one: &Thing<'_>, other: &Thing<'_>) -> Option<Length> {
    (one.stands == other.stands && one.frame == other.frame)
        .then(|| one.along.1.min(other.along.1) - one.along.0.max(other.along.0))
}

/// What stands in a doorway or hangs before a window.
fn in_a_hole(plan: &Plan<'_>, thing: &Thing<'_>) -> Vec<Fault> {
    let mut found = Vec::new();
    if matches!(thing.what, What::Island(_)) || thing.within.is_some() {
        return found;
    }
    for hole in &plan.holes {
        let (Some(low), true) = (hole.low, thing.out.0 < BEFORE_A_DOOR) else { continue };
        let shared = hole.along.1.min(thing.along.1) - hole.along.0.max(thing.along.0);
        let here = thing.frame == hole.frame && shared > Length::ZERO;
        if here && thing.is_level_with(low, hole.high) {
            found.push(fault(thing, hole.name(), hole.span(), Some(shared)));
        }
    }
    found
}

/// Doors and windows in one another's place.
fn holes(plan: &Plan<'_>) -> Vec<Fault> {
    let mut found = Vec::new();
    for (number, one) in plan.holes.iter().enumerate() {
        for other in plan.holes.iter().take(number).filter(|other| other.wall == one.wall) {
            let shared = one.along.1.min(other.along.1) - one.along.0.max(other.along.0);
            let both_windows = matches!((one.is, other.is), (HoleIs::Window(_), HoleIs::Window(_)));
            let above = both_windows && (one.low >= other.high || other.low >= one.high);
            if shared > Length::ZERO && !above {
                let wrong = Wrong::Overlaps { other: other.name().to_string(), by: Some(shared) };
                let item = Some(one.name().to_string());
                found.push(Fault { wrong, item, span: one.span(), also: Some(other.span()) });
            }
        }
    }
    found
}
