//! Lengths in a phrase, each with the words that say what it is: `3" flange, 12" from the finished wall`.

use std::iter::Peekable;
use std::str::Chars;

use crate::units::{self, Length, LengthRange, find_unit};

use super::faces::{self, Wall};

/// The longest text that is tried as one length or range: `12' 11 15/16" to 13' 1 1/16"` and then some.
const LONGEST: usize = 40;

/// How many times its least a range may be at its greatest.
const RANGE: i64 = 4;

/// A length of a phrase.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LengthInWords {
    /// The length; of a range its least.
    pub length: Length,
    /// The greatest of a range.
    pub to: Option<Length>,
    /// What it is the length of, as far as the words around it say.
    pub is: Meaning,
}

/// What a length of a phrase says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// How large the thing is: nothing else is said.
    Size,
    /// How high above a floor.
    Height,
    /// How high above a floor that is still to get its covering.
    AboveRoughFloor,
    /// How far from a wall's face.
    FromWall(Face),
    /// How deep the water is that a trap holds.
    Seal,
    /// How high a standpipe ends above the trap below it.
    AboveTrap,
    /// Some other distance: to a corner, to a neighbour, from centre to centre.
    Distance,
}

/// The face that a distance is taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The finished wall, or a wall of which nothing else is said.
    Finished,
    /// Bare studs.
    Studs,
}

/// Every length of a text, in order.
pub fn lengths(text: &str) -> Vec<LengthInWords> {
    with_points(&text.to_lowercase()).split([',', ';']).flat_map(of_phrase).collect()
}

/// How high above the finished floor something comes out, where a text names one such height.
pub fn height(text: &str) -> Option<Length> {
    let all: Vec<LengthInWords> = lengths(text).into_iter().filter(|told| told.is == Meaning::Height).collect();
    if let [LengthInWords { length, to: None, .. }] = all.as_slice() { Some(*length) } else { None }
}

/// How high above a floor that is still to get its covering something comes out, where a text names such a height.
pub fn above_the_rough_floor(text: &str) -> Option<Length> {
    lengths(text).into_iter().find(|told| told.is == Meaning::AboveRoughFloor).map(|told| told.length)
}

/// The one length that a text names; none where it names several, or none.
pub fn one_length(text: &str) -> Option<Length> {
    match lengths(text).as_slice() {
        [only] if only.to.is_none() => Some(only.length),
        _ => None,
    }
}

/// Every height that a text names, each as a range: `two rails, 72" and 84" AFF`.
pub fn heights(text: &str) -> Vec<LengthRange> {
    let told = lengths(text).into_iter().filter(|told| told.is == Meaning::Height);
    told.filter_map(|told| LengthRange::between(told.length, told.to.unwrap_or(told.length)).ok()).collect()
}

/// How far something stands out from its wall, where a text says it once: `surface valve 3" proud`.
pub fn proud(text: &str) -> Option<Length> {
    let lower = with_points(&text.to_lowercase());
    let part = lower.split([',', ';']).find(|part| part.contains("proud") || part.contains("stands out"))?;
    match of_phrase(part).as_slice() {
        [only] => Some(only.to.unwrap_or(only.length)),
        _ => None,
    }
}

/// A text whose decimal commas are points: a comma between digits parts no two phrases. Three digits after it are
/// thousands, which no pipe has. A hyphen between a number and its unit, and the sign of a diameter, part words:
/// `6-inch`, `Ø125 mm`.
pub fn with_points(text: &str) -> String {
    let mut before = None;
    let mut rest = text.chars().peekable();
    let mut written = String::with_capacity(text.len());
    while let Some(letter) = rest.next() {
        let is_digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
        let next = rest.peek().copied();
        let is_letter = |letter: Option<char>| letter.is_some_and(char::is_alphabetic);
        written.push(match letter {
            ',' if is_digit(before) && is_digit(next) => '.',
            '-' if is_digit(before) && is_letter(next) => ' ',
            // After inches, or between whole numbers, a hyphen joins two ends; after feet it joins what more there is,
            // and before a fraction the same.
            '-' if is_digit(next)
                && (matches!(before, Some('"' | '″' | '”')) || is_digit(before) && !fraction(&rest)) =>
            {
                '–'
            }
            'ø' | 'Ø' | '⌀' => ' ',
            other => other,
        });
        before = Some(letter);
    }
    written
}

