//! The sizes of a photo's renditions, and one size from another.

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};

use super::raster::{Raster, Samples};

/// The sizes to make of a photo of `width` by `height`, widest first, none wider than the photo:
/// a width asked for that is too wide becomes the photo's own.
pub(super) fn sizes(width: u32, height: u32, widths: &[u32]) -> Vec<(u32, u32)> {
    let mut wanted: Vec<u32> = widths.iter().map(|&asked| asked.clamp(1, width)).collect();
    wanted.sort_unstable_by(|a, b| b.cmp(a));
    wanted.dedup();
    wanted.into_iter().map(|wanted| (wanted, scaled(height, wanted, width))).collect()
}

/// `height * to / from`, rounded, at least one.
fn scaled(height: u32, to: u32, from: u32) -> u32 {
    let (height, to, from) = (u64::from(height), u64::from(to), u64::from(from.max(1)));
    u32::try_from((height * to + from / 2) / from).unwrap_or(u32::MAX).max(1)
}

/// `raster` at the size given; itself when it has that size. `None` when the library refuses.
pub(super) fn resized(raster: &Raster, (width, height): (u32, u32)) -> Option<Raster> {
    let kind = match raster.samples {
        Samples::Grey => PixelType::U8,
        Samples::Rgb => PixelType::U8x3,
        Samples::Cmyk => PixelType::U8x4,
    };
    let from = ImageRef::new(raster.width, raster.height, &raster.pixels, kind).ok()?;
    let mut to = Image::new(width, height, kind);
    let lanczos = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::Lanczos3)).use_alpha(false);
    Resizer::new().resize(&from, &mut to, &lanczos).ok()?;
    Some(Raster { width, height, samples: raster.samples, pixels: to.into_vec() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wide_photo_gets_every_width_widest_first() {
        assert_eq!(sizes(4000, 3000, &[480, 1600, 960]), [(1600, 1200), (960, 720), (480, 360)]);
    }

    #[test]
    fn a_narrow_photo_is_never_made_wider() {
        assert_eq!(sizes(600, 301, &[1600, 960, 480]), [(600, 301), (480, 241)]);
        assert_eq!(sizes(1, 1, &[1600, 0]), [(1, 1)]);
    }

    #[test]
    fn a_ribbon_keeps_at_least_one_row() {
        assert_eq!(sizes(20_000, 2, &[240]), [(240, 1)]);
    }

    #[test]
    fn a_plain_colour_stays_that_colour() {
        let plain = Raster { width: 40, height: 30, samples: Samples::Rgb, pixels: [200, 100, 50].repeat(1200) };
        let small = resized(&plain, (8, 6)).unwrap();
        assert_eq!(small.pixels, [200, 100, 50].repeat(48));
    }
}
