//! The way from a room's doors to a place, past what is built in: how wide it is where it is narrowest.

use std::collections::BinaryHeap;

use crate::units::Length;

use super::frame::{Point, nm};
use super::shape::{ConvexShape, meet};
use super::thing::{Thing, What};
use super::{HoleIs, Met, Plan};

/// How far apart the places are at which one may stand on the way.
const STEP: Length = Length::from_inches(3);
/// More of them one room does not need: in a larger one they are farther apart.
const MOST_STEPS: i64 = 120;
/// How far before a door or a place one stands.
const BEFORE: Length = Length::from_inches(2);
/// What is narrower than this is no way at all (common practice: one goes sideways through 18").
const NO_WAY: Length = Length::from_inches(12);

/// The narrowest point of the widest way to a place.
#[derive(Clone, Copy, Debug)]
pub struct Narrow<'p, 'a> {
    /// How wide it is.
    pub wide: Length,
    /// What it lies between.
    pub between: [Met<'p, 'a>; 2],
}

/// What is built in, or a wall.
struct Obstacle<'p, 'a> {
    is: Met<'p, 'a>,
    shape: &'p ConvexShape,
}

impl Obstacle<'_, '_> {
    /// The row that it stands in, by its number.
    fn row(&self) -> Option<usize> {
        self.is.thing()?.row
    }
}

/// Two obstacles that leave less between them than is needed, and the straight line across.
struct Gap {
    wide: Length,
    ends: (Point, Point),
    between: (usize, usize),
}

impl<'a> Plan<'a> {
    /// Where the widest way from a doorway to a thing's place is narrower than that, between cabinets, islands and
    /// walls. None where it is as wide, and where no doorway or open side leads in.
    pub fn narrow_on_the_way(&self, thing: &Thing<'a>, needs: Length) -> Option<Narrow<'_, 'a>> {
        let obstacles = self.built_in_beside(thing);
        let gaps = gaps(&obstacles, needs);
        // Where all the others are too narrow to go through at all, none of them is the answer.
        if gaps.iter().all(|gap| gap.wide < NO_WAY) {
            return None;
        }
        let doors = self.ways_into_the_room(needs);
        let place = thing.frame.at(thing.centre(), thing.out.1 + BEFORE);
        let ground = Ground::of(&self.corners, &obstacles, &gaps)?;
        // The widest way there is, by the number of the gap that is the narrowest on it.
        let narrowest = ground.widest_way(place, &doors)?;
        let gap = gaps.get(narrowest).filter(|gap| gap.wide >= NO_WAY)?;
        let is = |number: usize| obstacles.get(number).map(|obstacle| obstacle.is);
        Some(Narrow { wide: gap.wide, between: [is(gap.between.0)?, is(gap.between.1)?] })
    }

    /// Walls, islands, and the rows of cabinets: what is not moved out of the way for a delivery.
    fn built_in_beside(&self, thing: &Thing<'a>) -> Vec<Obstacle<'_, 'a>> {
        let stays = |other: &Thing<'a>| {
            let fixed = other.row.is_some() || matches!(other.what, What::Island(_));
            fixed && other.is_in_the_way() && !std::ptr::eq(other, thing)
        };
        let things = self.standing().filter(|(other, _)| stays(other));
        let things = things.map(|(other, covered)| {
            // What is chosen for an opening is brought in as well.
            let shape = if other.opening.is_some() { &covered.footprint } else { &covered.to_front };
            Obstacle { is: Met::Thing(other), shape }
        });
        let walls = self.walls.iter().enumerate().filter(|(_, wall)| !wall.is_open());
        let walls = walls.map(|(number, wall)| Obstacle { is: Met::Wall(number), shape: &wall.face });
        things.chain(walls).collect()
    }

    /// Places just inside each doorway that is as wide as that, and along each open side.
    fn ways_into_the_room(&self, needs: Length) -> Vec<Point> {
        let doors = self.holes.iter().filter(|hole| matches!(hole.is, HoleIs::Door(_)));
        let wide = doors.filter(|door| door.along.1 - door.along.0 >= needs);
        let inside = wide.map(|door| door.frame.at((door.along.0 + door.along.1).half(), BEFORE));
        let open = self.walls.iter().filter(|wall| wall.is_open());
        let open = open.flat_map(|wall| {
            let long = wall.frame.length();
            [1, 2, 3].map(|part| wall.frame.at(Length::from_nanometres(long.nanometres() / 4 * part), BEFORE))
        });
        inside.chain(open).collect()
    }
}

/// Every pair that leaves less than that, the narrowest first.
fn gaps(obstacles: &[Obstacle<'_, '_>], needs: Length) -> Vec<Gap> {
    let mut gaps = Vec::new();
    for (number, one) in obstacles.iter().enumerate() {
        for (before, other) in obstacles.iter().enumerate().take(number) {
            // Nobody goes between two parts of one row; and most pairs are soon seen to be far apart.
            if one.row().is_some() && one.row() == other.row() || one.shape.is_as_far_as(other.shape, needs) {
                continue;
            }
            let wide = one.shape.distance(other.shape);
            if wide <= Length::ZERO || wide >= needs {
                continue;
            }
            if let Some(ends) = one.shape.nearest(other.shape) {
                gaps.push(Gap { wide, ends, between: (before, number) });
            }
        }
    }
    gaps.sort_by_key(|gap| gap.wide);
    gaps
}

/// Places at which one may stand, from one corner of the room on, and what bars the way between them.
struct Ground<'g> {
    from: Point,
    step: Length,
    across: i64,
    up: i64,
    bars: Vec<(Point, Point)>,
    gaps: &'g [Gap],
    /// The way from each place to the next at its right, and to the next above it.
    ways: [Vec<Way>; 2],
}

