//! Puts islands and runs in their place, part by part.

use crate::book::{End, Island, IslandSide, Opening, Part, PartIs, Run};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Trait;

use super::fault::Wrong;
use super::fixed::height_of;
use super::frame::{Frame, Point};
use super::outline::{self, Wall};
use super::place::Placing;
use super::thing::{Counter, HEAD, Row, RowOf, Stands, Thing, What};

/// Depth of base cabinets with their doors, where nobody writes it (common practice: 24").
pub const BASE_DEPTH: Length = Length::from_inches(24);
/// Depth of wall cabinets, likewise (common practice: 12").
const WALL_DEPTH: Length = Length::from_inches(12);
/// The counter's thickness, to find a cabinet's height under it (common practice: 1 1/2").
const COUNTER_THICKNESS: Length = Length::from_sixty_fourths(96);

/// What the parts of a row take from it.
struct Sizes {
    front: Length,
    depth: Length,
    low: Length,
    height: Option<Length>,
    /// The height that is written of the run itself, for what stands tall in it.
    tall: Option<Length>,
    handles: Length,
    /// The island that they stand in.
    body: Option<usize>,
}

impl<'a> Placing<'a> {
    /// Every island, with what stands in its sides.
    pub(super) fn islands(&mut self) {
        for (number, island) in self.room.islands.iter().enumerate() {
            let Some(at) = self.wall(&island.wall, &island.name) else { continue };
            let (Some(along), Some(away), Some((one, two))) = (island.at.get(), island.away.get(), island.size.get())
            else {
                continue;
            };
            let (long, deep) = if island.turned.get() == Some(&true) { (*two, *one) } else { (*one, *two) };
            let Some(frame) = self.plan.walls.get(at).map(|wall| wall.frame) else { continue };
            let Some(front) = Frame::between(frame.at(*along, *away + deep), frame.at(*along + long, *away + deep))
            else {
                continue;
            };
            let corners = frame.rectangle((*along, *along + long), (*away, *away + deep));
            if corners.iter().any(|corner| !outline::is_inside(&self.plan.walls, *corner)) {
                self.fault(Wrong::OutOfRoom, &island.name, island.name.span);
            }
            self.plan.things.push(Thing {
                name: &island.name.value,
                what: What::Island(island),
                opening: None,
                kind: None,
                stands: Stands::Wall(at),
                frame: front,
                along: (Length::ZERO, long),
                out: (-deep, Length::ZERO),
                handles: Length::ZERO,
                low: Length::ZERO,
                high: island.height.get().copied(),
                row: None,
                within: None,
                span: island.name.span,
            });
            let body = self.plan.things.len() - 1;
            for side in IslandSide::ALL {
                self.island_side((number, island), side, &corners, body);
            }
        }
    }

