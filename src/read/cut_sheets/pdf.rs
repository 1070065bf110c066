//! Whether a file is a PDF that anybody can open: by its first and last lines, and by the names that stand in it.
//!
//! Nothing of it is drawn or run. Names are looked for where they stand in the clear and in streams of objects
//! that are deflated; a name that is hidden otherwise is not found.

use std::io::Read;

use flate2::read::ZlibDecoder;
use memchr::{memchr_iter, memmem};

use crate::units::{Fault, Phrase, phrase};

/// How a PDF begins (ISO 32000-1, 7.5.2; from memory).
const HEADER: &[u8] = b"%PDF-";
/// How it ends (ISO 32000-1, 7.5.5; from memory).
const END: &[u8] = b"%%EOF";
/// What names the place of its table before that.
const START: &[u8] = b"startxref";
/// So many of the last bytes may hold its end: some programs write lines behind it.
const LAST: usize = 1024;
/// So much of a stream of objects is looked through.
const MOST_OF_OBJECTS: u64 = 8 * 1024 * 1024;
/// Of all streams of objects together.
const MOST_IN_ALL: u64 = 64 * 1024 * 1024;

/// Why a file is no PDF for everybody.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PdfFault {
    /// It does not begin as one.
    NoPdf,
    /// It begins as one, and ends before its end.
    Cut,
    /// It is locked.
    Locked,
    /// It holds what a reader would run.
    Scripted,
}

impl Fault for PdfFault {
    fn message(&self) -> Phrase {
        match self {
            Self::NoPdf => phrase!("it is no PDF, whatever its name says"),
            Self::Cut => phrase!("its end is missing"),
            Self::Locked => phrase!("it is encrypted, and may ask for a password on site"),
            Self::Scripted => phrase!("it holds a script, or starts a program"),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            Self::NoPdf => phrase!("save the maker's sheet as a PDF, and name that"),
            Self::Cut => phrase!("fetch it again from the maker: it was not loaded whole"),
            Self::Locked => phrase!("open it, and print it into a new PDF without a password"),
            Self::Scripted => phrase!("open it, and print it into a new PDF, which holds pages alone"),
        }
    }
}

/// Looks through the bytes of a file.
pub fn inspect(bytes: &[u8]) -> Result<(), PdfFault> {
    if !bytes.starts_with(HEADER) {
        return Err(PdfFault::NoPdf);
    }
    let last = bytes.get(bytes.len().saturating_sub(LAST)..).unwrap_or(bytes);
    let is_ended = memmem::rfind(last, END).is_some_and(|end| last.get(..end).is_some_and(|before| has(before, START)));
    if !is_ended {
        return Err(PdfFault::Cut);
    }
    let mut budget = MOST_IN_ALL;
    let mut rest = bytes;
    while let Some((clear, after)) = before_stream(rest) {
        named(clear)?;
        let length = memmem::find(after, b"endstream").unwrap_or(after.len());
        let (data, behind) = after.split_at_checked(length).unwrap_or((after, &[]));
        if is_of_objects(clear) {
            let mut objects = Vec::new();
            // What is cut or damaged is looked through as far as it goes.
            let most = MOST_OF_OBJECTS.min(budget);
            _ = ZlibDecoder::new(data).take(most).read_to_end(&mut objects);
            budget -= most.min(objects.len() as u64);
            named(&objects)?;
        }
        rest = behind;
    }
    named(rest)
}

fn has(bytes: &[u8], wanted: &[u8]) -> bool {
    memmem::find(bytes, wanted).is_some()
}

/// What stands before the next stream, and from its first byte on.
fn before_stream(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    memmem::find_iter(bytes, b"stream").find_map(|at| {
        let (clear, after) = bytes.split_at_checked(at)?;
        let data = after.strip_prefix(b"stream\r\n").or_else(|| after.strip_prefix(b"stream\n"))?;
        clear.trim_ascii_end().ends_with(b">>").then_some((clear, data))
    })
}

/// Whether the dictionary that stands last is one of a deflated stream of objects.
fn is_of_objects(clear: &[u8]) -> bool {
    let from = memmem::rfind(clear, b" obj").unwrap_or(0);
    let own = clear.get(from..).unwrap_or(clear);
    has(own, b"/ObjStm") && has(own, b"/FlateDecode")
}

/// The names that tell of a lock, and of what a reader would run (ISO 32000-1, 7.6 and 12.6.4; from memory).
const TELLING: [(&[u8], PdfFault); 4] = [
    (b"Encrypt", PdfFault::Locked),
    (b"JavaScript", PdfFault::Scripted),
    (b"JS", PdfFault::Scripted),
    (b"Launch", PdfFault::Scripted),
];

/// Finds the names that tell of a lock or of a script.
fn named(bytes: &[u8]) -> Result<(), PdfFault> {
    for at in memchr_iter(b'/', bytes) {
        let rest = bytes.get(at + 1..).unwrap_or_default();
        let name = name(rest);
        if let Some((_, fault)) = TELLING.iter().find(|(telling, _)| *telling == name) {
            return Err(*fault);
        }
    }
    Ok(())
}

