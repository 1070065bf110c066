//! Whether a picture's end is there, told from its structure without decoding a pixel.

use std::collections::BTreeMap;

use super::error::PictureError;
use super::format::Format;

/// Refuses a picture that was cut short, as a broken copy or upload leaves it.
pub(super) fn check(format: Format, bytes: &[u8]) -> Result<(), PictureError> {
    let whole = match format {
        Format::Jpeg => jpeg_ends(bytes) && passes_end(bytes),
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

/// Whether a JPEG that is stored in passes has them all: each coefficient of each colour down to its
/// last bit (ITU-T T.81, G.1.1.1). A copy that was cut short and closed again by an end marker lacks
/// the later ones. True for one that is not stored so, or whose parts can't be followed.
fn passes_end(bytes: &[u8]) -> bool {
    let mut at = 2;
    let mut missing: BTreeMap<u8, [bool; 64]> = BTreeMap::new();
    while let Some(&[0xff, marker]) = bytes.get(at..at + 2) {
        match marker {
            0xff => at += 1,
            0xd9 => return missing.values().flatten().all(|missing| !missing),
            0x01 | 0xd0..=0xd7 => at += 2,
            _ => {
                let Some(&[high, low]) = bytes.get(at + 2..at + 4) else { return true };
                let end = at + 2 + usize::from(u16::from_be_bytes([high, low]));
                let segment = bytes.get(at + 4..end).unwrap_or_default();
                match marker {
                    0xc2 => missing = components(segment),
                    0xc0..=0xc3 | 0xc5..=0xc7 | 0xc9..=0xcb | 0xcd..=0xcf => return true,
                    0xda => pass(segment, &mut missing),
                    _ => {}
                }
                at = if marker == 0xda { next_marker(bytes, end) } else { end };
            }
        }
    }
    true
}

/// The colours of a frame, by their ids, with all that is still to come of each.
fn components(frame: &[u8]) -> BTreeMap<u8, [bool; 64]> {
    let each = frame.get(6..).unwrap_or_default().chunks_exact(3);
    each.filter_map(|component| Some((*component.first()?, [true; 64]))).collect()
}

/// Takes off what a pass brings down to the last bit.
fn pass(scan: &[u8], missing: &mut BTreeMap<u8, [bool; 64]>) {
    let Some((&count, rest)) = scan.split_first() else { return };
    let (ids, tail) = rest.split_at(rest.len().min(2 * usize::from(count)));
    let &[from, to, bits] = tail else { return };
    if bits & 0x0f != 0 {
        return;
    }
    for id in ids.iter().step_by(2) {
        let here = missing.get_mut(id).and_then(|all| all.get_mut(usize::from(from)..=usize::from(to.min(63))));
        here.unwrap_or_default().fill(false);
    }
}

/// The first marker after coded data, restarts left out.
fn next_marker(bytes: &[u8], from: usize) -> usize {
    let coded = bytes.get(from..).unwrap_or_default();
    let is_marker = |at: &usize| coded.get(at + 1).is_some_and(|code| !matches!(code, 0 | 0xd0..=0xd7 | 0xff));
    // Every byte of a photograph is passed over here, at each review.
    from + memchr::memchr_iter(0xff, coded).find(is_marker).unwrap_or(coded.len())
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

    /// Source: ITU-T T.81, G.1.1.1; a photo of the example's, each of its passes left off in turn.
    #[test]
    fn a_photo_stored_in_passes_that_lacks_one_is_cut_short() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../../example-project/rooms/bath/photos/toilet.jpg");
        let whole = std::fs::read(path).unwrap();
        assert_eq!(check(Format::Jpeg, &whole), Ok(()));
        let scans: Vec<usize> =
            whole.windows(2).enumerate().filter(|(_, pair)| *pair == [0xff, 0xda]).map(|(at, _)| at).collect();
        assert!(scans.len() > 5);
        for scan in &scans[1..] {
            let closed = [&whole[..*scan], &[0xff, 0xd9]].concat();
            assert_eq!(check(Format::Jpeg, &closed), Err(PictureError::Truncated(Format::Jpeg)));
        }
        let half_of_the_first = [&whole[..(scans[0] + scans[1]) / 2], &[0xff, 0xd9]].concat();
        assert_eq!(check(Format::Jpeg, &half_of_the_first), Err(PictureError::Truncated(Format::Jpeg)));
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
