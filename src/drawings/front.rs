//! The front view: the opening with its readings, what goes into it, and the gaps around.

use super::bar;
use super::dimension::{Aside, Level, Plumb, around, level, plumb};
use super::figures::Sizes;
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot, at};
use super::scale::{Mil, Paper, Scale};
use super::{around_front, face, ground, told};
use crate::drawings::sizes::{Beside, Foot, OpeningFront, ReadAt, Reading};
use crate::language::say;
use crate::units::length::Length;

/// A front view being drawn: the floor is at 0, the opening's left edge where it is narrowest too.
pub struct Front<'a> {
    pub what: &'a OpeningFront,
    pub canvas: Canvas,
    pub sizes: Sizes,
    pub paper: Paper,
    /// The opening's right edge, foot and head.
    pub right: Mil,
    pub foot: Mil,
    pub head: Mil,
    /// How far what stands at the left and at the right is shown.
    pub bands: (Mil, Mil),
}

/// Draws the opening from the front.
pub fn draw(what: &OpeningFront, paper: Paper) -> String {
    let mut front = Front::new(what, paper);
    around_front::draw(&mut front);
    front.outline();
    face::draw(&mut front);
    front.floor();
    front.service_points();
    front.readings();
    front.services();
    face::tag(&mut front);
    front.heights();
    front.chain();
    front.needs();
    around_front::words(&mut front);
    if !what.opening.measured {
        ground::unmeasured(&mut front.canvas, front.sizes, front.right / 2);
    }
    bar::draw(&mut front.canvas, front.sizes, paper);
    let width = match paper {
        Paper::Desk => 225_000,
        Paper::Phone => 340_000,
    };
    front.canvas.finish(&told::front_title(what), &told::front(what), width)
}

