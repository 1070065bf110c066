//! A photograph that is handed over with what was said of a delivery: how large it may be, and that it is a picture
//! and nothing else.

use std::fmt;

/// The most photographs that go with one delivery.
pub const MOST_PHOTOGRAPHS: usize = 12;
/// The largest of them, in bytes.
pub const MOST_EACH: usize = 256 * 1024;
/// The most that all of one delivery take together, in bytes.
pub const MOST_TOGETHER: usize = 2 * 1024 * 1024;
/// The longer side of one, in pixels.
pub const LONGEST_SIDE: u16 = 1600;

/// Why something is not taken as a photograph.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotographFault {
    /// It is not handed over as a photograph is.
    Form,
    /// It is no JPEG as a page makes it.
    NotJpeg,
    /// It ends before its end, or goes on behind it.
    End,
    /// It holds more than its picture.
    More,
    /// Its sides.
    Sides,
    /// Its bytes.
    Large,
    /// There are more than go with one delivery.
    Many,
    /// All together are larger.
    Together,
    /// Its digest or its size is not what is said of it, or nothing is said of it.
    Another,
    /// It is said to be there, and is not.
    Missing,
}

impl fmt::Display for PhotographFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Form => f.write_str("it is not written in base64 under its digest"),
            Self::NotJpeg => f.write_str("it is no JPEG of the plain kind"),
            Self::End => f.write_str("it is cut short, or something stands behind its end"),
            Self::More => f.write_str("it holds more than its picture, such as where it was taken"),
            Self::Sides => write!(f, "its longer side has more than {LONGEST_SIDE} pixels"),
            Self::Large => write!(f, "it is larger than {} KiB", MOST_EACH / 1024),
            Self::Many => write!(f, "more than {MOST_PHOTOGRAPHS} are with one delivery"),
            Self::Together => write!(f, "all together are larger than {} MiB", MOST_TOGETHER / 1024 / 1024),
            Self::Another => f.write_str("it is not the one that the delivery names"),
            Self::Missing => f.write_str("it is named and not there"),
        }
    }
}

/// Looks at the parts of a JPEG from its beginning to its end (ITU-T T.81, annex B), without decoding a pixel.
///
/// # Errors
/// When it is larger than it may be, is not whole, or holds any part that a picture does not need.
pub fn check(bytes: &[u8]) -> Result<(), PhotographFault> {
    if bytes.len() > MOST_EACH {
        return Err(PhotographFault::Large);
    }
    if !bytes.starts_with(&[0xff, 0xd8]) {
        return Err(PhotographFault::NotJpeg);
    }
    let (mut at, mut is_sized, mut is_drawn) = (2, false, false);
    loop {
        let Some(&[0xff, marker]) = bytes.get(at..at + 2) else { return Err(PhotographFault::End) };
        if marker == 0xd9 {
            let ends = at + 2 == bytes.len() && is_sized && is_drawn;
            return if ends { Ok(()) } else { Err(PhotographFault::End) };
        }
        let length = bytes.get(at + 2..at + 4).and_then(|length| length.try_into().ok()).map(u16::from_be_bytes);
        let end = at + 2 + usize::from(length.ok_or(PhotographFault::End)?);
        let part = bytes.get(at + 4..end).ok_or(PhotographFault::End)?;
        match marker {
            // Tables of quantities and codes, and how often a scan restarts.
            0xdb | 0xc4 | 0xdd => {}
            0xc0..=0xc2 => {
                frame(part)?;
                is_sized = true;
            }
            0xda => is_drawn = true,
            0xe0 if is_plain_head(part) => {}
            // How its colours are stored.
            0xee if part.len() == 12 && part.starts_with(b"Adobe") => {}
            0xe0..=0xef | 0xfe => return Err(PhotographFault::More),
            _ => return Err(PhotographFault::NotJpeg),
        }
        at = if marker == 0xda { behind_coded(bytes, end) } else { end };
    }
}

/// The head of a JFIF file without a thumbnail.
fn is_plain_head(part: &[u8]) -> bool {
    part.len() == 14 && part.starts_with(b"JFIF\0") && part.ends_with(&[0, 0])
}

