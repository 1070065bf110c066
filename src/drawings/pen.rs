//! The sheet of paper a drawing is made on: pens, fills, and labels that never lie on each other.

use super::lettering::{Label, Line, Tone, escape};
use super::place::{DrawingPoint, Frame, Grip, Spot, at};
use super::scale::{Mil, Scale, units};

/// A line's weight and kind; the style sheet knows each by its class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pen {
    Cut,
    Object,
    Fine,
    Hidden,
    Centre,
    Dimension,
    Tick,
    Sweep,
}

/// What a shape is filled with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fill {
    None,
    Paper,
    Tint,
    Solid,
    /// Something built, cut through.
    Hatch,
    /// Two things in one place.
    Clash,
}

/// A drawing being made.
pub struct Canvas {
    pub id: String,
    pub scale: Scale,
    marks: String,
    letters: String,
    ink: Option<Frame>,
    taken: Vec<Frame>,
    /// Labels for which there was no room; they stand under the drawing.
    left_over: Vec<Label>,
    /// No lettering goes beyond, left or right.
    limit: (Mil, Mil),
    /// What the next shape is, for whoever reads the drawing back.
    named: Option<&'static str>,
}

/// Room kept around each label.
const AIR: Mil = 1_500;
const MARGIN: Mil = 6_000;

impl Canvas {
    /// An empty sheet; lettering stays between `limit`'s two edges.
    pub fn new(id: String, scale: Scale, limit: (Mil, Mil)) -> Canvas {
        Canvas {
            id,
            scale,
            marks: String::new(),
            letters: String::new(),
            ink: None,
            taken: Vec::new(),
            left_over: Vec::new(),
            limit,
            named: None,
        }
    }

    /// Says in the file what the next shape is: `opening`, `thing` or `misfit`.
    pub fn name_next(&mut self, name: &'static str) {
        self.named = Some(name);
    }

    pub fn line(&mut self, pen: Pen, from: DrawingPoint, to: DrawingPoint) {
        self.path(pen, Fill::None, &[from, to], false);
    }

    /// A line through points, closed or not.
    pub fn path(&mut self, pen: Pen, fill: Fill, points: &[DrawingPoint], closed: bool) {
        let mut d = String::new();
        for (n, point) in points.iter().enumerate() {
            d.push(if n == 0 { 'M' } else { 'L' });
            d.push_str(&format!("{} {}", units(point.x), units(point.y)));
            self.reach(&Frame::new(point.x, point.y, 0, 0));
        }
        if closed {
            d.push('Z');
        }
        let ink = self.ink_of(pen, fill);
        self.marks.push_str(&format!("<path {ink} d=\"{d}\"/>\n"));
    }

    pub fn rect(&mut self, pen: Pen, fill: Fill, frame: Frame) {
        let ink = self.ink_of(pen, fill);
        self.marks.push_str(&format!(
            "<rect {ink} x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>\n",
            units(frame.left),
            units(frame.top),
            units(frame.right - frame.left),
            units(frame.bottom - frame.top),
        ));
        self.reach(&frame);
    }

    pub fn circle(&mut self, pen: Pen, fill: Fill, centre: DrawingPoint, radius: Mil) {
        let ink = self.ink_of(pen, fill);
        self.marks.push_str(&format!(
            "<circle {ink} cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n",
            units(centre.x),
            units(centre.y),
            units(radius),
        ));
        self.reach(&Frame::new(centre.x, centre.y, 0, 0).grown(radius));
    }

    /// A quarter of a circle from one point to another, turning with the clock or against it.
    pub fn quarter(&mut self, pen: Pen, from: DrawingPoint, to: DrawingPoint, with_clock: bool) {
        let radius = units((from.x - to.x).abs().max((from.y - to.y).abs()));
        let ink = self.ink_of(pen, Fill::None);
        self.marks.push_str(&format!(
            "<path {ink} d=\"M{} {}A{radius} {radius} 0 0 {} {} {}\"/>\n",
            units(from.x),
            units(from.y),
            u8::from(with_clock),
            units(to.x),
            units(to.y),
        ));
        self.reach(&Frame::new(from.x, from.y, 0, 0));
        self.reach(&Frame::new(to.x, to.y, 0, 0));
    }

