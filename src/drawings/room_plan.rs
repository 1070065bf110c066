//! The plan of a room: walls cut through, doors with their swings, and everything in its place.

use super::dimension::{Aside, Level, Plumb, level, plumb};
use super::figures::Sizes;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Fill, Pen};
use super::place::{DrawingPoint, Frame, Grip, Spot, at};
use super::room::{Aisle, Form, Hole, Light, PlanPoint, RoomPlan, Slope, Thing, Wall};
use super::scale::{Mil, Paper, Scale};
use super::{bar, told};
use crate::language::say;
use crate::units::length::Length;

/// How far lettering may stand beyond the room, and how far from the wall its dimension strings lie.
const fn margins(paper: Paper) -> (Mil, Mil) {
    match paper {
        Paper::Desk => (90_000, 24_000),
        Paper::Phone => (45_000, 16_000),
    }
}

/// Half of how wide a seat is drawn: 7".
const SEAT: Length = Length::from_inches(7);

/// A plan being drawn; the room's upper left corner is at 0.
struct RoomDrawing<'a> {
    what: &'a RoomPlan,
    canvas: Canvas,
    sizes: Sizes,
    left: Length,
    top: Length,
    /// From the outer face of a wall to its dimension string.
    string: Mil,
}

/// Draws the room.
pub fn draw(what: &RoomPlan, paper: Paper) -> String {
    let mut drawing = RoomDrawing::new(what, paper);
    what.walls.iter().for_each(|wall| drawing.wall(wall));
    what.holes.iter().for_each(|hole| drawing.hole(hole));
    what.seats.iter().for_each(|seat| drawing.seat(*seat));
    what.things.iter().for_each(|thing| drawing.thing(thing));
    what.lights.iter().for_each(|light| drawing.light(light));
    what.slope.iter().for_each(|slope| drawing.slope(slope));
    what.counter_edges.iter().for_each(|edge| drawing.edge(*edge));
    what.holes.iter().for_each(|hole| drawing.swings(hole));
    what.things.iter().for_each(|thing| drawing.tag(thing));
    what.lights.iter().for_each(|light| drawing.tag_of_a_light(light));
    if paper == Paper::Desk {
        what.things.iter().for_each(|thing| drawing.name(thing));
    }
    what.aisles.iter().for_each(|aisle| drawing.aisle(aisle));
    what.slope.iter().for_each(|slope| drawing.heights(slope));
    drawing.strings();
    what.walls.iter().for_each(|wall| drawing.letter(wall));
    bar::draw(&mut drawing.canvas, drawing.sizes, paper);
    let title = say!(what.words, "drawn.room.title", name = what.name);
    drawing.canvas.finish(&title, &told::room_plan(what), 340_000)
}

impl<'a> RoomDrawing<'a> {
    fn new(what: &'a RoomPlan, paper: Paper) -> Self {
        let ends = || what.walls.iter().map(|wall| wall.face.0);
        let least = |place: fn(PlanPoint) -> Length| ends().map(place).min().unwrap_or(Length::ZERO);
        let most = |place: fn(PlanPoint) -> Length| ends().map(place).max().unwrap_or(Length::ZERO);
        let (left, right) = (least(|at| at.x), most(|at| at.x));
        let (bottom, top) = (least(|at| at.y), most(|at| at.y));
        let scale = Scale::of_a_room(paper, what.units, right - left, top - bottom);
        let (beside, string) = margins(paper);
        let limit = (-beside, scale.of(right - left) + beside);
        let canvas = Canvas::new(told::id(&what.id, "room", paper), scale, limit);
        Self { what, canvas, sizes: Sizes::on(paper, what.units, what.words), left, top, string }
    }

    fn place(&self, place: PlanPoint) -> DrawingPoint {
        at(self.canvas.scale.of(place.x - self.left), self.canvas.scale.of(self.top - place.y))
    }

    fn places(&self, places: &[PlanPoint]) -> Vec<DrawingPoint> {
        places.iter().map(|place| self.place(*place)).collect()
    }

    fn wall(&mut self, wall: &Wall) {
        let face = [self.place(wall.face.0), self.place(wall.face.1)];
        if wall.is_open {
            return self.canvas.line(Pen::Hidden, face[0], face[1]);
        }
        let body = self.places(&wall.body);
        self.canvas.path(Pen::Fine, Fill::Hatch, &body, true);
        self.canvas.line(Pen::Cut, face[0], face[1]);
    }

