//! The layout of a counter: its pieces seen from above, with what is let in, where seams are, and its sizes.

use super::dimension::{Aside, Level, Plumb, level, plumb};
use super::figures::{Sizes, spoken};
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot, at};
use super::scale::{Mil, Paper, Scale};
use super::{bar, told};
use crate::drawings::counter::CounterDrawing;
use crate::language::{Words, say};
use crate::site::layout::{CounterLayout, LayoutPiece, LetIn};
use crate::units::System;
use crate::units::length::Length;

/// How thick the wall behind is drawn, which no string tells: 3".
pub(super) const WALL: Length = Length::from_inches(3);
/// From an edge to the string of its sizes, and from that to the next.
pub(super) const STRING: Mil = 26_000;
pub(super) const NEXT: Mil = 38_000;

/// How far a bowl with a front of its own is drawn past the counter's edge, so that this is seen to be cut through.
const PAST_THE_EDGE: Mil = 3_000;

struct LayoutDrawing<'a> {
    what: &'a CounterLayout,
    canvas: Canvas,
    sizes: Sizes,
    /// The left end of the whole counter, which lies at 0.
    left: Length,
    depth: Mil,
}

/// Draws a counter from above, its back up.
pub fn draw(what: &CounterDrawing, paper: Paper) -> String {
    let laid = &what.laid;
    let (left, right) = laid.ends();
    let depth = laid.depth();
    let scale = Scale::of_a_room(paper, what.units, right - left, depth + depth);
    let beside: Mil = if paper == Paper::Desk { 80_000 } else { 45_000 };
    let canvas = Canvas::new(told::id(&what.id, "layout", paper), scale, (-beside, scale.of(right - left) + beside));
    let sizes = Sizes::on(paper, what.units, what.words);
    let mut drawing = LayoutDrawing { what: laid, canvas, sizes, left, depth: scale.of(depth) };
    drawing.wall();
    laid.pieces.iter().for_each(|piece| drawing.piece(piece));
    laid.let_in.iter().for_each(|thing| drawing.let_in(thing));
    laid.seams.iter().for_each(|seam| drawing.seam(*seam));
    drawing.lengths();
    drawing.middles();
    drawing.deep();
    laid.let_in.iter().for_each(|thing| drawing.name_of(thing));
    laid.let_in.iter().for_each(|thing| drawing.keep_clear(thing));
    laid.pieces.iter().for_each(|piece| drawing.name_piece(piece));
    bar::draw(&mut drawing.canvas, drawing.sizes, paper);
    let title = say!(what.words, "drawn.layout.title", name = what.name);
    drawing.canvas.finish(&title, &told_in_words(laid, (what.units, what.words)), 340_000)
}

