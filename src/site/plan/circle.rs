//! The greatest circle of clear floor, in which a wheelchair turns.

use crate::units::Length;

use super::frame::Point;
use super::outline;
use super::shape::ConvexShape;
use super::thing::Thing;
use super::{Met, Plan};

/// To so much a circle's diameter is told, rounded down; and the side of a square of floor that is looked at no closer.
const STEP: Length = Length::from_sixty_fourths(16);
const FINEST: Length = Length::from_sixty_fourths(2);

/// A square of floor by its middle, with half of its side.
#[derive(Clone, Copy)]
struct Square {
    middle: Point,
    half: Length,
}

impl<'a> Plan<'a> {
    /// The diameter of the greatest circle of floor that is clear of walls and of what stands there, as far as that much;
    /// none for a room without an outline. What is left out takes no floor.
    pub fn greatest_circle(&self, enough: Length, is_left_out: &dyn Fn(&Thing<'a>) -> bool) -> Option<Length> {
        let counts = |met: &Met<'_, 'a>| !met.thing().is_some_and(is_left_out);
        let shapes: Vec<&ConvexShape> =
            self.on_the_floor().filter(|(met, _)| counts(met)).map(|(_, shape)| shape).collect();
        let radius = |at: Point| {
            if !outline::is_inside(&self.walls, at) || shapes.iter().any(|shape| shape.contains(at)) {
                return Length::ZERO;
            }
            let point = ConvexShape::new(vec![at]);
            shapes.iter().map(|shape| shape.distance(&point)).min().unwrap_or(enough)
        };
        let mut open = vec![self.whole()?];
        let mut best = Length::ZERO;
        while let Some(square) = open.pop() {
            let here = radius(square.middle);
            best = best.max(here);
            if best.times(2) >= enough {
                return Some(enough);
            }
            // Nowhere in the square is it more than this: its corners are less than 3/2 of its half side away.
            let at_most = here + (square.half.times(3)).half();
            if square.half > FINEST && at_most > best {
                let half = square.half.half();
                let parts = [(-1, -1), (-1, 1), (1, -1), (1, 1)].map(|(x, y)| Square {
                    middle: Point::new(square.middle.x + half.times(x), square.middle.y + half.times(y)),
                    half,
                });
                open.extend(parts);
            }
        }
        // What was looked at no closer may hold so much more.
        let at_most = best.times(2) + FINEST.times(3);
        let steps = at_most.nanometres() / STEP.nanometres();
        Some(STEP.times(steps))
    }

    /// The least square around the room.
    fn whole(&self) -> Option<Square> {
        let (left, right) = (self.corners.iter().map(|at| at.x).min()?, self.corners.iter().map(|at| at.x).max()?);
        let (low, high) = (self.corners.iter().map(|at| at.y).min()?, self.corners.iter().map(|at| at.y).max()?);
        let middle = Point::new((left + right).half(), (low + high).half());
        Some(Square { middle, half: (right - left).max(high - low).half() })
    }
}
