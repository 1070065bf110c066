//! What doors, drawers and lids sweep as they open, handles included.

use crate::book::{DoorHinge, DoorSwing, Doorway, End, Fixture, Hinge, IslandSide, PartIs, ProductOption, Room};
use crate::units::Length;

use super::clear::with_handles;
use super::frame::{Frame, divided, length, nm};
use super::glass::shower_door;
use super::shape::{ConvexShape, Turn};
use super::thing::{Stands, Thing, What};
use super::{Hole, HoleIs, Plan};

/// More doors than a cabinet has.
const MOST_DOORS: u32 = 20;

/// Something that opens, and the floor that it sweeps.
#[derive(Clone, Debug)]
pub struct Sweep {
    /// How it opens.
    pub how: Opens,
    /// What it covers in plan on the way.
    pub shape: ConvexShape,
    /// How far it reaches: a leaf from its hinge, a drawer or a dropped door from where it is shut.
    pub reach: Length,
    /// Where it is shut: the hinge of a leaf, else both ends of its front.
    shut: ConvexShape,
    /// Its lower edge from the finished floor.
    pub low: Length,
    /// Its upper edge, where it is known.
    pub high: Option<Length>,
}

/// How something opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opens {
    /// A door that turns on a hinge.
    Swings,
    /// A door that drops.
    Drops,
    /// A drawer or pull-out.
    Pulls,
}

impl Opens {
    /// What moves.
    pub fn word(self) -> &'static str {
        match self {
            Self::Swings | Self::Drops => "door",
            Self::Pulls => "drawer",
        }
    }
}

impl Sweep {
    /// How far it comes before it meets something: from its hinge, or from its front. None where it
    /// does not meet it at all.
    pub fn meets(&self, body: &ConvexShape) -> Option<Length> {
        self.shape.overlaps(body).then(|| self.shut.distance(body))
    }

    /// Whether its height and that of a thing have some in common.
    pub fn is_level_with(&self, thing: &Thing<'_>) -> bool {
        thing.is_level_with(self.low, self.high)
    }

    /// Whether two doors share some height.
    pub fn is_level_with_sweep(&self, other: &Self) -> bool {
        let below = |one: &Self, other: &Self| one.high.is_some_and(|high| high <= other.low);
        !below(self, other) && !below(other, self)
    }
}

impl<'a> Plan<'a> {
    /// What a thing sweeps as it opens: of an opening with that option in it, of a cabinet by its doors
    /// and drawers, of a fixture by its door.
    pub fn sweeps(&self, thing: &Thing<'a>, option: Option<&ProductOption>) -> Vec<Sweep> {
        let opened = match (thing.what, option) {
            (_, Some(option)) => of_option(thing, option),
            (What::Part(_), None) => of_cabinet(thing),
            (What::Fixture(fixture), None) => of_fixture(self.room, thing, fixture),
            _ => vec![],
        };
        opened.into_iter().map(|opened| opened.sweep(&thing.frame, (thing.low, thing.high))).collect()
    }

    /// What a door of the room sweeps; nothing for one that slides, swings out, or is not described.
    pub fn door_sweeps(&self, hole: &Hole<'a>) -> Vec<Sweep> {
        let HoleIs::Door(door) = hole.is else { return vec![] };
        let swings_in = door.swings.get() == Some(&DoorSwing::In) && door.slides.get() != Some(&true);
        let Some(hinge) = door.hinge.get().filter(|_| swings_in) else { return vec![] };
        self.door_sweeps_hung(hole, *hinge)
    }

    /// What a door would sweep that swings into the room, hung there.
    pub fn door_sweeps_hung(&self, hole: &Hole<'a>, hinge: DoorHinge) -> Vec<Sweep> {
        let HoleIs::Door(door) = hole.is else { return vec![] };
        let width = hole.along.1 - hole.along.0;
        let both = hinge == DoorHinge::Both;
        let leaf = leaf_of(door, width, both);
        let mut leaves = Vec::new();
        if both || hinge == DoorHinge::Left {
            leaves.push(Opened::Turns { hinge: hole.along.0, out: Length::ZERO, leaf, to_the_right: true });
        }
        if both || hinge == DoorHinge::Right {
            leaves.push(Opened::Turns { hinge: hole.along.1, out: Length::ZERO, leaf, to_the_right: false });
        }
        leaves.into_iter().map(|opened| opened.sweep(&hole.frame, (Length::ZERO, hole.high))).collect()
    }

    /// Whether two things stand at the same wall, or at the same side of an island. An island stands at
    /// no wall, whichever it is set out from.
    pub fn share_a_face(&self, one: &Thing<'a>, other: &Thing<'a>) -> bool {
        if [one, other].iter().any(|thing| matches!(thing.what, What::Island(_))) {
            return false;
        }
        let side = |thing: &Thing<'a>| match thing.stands {
            Stands::Wall(number) => (Some(number), None::<(usize, IslandSide)>),
            Stands::Island(number, side) => (None, Some((number, side))),
        };
        side(one) == side(other)
    }
}