    fn hole(&mut self, hole: &Hole) {
        let corners = self.places(&hole.corners);
        self.canvas.path(Pen::Object, Fill::Paper, &corners, true);
        let [left, right, far_right, far_left] = hole.corners.map(|corner| self.place(corner));
        if hole.is_window {
            let between = |one: DrawingPoint, other: DrawingPoint| at((one.x + other.x) / 2, (one.y + other.y) / 2);
            self.canvas.line(Pen::Object, between(left, far_left), between(right, far_right));
        }
    }

    /// Each leaf open, and its way there.
    fn swings(&mut self, hole: &Hole) {
        for sweep in &hole.sweeps {
            let places = self.places(sweep);
            let (Some((hinge, way)), Some(open)) = (places.split_first(), places.last()) else { continue };
            self.canvas.path(Pen::Sweep, Fill::None, way, false);
            self.canvas.line(Pen::Object, *hinge, *open);
        }
    }

    fn thing(&mut self, thing: &Thing) {
        let (pen, fill) = match thing.form {
            Form::Below => (Pen::Object, Fill::Paper),
            Form::Tall => (Pen::Object, Fill::Tint),
            Form::Closure => (Pen::Fine, Fill::Tint),
            Form::Chosen => (Pen::Cut, Fill::Paper),
            Form::Above => (Pen::Hidden, Fill::None),
        };
        let corners = self.places(&thing.corners);
        self.canvas.name_next("thing");
        self.canvas.path(pen, fill, &corners, true);
    }

    /// A seat, half under the counter that is drawn over it.
    fn seat(&mut self, seat: PlanPoint) {
        let (place, radius) = (self.place(seat), self.canvas.scale.of(SEAT));
        self.canvas.circle(Pen::Fine, Fill::Paper, place, radius);
    }

    fn light(&mut self, light: &Light) {
        let (place, radius) = (self.place(light.at), self.canvas.scale.of(light.radius));
        self.canvas.circle(Pen::Hidden, Fill::None, place, radius);
    }

    fn tag_of_a_light(&mut self, light: &Light) {
        let Some(tag) = &light.tag else { return };
        let place = self.place(light.at);
        let beside = self.canvas.scale.of(light.radius) + 10_000;
        let places = [beside, -beside, 0].map(|down| at(place.x, place.y + down));
        self.canvas.tag(tag, self.sizes.small, &places);
    }

    /// Where one can just stand under a slope.
    fn slope(&mut self, slope: &Slope) {
        let Some((_, from, to)) = slope.stands else { return };
        let (from, to) = (self.place(from), self.place(to));
        self.canvas.line(Pen::Centre, from, to);
    }

    /// How high a ceiling that slopes is: at its low side, its high one, and between where one can just stand.
    fn heights(&mut self, slope: &Slope) {
        let between = slope.stands.map(|(height, from, to)| {
            let middle = |one: Length, other: Length| one + (other - one).half();
            (height, PlanPoint { x: middle(from.x, to.x), y: middle(from.y, to.y) })
        });
        let (low, high) = (self.place(slope.low.1), self.place(slope.high.1));
        let inwards = at((high.x - low.x).signum() * 22_000, (high.y - low.y).signum() * 22_000);
        let ends = [(slope.low.0, slope.low.1, 1), (slope.high.0, slope.high.1, -1)];
        let ends = ends.into_iter().chain(between.map(|(height, place)| (height, place, -1)));
        for (height, place, way) in ends {
            let place = self.place(place);
            let label = self.sizes.of_rooms().length_of(height, "drawn.ceiling");
            let along = at(inwards.y.abs() / 2, inwards.x.abs() / 2);
            let spots = [0, 6, -6, 3, -3].map(|steps: Mil| {
                let (dx, dy) = (way * inwards.x + steps * along.x, way * inwards.y + steps * along.y);
                Spot::new(place.x + dx, place.y + dy, Grip::Middle)
            });
            self.canvas.label(label, &spots);
        }
    }

    fn edge(&mut self, (from, to): (PlanPoint, PlanPoint)) {
        let (from, to) = (self.place(from), self.place(to));
        self.canvas.line(Pen::Object, from, to);
    }

    /// What was chosen, by its number.
    fn tag(&mut self, thing: &Thing) {
        let Some(tag) = &thing.tag else { return };
        let middle = around(&self.places(&thing.corners)).middle();
        let places = [0, 12_000, -12_000, 24_000, -24_000].map(|down| at(middle.x, middle.y + down));
        self.canvas.tag(tag, self.sizes.small, &places);
    }

