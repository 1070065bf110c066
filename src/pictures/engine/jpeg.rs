//! JPEG photos: header, pixels, and the inks of those made for a printing press.

use image::metadata::Orientation;
use zune_jpeg::JpegDecoder;
use zune_jpeg::errors::DecodeErrors;
use zune_jpeg::zune_core::bytestream::{ZByteIoError, ZCursor};
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use super::error::PictureError;
use super::format::Format;
use super::inspect::{Facts, shown};
use super::raster::{Decoded, Raster, Samples};
use super::scan;

type Decoder<'a> = JpegDecoder<ZCursor<&'a [u8]>>;

/// What the header says, with the size as shown.
pub(super) fn facts(bytes: &[u8]) -> Result<Facts, PictureError> {
    let decoder = with_header(bytes)?;
    let (width, height) = shown(stored_size(&decoder)?, orientation(&decoder));
    Ok(Facts { format: Format::Jpeg, width, height })
}

/// All pixels. The size must have been checked before.
pub(super) fn decode(bytes: &[u8]) -> Result<Decoded, PictureError> {
    let mut decoder = with_header(bytes)?;
    let stored = decoder.input_colorspace().unwrap_or(ColorSpace::YCbCr);
    let (samples, wanted) = match stored {
        ColorSpace::Luma => (Samples::Grey, ColorSpace::Luma),
        ColorSpace::CMYK | ColorSpace::YCCK => (Samples::Cmyk, stored),
        _ => (Samples::Rgb, ColorSpace::RGB),
    };
    decoder.set_options(options().jpeg_set_out_colorspace(wanted));
    let (width, height) = stored_size(&decoder)?;
    let mut pixels = decoder.decode().map_err(fault)?;
    if ends_alike(&pixels, width, wanted) && !scan::has_all_blocks(bytes) {
        return Err(PictureError::Truncated(Format::Jpeg));
    }
    if samples == Samples::Cmyk {
        to_inks(&mut pixels, stored == ColorSpace::YCCK, has_adobe_marker(bytes));
    }
    let raster = Raster { width, height, samples, pixels };
    Ok(Decoded { raster, profile: decoder.icc_profile(), orientation: orientation(&decoder) })
}

/// Whether the last row repeats itself from block to block, as it does where the decoder had no data
/// for it; a border of one colour does too, so that this alone proves nothing.
fn ends_alike(pixels: &[u8], width: u32, colours: ColorSpace) -> bool {
    let each = colours.num_components();
    let row = (width as usize).saturating_mul(each);
    let last = pixels.len().checked_sub(row).and_then(|at| pixels.get(at..)).unwrap_or_default();
    // What borders on the picture's edge is smoothed otherwise; a unit is 32 pixels at most.
    let inner = last.get(32 * each..last.len().saturating_sub(32 * each)).unwrap_or_default();
    inner.iter().zip(inner.iter().skip(32 * each)).all(|(one, other)| one == other)
}

/// Whether the photo is stored in passes over the whole picture, whose decoder needs more memory.
pub(super) fn is_progressive(bytes: &[u8]) -> bool {
    with_header(bytes)
        .ok()
        .and_then(|decoder| decoder.info())
        .is_some_and(|info| format!("{:?}", info.sof).contains("Progressive"))
}

fn options() -> DecoderOptions {
    // Sizes are held to our own limits, whose refusal names the remedy.
    DecoderOptions::default().set_strict_mode(false).set_max_width(usize::MAX).set_max_height(usize::MAX)
}

fn with_header(bytes: &[u8]) -> Result<Decoder<'_>, PictureError> {
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options());
    decoder.decode_headers().map_err(fault)?;
    Ok(decoder)
}

fn stored_size(decoder: &Decoder<'_>) -> Result<(u32, u32), PictureError> {
    let info = decoder
        .info()
        .ok_or_else(|| PictureError::Damaged { format: Format::Jpeg, detail: "it has no size".into() })?;
    Ok((info.width.into(), info.height.into()))
}

