//! What stands beside, above and below an opening, seen from the front.

use super::front::Front;
use super::lettering::{Label, Line, Tone};
use super::pen::{Fill, Pen};
use super::place::{Frame, Grip, Spot, at};
use super::scale::{Mil, Paper};
use super::told;
use crate::drawings::sizes::{Beside, Foot, Hand, Neighbour};
use crate::language::say;

/// How far a neighbour is shown.
pub fn band(neighbour: &Neighbour, paper: Paper) -> Mil {
    match (neighbour.kind, paper) {
        (Beside::Open, _) => 0,
        (Beside::Wall, _) => 12_000,
        (_, Paper::Desk) => 46_000,
        (_, Paper::Phone) => 22_000,
    }
}

/// The topmost thing that is drawn over the opening.
pub fn crown(front: &Front) -> Mil {
    let thing = front.what.thing.as_ref();
    let bottom = front.what.opening.bottom();
    let tallest = thing.map_or(front.head, |thing| front.y(bottom + thing.height.most));
    let above = match front.what.above.kind {
        Beside::Open => front.head - 16_000,
        _ => underside(front) - head_band(front),
    };
    above.min(front.head).min(tallest)
}

fn head_band(front: &Front) -> Mil {
    match front.paper {
        Paper::Desk => 40_000,
        Paper::Phone => 28_000,
    }
}

fn underside(front: &Front) -> Mil {
    let underside = front.what.above.underside;
    underside.map_or(front.head, |height| front.y(height).min(front.head))
}

/// Draws the neighbours, so that the opening and the thing lie over them.
pub fn draw(front: &mut Front) {
    let crown = crown(front);
    side(front, Hand::Left, crown);
    side(front, Hand::Right, crown);
    above(front);
    if matches!(front.what.opening.foot, Foot::Above(_)) {
        let frame = Frame { left: 0, top: front.foot, right: front.right, bottom: 0 };
        front.canvas.rect(Pen::Object, Fill::Tint, frame);
    }
}

fn side(front: &mut Front, hand: Hand, crown: Mil) {
    let (neighbour, edge, outer) = match hand {
        Hand::Left => (&front.what.left, 0, -front.bands.0),
        Hand::Right => (&front.what.right, front.right, front.right + front.bands.1),
    };
    let (top, fill) = match neighbour.kind {
        Beside::Open => return,
        Beside::Wall => (crown, Fill::Hatch),
        Beside::Tall => (front.head.min(crown + head_band(front)), Fill::Tint),
        Beside::Base => (counter(front), Fill::Tint),
    };
    // The outer edge stays open: it goes on.
    let corners = [at(outer, top), at(edge, top), at(edge, 0), at(outer, 0)];
    front.canvas.path(Pen::Object, fill, &corners, false);
}

fn counter(front: &Front) -> Mil {
    front.what.counter.map_or(front.head, |height| front.y(height))
}

fn above(front: &mut Front) {
    let low = underside(front);
    let high = low - head_band(front);
    let fill = match front.what.above.kind {
        Beside::Open => return,
        Beside::Wall => Fill::Hatch,
        Beside::Tall | Beside::Base => Fill::Tint,
    };
    let (left, right) = (0, front.right);
    let corners = [at(left, high), at(left, low), at(right, low), at(right, high)];
    front.canvas.path(Pen::Object, fill, &corners, false);
}

/// Says what each neighbour is, and how high the counter.
pub fn words(front: &mut Front) {
    words_above(front);
    words_beside(front, Hand::Left);
    words_beside(front, Hand::Right);
    words_of_counter(front);
}

fn words_above(front: &mut Front) {
    let above = front.what.above.clone();
    if above.words.is_empty() {
        return;
    }
    let letters = (front.right / 6_500).clamp(8, 40) as usize;
    let mut label = front.sizes.remark(&above.words, letters);
    if let Some(height) = above.underside {
        label.lines.push(told::above_floor(front.sizes, height));
    }
    let middle = front.right / 2;
    let band = underside(front) - head_band(front) / 2;
    let over = crown(front) - 4_000;
    let spots = [
        Spot::new(middle, band, Grip::Middle),
        Spot::new(middle, over, Grip::Foot),
        Spot::new(front.right + front.bands.1 + 6_000, band, Grip::LeftEdge),
        Spot::new(-front.bands.0 - 6_000, band, Grip::RightEdge),
    ];
    front.canvas.label(label, &spots);
}

fn words_beside(front: &mut Front, hand: Hand) {
    let (neighbour, band, sign, edge) = match hand {
        Hand::Left => (&front.what.left, front.bands.0, -1, 0),
        Hand::Right => (&front.what.right, front.bands.1, 1, front.right),
    };
    if neighbour.words.is_empty() || neighbour.kind == Beside::Open {
        return;
    }
    let top = match neighbour.kind {
        Beside::Base => counter(front),
        _ => front.head,
    };
    let label = front.sizes.remark(&neighbour.words, 22);
    let inside = edge + sign * band / 2;
    let outside = edge + sign * (band + 6_000 + label.height() / 2);
    let mut spots = Vec::new();
    for part in [50, 30, 70, 20, 80] {
        let y = top * part / 100;
        if band > 16_000 && label.width() + 10_000 <= -top && label.height() < band {
            spots.push(Spot::new(inside, y, Grip::Middle).turned());
        }
    }
    let grip = if sign < 0 { Grip::RightEdge } else { Grip::LeftEdge };
    let outer = edge + sign * band;
    let over = crown(front).min(top) - label.height() / 2 - 4_000;
    spots.push(Spot::new(inside, over + label.height() / 2, Grip::Foot));
    spots.push(Spot::new(outer - sign * 8_000, over, grip));
    for part in [85, 70, 50, 30] {
        spots.push(Spot::new(outside, top * part / 100, Grip::Middle).turned());
    }
    front.canvas.label(label, &spots);
}

fn words_of_counter(front: &mut Front) {
    let Some(height) = front.what.counter else { return };
    let (left, right) = (front.what.left.kind, front.what.right.kind);
    if left != Beside::Base && right != Beside::Base {
        return;
    }
    let line = Line::words(say!(front.sizes.words, "drawn.counter"), front.sizes.small).toned(Tone::Soft);
    let label = Label::of(vec![line, told::above_floor(front.sizes, height)]);
    let y = front.y(height) - 3_000 - label.height() / 2;
    let (far_left, far_right) = (-front.bands.0, front.right + front.bands.1);
    let under = front.y(height) + 4_000 + label.height() / 2;
    let mut spots = Vec::new();
    if right == Beside::Base {
        spots.push(Spot::new(front.right + 4_000, y, Grip::LeftEdge));
        spots.push(Spot::new(far_right + 4_000, y, Grip::LeftEdge));
        spots.push(Spot::new(front.right - 4_000, y, Grip::RightEdge));
        spots.push(Spot::new(front.right + 4_000, under, Grip::LeftEdge));
    }
    if left == Beside::Base {
        spots.push(Spot::new(-4_000, y, Grip::RightEdge));
        spots.push(Spot::new(far_left - 4_000, y, Grip::RightEdge));
        spots.push(Spot::new(4_000, y, Grip::LeftEdge));
        spots.push(Spot::new(-4_000, under, Grip::RightEdge));
    }
    front.canvas.label(label, &spots);
}