    /// A cabinet or a fixture by its name, where there is room for it.
    fn name(&mut self, thing: &Thing) {
        if thing.tag.is_some() || !matches!(thing.form, Form::Below | Form::Tall) {
            return;
        }
        let frame = around(&self.places(&thing.corners));
        let (middle, label) = (frame.middle(), self.sizes.remark(&thing.name, 14));
        let spot = Spot::new(middle.x, middle.y, Grip::Middle);
        let room = spot.frame(&label);
        let fits =
            room.left > frame.left && room.right < frame.right && room.top > frame.top && room.bottom < frame.bottom;
        if fits && self.canvas.is_free(&room) {
            self.canvas.label(label, &[spot]);
        }
    }

    /// Aisles that run square to the paper.
    fn aisle(&mut self, aisle: &Aisle) {
        let (from, to) = (self.place(aisle.ends.0), self.place(aisle.ends.1));
        let label = self.sizes.length_of(aisle.wide, "drawn.clear");
        if from.x == to.x {
            let string = Plumb { from: from.y, to: to.y, x: from.x, edges: None, aside: Aside::Under };
            plumb(&mut self.canvas, &string, label);
        } else if from.y == to.y {
            let string = Level { from: from.x, to: to.x, y: from.y, edges: None, aside: Aside::Under };
            level(&mut self.canvas, &string, label);
        }
    }

    /// The length of each wall that runs square to the paper, behind it; of two alike, one.
    fn strings(&mut self) {
        let mut told: Vec<(bool, Length)> = Vec::new();
        for wall in &self.what.walls {
            let (from, to) = (self.place(wall.face.0), self.place(wall.face.1));
            let is_level = from.y == to.y;
            if (!is_level && from.x != to.x) || told.contains(&(is_level, wall.length)) {
                continue;
            }
            told.push((is_level, wall.length));
            let body = around(&self.places(&wall.body));
            let label = self.sizes.of_rooms().length(wall.length);
            if is_level {
                // Seen from the room, a wall that runs to the right lies above it.
                let above = to.x > from.x;
                let (edge, way) = if above { (body.top, -1) } else { (body.bottom, 1) };
                let y = edge + way * self.string;
                let string = Level { from: from.x, to: to.x, y, edges: Some((edge, edge)), aside: Aside::After };
                level(&mut self.canvas, &string, label);
            } else {
                let right = to.y > from.y;
                let (edge, way) = if right { (body.right, 1) } else { (body.left, -1) };
                let x = edge + way * self.string;
                let string = Plumb { from: from.y, to: to.y, x, edges: Some((edge, edge)), aside: Aside::Under };
                plumb(&mut self.canvas, &string, label);
            }
        }
    }

    /// The wall's letter behind it, near its left end.
    fn letter(&mut self, wall: &Wall) {
        let label = Label::of(vec![Line::words(wall.letter.clone(), self.sizes.small).toned(Tone::Bold)]);
        let body = around(&self.places(&wall.body));
        let (from, to) = (self.place(wall.face.0), self.place(wall.face.1));
        let part = |parts: Mil| at(from.x + (to.x - from.x) * parts / 10, from.y + (to.y - from.y) * parts / 10);
        let spots = [2, 8, 4, 6].map(part).map(|place| {
            let (dx, dy) = ((to.x - from.x).signum(), (to.y - from.y).signum());
            match (dx, dy) {
                (1, 0) => Spot::new(place.x, body.top - 3_000, Grip::Foot),
                (-1, 0) => Spot::new(place.x, body.bottom + 3_000, Grip::Head),
                (0, 1) => Spot::new(body.right + 4_000, place.y, Grip::LeftEdge),
                (0, -1) => Spot::new(body.left - 4_000, place.y, Grip::RightEdge),
                _ => Spot::new(place.x + 14_000 * dy, place.y - 14_000 * dx, Grip::Middle),
            }
        });
        self.canvas.label(label, &spots);
    }
}

/// The upright box around some places.
fn around(places: &[DrawingPoint]) -> Frame {
    let boxed = |place: &DrawingPoint| Frame::new(place.x, place.y, 0, 0);
    places.iter().map(boxed).reduce(|one, other| one.with(&other)).unwrap_or(Frame::new(0, 0, 0, 0))
}