impl LayoutDrawing<'_> {
    fn along(&self, place: Length) -> Mil {
        self.canvas.scale.of(place - self.left)
    }

    fn wall(&mut self) {
        if !self.what.has_wall {
            return;
        }
        let (left, right) = self.what.ends();
        let (from, to, thick) = (self.along(left), self.along(right), self.canvas.scale.of(WALL));
        self.canvas.rect(Pen::Fine, Fill::Hatch, Frame { left: from, top: -thick, right: to, bottom: 0 });
        self.canvas.line(Pen::Cut, at(from, 0), at(to, 0));
    }

    fn piece(&mut self, piece: &LayoutPiece) {
        let frame = Frame {
            left: self.along(piece.from),
            top: 0,
            right: self.along(piece.to),
            bottom: self.canvas.scale.of(piece.depth),
        };
        self.canvas.name_next("piece");
        self.canvas.rect(Pen::Object, Fill::Paper, frame);
    }

    /// What is let into the counter, or stands between its pieces, with its centre line.
    fn let_in(&mut self, thing: &LetIn) {
        let scale = self.canvas.scale;
        let frame = Frame {
            left: self.along(thing.from),
            top: scale.of(thing.drawn.0),
            right: self.along(thing.to),
            bottom: scale.of(thing.drawn.1) + if thing.cuts_the_edge { PAST_THE_EDGE } else { 0 },
        };
        let fill = if thing.parts_it { Fill::None } else { Fill::Tint };
        self.canvas.name_next("let in");
        self.canvas.rect(Pen::Hidden, fill, frame);
        let middle = self.along(thing.middle());
        let above = if self.what.has_wall { -scale.of(WALL) } else { 0 };
        self.canvas.line(Pen::Centre, at(middle, above - 6_000), at(middle, self.depth));
    }

    fn seam(&mut self, place: Length) {
        let x = self.along(place);
        self.canvas.name_next("seam");
        self.canvas.line(Pen::Cut, at(x, -4_000), at(x, self.depth + 4_000));
    }

    /// Below: each piece, then all of them.
    fn lengths(&mut self) {
        let y = self.depth + STRING;
        for piece in &self.what.pieces {
            let (from, to) = (self.along(piece.from), self.along(piece.to));
            let edge = self.canvas.scale.of(piece.depth);
            let string = Level { from, to, y, edges: Some((edge, edge)), aside: Aside::OffAfter };
            level(&mut self.canvas, &string, self.sizes.length(piece.to - piece.from));
        }
        if self.what.is_loose() || self.what.pieces.len() < 2 {
            return;
        }
        let (left, right) = self.what.ends();
        let (from, to) = (self.along(left), self.along(right));
        let edges = Some((self.depth + STRING, self.depth + STRING));
        let string = Level { from, to, y: self.depth + STRING + NEXT, edges, aside: Aside::Under };
        level(&mut self.canvas, &string, self.sizes.length(right - left));
    }

    /// Above: from the left end to the middle of each thing, one after the other, to the right end.
    fn middles(&mut self) {
        let mut places: Vec<Length> = self.what.let_in.iter().map(LetIn::middle).collect();
        if places.is_empty() {
            return;
        }
        let (left, right) = self.what.ends();
        places.extend([left, right]);
        places.sort_unstable();
        places.dedup();
        let above = if self.what.has_wall { -self.canvas.scale.of(WALL) } else { 0 };
        for (from, to) in places.iter().zip(places.iter().skip(1)) {
            let string = Level {
                from: self.along(*from),
                to: self.along(*to),
                y: above - STRING,
                edges: Some((above, above)),
                aside: Aside::OffBefore,
            };
            level(&mut self.canvas, &string, self.sizes.length(*to - *from));
        }
    }

    /// At the left: from back to front.
    fn deep(&mut self) {
        let Some(first) = self.what.pieces.first() else { return };
        let to = self.canvas.scale.of(first.depth);
        let string = Plumb { from: 0, to, x: -STRING, edges: Some((0, 0)), aside: Aside::Before };
        plumb(&mut self.canvas, &string, self.sizes.length(first.depth));
    }

    fn name_of(&mut self, thing: &LetIn) {
        let scale = self.canvas.scale;
        let middle = (self.along(thing.from) + self.along(thing.to)) / 2;
        let y = scale.of((thing.drawn.0 + thing.drawn.1).half());
        let spots = [0, 16_000, -16_000].map(|down| Spot::new(middle, y + down, Grip::Middle));
        self.canvas.label(self.sizes.remark(&thing.name, 14), &spots);
    }

    /// What is let in bears its own name alone.
    fn keep_clear(&mut self, thing: &LetIn) {
        let frame = Frame { left: self.along(thing.from), top: 0, right: self.along(thing.to), bottom: self.depth };
        self.canvas.keep_clear(frame);
    }

    /// A piece by its name, near its front edge where nothing is let in.
    fn name_piece(&mut self, piece: &LayoutPiece) {
        let Some(name) = &piece.name else { return };
        let (from, to) = (self.along(piece.from), self.along(piece.to));
        let deep = self.canvas.scale.of(piece.depth);
        let label = self.sizes.remark(name, 16);
        let mut spots = Vec::new();
        for part in [50, 25, 75, 15, 85] {
            for down in [50, 78, 22] {
                spots.push(Spot::new(from + (to - from) * part / 100, deep * down / 100, Grip::Middle));
            }
        }
        self.canvas.label(label, &spots);
    }
}

/// The layout in sentences, for those who hear it.
pub fn told_in_words(what: &CounterLayout, (units, words): (System, Words)) -> String {
    let length = |length: Length| spoken((units, words), length);
    let (left, _) = what.ends();
    let piece = |piece: &LayoutPiece| {
        let (long, deep) = (length(piece.to - piece.from), length(piece.depth));
        match &piece.name {
            Some(name) => say!(words, "drawn.layout.piece", name = name, length = long, depth = deep),
            None => say!(words, "drawn.layout.unnamed", length = long, depth = deep),
        }
    };
    let thing = |thing: &LetIn| {
        let key = if thing.cuts_the_edge { "drawn.layout.through" } else { "drawn.layout.let_in" };
        say!(words, key, name = thing.name, away = length(thing.middle() - left))
    };
    let seam = |seam: &Length| say!(words, "drawn.layout.seam", away = length(*seam - left));
    let all = what.pieces.iter().map(piece);
    all.chain(what.let_in.iter().map(thing)).chain(what.seams.iter().map(seam)).collect::<Vec<_>>().join(" ")
}
