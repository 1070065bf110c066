//! A photo's format and size from its header, cheap enough for every review.

use std::io::Cursor;

use image::codecs::{png::PngDecoder, tiff::TiffDecoder, webp::WebPDecoder};
use image::metadata::Orientation;
use image::{ImageDecoder, ImageError};

use super::error::PictureError;
use super::format::{self, Format};
use super::limits::Limits;
use super::{jpeg, wholeness};

/// What a photo's header says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Facts {
    /// The file's format.
    pub format: Format,
    /// Width in pixels as shown, after the photo is turned upright.
    pub width: u32,
    /// Height in pixels as shown.
    pub height: u32,
}

/// Reads the header of a whole file's `bytes` and checks it against the default [`Limits`].
///
/// No pixel is decoded, so damage further in may still come to light in [`super::prepare`];
/// a missing end is noticed here.
pub fn inspect(bytes: &[u8]) -> Result<Facts, PictureError> {
    inspect_within(bytes, &Limits::default())
}

/// As [`inspect`], with limits of one's own.
pub fn inspect_within(bytes: &[u8], limits: &Limits) -> Result<Facts, PictureError> {
    limits.check_file(bytes.len() as u64)?;
    let format = format::recognise(bytes)?;
    let facts = match header(format, bytes, limits) {
        Err(PictureError::Damaged { .. }) if wholeness::check(format, bytes).is_err() => {
            Err(PictureError::Truncated(format))
        }
        other => other,
    }?;
    limits.check_size(facts.width, facts.height)?;
    wholeness::check(format, bytes)?;
    Ok(facts)
}

fn header(format: Format, bytes: &[u8], limits: &Limits) -> Result<Facts, PictureError> {
    let reader = Cursor::new(bytes);
    let read = |fault: ImageError| from_image(format, fault);
    match format {
        Format::Jpeg => jpeg::facts(bytes),
        Format::Png => {
            // The decoder itself allows no more for a profile or text than the photo may take.
            let mut allowed = image::Limits::no_limits();
            allowed.max_alloc = Some(limits.decoded_bytes);
            upright(format, &mut PngDecoder::with_limits(reader, allowed).map_err(read)?)
        }
        Format::WebP => upright(format, &mut WebPDecoder::new(reader).map_err(read)?),
        Format::Tiff => upright(format, &mut TiffDecoder::new(reader).map_err(read)?),
        #[cfg(feature = "heic")]
        Format::Heic => super::heic::facts(bytes),
        #[cfg(not(feature = "heic"))]
        Format::Heic => Err(PictureError::Heic { detail: "built without HEIC".into() }),
    }
}

fn upright(format: Format, decoder: &mut impl ImageDecoder) -> Result<Facts, PictureError> {
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let (width, height) = shown(decoder.dimensions(), orientation);
    Ok(Facts { format, width, height })
}

/// The size as shown of a picture stored at `size`.
pub(super) fn shown((width, height): (u32, u32), orientation: Orientation) -> (u32, u32) {
    if lies_on_its_side(orientation) { (height, width) } else { (width, height) }
}

/// Whether turning the picture upright exchanges width and height.
pub(super) fn lies_on_its_side(orientation: Orientation) -> bool {
    matches!(
        orientation,
        Orientation::Rotate90 | Orientation::Rotate270 | Orientation::Rotate90FlipH | Orientation::Rotate270FlipH
    )
}

/// A fault of the decoding library in our words.
pub(super) fn from_image(format: Format, fault: ImageError) -> PictureError {
    match fault {
        ImageError::Unsupported(what) => {
            PictureError::Unsupported { kind: format!("a {format} of a rare kind ({what})") }
        }
        ImageError::Limits(_) => {
            PictureError::Damaged { format, detail: "it unpacks to more than its size allows".into() }
        }
        other => PictureError::damaged(format, &other),
    }
}
