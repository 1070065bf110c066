//! A code to scan: of half blocks for a terminal, or as a drawing.

use std::fmt::Write as _;

use qrcode::{Color, EcLevel, QrCode};

use super::Failure;

/// Light all around, in modules (ISO/IEC 18004, section 6.3.8).
const QUIET: usize = 4;

/// A code of some text.
pub struct Code {
    width: usize,
    dark: Vec<bool>,
}

impl Code {
    /// The code of a text.
    pub fn of(text: &str) -> Result<Code, Failure> {
        let code = QrCode::with_error_correction_level(text, EcLevel::M)
            .map_err(|_| "the link is too long for a code to scan; give a shorter `--address`")?;
        let width = code.width();
        let dark = code.to_colors().into_iter().map(|colour| colour == Color::Dark).collect();
        Ok(Code { width, dark })
    }

    /// How many modules there are on a side, the light around included.
    fn side(&self) -> usize {
        self.width + 2 * QUIET
    }

    fn is_dark(&self, x: usize, y: usize) -> bool {
        let inside = |at: usize| at.checked_sub(QUIET).filter(|at| *at < self.width);
        inside(x).zip(inside(y)).is_some_and(|(x, y)| self.dark.get(y * self.width + x).is_some_and(|dark| *dark))
    }

    /// Two rows of modules a line; light is drawn, so that it can be scanned off a dark terminal.
    pub fn letters(&self) -> String {
        let mut text = String::new();
        for y in (0..self.side()).step_by(2) {
            for x in 0..self.side() {
                let lower = y + 1 < self.side() && !self.is_dark(x, y + 1);
                text.push(match (!self.is_dark(x, y), lower) {
                    (true, true) => '█',
                    (true, false) => '▀',
                    (false, true) => '▄',
                    (false, false) => ' ',
                });
            }
            text.push('\n');
        }
        text
    }

    /// A drawing, a unit a module.
    pub fn svg(&self) -> String {
        let side = self.side();
        let mut path = String::new();
        for y in 0..side {
            for x in (0..side).filter(|x| self.is_dark(*x, y)) {
                let _ = write!(path, "M{x} {y}h1v1h-1z");
            }
        }
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\">\
             <path fill=\"#fff\" d=\"M0 0h{side}v{side}H0z\"/><path d=\"{path}\"/></svg>\n"
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LINK: &str =
        "https://book.example/client/sign.html#for=odile&key=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA";

    /// What an independent reader (the crate rqrr) makes of modules.
    fn scanned(side: usize, is_dark: impl Fn(usize, usize) -> bool) -> String {
        let pixel = |x: usize, y: usize| if is_dark(x / 4, y / 4) { 0 } else { 255 };
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * 4, side * 4, pixel);
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1);
        grids[0].decode().unwrap().1
    }

    /// Independent reader: the crate rqrr.
    #[test]
    fn the_code_on_a_terminal_and_the_drawing_are_read_back() {
        let code = Code::of(LINK).unwrap();
        let letters: Vec<Vec<char>> = code.letters().lines().map(|line| line.chars().collect()).collect();
        let is_dark = |x: usize, y: usize| match letters[y / 2][x] {
            '█' => false,
            '▀' => !y.is_multiple_of(2),
            '▄' => y.is_multiple_of(2),
            _ => true,
        };
        assert_eq!(scanned(code.side(), is_dark), LINK);
        let svg = code.svg();
        assert_eq!(scanned(code.side(), |x, y| svg.contains(&format!("M{x} {y}h1v1h-1z"))), LINK);
    }
}
