//! A signature as pages and sheets show it: the typed name, the day, how it was given, and the drawing.

use std::fmt::Write;

use serde::Serialize;

use super::html::Html;
use crate::ledger::Drawing;

/// A signature that still holds.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Signature {
    /// The name as typed; that of the approver where none was typed.
    pub name: String,
    /// What stands on the line where nothing was drawn: the name as typed, or `on paper`.
    pub text: String,
    /// The day: `16 Jan 2027`; empty where only the words of how it was given tell it.
    pub date: String,
    /// How it was given, and of what: `by private link; of issue 2, all 5 items`.
    pub how: String,
    /// The drawing, where one was drawn.
    pub drawing: Option<Strokes>,
}

/// A drawing as strokes between points, from its own left and top.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Strokes {
    /// How wide it is; at least 1.
    pub width: u32,
    /// How high it is; at least 1.
    pub height: u32,
    /// A list of points each: how far to the right, how far down.
    pub strokes: Vec<Vec<(u32, u32)>>,
}

impl Strokes {
    /// The strokes of a drawing.
    pub fn of(drawing: &Drawing) -> Strokes {
        let strokes = drawing.strokes();
        let most = |of: fn(&(u32, u32)) -> u32| strokes.iter().flatten().map(of).max().unwrap_or(0).max(1);
        Strokes { width: most(|(x, _)| *x), height: most(|(_, y)| *y), strokes }
    }

    /// As an SVG that says whose it is; made of these numbers alone.
    pub fn svg(&self, whose: &str) -> Html {
        let mut path = String::new();
        for stroke in &self.strokes {
            for (at, (x, y)) in stroke.iter().enumerate() {
                // Writing to a text never fails.
                let _ = write!(path, "{}{x} {y}", if at == 0 { 'M' } else { 'L' });
            }
            if let [(x, y)] = stroke.as_slice() {
                let _ = write!(path, "L{x} {y}");
            }
        }
        // The pen is as wide as on the pad, whatever the size: a margin keeps it inside.
        let (wide, high) = (self.width + 6, self.height + 6);
        let before = format!("<svg class=\"signature\" viewBox=\"-3 -3 {wide} {high}\" role=\"img\" aria-label=\"");
        Html::trusted(before).then(Html::text(whose)).then(Html::trusted(format!("\"><path d=\"{path}\"/></svg>")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_is_drawn_from_its_numbers_and_a_name_stays_a_name() {
        let strokes = Strokes::of(&Drawing::parse("M12 40L22 45M12 41").unwrap());
        assert_eq!((strokes.width, strokes.height), (10, 5));
        let svg = strokes.svg("\"><script>");
        assert!(svg.as_str().contains("<path d=\"M0 0L10 5M0 1L0 1\"/>"), "{svg:?}");
        assert!(svg.as_str().contains("aria-label=\"&quot;&gt;&lt;script&gt;\""), "{svg:?}");
    }
}
