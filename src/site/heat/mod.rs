//! What stands above and beside a cooking surface, how near, whether it burns, and how far it must stay.
//!
//! One answer for rules and sheets, from wherever it is written: at the opening, in the plan, by the hood
//! that was chosen, a window, the ceiling. Whether something burns is its `material` alone; where nobody
//! says, it counts as burning, and no word of a name makes it anything else.

mod above;
mod asked;
mod beside;
mod body;
mod hood;
mod near;

pub use above::{Unsaid, is_said_above_cooking, windows_over};
pub use asked::{DistanceSource, HeatFigure, HeatFigures, RequiredDistance};
pub use body::Body;
pub use hood::{Aside, aside, hood_edge};
pub use near::{Near, Where, nearest};

use crate::book::{Neighbour, Room, Selection};
use crate::site::plan::{Plan, Thing};
use crate::site::{Placement, counter_height};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

/// Two heights that differ by no more are of one thing, told twice.
const ONE_THING: Length = Length::from_inches(1);

/// What laps over a cooking surface by no more is set beside it (common practice: how true cabinets are set).
const LAP: Length = Length::from_sixty_fourths(16);

/// A cooking surface at its opening, and what the room's plan says of it.
#[derive(Clone, Debug)]
pub struct Hearth<'a> {
    /// The thing at its opening.
    pub fitted: Placement<'a>,
    plan: Option<&'a Plan<'a>>,
    placed: Option<&'a Thing<'a>>,
    figures: HeatFigures,
}

impl<'a> Hearth<'a> {
    /// The cooking surface of a thing, with the figures that count where no sheet gives any; none for what has none.
    pub fn of(fitted: Placement<'a>, plan: Option<&'a Plan<'a>>, figures: HeatFigures) -> Option<Self> {
        if !cooks(fitted.selection) {
            return None;
        }
        let placed = plan.and_then(|plan| plan.opening(fitted.opening));
        Some(Self { fitted, plan, placed, figures })
    }

    /// The cooking surface from the finished floor: the counter that a cooktop lies in, as its opening or
    /// the row that it stands in says; the top of a range, where that is higher.
    pub fn surface(&self) -> Option<Length> {
        let of_row = || self.plan?.row_of(self.placed?)?.counter?.height;
        let counter = counter_height(self.fitted.room, self.fitted.opening).value().or_else(of_row);
        let is_range = self.fitted.selection.is(Kind::Range);
        let own = self.fitted.option.size.height.get().filter(|_| is_range);
        let most = own.and_then(|own| own.most.or(own.least));
        // A range is set level with the counter where its legs reach it.
        match (counter, most) {
            (Some(counter), Some(most)) => Some(counter.max(own?.least.unwrap_or(most))),
            (counter, most) => counter.or(most),
        }
    }

    /// Everything above it of which a height is known.
    pub fn above(&self) -> Vec<Near<'a>> {
        above::above(self)
    }

    /// What is said to be above it and how high nobody says, where no other place tells.
    pub fn of_unknown_height(&self) -> Option<&'a Spanned<Neighbour>> {
        let said = self.fitted.opening.above.spanned().filter(|said| !said.value.is_nothing())?;
        let told = || self.surface().is_some() && above::placed(self).iter().any(|body| !body.is_building());
        (said.value.height.is_absent() && !told()).then_some(said)
    }

    /// What hangs lowest above it, and its lower edge from the finished floor: as a drawing shows it. The
    /// ceiling only where it is nearer than it may be.
    pub fn overhead(&self) -> Option<(Body<'a>, Length)> {
        let surface = self.surface()?;
        let shown = |near: &Near<'a>| !matches!(near.body, Body::Ceiling(_)) || near.short().is_some();
        let lowest = self.above().into_iter().filter(shown).min_by_key(|near| near.distance)?;
        Some((lowest.body, surface + lowest.distance))
    }

    /// What nobody says of what is above it; none where any place tells.
    pub fn unsaid_above(&self) -> Option<Unsaid<'a>> {
        above::unsaid(self)
    }

    /// Everything beside it that rises above it, near enough to count.
    pub fn beside(&self, side: crate::site::fitting::Side) -> Vec<Near<'a>> {
        beside::beside(self, side)
    }

    /// How far what burns must stay above it, and beside it.
    pub fn asks(&self, place: Where) -> Option<RequiredDistance> {
        match place {
            Where::Above => asked::above(self, crate::book::Burning::Burns, None),
            Where::Beside(side) => asked::beside(self, side).map(|reach| reach.asked),
        }
    }

    /// The opening's width, or the thing's own where it reaches past its cut-out.
    fn along(&self, placed: &Thing<'a>) -> (Length, Length) {
        let width = self.fitted.option.size.width.get().copied().unwrap_or(placed.width());
        let from = placed.centre() - width.half();
        (from, from + width)
    }
}

/// Whether a selection is one that is cooked on.
pub fn cooks(selection: &Selection) -> bool {
    selection.has(Trait::Cooks)
}

/// The one selection of a room of which that is so; none where there are several.
fn only(room: &Room, is: impl Fn(&Selection) -> bool) -> Option<&Selection> {
    let mut all = room.selections.iter().filter(|selection| is(selection));
    all.next().filter(|_| all.next().is_none())
}

fn is_hood(selection: &Selection) -> bool {
    selection.is(Kind::Hood)
}
