//! Switches and outlets, each by the place of its box in a wall or in a side of an island.

use super::{End, IslandSide};
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::supply::{Power, Worded};
use crate::vocabulary::{Code, Faults, Slot, Usual, name, record};

record! {
    item
    pub struct WallBox = WALL_BOX("box in a wall", "the box of switches or outlets, set out by its centre: along a wall, from a side of a door or window, or along a side of an island") {
        wall: Slot<String> = "wall", "the wall that it is in", "D" as name::Wall;
        beside: Slot<String> = "beside", "the door or window that it is set out from, in place of its wall", "hall door";
        island: Slot<String> = "island", "the island that it is in, in place of a wall", "island";
        side: Slot<IslandSide> = "side", "the side of that island", "right side";
        centre: Slot<Length> = "centre",
            "from an end of that wall or side, or out from a side of that door or window, to its centre",
            "6\"";
        from: End = "from",
            "the end or side that it is set out from, seen from the front; the left if left out",
            "right" as Usual;
        height: Slot<Length> = "height", "its centre from the finished floor", "42\"";
        selection: Slot<String> = "selection", "what is chosen for it", "Dimmers" as name::Selection;
        count: Slot<u32> = "count", "how many of it side by side; one if left out", "2";
        works: Vec<Spanned<String>> = "works",
            "what its switches work: selections, lights of the plan or outlets, by name",
            "[Pendants]" as name::Selection;
        power: Slot<Worded<Power>> = "power", "volts, amperes and receptacle", "120 V 20 A 5-20";
        note: Slot<String> = "note", "a line for the electrician", "Behind the shelf: keep it shallow.";
    }
    then WallBox::when_read
}

impl WallBox {
    /// It is set out from one thing, and a side is one of an island.
    fn when_read(self, at: Span, faults: &mut Faults) -> Option<Self> {
        let faces = [&self.wall, &self.beside, &self.island].into_iter().filter(|face| !face.is_absent()).count();
        if faces > 1 {
            let remedy = "write one of `wall`, `beside` and `island`";
            faults.stop(Code::WRONG_TYPE, at, "this box is set out from more than one thing", remedy);
            return None;
        }
        if !self.side.is_absent() && self.island.is_absent() {
            let remedy = "add `island: …`, or leave `side` out";
            faults.stop(Code::WRONG_TYPE, at, "this box is in a side, and nobody says of which island", remedy);
            return None;
        }
        Some(self)
    }

    /// How many switches or outlets it holds.
    pub fn holds(&self) -> u32 {
        self.count.get().copied().unwrap_or(1)
    }
}
