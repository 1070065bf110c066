//! The scale bar inside a drawing, in feet above and millimetres below.

use super::figures::Sizes;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot};
use super::scale::Mil;
use crate::units::length::Length;

const THICK: Mil = 5_000;

/// Draws the bar under everything else, with the scale that holds at full size.
pub fn draw(canvas: &mut Canvas, sizes: Sizes) {
    canvas.settle();
    let (left, top) = (canvas.extent().left.max(canvas.limit().0), canvas.extent().bottom);
    let y = top + 10_000 + sizes.small * 11 / 10;
    let foot = canvas.scale.of(Length::from_inches(12));
    let metre = canvas.scale.of(Length::from_millimetres(1000));
    // Figures need 24 units each: the fewer divisions, the smaller the scale.
    let feet: [i64; 3] = if foot >= 24_000 { [0, 1, 2] } else { [0, 2, 4] };
    strip(canvas, Frame::new(left, y, foot * feet[2], THICK));
    strip(canvas, Frame::new(left, y + THICK, metre * feet[2] / 4, THICK));
    for n in feet {
        let unit = if n == feet[2] { " ft" } else { "" };
        figure(canvas, sizes, &format!("{n}{unit}"), (left + foot * n, y - 1_500, Grip::Foot));
    }
    for part in 0..3 {
        let unit = if part == 2 { " mm" } else { "" };
        let text = format!("{}{unit}", feet[2] * 125 * part);
        let x = left + metre * feet[2] * part / 8;
        figure(canvas, sizes, &text, (x, y + 2 * THICK + 1_500, Grip::Head));
    }
    let words = Line::words(canvas.scale.words(), sizes.small).toned(Tone::Bold);
    let x = left + foot * feet[2] + 26_000;
    canvas.label(Label::of(vec![words]), &[Spot::new(x, y + THICK, Grip::LeftEdge)]);
}

/// Two halves, the first one solid.
fn strip(canvas: &mut Canvas, frame: Frame) {
    let half = (frame.right - frame.left) / 2;
    canvas.rect(Pen::Fine, Fill::Paper, frame);
    canvas.rect(Pen::Fine, Fill::Solid, Frame { right: frame.left + half, ..frame });
}

fn figure(canvas: &mut Canvas, sizes: Sizes, text: &str, (x, y, grip): (Mil, Mil, Grip)) {
    let line = Line::words(text, sizes.small - 500).toned(Tone::Soft);
    // The unit hangs over, so that the figure itself stands on its mark.
    let digits: String = text.chars().take_while(char::is_ascii_digit).collect();
    let hang = (line.width() - Line::words(digits, sizes.small - 500).width()) / 2;
    canvas.label(Label::of(vec![line]), &[Spot::new(x + hang, y, grip)]);
}
