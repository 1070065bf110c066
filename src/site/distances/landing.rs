//! Counter around an opening, to set things down on.

use crate::book::{Beside, End, Landing, Opening, Room, Slot};
use crate::site::Site;
use crate::site::fitting::Side;
use crate::site::plan::{Met, Plan, StretchEnd, Thing};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::Kind;

use crate::site::Provenance;

use super::Distance;

/// Counter around an opening, and where it is told.
#[derive(Clone, Debug)]
pub struct Around {
    /// The counter; what is not known is left out.
    pub landing: Box<Landing>,
    /// Where it is written, or the opening.
    pub at: crate::source::Span,
    /// Who says so: the plan, where nothing at all is written.
    pub provenance: Provenance,
}

impl Around {
    /// Counter at a side.
    pub fn beside(&self, side: Side) -> Option<&Beside> {
        match side {
            Side::Left => self.landing.left.get(),
            Side::Right => self.landing.right.get(),
        }
    }
}

/// The landing of an opening: as written, and what that leaves out as the plan has it.
/// What stands across is looked for where it can count.
pub fn landing_of(site: &Site<'_>, room: &Room, opening: &Opening, looks_across: bool) -> Option<Around> {
    let written = opening.landing.spanned();
    let found = site.sound_plan(room).and_then(|plan| Some((plan, plan.opening(opening)?)));
    let Some((plan, thing)) = found else {
        let written = written?;
        return Some(Around { landing: written.value.clone(), at: written.span, provenance: Provenance::Written });
    };
    let provenance = if written.is_some() { Provenance::Written } else { Provenance::Plan };
    let at = written.map_or(opening.span, |written| written.span);
    let mut landing = written.map(|written| written.value.clone()).unwrap_or_default();
    let given = |length: Length| crate::book::Slot::Given(Spanned::new(length, at));
    for (side, slot) in [(End::Left, &mut landing.left), (End::Right, &mut landing.right)] {
        if let (true, Some(beside)) = (slot.is_absent(), beside(plan, thing, side)) {
            *slot = crate::book::Slot::Given(Spanned::new(beside, at));
        }
    }
    if landing.to_corner.is_absent()
        && let Some((to_corner, around)) = corner(plan, thing)
    {
        (landing.to_corner, landing.around_corner) = (given(to_corner), given(around));
    }
    let carried = plan.row_of(thing).is_some_and(|row| thing.row.is_some() && row.carries(thing));
    if landing.above.is_absent() && carried {
        landing.above = given(thing.width());
    }
    if looks_across
        && landing.across.is_absent()
        && landing.across_at.is_absent()
        && let Some((counter, away)) = across(plan, thing)
    {
        (landing.across, landing.across_at) = (given(counter), given(away));
    }
    Some(Around { landing, at, provenance })
}

/// Counter at one side, with the opening that ends it; around a corner it is not known how much of it
/// can be reached, unless it is none.
fn beside<'a>(plan: &Plan<'a>, thing: &Thing<'a>, side: End) -> Option<Beside> {
    let landing = plan.landing(thing, side)?;
    let sink = thing.is(Kind::Sink);
    match landing.end {
        StretchEnd::Corner(_) if !sink => None,
        StretchEnd::Thing(other) => {
            let to = other.opening.map(|opening| opening.name.clone()).filter(|_| landing.counter > Length::ZERO);
            let to = to.map_or(Slot::Absent, Slot::Given);
            Some(Beside { counter: landing.counter, to, preparation: Slot::Absent })
        }
        _ => Some(Beside { counter: landing.counter, to: Slot::Absent, preparation: Slot::Absent }),
    }
}

/// From a sink's edge to an inside corner, and the counter around it.
fn corner<'a>(plan: &Plan<'a>, thing: &Thing<'a>) -> Option<(Length, Length)> {
    let thing = Some(thing).filter(|thing| thing.is(Kind::Sink))?;
    let ends = [End::Left, End::Right].into_iter().filter_map(|end| plan.landing(thing, end));
    ends.filter_map(|landing| Some((landing.counter, landing.around_corner?))).min()
}

/// The counter straight across from a thing, and how far away it is.
fn across<'a>(plan: &Plan<'a>, thing: &Thing<'a>) -> Option<(Length, Length)> {
    let clear = plan.clear_before(thing)?;
    let Met::Thing(met) = clear.to else { return None };
    let row = plan.row_of(met)?;
    let before =
        plan.stretches_of(row).into_iter().filter(|piece| piece.along.0 < met.along.1 && piece.along.1 > met.along.0);
    before.map(|piece| (piece.length(), clear.distance)).max()
}

/// Counter behind what is cut into an island.
pub fn behind(site: &Site<'_>, room: &Room, opening: &Opening) -> Option<Distance> {
    let written = opening.landing.get().and_then(|landing| landing.behind.spanned());
    written.map(Distance::from).or_else(|| {
        let plan = site.sound_plan(room)?;
        Some(Distance::planned(plan.behind_at_island(plan.opening(opening)?)?, opening.span))
    })
}
