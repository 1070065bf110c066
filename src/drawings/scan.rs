//! A code to scan (ISO/IEC 18004): its modules, and a drawing of them.

use qrcode::{Color, EcLevel, QrCode};

/// Light all around, in modules (ISO/IEC 18004, section 6.3.8).
const QUIET: usize = 4;

/// A code of some text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScanCode {
    width: usize,
    dark: Vec<bool>,
}

impl ScanCode {
    /// The code of a text; none where it is longer than any code holds.
    pub fn of(text: &str) -> Option<Self> {
        let code = QrCode::with_error_correction_level(text, EcLevel::M).ok()?;
        let width = code.width();
        let dark = code.to_colors().into_iter().map(|colour| colour == Color::Dark).collect();
        Some(Self { width, dark })
    }

    /// How many modules there are on a side, the light around included.
    pub fn side(&self) -> usize {
        self.width + 2 * QUIET
    }

    /// Whether a module is dark, counted from the upper left corner of the light around.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        let inside = |at: usize| at.checked_sub(QUIET).filter(|at| *at < self.width);
        inside(x).zip(inside(y)).is_some_and(|(x, y)| self.dark.get(y * self.width + x).is_some_and(|dark| *dark))
    }

    /// The path of all dark modules, a unit each.
    pub fn path(&self) -> String {
        let side = self.side();
        let dark = (0..side).flat_map(|y| (0..side).map(move |x| (x, y))).filter(|(x, y)| self.is_dark(*x, *y));
        dark.map(|(x, y)| format!("M{x} {y}h1v1h-1z")).collect()
    }

    /// A drawing, a unit a module; black on white on every page and in every light.
    pub fn svg(&self, attributes: &str) -> String {
        let side = self.side();
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\"{attributes}>\
             <path fill=\"#fff\" d=\"M0 0h{side}v{side}H0z\"/><path fill=\"#000\" d=\"{}\"/></svg>\n",
            self.path()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Independent reader: the crate rqrr, on the modules that the drawing has.
    #[test]
    fn a_drawing_is_read_back() {
        let text = "https://book.example/installer/openings/kitchen/refrigerator.html#paper-9c410e7b-3";
        let code = ScanCode::of(text).unwrap();
        let (svg, side) = (code.svg(""), code.side());
        let pixel = |x: usize, y: usize| if svg.contains(&format!("M{} {}h1v1h-1z", x / 4, y / 4)) { 0 } else { 255 };
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * 4, side * 4, pixel);
        let grids = image.detect_grids();
        assert_eq!((grids.len(), grids[0].decode().unwrap().1.as_str()), (1, text));
    }

    #[test]
    fn what_no_code_holds_is_none() {
        assert_eq!(ScanCode::of(&"a".repeat(4_000)), None);
    }
}
