//! What each thing covers of the floor, found once when all stand in their places.

use super::Plan;
use super::shape::ConvexShape;
use super::thing::Thing;

/// What one thing covers.
#[derive(Clone, Debug)]
pub(super) struct Covered {
    /// Its own footprint.
    pub(super) footprint: ConvexShape,
    /// The same, as far out as its front reaches: see [`Plan::front`].
    pub(super) to_front: ConvexShape,
}

impl<'a> Plan<'a> {
    /// Finds what each thing covers.
    pub(super) fn cover(&mut self) {
        let covered = self.things.iter().map(|thing| {
            let to_front = thing.covers(self.front(thing));
            Covered { footprint: thing.footprint(), to_front }
        });
        self.covered = covered.collect();
    }

    /// Every thing, with what it covers.
    pub(super) fn standing(&self) -> impl Iterator<Item = (&Thing<'a>, &Covered)> {
        self.things.iter().zip(&self.covered)
    }
}