/// The narrowest gap between two places that lie side by side: as many as there are gaps where it crosses none; none
/// where something bars the way.
type Way = Option<usize>;

/// From a place to the next at its right, and to the next above it.
const NEXT: [(i64, i64); 2] = [(1, 0), (0, 1)];

impl<'g> Ground<'g> {
    fn of(corners: &[Point], obstacles: &[Obstacle<'_, '_>], gaps: &'g [Gap]) -> Option<Self> {
        let (left, right) = (corners.iter().map(|at| at.x).min()?, corners.iter().map(|at| at.x).max()?);
        let (low, high) = (corners.iter().map(|at| at.y).min()?, corners.iter().map(|at| at.y).max()?);
        let long = (right - left).max(high - low);
        let step = STEP.max(Length::from_nanometres(long.nanometres() / MOST_STEPS));
        let count = |long: Length| long.nanometres() / step.nanometres().max(1) + 1;
        let bars = obstacles.iter().flat_map(|obstacle| obstacle.shape.edges()).collect();
        let (across, up) = (count(right - left), count(high - low));
        let places = usize::try_from(across * up).unwrap_or_default();
        let ways = [vec![Some(gaps.len()); places], vec![Some(gaps.len()); places]];
        let mut ground = Self { from: Point::new(left, low), step, across, up, bars, gaps, ways };
        // The widest first, so that the narrowest is what stays, and bars last.
        for (number, gap) in gaps.iter().enumerate().rev() {
            ground.draw(gap.ends, Some(number));
        }
        for bar in std::mem::take(&mut ground.bars) {
            ground.draw(bar, None);
            ground.bars.push(bar);
        }
        Some(ground)
    }

    /// Puts a straight line across each way that meets it.
    fn draw(&mut self, line: (Point, Point), way: Way) {
        let (one, other) = (self.place_before(line.0), self.place_before(line.1));
        for x in one.0.min(other.0) - 1..=one.0.max(other.0) + 1 {
            for y in one.1.min(other.1) - 1..=one.1.max(other.1) + 1 {
                for (axis, (right, up)) in NEXT.into_iter().enumerate() {
                    let next = (x + right, y + up);
                    if !self.is_place((x, y)) || !self.is_place(next) || !meet((self.at((x, y)), self.at(next)), line) {
                        continue;
                    }
                    let number = self.number((x, y));
                    if let Some(there) = self.ways.get_mut(axis).and_then(|ways| ways.get_mut(number)) {
                        *there = way;
                    }
                }
            }
        }
    }

    /// The place at the lower left of a point, whether or not it is in the room.
    fn place_before(&self, point: Point) -> (i64, i64) {
        let step = nm(self.step).max(1);
        let (x, y) = self.from.to(point);
        let whole = |part: i128| i64::try_from(part.div_euclid(step)).unwrap_or_default();
        (whole(x), whole(y))
    }

    /// The way between two places side by side.
    fn way(&self, one: (i64, i64), other: (i64, i64)) -> Way {
        let axis = usize::from(one.0 == other.0);
        self.ways.get(axis)?.get(self.number(one.min(other))).copied().flatten()
    }

    fn at(&self, (x, y): (i64, i64)) -> Point {
        Point::new(self.from.x + self.step.times(x), self.from.y + self.step.times(y))
    }

    /// The narrowest gap between two places: as many as there are gaps where it crosses none; none where something
    /// bars the way.
    fn between(&self, one: Point, other: Point) -> Option<usize> {
        if self.bars.iter().any(|bar| meet((one, other), *bar)) {
            return None;
        }
        Some(self.gaps.iter().position(|gap| meet((one, other), gap.ends)).unwrap_or(self.gaps.len()))
    }

    /// The places near a point that one gets to from there.
    fn near(&self, point: Point) -> Vec<((i64, i64), usize)> {
        let (x, y) = self.place_before(point);
        let near = (-1..=2).flat_map(|right| (-1..=2).map(move |up| (x + right, y + up)));
        near.filter(|place| self.is_place(*place))
            .filter_map(|place| Some((place, self.between(point, self.at(place))?)))
            .collect()
    }

    fn is_place(&self, (x, y): (i64, i64)) -> bool {
        (0..self.across).contains(&x) && (0..self.up).contains(&y)
    }

    fn number(&self, (x, y): (i64, i64)) -> usize {
        usize::try_from(y * self.across + x).unwrap_or(usize::MAX)
    }

    /// The narrowest gap on the widest way from a point to one of the others; none where no way leads there.
    fn widest_way(&self, from: Point, to: &[Point]) -> Option<usize> {
        let ends: Vec<((i64, i64), usize)> = to.iter().flat_map(|door| self.near(*door)).collect();
        let places = usize::try_from(self.across * self.up).unwrap_or_default();
        let mut best: Vec<Option<usize>> = vec![None; places];
        let mut open: BinaryHeap<(usize, (i64, i64))> = BinaryHeap::new();
        open.extend(self.near(from).into_iter().map(|(place, narrowest)| (narrowest, place)));
        while let Some((narrowest, place)) = open.pop() {
            let Some(known) = best.get_mut(self.number(place)) else { continue };
            if known.is_some_and(|known| known >= narrowest) {
                continue;
            }
            *known = Some(narrowest);
            let (x, y) = place;
            for next in [(x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)] {
                let known = || best.get(self.number(next)).copied().flatten();
                if !self.is_place(next) || known().is_some_and(|known| known >= narrowest) {
                    continue;
                }
                open.extend(self.way(place, next).map(|gap| (gap.min(narrowest), next)));
            }
        }
        let reached = ends.into_iter().filter_map(|(place, last)| {
            let known = best.get(self.number(place)).copied().flatten()?;
            Some(known.min(last))
        });
        reached.max()
    }
}
