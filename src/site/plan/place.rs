//! Puts everything of a room in its place: from what is written once, never typed twice.

use crate::book::{Ceiling, HungLights, Room, Slot, Window, WindowIn};
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::Mention;

use super::fault::{PlanFault, Wrong};
use super::fixed::spaced;
use super::outline;
use super::rows::BASE_DEPTH;
use super::thing::{RowOf, What};
use super::{Hole, HoleIs, Hung, Plan};

/// Where a window lies.
enum Lies {
    InTheWall,
    InTheRoof,
    /// By its name alone, where the ceiling at its wall is not known: enough to take up no wall.
    UnderTheRoofByName,
}

/// A plan in the making.
pub struct Placing<'a> {
    pub(super) plan: Plan<'a>,
    pub(super) room: &'a Room,
}

impl<'a> Placing<'a> {
    /// Puts everything in its place; none for a room that says nothing of its plan.
    pub fn of(room: &'a Room) -> Option<Plan<'a>> {
        let mut placing = Self { plan: Plan::empty(room), room };
        match outline::corners(room) {
            Some((corners, span)) => match outline::walls(room, &corners, span) {
                Ok(walls) => {
                    placing.plan.corners = corners.iter().map(|corner| corner.0).collect();
                    placing.plan.area = Some(outline::area(&corners));
                    placing.plan.walls = walls;
                }
                Err(faults) => {
                    placing.plan.faults = faults;
                    return Some(placing.plan);
                }
            },
            None if !room.is_laid_out() && !room.openings.iter().any(|opening| opening.wall.get().is_some()) => {
                return None;
            }
            None => {}
        }
        placing.wall_notes();
        placing.holes();
        placing.islands();
        room.runs.iter().for_each(|run| placing.run(run));
        room.fixtures.iter().for_each(|fixture| placing.fixture(fixture));
        room.openings.iter().for_each(|opening| placing.opening_at_a_wall(opening));
        placing.carried();
        room.lights.iter().for_each(|hung| placing.hung(hung));
        placing.boxes();
        placing.plan.cover();
        placing.plan.cut_counters();
        super::overlap::look(&mut placing.plan);
        Some(placing.plan)
    }

    /// Tells what is wrong with an item.
    pub(super) fn fault(&mut self, wrong: Wrong, item: &str, span: Span) {
        self.plan.faults.push(PlanFault { wrong, item: Some(item.to_string()), span, also: None });
    }

    /// The wall of that letter or name; says so if there is none.
    pub(super) fn wall(&mut self, wall: &Slot<String>, item: &str) -> Option<usize> {
        let written = wall.spanned()?;
        if let Some(at) = self.plan.wall_named(&written.value) {
            return Some(at);
        }
        let known: Vec<String> = self.plan.walls.iter().map(|wall| wall.letter.clone()).collect();
        // An outline that could not be read has been told.
        if known.is_empty() && !self.room.outline.is_absent() {
            return None;
        }
        let name = written.value.clone();
        let wrong = if known.is_empty() { Wrong::NoOutline(name) } else { Wrong::UnknownWall(name, known) };
        self.fault(wrong, item, written.span);
        None
    }

    /// Says so when something reaches past an end of its wall.
    pub(super) fn within(&mut self, at: usize, along: (Length, Length), item: &str, span: Span) {
        let Some(wall) = self.plan.walls.get(at) else { return };
        let long = wall.frame.length();
        let by = (-along.0).max(along.1 - long);
        if by > Length::ZERO {
            let wall = wall.name().to_string();
            self.fault(Wrong::Outside { wall, by, long }, item, span);
        }
    }

    fn wall_notes(&mut self) {
        for note in &self.room.walls {
            let known: Vec<String> = self.plan.walls.iter().map(|wall| wall.letter.clone()).collect();
            let written = &note.name;
            if !known.is_empty() && !known.iter().any(|letter| letter.eq_ignore_ascii_case(written)) {
                self.fault(Wrong::UnknownWall(written.value.clone(), known), written, written.span);
            }
        }
    }

    fn holes(&mut self) {
        for door in &self.room.doors {
            let height = (Some(Length::ZERO), door.height.get().copied());
            self.hole(HoleIs::Door(door), &door.name, &door.wall, &door.at, &door.width, height);
        }
        for window in &self.room.windows {
            let sill = window.sill.get().copied();
            let top = sill.zip(window.height.get().copied()).map(|(sill, height)| sill + height);
            match self.lies_in(window, (sill, top)) {
                Lies::InTheWall => {}
                Lies::InTheRoof => {
                    self.over_its_wall(window);
                    self.plan.in_the_roof.push(window);
                    continue;
                }
                Lies::UnderTheRoofByName => {
                    self.over_its_wall(window);
                    continue;
                }
            }
            self.hole(HoleIs::Window(window), &window.name, &window.wall, &window.at, &window.width, (sill, top));
        }
    }

    /// A window in the roof takes up no wall, and lies over its own wall all the same.
    fn over_its_wall(&mut self, window: &'a Window) {
        let (name, at, width) = (&window.name, window.at.get(), window.width.get());
        let (Some(wall), Some(at), Some(width)) = (self.wall(&window.wall, name), at, width) else { return };
        self.within(wall, (*at, *at + *width), name, name.span);
    }

    /// Whether a window is in its wall or in the roof above it: as the book says; else in the roof where
    /// it stands higher than the ceiling at that wall.
    fn lies_in(&self, window: &Window, (sill, top): (Option<Length>, Option<Length>)) -> Lies {
        if let Some(said) = window.stands_in.get() {
            return if *said == WindowIn::Roof { Lies::InTheRoof } else { Lies::InTheWall };
        }
        let wall = window.wall.get().and_then(|name| self.plan.walls.get(self.plan.wall_named(name)?));
        let from = window.at.get().copied().unwrap_or_default();
        let ends = [Length::ZERO, window.width.get().copied().unwrap_or_default()];
        let over = |wall: &super::Wall<'_>| {
            ends.iter().filter_map(|end| self.plan.ceiling_at(wall.frame.at(from + *end, Length::ZERO))).min()
        };
        let slopes = matches!(self.room.ceiling.get(), Some(Ceiling::Sloped { .. }));
        let is_of_the_roof = Mention::RoofWindow.is_in(&window.name);
        // A head too high is a mistake, a sill above the ceiling is none; under a slope either may be of its roof, over the
        // wall that it rises from.
        let lowest = match self.room.ceiling.get() {
            Some(Ceiling::Sloped { low_at, .. }) => {
                let own = window.wall.get().and_then(|name| self.plan.wall_named(name));
                let rises_here = own == low_at.get().and_then(|name| self.plan.wall_named(name));
                top.or(sill).filter(|_| is_of_the_roof || rises_here)
            }
            _ => sill,
        };
        match wall.and_then(over) {
            Some(ceiling) if lowest.is_some_and(|lowest| lowest > ceiling) => Lies::InTheRoof,
            Some(_) => Lies::InTheWall,
            None if slopes && is_of_the_roof => Lies::UnderTheRoofByName,
            None => Lies::InTheWall,
        }
    }

