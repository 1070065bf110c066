//! A code to scan: of half blocks for a terminal, or as a drawing.

use crate::drawings::scan::ScanCode;

use super::Failure;

/// A code of some text.
pub struct Code(ScanCode);

impl Code {
    /// The code of a text.
    pub fn of(text: &str) -> Result<Code, Failure> {
        let code = ScanCode::of(text);
        Ok(Code(code.ok_or("the link is too long for a code to scan; give a shorter `--address`")?))
    }

    /// Two rows of modules a line; light is drawn, so that it can be scanned off a dark terminal.
    pub fn letters(&self) -> String {
        let mut text = String::new();
        for y in (0..self.0.side()).step_by(2) {
            for x in 0..self.0.side() {
                let lower = y + 1 < self.0.side() && !self.0.is_dark(x, y + 1);
                text.push(match (!self.0.is_dark(x, y), lower) {
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
        self.0.svg("")
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
        assert_eq!(scanned(code.0.side(), is_dark), LINK);
        let svg = code.svg();
        assert_eq!(scanned(code.0.side(), |x, y| svg.contains(&format!("M{x} {y}h1v1h-1z"))), LINK);
    }
}