/// The width of a door's leaf, or of each of two.
fn leaf_of(door: &Doorway, width: Length, both: bool) -> Length {
    door.leaf.get().copied().unwrap_or(if both { width.half() } else { width })
}

/// One thing that opens, along and out from a frame.
enum Opened {
    /// A leaf from its hinge.
    Turns { hinge: Length, out: Length, leaf: Length, to_the_right: bool },
    /// A front that comes straight out.
    Straight { how: Opens, along: (Length, Length), out: Length, reach: Length },
}

impl Opened {
    fn sweep(self, frame: &Frame, (low, high): (Length, Option<Length>)) -> Sweep {
        match self {
            Self::Turns { hinge, out, leaf, to_the_right } => {
                let turn = Turn { to_the_right, before: true };
                let shape = ConvexShape::swept(frame, (hinge, out), leaf, turn);
                let shut = ConvexShape::new(vec![frame.at(hinge, out)]);
                Sweep { how: Opens::Swings, shape, reach: leaf, shut, low, high }
            }
            Self::Straight { how, along, out, reach } => {
                let shape = ConvexShape::rectangle(frame, along, (out, out + reach));
                let shut = ConvexShape::new(vec![frame.at(along.0, out), frame.at(along.1, out)]);
                Sweep { how, shape, reach, shut, low, high }
            }
        }
    }
}

fn of_option(thing: &Thing<'_>, option: &ProductOption) -> Vec<Opened> {
    let Some(door) = option.fit.get().and_then(|fit| fit.door.get()) else { return vec![] };
    let out = super::body::depths(thing, option).map_or(thing.out.1, |depths| depths.case);
    let handle = with_handles(thing, Some(option)) - out;
    let width = option.size.width.get().copied().unwrap_or(thing.width()).min(thing.width());
    let from = thing.along.0 + (thing.width() - width).half();
    let along = (from, from + width);
    let mut opened = Vec::new();
    for (how, reach) in [(Opens::Drops, &door.drops), (Opens::Pulls, &door.pulls)] {
        if let Some(reach) = reach.get() {
            opened.push(Opened::Straight { how, along, out, reach: (*reach).max(handle) });
        }
    }
    if let Some(leaf) = door.swings.get().copied() {
        let sides: &[bool] = match option.hinge.get() {
            Some(Hinge::Left) => &[true],
            Some(Hinge::Right) => &[false],
            Some(Hinge::Both) => &[true, false],
            // One that can be hung either way will be hung where it is free.
            Some(Hinge::Either | Hinge::None) | None => &[],
        };
        for to_the_right in sides.iter().copied() {
            let hinge = if to_the_right { along.0 } else { along.1 };
            opened.push(Opened::Turns { hinge, out, leaf, to_the_right });
        }
    }
    opened
}

/// Drawers come out as far as their cabinet is deep; doors turn on their hinges.
fn of_cabinet(thing: &Thing<'_>) -> Vec<Opened> {
    let Some(part) = thing.part().filter(|part| matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_))) else {
        return vec![];
    };
    let mut opened = Vec::new();
    let out = thing.out.1;
    let along = thing.fronts();
    if part.drawers.get().is_some_and(|count| *count > 0) {
        let reach = out - thing.out.0 + thing.handles;
        opened.push(Opened::Straight { how: Opens::Pulls, along, out, reach });
    }
    let doors = part.doors.get().copied().unwrap_or(0).min(MOST_DOORS);
    if doors == 0 {
        return opened;
    }
    let leaf = length(divided(nm(along.1 - along.0), doors.into()));
    for number in 0..doors {
        let left = along.0 + leaf.times(number.into());
        // Of a pair the one on the left hangs on its left; a single one as the book says.
        let to_the_right = match (doors, part.hinge.get()) {
            (1, Some(hinge)) => *hinge == End::Left,
            (1, None) => continue,
            _ => number % 2 == 0,
        };
        let hinge = if to_the_right { left } else { left + leaf };
        opened.push(Opened::Turns { hinge, out, leaf, to_the_right });
    }
    opened
}

/// A shower's door, in the middle of its front.
fn of_fixture(room: &Room, thing: &Thing<'_>, fixture: &Fixture) -> Vec<Opened> {
    let Some((leaf, hinge)) = shower_door(room, fixture) else { return vec![] };
    let to_the_right = hinge == End::Left;
    let hinge = if to_the_right { thing.centre() - leaf.half() } else { thing.centre() + leaf.half() };
    vec![Opened::Turns { hinge, out: thing.out.1, leaf, to_the_right }]
}