/// Eight bits, grey or three colours, and sides within the limit.
fn frame(part: &[u8]) -> Result<(), PhotographFault> {
    let &[8, high, low, wide, narrow, 1 | 3, ..] = part else { return Err(PhotographFault::NotJpeg) };
    let sides = [u16::from_be_bytes([high, low]), u16::from_be_bytes([wide, narrow])];
    let fits = sides.iter().all(|side| (1..=LONGEST_SIDE).contains(side));
    if fits { Ok(()) } else { Err(PhotographFault::Sides) }
}

/// The first marker behind coded data that is no restart.
fn behind_coded(bytes: &[u8], from: usize) -> usize {
    let pairs = bytes.get(from..).unwrap_or_default().windows(2);
    let is_marker = |pair: &[u8]| matches!(pair, [0xff, code] if !matches!(code, 0 | 0xd0..=0xd7));
    pairs.enumerate().find(|(_, pair)| is_marker(pair)).map_or(bytes.len(), |(at, _)| from + at)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn part(marker: u8, inside: &[u8]) -> Vec<u8> {
        let length = u16::try_from(inside.len() + 2).unwrap().to_be_bytes();
        [&[0xff, marker], &length[..], inside].concat()
    }

    /// A picture of so many pixels, with one more part in it.
    fn jpeg(high: u16, wide: u16, more: &[u8]) -> Vec<u8> {
        let [high, wide] = [high.to_be_bytes(), wide.to_be_bytes()];
        let frame = part(0xc0, &[8, high[0], high[1], wide[0], wide[1], 1, 1, 0x11, 0]);
        let scan = part(0xda, &[1, 1, 0, 0, 63, 0]);
        let coded = [0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56];
        [&[0xff, 0xd8], more, &frame, &scan, &coded, &[0xff, 0xd9]].concat()
    }

    /// Source: ITU-T T.81, B.1.1 (markers), B.2.2 (frame), B.2.3 (scan); JFIF 1.02, the head's fields. From memory.
    #[test]
    fn a_picture_and_nothing_else_is_taken() {
        let head = part(0xe0, b"JFIF\0\x01\x02\x01\x00H\x00H\x00\x00");
        assert_eq!(check(&jpeg(1200, 1600, &head)), Ok(()));
        assert_eq!(check(&jpeg(1, 1, &[])), Ok(()));
        let rows: [(&str, Vec<u8>, PhotographFault); 9] = [
            ("where it was taken", part(0xe1, b"Exif\0\0MM"), PhotographFault::More),
            ("words", part(0xfe, b"a note"), PhotographFault::More),
            ("a thumbnail", part(0xe0, b"JFIF\0\x01\x02\x01\x00H\x00H\x01\x01abc"), PhotographFault::More),
            ("a profile", part(0xe2, b"ICC_PROFILE\0"), PhotographFault::More),
            ("no part", vec![0, 0], PhotographFault::End),
            ("a part that is longer than the file", vec![0xff, 0xdb, 0xff, 0xff], PhotographFault::End),
            ("an end before its time", vec![0xff, 0xd9], PhotographFault::End),
            ("another beginning", vec![0xff, 0xd8, 0, 2], PhotographFault::NotJpeg),
            ("sixteen bits", part(0xc1, &[16, 0, 1, 0, 1, 1]), PhotographFault::NotJpeg),
        ];
        for (what, more, fault) in rows {
            assert_eq!(check(&jpeg(9, 9, &more)), Err(fault), "{what}");
        }
    }

    #[test]
    fn what_is_larger_cut_or_goes_on_is_refused() {
        assert_eq!(check(&jpeg(1601, 4, &[])), Err(PhotographFault::Sides));
        assert_eq!(check(&jpeg(4, 0, &[])), Err(PhotographFault::Sides));
        let whole = jpeg(9, 9, &[]);
        for end in 0..whole.len() {
            assert!(check(&whole[..end]).is_err(), "cut at {end}");
        }
        assert_eq!(check(&[&whole[..], b"PK"].concat()), Err(PhotographFault::End));
        assert_eq!(check(&vec![0xff; MOST_EACH + 1]), Err(PhotographFault::Large));
        assert_eq!(check(b"\x89PNG\r\n\x1a\n"), Err(PhotographFault::NotJpeg));
    }
}
