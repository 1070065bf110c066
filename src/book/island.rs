//! Islands and peninsulas, and their sides.

use super::{Part, Splash};
use crate::units::Length;
use crate::vocabulary::{Slot, name, record, words};

record! {
    item
    pub struct Island = ISLAND("island", "an island or peninsula, set out from a wall that it is parallel to") {
        wall: Slot<String> = "wall", "the wall that it is set out from", "A" as name::Wall;
        at: Slot<Length> = "at", "from the wall's left end to its left end", "40\"";
        away: Slot<Length> = "away", "from the wall's face to the edge of its counter", "67 1/2\"";
        size: Slot<(Length, Length)> = "size", "its counter, along the wall and away from it", "96\" x 42\"";
        turned: Slot<bool> = "turned",
            "whether it is turned by a quarter, the first side of its size away from the wall",
            "true";
        height: Slot<Length> = "height", "its top from the finished floor", "36\"";
        depth: Slot<Length> = "depth", "depth of its cabinets, where a part gives none", "24\"";
        handles: Slot<Length> = "handles", "how far its handles stand out from the doors", "1 3/8\"";
        toe_kick: Slot<Length> = "toe kick", "height of the recess at its foot, from the finished floor", "4\"";
        note: Slot<String> = "note", "a line for the joiner", "Set before the floor is laid.";
        wall_side: IslandEdge = "wall side", "the side that faces the wall", "{parts: […]}";
        room_side: IslandEdge = "room side", "the side away from it", "{overhang: 15\", seats: 3}";
        left_side: IslandEdge = "left side", "its left side, seen facing the wall", "{overhang: 1\"}";
        right_side: IslandEdge = "right side", "its right side", "{overhang: 12\", seats: 1}";
    }
}

impl Island {
    /// What is said of a side.
    pub fn side(&self, side: IslandSide) -> &IslandEdge {
        match side {
            IslandSide::Wall => &self.wall_side,
            IslandSide::Room => &self.room_side,
            IslandSide::Left => &self.left_side,
            IslandSide::Right => &self.right_side,
        }
    }

    /// What is said of each side, in the order of [`IslandSide::ALL`].
    pub fn sides(&self) -> impl Iterator<Item = &IslandEdge> {
        IslandSide::ALL.into_iter().map(|side| self.side(side))
    }
}

words! {
    /// A side of an island, by its key in the book.
    pub enum IslandSide {
        /// It faces the wall that the island is set out from.
        Wall = "wall side" also "wall",
        /// It faces away from that wall.
        Room = "room side" also "room",
        /// Its left, seen facing the wall.
        Left = "left side" also "left",
        /// Its right.
        Right = "right side" also "right",
    }
}

impl IslandSide {
    /// Every side.
    pub const ALL: [Self; 4] = [Self::Wall, Self::Room, Self::Left, Self::Right];
}

record! {
    group
    #[derive(Default)]
    pub struct IslandEdge = SIDE("side of an island", "a side of an island: how far the counter overhangs, who sits there, what stands in it") {
        overhang: Slot<Length> = "overhang", "from the body to the counter's edge", "15\"";
        seats: Slot<u32> = "seats", "how many sit there", "3";
        finished: Slot<bool> = "finished", "whether what is seen of the cabinets there is finished", "true";
        splash: Slot<Splash> = "splash",
            "what stands up from the counter along it: a raised back",
            "{thickness: 5\", height: 6\"}";
        parts: Vec<Part> = "parts",
            "what stands in it from left to right, seen from that side",
            "[{cabinet: drawers, width: 36\", drawers: 3}]";
    }
}
