//! Names of people, which are one however they are stored and typed.

use unicode_normalization::UnicodeNormalization;

/// A name as it is compared: accents composed, runs of spaces one, and apostrophes straight.
pub fn plain_name(name: &str) -> String {
    let composed: String = name.nfc().map(|letter| if is_apostrophe(letter) { '\'' } else { letter }).collect();
    composed.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn is_apostrophe(letter: char) -> bool {
    matches!(letter, '\u{2019}' | '\u{2018}' | '\u{02bc}' | '\u{00b4}' | '\u{0060}')
}

/// Whether two names are one.
pub fn is_same_name(one: &str, other: &str) -> bool {
    one == other || plain_name(one) == plain_name(other)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: Unicode Standard Annex 15, canonical equivalence: U+0045 U+0301 and U+00C9 are one letter.
    #[test]
    fn a_name_is_one_however_it_is_stored_and_spaced() {
        for (one, other) in [
            ("\u{00c9}tienne Br\u{00e6}nd", "E\u{0301}tienne Br\u{00e6}nd"),
            ("Oonagh O\u{2019}Tarrow", "Oonagh O'Tarrow"),
            (" Odile   Quillarn", "Odile\u{00a0}Quillarn "),
        ] {
            assert!(is_same_name(one, other), "{one} {other}");
        }
        for (one, other) in [("Etienne", "\u{00c9}tienne"), ("Ada Lint", "AdaLint"), ("Ada", "Ida")] {
            assert!(!is_same_name(one, other), "{one} {other}");
        }
    }
}
