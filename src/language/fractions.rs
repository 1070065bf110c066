//! Where fractions stand in a text, so that each can be set as one.

/// What may stand below the line: parts of an inch, halves to sixty-fourths, and thirds.
const PARTS: [&str; 7] = ["2", "3", "4", "8", "16", "32", "64"];

/// The text before the next fraction, the fraction, and what comes after it.
pub fn next_fraction(text: &str) -> Option<(&str, &str, &str)> {
    text.match_indices('/').find_map(|(bar, _)| {
        let (above, below) = (text.get(..bar)?, text.get(bar + 1..)?);
        let digit = |letter: char| letter.is_ascii_digit();
        let over = above.get(above.trim_end_matches(digit).len()..)?;
        let under = below.get(..below.len() - below.trim_start_matches(digit).len())?;
        let (before, after) = (above.get(..above.len() - over.len())?, below.get(under.len()..)?);
        let alone = !before
            .ends_with(|end: char| end.is_alphanumeric() || matches!(end, '/' | '.' | ',' | '-' | '#' | '&'))
            && !after.starts_with(|next: char| next.is_alphanumeric() || matches!(next, '/' | '\u{2044}'));
        let is_part = over.parse::<u32>().ok()? < under.parse::<u32>().ok()? && !over.starts_with('0');
        if !(alone && is_part && PARTS.contains(&under)) {
            return None;
        }
        Some((before, text.get(before.len()..text.len() - after.len())?, after))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fraction_is_told_from_a_date_a_model_and_a_ratio() {
        assert_eq!(next_fraction("water 1/4\" cold"), Some(("water ", "1/4", "\" cold")));
        assert_eq!(next_fraction("30 1/16 and 1/2"), Some(("30 ", "1/16", " and 1/2")));
        for text in ["on 11/12/2026", "K-1/2", "3/5", "8/2", "km/h", "1/2x", "0/2"] {
            assert_eq!(next_fraction(text), None, "{text}");
        }
    }
}
