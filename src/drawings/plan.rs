//! The plan: an opening from above with the door open, and what is left of the aisle.

use super::dimension::{Aside, Level, Plumb, level, plumb};
use super::figures::Sizes;
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot, at};
use super::scale::{Mil, Paper, Scale};
use super::{bar, ground, misfit, told};
use crate::drawings::sizes::{Behind, Beside, Deep, Door, Hand, Hinged, Misfit, Neighbour, OpeningPlan};
use crate::language::say;
use crate::units::length::Length;

/// A plan being drawn: the finished wall behind is at 0, the opening's left edge too.
struct PlanDrawing<'a> {
    what: &'a OpeningPlan,
    canvas: Canvas,
    sizes: Sizes,
    right: Mil,
    bands: (Mil, Mil),
    /// The thing's left and right edge.
    thing: (Mil, Mil),
}

const WALL: Mil = 12_000;

/// Draws the opening from above.
pub fn draw(what: &OpeningPlan, paper: Paper) -> String {
    let mut plan = PlanDrawing::new(what, paper);
    plan.room();
    if let Some(thing) = &what.thing {
        plan.thing(thing);
        plan.door(thing);
    }
    plan.misfits();
    plan.across();
    plan.tag();
    plan.width();
    plan.depths();
    plan.aisle();
    plan.words(&what.left, Hand::Left);
    plan.words(&what.right, Hand::Right);
    if !what.measured {
        ground::unmeasured(&mut plan.canvas, plan.sizes, plan.right / 2);
    }
    bar::draw(&mut plan.canvas, plan.sizes, paper);
    let title = say!(what.words, "drawn.plan.title", name = what.name);
    let width = if paper == Paper::Desk { 225_000 } else { 340_000 };
    plan.canvas.finish(&title, &told::plan(what), width)
}

/// How far a thing reaches into the room with its door open, from the wall behind.
pub fn open_reach(thing: &Deep) -> Length {
    match thing.door {
        Door::None => thing.farthest(),
        Door::Drops { reach } => thing.front() + reach,
        Door::Swings { leaf, .. } => thing.front() + leaf,
    }
}

