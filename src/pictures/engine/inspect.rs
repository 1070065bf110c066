//! A photo's format and size from its header, cheap enough for every review.

use std::io::Cursor;

use image::codecs::{png::PngDecoder, tiff::TiffDecoder, webp::WebPDecoder};
use image::metadata::Orientation;
use image::{ImageDecoder, ImageError};

use super::error::PictureError;
use super::format::{self, Format};
use super::limits::PictureLimits;
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

/// Reads the header of a whole file's `bytes` and checks it against the default [`PictureLimits`].
///
/// No pixel is decoded, so damage further in may still come to light in [`super::prepare`];
/// a missing end is noticed here.
pub fn inspect(bytes: &[u8]) -> Result<Facts, PictureError> {
    inspect_within(bytes, &PictureLimits::default())
}

/// As [`inspect`], with limits of one's own.
pub fn inspect_within(bytes: &[u8], limits: &PictureLimits) -> Result<Facts, PictureError> {
    limits.check_file(bytes.len() as u64)?;
    let format = format::recognise(bytes)?;
    let facts = match header(format, bytes, limits) {
        Err(PictureError::Damaged { .. } | PictureError::Heic { .. }) if wholeness::check(format, bytes).is_err() => {
            Err(PictureError::Truncated(format))
        }
        other => other,
    }?;
    limits.check_size(facts.width, facts.height)?;
    wholeness::check(format, bytes)?;
    Ok(facts)
}

fn header(format: Format, bytes: &[u8], limits: &PictureLimits) -> Result<Facts, PictureError> {
    let reader = Cursor::new(bytes);
    let read = |fault: ImageError| from_image(format, fault);
    match format {
        Format::Jpeg => jpeg::facts(bytes),
        Format::Png => {
            // A size past the limits is refused from the first chunk, whatever follows it.
            if let Some(&[w0, w1, w2, w3, h0, h1, h2, h3]) = bytes.get(16..24) {
                let width = u32::from_be_bytes([w0, w1, w2, w3]);
                limits.check_size(width, u32::from_be_bytes([h0, h1, h2, h3]))?;
            }
            upright(format, &mut png(bytes)?)
        }
        Format::WebP => {
            // The decoder makes room for a part by its declared length: that must be true.
            wholeness::check(format, bytes)?;
            upright(format, &mut WebPDecoder::new(reader).map_err(read)?)
        }
        Format::Tiff => upright(format, &mut TiffDecoder::new(reader).map_err(read)?),
        #[cfg(feature = "heic")]
        Format::Heic => super::heic::facts(bytes),
        #[cfg(not(feature = "heic"))]
        Format::Heic => Err(PictureError::Heic { detail: "built without HEIC".into() }),
    }
}

/// A decoder that unpacks no more beside the pixels (profile, text) than such things need.
pub(super) fn png(bytes: &[u8]) -> Result<PngDecoder<Cursor<&[u8]>>, PictureError> {
    let mut beside = image::Limits::no_limits();
    beside.max_alloc = Some(8 * 1024 * 1024);
    PngDecoder::with_limits(Cursor::new(bytes), beside).map_err(|fault| from_image(Format::Png, fault))
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