    /// Whatever the other pens do not draw, with the room that it takes.
    pub fn raw(&mut self, markup: &str, frame: &Frame) {
        self.marks.push_str(markup);
        self.reach(frame);
    }

    /// Keeps lettering away from a place.
    pub fn keep_clear(&mut self, frame: Frame) {
        self.taken.push(frame);
    }

    /// Whether nothing is lettered in a place yet.
    pub fn is_free(&self, frame: &Frame) -> bool {
        let inside = frame.left >= self.limit.0 && frame.right <= self.limit.1;
        inside && !self.taken.iter().any(|taken| taken.meets(frame))
    }

    /// Letters a label at the first spot where it has room, or under the drawing.
    pub fn label(&mut self, label: Label, spots: &[Spot]) {
        let free = spots.iter().find(|spot| self.is_free(&spot.frame(&label).grown(AIR)));
        match free.copied() {
            Some(spot) => self.set(&label, spot),
            None => self.left_over.push(label),
        }
    }

    /// A flat hexagon with an item's number, at the first of the places where it has room.
    pub fn tag(&mut self, text: &str, size: Mil, places: &[DrawingPoint]) {
        let label = Label::of(vec![Line::words(text, size).toned(Tone::Bold)]);
        let (half, tall) = (label.width().max(20_000) / 2 + 8_000, size / 2 + 4_500);
        let frame = |p: &DrawingPoint| Frame::new(p.x, p.y, 0, 0).grown(tall);
        let wide = |p: &DrawingPoint| Frame { left: p.x - half, right: p.x + half, ..frame(p) };
        let Some(place) = places.iter().find(|p| self.is_free(&wide(p).grown(AIR))).copied() else {
            self.left_over.push(label);
            return;
        };
        let point = |x: Mil, y: Mil| at(place.x + x, place.y + y);
        let flat = half - 6_000;
        let corners = [
            point(-flat, -tall),
            point(flat, -tall),
            point(half, 0),
            point(flat, tall),
            point(-flat, tall),
            point(-half, 0),
        ];
        self.path(Pen::Object, Fill::Paper, &corners, true);
        self.set(&label, Spot::new(place.x, place.y, Grip::Middle));
        self.taken.push(wide(&place));
    }

    fn set(&mut self, label: &Label, spot: Spot) {
        let frame = spot.frame(label);
        if let Some(target) = spot.leader {
            let near = at(
                target.x.clamp(frame.left - AIR, frame.right + AIR),
                target.y.clamp(frame.top - AIR, frame.bottom + AIR),
            );
            self.line(Pen::Dimension, target, near);
        }
        let mut run = if spot.turned { frame.left } else { frame.top };
        for line in &label.lines {
            let foot = run + line.baseline();
            self.letters.push_str(&match spot.turned {
                false => letter(line, aligned(&frame, spot.grip, foot), ""),
                true => {
                    let (x, y) = (units(foot), units(frame.middle().y));
                    let turn = format!(" transform=\"rotate(-90 {x} {y})\"");
                    letter(line, (foot, frame.middle().y, "middle"), &turn)
                }
            });
            run += line.height() + label.parting;
        }
        self.reach(&frame);
        self.taken.push(frame);
    }

