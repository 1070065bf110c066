//! What ends the height of an opening from above: as it says itself, what the plan has hang there, the
//! ceiling at that point.

use super::housing::cabinet_part;
use crate::book::{Ceiling, DetailName, Opening, Plainly, ProductOption, Room};
use crate::site::counters::{covers, is_alone};
use crate::site::plan::{Plan, Thing};
use crate::site::row_of;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

use super::{Foot, foot};

/// The lower edge of what is above an opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Above {
    /// From the finished floor to it.
    pub edge: Length,
    /// Where it, or what it follows from, is written.
    pub at: Span,
    /// What it is.
    pub is: AboveIs,
}

/// What is above an opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AboveIs {
    /// What the opening itself says.
    Said,
    /// A thing of the plan, by its name.
    Hung(String),
    /// The slab of the counter that goes over it, by the counter's name.
    Counter(String),
    /// The ceiling.
    Ceiling,
}

impl AboveIs {
    /// What it is called, where the opening itself does not say.
    pub fn name(&self) -> Option<&str> {
        match self {
            Self::Said => None,
            Self::Hung(name) | Self::Counter(name) => Some(name),
            Self::Ceiling => Some("the ceiling"),
        }
    }
}

impl Above {
    /// Whether it is no figure of the opening's own, nor of what hangs over it: the ceiling, or a counter's underside.
    pub(super) fn is_around(&self, opening: &Opening) -> bool {
        let said = || opening.above.get().is_none_or(|above| above.height.is_absent());
        match self.is {
            AboveIs::Ceiling | AboveIs::Counter(_) => true,
            AboveIs::Hung(_) => false,
            AboveIs::Said => said(),
        }
    }

    /// From the opening's bottom to it; none where nobody says where that is. What is above a hole in a counter, or a
    /// cooking surface that stands free, ends no height of theirs.
    pub fn left(&self, room: &Room, opening: &Opening) -> Option<Length> {
        let ends_nothing = opening.takes_one(Trait::CutIntoCounter)
            || (opening.takes_one(Trait::BreaksCounter) && opening.takes_one(Trait::Cooks) && self.is != AboveIs::Said);
        match foot(room, opening) {
            _ if ends_nothing => None,
            Foot::Floor => Some(self.edge),
            Foot::Above(bottom) => Some(self.edge - bottom),
            Foot::Unknown => None,
        }
    }
}

/// The lowest edge above an opening, wherever it is written; none where nothing tells of any.
pub fn above(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening) -> Option<Above> {
    let said = opening.above.get().and_then(|above| above.height.spanned());
    let said = said.map(|edge| Above { edge: edge.value, at: edge.span, is: AboveIs::Said });
    let hung = plan.and_then(|plan| hanging_over(plan, opening));
    let hung = hung.map(|over| Above { edge: over.low, at: over.span, is: AboveIs::Hung(over.name.to_string()) });
    // Of two at one height the opening's own word counts.
    let slab = under_a_slab(plan, room, opening);
    said.into_iter().chain(hung).chain(slab).chain(ceiling(plan, room, opening)).min_by_key(|above| above.edge)
}

