//! What a drawing of the room shows besides what stands in it: the slope of its ceiling with the windows in it, and
//! the seats at an island.

use crate::book::{Ceiling, Island, IslandSide, Window};
use crate::units::Length;

use super::Plan;
use super::frame::{Frame, Point, divided, length, nm, rounded_root};
use super::thing::RowOf;

/// How far before the edge of a counter somebody sits (common practice: half under it).
const SITS: Length = Length::from_inches(2);
/// More seats than stand at any edge.
const MOST_SEATS: u32 = 40;

/// A ceiling that rises from a wall.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RoofSlope {
    /// The wall that it rises from, by its number.
    pub wall: usize,
    /// Its least height, and where in plan.
    pub low: (Length, Point),
    /// Its greatest height, and where.
    pub high: (Length, Point),
    frame: Frame,
    /// Level, from the low side to the high one.
    run: Length,
}

impl RoofSlope {
    /// How far from its low wall the ceiling is so high; none where it is so nowhere.
    fn out_at(&self, height: Length) -> Option<Length> {
        let rise = nm(self.high.0) - nm(self.low.0);
        let part = nm(height) - nm(self.low.0);
        (rise > 0 && (0..=rise).contains(&part)).then(|| length(divided(nm(self.run) * part, rise)))
    }

    /// How far a length along the slope reaches, level.
    fn level(&self, along: Length) -> Length {
        let slant = rounded_root(nm(self.run), nm(self.high.0) - nm(self.low.0));
        length(divided(nm(along) * nm(self.run), nm(slant).max(1)))
    }
}

impl<'a> Plan<'a> {
    /// The slope of the room's ceiling, where the book says from which wall it rises.
    pub fn roof_slope(&self) -> Option<RoofSlope> {
        let Ceiling::Sloped { low, high, low_at, .. } = self.room.ceiling.get()? else { return None };
        let wall = self.wall_named(low_at.get()?)?;
        let frame = self.walls.get(wall)?.frame;
        let run = self.run_of_slope()?;
        let middle = frame.length().half();
        let places = (frame.at(middle, Length::ZERO), frame.at(middle, run));
        Some(RoofSlope { wall, low: (*low, places.0), high: (*high, places.1), frame, run })
    }

    /// The line through the room on which its ceiling is so high, from wall to wall.
    pub fn ceiling_line(&self, slope: &RoofSlope, height: Length) -> Option<(Point, Point)> {
        let out = slope.out_at(height).filter(|out| *out > Length::ZERO && *out < slope.run)?;
        let crossed = self.walls.iter().filter_map(|wall| {
            let (one, other) = (slope.frame.local(wall.frame.left()), slope.frame.local(wall.frame.right()));
            let (from, to) = (one.1 - nm(out), other.1 - nm(out));
            let crosses = (from < 0) != (to < 0);
            crosses.then(|| one.0 + divided((other.0 - one.0) * -from, to - from))
        });
        let crossed: Vec<i128> = crossed.collect();
        let (first, last) = (crossed.iter().min()?, crossed.iter().max()?);
        Some((slope.frame.at(length(*first), out), slope.frame.at(length(*last), out)))
    }

    /// The windows in the roof, each with the corners of what it is in plan: where it is known.
    pub fn roof_windows(&self) -> Vec<(&'a Window, Vec<Point>)> {
        let Some(slope) = self.roof_slope() else { return vec![] };
        let placed = |window: &&'a Window| {
            let wall = self.wall_named(window.wall.get()?)?;
            let (at, width) = (*window.at.get()?, *window.width.get()?);
            let from = slope.out_at(*window.sill.get()?).filter(|_| wall == slope.wall)?;
            let to = from + slope.level(*window.height.get()?);
            Some((*window, slope.frame.rectangle((at, at + width), (from, to))))
        };
        self.in_the_roof.iter().filter_map(placed).collect()
    }

    /// Where people sit at an island, each the middle of a seat.
    pub fn seat_places(&self, island: &Island) -> Vec<Point> {
        let at_side = |side: IslandSide| {
            let row = self.rows.iter().find(|row| match row.of {
                RowOf::Side(own, at) => std::ptr::eq(own, island) && at == side,
                RowOf::Run(_) => false,
            });
            let seats = i128::from(island.side(side).seats.get().copied().unwrap_or(0).min(MOST_SEATS));
            let frame = row.map(|row| row.frame);
            (0..seats).filter_map(move |seat| {
                let frame = frame?;
                let along = length(divided(nm(frame.length()) * (2 * seat + 1), 2 * seats));
                Some(frame.at(along, SITS))
            })
        };
        IslandSide::ALL.into_iter().flat_map(at_side).collect()
    }
}
