//! What reaches the terminal: names and texts of others can neither steer it nor turn the reading order.

use std::fmt::Write;

/// Whether a letter would steer a terminal, or turn or hide what stands around it: controls (ISO 6429), direction
/// marks (UAX #9), separators of lines, and letters that are never seen (tags and annotations).
fn steers(letter: char) -> bool {
    let breaks_or_tabs = matches!(letter, '\n' | '\t');
    (letter.is_control() && !breaks_or_tabs)
        || matches!(
            letter,
            '\u{61c}'
                | '\u{200e}'
                | '\u{200f}'
                | '\u{2028}'..='\u{202e}'
                | '\u{2066}'..='\u{206f}'
                | '\u{fff9}'..='\u{fffb}'
                | '\u{e0000}'..='\u{e007f}'
        )
}

/// A text with each such letter written out: `<U+202E>`.
pub fn plain(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        push(letter, &mut shown);
    }
    shown
}

/// A text that stands in one line: breaks and tabs are written out too, so that a name can't end the line.
pub fn line(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\n' | '\t' => write_out(letter, &mut shown),
            other => push(other, &mut shown),
        }
    }
    shown
}

/// Adds a line to a text, whatever stands in what it tells.
macro_rules! add_line {
    ($text:expr, $($told:tt)*) => {{
        $text += &$crate::cli::report::shown::line(&format!($($told)*));
        $text += "\n";
    }};
}
pub(crate) use add_line;

/// The same, but for the colours of our own reports, whose texts went through [`plain`] before.
pub fn styled(text: &str) -> String {
    let mut parts = text.split('\u{1b}');
    let mut shown = plain(parts.next().unwrap_or_default());
    for part in parts {
        let colour = part.strip_prefix('[').and_then(|rest| rest.split_once('m'));
        match colour.filter(|(codes, _)| codes.bytes().all(|code| code.is_ascii_digit() || code == b';')) {
            Some((codes, rest)) => {
                let _ = write!(shown, "\u{1b}[{codes}m");
                shown += &plain(rest);
            }
            None => {
                push('\u{1b}', &mut shown);
                shown += &plain(part);
            }
        }
    }
    shown
}

/// JSON in which such letters stand as escapes (RFC 8259, section 7): it says the same.
pub fn json(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        if steers(letter) {
            for unit in letter.encode_utf16(&mut [0; 2]) {
                let _ = write!(shown, "\\u{unit:04x}");
            }
        } else {
            shown.push(letter);
        }
    }
    shown
}

fn push(letter: char, shown: &mut String) {
    if steers(letter) {
        write_out(letter, shown);
    } else {
        shown.push(letter);
    }
}

fn write_out(letter: char, shown: &mut String) {
    let _ = write!(shown, "<U+{:04X}>", u32::from(letter));
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_steers_a_terminal_is_written_out() {
        assert_eq!(plain("a\u{1b}[8mb\u{202e}c\r\u{9b}2J\n\td"), "a<U+001B>[8mb<U+202E>c<U+000D><U+009B>2J\n\td");
        assert_eq!(plain("½″ – ≈ 漢 é"), "½″ – ≈ 漢 é");
        assert_eq!(line("a\nb\t½\r"), "a<U+000A>b<U+0009>½<U+000D>");
    }

    #[test]
    fn colours_alone_are_let_through_in_our_own_reports() {
        assert_eq!(
            styled("\u{1b}[1;31mstop\u{1b}[0m: a\u{1b}]0;b\u{7}"),
            "\u{1b}[1;31mstop\u{1b}[0m: a<U+001B>]0;b<U+0007>"
        );
    }

    #[test]
    fn json_says_the_same_in_escapes() {
        let value = serde_json::json!({"name": "a\u{1b}\u{202e}\u{9b}\u{e0041}\u{7f}b"});
        let text = json(&serde_json::to_string_pretty(&value).unwrap());
        assert!(!text.chars().any(steers), "{text:?}");
        assert_eq!(serde_json::from_str::<serde_json::Value>(&text).unwrap(), value);
    }

    proptest! {
        #[test]
        fn nothing_that_steers_is_left(text in any::<String>()) {
            prop_assert!(!plain(&text).chars().any(steers));
            prop_assert!(!json(&text).chars().any(steers));
        }
    }
}
