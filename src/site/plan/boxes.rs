//! Puts the boxes of switches and outlets in their place, and tells how far each is from the nearest door or window.

use crate::book::{End, WallBox};
use crate::units::Length;

use super::place::Placing;
use super::thing::{RowOf, Stands};
use super::{Hole, Plan};

/// A box in its place.
#[derive(Clone, Copy, Debug)]
pub struct BoxInPlace<'a> {
    /// The box.
    pub of: &'a WallBox,
    /// What it is in.
    pub stands: Stands,
    /// Its centre from the left end of that, where it is written.
    pub along: Option<Length>,
}

impl<'a> Placing<'a> {
    /// Every box whose wall, door, window or island is there.
    pub(super) fn boxes(&mut self) {
        let room = self.room;
        for of in room.switches.iter().chain(&room.outlets) {
            let Some((stands, along)) = self.place_of(of) else { continue };
            if let (Some(along), Stands::Wall(wall)) = (along, stands) {
                self.within(wall, (along, along), &of.name, of.name.span);
            }
            self.plan.boxes.push(BoxInPlace { of, stands, along });
        }
    }

    /// What a box is in, and its centre along it.
    fn place_of(&mut self, of: &'a WallBox) -> Option<(Stands, Option<Length>)> {
        let centre = of.centre.get().copied();
        if let Some(name) = of.beside.get() {
            let hole = self.plan.holes.iter().find(|hole| hole.name() == name)?;
            let along = centre.map(|out| match of.from {
                End::Left => hole.along.0 - out,
                End::Right => hole.along.1 + out,
            });
            return Some((Stands::Wall(hole.wall), along));
        }
        let (stands, long) = match of.island.get() {
            Some(name) => {
                let side = of.side.get()?;
                let is_it =
                    |of: RowOf<'_>| matches!(of, RowOf::Side(own, at) if own.name.value == *name && at == *side);
                let row = self.plan.rows.iter().find(|row| is_it(row.of))?;
                (row.stands, row.frame.length())
            }
            None => {
                let number = self.wall(&of.wall, &of.name)?;
                (Stands::Wall(number), self.plan.walls.get(number)?.frame.length())
            }
        };
        let along = centre.map(|centre| if of.from == End::Right { long - centre } else { centre });
        Some((stands, along))
    }
}

impl<'a> Plan<'a> {
    /// Where a box is.
    pub fn wall_box(&self, of: &WallBox) -> Option<&BoxInPlace<'a>> {
        self.boxes.iter().find(|one| std::ptr::eq(one.of, of))
    }

    /// The door or window nearest to a place along a wall, and how far from its edge that is; none where the place
    /// lies within one.
    pub fn nearest_hole(&self, wall: usize, along: Length) -> Option<(&Hole<'a>, Length)> {
        let away = |hole: &Hole<'_>| (hole.along.0 - along).max(along - hole.along.1);
        let holes = self.holes.iter().filter(|hole| hole.wall == wall);
        let (hole, away) = holes.map(|hole| (hole, away(hole))).min_by_key(|(_, away)| *away)?;
        (away >= Length::ZERO).then_some((hole, away))
    }
}