/// The underside of the counter that goes over it: the counter's top less the thickness of what is chosen for it; the
/// top itself, which it does not reach, where nobody says how thick that is.
fn under_a_slab(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening) -> Option<Above> {
    let is_a_hole = [Trait::CutIntoCounter, Trait::DropsIn, Trait::LapsOver].iter().any(|of| opening.takes_one(*of));
    // What a cabinet holds is held to that cabinet.
    if is_a_hole || opening.takes_one(Trait::Hangs) || cabinet_part(room, opening).is_some() {
        return None;
    }
    let run = row_of(room, opening).and_then(|row| row.run);
    let says_so = opening.above.get().is_some_and(|above| above.plainly() == Some(Plainly::Counter));
    let is_below = says_so || is_under_a_counter(plan, room, opening);
    let is_below = is_below || opening.takes_one(Trait::WashesDishes);
    let top = opening.counter_height.spanned().or_else(|| run?.counter.height.spanned()).filter(|_| is_below)?;
    // What begins above the counter is not under it.
    if opening.sill.get().is_some_and(|sill| *sill >= top.value) || opening.sill.is_faulty() {
        return None;
    }
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let lies_there = |option: &ProductOption| match run {
        Some(run) => covers(room, option, &run.name),
        None => is_alone(room),
    };
    let lies_on_it = counters.filter_map(|selection| {
        let option = selection.settled().filter(|option| lies_there(option))?;
        Some((selection, option.length(DetailName::Thickness)?.0))
    });
    match lies_on_it.max_by_key(|(_, thickness)| *thickness) {
        Some((counter, thickness)) => {
            let is = AboveIs::Counter(counter.name.value.clone());
            Some(Above { edge: top.value - thickness, at: top.span, is })
        }
        None if says_so => Some(Above { edge: top.value, at: top.span, is: AboveIs::Said }),
        None => None,
    }
}

/// The ceiling over it: as the plan has it there, else a level room's.
fn ceiling(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening) -> Option<Above> {
    let placed = || plan.and_then(|plan| plan.ceiling_over(plan.opening(opening)?, plan.opening(opening)?.out));
    let edge = match room.ceiling.get()? {
        Ceiling::Level(height) => *height,
        Ceiling::Sloped { .. } => placed()?,
    };
    Some(Above { edge, at: room.ceiling.span()?, is: AboveIs::Ceiling })
}

/// The lowest thing of the plan that hangs over an opening: a wall cabinet, a shelf, what stands over it in
/// the same cabinet.
pub fn hanging_over<'p, 'a>(plan: &'p Plan<'a>, opening: &Opening) -> Option<&'p Thing<'a>> {
    let own = plan.opening(opening)?;
    let footprint = own.footprint();
    // What begins lower than that stands beside it, or is what it is cut into.
    let over = own.low + Length::from_inches(12);
    // Of two in one cabinet that overlap, `fit/cabinet` tells: neither is over the other.
    let overlaps = |other: &Thing<'_>| {
        own.within.is_some() && own.within == other.within && own.high.is_some_and(|high| other.low < high)
    };
    // In one cabinet what begins where it ends is over it, however low it is itself.
    let begins_above = |other: &Thing<'_>| {
        let in_one = own.within.is_some() && own.within == other.within;
        other.low >= over || in_one && own.high.is_some_and(|high| other.low >= high)
    };
    let above = plan.things.iter().filter(|other| {
        !std::ptr::eq(*other, own)
            && !overlaps(other)
            && begins_above(other)
            && !other.is_closure()
            && other.footprint().overlaps(&footprint)
            && hangs_before(own, other)
    });
    above.min_by_key(|other| other.low)
}

/// Whether a thing at the same wall is over another rather than beside it: that of two whose widths have little in
/// common one covers the other's edge is a clash of bodies, and told as one.
fn hangs_before(own: &Thing<'_>, other: &Thing<'_>) -> bool {
    let shared = own.along.1.min(other.along.1) - own.along.0.max(other.along.0);
    own.stands != other.stands || shared.times(4) >= own.width().min(other.width())
}

/// Whether the counter of its row goes over it.
pub fn is_under_a_counter(plan: Option<&Plan<'_>>, room: &Room, opening: &Opening) -> bool {
    let placed = plan.and_then(|plan| Some((plan.opening(opening)?, plan)));
    if let Some((own, plan)) = placed {
        return plan.row_of(own).is_some_and(|row| row.counter.is_some() && row.carries(own));
    }
    let parts_it = opening.takes_one(Trait::BreaksCounter) || opening.takes_one(Trait::CutIntoCounter);
    let counter = row_of(room, opening).and_then(|row| row.run).and_then(|run| run.counter.height.get().copied());
    let height = opening.height.get().and_then(|readings| readings.least()).map(|least| least.value);
    !parts_it && counter.zip(height).is_some_and(|(counter, height)| height <= counter)
}
