//! The floor before an opening, against what a door needs to open: as the opening says, else as the plan has it.

use crate::book::{Opening, ProductOption, Room};
use crate::site::plan::{Plan, depths};
use crate::source::Span;
use crate::units::Length;

use super::case_stands_out;

/// Less floor than a door needs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShortFloor {
    /// How much is there.
    pub there: Length,
    /// How much is needed.
    pub needed: Length,
    /// Where that is written, or the place that it follows from.
    pub at: Span,
    /// What ends it in the plan.
    pub met: Option<(String, Span)>,
}

/// What a thing needs before itself: floor that its sheet asks for, and how far its door or drawer reaches before its
/// case.
#[derive(Clone, Copy, Debug)]
pub struct NeededBefore {
    /// Of the sheet.
    pub asked: Option<Length>,
    /// By the door.
    pub reach: Option<Length>,
}

/// By what the floor before an opening is short of what its thing needs; none where it is not, or nobody knows.
pub fn floor_before(
    plan: Option<&Plan<'_>>,
    room: &Room,
    opening: &Opening,
    option: &ProductOption,
    needed: NeededBefore,
) -> Option<ShortFloor> {
    if let Some(said) = opening.in_front.spanned() {
        let reach = needed.reach.map(|reach| reach + case_stands_out(room, opening, option));
        let needed = needed.asked.into_iter().chain(reach).max()?;
        return short(ShortFloor { there: said.value, needed, at: said.span, met: None });
    }
    if !opening.in_front.is_absent() {
        return None;
    }
    by_plan(plan?, opening, option, needed)
}

/// What the sheet asks for counts from the door to whatever is across; what the door reaches, from the case to the wall:
/// that it strikes a thing is a clash.
fn by_plan(plan: &Plan<'_>, opening: &Opening, option: &ProductOption, needed: NeededBefore) -> Option<ShortFloor> {
    let own = plan.opening(opening).filter(|_| plan.is_sound())?;
    let depths = depths(own, option);
    let front = depths.map_or(plan.front(own), |depths| depths.door.max(plan.front(own)));
    let case = depths.map_or(own.out.1, |depths| depths.case.max(own.out.1));
    let asked = needed.asked.and_then(|asked| Some((asked, plan.clear_from(own, front)?)));
    let reach = needed.reach.and_then(|reach| Some((reach, plan.to_the_wall_before(own, case)?)));
    let shorts = asked.into_iter().chain(reach).filter_map(|(needed, clear)| {
        // A door in the wall across is opened first.
        if clear.wall().is_some_and(|wall| plan.has_a_door_before(own, wall)) {
            return None;
        }
        let at = clear.to.thing().map(|thing| thing.span).or_else(|| plan.room.outline.span());
        let met = at.map(|at| (clear.to.name(plan), at));
        short(ShortFloor { there: clear.distance, needed, at: own.span, met })
    });
    shorts.max_by_key(|short| short.needed - short.there)
}

fn short(floor: ShortFloor) -> Option<ShortFloor> {
    (floor.there < floor.needed).then_some(floor)
}
