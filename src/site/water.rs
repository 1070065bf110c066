//! How far glass is from a tub or a shower.

use crate::book::Window;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Trait;

use super::plan::{ConvexShape, Frame, HoleIs, Plan};

/// Over how much of its run the slope of a ceiling is taken.
const STEP: Length = Length::from_inches(12);

/// Level distance from a window to the nearest edge of a tub or a shower, and where that is written; none
/// where the plan has not both.
pub fn from_water(plan: &Plan<'_>, window: &Window) -> Option<(Length, Span)> {
    let glass = in_its_wall(plan, window).or_else(|| in_the_roof(plan, window))?;
    let wet = plan.things.iter().filter(|thing| thing.has(Trait::Bathes) && thing.out.1 > thing.out.0);
    wet.map(|thing| (glass.distance(&thing.footprint()), thing.span)).min_by_key(|(away, _)| *away)
}

fn in_its_wall(plan: &Plan<'_>, window: &Window) -> Option<ConvexShape> {
    let own = |hole: &&super::plan::Hole<'_>| matches!(hole.is, HoleIs::Window(of) if std::ptr::eq(of, window));
    let hole = plan.holes.iter().find(own)?;
    Some(ConvexShape::new(vec![hole.frame.at(hole.along.0, Length::ZERO), hole.frame.at(hole.along.1, Length::ZERO)]))
}

/// Where a window in the slope lies in plan: from where the ceiling is as high as its sill to where it is as
/// high as its head.
fn in_the_roof(plan: &Plan<'_>, window: &Window) -> Option<ConvexShape> {
    plan.in_the_roof.iter().find(|other| std::ptr::eq(**other, window))?;
    let wall = plan.walls.get(plan.wall_named(window.wall.get()?)?)?;
    let from = *window.at.get()?;
    let along = (from, from + *window.width.get()?);
    let sill = *window.sill.get()?;
    let head = sill + window.height.get().copied().unwrap_or_default();
    let middle = (along.0 + along.1).half();
    let out = |height| out_to(plan, &wall.frame, middle, height);
    Some(ConvexShape::rectangle(&wall.frame, along, (out(sill)?, out(head)?)))
}

/// How far out from a wall the ceiling is so high; no less than at the wall.
fn out_to(plan: &Plan<'_>, frame: &Frame, along: Length, height: Length) -> Option<Length> {
    let low = plan.ceiling_at(frame.at(along, Length::ZERO))?;
    let rise = plan.ceiling_at(frame.at(along, STEP))? - low;
    if rise <= Length::ZERO || height <= low {
        return Some(Length::ZERO);
    }
    let out = i128::from((height - low).nanometres()) * i128::from(STEP.nanometres()) / i128::from(rise.nanometres());
    Some(Length::from_nanometres(i64::try_from(out).ok()?))
}
