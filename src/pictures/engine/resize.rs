//! The sizes of a photo's renditions, and one size from another.

use fast_image_resize::images::{TypedImage, TypedImageRef};
use fast_image_resize::pixels::U8;
use fast_image_resize::{FilterType, ResizeAlg, ResizeOptions, Resizer};

use super::raster::Raster;

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
///
/// Each channel is resized alone, as grey: the library compiles its code anew for every sort of pixel that it is asked
/// for, which took longer than all else of this crate.
pub(super) fn resized(raster: &Raster, (width, height): (u32, u32)) -> Option<Raster> {
    let channels = raster.samples.channels();
    let size = usize::try_from(u64::from(width) * u64::from(height)).ok()?;
    let mut pixels = vec![0; size.checked_mul(channels)?];
    let mut small = vec![0; size];
    let mut resizer = Resizer::new();
    for channel in 0..channels {
        let plane: Vec<u8> = raster.pixels.iter().skip(channel).step_by(channels).copied().collect();
        let from = TypedImageRef::<U8>::from_buffer(raster.width, raster.height, &plane).ok()?;
        let mut to = TypedImage::<U8>::from_buffer(width, height, &mut small).ok()?;
        let lanczos = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::Lanczos3)).use_alpha(false);
        resizer.resize_typed(&from, &mut to, &lanczos).ok()?;
        pixels.iter_mut().skip(channel).step_by(channels).zip(&small).for_each(|(to, from)| *to = *from);
    }
    Some(Raster { width, height, samples: raster.samples, pixels })
}

#[cfg(test)]
mod tests {
    use super::super::raster::Samples;

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
