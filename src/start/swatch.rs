//! Plain swatches of a material, drawn without any source of chance.

use image::{ImageError, ImageFormat, Rgb, RgbImage};

/// Sides in pixels.
const WIDTH: u32 = 800;
const HEIGHT: u32 = 600;

/// A swatch.
pub struct Swatch {
    /// Its colour, in sRGB.
    pub colour: [u8; 3],
    /// Its surface.
    pub grain: Grain,
}

/// A surface.
pub enum Grain {
    /// Even, with a fine tooth.
    Even,
    /// Fine lines that run along it.
    Brushed,
    /// Square tiles with joints.
    Squares,
}

impl Swatch {
    /// The swatch as a PNG.
    pub fn png(&self) -> Result<Vec<u8>, ImageError> {
        let picture =
            RgbImage::from_fn(WIDTH, HEIGHT, |x, y| Rgb(self.colour.map(|level| shifted(level, self.shade(x, y)))));
        let mut bytes = std::io::Cursor::new(Vec::new());
        picture.write_to(&mut bytes, ImageFormat::Png)?;
        Ok(bytes.into_inner())
    }

    /// How much lighter or darker a point is.
    fn shade(&self, x: u32, y: u32) -> i32 {
        match self.grain {
            Grain::Even => noise(x, y) % 7 - 3,
            Grain::Brushed => noise(0, y) % 15 - 7 + noise(x / 40, y) % 5 - 2,
            Grain::Squares if x % 100 < 3 || y % 100 < 3 => -34,
            Grain::Squares => noise(x / 100, y / 100) % 13 - 6 + noise(x, y) % 3 - 1,
        }
    }
}

fn shifted(level: u8, by: i32) -> u8 {
    u8::try_from((i32::from(level) + by).clamp(0, 255)).unwrap_or(level)
}

/// A number from 0 to 1023 that looks like chance and is always the same for a point.
fn noise(x: u32, y: u32) -> i32 {
    let mut mixed = x.wrapping_mul(0x9E37_79B1) ^ y.wrapping_mul(0x85EB_CA77);
    mixed ^= mixed >> 15;
    mixed = mixed.wrapping_mul(0x2C1B_3C6D);
    mixed ^= mixed >> 12;
    i32::try_from(mixed & 1023).unwrap_or(0)
}
