//! Typographic forms of plain signs: dashes, hyphens and spaces of every width.

/// Whether a letter parts words: a space of any width, and what joins words without any.
pub fn is_space(letter: char) -> bool {
    letter.is_whitespace() || is_unseen(letter)
}

/// A letter without width: zero-width space and joiners, a byte order mark inside a text.
fn is_unseen(letter: char) -> bool {
    matches!(letter, '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}')
}

/// A dash between the ends of a range: figure, en and em dash, horizontal bar.
pub fn is_dash(letter: char) -> bool {
    matches!(letter, '‒' | '–' | '—' | '―')
}

/// A hyphen as in `34-1/2` or `5-15`, also the one that does not break.
pub fn is_hyphen(letter: char) -> bool {
    matches!(letter, '-' | '‐' | '‑')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spaces_and_dashes_are_known_in_every_width() {
        assert!(" \t\u{a0}\u{2009}\u{202f}\u{200b}\u{2060}\u{feff}".chars().all(is_space));
        assert!("‒–—―".chars().all(is_dash) && "-‐‑".chars().all(is_hyphen));
        assert!(!"−-x".chars().any(is_dash), "a minus is no dash");
    }
}