    fn ink_of(&mut self, pen: Pen, fill: Fill) -> String {
        let named = self.named.take().map_or(String::new(), |name| format!("data-is=\"{name}\" "));
        let class = match pen {
            Pen::Cut => "cut",
            Pen::Object => "obj",
            Pen::Fine => "fin",
            Pen::Hidden => "hid",
            Pen::Centre => "cl",
            Pen::Dimension => "dl",
            Pen::Tick => "tick",
            Pen::Sweep => "sw",
        };
        let id = escape(&self.id);
        let ink = match fill {
            Fill::None => format!("class=\"{class}\""),
            Fill::Paper => format!("class=\"{class} pap\""),
            Fill::Tint => format!("class=\"{class} tint\""),
            Fill::Solid => format!("class=\"{class} solid\""),
            Fill::Hatch => format!("class=\"{class}\" style=\"fill:url(#{id}-cut)\""),
            Fill::Clash => format!("class=\"{class}\" style=\"fill:url(#{id}-clash)\""),
        };
        named + &ink
    }

    fn reach(&mut self, frame: &Frame) {
        self.ink = Some(self.ink.map_or(*frame, |ink| ink.with(frame)));
    }

    /// The edges that lettering keeps between.
    pub fn limit(&self) -> (Mil, Mil) {
        self.limit
    }

    /// The room that everything takes so far.
    pub fn extent(&self) -> Frame {
        self.ink.unwrap_or(Frame::new(0, 0, 0, 0))
    }

    /// Letters under the drawing what had no room in it.
    pub fn settle(&mut self) {
        let left = self.extent().left.max(self.limit.0);
        for label in std::mem::take(&mut self.left_over) {
            let y = self.extent().bottom + 4_000 + label.height() / 2;
            self.set(&label, Spot::new(left, y, Grip::LeftEdge));
        }
    }

    /// The whole drawing as SVG, at least `width` wide, with its title and description.
    pub fn finish(mut self, title: &str, description: &str, width: Mil) -> String {
        self.settle();
        let ink = self.extent().grown(MARGIN);
        let spare = (width - (ink.right - ink.left)).max(0) / 2;
        let frame = Frame { left: ink.left - spare, right: ink.right + spare, ..ink };
        let (w, h) = (frame.right - frame.left, frame.bottom - frame.top);
        let id = escape(&self.id);
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{} {} {} {}\" role=\"img\" \
             aria-labelledby=\"{id}-t {id}-d\" style=\"--drawn:{}mm\">\n\
             <title id=\"{id}-t\">{}</title><desc id=\"{id}-d\">{}</desc>\n{}{}{}</svg>\n",
            units(frame.left),
            units(frame.top),
            units(w),
            units(h),
            units(self.scale.printed(w)),
            escape(title),
            escape(description),
            self.patterns(),
            self.marks,
            self.letters,
        )
    }

    /// Only the hatchings that are used.
    fn patterns(&self) -> String {
        let mut out = String::new();
        for (name, apart, pen) in [("cut", 7, "fin"), ("clash", 4, "obj")] {
            let id = format!("{}-{name}", escape(&self.id));
            if self.marks.contains(&format!("url(#{id})")) {
                out.push_str(&format!(
                    "<pattern id=\"{id}\" width=\"{apart}\" height=\"{apart}\" \
                     patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">\
                     <path class=\"{pen}\" d=\"M0 0V{apart}\"/></pattern>\n"
                ));
            }
        }
        if out.is_empty() { out } else { format!("<defs>{out}</defs>\n") }
    }
}

fn aligned(frame: &Frame, grip: Grip, foot: Mil) -> (Mil, Mil, &'static str) {
    match grip {
        Grip::LeftEdge => (frame.left, foot, "start"),
        Grip::RightEdge => (frame.right, foot, "end"),
        _ => (frame.middle().x, foot, "middle"),
    }
}

fn letter(line: &Line, (x, y, anchor): (Mil, Mil, &str), turn: &str) -> String {
    let class = match line.tone {
        Tone::Plain => "halo",
        Tone::Bold => "b halo",
        Tone::Soft => "m halo",
        Tone::OnPaper => "b ratio halo",
    };
    format!(
        "<text class=\"{class}\" x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"{turn}>{}</text>\n",
        units(x),
        units(y),
        units(line.size),
        line.markup(),
    )
}
