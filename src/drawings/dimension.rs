//! Dimension strings: a line, ticks at 45°, extension lines, and the figure where it has room.

use super::lettering::Label;
use super::pen::{Canvas, Pen};
use super::place::{DrawingPoint, Grip, Spot, at};
use super::scale::Mil;

/// A string from left to right.
pub struct Level {
    pub from: Mil,
    pub to: Mil,
    /// Where the line lies.
    pub y: Mil,
    /// Where the object's edges end, at the left and at the right, for the extension lines.
    pub edges: Option<(Mil, Mil)>,
    pub aside: Aside,
}

/// A string from head to foot.
pub struct Plumb {
    pub from: Mil,
    pub to: Mil,
    /// Where the line lies.
    pub x: Mil,
    /// Where the object's edges end, at the head and at the foot, for the extension lines.
    pub edges: Option<(Mil, Mil)>,
    pub aside: Aside,
}

/// Where a figure goes first that does not fit between its ticks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aside {
    /// Left of a level string; above a plumb one.
    Before,
    /// Right of a level string; below a plumb one.
    After,
    /// Under a level string; beside a plumb one.
    Under,
    /// Never on its line, which others of its chain lie on: over a level string, at the left of a plumb one first.
    OffBefore,
    /// The same: under a level string, at the right of a plumb one first.
    OffAfter,
}

const TICK: Mil = 4_500;
const PAST: Mil = 5_000;
const SHORT_OF: Mil = 4_000;
const OUT: Mil = 14_000;

/// Draws a level string with its figure.
pub fn level(canvas: &mut Canvas, string: &Level, label: Label) {
    let (from, to, y) = (string.from.min(string.to), string.from.max(string.to), string.y);
    canvas.line(Pen::Dimension, at(from - PAST, y), at(to + PAST, y));
    for (x, edge) in [(from, string.edges.map(|e| e.0)), (to, string.edges.map(|e| e.1))] {
        canvas.line(Pen::Tick, at(x - TICK, y + TICK), at(x + TICK, y - TICK));
        if let Some(edge) = edge {
            let way = (y - edge).signum();
            canvas.line(Pen::Dimension, at(x, edge + way * SHORT_OF), at(x, y + way * PAST));
        }
    }
    let spots = level_spots(string, (from, to), &label);
    canvas.label(label, &spots);
}

/// Draws a plumb string with its figure.
pub fn plumb(canvas: &mut Canvas, string: &Plumb, label: Label) {
    let (from, to, x) = (string.from.min(string.to), string.from.max(string.to), string.x);
    canvas.line(Pen::Dimension, at(x, from - PAST), at(x, to + PAST));
    for (y, edge) in [(from, string.edges.map(|e| e.0)), (to, string.edges.map(|e| e.1))] {
        canvas.line(Pen::Tick, at(x - TICK, y + TICK), at(x + TICK, y - TICK));
        if let Some(edge) = edge {
            let way = (x - edge).signum();
            canvas.line(Pen::Dimension, at(edge + way * SHORT_OF, y), at(x + way * PAST, y));
        }
    }
    let spots = plumb_spots(string, (from, to), &label);
    canvas.label(label, &spots);
}

/// How far a label's middle is from the parting that the line runs through.
fn offset(label: &Label) -> Mil {
    match label.lines.as_slice() {
        [first, second] => (second.height() - first.height()) / 2,
        [only] => -(only.height() / 2 + 2_000),
        _ => 0,
    }
}

