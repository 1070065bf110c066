//! The side view: from the finished wall at the back to the front, its door and its handle.

use super::dimension::{Aside, Level, Plumb, around, level, plumb};
use super::figures::Sizes;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot, at};
use super::scale::{Mil, Paper, Scale};
use super::{bar, ground, misfit, told};
use crate::drawings::sizes::{Behind, Deep, Door, Foot, Misfit, OpeningSide};
use crate::language::say;
use crate::units::length::Length;

/// A side view being drawn: the finished wall is at 0, and so is the floor.
struct Side<'a> {
    what: &'a OpeningSide,
    canvas: Canvas,
    sizes: Sizes,
    paper: Paper,
    foot: Mil,
    head: Mil,
    /// How far anything stands out.
    far: Mil,
}

/// Draws the opening from its right.
pub fn draw(what: &OpeningSide, paper: Paper) -> String {
    let mut side = Side::new(what, paper);
    side.room();
    if let Some(thing) = &what.thing {
        side.thing(thing);
    }
    side.counter();
    if what.opening.foot != Foot::Unknown {
        let ends = (-12_000, side.far + 120_000);
        ground::floor(&mut side.canvas, side.sizes, ends, what.opening.floor_build_up);
    }
    side.services();
    side.depth();
    side.misfit();
    side.heights();
    if let Some(thing) = &what.thing {
        side.chain(thing);
        side.past_the_counter(thing);
        if paper == Paper::Desk {
            side.door_down(thing);
        }
    }
    side.words_of_counter();
    if !what.opening.measured {
        ground::unmeasured(&mut side.canvas, side.sizes, side.far / 2);
    }
    bar::draw(&mut side.canvas, side.sizes, paper);
    let width = if paper == Paper::Desk { 225_000 } else { 340_000 };
    side.canvas.finish(&say!(what.words, "drawn.side.title", name = what.name), &told::side(what), width)
}