impl<'a> Front<'a> {
    fn new(what: &'a OpeningFront, paper: Paper) -> Front<'a> {
        let opening = &what.opening;
        let tallest =
            what.thing.as_ref().map_or(opening.top(), |thing| opening.top().max(opening.bottom() + thing.height.most));
        let above = what.above.underside.filter(|_| what.above.kind != Beside::Open).unwrap_or(tallest);
        let scale = Scale::fitting(paper, what.units, opening.widest(), tallest.max(above));
        let right = scale.of(opening.governing());
        let bands = (around_front::band(&what.left, paper), around_front::band(&what.right, paper));
        let whole = if paper == Paper::Desk { 350_000 } else { 334_000 };
        let spare = ((whole - right - bands.0 - bands.1) / 2).max(40_000);
        let limit = (-bands.0 - spare, right + bands.1 + spare);
        let canvas = Canvas::new(told::id(&what.id, "front", paper), scale, limit);
        let (foot, head) = (-scale.of(opening.bottom()), -scale.of(opening.top()));
        Front { what, canvas, sizes: Sizes::on(paper, what.units, what.words), paper, right, foot, head, bands }
    }

    /// Where a height above the finished floor is.
    pub fn y(&self, height: Length) -> Mil {
        -self.canvas.scale.of(height)
    }

    /// The left and right edge at a reading; what it is wider lies half at each side.
    fn edges(&self, reading: &Reading) -> (Mil, Mil) {
        let width = self.canvas.scale.of(reading.width);
        let left = (self.right - width).div_euclid(2);
        (left, left + width)
    }

    fn height_of(&self, held: ReadAt) -> Mil {
        let tall = self.foot - self.head;
        match held {
            ReadAt::Top => self.head + tall * 13 / 100,
            ReadAt::Middle | ReadAt::Throughout => self.head + tall * 50 / 100,
            ReadAt::Floor => self.foot - tall * 13 / 100,
        }
    }

    /// The opening's edges as measured, left open where it stands on the floor.
    fn outline(&mut self) {
        let mut readings = self.what.opening.widths.clone();
        readings.sort_by_key(|reading| reading.held);
        let (Some(first), Some(last)) = (readings.first(), readings.last()) else {
            return;
        };
        let (top, bottom) = (self.edges(first), self.edges(last));
        let mut left = vec![at(bottom.0, self.foot)];
        let mut right = vec![at(top.1, self.head)];
        for reading in &readings {
            let (edges, y) = (self.edges(reading), self.height_of(reading.held));
            right.push(at(edges.1, y));
            left.insert(1, at(edges.0, y));
        }
        left.push(at(top.0, self.head));
        right.push(at(bottom.1, self.foot));
        left.extend(right);
        self.canvas.name_next("opening");
        self.canvas.path(Pen::Cut, Fill::Paper, &left, self.what.opening.foot != Foot::Floor);
    }

    fn floor(&mut self) {
        if self.what.opening.foot == Foot::Unknown {
            return;
        }
        let ends = (-self.bands.0 - 36_000, self.right + self.bands.1 + 36_000);
        ground::floor(&mut self.canvas, self.sizes, ends, self.what.opening.floor_build_up);
    }

    /// The widths, each where the tape was held; above a low opening, one over the other.
    fn readings(&mut self) {
        let readings = self.shown_readings();
        let inside = self.foot - self.head >= 46_000 * readings.len() as Mil;
        let mut over = around_front::crown(self) - 24_000;
        // What was read lowest stands lowest, over a low opening too.
        for reading in readings.iter().rev() {
            let (from, to) = self.edges(reading);
            let label = self.sizes.reading(reading.width, &self.remark_on(reading));
            let (y, edges) = match inside {
                true => (self.height_of(reading.held), None),
                false => (over, Some((over + 24_000, over + 24_000))),
            };
            over -= 40_000;
            level(&mut self.canvas, &Level { from, to, y, edges, aside: Aside::Under }, label);
        }
    }

    /// All of them on a desk, the one that governs on a telephone.
    fn shown_readings(&self) -> Vec<Reading> {
        let mut readings = self.what.opening.widths.clone();
        readings.sort_by_key(|reading| reading.held);
        if self.paper == Paper::Phone {
            let least = readings.iter().copied().min_by_key(|reading| reading.width);
            return least.into_iter().collect();
        }
        readings
    }

    fn remark_on(&self, reading: &Reading) -> String {
        let held = match reading.held {
            ReadAt::Top => "drawn.held.top",
            ReadAt::Middle => "drawn.held.middle",
            ReadAt::Floor if self.what.opening.foot != Foot::Floor => "drawn.held.sill",
            ReadAt::Floor => "drawn.held.floor",
            ReadAt::Throughout => "",
        };
        match (self.what.opening.measured, held) {
            (true, "") => String::new(),
            (true, held) => say!(self.sizes.words, held),
            (false, "") => say!(self.sizes.words, "drawn.vif"),
            (false, held) => say!(self.sizes.words, "drawn.held_vif", held = say!(self.sizes.words, held)),
        }
    }

    /// The opening's height at the right, over the sill's where there is one.
    fn heights(&mut self) {
        let (x, edge) = (self.right + self.bands.1 + 24_000, self.right + self.bands.1);
        let opening = &self.what.opening;
        let words = match (opening.foot, opening.measured) {
            (Foot::Floor, true) => "drawn.aff",
            (Foot::Floor, false) => "drawn.aff_vif",
            (Foot::Above(_) | Foot::Unknown, true) => "drawn.high",
            (Foot::Above(_) | Foot::Unknown, false) => "drawn.high_vif",
        };
        let label = self.sizes.length_of(opening.height, words);
        let edges = Some((edge, edge));
        let string = Plumb { from: self.head, to: self.foot, x, edges, aside: Aside::Before };
        plumb(&mut self.canvas, &string, label);
        if let Foot::Above(sill) = opening.foot {
            let label = self.sizes.length_of(sill, "drawn.aff");
            let string = Plumb { from: self.foot, to: 0, x, edges, aside: Aside::After };
            plumb(&mut self.canvas, &string, label);
        }
    }

    /// Under the floor: gap, thing, gap.
    fn chain(&mut self) {
        let Some(thing) = &self.what.thing else { return };
        let scale = self.canvas.scale;
        let from = scale.of(thing.gap_left);
        let (to, y) = (from + scale.of(thing.width), 52_000);
        let edges = Some((self.foot.max(-2_000), self.foot.max(-2_000)));
        let named = self.sizes.length_named(thing.width, &thing.name);
        let label = match named.width() + 8_000 <= to - from {
            true => named,
            false => self.sizes.length(thing.width),
        };
        level(&mut self.canvas, &Level { from, to, y, edges, aside: Aside::Under }, label);
        let right = self.what.gap_right().unwrap_or(Length::ZERO);
        self.gap((0, from), y, thing.gap_left, Aside::Before);
        self.gap((to, self.right), y, right, Aside::After);
    }

    /// One gap of the chain: a string where it is wide enough to be one, or a leader.
    fn gap(&mut self, (from, to): (Mil, Mil), y: Mil, gap: Length, aside: Aside) {
        let laps = self.what.thing.as_ref().is_some_and(|thing| thing.laps.width.is_some());
        let words = match gap.is_negative() {
            false => "drawn.gap",
            true if laps => "drawn.laps_over",
            // What is too wide the verdict tells, once.
            true => return,
        };
        let mut label = self.sizes.length_of(gap.abs(), words);
        label.parting = 0;
        let edge = Some((self.foot.max(-2_000), self.foot.max(-2_000)));
        let string = Level { from, to, y, edges: edge, aside };
        if (to - from).abs() >= 12_000 {
            return level(&mut self.canvas, &string, label);
        }
        let middle = (from + to) / 2;
        let (x, grip) = match aside {
            Aside::Before => (from.min(to) - 16_000, Grip::RightEdge),
            _ => (from.max(to) + 16_000, Grip::LeftEdge),
        };
        let spots = [0, 20_000, 36_000, 52_000, 68_000].map(|down| {
            let spot = Spot::new(x, y + down, grip);
            spot.led(middle, y)
        });
        self.canvas.label(label, &spots);
    }

    /// What the maker asks, above and at the far right; a telephone leaves it to the table.
    fn needs(&mut self) {
        if self.paper == Paper::Phone {
            return;
        }
        let middle = self.right / 2;
        if let Some(mut label) = self.sizes.limits(self.what.needs.width) {
            label.parting = 0;
            let top = self.canvas.extent().top.min(around_front::crown(self)) - 6_000;
            let spot = |up: Mil| Spot::new(middle, top - up, Grip::Foot);
            self.canvas.label(label, &[spot(0), spot(20_000), spot(40_000)]);
        }
        if let Some(mut label) = self.sizes.limits(self.what.needs.height) {
            label.parting = 0;
            let x = self.right + self.bands.1 + 24_000 + 36_000;
            let y = (self.foot + self.head) / 2;
            let beside = Spot::new(x, y, Grip::Middle).turned();
            self.canvas.label(label, &[beside, Spot::new(x, y, Grip::Middle)]);
        }
    }

    fn service_points(&mut self) {
        for service in &self.what.services {
            let point = at(self.canvas.scale.of(service.from_left), self.y(service.above_floor));
            self.canvas.circle(Pen::Object, Fill::Solid, point, 4_000);
            self.canvas.keep_clear(Frame::new(point.x, point.y, 0, 0).grown(5_000));
        }
    }

    fn services(&mut self) {
        for service in &self.what.services {
            let point = at(self.canvas.scale.of(service.from_left), self.y(service.above_floor));
            let label = told::service(self.sizes, &service.what, service.above_floor);
            let spots = around(point, &[14_000, 24_000, 36_000, 50_000, 70_000, 90_000, 120_000]);
            self.canvas.label(label, &spots);
        }
    }
}
