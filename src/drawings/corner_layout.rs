//! Counters that meet at corners as one drawing: each with its pieces, what is let in and its seams, and where they
//! meet, as far as anybody says it.

use super::dimension::{Aside, Level, Plumb, level, plumb};
use super::figures::{Sizes, spoken};
use super::layout::{NEXT, STRING, WALL};
use super::pen::{Canvas, Fill, Pen};
use super::place::{DrawingPoint, Frame, Grip, Spot, at};
use super::scale::{Mil, Paper, Scale};
use super::{bar, layout, told};
use crate::drawings::counter::CornerDrawing;
use crate::language::say;
use crate::site::corners::{CornerJoint, JoinedCounter, PlacedLayout, Rectangle, Turned};
use crate::site::layout::LetIn;
use crate::units::length::Length;

/// How far a bowl with a front of its own is drawn past the counter's edge, so that this is seen to be cut through.
const PAST_THE_EDGE: Length = Length::from_sixty_fourths(32);

struct JoinedDrawing<'a> {
    what: &'a CornerDrawing,
    canvas: Canvas,
    sizes: Sizes,
    /// What lies at the head and the left of the drawing.
    origin: (Length, Length),
}

/// Draws counters that meet, the first with its back up.
pub fn draw(what: &CornerDrawing, paper: Paper) -> String {
    let whole = around(&what.joined);
    let (wide, high) = (whole.across.1 - whole.across.0, whole.down.1 - whole.down.0);
    let scale = Scale::of_counters(paper, what.units, wide, high);
    let beside: Mil = STRING + NEXT + NEXT + 60_000;
    let canvas = Canvas::new(told::id(&what.id, "corner", paper), scale, (-beside, scale.of(wide) + beside));
    let sizes = Sizes::on(paper, what.units, what.words);
    let mut drawing = JoinedDrawing { what, canvas, sizes, origin: (whole.across.0, whole.down.0) };
    let parts = &what.joined.parts;
    parts.iter().for_each(|part| drawing.wall(part));
    parts.iter().for_each(|part| drawing.pieces(part));
    what.joined.joints.iter().for_each(|joint| drawing.corner(joint));
    parts.iter().for_each(|part| drawing.let_in(part));
    parts.iter().for_each(|part| drawing.seams(part));
    for (number, part) in parts.iter().enumerate() {
        drawing.lengths(part);
        drawing.middles(part);
        drawing.deep(number, part);
    }
    what.joined.joints.iter().for_each(|joint| drawing.joint(joint));
    parts.iter().for_each(|part| drawing.names(part));
    bar::draw(&mut drawing.canvas, drawing.sizes, paper);
    let title = say!(what.words, "drawn.layout.title", name = what.name);
    drawing.canvas.finish(&title, &told_in_words(what), 340_000)
}

/// All that is drawn.
fn around(joined: &JoinedCounter) -> Rectangle {
    let all: Vec<Rectangle> = joined
        .parts
        .iter()
        .map(PlacedLayout::whole)
        .chain(joined.joints.iter().filter(|joint| joint.unsaid.is_some()).map(|joint| joint.corner))
        .collect();
    let least = |of: fn(&Rectangle) -> Length| all.iter().map(of).min().unwrap_or_default();
    let most = |of: fn(&Rectangle) -> Length| all.iter().map(of).max().unwrap_or_default();
    Rectangle {
        across: (least(|one| one.across.0), most(|one| one.across.1)),
        down: (least(|one| one.down.0), most(|one| one.down.1)),
    }
}

