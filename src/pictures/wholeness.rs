//! Whether a picture's end is there, told from its structure without decoding a pixel.

use super::error::PictureError;
use super::format::Format;

/// Refuses a picture that was cut short, as a broken copy or upload leaves it.
pub(super) fn check(format: Format, bytes: &[u8]) -> Result<(), PictureError> {
    let whole = match format {
        Format::Jpeg => jpeg_ends(bytes),
        Format::Png => png_ends(bytes),
        Format::WebP => webp_ends(bytes),
        Format::Heic => boxes_end(bytes),
        // A TIFF may keep its parts in any order; its decoder notices.
        Format::Tiff => true,
    };
    if whole { Ok(()) } else { Err(PictureError::Truncated(format)) }
}

/// The first scan is followed by the end-of-image marker (ITU-T T.81, B.1.1.3): within coded
/// data no other `FF D9` can stand, and one within a thumbnail comes before the scan.
fn jpeg_ends(bytes: &[u8]) -> bool {
    let mut at = 2;
    while let Some(&[0xff, marker, high, low]) = bytes.get(at..at + 4) {
        if marker == 0xff {
            at += 1;
            continue;
        }
        if marker == 0xda {
            return bytes.get(at..).unwrap_or_default().windows(2).rev().any(|pair| pair == [0xff, 0xd9]);
        }
        at += 2 + usize::from(u16::from_be_bytes([high, low]));
    }
    // Ill-formed headers are for the decoder to name; only a header that runs out is an end missing.
    at + 4 <= bytes.len()
}

/// A length of four bytes, the greatest first, and the four letters after it.
fn head(bytes: &[u8], at: usize) -> Option<(u32, [u8; 4])> {
    let (length, rest) = bytes.get(at..)?.split_first_chunk()?;
    Some((u32::from_be_bytes(*length), *rest.first_chunk()?))
}

/// The chunks run to `IEND` (PNG, 5.3 and 11.2.5).
fn png_ends(bytes: &[u8]) -> bool {
    let mut at = 8;
    while let Some((length, kind)) = head(bytes, at) {
        at = at.saturating_add(12).saturating_add(length as usize);
        if &kind == b"IEND" {
            return at <= bytes.len();
        }
    }
    false
}

/// The outermost chunk, and each within it, fit in the file (RFC 9649, 2.3 and 2.4).
fn webp_ends(bytes: &[u8]) -> bool {
    let length = |at: usize| {
        let word = bytes.get(at..)?.first_chunk()?;
        Some(u32::from_le_bytes(*word) as usize)
    };
    let Some(end) = length(4).map(|declared| declared.saturating_add(8)) else {
        return false;
    };
    // The blank that evens an odd length is left out by some writers.
    if end > bytes.len() + 1 {
        return false;
    }
    let mut at: usize = 12;
    while at < end.min(bytes.len()) {
        let Some(declared) = length(at + 4) else {
            return false;
        };
        at = at.saturating_add(8).saturating_add(declared);
        if at > bytes.len() {
            return false;
        }
        at += declared % 2;
    }
    true
}

/// Every top-level box fits in the file (ISO/IEC 14496-12, 4.2).
fn boxes_end(bytes: &[u8]) -> bool {
    let mut at: usize = 0;
    while let Some((length, _)) = head(bytes, at) {
        let length = match length {
            0 => return true,
            1 => match bytes.get(at + 8..at + 16).and_then(|long| long.try_into().ok()) {
                Some(long) => usize::try_from(u64::from_be_bytes(long)).unwrap_or(usize::MAX),
                None => return false,
            },
            short => short as usize,
        };
        at = at.saturating_add(length.max(8));
    }
    at == bytes.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_end_marker_inside_a_thumbnail_does_not_count() {
        let thumbnail = [0xff, 0xe1, 0, 6, 0xff, 0xd8, 0xff, 0xd9];
        let scan = [0xff, 0xda, 0, 3, 1, 7, 7];
        let cut = [&[0xff, 0xd8][..], &thumbnail, &scan].concat();
        assert_eq!(check(Format::Jpeg, &cut), Err(PictureError::Truncated(Format::Jpeg)));
        let whole = [&cut[..], &[0xff, 0xd9], b"trailing"].concat();
        assert_eq!(check(Format::Jpeg, &whole), Ok(()));
    }

    #[test]
    fn a_png_without_its_last_chunk_is_cut_short() {
        let head = b"\x89PNG\r\n\x1a\n\0\0\0\x01tEXtaCRC.";
        let end = b"\0\0\0\0IEND\xaeB`\x82";
        assert_eq!(check(Format::Png, head), Err(PictureError::Truncated(Format::Png)));
        let whole = [&head[..], end].concat();
        assert_eq!(check(Format::Png, &whole), Ok(()));
        let cut = &whole[..whole.len() - 1];
        assert_eq!(check(Format::Png, cut), Err(PictureError::Truncated(Format::Png)));
    }

    #[test]
    fn a_part_of_a_webp_longer_than_the_file_is_cut_short() {
        let whole = b"RIFF\x10\0\0\0WEBPVP8L\x04\0\0\0body";
        assert_eq!(check(Format::WebP, whole), Ok(()));
        let lying = b"RIFF\x10\0\0\0WEBPVP8L\0\0\0\xffbody";
        assert_eq!(check(Format::WebP, lying), Err(PictureError::Truncated(Format::WebP)));
        assert!(check(Format::WebP, &whole[..whole.len() - 2]).is_err());
    }

    #[test]
    fn a_box_longer_than_the_file_is_cut_short() {
        let whole = b"\0\0\0\x0cftypheic\0\0\0\x09mdatx";
        assert_eq!(check(Format::Heic, whole), Ok(()));
        let cut = &whole[..whole.len() - 1];
        assert_eq!(check(Format::Heic, cut), Err(PictureError::Truncated(Format::Heic)));
    }
}
