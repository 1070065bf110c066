//! Each room's plan: where everything stands, computed from the book, and what can be asked of it.
//!
//! [`Plans::of`] places every room once. A [`Plan`] answers in exact lengths: [`Plan::clear_before`],
//! [`Plan::aisles`], [`Plan::landing`], [`Plan::stretches`], [`Plan::way`], [`Plan::beside`],
//! [`Plan::to_side`], [`Plan::seats`], [`Plan::ceiling_at`], [`Plan::sweeps`]. What cannot be as
//! written is in [`Plan::faults`]. Where nothing is written of a place, there is no answer.

mod aisle;
mod body;
mod boxes;
mod casing;
mod circle;
mod clear;
mod counter;
mod covered;
mod fault;
mod fixed;
mod floor;
mod frame;
mod glass;
mod outline;
mod overlap;
mod pieces;
mod place;
mod route;
mod rows;
mod shape;
mod slope;
mod sweep;
mod thing;
mod way;

#[cfg(test)]
mod tests;

pub use aisle::Aisle;
pub use body::{Depths, depths, settled};
pub use boxes::BoxInPlace;
pub use casing::{Casing, CasingBeside, written as casing_width};
pub use clear::{Clear, Met, with_handles};
pub use counter::{Landing, Stretch, StretchEnd};
pub use fault::{PlanFault, Wrong};
pub use fixed::{chosen_for, sides_at};
pub use frame::{Frame, Point};
pub use glass::{glass_for, hung_at, leaf_of};
pub use outline::Wall;
pub use route::Narrow;
pub use shape::{ConvexShape, Turn};
pub use slope::RoofSlope;
pub use sweep::{Opens, Sweep};
pub use thing::{Counter, Row, RowOf, Stands, Thing, What};
pub use way::{SeatEdge, Way};

use crate::vocabulary::{Kind, Trait};
use rayon::prelude::*;
use std::collections::BTreeMap;

use crate::book::{Book, Doorway, HungLights, Island, Opening, Room, Window};
use crate::units::{Area, Length};

/// The plans of a book's rooms.
#[derive(Debug, Default)]
pub struct Plans<'a>(BTreeMap<&'a str, Plan<'a>>);

impl<'a> Plans<'a> {
    /// Places every room of which something is written.
    pub fn of(book: &'a Book) -> Self {
        let plan = |room: &'a Room| Some((room.folder.as_str(), place::Placing::of(room)?));
        Self(book.rooms.par_iter().filter_map(plan).collect())
    }

    /// The plan of a room.
    pub fn room(&self, room: &Room) -> Option<&Plan<'a>> {
        self.0.get(room.folder.as_str())
    }

    /// Every plan, by the room's folder.
    pub fn all(&self) -> impl Iterator<Item = &Plan<'a>> {
        self.0.values()
    }
}

impl<'a> Plan<'a> {
    /// Places one room alone, where something is written of it.
    pub fn of(room: &'a Room) -> Option<Self> {
        place::Placing::of(room)
    }
}

/// A room in plan.
#[derive(Debug)]
pub struct Plan<'a> {
    /// The room.
    pub room: &'a Room,
    /// The corners of its outline, in the order written.
    pub corners: Vec<Point>,
    /// Its floor between finished faces.
    pub area: Option<Area>,
    /// Its walls: A from the first corner to the second, and so on.
    pub walls: Vec<Wall<'a>>,
    /// Doors and windows.
    pub holes: Vec<Hole<'a>>,
    /// Windows that are in the roof, and take up no wall.
    pub in_the_roof: Vec<&'a Window>,
    /// Everything that stands or hangs in it.
    pub things: Vec<Thing<'a>>,
    /// Runs, and the sides of islands.
    pub rows: Vec<Row<'a>>,
    /// Lights set out over something.
    pub hung: Vec<Hung<'a>>,
    /// Boxes of switches and outlets.
    pub boxes: Vec<BoxInPlace<'a>>,
    /// What cannot be as it is written.
    pub faults: Vec<PlanFault>,
    /// What each thing covers, in the order of the things.
    covered: Vec<covered::Covered>,
    /// The pieces of each row's counter, in the order of the rows.
    pieces: Vec<Vec<pieces::CounterPiece>>,
}

