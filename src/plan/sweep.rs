//! What doors, drawers and lids sweep as they open, handles included.

use crate::book::{Choice, Doorway, Fixture, IslandSide, PartIs};
use crate::units::Length;

use super::clear::with_handles;
use super::frame::{divided, length, nm};
use super::shape::{Shape, Turn};
use super::thing::{Stands, Thing, What};
use super::{Hole, HoleIs, Plan};

/// Something that opens, and the floor that it sweeps.
#[derive(Clone, Debug)]
pub struct Sweep {
    /// How it opens.
    pub how: Opens,
    /// What it covers in plan on the way.
    pub shape: Shape,
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
    /// Whether its height and that of a thing have some in common.
    pub fn is_level_with(&self, thing: &Thing<'_>) -> bool {
        thing.is_level_with(self.low, self.high)
    }
}

impl<'a> Plan<'a> {
    /// What a thing sweeps as it opens: of an opening with that option in it, of a cabinet by its doors
    /// and drawers, of a fixture by its door.
    pub fn sweeps(&self, thing: &Thing<'a>, option: Option<&Choice>) -> Vec<Sweep> {
        let shapes = match (thing.what, option) {
            (_, Some(option)) => of_option(thing, option),
            (What::Part(_), None) => of_cabinet(thing),
            (What::Fixture(fixture), None) => of_fixture(thing, fixture),
            _ => vec![],
        };
        shapes.into_iter().map(|(how, shape)| Sweep { how, shape, low: thing.low, high: thing.high }).collect()
    }

    /// What a door of the room sweeps; nothing for one that slides, swings out, or is not described.
    pub fn door_sweeps(&self, hole: &Hole<'a>) -> Vec<Sweep> {
        let HoleIs::Door(door) = hole.is else { return vec![] };
        let swings_in = door.swings.get() == Some(&"in") && door.slides.get() != Some(&true);
        let Some(hinge) = door.hinge.get().filter(|_| swings_in) else { return vec![] };
        let width = hole.along.1 - hole.along.0;
        let both = *hinge == "both";
        let leaf = leaf_of(door, width, both);
        let mut shapes = Vec::new();
        if both || *hinge == "left" {
            shapes.push((hole.along.0, true));
        }
        if both || *hinge == "right" {
            shapes.push((hole.along.1, false));
        }
        let swept = |(hinge, to_the_right): (Length, bool)| {
            let turn = Turn { to_the_right, before: true };
            let shape = Shape::swept(&hole.frame, (hinge, Length::ZERO), leaf, turn);
            Sweep { how: Opens::Swings, shape, low: Length::ZERO, high: hole.high }
        };
        shapes.into_iter().map(swept).collect()
    }

    /// Whether two things stand at the same wall, or at the same side of an island.
    pub fn share_a_face(&self, one: &Thing<'a>, other: &Thing<'a>) -> bool {
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

fn of_option(thing: &Thing<'_>, option: &Choice) -> Vec<(Opens, Shape)> {
    let Some(door) = option.fit.get().and_then(|fit| fit.door.get()) else { return vec![] };
    let front = super::body::depths(thing, option).map_or(thing.out.1, |depths| depths.case);
    let reach = with_handles(thing, Some(option)) - front;
    let width = option.size.width.get().copied().unwrap_or(thing.width()).min(thing.width());
    let from = thing.along.0 + (thing.width() - width).half();
    let along = (from, from + width);
    let straight = |out: Length| Shape::rectangle(&thing.frame, along, (front, front + out.max(reach)));
    let mut shapes = Vec::new();
    if let Some(drops) = door.drops.get() {
        shapes.push((Opens::Drops, straight(*drops)));
    }
    if let Some(pulls) = door.pulls.get() {
        shapes.push((Opens::Pulls, straight(*pulls)));
    }
    if let Some(swings) = door.swings.get() {
        let sides: &[bool] = match option.hinge.text() {
            "left" => &[true],
            "right" => &[false],
            "both" => &[true, false],
            // One that can be hung either way will be hung where it is free.
            _ => &[],
        };
        for to_the_right in sides {
            let hinge = if *to_the_right { along.0 } else { along.1 };
            let turn = Turn { to_the_right: *to_the_right, before: true };
            shapes.push((Opens::Swings, Shape::swept(&thing.frame, (hinge, front), *swings, turn)));
        }
    }
    shapes
}

/// Drawers come out as far as their cabinet is deep; doors turn on their hinges.
fn of_cabinet(thing: &Thing<'_>) -> Vec<(Opens, Shape)> {
    let Some(part) = thing.part().filter(|part| matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_))) else {
        return vec![];
    };
    let mut shapes = Vec::new();
    if part.drawers.get().is_some_and(|count| *count > 0) {
        let out = thing.out.1 + (thing.out.1 - thing.out.0) + thing.handles;
        shapes.push((Opens::Pulls, Shape::rectangle(&thing.frame, thing.along, (thing.out.1, out))));
    }
    let doors = part.doors.get().copied().unwrap_or(0).min(20);
    if doors == 0 {
        return shapes;
    }
    let leaf = length(divided(nm(thing.width()), doors.into()));
    for number in 0..doors {
        let left = thing.along.0 + leaf.times(number.into());
        // Of a pair the one on the left hangs on its left; a single one as the book says.
        let on_left = match (doors, part.hinge.get()) {
            (1, Some(hinge)) => *hinge == "left",
            (1, None) => continue,
            _ => number % 2 == 0,
        };
        let hinge = if on_left { left } else { left + leaf };
        let turn = Turn { to_the_right: on_left, before: true };
        shapes.push((Opens::Swings, Shape::swept(&thing.frame, (hinge, thing.out.1), leaf, turn)));
    }
    shapes
}

fn of_fixture(thing: &Thing<'_>, fixture: &Fixture) -> Vec<(Opens, Shape)> {
    let (Some(leaf), Some(hinge)) = (fixture.door.get(), fixture.hinge.get()) else { return vec![] };
    let on_left = *hinge == "left";
    let middle = thing.centre();
    let from = if on_left { middle - leaf.half() } else { middle + leaf.half() };
    let turn = Turn { to_the_right: on_left, before: true };
    vec![(Opens::Swings, Shape::swept(&thing.frame, (from, thing.out.1), *leaf, turn))]
}