    /// What stands in a side of an island, from its left end in.
    fn island_side(&mut self, of: (usize, &'a Island), side: IslandSide, corners: &[Point], body: usize) {
        let (number, island) = of;
        let [back_left, back_right, front_right, front_left] = corners else { return };
        let ((left, right), beside) = match side {
            IslandSide::Wall => ((*back_right, *back_left), IslandSide::Right),
            IslandSide::Room => ((*front_left, *front_right), IslandSide::Left),
            IslandSide::Left => ((*back_left, *front_left), IslandSide::Wall),
            IslandSide::Right => ((*front_right, *back_right), IslandSide::Room),
        };
        let Some(frame) = Frame::between(left, right) else { return };
        let edge = island.side(side);
        let overhang = |side: IslandSide| island.side(side).overhang.get().copied().unwrap_or_default();
        let back = match side {
            IslandSide::Wall | IslandSide::Room => corners.first().zip(corners.get(3)),
            _ => corners.first().zip(corners.get(1)),
        };
        let deep = back.map_or(Length::ZERO, |(one, other)| one.distance(*other));
        let counter = Counter { back: -deep, front: Length::ZERO, height: island.height.get().copied() };
        let row = Row {
            of: RowOf::Side(island, side),
            stands: Stands::Island(number, side),
            frame,
            along: (overhang(beside), overhang(beside)),
            counter: Some(counter),
            on_floor: true,
            things: vec![],
            is_whole: true,
        };
        let front = -overhang(side);
        let sizes = Sizes {
            front,
            depth: island.depth.get().copied().unwrap_or(BASE_DEPTH),
            low: Length::ZERO,
            height: counter.height.map(|top| top - COUNTER_THICKNESS),
            tall: None,
            handles: island.handles.get().copied().unwrap_or_default(),
            body: Some(body),
        };
        self.row(row, &edge.parts, false, &sizes);
    }

    /// A run along a wall.
    pub(super) fn run(&mut self, run: &'a Run) {
        let Some(number) = self.wall(&run.wall, &run.name) else { return };
        let wall = |wall: &Wall<'_>| (wall.frame, wall.name().to_string());
        let Some((frame, wall)) = self.plan.walls.get(number).map(wall) else { return };
        let starts = run.starts.get().copied().unwrap_or_default();
        let from_right = run.from == End::Right;
        let at = if from_right { frame.length() - starts } else { starts };
        if starts > frame.length() {
            let wrong = Wrong::Outside { wall, by: starts - frame.length(), long: frame.length() };
            self.fault(wrong, &run.name, run.name.span);
            return;
        }
        let hangs = run.above_floor.get().copied();
        let usual = if hangs.is_some() { WALL_DEPTH } else { BASE_DEPTH };
        let depth = run.depth.get().copied().unwrap_or(usual);
        let counter = run.counter.depth.get().map(|front| Counter {
            back: Length::ZERO,
            front: *front,
            height: run.counter.height.get().copied(),
        });
        let under_counter = counter.and_then(|counter| counter.height).map(|top| top - COUNTER_THICKNESS);
        let sizes = Sizes {
            front: depth,
            depth,
            low: hangs.unwrap_or_default(),
            height: run.height.get().copied().or(under_counter),
            // Of a run with a counter the height is that of what stands under it.
            tall: run.height.get().copied().filter(|high| counter.is_none() || *high > HEAD),
            handles: run.handles.get().copied().unwrap_or_default(),
            body: None,
        };
        let row = Row {
            of: RowOf::Run(run),
            stands: Stands::Wall(number),
            frame,
            along: (at, at),
            counter: counter.filter(|_| hangs.is_none()),
            on_floor: hangs.is_none(),
            things: vec![],
            is_whole: true,
        };
        self.row(row, &run.parts, from_right, &sizes);
    }

    /// Sets parts one beside the other, until one has no width.
    fn row(&mut self, mut row: Row<'a>, parts: &'a [Part], leftwards: bool, sizes: &Sizes) {
        let mut at = row.along.0;
        let number = self.plan.rows.len();
        for part in parts {
            let Some(width) = self.width(part) else {
                row.is_whole = false;
                break;
            };
            let along = if leftwards { (at - width, at) } else { (at, at + width) };
            at = if leftwards { along.0 } else { along.1 };
            row.along = (row.along.0.min(along.0), row.along.1.max(along.1));
            if !matches!(part.is, PartIs::Gap(_)) {
                let first = self.plan.things.len();
                self.part(part, &row, number, along, sizes);
                let added = self.plan.things.iter().enumerate().skip(first);
                row.things.extend(added.filter(|(_, thing)| thing.row.is_some()).map(|(at, _)| at));
            }
        }
        if leftwards {
            row.things.reverse();
        }
        self.plan.rows.push(row);
    }

    fn width(&self, part: &Part) -> Option<Length> {
        match &part.is {
            PartIs::Filler(wide) | PartIs::Panel(wide) | PartIs::Gap(wide) => Some(*wide),
            PartIs::Opening(name) => self.room.opening(name)?.governing_width(),
            PartIs::Cabinet(_) | PartIs::Tall(_) => part.width.get().copied(),
        }
    }

    fn part(&mut self, part: &'a Part, row: &Row<'a>, number: usize, along: (Length, Length), sizes: &Sizes) {
        let opening = match &part.is {
            PartIs::Opening(name) => self.room.opening(name),
            _ => None,
        };
        if let (PartIs::Opening(name), Some(opening)) = (&part.is, opening) {
            self.once(opening, name.span);
        }
        let own = part.depth.get().copied().or_else(|| opening.and_then(Opening::governing_depth));
        let front = match row.stands {
            Stands::Wall(_) => own.unwrap_or(sizes.depth),
            Stands::Island(..) => sizes.front,
        };
        let back = front - own.unwrap_or(sizes.depth);
        let low = opening.and_then(|opening| opening.sill.get().copied()).unwrap_or(sizes.low);
        let height = match opening {
            Some(opening) => height_of(self.room, opening),
            None if matches!(part.is, PartIs::Tall(_)) => part.height.get().copied().or(sizes.tall),
            None => part.height.get().copied().or(sizes.height),
        };
        self.plan.things.push(Thing {
            name: part.is.word(),
            what: What::Part(part),
            opening,
            kind: opening.and_then(|opening| opening.takes.get().copied()),
            stands: row.stands,
            frame: row.frame,
            along,
            out: (back, front),
            handles: if opening.is_some() { Length::ZERO } else { sizes.handles },
            low,
            high: height.map(|height| low + height),
            row: Some(number),
            within: sizes.body,
            span: part.span,
        });
        self.cut_into(part, self.plan.things.len() - 1, row.counter.and_then(|counter| counter.height));
    }

    /// Puts what a cabinet holds into it, and into the counter of that height over it.
    fn cut_into(&mut self, part: &'a Part, cabinet: usize, counter: Option<Length>) {
        let held: Vec<_> = part.holds.iter().filter_map(|name| Some((name.span, self.room.opening(name)?))).collect();
        let is_cut_in = |opening: &Opening| opening.takes_one(Trait::CutIntoCounter);
        let count = |held: &[(Span, &Opening)]| {
            i64::try_from(held.iter().filter(|(_, opening)| is_cut_in(opening)).count()).unwrap_or(1)
        };
        for (number, (span, opening)) in held.iter().enumerate() {
            self.once(opening, *span);
            let share = match is_cut_in(opening) {
                true => (count(held.get(..number).unwrap_or_default()), count(&held)),
                false => (0, 1),
            };
            self.held(opening, (cabinet, counter), share, *span);
        }
    }
}
