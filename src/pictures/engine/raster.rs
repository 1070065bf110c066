//! Decoded pixels, eight bits a channel, and how they are brought to that and turned upright.

use image::metadata::Orientation;

use super::inspect::lies_on_its_side;

/// What the channels of a pixel mean.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Samples {
    /// One channel of lightness.
    Grey,
    /// Red, green, blue.
    Rgb,
    /// Cyan, magenta, yellow, black; 255 is full ink.
    Cmyk,
}

impl Samples {
    /// Bytes a pixel.
    pub(super) fn channels(self) -> usize {
        match self {
            Samples::Grey => 1,
            Samples::Rgb => 3,
            Samples::Cmyk => 4,
        }
    }
}

/// A picture in memory, row by row from the top.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Raster {
    pub(super) width: u32,
    pub(super) height: u32,
    pub(super) samples: Samples,
    /// `width * height * samples.channels()` bytes.
    pub(super) pixels: Vec<u8>,
}

/// A photo as its file stores it, with what is needed to show it rightly.
#[derive(Debug)]
pub(super) struct Decoded {
    pub(super) raster: Raster,
    pub(super) profile: Option<Vec<u8>>,
    pub(super) orientation: Orientation,
}

/// Brings 16-bit samples (in the machine's order) to 8 bits, rounded.
pub(super) fn narrow(pixels: &mut Vec<u8>) {
    let (wide, _) = pixels.as_chunks::<2>();
    let narrowed = |wide: &[u8; 2]| ((u32::from(u16::from_ne_bytes(*wide)) * 255 + 32_767) / 65_535) as u8;
    *pixels = wide.iter().map(narrowed).collect();
}

/// Lays pixels of `colours` channels and one of opacity on white, and drops the opacity.
pub(super) fn flatten(pixels: &mut Vec<u8>, colours: usize) {
    let mut flat = Vec::with_capacity(pixels.len() / (colours + 1) * colours);
    for pixel in pixels.chunks_exact(colours + 1) {
        let Some((opacity, colours)) = pixel.split_last() else { continue };
        let opacity = u32::from(*opacity);
        let on_white = |colour: &u8| ((u32::from(*colour) * opacity + 255 * (255 - opacity) + 127) / 255) as u8;
        flat.extend(colours.iter().map(on_white));
    }
    *pixels = flat;
}

impl Raster {
    /// The picture as it should be seen.
    pub(super) fn turned(self, orientation: Orientation) -> Raster {
        if orientation == Orientation::NoTransforms {
            return self;
        }
        let (width, height) =
            if lies_on_its_side(orientation) { (self.height, self.width) } else { (self.width, self.height) };
        let pixels = match self.samples {
            Samples::Grey => self.gather::<1>(width, height, orientation),
            Samples::Rgb => self.gather::<3>(width, height, orientation),
            Samples::Cmyk => self.gather::<4>(width, height, orientation),
        };
        Raster { width, height, samples: self.samples, pixels }
    }

    /// The pixels in the order of the turned picture, each fetched from where it was stored.
    fn gather<const N: usize>(&self, width: u32, height: u32, orientation: Orientation) -> Vec<u8> {
        let (stored, _) = self.pixels.as_chunks::<N>();
        let (w, h) = (self.width as usize, self.height as usize);
        let mut out = Vec::with_capacity(self.pixels.len());
        for y in 0..height as usize {
            for x in 0..width as usize {
                // EXIF 2.32, table 6: which stored row and column each tag value puts where.
                let (from_x, from_y) = match orientation {
                    Orientation::NoTransforms => (x, y),
                    Orientation::FlipHorizontal => (w - 1 - x, y),
                    Orientation::Rotate180 => (w - 1 - x, h - 1 - y),
                    Orientation::FlipVertical => (x, h - 1 - y),
                    Orientation::Rotate90FlipH => (y, x),
                    Orientation::Rotate90 => (y, h - 1 - x),
                    Orientation::Rotate270FlipH => (w - 1 - y, h - 1 - x),
                    Orientation::Rotate270 => (w - 1 - y, x),
                };
                if let Some(pixel) = stored.get(from_y * w + from_x) {
                    out.extend_from_slice(pixel);
                }
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sixteen_bits_round_to_the_nearest_eight() {
        let wide: [u16; 5] = [0, 128, 129, 32_768, 65_535];
        let mut pixels: Vec<u8> = wide.iter().flat_map(|v| v.to_ne_bytes()).collect();
        narrow(&mut pixels);
        assert_eq!(pixels, [0, 0, 1, 128, 255]);
    }

    #[test]
    fn clear_pixels_become_white_and_half_clear_ones_half_white() {
        let mut pixels = vec![10, 20, 30, 255, 10, 20, 30, 0, 0, 0, 0, 128];
        flatten(&mut pixels, 3);
        assert_eq!(pixels, [10, 20, 30, 255, 255, 255, 127, 127, 127]);
    }

    #[test]
    fn every_orientation_agrees_with_an_independent_library() {
        // Against the `image` crate, which turns pictures by its own code.
        for value in 1..=8 {
            let orientation = Orientation::from_exif(value).unwrap();
            let pixels: Vec<u8> = (0..3 * 2 * 3).collect();
            let mut theirs: image::DynamicImage = image::RgbImage::from_raw(3, 2, pixels.clone()).unwrap().into();
            theirs.apply_orientation(orientation);
            let ours = Raster { width: 3, height: 2, samples: Samples::Rgb, pixels };
            let ours = ours.turned(orientation);
            assert_eq!((ours.width, ours.height), (theirs.width(), theirs.height()));
            assert_eq!(ours.pixels, theirs.into_bytes(), "orientation {value}");
        }
    }
}
