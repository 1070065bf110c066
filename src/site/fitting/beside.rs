//! What stands beside an opening: whether a door meets it, whether it rises above the counter.

use crate::book::{Hinge, Neighbour, Opening, ProductOption, Room, Slot};
use crate::vocabulary::Said;

use super::front_edge;

/// A side of an opening, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

impl Side {
    /// Its word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// What stands there.
    pub fn of(self, opening: &Opening) -> &Slot<Neighbour> {
        match self {
            Self::Left => &opening.left,
            Self::Right => &opening.right,
        }
    }
}

/// The sides that a door hangs on; for one that can be hung either way, both, and `true`: one
/// that is free is enough.
pub fn hinge_sides(option: &ProductOption) -> (&'static [Side], bool) {
    match option.hinge.get() {
        Some(Hinge::Left) => (&[Side::Left], false),
        Some(Hinge::Right) => (&[Side::Right], false),
        Some(Hinge::Both) => (&[Side::Left, Side::Right], false),
        Some(Hinge::Either) => (&[Side::Left, Side::Right], true),
        Some(Hinge::None) | None => (&[], false),
    }
}

/// Whether a door that opens beside it would strike it: a wall, or something that stands out
/// further than what surrounds the opening.
pub fn stands_in_the_door_s_way(neighbour: &Neighbour, room: &Room, opening: &Opening) -> bool {
    let proud = neighbour.depth.get().zip(front_edge(room, opening)).is_some_and(|(depth, edge)| *depth > edge);
    proud || (Said::Built.is_in(&neighbour.what) && !Said::Furniture.is_in(&neighbour.what))
}

/// Whether it rises above the counter: a wall, a wall cabinet, a tall cabinet.
pub fn rises_above_counter(neighbour: &Neighbour) -> bool {
    Said::Built.is_in(&neighbour.what) || Said::Tall.is_in(&neighbour.what)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn neighbour(what: &str) -> Neighbour {
        Neighbour {
            what: what.into(),
            gap: Slot::Absent,
            height: Slot::Absent,
            top: Slot::Absent,
            depth: Slot::Absent,
            burning: Slot::Absent,
        }
    }

    #[test]
    fn walls_and_tall_cabinets_rise_above_the_counter_and_base_cabinets_do_not() {
        for what in ["wall", "Party wall", "wall cabinet", "tall cabinet", "full-height panel", "pantry"] {
            assert!(rises_above_counter(&neighbour(what)), "{what}");
        }
        for what in ["base cabinet", "drawers", "counter", "dishwasher"] {
            assert!(!rises_above_counter(&neighbour(what)), "{what}");
        }
    }
}
