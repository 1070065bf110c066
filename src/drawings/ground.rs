//! The finished floor, what is still to be laid on it, and the mark of what nobody has measured.

use super::figures::Sizes;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Pen};
use super::place::{Grip, Spot, at};
use super::scale::Mil;
use crate::language::say;
use crate::units::length::Length;

/// Draws the floor at 0 from one edge to another, and the subfloor under it.
pub fn floor(canvas: &mut Canvas, sizes: Sizes, (from, to): (Mil, Mil), build_up: Option<Length>) {
    canvas.line(Pen::Cut, at(from, 0), at(to, 0));
    let ff = Label::of(vec![Line::words(say!(sizes.words, "drawn.ff"), sizes.small).toned(Tone::Bold)]);
    let up = -ff.height() / 2 - 3_000;
    let ends = [Spot::new(from, up, Grip::LeftEdge), Spot::new(to, up, Grip::RightEdge)];
    let under = ends.map(|spot| Spot { at: at(spot.at.x, 6_000 - up), ..spot });
    canvas.label(ff, &[ends[0], ends[1], under[0], under[1]]);
    let Some(depth) = build_up else { return };
    let low = canvas.scale.of(depth);
    canvas.line(Pen::Hidden, at(from, low), at(to, low));
    let line = Line::of(sizes.in_words("drawn.subfloor", sizes.first(depth)), sizes.small);
    let label = Label::of(vec![line.toned(Tone::Soft)]);
    let y = low + 3_000 + label.height() / 2;
    let right = Spot::new(to, y, Grip::RightEdge);
    canvas.label(label, &[right, Spot::new(from, y, Grip::LeftEdge)]);
}

/// Says over the drawing that its sizes are to be verified in the field.
pub fn unmeasured(canvas: &mut Canvas, sizes: Sizes, middle: Mil) {
    let line = Line::words(say!(sizes.words, "drawn.unmeasured"), sizes.small);
    let top = canvas.extent().top - 6_000;
    let label = Label::of(vec![line.toned(Tone::Bold)]);
    canvas.label(label, &[Spot::new(middle, top, Grip::Foot)]);
}
