//! The trim around doors and windows of the plan: how wide it is, how far it stands out.

use crate::book::Slot;
use crate::site::plan::{Hole, HoleIs, Plan, Shape};
use crate::units::Length;

/// How wide a casing is where nobody says (common practice: 2 1/4" to 3 1/2").
const USUAL_WIDTH: Length = Length::from_sixty_fourths(224);
/// How far a casing stands out where nobody says (common practice: 11/16" to 3/4").
const USUAL_THICKNESS: Length = Length::from_sixty_fourths(48);

/// The trim around a door or a window, in its place.
pub struct Casing<'a> {
    /// Whose it is.
    pub of: HoleIs<'a>,
    /// What it covers in plan, the hole itself counted.
    pub shape: Shape,
    low: Option<Length>,
    high: Option<Length>,
}

impl Casing<'_> {
    /// Whether some of it stands between those heights; what is not known does.
    pub fn stands_between(&self, low: Length, high: Option<Length>) -> bool {
        self.high.is_none_or(|own| own > low) && self.low.zip(high).is_none_or(|(own, high)| own < high)
    }
}

/// The casings of a plan.
pub fn casings<'a>(plan: &Plan<'a>) -> Vec<Casing<'a>> {
    let casing = |hole: &Hole<'a>| {
        let wide = width(hole.is);
        let along = (hole.along.0 - wide, hole.along.1 + wide);
        Casing {
            of: hole.is,
            shape: Shape::rectangle(&hole.frame, along, (Length::ZERO, thickness(hole.is))),
            low: hole.low.map(|low| low - wide),
            high: hole.high.map(|high| high + wide),
        }
    };
    plan.holes.iter().map(casing).collect()
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
    let slot: &Slot<Length> = match hole {
        HoleIs::Door(door) => &door.casing_thickness,
        HoleIs::Window(window) => &window.casing_thickness,
    };
    slot.get().copied().unwrap_or(USUAL_THICKNESS)
}