impl<'a> Side<'a> {
    fn new(what: &'a OpeningSide, paper: Paper) -> Side<'a> {
        let reach = what.thing.as_ref().map_or(Length::ZERO, |thing| match (thing.door, paper) {
            (Door::Drops { reach }, Paper::Desk) => (thing.front() + reach).max(thing.farthest()),
            _ => thing.farthest(),
        });
        let sides = [what.depth, what.counter_edge, Some(reach)];
        let far = sides.into_iter().flatten().max().unwrap_or(Length::ZERO);
        let top = what
            .height
            .map_or(what.opening.top(), |height| what.opening.top().max(what.opening.bottom() + height.most));
        let scale = Scale::fitting(paper, what.units, far, top);
        let whole = if paper == Paper::Desk { 350_000 } else { 334_000 };
        let limit = (-40_000, (whole - 40_000).max(scale.of(far) + 80_000));
        let canvas = Canvas::new(told::id(&what.id, "side", paper), scale, limit);
        let (foot, head) = (-scale.of(what.opening.bottom()), -scale.of(what.opening.top()));
        let sizes = Sizes::on(paper, what.units, what.words);
        Side { what, canvas, sizes, paper, foot, head, far: scale.of(far) }
    }

    fn of(&self, length: Length) -> Mil {
        self.canvas.scale.of(length)
    }

    /// The wall behind, the opening's head, and what it stands on.
    fn room(&mut self) {
        let top = self.head - 20_000;
        if self.what.behind == Behind::Wall {
            self.canvas.rect(Pen::Object, Fill::Hatch, Frame::new(-12_000, top, 12_000, -top));
        }
        let Some(depth) = self.what.depth else { return };
        let face = self.of(depth);
        self.canvas.line(Pen::Cut, at(0, self.head), at(face, self.head));
        self.canvas.line(Pen::Fine, at(face, self.head - 20_000), at(face, self.head));
        self.canvas.line(Pen::Hidden, at(face, self.head), at(face, self.foot));
        if matches!(self.what.opening.foot, Foot::Above(_)) {
            self.canvas.rect(Pen::Object, Fill::Tint, Frame::new(0, self.foot, face, -self.foot));
        }
    }

    /// Body, door and handle, as high as the lower of its heights.
    fn thing(&mut self, thing: &Deep) {
        let tall = self.what.height.map_or(self.foot - self.head, |height| self.of(height.least));
        let over = tall - (self.foot - self.head);
        // A front that lies over the hole's edge lies over as much below as above.
        let laps = over > 0 && !matches!(self.what.misfits.height, Some(Misfit::TooSmall(_)));
        let top = match self.what.hangs {
            Some(below) => self.head + self.of(below),
            None if laps => self.head - over / 2,
            None => self.foot - tall,
        };
        let (back, body) = (self.of(thing.behind), self.of(thing.body));
        self.canvas.name_next("thing");
        self.canvas.rect(Pen::Object, Fill::Paper, Frame::new(back, top, body, tall));
        let mut front = back + body;
        if let Some(with_door) = thing.with_door {
            let door = self.of(thing.behind + with_door) - front;
            self.canvas.rect(Pen::Object, Fill::Tint, Frame::new(front, top, door, tall));
            front += door;
        }
        let Some(with_handle) = thing.with_handle else { return };
        let tip = self.of(thing.behind + with_handle);
        let (from, to) = match thing.door {
            Door::Drops { .. } => (10, 18),
            _ => (20, 50),
        };
        let (from, to) = (top + tall * from / 100, top + tall * to / 100);
        let corners = [at(front, from), at(tip, from), at(tip, to), at(front, to)];
        self.canvas.path(Pen::Object, Fill::None, &corners, false);
    }

    /// The counter beside, in broken lines: it lies behind the cut.
    fn counter(&mut self) {
        let (Some(edge), Some(height)) = (self.what.counter_edge, self.what.counter) else {
            return;
        };
        let (x, y) = (self.of(edge), -self.of(height));
        self.canvas.path(Pen::Hidden, Fill::None, &[at(0, y), at(x, y), at(x, 0)], false);
    }

    fn words_of_counter(&mut self) {
        let (Some(edge), Some(height)) = (self.what.counter_edge, self.what.counter) else {
            return;
        };
        let point = at(self.of(edge), -self.of(height));
        let line = Line::of(self.sizes.in_words("drawn.counter_edge", self.sizes.first(edge)), self.sizes.small);
        let top = told::above_floor(self.sizes, height);
        let label = Label::of(vec![line.toned(Tone::Soft), top]);
        self.canvas.label(label, &around(point, &[14_000, 24_000, 40_000, 60_000, 80_000]));
    }

    fn services(&mut self) {
        let services = self.what.services.clone();
        for service in &services {
            let y = -self.of(service.above_floor);
            let plate = Frame::new(-2_000, y - 7_000, 7_000, 14_000);
            self.canvas.rect(Pen::Object, Fill::Solid, plate);
            self.canvas.keep_clear(plate);
        }
        for service in &services {
            let point = at(5_000, -self.of(service.above_floor));
            let label = told::service(self.sizes, &service.what, service.above_floor);
            let steps = [12_000, 20_000, 30_000, 42_000, 56_000];
            let right = |spot: &Spot| spot.grip == Grip::LeftEdge;
            let spots: Vec<Spot> = around(point, &steps).into_iter().filter(right).collect();
            self.canvas.label(label, &spots);
        }
    }

    /// Over the opening: how deep it is, and how deep it must be.
    fn depth(&mut self) {
        let top = self.head - 20_000;
        if let Some(depth) = self.what.depth {
            let words = if self.what.opening.measured { "drawn.deep" } else { "drawn.deep_vif" };
            let label = self.sizes.length_of(depth, words);
            let (to, y) = (self.of(depth), top - 22_000);
            let string = Level { from: 0, to, y, edges: Some((top, top)), aside: Aside::After };
            level(&mut self.canvas, &string, label);
        }
        if self.paper == Paper::Phone {
            return;
        }
        if let Some(mut label) = self.sizes.limits(self.what.needs.depth) {
            label.parting = 0;
            let y = self.canvas.extent().top - 4_000;
            let middle = label.width() / 2;
            self.canvas.label(label, &[Spot::new(middle, y, Grip::Foot)]);
        }
    }

    /// What the verdict says is too deep, hatched before the opening's face, or behind it.
    fn misfit(&mut self) {
        let [.., Some((by, words))] = misfit::words(self.what.misfits) else { return };
        let Some(face) = self.what.depth.map(|depth| self.of(depth)) else { return };
        let wide = self.of(by);
        let left = if matches!(self.what.misfits.depth, Some(Misfit::TooSmall(_))) { face } else { face - wide };
        let strip = Frame::new(left, self.head, wide, self.foot - self.head);
        self.canvas.name_next("misfit");
        self.canvas.rect(Pen::Object, Fill::Clash, strip);
        let inside = Frame::new(0, self.head, face, self.foot - self.head);
        self.canvas.label(misfit::label(self.sizes, (by, words)), &super::face::inside(inside));
    }

    /// At the right: the thing's height, and the opening's.
    fn heights(&mut self) {
        let bottom = self.foot;
        let mut x = self.far + 44_000;
        if let Some(height) = self.what.height {
            let tall = self.of(height.least);
            let top = self.what.hangs.map_or(bottom - tall, |below| self.head + self.of(below));
            let label = self.sizes.between(height);
            self.upright(x, (top, top + tall), label);
            x += 46_000;
        }
        if self.paper == Paper::Desk || self.what.height.is_none() {
            let opening = &self.what.opening;
            let words = if opening.foot == Foot::Floor { "drawn.aff" } else { "drawn.high" };
            let label = self.sizes.length_of(opening.height, words);
            self.upright(x, (self.head, bottom), label);
        }
    }

    fn upright(&mut self, x: Mil, (from, to): (Mil, Mil), label: Label) {
        let edge = self.far.min(x - 20_000);
        let edges = Some((edge, edge));
        plumb(&mut self.canvas, &Plumb { from, to, x, edges, aside: Aside::After }, label);
    }

    /// Under the floor: air, body and door; then everything from the wall.
    fn chain(&mut self, thing: &Deep) {
        let (back, front) = (self.of(thing.behind), self.of(thing.front()));
        let edges = Some((-2_000, -2_000));
        let words = if thing.with_door.is_some() { "drawn.with_door" } else { "drawn.body" };
        let label = self.sizes.length_of(thing.front() - thing.behind, words);
        let aside = if thing.is_set && thing.behind > Length::ZERO { Aside::OffAfter } else { Aside::After };
        let string = Level { from: back, to: front, y: 52_000, edges, aside };
        level(&mut self.canvas, &string, label);
        if !thing.is_set {
            return;
        }
        if thing.behind > Length::ZERO {
            let mut label = self.sizes.length_of(thing.behind, "drawn.air");
            label.parting = 0;
            let string = Level { from: 0, to: back, y: 52_000, edges, aside: Aside::OffAfter };
            level(&mut self.canvas, &string, label);
        }
        if thing.farthest() > thing.front() || thing.behind > Length::ZERO {
            let label = self.sizes.length_of(thing.farthest(), "drawn.from_the_wall");
            let (to, y) = (self.of(thing.farthest()), 96_000);
            let edges = Some((58_000, 58_000));
            level(&mut self.canvas, &Level { from: 0, to, y, edges, aside: Aside::After }, label);
        }
    }

    /// How far the farthest part stands out past the edge of the counter.
    fn past_the_counter(&mut self, thing: &Deep) {
        let (Some(edge), Some(height)) = (self.what.counter_edge, self.what.counter) else { return };
        let Some(past) = thing.past(Some(edge)) else { return };
        let words = if past.is_negative() { "drawn.behind_edge" } else { "drawn.past_edge" };
        let mut label = self.sizes.length_of(past.abs(), words);
        label.parting = 0;
        let (from, to, y) = (self.of(edge), self.of(thing.farthest()), -self.of(height) / 2);
        let string = Level { from, to, y, edges: None, aside: Aside::After };
        level(&mut self.canvas, &string, label);
    }

    /// Where a dropped door ends; how high it hangs is not known here.
    fn door_down(&mut self, thing: &Deep) {
        let Door::Drops { reach } = thing.door else { return };
        let (from, to) = (self.of(thing.front()), self.of(thing.front() + reach));
        let y = self.foot - 16_000;
        self.canvas.line(Pen::Sweep, at(to, self.foot), at(to, y - 24_000));
        let label = self.sizes.length_of(reach, "drawn.door_down");
        let string = Level { from, to, y, edges: None, aside: Aside::After };
        level(&mut self.canvas, &string, label);
    }
}
