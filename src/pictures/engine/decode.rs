//! A photo's bytes to pixels, whatever its format, within limits.

use std::io::Cursor;

use image::codecs::{tiff::TiffDecoder, webp::WebPDecoder};
use image::metadata::Orientation;
use image::{ColorType, ExtendedColorType, ImageDecoder};

use super::error::PictureError;
use super::format::Format;
use super::inspect::{Facts, from_image, png};
use super::jpeg;
use super::limits::PictureLimits;
use super::raster::{Decoded, Raster, Samples, flatten, narrow};

/// Decodes a photo that [`super::inspect_within`] has let pass.
pub(super) fn decode(bytes: &[u8], facts: &Facts, limits: &PictureLimits) -> Result<Decoded, PictureError> {
    limits.check_decoded(working_bytes(bytes, facts))?;
    let format = facts.format;
    let reader = Cursor::new(bytes);
    let mut allowed = image::Limits::no_limits();
    allowed.max_alloc = Some(limits.decoded_bytes);
    let read = |fault| from_image(format, fault);
    match format {
        Format::Jpeg => jpeg::decode(bytes),
        Format::Png => through(format, png(bytes)?, limits),
        Format::WebP => through(format, WebPDecoder::new(reader).map_err(read)?, limits),
        Format::Tiff => {
            let mut decoder = TiffDecoder::new(reader).map_err(read)?;
            decoder.set_limits(allowed).map_err(read)?;
            through(format, decoder, limits)
        }
        #[cfg(feature = "heic")]
        Format::Heic => super::heic::decode(bytes, limits),
        #[cfg(not(feature = "heic"))]
        Format::Heic => Err(PictureError::Heic { detail: "built without HEIC".into() }),
    }
}

/// About how much memory decoding takes at its highest, in bytes; for sharing memory out.
pub fn working_bytes(bytes: &[u8], facts: &Facts) -> u64 {
    let a_pixel = match facts.format {
        // Coefficients of two bytes a sample are kept beside the pixels.
        Format::Jpeg if jpeg::is_progressive(bytes) => 9,
        Format::Jpeg => 3,
        Format::Png | Format::WebP | Format::Tiff => 4,
        Format::Heic => 12,
    };
    u64::from(facts.width) * u64::from(facts.height) * a_pixel
}

fn through(format: Format, mut decoder: impl ImageDecoder, limits: &PictureLimits) -> Result<Decoded, PictureError> {
    let stored = decoder.original_color_type();
    if matches!(stored, ExtendedColorType::Cmyk8 | ExtendedColorType::Cmyk16) {
        return Err(PictureError::Unsupported { kind: format!("a {format} in the inks of a press (CMYK)") });
    }
    limits.check_decoded(decoder.total_bytes())?;
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let profile = decoder.icc_profile().ok().flatten();
    let (width, height) = decoder.dimensions();
    let colour = decoder.color_type();
    let size = usize::try_from(decoder.total_bytes()).unwrap_or(usize::MAX);
    let mut pixels = Vec::new();
    pixels.try_reserve_exact(size).map_err(|fault| PictureError::damaged(format, &fault))?;
    pixels.resize(size, 0);
    decoder.read_image(&mut pixels).map_err(|fault| from_image(format, fault))?;
    let samples = to_eight_bits(format, colour, &mut pixels)?;
    let raster = Raster { width, height, samples, pixels };
    Ok(Decoded { raster, profile, orientation })
}

fn to_eight_bits(format: Format, colour: ColorType, pixels: &mut Vec<u8>) -> Result<Samples, PictureError> {
    if matches!(colour, ColorType::L16 | ColorType::La16 | ColorType::Rgb16 | ColorType::Rgba16) {
        narrow(pixels);
    }
    match colour {
        ColorType::L8 | ColorType::L16 => Ok(Samples::Grey),
        ColorType::Rgb8 | ColorType::Rgb16 => Ok(Samples::Rgb),
        ColorType::La8 | ColorType::La16 => {
            flatten(pixels, 1);
            Ok(Samples::Grey)
        }
        ColorType::Rgba8 | ColorType::Rgba16 => {
            flatten(pixels, 3);
            Ok(Samples::Rgb)
        }
        other => Err(PictureError::Unsupported { kind: format!("a {format} with samples of {other:?}") }),
    }
}
