//! The thing in its opening, seen from the front: outline, door, number, and where it does not fit.

use super::front::Front;
use super::misfit::{self, Clash};
use super::pen::{Fill, Pen};
use super::place::{DrawingPoint, Frame, Grip, Spot, at};
use super::scale::{Mil, Paper};
use crate::drawings::sizes::{Door, Hand, Hinged, Laps, Misfit, Thing};
use crate::units::length::Length;

/// Draws the thing, if there is one.
pub fn draw(front: &mut Front) {
    let Some(thing) = front.what.thing.clone() else {
        let opening = Frame { left: 0, top: front.head, right: front.right, bottom: front.foot };
        return misfits(front, opening);
    };
    let frame = outline(front, &thing);
    door(front, &thing, frame);
    if front.paper == Paper::Desk {
        let x = frame.middle().x;
        front.canvas.line(Pen::Centre, at(x, frame.top - 8_000), at(x, front.foot + 9_000));
    }
    misfits(front, frame);
    heights(front, &thing, frame);
}

fn outline(front: &mut Front, thing: &Thing) -> Frame {
    let scale = front.canvas.scale;
    let (width, height) = (scale.of(thing.width), scale.of(thing.height.least));
    let left = scale.of(thing.gap_left);
    // A front that lies over the hole's edge lies over as much below as above.
    let stands = front.foot + thing.laps.height.map_or(0, |over| scale.of(over) / 2);
    let foot = thing.hangs.map_or(stands, |below| front.head + scale.of(below) + height);
    let frame = Frame::new(left, foot - height, width, height);
    front.canvas.name_next("thing");
    front.canvas.rect(Pen::Object, Fill::Paper, frame);
    if thing.laps != Laps::default() {
        // The hole is still seen, behind the front.
        let hole = Frame { left: 0, top: front.head, right: front.right, bottom: front.foot };
        front.canvas.rect(Pen::Hidden, Fill::None, hole);
    }
    if thing.height.most > thing.height.least {
        let top = foot - scale.of(thing.height.most);
        let corners = [at(left, frame.top), at(left, top), at(frame.right, top), at(frame.right, frame.top)];
        front.canvas.path(Pen::Hidden, Fill::None, &corners, false);
    }
    frame
}

/// Broken lines meet at the hinge; the handle is where the hand expects it, not measured.
fn door(front: &mut Front, thing: &Thing, frame: Frame) {
    let (wide, tall) = (frame.right - frame.left, frame.bottom - frame.top);
    let middle = frame.middle();
    let thick = (wide / 30).clamp(2_000, 4_000);
    let (hinge, ends, handle) = match thing.door {
        Door::None => return,
        Door::Drops { .. } => {
            let ends = [at(frame.left, frame.top), at(frame.right, frame.top)];
            let (left, top) = (frame.left + wide / 5, frame.top + tall * 24 / 100);
            (at(middle.x, frame.bottom), ends, Frame::new(left, top, wide * 3 / 5, thick))
        }
        Door::Swings { hinge: Hinged::Unknown, .. } => return,
        Door::Swings { hinge: Hinged::BothSides, .. } => return two_leaves(front, thing, frame),
        Door::Swings { hinge: Hinged::At(hinge), .. } => {
            let inset = wide * 8 / 100;
            let (near, far, x) = match hinge {
                Hand::Left => (frame.left, frame.right, frame.right - inset - thick),
                Hand::Right => (frame.right, frame.left, frame.left + inset),
            };
            let ends = [at(far, frame.top), at(far, frame.bottom)];
            let handle = Frame::new(x, frame.top + tall * 20 / 100, thick, tall * 30 / 100);
            (at(near, middle.y), ends, handle)
        }
    };
    front.canvas.path(Pen::Hidden, Fill::None, &[ends[0], hinge, ends[1]], false);
    if thing.handle {
        front.canvas.rect(Pen::Fine, Fill::Solid, handle);
        front.canvas.keep_clear(handle);
    }
}

/// Two leaves that meet in the middle, their handles at the gap.
fn two_leaves(front: &mut Front, thing: &Thing, frame: Frame) {
    let (wide, tall, middle) = (frame.right - frame.left, frame.bottom - frame.top, frame.middle());
    front.canvas.path(Pen::Object, Fill::None, &[at(middle.x, frame.top), at(middle.x, frame.bottom)], false);
    let thick = (wide / 40).clamp(1_500, 3_000);
    for (hinge, x) in [(frame.left, middle.x - 2 * thick), (frame.right, middle.x + thick)] {
        let leaf = [at(middle.x, frame.top), at(hinge, middle.y), at(middle.x, frame.bottom)];
        front.canvas.path(Pen::Hidden, Fill::None, &leaf, false);
        if thing.handle {
            let handle = Frame::new(x, frame.top + tall * 20 / 100, thick, tall * 30 / 100);
            front.canvas.rect(Pen::Fine, Fill::Solid, handle);
            front.canvas.keep_clear(handle);
        }
    }
}

