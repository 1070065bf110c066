//! What the maker's sheet asks of an opening, and how a single figure of it is meant: as the measure that such a hole is
//! built to, a little more of which is as good.

use super::DimensionCheck;
use crate::book::{Fit, Opening};
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Slot, Trait};

/// So much more than a single figure is not seen beside what stands there: 1/4 in (common practice).
const NOT_SEEN: Length = Length::from_sixty_fourths(16);

pub(super) fn width(opening: &Opening, fit: &Fit) -> DimensionCheck {
    let asks = &fit.opening.width;
    DimensionCheck { hides: hidden_beside(opening, asks), ..asked(asks) }
}

/// What stands on the floor may have more room above it than a sheet's single figure says.
pub(super) fn height(opening: &Opening, fit: &Fit) -> DimensionCheck {
    let mut gauge = asked(&fit.opening.height);
    let single = single(&fit.opening.height).filter(|_| opening.stands_on_the_floor());
    if let Some(least) = single {
        gauge.asked = Some(LengthRange::at_least(least));
    }
    gauge.hides = single.is_none().then(|| hidden_beside(opening, &fit.opening.height)).flatten();
    gauge
}

/// Of what is cut into a counter its depth is a side of the hole; of all else a single figure is the least.
pub(super) fn depth(opening: &Opening, fit: &Fit) -> DimensionCheck {
    let mut gauge = asked(&fit.opening.depth);
    if let Some(least) = single(&fit.opening.depth).filter(|_| !opening.takes_one(Trait::CutIntoCounter)) {
        gauge.asked = Some(LengthRange::at_least(least));
    }
    gauge
}

/// How much more than a single figure is no matter beside what stands there; what is cut into a counter is cut as its
/// sheet says.
fn hidden_beside(opening: &Opening, asks: &Slot<LengthRange>) -> Option<Length> {
    single(asks).filter(|_| !opening.takes_one(Trait::CutIntoCounter)).map(|_| NOT_SEEN)
}

fn single(asks: &Slot<LengthRange>) -> Option<Length> {
    asks.get().filter(|asked| asked.least == asked.most)?.least
}

fn asked(slot: &Slot<LengthRange>) -> DimensionCheck {
    DimensionCheck { asked: slot.get().copied(), asked_at: slot.span(), ..DimensionCheck::default() }
}
