//! What stands beside an opening: whether a door meets it, whether it rises above the counter.

use crate::book::{Hinge, Neighbour, Opening, Plainly, ProductOption, Room, Slot};
use crate::units::Length;
use crate::vocabulary::{Mention, words_of};

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
    // A wall light is no wall: `clear/door-swing` tells of it.
    let is_furnishing = Mention::Furniture.is_in(&neighbour.what) || is_a_light(&neighbour.what);
    proud || (Mention::Built.is_in(&neighbour.what) && !is_furnishing)
}

/// Whether it is called a light: `wall light`, and no `wall with light switch`.
fn is_a_light(what: &str) -> bool {
    words_of(what).last().is_some_and(|word| Mention::Light.is_in(word))
}

/// Whether nobody knows if a door that opens beside it would strike it: nobody says how far out it stands, and its word
/// is none of what is known to end with its row.
pub fn may_stand_in_the_door_s_way(neighbour: &Neighbour) -> bool {
    let what = &neighbour.what;
    let ends_with_its_row =
        (Mention::Furniture.is_in(what) || Mention::Low.is_in(what) || Mention::Closure.is_in(what))
            && !Mention::Tall.is_in(what);
    let is_free = neighbour.is_nothing() || Mention::Open.is_in(what) || is_a_light(what);
    !is_free && neighbour.depth.is_absent() && !ends_with_its_row
}

/// How far up a neighbour goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rises {
    /// Nothing stands there.
    Nothing,
    /// No higher than the counter.
    ToTheCounter,
    /// Above it.
    AboveTheCounter,
    /// All the way: it is of the building.
    Built,
    /// Nobody says, in a figure or in words that are known.
    Unsaid,
}

/// How far up a neighbour goes: by its `top` against the counter, else by its words.
pub fn rises(neighbour: &Neighbour, counter: Option<Length>) -> Rises {
    rises_to(neighbour, neighbour.top.get().copied().zip(counter))
}

/// By a top and the counter's, where both are known.
fn rises_to(neighbour: &Neighbour, figures: Option<(Length, Length)>) -> Rises {
    let what = &neighbour.what;
    if neighbour.is_nothing() || Mention::Open.is_in(what) {
        return Rises::Nothing;
    }
    let is_built = Mention::Built.is_in(what) || neighbour.plainly() == Some(Plainly::Ceiling);
    if is_built && !Mention::Furniture.is_in(what) {
        return Rises::Built;
    }
    if let Some((top, counter)) = figures {
        return if top > counter { Rises::AboveTheCounter } else { Rises::ToTheCounter };
    }
    match (is_built || Mention::Tall.is_in(what), Mention::Low.is_in(what)) {
        (true, _) => Rises::AboveTheCounter,
        (false, true) => Rises::ToTheCounter,
        (false, false) => Rises::Unsaid,
    }
}

/// Whether it is known to rise above the counter, by its words: a wall, a wall cabinet, a tall cabinet.
pub fn rises_above_counter(neighbour: &Neighbour) -> bool {
    Mention::Built.is_in(&neighbour.what) || Mention::Tall.is_in(&neighbour.what)
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

    #[test]
    fn how_far_up_a_neighbour_goes_is_told_by_its_top_and_else_by_its_words() {
        let counter = Some(Length::from_inches(36));
        for (what, goes) in [
            ("nothing", Rises::Nothing),
            ("open to the hall", Rises::Nothing),
            ("Wall", Rises::Built),
            ("door casing", Rises::Built),
            ("wall cabinet", Rises::AboveTheCounter),
            ("Pantry", Rises::AboveTheCounter),
            ("refrigerator", Rises::AboveTheCounter),
            ("Base cabinet", Rises::ToTheCounter),
            ("three drawers", Rises::ToTheCounter),
            ("worktop", Rises::ToTheCounter),
            ("end panel", Rises::Unsaid),
        ] {
            assert_eq!(rises(&neighbour(what), counter), goes, "{what}");
        }
        let inches = Length::from_inches;
        assert_eq!(rises_to(&neighbour("end panel"), Some((inches(84), inches(36)))), Rises::AboveTheCounter);
        assert_eq!(rises_to(&neighbour("cabinet"), Some((inches(36), inches(36)))), Rises::ToTheCounter);
        assert_eq!(rises_to(&neighbour("wall"), Some((inches(36), inches(36)))), Rises::Built);
    }
}
