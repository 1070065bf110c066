//! The thing in its opening, seen from the front: outline, door, number, and where it does not fit.

use super::front::Front;
use super::misfit::{self, Misfit};
use super::pen::{Fill, Pen};
use super::place::{Frame, Grip, Place, Spot, at};
use super::scale::{Mil, Paper};
use crate::drawings::sizes::{Door, Hand, Thing};
use crate::units::length::Length;

/// Draws the thing, if there is one.
pub fn draw(front: &mut Front) {
    let Some(thing) = front.what.thing.clone() else { return };
    let frame = outline(front, &thing);
    door(front, &thing, frame);
    if front.paper == Paper::Desk {
        let x = frame.middle().x;
        front.canvas.line(Pen::Centre, at(x, frame.top - 8_000), at(x, front.foot + 9_000));
    }
    misfits(front, &thing, frame);
    heights(front, &thing, frame);
}

fn outline(front: &mut Front, thing: &Thing) -> Frame {
    let scale = front.canvas.scale;
    let (width, height) = (scale.of(thing.width), scale.of(thing.height.least));
    let left = scale.of(thing.gap_left);
    let frame = Frame::new(left, front.foot - height, width, height);
    front.canvas.name_next("thing");
    front.canvas.rect(Pen::Object, Fill::Paper, frame);
    if thing.height.most > thing.height.least {
        let top = front.foot - scale.of(thing.height.most);
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
        Door::Swings { hinge, .. } => {
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

/// How tall the thing is, and what is left above it, at the left.
fn heights(front: &mut Front, thing: &Thing, frame: Frame) {
    use super::dimension::{Aside, Plumb, plumb};
    let x = -front.bands.0 - 22_000;
    let edges = Some((-front.bands.0, -front.bands.0));
    let label = front.sizes.between(thing.height, "");
    let string = Plumb { from: frame.top, to: frame.bottom, x, edges, aside: Aside::After };
    plumb(&mut front.canvas, &string, label);
    let Some(gap) = front.what.gap_above() else { return };
    let words = if gap.is_negative() { "too tall" } else { "gap" };
    let mut label = front.sizes.length_of(gap.abs(), words);
    label.parting = 0;
    let string = Plumb { from: front.head, to: frame.top, x, edges, aside: Aside::Before };
    plumb(&mut front.canvas, &string, label);
}

/// Hatches what does not fit, and shows it larger where it is less than an inch.
fn misfits(front: &mut Front, thing: &Thing, frame: Frame) {
    let over = thing.width - front.what.opening.governing();
    let words = if over > Length::ZERO { "too wide" } else { "over the edge" };
    let told = |gap: Length| if over > Length::ZERO { over } else { gap.abs() };
    let right = front.what.gap_right().unwrap_or(Length::ZERO);
    let middle = frame.middle();
    let mut found: Vec<(Misfit, Frame)> = Vec::new();
    if right.is_negative() {
        let spot = at(front.right, middle.y);
        let strip = Frame { left: front.right, ..frame };
        found.push((Misfit { by: right.abs(), told: told(right), words, spot, hand: (1, 0) }, strip));
    }
    if thing.gap_left.is_negative() {
        let (by, spot) = (thing.gap_left.abs(), at(0, middle.y));
        let misfit = Misfit { by, told: told(thing.gap_left), words, spot, hand: (-1, 0) };
        found.push((misfit, Frame { right: 0, ..frame }));
    }
    if let Some(above) = front.what.gap_above().filter(|gap| gap.is_negative()) {
        let (by, spot) = (above.abs(), at(middle.x, front.head));
        let misfit = Misfit { by, told: by, words: "too tall", spot, hand: (0, -1) };
        found.push((misfit, Frame { bottom: front.head, ..frame }));
    }
    for (_, strip) in &found {
        front.canvas.name_next("misfit");
        front.canvas.rect(Pen::Object, Fill::Clash, *strip);
    }
    let mut said = Vec::new();
    for (misfit, _) in found {
        if !said.contains(&misfit.words) {
            said.push(misfit.words);
            misfit::explain(front, &misfit, frame);
        }
    }
}

/// Puts the item's number in the opening where it covers nothing.
pub fn tag(front: &mut Front) {
    let (x, tall) = (front.right / 2, front.foot - front.head);
    let mut places: Vec<Place> =
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