    fn hole(
        &mut self,
        is: HoleIs<'a>,
        name: &'a Spanned<String>,
        wall: &Slot<String>,
        at: &Slot<Length>,
        width: &Slot<Length>,
        (low, high): (Option<Length>, Option<Length>),
    ) {
        let Some(number) = self.wall(wall, name) else { return };
        let (Some(at), Some(width)) = (at.get(), width.get()) else { return };
        let along = (*at, *at + *width);
        self.within(number, along, name, name.span);
        if let Some(wall) = self.plan.walls.get(number) {
            self.plan.holes.push(Hole { is, wall: number, frame: wall.frame, along, low, high });
        }
    }

    /// Lights over an island, a run, a fixture or an opening: at the places written, or evenly spaced.
    fn hung(&mut self, hung: &'a HungLights) {
        let Some(over) = hung.over.get() else { return };
        let island = self.plan.things.iter().find(|thing| matches!(thing.what, What::Island(_)) && thing.name == over);
        let run = self.plan.rows.iter().find(|row| row.of.name() == over && matches!(row.of, RowOf::Run(_)));
        let is_it = |thing: &&super::Thing<'_>| match thing.what {
            What::Fixture(_) => thing.name == over || thing.opening.is_some_and(|own| own.name.value == *over),
            What::Opening => thing.name == over,
            What::Part(_) | What::Island(_) => false,
        };
        let (frame, along, out) = match (island, run, self.plan.things.iter().find(is_it)) {
            (Some(thing), ..) | (None, None, Some(thing)) => (thing.frame, thing.along, thing.out),
            (None, Some(run), _) => {
                let front = run.counter.map_or(BASE_DEPTH, |counter| counter.front);
                (run.frame, run.along, (Length::ZERO, front))
            }
            (None, None, None) => return,
        };
        let middle = (out.0 + out.1).half();
        let from = spaced(hung, along.1 - along.0);
        let places = from.into_iter().map(|from| frame.at(along.0 + from, middle)).collect();
        self.plan.hung.push(Hung { lights: hung, places });
    }
}
