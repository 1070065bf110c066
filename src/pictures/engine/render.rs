//! One photo's bytes to its renditions: decoded once, each width made from the one above.

use jpeg_encoder::{ChromaSubsamplingMethod, ColorType, Encoder};

use super::colour::to_srgb;
use super::decode::decode;
use super::error::PictureError;
use super::inspect::{Facts, shown};
use super::limits::PictureLimits;
use super::raster::{Decoded, Raster};
use super::resize::{resized, sizes};

/// The JPEG quality of renditions: where faults of finish can't be seen, at a third of the bytes.
const QUALITY: u8 = 80;

/// How renditions are made, in words that change whenever their bytes would.
pub const SETTINGS: &str = "2: lanczos3, sRGB, on white, JPEG 80";

/// A photo's renditions in memory.
#[derive(Debug, PartialEq, Eq)]
pub struct Rendered {
    /// The photo's width in pixels as shown, before any reduction.
    pub width: u32,
    /// The photo's height in pixels as shown.
    pub height: u32,
    /// The mean colour in sRGB.
    pub average: [u8; 3],
    /// The photo carries a colour profile that can't be read.
    pub unread_profile: bool,
    /// The renditions, widest first.
    pub files: Vec<Encoded>,
}

/// One rendition's JPEG file.
#[derive(Debug, PartialEq, Eq)]
pub struct Encoded {
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// The file.
    pub bytes: Vec<u8>,
}

/// Decodes `bytes` and makes a rendition for each of `widths`.
pub fn render(bytes: &[u8], facts: &Facts, widths: &[u32], limits: &PictureLimits) -> Result<Rendered, PictureError> {
    let Decoded { raster, profile, orientation } = decode(bytes, facts, limits)?;
    let (width, height) = shown((raster.width, raster.height), orientation);
    let refused = || PictureError::Damaged {
        format: facts.format,
        detail: format!("{width} × {height} pixels can't be resized"),
    };
    let sizes = sizes(width, height, widths);
    let &first = sizes.first().ok_or_else(refused)?;
    // Turning and colour come after the first reduction: a sixth of the pixels of a photo.
    let reduced = if first == (width, height) {
        raster
    } else {
        let reduced = resized(&raster, shown(first, orientation)).ok_or_else(refused)?;
        drop(raster);
        reduced
    };
    let coloured = to_srgb(reduced.turned(orientation), profile.as_deref());
    let mut current = coloured.raster;
    let mut files = Vec::with_capacity(sizes.len());
    for size in sizes {
        if size != (current.width, current.height) {
            current = resized(&current, size).ok_or_else(refused)?;
        }
        files.push(encoded(&current).ok_or_else(refused)?);
    }
    let average = average(&current.pixels);
    Ok(Rendered { width, height, average, unread_profile: coloured.unread_profile, files })
}

/// A baseline JPEG with nothing but its JFIF header beside the picture: no metadata at all.
fn encoded(raster: &Raster) -> Option<Encoded> {
    let mut bytes = Vec::new();
    let width = u16::try_from(raster.width).ok()?;
    let height = u16::try_from(raster.height).ok()?;
    let mut encoder = Encoder::new(&mut bytes, QUALITY);
    // The default takes one colour of four: 2 dB worse at the edges of strong colours.
    encoder.set_chroma_subsampling_method(ChromaSubsamplingMethod::Average);
    encoder.encode(&raster.pixels, width, height, ColorType::Rgb).ok()?;
    Some(Encoded { width: raster.width, height: raster.height, bytes })
}

/// The mean of each channel, to stand in a picture's place while it loads.
fn average(pixels: &[u8]) -> [u8; 3] {
    let (pixels, _) = pixels.as_chunks::<3>();
    let count = (pixels.len() as u64).max(1);
    let mut sums = [0; 3];
    for pixel in pixels {
        for (sum, &sample) in sums.iter_mut().zip(pixel) {
            *sum += u64::from(sample);
        }
    }
    sums.map(|sum| ((sum + count / 2) / count) as u8)
}
