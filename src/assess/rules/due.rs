//! By when what a rule finds must be settled.

use crate::book::Selection;
use crate::vocabulary::HoldPoint;

/// By when what a rule finds must be settled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Due {
    /// At once: a fault of the files or of the record, which no waiver sets aside.
    AtOnce,
    /// At that hold point.
    By(HoldPoint),
    /// With the thing that it speaks of: with the earliest order or closing that rests on it.
    WithThing,
    /// Before the thing is set: on the day on which it is needed.
    WhenSet,
}

impl Due {
    /// The hold point for what is found of such a thing; none for what is mended at once.
    pub fn of(self, thing: Option<&Selection>) -> Option<HoldPoint> {
        match self {
            Self::AtOnce => None,
            Self::By(point) => Some(point),
            Self::WithThing => Some(for_thing(thing)),
            Self::WhenSet => Some(HoldPoint::GoodsReleased),
        }
    }
}

/// By when a thing itself must be settled.
pub fn for_thing(thing: Option<&Selection>) -> HoldPoint {
    thing.and_then(|thing| thing.kind.get()).map_or(HoldPoint::GoodsOrdered, |kind| kind.due())
}
