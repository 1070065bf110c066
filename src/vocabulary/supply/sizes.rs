//! Sizes of a waste pipe that their words write without a unit: by their thread, or as one of two.

use crate::units::{self, Length, find_unit};

/// Between two sizes, of which either will do.
const OR: [&str; 4] = [" or ", " o ", " oder ", " ou "];
/// No waste pipe that goes by a thread is wider.
const WIDEST_THREAD: Length = Length::from_inches(4);

/// A text in small letters in which each size has its unit: `G 1 1/4` is `1 1/4" bsp`, `40 o 50 mm` is `40 mm o 50 mm`.
pub(super) fn with_units(lower: &str) -> String {
    with_threads(&OR.iter().fold(with_pairs(lower), |text, or| each_of_two(&text, or)))
}

/// Letters of which a number is made.
fn is_of_a_number(letter: char) -> bool {
    letter.is_ascii_digit() || "./⁄½¼¾⅛⅜⅝⅞".contains(letter)
}

fn is_a_number(word: &str) -> bool {
    word.starts_with(|letter: char| letter.is_numeric()) && word.chars().all(is_of_a_number)
}

/// The unit that a number ends in, which begins a text: `mm` of `50 mm trap`, `"` of `1 1/2" trap`.
fn unit_of_the_first(text: &str) -> Option<&str> {
    let behind = text.trim_start_matches(|letter: char| is_of_a_number(letter) || letter == ' ');
    let has_a_number = text.trim_start().starts_with(|letter: char| letter.is_numeric());
    let end = behind.find(|letter: char| !letter.is_alphabetic()).unwrap_or(behind.len());
    let word = behind.get(..end).filter(|word| !word.is_empty());
    let mark = || behind.get(..behind.chars().next().filter(|mark| "\"″”".contains(*mark))?.len_utf8());
    let is_length = |word: &&str| find_unit(word).is_some_and(|unit| unit.kind == units::Kind::Length);
    has_a_number.then(|| word.filter(is_length).or_else(mark)).flatten()
}

/// The first of two sizes that share their unit, with it too.
fn each_of_two(lower: &str, or: &str) -> String {
    let mut parts = lower.split(or).peekable();
    let mut written = String::with_capacity(lower.len());
    while let Some(part) = parts.next() {
        written.push_str(part);
        let Some(next) = parts.peek() else { break };
        let is_bare = part.split_whitespace().next_back().is_some_and(is_a_number);
        if let Some(unit) = unit_of_the_first(next).filter(|_| is_bare) {
            written.push_str(if unit.starts_with(char::is_alphabetic) { " " } else { "" });
            written.push_str(unit);
        }
        written.push_str(or);
    }
    written
}

/// `40/50 mm`: two sizes in millimetres, and no fraction of one.
fn with_pairs(lower: &str) -> String {
    let words: Vec<&str> = lower.split(' ').collect();
    let pair = |at: usize, word: &str| {
        let (one, other) = word.split_once('/')?;
        let (other, unit) = (other.trim_end_matches("mm"), other.ends_with("mm"));
        let is_one = |number: &str| number.parse::<u32>().is_ok_and(|number| number >= LEAST_OF_TWO);
        let has_a_unit = unit || words.get(at + 1).is_some_and(|next| next.trim_end_matches([',', ';']) == "mm");
        (is_one(one) && is_one(other) && has_a_unit)
            .then(|| format!("{one} mm or {other}{}", if unit { " mm" } else { "" }))
    };
    let told = words.iter().enumerate().map(|(at, word)| pair(at, word).unwrap_or_else(|| (*word).to_owned()));
    told.collect::<Vec<_>>().join(" ")
}

/// What is less is no waste pipe in millimetres.
const LEAST_OF_TWO: u32 = 25;

/// A thread goes by inches, which its letter alone says: `G 1 1/4`, `G1½`, `R 1 1/2` (ISO 228-1 and ISO 7-1, from memory).
fn with_threads(lower: &str) -> String {
    let mut written = String::with_capacity(lower.len());
    let mut rest = lower;
    while let Some(letter) = rest.chars().next() {
        let begins = written.chars().next_back().is_none_or(|before: char| !before.is_alphanumeric());
        let named = ["rp", "g", "r"].iter().find_map(|mark| rest.strip_prefix(mark)).filter(|_| begins);
        let sized = named.and_then(|after| {
            let number = after.trim_start_matches(' ');
            let behind = number.trim_start_matches(|letter: char| is_of_a_number(letter) || letter == ' ');
            let number = number.get(..number.len() - behind.len())?.trim_end();
            let size = Length::parse(&format!("{number}\"")).ok()?;
            let other_unit = find_unit(behind.split(|letter: char| !letter.is_alphabetic()).next()?)
                .is_some_and(|unit| unit.kind == units::Kind::Length);
            let is_one = size > Length::ZERO && size <= WIDEST_THREAD && !other_unit;
            is_one.then(|| (number, behind.trim_start_matches(['"', '″', '”'])))
        });
        match sized {
            Some((number, behind)) => {
                written.push_str(number);
                written.push_str("\" bsp");
                written.push_str(if behind.starts_with(char::is_alphanumeric) { " " } else { "" });
                rest = behind;
            }
            None => {
                written.push(letter);
                rest = rest.get(letter.len_utf8()..).unwrap_or_default();
            }
        }
    }
    written
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thread_is_in_inches_and_both_of_two_sizes_have_their_unit() {
        for (words, read) in [
            ("g 1 1/4", "1 1/4\" bsp"),
            ("ablaufloch 46 mm, g1¼, mit stopfen", "ablaufloch 46 mm, 1¼\" bsp, mit stopfen"),
            ("r 1 1/2\" außen", "1 1/2\" bsp außen"),
            ("salida 40 o 50 mm", "salida 40 mm o 50 mm"),
            ("1 1/4 or 1 1/2\" trap", "1 1/4\" or 1 1/2\" trap"),
            ("sifón 32/40 mm", "sifón 32 mm or 40 mm"),
            // What has its unit, or is no size, stays as it is.
            ("40 mm or 50 mm", "40 mm or 50 mm"),
            ("1/2\" trap", "1/2\" trap"),
            ("type g 40 mm", "type g 40 mm"),
            ("p-trap or s-trap", "p-trap or s-trap"),
            ("trap 3 or bottle trap", "trap 3 or bottle trap"),
            ("class r 230", "class r 230"),
        ] {
            assert_eq!(with_units(words), read, "{words}");
        }
    }
}
