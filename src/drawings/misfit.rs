//! What the verdict says does not fit, in bold, and shown magnified where it is too small to see.

use super::face;
use super::figures::Sizes;
use super::front::Front;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Fill, Pen};
use super::place::{DrawingPoint, Frame, Grip, Spot, at};
use super::scale::{Mil, units};
use crate::drawings::sizes::{Misfit, Misfits};
use crate::language::say;
use crate::units::length::Length;

/// A place where a thing and its opening want the same room.
pub struct Clash {
    pub by: Length,
    pub words: &'static str,
    /// On the opening's edge.
    pub spot: DrawingPoint,
    /// The way the thing goes over the edge: right, left or up.
    pub hand: (Mil, Mil),
}

const RADIUS: Mil = 28_000;
/// The most that an overlap takes in the magnified circle.
const SHOWN: Mil = 26_000;
const INCH: Length = Length::from_inches(1);

/// The key of what is said of a misfit in width, height and depth.
pub fn words(misfits: Misfits) -> [Option<(Length, &'static str)>; 3] {
    let of = |misfit: Option<Misfit>, thing, opening| match misfit? {
        Misfit::TooSmall(by) => Some((by, thing)),
        Misfit::TooLarge(by) => Some((by, opening)),
    };
    [
        of(misfits.width, "drawn.too.wide", "drawn.too.opening_wide"),
        of(misfits.height, "drawn.too.tall", "drawn.too.opening_high"),
        of(misfits.depth, "drawn.too.deep", "drawn.too.opening_deep"),
    ]
}

/// A misfit's figure in bold with its words, the other system under it.
pub fn label(sizes: Sizes, (by, key): (Length, &str)) -> Label {
    let line = Line::of(sizes.in_words(key, sizes.first(by)), sizes.figure);
    Label::of([Some(line.toned(Tone::Bold)), sizes.beside(by)].into_iter().flatten().collect())
}

/// Says a misfit inside `frame`, or under the drawing.
pub fn explain(front: &mut Front, clash: &Clash, frame: Frame) {
    let canvas = &mut front.canvas;
    let mut label = label(front.sizes, (clash.by, clash.words));
    let times = magnified(canvas.scale.of(clash.by)).0;
    if clash.by >= INCH || times <= 1 {
        canvas.label(label, &face::inside(frame));
        return;
    }
    let detail = say!(front.sizes.words, "drawn.detail", times = times.to_string());
    match front.sizes.beside(clash.by) {
        Some(second) => {
            label.lines.pop();
            label.lines.push(second.then(format!(" \u{b7} {detail}")));
        }
        None => label.lines.push(Line::words(detail, front.sizes.small).toned(Tone::Soft)),
    }
    let centre = place(canvas, clash, frame, &label);
    circle(canvas, clash.spot, clash.hand, centre, clash.by);
    // On the side that the leader does not come from.
    let under = Spot::new(centre.x, centre.y + RADIUS + 3_000, Grip::Head);
    let over = Spot::new(centre.x, centre.y - RADIUS - 3_000, Grip::Foot);
    let spots = if clash.spot.y > centre.y { [over, under] } else { [under, over] };
    canvas.label(label, &spots);
}

/// The largest power of two that keeps an overlap within the circle.
fn magnified(by: Mil) -> (Mil, Mil) {
    let mut times = 1;
    while by > 0 && by * times * 2 <= SHOWN && times < 256 {
        times *= 2;
    }
    (times, by * times)
}

/// The middle of a circle that has room together with its words.
fn place(canvas: &Canvas, misfit: &Clash, frame: Frame, label: &Label) -> DrawingPoint {
    let half = (label.width() / 2).max(RADIUS) + 2_000;
    let room = |p: DrawingPoint| Frame {
        left: p.x - half,
        right: p.x + half,
        top: p.y - RADIUS - 2_000,
        bottom: p.y + RADIUS + label.height() + 6_000,
    };
    let (middle, tall) = (frame.middle(), frame.bottom - frame.top);
    let near = match misfit.hand.0 {
        0 => middle.x,
        right if right > 0 => (frame.right - half - 16_000).max(middle.x),
        _ => (frame.left + half + 16_000).min(middle.x),
    };
    let mut places = Vec::new();
    for part in [24, 60, 16, 36, 70, 44] {
        let y = frame.top + tall * part / 100;
        places.extend([at(near, y), at(middle.x, y)]);
    }
    let inside = |p: &DrawingPoint| frame.grown(-4_000).with(&room(*p)) == frame.grown(-4_000);
    let free = places.into_iter().find(|p| inside(p) && canvas.is_free(&room(*p)));
    free.unwrap_or_else(|| {
        // Under the strings that are still to come, side by side.
        let under = [0, 1, 2, 3].map(|row| 130_000 + RADIUS + row * 90_000);
        let aside = [0, 1, -1].map(|n| middle.x + n * (2 * half + 4_000));
        let mut all = under.iter().flat_map(|&y| aside.map(|x| at(x, y)));
        let first = at(middle.x, under[0]);
        all.find(|p| canvas.is_free(&room(*p))).unwrap_or(first)
    })
}

/// The place around `spot` magnified: the opening's edge, the thing's, and what both want.
pub fn circle(canvas: &mut Canvas, spot: DrawingPoint, hand: (Mil, Mil), centre: DrawingPoint, by: Length) {
    let by = magnified(canvas.scale.of(by)).1;
    let around = Frame::new(centre.x, centre.y, 0, 0).grown(RADIUS);
    canvas.circle(Pen::Fine, Fill::None, spot, 7_000);
    leader(canvas, spot, centre);
    canvas.circle(Pen::Object, Fill::Paper, centre, RADIUS);
    canvas.raw(&strip(&canvas.id, hand, centre, by), &around);
    let (edge, thing) = (-by / 2, by - by / 2);
    for (pen, off) in [(Pen::Cut, edge), (Pen::Object, thing)] {
        let ends = chord(off).map(|end| turned(hand, centre, off, end));
        canvas.line(pen, ends[0], ends[1]);
    }
    canvas.keep_clear(around.grown(1_500));
}

/// From the small circle's rim to the large one's.
fn leader(canvas: &mut Canvas, from: DrawingPoint, to: DrawingPoint) {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = (dx * dx + dy * dy).isqrt().max(1);
    if long > RADIUS + 7_000 {
        let start = at(from.x + dx * 7_000 / long, from.y + dy * 7_000 / long);
        let stop = at(to.x - dx * RADIUS / long, to.y - dy * RADIUS / long);
        canvas.line(Pen::Fine, start, stop);
    }
}

/// The overlap inside the circle.
fn strip(id: &str, hand: (Mil, Mil), centre: DrawingPoint, by: Mil) -> String {
    let (edge, thing) = (-by / 2, by - by / 2);
    let [a, d] = chord(edge).map(|end| turned(hand, centre, edge, end));
    let [b, c] = chord(thing).map(|end| turned(hand, centre, thing, end));
    let sweep = u8::from(hand.0 >= 0);
    let point = |p: DrawingPoint| format!("{} {}", units(p.x), units(p.y));
    let arc = format!("A{r} {r} 0 0 {sweep} ", r = units(RADIUS));
    format!(
        "<path class=\"fin\" style=\"fill:url(#{}-clash)\" d=\"M{}{arc}{}L{}{arc}{}Z\"/>\n",
        super::lettering::escape(id),
        point(a),
        point(b),
        point(c),
        point(d),
    )
}

/// The ends of a chord that is `off` from the middle.
fn chord(off: Mil) -> [Mil; 2] {
    let half = (RADIUS * RADIUS - off * off).max(0).isqrt();
    [-half, half]
}

/// A place `off` from the centre the way the thing goes, and `along` across it.
fn turned((right, down): (Mil, Mil), centre: DrawingPoint, off: Mil, along: Mil) -> DrawingPoint {
    match right {
        0 => at(centre.x + along, centre.y + down * off),
        _ => at(centre.x + right * off, centre.y + along),
    }
}
