//! Counter beside an opening: as it says, and as the plan has it.

use crate::book::{End, Opening, Room};
use crate::site::Site;
use crate::site::plan::StretchEnd;
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::units::Length;
use crate::vocabulary::Trait;

use super::{Differ, Twice};

/// So much more may be told than the plan has: 2 in (common practice: an end panel, an edge that stands out).
const MORE: Length = Length::from_inches(2);

/// More counter at a side of an opening than the plan has there, where it ends before a corner.
pub(super) fn of_opening<'a>(site: &'a Site<'a>, room: &'a Room, opening: &'a Opening) -> Vec<Twice<'a>> {
    let placed = site.sound_plan(room).and_then(|plan| Some((plan, plan.opening(opening)?)));
    let Some((landing, (plan, own))) = opening.landing.get().zip(placed) else { return vec![] };
    let sides = [
        (End::Left, &landing.left, "the counter at the left"),
        (End::Right, &landing.right, "the counter at the right"),
    ];
    let told = sides.into_iter().filter_map(|(end, said, what)| {
        let said = said.spanned()?;
        let there = plan.landing(own, end).filter(|there| there.around_corner.is_none())?;
        // What stands tall, or under a counter, may have its counter past a panel or above it.
        let breaks = own.has(Trait::CutIntoCounter) || own.has(Trait::BreaksCounter);
        if there.counter == Length::ZERO && !breaks {
            return None;
        }
        let spot = match there.end {
            StretchEnd::Corner(_) => return None,
            StretchEnd::Thing(thing) => Spot::ByThePlan(thing.name),
            StretchEnd::Wall(_) | StretchEnd::Open => Spot::Plan,
        };
        let written = SourcedFigure {
            value: said.value.counter,
            at: said.span,
            provenance: Provenance::Written,
            spot: Spot::Opening(&opening.name),
        };
        let planned = SourcedFigure { value: there.counter, at: own.span, provenance: Provenance::Plan, spot };
        let is_more = written.value > planned.value + MORE;
        is_more.then(|| Twice::of(&opening.name, what, (written, planned), Differ::Apart).asked())
    });
    told.collect()
}