/// How tall the thing is, and what is left above it, at the left.
fn heights(front: &mut Front, thing: &Thing, frame: Frame) {
    use super::dimension::{Aside, Plumb, plumb};
    let x = -front.bands.0 - 22_000;
    let edges = Some((-front.bands.0, -front.bands.0));
    let label = front.sizes.between(thing.height);
    let string = Plumb { from: frame.top, to: frame.bottom, x, edges, aside: Aside::After };
    plumb(&mut front.canvas, &string, label);
    if let Some(gap) = front.what.gap_below() {
        let mut label = front.sizes.length_of(gap, "drawn.gap");
        label.parting = 0;
        let string = Plumb { from: frame.bottom, to: front.foot, x, edges, aside: Aside::After };
        plumb(&mut front.canvas, &string, label);
    }
    let gap = front.what.gap_above().unwrap_or(Length::ZERO);
    let (gap, words, to) = match front.what.misfits.height {
        Some(Misfit::TooSmall(by)) => (by, "drawn.too.tall", front.head - front.canvas.scale.of(by)),
        _ if gap.is_negative() || thing.hangs == Some(Length::ZERO) => return,
        _ => (gap, "drawn.gap", frame.top),
    };
    let mut label = front.sizes.length_of(gap, words);
    label.parting = 0;
    let string = Plumb { from: front.head, to, x, edges, aside: Aside::Before };
    plumb(&mut front.canvas, &string, label);
}

/// Hatches what the verdict says does not fit, and shows it larger where it is less than an inch.
fn misfits(front: &mut Front, frame: Frame) {
    let [wide, tall, _] = misfit::words(front.what.misfits);
    let (scale, middle) = (front.canvas.scale, frame.middle());
    let is_small = |misfit: Option<Misfit>| matches!(misfit, Some(Misfit::TooSmall(_)));
    let mut found: Vec<(Clash, Frame, bool)> = Vec::new();
    if let Some((by, words)) = wide {
        let small = is_small(front.what.misfits.width);
        let (edge, over) = (front.right, if small { scale.of(by) } else { -scale.of(by) });
        let strip = Frame { left: edge.min(edge + over), right: edge.max(edge + over), ..frame };
        found.push((Clash { by, words, spot: at(edge, middle.y), hand: (1, 0) }, strip, small));
    }
    if let Some((by, words)) = tall {
        let small = is_small(front.what.misfits.height);
        let (edge, over) = (front.head, if small { -scale.of(by) } else { scale.of(by) });
        let strip = Frame { top: edge.min(edge + over), bottom: edge.max(edge + over), ..frame };
        found.push((Clash { by, words, spot: at(middle.x, edge), hand: (0, -1) }, strip, small));
    }
    for (_, strip, _) in &found {
        front.canvas.name_next("misfit");
        front.canvas.rect(Pen::Object, Fill::Clash, *strip);
    }
    for (clash, _, small) in found {
        match small {
            true => misfit::explain(front, &clash, frame),
            false => {
                let label = misfit::label(front.sizes, (clash.by, clash.words));
                front.canvas.label(label, &inside(frame));
            }
        }
    }
}

/// Puts the item's number in the opening where it covers nothing.
pub fn tag(front: &mut Front) {
    let (x, tall) = (front.right / 2, front.foot - front.head);
    let mut places: Vec<DrawingPoint> =
        [30, 70, 36, 64, 24, 76, 50, 18, 82].map(|part| at(x, front.head + tall * part / 100)).into();
    let crown = super::around_front::crown(front);
    places.push(at(x, crown - 14_000));
    places.push(at(x, crown - 44_000));
    front.canvas.tag(&front.what.tag, front.sizes.small, &places);
}

/// Spots for the words of a misfit that is plain to see.
pub fn inside(frame: Frame) -> Vec<Spot> {
    let tall: Mil = frame.bottom - frame.top;
    let place = |part: Mil| Spot::new(frame.middle().x, frame.top + tall * part / 100, Grip::Middle);
    [30, 70, 40, 60, 20, 80].map(place).into()
}
