//! What stands on the floor of a room, and the walls beside a thing.

use crate::book::End;
use crate::units::Length;

use super::shape::ConvexShape;
use super::thing::Thing;
use super::{Met, Plan};

impl<'a> Plan<'a> {
    /// Everything that stands in the way of somebody who walks, and every wall.
    pub fn on_the_floor(&self) -> impl Iterator<Item = (Met<'_, 'a>, &ConvexShape)> {
        let things = self.standing().filter(|(thing, _)| thing.is_in_the_way());
        let things = things.map(|(thing, covered)| (Met::Thing(thing), &covered.to_front));
        let walls = self.walls.iter().enumerate().filter(|(_, wall)| !wall.is_open());
        things.chain(walls.map(|(number, wall)| (Met::Wall(number), &wall.face)))
    }

    /// Where the nearest wall at a side of a thing is, along the thing's own frame; none where the room is open there.
    pub fn wall_beside(&self, thing: &Thing<'a>, side: End) -> Option<Length> {
        let walls = self.walls.iter().filter(|wall| !wall.is_open());
        let faces = walls.filter_map(|wall| wall.face.beside(&thing.frame, (Length::ZERO, thing.out.1)));
        match side {
            End::Left => faces.map(|(_, last)| last).filter(|last| *last <= thing.centre()).max(),
            End::Right => faces.map(|(first, _)| first).filter(|first| *first >= thing.centre()).min(),
        }
    }
}
