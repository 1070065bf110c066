//! A signature as it was drawn: strokes between points of whole numbers.

use std::fmt;

/// The longest drawing, in letters.
pub const MAX_DRAWING: usize = 20_000;

/// A point: how far to the right, how far down.
pub type Point = (u32, u32);

/// A drawing that was checked: strokes alone, each of one point or more.
///
/// Whatever shows it makes its own path from these numbers; the text that came in is never passed on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawing {
    strokes: Vec<Vec<Point>>,
}

impl Drawing {
    /// Reads a path of moves and lines between points of whole numbers of at most five digits, such as
    /// `M12 40L13 41`; none when it is anything else, empty, or longer than [`MAX_DRAWING`].
    pub fn parse(text: &str) -> Option<Drawing> {
        let mut rest = text;
        let mut strokes: Vec<Vec<Point>> = Vec::new();
        if text.len() > MAX_DRAWING {
            return None;
        }
        while let Some(command) = rest.chars().next() {
            rest = rest.get(1..)?;
            let end = rest.find(|letter: char| !letter.is_ascii_digit() && letter != ' ').unwrap_or(rest.len());
            let (place, after) = rest.split_at_checked(end)?;
            let (x, y) = place.split_once(' ')?;
            let at = (number(x)?, number(y)?);
            match command {
                'M' => strokes.push(vec![at]),
                'L' => strokes.last_mut()?.push(at),
                _ => return None,
            }
            rest = after;
        }
        (!strokes.is_empty()).then_some(Drawing { strokes })
    }

    /// The strokes, moved so that the drawing begins at the left and at the top.
    pub fn strokes(&self) -> Vec<Vec<Point>> {
        let points = || self.strokes.iter().flatten();
        let left = points().map(|(x, _)| *x).min().unwrap_or(0);
        let top = points().map(|(_, y)| *y).min().unwrap_or(0);
        let moved = |stroke: &Vec<Point>| stroke.iter().map(|(x, y)| (x - left, y - top)).collect();
        self.strokes.iter().map(moved).collect()
    }
}

fn number(text: &str) -> Option<u32> {
    let plain = (1..=5).contains(&text.len()) && text.bytes().all(|digit| digit.is_ascii_digit());
    plain.then(|| text.parse().ok())?
}

/// As a path again.
impl fmt::Display for Drawing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for stroke in &self.strokes {
            for (at, (x, y)) in stroke.iter().enumerate() {
                write!(f, "{}{x} {y}", if at == 0 { 'M' } else { 'L' })?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_is_made_of_points_of_whole_numbers() {
        for path in ["M12 40L13 41", "M0 0M5 5L99999 1", "M3 4"] {
            assert_eq!(Drawing::parse(path).unwrap().to_string(), path);
        }
    }

    #[test]
    fn anything_else_is_no_drawing() {
        let long = format!("M1 1{}", "L1 1".repeat(5_000));
        for path in [
            "",
            "L1 1",
            "M1",
            "M1 1Z",
            "M1.5 2",
            "M-1 2",
            "M1 1\"/><script>",
            "M1 1 2",
            "M123456 1",
            "M 1 1",
            "M1  1",
            "m1 1",
            "M1 1 ",
            "M1 1é",
            "éM1 1",
            "M1 1#panic()",
            &long,
        ] {
            assert_eq!(Drawing::parse(path), None, "{path}");
        }
    }

    #[test]
    fn strokes_begin_at_the_left_and_at_the_top() {
        let drawing = Drawing::parse("M12 40L13 45M11 41").unwrap();
        assert_eq!(drawing.strokes(), [vec![(1, 0), (2, 5)], vec![(0, 1)]]);
    }
}
