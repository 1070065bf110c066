//! Which kind of file some bytes are, told from their first few, never from a name.

use std::fmt;

use super::error::PictureError;

/// The formats of photographs that are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Format {
    /// ITU-T T.81, baseline and progressive.
    Jpeg,
    /// W3C PNG.
    Png,
    /// RFC 9649; of an animation, the first frame.
    WebP,
    /// TIFF 6.0, 8 or 16 bits a channel.
    Tiff,
    /// ISO/IEC 23008-12 with HEVC, as telephones write it.
    Heic,
}

impl fmt::Display for Format {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Format::Jpeg => "JPEG",
            Format::Png => "PNG",
            Format::WebP => "WebP",
            Format::Tiff => "TIFF",
            Format::Heic => "HEIC",
        })
    }
}

/// Bytes that begin a file we know of but don't read.
const UNREAD: [(&[u8], &str); 7] = [
    (b"GIF8", "a GIF"),
    (b"BM", "a BMP"),
    (b"%PDF", "a PDF"),
    (b"8BPS", "a layered editor file (PSD)"),
    (b"\xff\x0a", "a JPEG XL picture"),
    (b"\0\0\0\x0cJXL ", "a JPEG XL picture"),
    (b"\0\0\0\x0cjP  ", "a JPEG 2000 picture"),
];

/// The format of `bytes`, or why they are no photo.
pub(super) fn recognise(bytes: &[u8]) -> Result<Format, PictureError> {
    match bytes {
        [] => Err(PictureError::NotAPicture { seems: "an empty file" }),
        [0xff, 0xd8, 0xff, ..] => Ok(Format::Jpeg),
        [0x89, b'P', b'N', b'G', b'\r', b'\n', 0x1a, b'\n', ..] => Ok(Format::Png),
        [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Ok(Format::WebP),
        [b'I', b'I', 42, 0, ..] | [b'M', b'M', 0, 42, ..] => Ok(Format::Tiff),
        [_, _, _, _, b'f', b't', b'y', b'p', rest @ ..] => media_file(rest),
        _ => Err(unread(bytes)),
    }
}

/// A file of boxes (ISO/IEC 14496-12), told by its major brand, then by the compatible ones.
fn media_file(after_ftyp: &[u8]) -> Result<Format, PictureError> {
    let brands = || after_ftyp.chunks_exact(4).take(16);
    let has = |wanted: &[&[u8]]| brands().any(|brand| wanted.contains(&brand));
    if has(&[b"avif", b"avis"]) {
        return Err(PictureError::Unsupported { kind: "an AVIF picture".into() });
    }
    if has(&[b"heic", b"heix", b"heim", b"heis", b"hevc", b"mif1", b"msf1"]) {
        return Ok(Format::Heic);
    }
    Err(PictureError::Unsupported { kind: "a film or sound recording".into() })
}

fn unread(bytes: &[u8]) -> PictureError {
    if let Some((_, kind)) = UNREAD.iter().find(|(magic, _)| bytes.starts_with(magic)) {
        return PictureError::Unsupported { kind: (*kind).into() };
    }
    let start = bytes.get(..1024).unwrap_or(bytes);
    let seems = match std::str::from_utf8(start) {
        Ok(text) => seems_text(text),
        // Cut within a character: still text.
        Err(fault) if fault.error_len().is_none() => "text",
        Err(_) => "bytes of no known kind",
    };
    if seems == "an SVG drawing" {
        return PictureError::Unsupported { kind: seems.into() };
    }
    PictureError::NotAPicture { seems }
}

fn seems_text(text: &str) -> &'static str {
    if text.contains("<svg") {
        "an SVG drawing"
    } else if text.contains('\0') {
        "bytes of no known kind"
    } else if text.starts_with("version https://git-lfs") {
        "the stand-in that version control keeps for a large file"
    } else {
        "text"
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_format_is_known_by_its_first_bytes() {
        let rows: [(&[u8], Format); 6] = [
            (b"\xff\xd8\xff\xe0", Format::Jpeg),
            (b"\x89PNG\r\n\x1a\n", Format::Png),
            (b"RIFF\x10\0\0\0WEBPVP8 ", Format::WebP),
            (b"II*\0", Format::Tiff),
            (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", Format::Heic),
            (b"\0\0\0\x18ftypmif1\0\0\0\0mif1heic", Format::Heic),
        ];
        for (bytes, format) in rows {
            assert_eq!(recognise(bytes), Ok(format));
        }
    }

    #[test]
    fn whatever_else_is_named_for_what_it_is() {
        let rows: [(&[u8], &str); 7] = [
            (b"", "not a picture, but an empty file"),
            (b"Pulls: oak, 5 in", "not a picture, but text"),
            (b"\x01\xfe\x99\x88", "not a picture, but bytes of no known kind"),
            (b"GIF89a", "a GIF, which is not read here"),
            (b"<svg xmlns='x'/>", "an SVG drawing, which is not read here"),
            (b"\0\0\0\x18ftypavif\0\0\0\0mif1", "an AVIF picture, which is not read here"),
            (b"\0\0\0\x18ftypqt  \0\0\0\0", "a film or sound recording, which is not read here"),
        ];
        for (bytes, message) in rows {
            assert_eq!(recognise(bytes).unwrap_err().to_string(), message);
        }
    }
}