impl<'a> PlanDrawing<'a> {
    fn new(what: &'a OpeningPlan, paper: Paper) -> PlanDrawing<'a> {
        let reach = what.thing.as_ref().map(open_reach);
        let deep = [reach, what.depth, what.counter_edge, what.across.as_ref().map(|a| a.distance)];
        let deep = deep.into_iter().flatten().max().unwrap_or(Length::ZERO);
        let scale = Scale::of_a_plan(paper, what.units, what.width, deep);
        let right = scale.of(what.width);
        let band = |neighbour: &Neighbour| match (neighbour.kind, paper) {
            (Beside::Open, _) => 0,
            (Beside::Wall, _) => WALL,
            (_, Paper::Desk) => 56_000,
            (_, Paper::Phone) => 32_000,
        };
        let bands = (band(&what.left), band(&what.right));
        let whole = if paper == Paper::Desk { 350_000 } else { 334_000 };
        let spare = ((whole - right - bands.0 - bands.1) / 2).max(40_000);
        let limit = (-bands.0 - spare, right + bands.1 + spare);
        let canvas = Canvas::new(told::id(&what.id, "plan", paper), scale, limit);
        let left = scale.of(what.gap_left);
        let thing = (left, left + what.thing_width.map_or(0, |width| scale.of(width)));
        PlanDrawing { what, canvas, sizes: Sizes::on(paper, what.units, what.words), right, bands, thing }
    }

    fn of(&self, length: Length) -> Mil {
        self.canvas.scale.of(length)
    }

    /// How deep what stands beside is: to its face, or to the counter's edge.
    fn beside(&self, kind: Beside) -> Mil {
        let face = self.what.depth.or(self.what.counter_edge);
        let deep = match kind {
            Beside::Base => self.what.counter_edge.or(face),
            _ => face,
        };
        self.of(deep.or(self.what.thing.as_ref().map(Deep::front)).unwrap_or(Length::ZERO))
    }

    fn room(&mut self) {
        let (from, to) = (-self.bands.0.max(30_000), self.right + self.bands.1.max(30_000));
        match self.what.behind {
            Behind::Wall => {
                let wall = Frame { left: from, top: -WALL, right: to, bottom: 0 };
                self.canvas.rect(Pen::Object, Fill::Hatch, wall);
            }
            Behind::Island => self.canvas.line(Pen::Object, at(from, 0), at(to, 0)),
        }
        for hand in [Hand::Left, Hand::Right] {
            let (kind, edge, outer) = match hand {
                Hand::Left => (self.what.left.kind, 0, -self.bands.0),
                Hand::Right => (self.what.right.kind, self.right, self.right + self.bands.1),
            };
            let fill = match kind {
                Beside::Open => continue,
                Beside::Wall => Fill::Hatch,
                Beside::Tall | Beside::Base => Fill::Tint,
            };
            let deep = self.beside(kind);
            let corners = [at(edge, 0), at(edge, deep), at(outer, deep)];
            let closed = [corners[0], corners[1], corners[2], at(outer, 0)];
            self.canvas.path(Pen::Object, fill, &closed, false);
        }
    }

    fn thing(&mut self, thing: &Deep) {
        let (left, right) = self.thing;
        let (back, body) = (self.of(thing.behind), self.of(thing.behind + thing.body));
        let frame = Frame { left, top: back, right, bottom: body };
        self.canvas.name_next("thing");
        self.canvas.rect(Pen::Cut, Fill::Paper, frame);
        let front = self.of(thing.front());
        if front > body {
            let door = Frame { top: body, bottom: front, ..frame };
            self.canvas.rect(Pen::Object, Fill::Tint, door);
        }
        if let Some(depth) = thing.with_handle {
            let tip = self.of(thing.behind + depth);
            let wide = right - left;
            let (from, to) = match thing.door {
                Door::Swings { hinge: Hinged::At(Hand::Left), .. } => (84, 92),
                Door::Swings { hinge: Hinged::At(Hand::Right), .. } => (8, 16),
                Door::Swings { hinge: Hinged::BothSides, .. } => (46, 54),
                _ => (20, 80),
            };
            let (from, to) = (left + wide * from / 100, left + wide * to / 100);
            let handle = Frame { left: from, top: front, right: to, bottom: tip.max(front) };
            self.canvas.rect(Pen::Object, Fill::Paper, handle);
        }
    }

    /// Hatches what the verdict says does not fit in width and in depth, and says it.
    fn misfits(&mut self) {
        let (left, right) = if self.what.thing.is_some() { self.thing } else { (0, self.right) };
        let thing = self.what.thing.as_ref();
        let bottom = thing.map(|thing| thing.behind + thing.body).or(self.what.depth).unwrap_or(Length::ZERO);
        let top = thing.map_or(0, |thing| self.of(thing.behind));
        let frame = Frame { left, top, right, bottom: self.of(bottom) };
        let [wide, _, deep] = misfit::words(self.what.misfits);
        let is_small = |misfit: Option<Misfit>| matches!(misfit, Some(Misfit::TooSmall(_)));
        let mut found = Vec::new();
        if let Some(told) = wide {
            let (edge, over) = (self.right, self.of(told.0));
            let left = if is_small(self.what.misfits.width) { edge } else { edge - over };
            found.push((told, Frame { left, right: left + over, ..frame }));
        }
        if let Some((told, face)) = deep.zip(self.what.depth.map(|depth| self.of(depth))) {
            let over = self.of(told.0);
            let top = if is_small(self.what.misfits.depth) { face } else { face - over };
            found.push((told, Frame { top, bottom: top + over, ..frame }));
        }
        for (_, strip) in &found {
            self.canvas.name_next("misfit");
            self.canvas.rect(Pen::Object, Fill::Clash, *strip);
        }
        for (told, _) in found {
            self.canvas.label(misfit::label(self.sizes, told), &super::face::inside(frame));
        }
    }

    fn door(&mut self, thing: &Deep) {
        let (left, right) = self.thing;
        let (front, open) = (self.of(thing.front()), self.of(open_reach(thing)));
        let thick = (front - self.of(thing.behind + thing.body)).clamp(3_000, 9_000);
        match thing.door {
            Door::None | Door::Swings { hinge: Hinged::Unknown, .. } => {}
            Door::Drops { .. } => {
                let corners = [at(left, front), at(left, open), at(right, open), at(right, front)];
                self.canvas.path(Pen::Sweep, Fill::None, &corners, false);
            }
            Door::Swings { leaf, hinge: Hinged::BothSides } => {
                self.leaf(Hand::Left, leaf, thick);
                self.leaf(Hand::Right, leaf, thick);
            }
            Door::Swings { leaf, hinge: Hinged::At(hand) } => self.leaf(hand, leaf, thick),
        }
    }

    /// A leaf that stands open, and the quarter that it swept.
    fn leaf(&mut self, hand: Hand, leaf: Length, thick: Mil) {
        let (left, right) = self.thing;
        let Some(front) = self.what.thing.as_ref().map(|thing| self.of(thing.front())) else { return };
        let long = self.of(leaf);
        let (post, free, leaf_left) = match hand {
            Hand::Left => (left, left + long, left),
            Hand::Right => (right, right - long, right - thick),
        };
        self.canvas.quarter(Pen::Sweep, at(free, front), at(post, front + long), hand == Hand::Left);
        self.canvas.rect(Pen::Object, Fill::Paper, Frame::new(leaf_left, front, thick, long));
    }

    fn across(&mut self) {
        let Some(across) = &self.what.across else { return };
        let (from, to) = (-self.bands.0.max(30_000), self.right + self.bands.1.max(30_000));
        let y = self.of(across.distance);
        let far = [at(from, y + 26_000), at(from, y), at(to, y), at(to, y + 26_000)];
        self.canvas.path(Pen::Object, Fill::Tint, &far, false);
        let label = self.sizes.remark(&across.words, 30);
        let middle = Spot::new((from + to) / 2, y + 14_000, Grip::Middle);
        let under = Spot::new((from + to) / 2, y + 30_000, Grip::Head);
        self.canvas.label(label, &[middle, under]);
    }

    fn tag(&mut self) {
        let middle = self.right / 2;
        let deep = self.what.thing.as_ref().map_or(60_000, |thing| self.of(thing.behind + thing.body));
        let places = [50, 40, 60].map(|part| at(middle, deep * part / 100));
        self.canvas.tag(&self.what.tag, self.sizes.small, &places);
    }

    fn width(&mut self) {
        let key = if self.what.measured { "drawn.least" } else { "drawn.vif" };
        let label = self.sizes.reading(self.what.width, &say!(self.sizes.words, key));
        let (y, edges) = (-WALL - 24_000, Some((-WALL, -WALL)));
        let string = Level { from: 0, to: self.right, y, edges, aside: Aside::After };
        level(&mut self.canvas, &string, label);
    }

    /// At the left: wall to front, and front to the end of the open door.
    fn depths(&mut self) {
        let Some(thing) = &self.what.thing else { return };
        let (x, edge) = (-self.bands.0 - 24_000, -self.bands.0);
        let (front, open) = (self.of(thing.front()), self.of(open_reach(thing)));
        let edges = Some((edge, edge));
        let label = self.sizes.length_of(thing.front(), "drawn.to_front");
        let string = Plumb { from: 0, to: front, x, edges, aside: Aside::Under };
        plumb(&mut self.canvas, &string, label);
        let reach = open_reach(thing) - thing.front();
        if thing.door != Door::None && reach > Length::ZERO {
            let label = self.sizes.length_of(reach, "drawn.open");
            let string = Plumb { from: front, to: open, x, edges, aside: Aside::Under };
            plumb(&mut self.canvas, &string, label);
        }
    }

    /// What is left to walk through, with the door open and with it shut.
    fn aisle(&mut self) {
        let (Some(across), Some(thing)) = (&self.what.across, &self.what.thing) else { return };
        let far = self.of(across.distance);
        let left = across.distance - open_reach(thing);
        let (open, middle) = (self.of(open_reach(thing)), self.right / 2);
        if thing.door != Door::None {
            let key = if left.is_negative() { "drawn.too_far" } else { "drawn.left_open" };
            let label = self.sizes.reading(left.abs(), &say!(self.sizes.words, key));
            let string = Plumb { from: open, to: far, x: middle, edges: None, aside: Aside::Under };
            plumb(&mut self.canvas, &string, label);
        }
        let shut = thing.farthest().max(self.what.counter_edge.unwrap_or(Length::ZERO));
        let label = self.sizes.length_of(across.distance - shut, "drawn.aisle");
        let (x, edge) = (self.right + self.bands.1 + 24_000, self.right + self.bands.1);
        let from = self.of(shut);
        let string = Plumb { from, to: far, x, edges: Some((edge, edge)), aside: Aside::Under };
        plumb(&mut self.canvas, &string, label);
    }

    fn words(&mut self, neighbour: &Neighbour, hand: Hand) {
        if neighbour.words.is_empty() || neighbour.kind == Beside::Open {
            return;
        }
        let (edge, sign, band) = match hand {
            Hand::Left => (0, -1, self.bands.0),
            Hand::Right => (self.right, 1, self.bands.1),
        };
        let deep = self.beside(neighbour.kind);
        let label = self.sizes.remark(&neighbour.words, 18);
        let (middle, outer) = (edge + sign * band / 2, edge + sign * (band + 6_000));
        let grip = if sign < 0 { Grip::RightEdge } else { Grip::LeftEdge };
        let mut spots = Vec::new();
        if label.height() < band && label.width() + 8_000 < deep {
            spots.push(Spot::new(middle, deep / 2, Grip::Middle).turned());
        }
        for part in [50, 30, 70, 15] {
            spots.push(Spot::new(outer, deep * part / 100, grip));
        }
        spots.push(Spot::new(middle, deep + 5_000, Grip::Head));
        self.canvas.label(label, &spots);
    }
}