/// Whether a fraction comes next: `1/2`.
fn fraction(rest: &Peekable<Chars<'_>>) -> bool {
    matches!(rest.clone().find(|letter| !letter.is_ascii_digit()), Some('/' | '⁄' | '∕'))
}

/// The lengths of one phrase. The words after a length say what it is; those before the first, too.
fn of_phrase(phrase: &str) -> Vec<LengthInWords> {
    let mut found: Vec<(LengthRange, usize, usize)> = Vec::new();
    let mut from = 0;
    for (at, _) in phrase.char_indices().filter(|(_, letter)| letter.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(*letter))
    {
        let before = phrase.get(..at).and_then(|before| before.chars().next_back());
        let inside = before.is_some_and(|before| before.is_alphanumeric() || matches!(before, '.' | '/' | '-'));
        if at < from || inside {
            continue;
        }
        if let Some((length, end)) = longest(phrase, at) {
            found.push((length, at, end));
            from = end;
        }
    }
    let words = |from: usize, to: usize| phrase.get(from..to).unwrap_or_default();
    let starts = found.iter().skip(1).map(|(_, start, _)| *start).chain([phrase.len()]);
    let tails: Vec<&str> = found.iter().zip(starts).map(|((_, _, end), next)| words(*end, next)).collect();
    let head = found.first().map_or("", |(_, start, _)| words(0, *start));
    let told = found.iter().zip(&tails).enumerate().filter_map(|(number, ((range, start, end), tail))| {
        // `with a seal of 2"`: those words are the next length's.
        let is_last = number + 1 == tails.len();
        let said = if !is_last && names_the_next_a_seal(tail) { Meaning::Size } else { meaning(tail) };
        let before = number.checked_sub(1).and_then(|before| tails.get(before));
        let is = match said {
            _ if before.is_some_and(|before| names_the_next_a_seal(before)) => Meaning::Seal,
            Meaning::Size if number == 0 && meaning(head) != Meaning::Size => meaning(head),
            // `40 mm at 400 mm`: what is there so high is no size.
            Meaning::Size
                if range.least? >= LEAST_HEIGHT && stands_at(before.copied().unwrap_or(head), words(*start, *end)) =>
            {
                Meaning::Height
            }
            // `2" up from the slab`: so small is the pipe.
            Meaning::AboveRoughFloor if range.least? < LEAST_HEIGHT => Meaning::Size,
            said => said,
        };
        Some(LengthInWords { length: range.least?, to: range.most.filter(|most| range.least != Some(*most)), is })
    });
    told.collect()
}

/// What is called `at` a length that is less is something of that size (no pipe of a house is wider: common practice).
const LEAST_HEIGHT: Length = Length::from_millimetres(150);

/// Whether the words before a length say that something is at it.
fn stands_at(before: &str, length: &str) -> bool {
    match before.split_whitespace().next_back() {
        Some("at" | "auf" | "@") => true,
        // `a 12" hose` is English.
        Some("a" | "à") => length.ends_with('m'),
        _ => false,
    }
}

/// Whether what stands between two lengths says that the second one is a seal's.
fn names_the_next_a_seal(between: &str) -> bool {
    let between = between.trim_end_matches(|letter: char| letter == ':' || letter == '=' || letter.is_whitespace());
    ["seal", "seal of", "seal is"].iter().any(|end| between.ends_with(end)) && between.split_whitespace().count() > 1
}