/// The longest name that is looked for, with each of its letters written as `#4a`.
const LONGEST: usize = 3 * 10 + 1;

/// A name up to where it ends, its letters that are written as `#4a` read.
fn name(bytes: &[u8]) -> Vec<u8> {
    let ends = |byte: &u8| byte.is_ascii_whitespace() || *byte == 0 || b"()<>[]{}/%".contains(byte);
    let bytes = bytes.get(..LONGEST.min(bytes.len())).unwrap_or_default();
    let length = bytes.iter().position(ends).unwrap_or(bytes.len());
    let mut letters = bytes.get(..length).unwrap_or_default();
    let mut read = Vec::with_capacity(length);
    while let [first, rest @ ..] = letters {
        let hex = |byte: &u8| char::from(*byte).to_digit(16).and_then(|digit| u8::try_from(digit).ok());
        letters = rest;
        match (first, rest) {
            (b'#', [high, low, after @ ..]) if hex(high).is_some() && hex(low).is_some() => {
                read.push(hex(high).unwrap_or(0) * 16 + hex(low).unwrap_or(0));
                letters = after;
            }
            _ => read.push(*first),
        }
    }
    read
}

#[cfg(test)]
mod tests {
    use std::io::Write;

    use super::*;

    /// A PDF of one page, with some objects besides and something in its trailer.
    fn pdf(objects: &[u8], trailer: &str) -> Vec<u8> {
        let mut bytes = b"%PDF-1.7\n1 0 obj\n<</Type /Catalog /Pages 2 0 R>>\nendobj\n".to_vec();
        bytes.extend(objects);
        bytes.extend(format!("trailer\n<</Root 1 0 R /Size 4{trailer}>>\nstartxref\n9\n%%EOF\n").bytes());
        bytes
    }

    /// A stream of objects, deflated.
    fn packed(objects: &str) -> Vec<u8> {
        let mut packed = flate2::write::ZlibEncoder::new(Vec::new(), flate2::Compression::default());
        packed.write_all(objects.as_bytes()).unwrap();
        let data = packed.finish().unwrap();
        let mut bytes = format!("3 0 obj\n<</Type /ObjStm /Filter /FlateDecode /Length {}>>\nstream\r\n", data.len());
        let mut all = std::mem::take(&mut bytes).into_bytes();
        all.extend(data);
        all.extend(b"\nendstream\nendobj\n");
        all
    }

    #[test]
    fn a_plain_pdf_can_be_passed_on() {
        assert_eq!(inspect(&pdf(b"", "")), Ok(()));
        assert_eq!(inspect(&pdf(&packed("<</Type /Page /Contents 5 0 R>>"), "")), Ok(()));
    }

    #[test]
    fn a_file_is_a_pdf_by_what_it_holds_and_not_by_its_name() {
        for other in ["", "PDF", "<!doctype html><p>%PDF-1.7", "\u{ff}\u{d8}"] {
            assert_eq!(inspect(other.as_bytes()), Err(PdfFault::NoPdf), "{other}");
        }
        let whole = pdf(b"", "");
        assert_eq!(inspect(&whole[..whole.len() - 12]), Err(PdfFault::Cut));
        assert_eq!(inspect(b"%PDF-1.7\n%%EOF"), Err(PdfFault::Cut), "names no table");
        let behind = [whole.as_slice(), &[b'\n'; 600]].concat();
        assert_eq!(inspect(&behind), Ok(()), "lines behind its end");
    }

    #[test]
    fn what_is_locked_or_scripted_is_told_wherever_the_name_stands() {
        assert_eq!(inspect(&pdf(b"", " /Encrypt 4 0 R")), Err(PdfFault::Locked));
        assert_eq!(inspect(&pdf(b"", "/Encrypt<</Filter /Standard>>")), Err(PdfFault::Locked));
        assert_eq!(inspect(&pdf(b"", " /EncryptMetadata false")), Ok(()));
        let runs = ["<</S /JavaScript /JS (app.alert(1))>>", "<</S/J#61vaScript>>", "<</S/Launch/F(x)>>"];
        for action in runs {
            let object = format!("4 0 obj\n{action}\nendobj\n");
            assert_eq!(inspect(&pdf(object.as_bytes(), "")), Err(PdfFault::Scripted), "{action}");
            assert_eq!(inspect(&pdf(&packed(action), "")), Err(PdfFault::Scripted), "packed: {action}");
        }
    }

    /// Letters of a picture's or a page's own data are no names.
    #[test]
    fn what_stands_in_a_stream_of_a_page_is_no_name() {
        let page = b"5 0 obj\n<</Length 20>>\nstream\n(see /JS) Tj /Encrypt \nendstream\nendobj\n";
        assert_eq!(inspect(&pdf(page, "")), Ok(()));
    }

    #[test]
    fn no_bytes_make_it_fail() {
        let mut bytes = pdf(&packed("<</Type /Page>>"), "");
        for at in 0..bytes.len() {
            let was = bytes[at];
            for spoilt in [0, b'/', b'#', b'>', 0xff] {
                bytes[at] = spoilt;
                _ = inspect(&bytes);
            }
            bytes[at] = was;
            _ = inspect(&bytes[..at]);
        }
    }
}
