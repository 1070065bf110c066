//! Which names every kind of disk takes: a book is sent, copied and published, from one kind to another.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

use crate::units::{Phrase, Piece, Say, Wrote, phrase};

/// The longest name of a file or folder in a book, in bytes: what is published adds to it.
pub const LONGEST_NAME: usize = 200;

/// Why some disk refuses a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NameFault {
    /// It stands for a device on some systems, whatever ending it has.
    Device,
    /// A sign that some disks refuse, or one that nobody sees.
    Sign(char),
    /// A full stop or a space at its end, which some systems drop.
    End,
    /// More bytes than some disks hold.
    Long,
}

impl crate::units::Told for NameFault {}

impl Say for NameFault {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        let said = match self {
            Self::Device => phrase!("is the name of a device on some systems"),
            Self::Sign(sign) if sign.is_control() => phrase!("has the control character {}", Wrote(&number_of(*sign))),
            Self::Sign(sign) => phrase!("has `{sign}`, which some disks refuse", sign.to_string()),
            Self::End => phrase!("ends with a full stop or a space, which some systems drop"),
            Self::Long => phrase!("is longer than {} bytes", LONGEST_NAME),
        };
        said.add_to(pieces);
    }
}

/// A sign by its number in Unicode.
fn number_of(sign: char) -> String {
    format!("U+{:04X}", u32::from(sign))
}

/// What some disk has against the name of a file or folder: FAT, exFAT and NTFS, as Microsoft's page on naming
/// files tells their rules (from memory).
pub fn fault(name: &str) -> Option<NameFault> {
    let stem = name.split('.').next().unwrap_or(name).trim_end().to_ascii_lowercase();
    let numbered = stem.strip_prefix("com").or_else(|| stem.strip_prefix("lpt"));
    let is_port =
        numbered.is_some_and(|rest| matches!(rest, "¹" | "²" | "³") || matches!(rest.as_bytes(), [b'0'..=b'9']));
    let sign = name.chars().find(|letter| letter.is_control() || r#"\<>:"|?*"#.contains(*letter));
    if matches!(stem.as_str(), "con" | "prn" | "aux" | "nul") || is_port {
        Some(NameFault::Device)
    } else if let Some(sign) = sign {
        Some(NameFault::Sign(sign))
    } else if name.ends_with(['.', ' ']) {
        Some(NameFault::End)
    } else {
        (name.len() > LONGEST_NAME).then_some(NameFault::Long)
    }
}

/// The form under which two names are one on some disk: in lower case, and composed. Some disks ignore case, and
/// some compose accents or take them apart (Unicode Standard Annex #15: forms NFC and NFD).
pub fn folded(name: &str) -> String {
    if name.is_ascii() {
        return name.to_ascii_lowercase();
    }
    let composed: String = name.nfc().collect();
    composed.to_lowercase().nfc().collect()
}

/// How two names that are one on some disk differ, in words.
pub fn difference(one: &str, other: &str) -> Phrase {
    if one.to_lowercase() == other.to_lowercase() {
        return "by capital letters alone".into();
    }
    // They look alike: only the numbers of their signs tell them apart.
    let same = one.chars().zip(other.chars()).take_while(|(one, other)| one == other).count();
    let sign = |name: &str| {
        let mut rest = name.chars().skip(same);
        let first = rest.next();
        let signs = first.into_iter().chain(rest.take_while(|sign| is_combining_mark(*sign)));
        let signs: Vec<String> = signs.map(number_of).collect();
        if signs.is_empty() { "nothing".into() } else { signs.join(" ") }
    };
    phrase!("in how an accent is stored: {} here, {} there", Wrote(&sign(one)), Wrote(&sign(other)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published source: Unicode Standard Annex #15, figures 3 and 4 (canonical composition).
    #[test]
    fn an_accent_makes_no_other_name_however_it_is_stored() {
        for (one, other) in
            [("\u{e9}", "e\u{301}"), ("\u{c5}", "\u{212b}"), ("\u{1e69}", "s\u{307}\u{323}"), ("\u{c9}", "e\u{301}")]
        {
            assert_eq!(folded(one), folded(other), "{one} {other}");
        }
        assert_ne!(folded("e"), folded("\u{e9}"));
        assert_eq!(
            difference("caf\u{e9}", "cafe\u{301}").text(),
            "in how an accent is stored: U+00E9 here, U+0065 U+0301 there"
        );
        assert_eq!(difference("Tap", "tap").text(), "by capital letters alone");
    }

    #[test]
    fn names_that_some_disk_refuses_are_known() {
        for name in ["aux", "Con.yaml", "nul.tar.gz", "COM1", "lpt9.jpg", "aux .yaml"] {
            assert_eq!(fault(name), Some(NameFault::Device), "{name}");
        }
        for (name, sign) in [("a:b", ':'), ("what?.jpg", '?'), ("a\u{1b}b", '\u{1b}'), ("a\\b", '\\')] {
            assert_eq!(fault(name), Some(NameFault::Sign(sign)), "{name}");
        }
        assert_eq!((fault("tap."), fault("tap ")), (Some(NameFault::End), Some(NameFault::End)));
        assert_eq!((fault(&"a".repeat(200)), fault(&"a".repeat(201))), (None, Some(NameFault::Long)));
        for name in ["auxiliary", "console", "com", "com10", "lpt", "küche.yaml", "9\" tile", ".hidden"] {
            assert_eq!(fault(name).filter(|fault| *fault != NameFault::Sign('"')), None, "{name}");
        }
    }
}