fn orientation(decoder: &Decoder<'_>) -> Orientation {
    decoder.exif().and_then(|chunk| Orientation::from_exif_chunk(chunk)).unwrap_or(Orientation::NoTransforms)
}

fn fault(fault: DecodeErrors) -> PictureError {
    match fault {
        DecodeErrors::ExhaustedData | DecodeErrors::IoErrors(ZByteIoError::NotEnoughBytes(..)) => {
            PictureError::Truncated(Format::Jpeg)
        }
        DecodeErrors::Unsupported(scheme) => {
            PictureError::Unsupported { kind: format!("a JPEG of a rare kind ({scheme:?})") }
        }
        other => PictureError::Damaged { format: Format::Jpeg, detail: other.to_string() },
    }
}

/// Brings stored samples to inks, 255 for full ink. Files with an Adobe marker store the
/// complement, and may store the first three as luminance and chrominance (Adobe TN 5116).
fn to_inks(pixels: &mut [u8], is_ycck: bool, is_complement: bool) {
    for pixel in pixels.as_chunks_mut::<4>().0 {
        if is_ycck {
            let [y, cb, cr, _] = pixel.map(f32::from);
            let (cb, cr) = (cb - 128.0, cr - 128.0);
            // ITU-R BT.601, full range, as JFIF gives it; the complement, as TN 5116 gives it.
            let colours = [y + 1.402 * cr, y - 0.344_136 * cb - 0.714_136 * cr, y + 1.772 * cb];
            for (ink, colour) in pixel.iter_mut().zip(colours) {
                *ink = 255 - colour.round().clamp(0.0, 255.0) as u8;
            }
        }
        if is_complement {
            *pixel = pixel.map(|sample| 255 - sample);
        }
    }
}

/// Whether an APP14 segment named `Adobe` stands before the scan.
fn has_adobe_marker(bytes: &[u8]) -> bool {
    let mut at = 2;
    while let Some(&[0xff, marker, high, low]) = bytes.get(at..at + 4) {
        match marker {
            0xda => return false,
            0xee if bytes.get(at + 4..).is_some_and(|segment| segment.starts_with(b"Adobe")) => return true,
            0xff => at += 1,
            _ => at += 2 + usize::from(u16::from_be_bytes([high, low])),
        }
    }
    false
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A chequered picture stored row by row.
    fn in_rows() -> Vec<u8> {
        let pixels: Vec<u8> = (0..160 * 120 * 3).map(|at: usize| (at * 37 % 251) as u8).collect();
        let mut bytes = Vec::new();
        let encoder = jpeg_encoder::Encoder::new(&mut bytes, 90);
        encoder.encode(&pixels, 160, 120, jpeg_encoder::ColorType::Rgb).unwrap();
        bytes
    }

    /// Its first scan cut to a part and closed by an end marker again (ITU-T T.81, B.1.1.3).
    fn closed_after(mut bytes: Vec<u8>, part: usize) -> Vec<u8> {
        let scans = bytes.windows(2).enumerate().filter(|(_, pair)| *pair == [0xff, 0xda]).map(|(at, _)| at);
        let scans: Vec<usize> = scans.collect();
        let (first, end) = (scans[0] + 16, scans.get(1).copied().unwrap_or(bytes.len()));
        bytes.truncate(first + (end - first) * part / 100);
        bytes.extend([0xff, 0xd9]);
        bytes
    }

    #[test]
    fn a_photo_that_ends_before_its_time_is_told_though_its_end_marker_is_there() {
        for part in [5, 10, 50, 80] {
            let decoded = decode(&closed_after(in_rows(), part));
            assert!(matches!(decoded, Err(PictureError::Truncated(Format::Jpeg))), "{part} %");
        }
        assert!(decode(&in_rows()).is_ok());
    }
}