fn level_spots(string: &Level, (from, to): (Mil, Mil), label: &Label) -> Vec<Spot> {
    let (middle, y) = ((from + to) / 2, string.y);
    let mut spots = Vec::new();
    if label.width() + 8_000 <= to - from {
        // Shifted along the string where something else lies in its middle.
        let play = (to - from - label.width() - 8_000) / 2;
        for shift in [0, play / 2, -play / 2, play, -play] {
            spots.push(Spot::new(middle + shift, y + offset(label), Grip::Middle));
        }
    }
    if let Some(way) = string.aside.off_its_line() {
        spots.extend(off_level(middle, y, way));
        return spots;
    }
    let left = Spot::new(from - OUT, y, Grip::RightEdge).led(from, y);
    let right = Spot::new(to + OUT, y, Grip::LeftEdge).led(to, y);
    let under = |down: Mil| Spot::new(middle, y + down, Grip::Head);
    let outside = match string.aside {
        Aside::Before => [left, right, under(8_000)],
        Aside::After => [right, left, under(8_000)],
        Aside::Under | Aside::OffBefore | Aside::OffAfter => [under(8_000), right, left],
    };
    spots.extend(outside);
    for down in [26_000, 44_000, 62_000] {
        spots.push(under(down).led(middle, y));
        for across in [24_000, -24_000, 48_000, -48_000] {
            spots.push(Spot::new(middle + across, y + down, Grip::Head).led(middle, y));
        }
    }
    spots
}

impl Aside {
    /// Towards which side of its line a figure goes that may not lie on that.
    fn off_its_line(self) -> Option<Mil> {
        match self {
            Self::OffBefore => Some(-1),
            Self::OffAfter => Some(1),
            Self::Before | Self::After | Self::Under => None,
        }
    }
}

/// Spots off the line of a chain, the nearest first, then those at its other side.
fn off_level(middle: Mil, y: Mil, way: Mil) -> Vec<Spot> {
    let mut spots = Vec::new();
    for way in [way, -way] {
        let grip = if way < 0 { Grip::Foot } else { Grip::Head };
        spots.push(Spot::new(middle, y + way * 8_000, grip));
        for step in [26_000, 44_000, 62_000] {
            for across in [0, 24_000, -24_000, 48_000, -48_000] {
                spots.push(Spot::new(middle + across, y + way * step, grip).led(middle, y));
            }
        }
    }
    spots
}

fn plumb_spots(string: &Plumb, (from, to): (Mil, Mil), label: &Label) -> Vec<Spot> {
    let (middle, x) = ((from + to) / 2, string.x);
    let turned = |x: Mil, y: Mil| Spot::new(x, y, Grip::Middle).turned();
    let mut spots = Vec::new();
    if label.width() + 8_000 <= to - from {
        // Shifted along the string where something else crosses its middle.
        let play = (to - from - label.width() - 8_000) / 2;
        for shift in [0, play / 2, -play / 2, play, -play] {
            spots.push(turned(x + offset(label), middle + shift));
        }
    }
    let above = Spot::new(x, from - 8_000, Grip::Foot);
    let below = Spot::new(x, to + 8_000, Grip::Head);
    let right = Spot::new(x + OUT, middle, Grip::LeftEdge).led(x, middle);
    let left = Spot::new(x - OUT, middle, Grip::RightEdge).led(x, middle);
    spots.extend(match string.aside {
        Aside::Before => [above, right, left, below],
        Aside::After => [below, right, left, above],
        Aside::Under => [right, left, above, below],
        Aside::OffBefore => [left, right, left, right],
        Aside::OffAfter => [right, left, right, left],
    });
    for up in [24_000, -24_000, 48_000, -48_000] {
        spots.push(Spot { at: at(right.at.x, middle + up), ..right });
        spots.push(Spot { at: at(left.at.x, middle + up), ..left });
    }
    spots
}

/// Spots around a point for a label on the end of a leader, the nearest first.
pub fn around(point: DrawingPoint, steps: &[Mil]) -> Vec<Spot> {
    let mut spots = Vec::new();
    for &out in steps {
        for (dx, dy) in [(1, -1), (1, 1), (-1, -1), (-1, 1), (1, 0), (-1, 0)] {
            let grip = if dx > 0 { Grip::LeftEdge } else { Grip::RightEdge };
            let spot = Spot::new(point.x + dx * out, point.y + dy * out, grip);
            spots.push(spot.led(point.x, point.y));
        }
    }
    spots
}
