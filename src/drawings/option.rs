//! One of several options in its opening, small, from above, for comparing row by row.

use super::dimension::around;
use super::figures::Sizes;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot, at};
use super::scale::{Mil, Paper, Scale};
use super::{misfit, told};
use crate::drawings::sizes::{Deep, Misfit, OptionPlan};
use crate::language::say;
use crate::units::length::Length;

const WALL: Mil = 9_000;
const BAND: Mil = 62_000;

/// Draws an option; all options of one opening come out at one scale.
pub fn draw(what: &OptionPlan) -> String {
    let scale = Scale::fitting(Paper::Phone, what.units, what.opening, what.opening);
    let right = scale.of(what.opening);
    let limit = (-BAND - 20_000, right + BAND + 90_000);
    let mut canvas = Canvas::new(told::id(&what.id, "option", Paper::Desk), scale, limit);
    let sizes = Sizes { figure: 15_000, small: 14_600, units: what.units, of_rooms: false, words: what.words };
    room(&mut canvas, what, right);
    let frame = thing(&mut canvas, what, right);
    detail(&mut canvas, what, frame);
    letter(&mut canvas, what, frame);
    gaps(&mut canvas, sizes, what, frame);
    past(&mut canvas, sizes, what, right);
    let title = say!(what.words, "drawn.option.title", letter = what.letter);
    canvas.finish(&title, &told::option(what), 330_000)
}

fn room(canvas: &mut Canvas, what: &OptionPlan, right: Mil) {
    let wall = Frame { left: -BAND, top: -WALL, right: right + BAND, bottom: 0 };
    canvas.rect(Pen::Object, Fill::Hatch, wall);
    let Some(edge) = what.counter_edge else { return };
    let y = canvas.scale.of(edge);
    for (inner, outer) in [(0, -BAND), (right, right + BAND)] {
        let corners = [at(outer, 0), at(inner, 0), at(inner, y), at(outer, y)];
        canvas.path(Pen::Object, Fill::Tint, &corners, false);
    }
}

fn thing(canvas: &mut Canvas, what: &OptionPlan, right: Mil) -> Frame {
    let Deep { behind, body, .. } = what.thing;
    let scale = canvas.scale;
    let (left, wide) = (scale.of(what.gap_left), scale.of(what.width));
    let frame = Frame::new(left, scale.of(behind), wide, scale.of(body));
    canvas.name_next("thing");
    canvas.rect(Pen::Cut, Fill::Paper, frame);
    let front = scale.of(what.thing.front());
    if front > frame.bottom {
        let door = Frame { top: frame.bottom, bottom: front, ..frame };
        canvas.rect(Pen::Object, Fill::Tint, door);
    }
    let tip = scale.of(what.thing.farthest());
    if tip > front {
        let from = left + wide * 84 / 100;
        canvas.rect(Pen::Object, Fill::Paper, Frame::new(from, front, wide / 12, tip - front));
    }
    if let Some(misfit) = what.misfits.width {
        let over = scale.of(misfit.by());
        let left = if matches!(misfit, Misfit::TooSmall(_)) { right } else { right - over };
        let strip = Frame { left, top: frame.top, right: left + over, bottom: front };
        canvas.name_next("misfit");
        canvas.rect(Pen::Object, Fill::Clash, strip);
    }
    frame
}

fn letter(canvas: &mut Canvas, what: &OptionPlan, frame: Frame) {
    let label = Label::of(vec![Line::words(&what.letter, 26_000).toned(Tone::Bold)]);
    let middle = frame.middle();
    let quarter = (frame.right - frame.left) / 4;
    let spots = [0, -quarter, quarter].map(|x| Spot::new(middle.x + x, middle.y, Grip::Middle));
    canvas.label(label, &spots);
}

/// An overlap too small to see at the right edge, magnified.
fn detail(canvas: &mut Canvas, what: &OptionPlan, frame: Frame) {
    let Some(Misfit::TooSmall(by)) = what.misfits.width.filter(|misfit| misfit.by() < Length::from_inches(1)) else {
        return;
    };
    let spot = at(frame.right, frame.top + (frame.bottom - frame.top) * 70 / 100);
    let centre = at(frame.right - 46_000, frame.middle().y);
    misfit::circle(canvas, spot, (1, 0), centre, by);
}

/// What does not fit, or what is left at each side, on a leader from the right edge.
fn gaps(canvas: &mut Canvas, sizes: Sizes, what: &OptionPlan, frame: Frame) {
    let misfits: Vec<Line> =
        misfit::words(what.misfits).into_iter().flatten().flat_map(|told| misfit::label(sizes, told).lines).collect();
    let lines = if misfits.is_empty() { left_over(sizes, what) } else { misfits };
    if lines.is_empty() {
        return;
    }
    let point = at(frame.right, frame.top + (frame.bottom - frame.top) * 35 / 100);
    let spots: Vec<Spot> =
        around(point, &[16_000, 26_000, 40_000]).into_iter().filter(|spot| spot.grip == Grip::LeftEdge).collect();
    canvas.circle(Pen::Fine, Fill::Solid, point, 2_200);
    canvas.label(Label::of(lines), &spots);
}

/// The gaps at both sides, or how far the front lies over the edge.
fn left_over(sizes: Sizes, what: &OptionPlan) -> Vec<Line> {
    let line = |length: Length, key: &str| Line::of(sizes.in_words(key, sizes.first(length)), sizes.figure);
    let (left, right) = (what.gap_left, what.gap_right());
    if let Some(over) = what.laps.width {
        return [Some(line(over.half(), "drawn.over_each_edge")), sizes.beside(over.half())]
            .into_iter()
            .flatten()
            .collect();
    }
    if left.is_negative() || right.is_negative() {
        return vec![];
    }
    if left == right {
        return [Some(line(left, "drawn.each_side")), sizes.beside(left)].into_iter().flatten().collect();
    }
    let both = sizes.second(left).zip(sizes.second(right)).map(|(left, right)| {
        Line::of(sizes.filled("drawn.both", &[("left", left), ("right", right)]), sizes.small).toned(Tone::Soft)
    });
    [Some(line(left, "drawn.left")), Some(line(right, "drawn.right")), both].into_iter().flatten().collect()
}

/// How far the option stands out past the counter's edge.
fn past(canvas: &mut Canvas, sizes: Sizes, what: &OptionPlan, right: Mil) {
    let Some((past, edge)) = what.thing.past(what.counter_edge).zip(what.counter_edge) else { return };
    let (from, to) = (canvas.scale.of(edge), canvas.scale.of(what.thing.farthest()));
    let x = right + BAND + 16_000;
    for y in [from, to] {
        canvas.line(Pen::Dimension, at(right + 8_000, y), at(x + 8_000, y));
        canvas.line(Pen::Tick, at(x - 4_000, y + 4_000), at(x + 4_000, y - 4_000));
    }
    canvas.line(Pen::Dimension, at(x, from.min(to) - 14_000), at(x, from.max(to) + 14_000));
    let key = if past.is_negative() { "drawn.behind_counter" } else { "drawn.past_counter" };
    let line = Line::of(sizes.in_words(key, sizes.first(past.abs())), sizes.figure);
    let label = Label::of([Some(line), sizes.beside(past.abs())].into_iter().flatten().collect());
    let low = from.max(to) + 5_000 + label.height() / 2;
    canvas.label(label, &[Spot::new(x - 8_000, low, Grip::RightEdge)]);
}