impl JoinedDrawing<'_> {
    fn point(&self, (across, down): (Length, Length)) -> DrawingPoint {
        let scale = self.canvas.scale;
        at(scale.of(across - self.origin.0), scale.of(down - self.origin.1))
    }

    fn place(&self, part: &PlacedLayout, along: Length, out: Length) -> DrawingPoint {
        self.point(part.place(along, out))
    }

    fn frame(&self, area: &Rectangle) -> Frame {
        let (head, foot) = (self.point((area.across.0, area.down.0)), self.point((area.across.1, area.down.1)));
        Frame { left: head.x, top: head.y, right: foot.x, bottom: foot.y }
    }

    fn wall(&mut self, part: &PlacedLayout) {
        if !part.laid.has_wall {
            return;
        }
        let ends = part.laid.ends();
        let behind = self.frame(&part.area(ends, (-WALL, Length::ZERO)));
        self.canvas.rect(Pen::Fine, Fill::Hatch, behind);
        let (from, to) = (self.place(part, ends.0, Length::ZERO), self.place(part, ends.1, Length::ZERO));
        self.canvas.line(Pen::Cut, from, to);
    }

    fn pieces(&mut self, part: &PlacedLayout) {
        for piece in &part.laid.pieces {
            let frame = self.frame(&part.area((piece.from, piece.to), (Length::ZERO, piece.depth)));
            self.canvas.name_next("piece");
            self.canvas.rect(Pen::Object, Fill::Paper, frame);
        }
    }

    /// The corner that two counters share, which neither covers for certain until the joint is known.
    fn corner(&mut self, joint: &CornerJoint) {
        let unsaid = joint.unsaid.map(|unsaid| self.frame(&unsaid));
        let shared = joint.seam.is_none().then(|| self.frame(&joint.corner));
        for frame in unsaid.into_iter().chain(shared) {
            self.canvas.rect(Pen::Hidden, Fill::None, frame);
        }
    }

    fn let_in(&mut self, part: &PlacedLayout) {
        for thing in &part.laid.let_in {
            let past = if thing.cuts_the_edge { PAST_THE_EDGE } else { Length::ZERO };
            let frame = self.frame(&part.area((thing.from, thing.to), (thing.drawn.0, thing.drawn.1 + past)));
            let fill = if thing.parts_it { Fill::None } else { Fill::Tint };
            self.canvas.name_next("let in");
            self.canvas.rect(Pen::Hidden, fill, frame);
            let behind = if part.laid.has_wall { -WALL } else { Length::ZERO };
            let from = self.place(part, thing.middle(), behind);
            let to = self.place(part, thing.middle(), part.laid.depth());
            self.canvas.line(Pen::Centre, from, to);
        }
    }

    fn seams(&mut self, part: &PlacedLayout) {
        for seam in &part.laid.seams {
            self.seam(part, *seam);
        }
    }

    fn seam(&mut self, part: &PlacedLayout, along: Length) {
        let over = Length::from_inches(1);
        let (from, to) = (self.place(part, along, -over), self.place(part, along, part.laid.depth() + over));
        self.canvas.name_next("seam");
        self.canvas.line(Pen::Cut, from, to);
    }

    /// Where two counters meet: the joint that is written, or that nobody says where it is.
    fn joint(&mut self, joint: &CornerJoint) {
        if let Some((number, along)) = joint.seam {
            let part = self.what.joined.parts.get(number).filter(|part| !part.laid.seams.contains(&along));
            if let Some(part) = part {
                self.seam(part, along);
            }
            return;
        }
        let corner = self.frame(&joint.corner);
        let middle = corner.middle();
        let label = self.sizes.remark(&say!(self.what.words, "drawn.layout.joint_open_short"), 12);
        let spots = [
            Spot::new(middle.x, middle.y, Grip::Middle),
            Spot::new(middle.x, middle.y + 14_000, Grip::Middle),
            Spot::new(middle.x, corner.bottom + 20_000, Grip::Head).led(middle.x, middle.y),
            Spot::new(corner.right + 20_000, middle.y, Grip::LeftEdge).led(middle.x, middle.y),
            Spot::new(corner.left - 20_000, middle.y, Grip::RightEdge).led(middle.x, middle.y),
        ];
        self.canvas.label(label, &spots);
    }

    /// A string along a part, so far behind its back: before its front where no wall is behind it.
    fn string(&mut self, part: &PlacedLayout, (from, to): (Length, Length), off: Mil, first: bool) {
        let (back, front) = (part.laid.has_wall, part.laid.depth());
        let edge = if back { -WALL } else { front };
        let (start, end) = (self.place(part, from, edge), self.place(part, to, edge));
        // Outwards from its back, or from its front.
        let (right, down) = part.turned.way();
        let away = if back { (down, -right) } else { (-down, right) };
        let label = self.sizes.length(to - from);
        let reach = |place: Mil, way: i64| place + off * way;
        let outwards = if part.turned.is_upright() { away.0 } else { away.1 };
        let aside = if outwards < 0 { Aside::OffBefore } else { Aside::OffAfter };
        if part.turned.is_upright() {
            let x = reach(start.x, away.0);
            let edges = first.then_some((start.x, end.x));
            plumb(&mut self.canvas, &Plumb { from: start.y, to: end.y, x, edges, aside }, label);
        } else {
            let y = reach(start.y, away.1);
            let edges = first.then_some((start.y, end.y));
            level(&mut self.canvas, &Level { from: start.x, to: end.x, y, edges, aside }, label);
        }
    }

    /// Each piece, and all of them where there are several.
    fn lengths(&mut self, part: &PlacedLayout) {
        let first = if part.laid.let_in.is_empty() { STRING } else { STRING + NEXT };
        for piece in &part.laid.pieces {
            self.string(part, (piece.from, piece.to), first, first == STRING);
        }
        if part.laid.pieces.len() > 1 {
            self.string(part, part.laid.ends(), first + NEXT, false);
        }
    }

    /// From the left end to the middle of each thing, one after the other, to the right end.
    fn middles(&mut self, part: &PlacedLayout) {
        let mut places: Vec<Length> = part.laid.let_in.iter().map(LetIn::middle).collect();
        if places.is_empty() {
            return;
        }
        let (left, right) = part.laid.ends();
        places.extend([left, right]);
        places.sort_unstable();
        places.dedup();
        for (from, to) in places.iter().zip(places.iter().skip(1)) {
            self.string(part, (*from, *to), STRING, true);
        }
    }

    /// From back to front, at an end that meets nothing; of one that meets others at both, within it.
    fn deep(&mut self, number: usize, part: &PlacedLayout) {
        let depth = part.laid.depth();
        let (left, right) = part.laid.ends();
        let meets = |along: Length| {
            let end = part.area((along, along), (Length::ZERO, depth));
            let joints =
                self.what.joined.joints.iter().filter(|joint| [joint.between.0, joint.between.1].contains(&number));
            joints.flat_map(|joint| [Some(joint.corner), joint.unsaid]).flatten().any(|corner| covers(&corner, &end))
        };
        let (along, off) = match (meets(left), meets(right)) {
            (false, _) => (left, -STRING),
            (true, false) => (right, STRING),
            (true, true) => (self.free_place(part), 0),
        };
        let (back, front) = (self.place(part, along, Length::ZERO), self.place(part, along, depth));
        let (to_the_right, down) = part.turned.way();
        let label = self.sizes.length(depth);
        if part.turned.is_upright() {
            let y = back.y + off * down;
            let edges = (off != 0).then_some((back.y, front.y));
            level(&mut self.canvas, &Level { from: back.x, to: front.x, y, edges, aside: Aside::After }, label);
        } else {
            let x = back.x + off * to_the_right;
            let edges = (off != 0).then_some((back.x, front.x));
            plumb(&mut self.canvas, &Plumb { from: back.y, to: front.y, x, edges, aside: Aside::Before }, label);
        }
    }

    /// A place along a part where nothing is let in, for a string within it.
    fn free_place(&self, part: &PlacedLayout) -> Length {
        let (left, right) = part.laid.ends();
        let share = |of: i64| left + Length::from_nanometres((right - left).nanometres() / 100 * of);
        let is_free = |place: &Length| !part.laid.let_in.iter().any(|one| one.from <= *place && *place <= one.to);
        [50, 35, 65, 30, 70].map(share).into_iter().find(is_free).unwrap_or_else(|| share(50))
    }

    /// What is let in, and each piece, by name; then the run or island before its front.
    fn names(&mut self, part: &PlacedLayout) {
        for thing in &part.laid.let_in {
            let frame = self.frame(&part.area((thing.from, thing.to), thing.drawn));
            let middle = frame.middle();
            let spots = [0, 16_000, -16_000].map(|down| Spot::new(middle.x, middle.y + down, Grip::Middle));
            self.canvas.label(self.sizes.remark(&thing.name, 14), &spots);
            self.canvas.keep_clear(frame);
        }
        for piece in &part.laid.pieces {
            let Some(name) = &piece.name else { continue };
            let mut spots = Vec::new();
            for percent in [50, 25, 75, 15, 85] {
                for deep in [50, 78, 22] {
                    let share = |of: Length, part: i64| Length::from_nanometres(of.nanometres() / 100 * part);
                    let along = piece.from + share(piece.to - piece.from, percent);
                    let place = self.place(part, along, share(piece.depth, deep));
                    spots.push(Spot::new(place.x, place.y, Grip::Middle));
                }
            }
            self.canvas.label(self.sizes.remark(name, 16), &spots);
        }
        let Some(on) = &part.laid.on else { return };
        let (left, right) = part.laid.ends();
        let front = self.place(part, (left + right).half(), part.laid.depth());
        let (across, down) = part.turned.way();
        let away = if part.laid.has_wall { 12_000 } else { -12_000 };
        let grip = match (part.turned, part.laid.has_wall) {
            (Turned::No, true) | (Turned::Half, false) => Grip::Head,
            (Turned::Half, true) | (Turned::No, false) => Grip::Foot,
            (Turned::WithTheClock, true) | (Turned::AgainstTheClock, false) => Grip::RightEdge,
            (Turned::AgainstTheClock, true) | (Turned::WithTheClock, false) => Grip::LeftEdge,
        };
        let spot =
            |further: Mil| Spot::new(front.x - down * (away + further), front.y + across * (away + further), grip);
        let spots = [0, 16_000, 32_000].map(|further| spot(if away < 0 { -further } else { further }));
        self.canvas.label(self.sizes.remark(on, 20), &spots);
    }
}

