//! Straight ways between things, seats at an island, and the ceiling above a place.

use crate::book::{Ceiling, Island, IslandSide};
use crate::units::Length;

use super::Plan;
use super::frame::{Point, divided, length, nm};
use super::shape::through;
use super::thing::{Thing, What};

/// The straight way between the fronts of two things.
#[derive(Clone, Debug)]
pub struct Way<'p, 'a> {
    /// From the middle of one front to the middle of the other.
    pub length: Length,
    /// What it goes through, and how far.
    pub crosses: Vec<(&'p Thing<'a>, Length)>,
}

/// A side of an island where people can sit.
#[derive(Clone, Copy, Debug)]
pub struct SeatEdge {
    /// The length of its edge.
    pub edge: Length,
    /// From the body to the edge: what is clear for knees.
    pub overhang: Length,
    /// How many are to sit there.
    pub seats: u32,
    /// Its top from the finished floor.
    pub height: Option<Length>,
}

impl<'a> Plan<'a> {
    /// The middle of a thing's front, as [`Plan::front`] has it.
    pub fn middle_of_front(&self, thing: &Thing<'a>) -> Point {
        thing.frame.at(thing.centre(), self.front(thing))
    }

    /// The straight way between the middles of two fronts, and the islands and things that it cuts through.
    pub fn way(&self, from: &Thing<'a>, to: &Thing<'a>) -> Way<'_, 'a> {
        let (start, end) = (self.middle_of_front(from), self.middle_of_front(to));
        let is_end = |other: &Thing<'a>| {
            let holder = |thing: &Thing<'a>| thing.within.and_then(|at| self.things.get(at)).map(std::ptr::from_ref);
            let other = std::ptr::from_ref(other);
            [from, to].iter().any(|end| std::ptr::eq(*end, other) || holder(end) == Some(other))
        };
        let others = self.standing().filter(|(other, _)| other.is_in_the_way() && !is_end(other));
        let crosses = others.filter_map(|(other, covered)| {
            let through = through(&covered.footprint, start, end);
            (through > Length::ZERO).then_some((other, through))
        });
        Way { length: start.distance(end), crosses: crosses.collect() }
    }

    /// Where people sit at an island: each side with seats.
    pub fn seats(&self, island: &Island) -> Vec<(IslandSide, SeatEdge)> {
        let Some(body) = self.island(island) else { return vec![] };
        let edge = |side: IslandSide| match side {
            IslandSide::Wall | IslandSide::Room => body.width(),
            IslandSide::Left | IslandSide::Right => body.out.1 - body.out.0,
        };
        let sides = IslandSide::ALL.into_iter().filter_map(|side| {
            let said = island.side(side);
            let seats = *said.seats.get()?;
            let overhang = said.overhang.get().copied().unwrap_or_default();
            Some((side, SeatEdge { edge: edge(side), overhang, seats, height: island.height.get().copied() }))
        });
        sides.collect()
    }

    /// The height of the ceiling above a place; none where it slopes and nobody says from which wall.
    pub fn ceiling_at(&self, place: Point) -> Option<Length> {
        match self.room.ceiling.get()? {
            Ceiling::Level(height) => Some(*height),
            Ceiling::Sloped { low, high, low_at, .. } => {
                let wall = self.walls.get(self.wall_named(low_at.get()?)?)?;
                let run = nm(self.run_of_slope()?);
                let out = wall.frame.local(place).1.max(0).min(run);
                Some(*low + length(divided((nm(*high) - nm(*low)) * out, run)))
            }
        }
    }

    /// How far it is, level, from the wall from which a ceiling rises to the farthest corner; none where
    /// nobody says which wall that is.
    pub fn run_of_slope(&self) -> Option<Length> {
        let Ceiling::Sloped { low_at, .. } = self.room.ceiling.get()? else { return None };
        let wall = self.walls.get(self.wall_named(low_at.get()?)?)?;
        let out = |point: &Point| wall.frame.local(*point).1;
        self.corners.iter().map(out).max().filter(|run| *run > 0).map(length)
    }

    /// The least height of the ceiling over a thing, between two distances out from its frame.
    pub fn ceiling_over(&self, thing: &Thing<'a>, out: (Length, Length)) -> Option<Length> {
        let corners = thing.frame.rectangle(thing.along, out);
        corners.into_iter().map(|corner| self.ceiling_at(corner)).collect::<Option<Vec<_>>>()?.into_iter().min()
    }

    /// The greatest height of the ceiling there.
    pub fn most_ceiling_over(&self, thing: &Thing<'a>, out: (Length, Length)) -> Option<Length> {
        thing.frame.rectangle(thing.along, out).into_iter().filter_map(|corner| self.ceiling_at(corner)).max()
    }

    /// Straight from the nearest edge of one thing to the nearest edge of another.
    pub fn apart(&self, one: &Thing<'a>, other: &Thing<'a>) -> Length {
        one.footprint().distance(&other.footprint())
    }

    /// Whether a thing stands in or at an island.
    pub fn is_at_an_island(&self, thing: &Thing<'a>) -> bool {
        matches!(thing.what, What::Island(_)) || matches!(thing.stands, super::Stands::Island(..))
    }

    /// Counter behind something cut into an island, from its back to the island's far edge.
    pub fn behind_at_island(&self, thing: &Thing<'a>) -> Option<Length> {
        let counter = self.row_of(thing).filter(|_| self.is_at_an_island(thing))?.counter?;
        Some(thing.out.0 - counter.back).filter(|behind| *behind >= Length::ZERO)
    }
}
