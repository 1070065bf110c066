//! The scale bar inside a drawing: the book's own units above, the other below if it is shown.

use super::figures::Sizes;
use super::lettering::{Label, Line, Tone};
use super::pen::{Canvas, Fill, Pen};
use super::place::{Frame, Grip, Spot};
use super::scale::{Mil, Paper};
use crate::language::{Words, say};
use crate::units::length::Length;

const THICK: Mil = 5_000;

/// One strip of the bar: two equal parts.
struct Strip {
    part: Mil,
    figures: [String; 3],
}

/// Draws the bar under everything else. A sheet of paper says the scale too, which holds there; a
/// screen shows the drawing as wide as it has room, where only the bar holds.
pub fn draw(canvas: &mut Canvas, sizes: Sizes, paper: Paper) {
    canvas.settle();
    // Half of the first figure stands before the bar.
    let (left, top) = (canvas.extent().left.max(canvas.limit().0 + 6_000), canvas.extent().bottom);
    let y = top + 10_000 + sizes.small * 11 / 10;
    let (above, below) = sizes.units.in_order(feet(canvas, sizes.words), millimetres(canvas, sizes.words));
    strip(canvas, Frame::new(left, y, above.part * 2, THICK));
    for (n, text) in (0..).zip(&above.figures) {
        figure(canvas, sizes, text, (left + above.part * n, y - 1_500, Grip::Foot));
    }
    if let Some(below) = &below {
        strip(canvas, Frame::new(left, y + THICK, below.part * 2, THICK));
        for (n, text) in (0..).zip(&below.figures) {
            figure(canvas, sizes, text, (left + below.part * n, y + 2 * THICK + 1_500, Grip::Head));
        }
    }
    if paper == Paper::Desk {
        let words = Line::words(canvas.scale.words(), sizes.small).toned(Tone::OnPaper);
        let x = left + above.part.max(below.map_or(0, |below| below.part)) * 2 + 40_000;
        canvas.label(Label::of(vec![words]), &[Spot::new(x, y + THICK, Grip::LeftEdge)]);
    }
}

/// Figures need 24 units each: the smaller the scale, the more feet in a part.
fn feet(canvas: &Canvas, words: Words) -> Strip {
    let of = |feet: i64| canvas.scale.of(Length::from_inches(12 * feet));
    let each = [1, 2, 4].into_iter().find(|each| of(*each) >= 24_000).unwrap_or(8);
    Strip { part: of(each), figures: ["0".into(), each.to_string(), say!(words, "units.bar.feet", n = 2 * each)] }
}

fn millimetres(canvas: &Canvas, words: Words) -> Strip {
    let of = |millimetres: i64| canvas.scale.of(Length::from_millimetres(millimetres));
    let each = [250, 500, 1000].into_iter().find(|each| of(*each) >= 30_000).unwrap_or(2000);
    Strip {
        part: of(each),
        figures: ["0".into(), each.to_string(), say!(words, "units.bar.millimetres", n = 2 * each)],
    }
}

/// Two halves, the first one solid.
fn strip(canvas: &mut Canvas, frame: Frame) {
    let half = (frame.right - frame.left) / 2;
    canvas.rect(Pen::Fine, Fill::Paper, frame);
    canvas.rect(Pen::Fine, Fill::Solid, Frame { right: frame.left + half, ..frame });
}

fn figure(canvas: &mut Canvas, sizes: Sizes, text: &str, (x, y, grip): (Mil, Mil, Grip)) {
    let line = Line::words(text, sizes.small).toned(Tone::Soft);
    // The unit hangs over, so that the figure itself stands on its mark.
    let digits: String = text.chars().take_while(char::is_ascii_digit).collect();
    let hang = (line.width() - Line::words(digits, sizes.small).width()) / 2;
    canvas.label(Label::of(vec![line]), &[Spot::new(x + hang, y, grip)]);
}