/// Whether an end of a counter lies in a corner.
fn covers(corner: &Rectangle, end: &Rectangle) -> bool {
    let within = |one: (Length, Length), other: (Length, Length)| one.0 <= other.1 && other.0 <= one.1;
    within(corner.across, end.across) && within(corner.down, end.down)
}

/// The layout in sentences: each run and island, then where they meet.
pub fn told_in_words(what: &CornerDrawing) -> String {
    let words = what.words;
    let part = |part: &PlacedLayout| {
        let told = layout::told_in_words(&part.laid, (what.units, words));
        match &part.laid.on {
            Some(on) => say!(words, "drawn.layout.on", row = on.as_str(), told = told),
            None => told,
        }
    };
    let all = what.joined.parts.iter().map(part);
    all.chain(what.joined.joints.iter().map(|joint| joint_in_words(what, joint))).collect::<Vec<_>>().join(" ")
}

/// Where two counters meet, in a sentence.
pub fn joint_in_words(what: &CornerDrawing, joint: &CornerJoint) -> String {
    let words = what.words;
    let name = |number: usize| what.joined.parts.get(number).and_then(|part| part.laid.on.clone()).unwrap_or_default();
    let (one, other) = (name(joint.between.0), name(joint.between.1));
    match joint.seam {
        Some((number, along)) => say!(
            words,
            "drawn.layout.joint",
            one = one,
            other = other,
            away = spoken((what.units, words), along),
            row = name(number)
        ),
        None => say!(words, "drawn.layout.joint_open", one = one, other = other),
    }
}