/// A door or a window in its wall.
#[derive(Clone, Debug)]
pub struct Hole<'a> {
    /// Which.
    pub is: HoleIs<'a>,
    /// The wall, by its number.
    pub wall: usize,
    /// The wall's face.
    pub frame: Frame,
    /// From the wall's left end to its left and right side.
    pub along: (Length, Length),
    /// Its bottom from the finished floor.
    pub low: Option<Length>,
    /// Its top.
    pub high: Option<Length>,
}

/// What a hole in a wall is.
#[derive(Clone, Copy, Debug)]
pub enum HoleIs<'a> {
    /// A door or a cased opening.
    Door(&'a Doorway),
    /// A window.
    Window(&'a Window),
}

impl<'a> Hole<'a> {
    /// Its name in the book.
    pub fn name(&self) -> &'a str {
        match self.is {
            HoleIs::Door(door) => &door.name.value,
            HoleIs::Window(window) => &window.name.value,
        }
    }

    /// Where it is written.
    pub fn span(&self) -> crate::source::Span {
        match self.is {
            HoleIs::Door(door) => door.name.span,
            HoleIs::Window(window) => window.name.span,
        }
    }
}

/// Lights in their places.
#[derive(Clone, Debug)]
pub struct Hung<'a> {
    /// The lights.
    pub lights: &'a HungLights,
    /// Where each hangs, from the left end of what they hang over.
    pub places: Vec<Point>,
}

impl<'a> Plan<'a> {
    fn empty(room: &'a Room) -> Self {
        Self {
            room,
            corners: vec![],
            area: None,
            walls: vec![],
            holes: vec![],
            in_the_roof: vec![],
            things: vec![],
            rows: vec![],
            hung: vec![],
            boxes: vec![],
            faults: vec![],
            covered: vec![],
            pieces: vec![],
        }
    }

    /// Whether it can be reckoned with: it is written as a room can be. Two bodies that clash stand where they are
    /// written all the same, and are told of themselves.
    pub fn is_sound(&self) -> bool {
        self.faults.iter().all(PlanFault::is_of_the_work)
    }

    /// The wall of that letter, or of that name, by its number.
    pub fn wall_named(&self, name: &str) -> Option<usize> {
        let letter = self.walls.iter().position(|wall| wall.letter.eq_ignore_ascii_case(name));
        letter.or_else(|| self.walls.iter().position(|wall| wall.name() == name))
    }

    /// What is told of bodies that stand where an opening is.
    pub fn in_the_place_of(&self, opening: &Opening) -> impl Iterator<Item = &PlanFault> {
        let own = self.opening(opening).map(|thing| thing.span);
        let of_it = move |fault: &&PlanFault| own.is_some() && [Some(fault.span), fault.also].contains(&own);
        self.faults.iter().filter(|fault| fault.is_of_the_work()).filter(of_it)
    }

    /// Where an opening stands.
    pub fn opening(&self, opening: &Opening) -> Option<&Thing<'a>> {
        self.things.iter().find(|thing| thing.is_opening(opening))
    }

    /// Where the things of a kind stand.
    pub fn of_kind(&self, kind: Kind) -> impl Iterator<Item = &Thing<'a>> {
        self.things.iter().filter(move |thing| thing.is(kind))
    }

    /// Where the things stand for which that holds.
    pub fn with(&self, what: Trait) -> impl Iterator<Item = &Thing<'a>> {
        self.things.iter().filter(move |thing| thing.has(what))
    }

    /// Where an island stands.
    pub fn island(&self, island: &Island) -> Option<&Thing<'a>> {
        self.things.iter().find(|thing| matches!(thing.what, What::Island(_)) && thing.name == island.name.value)
    }
}
