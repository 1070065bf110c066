//! The trim around doors and windows of the plan: how wide it is, how far it stands out.

use crate::book::{End, Slot};
use crate::units::Length;

use super::{ConvexShape, Hole, HoleIs, Plan, Thing};

/// How wide a casing is where nobody says (common practice: 2 1/4" to 3 1/2").
const USUAL_WIDTH: Length = Length::from_sixty_fourths(224);
/// How far a casing stands out where nobody says (common practice: 11/16" to 3/4").
const USUAL_THICKNESS: Length = Length::from_sixty_fourths(48);

/// The trim around a door or a window, in its place.
pub struct Casing<'a> {
    /// Whose it is.
    pub of: HoleIs<'a>,
    /// What it covers in plan, the hole itself counted.
    pub shape: ConvexShape,
    low: Option<Length>,
    high: Option<Length>,
}

impl Casing<'_> {
    /// Whether some of it stands between those heights; what is not known does.
    pub fn stands_between(&self, low: Length, high: Option<Length>) -> bool {
        self.high.is_none_or(|own| own > low) && self.low.zip(high).is_none_or(|(own, high)| own < high)
    }
}

/// A casing at the wall beside a thing, and how far away it is.
pub struct CasingBeside<'a> {
    /// Whose it is.
    pub of: HoleIs<'a>,
    /// From the thing's side to its face.
    pub gap: Length,
}

impl<'a> Plan<'a> {
    /// The casings of its doors and windows.
    pub fn casings(&self) -> Vec<Casing<'a>> {
        let casing = |hole: &Hole<'a>| {
            let wide = width(hole.is);
            let along = (hole.along.0 - wide, hole.along.1 + wide);
            Casing {
                of: hole.is,
                shape: ConvexShape::rectangle(&hole.frame, along, (Length::ZERO, thickness(hole.is))),
                low: hole.low.map(|low| low - wide),
                high: hole.high.map(|high| high + wide),
            }
        };
        self.holes.iter().map(casing).collect()
    }

    /// The nearest casing at a wall across that side of a thing, between two distances out from its frame: one
    /// of which the book says how wide it is or how far it stands out, at the thing's own height.
    pub fn casing_beside(&self, thing: &Thing<'a>, side: End, out: (Length, Length)) -> Option<CasingBeside<'a>> {
        let from = if side == End::Left { thing.along.0 } else { thing.along.1 };
        let across = self.holes.iter().zip(self.casings()).filter(|(hole, _)| hole.frame != thing.frame);
        let said = across.filter(|(hole, _)| written(hole.is).is_some() || said_thickness(hole.is).get().is_some());
        let level = said.filter(|(_, casing)| casing.stands_between(thing.low, thing.high));
        let beside = level.filter_map(|(_, casing)| {
            let (first, last) = casing.shape.beside(&thing.frame, out)?;
            let gap = if side == End::Left { from - last } else { first - from };
            (!gap.is_negative()).then_some(CasingBeside { of: casing.of, gap })
        });
        beside.min_by_key(|beside| beside.gap)
    }
}

/// How wide the trim around a door or window is, as written or as is usual.
fn width(hole: HoleIs<'_>) -> Length {
    written(hole).copied().unwrap_or(USUAL_WIDTH)
}

/// How wide the book says that it is.
pub fn written(hole: HoleIs<'_>) -> Option<&Length> {
    match hole {
        HoleIs::Door(door) => door.casing.get(),
        HoleIs::Window(window) => window.casing.get(),
    }
}

fn thickness(hole: HoleIs<'_>) -> Length {
    said_thickness(hole).get().copied().unwrap_or(USUAL_THICKNESS)
}

/// How far the book says that it stands out.
fn said_thickness<'a>(hole: HoleIs<'a>) -> &'a Slot<Length> {
    match hole {
        HoleIs::Door(door) => &door.casing_thickness,
        HoleIs::Window(window) => &window.casing_thickness,
    }
}