/// The longest length that begins there, or the range of two, and where it ends.
fn longest(phrase: &str, at: usize) -> Option<(LengthRange, usize)> {
    let rest = phrase.get(at..)?;
    // Each end that a word may have, the farthest first; most numbers of a phrase (volts, amperes) are no length at all.
    let letters = rest.char_indices().take(LONGEST);
    let ends: Vec<usize> = letters.map(|(end, letter)| end + letter.len_utf8()).collect();
    let is_in_a_word = |letter: Option<char>| letter.is_some_and(char::is_alphanumeric);
    ends.into_iter().rev().find_map(|end| {
        let (text, after) = (rest.get(..end)?, rest.get(end..)?);
        if is_in_a_word(after.chars().next()) || text.ends_with(char::is_whitespace) || !ends_in_a_unit(text) {
            return None;
        }
        Some((span(text)?, at + end))
    })
}

/// Whether a length can end so: in a unit of length, or in a mark such as inches have.
fn ends_in_a_unit(text: &str) -> bool {
    let text = text.trim_end_matches('.');
    let word = text.trim_end_matches(char::is_alphabetic).len();
    match text.get(word..).filter(|word| !word.is_empty()) {
        Some(word) => find_unit(word).is_some_and(|unit| unit.kind == units::Kind::Length),
        None => text.chars().next_back().is_some_and(|mark| !mark.is_ascii_digit()),
    }
}

/// A length, or two that are the ends of a range: `30" to 42"`, `600–1000 mm`. Two of which the second is less, or many
/// times as much, are a size and something else: `6" - 20 ft`.
fn span(text: &str) -> Option<LengthRange> {
    let between = text.replace(" and ", " to ");
    let range = LengthRange::parse(&between).ok()?;
    (range.most? <= range.least?.times(RANGE)).then_some(range)
}

/// What the words beside a length say that it is.
fn meaning(words: &str) -> Meaning {
    let all: Vec<&str> =
        words.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let has = |named: &[&str]| all.iter().any(|word| named.contains(word));
    let studs = has(&["stud", "studs", "framing", "bare"]);
    // `12" to the wall` is a distance, `8" round to the wall` a size and where it goes.
    let to = all.iter().position(|word| *word == "to").is_some_and(|at| {
        at.checked_sub(1).and_then(|before| all.get(before)).is_none_or(|before| ["centre", "center"].contains(before))
    });
    let taken = to || has(&["from", "off", "behind"]);
    if has(&["seal"]) {
        Meaning::Seal
    } else if has(&["above", "over"]) && has(&["trap", "weir"]) {
        Meaning::AboveTrap
    } else if faces::names_a_rough_floor(&all) {
        Meaning::AboveRoughFloor
    } else if has(&["aff", "affl", "ffl", "high", "offb", "ffb"])
        || faces::names_a_finished_floor(&all)
        || words.contains("a.f.f")
        || (has(&["above", "off", "over", "from"]) && has(&["floor", "ffl"]))
        // As other languages say it: `a 650 mm del suelo`, `650 mm over gulv`.
        || has(&["suelo", "pavimento", "solado", "gulv", "golvet", "boden", "sol"])
    {
        Meaning::Height
    } else if taken && faces::names_a_side_wall(&all) || faces::from_a_wall(&all) == Some(Wall::Beside) {
        Meaning::Distance
    } else if has(&["rough", "roughin", "setout"])
        || all.windows(2).any(|pair| pair == ["set", "out"])
        || (taken && has(&["wall", "plaster", "tile", "tiles", "tiling"]))
        || faces::from_a_wall(&all) == Some(Wall::Behind)
    {
        Meaning::FromWall(if studs { Face::Studs } else { Face::Finished })
    } else if taken && studs {
        Meaning::FromWall(Face::Studs)
    } else if has(&["apart", "clear", "centres", "centers"])
        || (has(&["above", "below", "over"]) && has(&["sill"]))
        || (taken && has(&["left", "right", "corner", "edge", "end", "side", "centre", "center"]))
    {
        Meaning::Distance
    } else {
        // `1/2" from the main`, `4" rigid to the yard`: where it comes from or goes to.
        Meaning::Size
    }
}

#[cfg(test)]
mod tests;
