//! Water, drain and duct: a size, a height, a length, bends, and what else their words say.

#[cfg(test)]
mod tests;

use crate::finding::{Phrase, Value, phrase};
use crate::units::{Length, LengthRange, Sides};

use super::InWords;
use super::phrase::{self, LengthInWords, Meaning};
use super::walls::by_its_outside;

/// No duct is narrower; what is less is insulation around one (common practice: ducts begin at 75 mm).
const LEAST_DUCT: Length = Length::from_millimetres(70);

/// No flue or vent is narrower (common practice: a plastic flue of 50 mm): one that is named alone is what it says.
const LEAST_FLUE: Length = Length::from_millimetres(38);
/// Words of what is laid around a duct.
const LAGGED: [&str; 7] = ["insul", "lagg", "foam", "wrap", "dämm", "isol", "aisla"];

/// From here on a length of which nothing is said is how far something runs, and not what goes through it.
const LEAST_RUN: Length = Length::from_inches(24);

/// A pipe or duct, as far as its words can be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pipe {
    /// Its nominal size: the first length of which nothing else is said.
    pub size: Option<Length>,
    /// The least of all sizes that its words name: where it is reduced, it is no larger.
    pub narrowest: Option<Section>,
    /// Its centre from the finished floor: the one length before `AFF`.
    pub height: Option<Length>,
    /// Between which heights it may be, where its words limit it: `at most 18" AFF`, `30" to 42" AFF`.
    pub limits: Option<LengthRange>,
    /// Its length.
    pub run: Option<Length>,
    /// Tight bends of 90°.
    pub bends: u32,
    /// Bends of 45°.
    pub half_bends: u32,
}

/// What lifts water, or is led up: no length beside these is the size of a pipe, if it is longer than any is wide.
const LIFTED: [&str; 7] = ["standpipe", "stand pipe", "stand-pipe", "pump", "head", "steigrohr", "desagüe vertical"];
/// No waste pipe of a house is wider: 8" (common practice).
const LEAST_LIFT: Length = Length::from_inches(8);

/// Words that say that a height is the most that may be.
const MOST: [&str; 9] = ["at most", "no higher", "not higher", "no more", "not more", "not above", "max", "up to", "≤"];
/// Words that say that a height is the least that may be.
const LEAST: [&str; 10] =
    ["at least", "no lower", "not lower", "no less", "not less", "not below", "min", "≥", "or higher", "or more"];

impl InWords for Pipe {
    fn of_words(words: &str) -> Self {
        let lower = phrase::with_points(&with_nominal_sizes(&by_its_outside(&words.to_lowercase()), |size| {
            Some(format!("{size} mm"))
        }));
        let parts: Vec<&str> = lower.split([',', ';']).map(str::trim).collect();
        // A distance to a wall or to a neighbour, in the same phrase or in another, is no size.
        let told = parts.iter().flat_map(|part| phrase::lengths(part));
        let lifts = LIFTED.iter().any(|word| lower.contains(word));
        let is_lift = |told: &LengthInWords| told.is == Meaning::Size && lifts && told.length >= LEAST_LIFT;
        let sizes: Vec<Length> = told
            .filter(|told| told.is == Meaning::Size && told.length < LEAST_RUN && !is_lift(told))
            .map(|told| told.length)
            .collect();
        let size = sizes.first().copied();
        let high = parts.iter().find_map(|part| {
            let all = phrase::lengths(part);
            let told =
                all.iter().find(|told| told.is == Meaning::Height).or_else(|| all.iter().find(|told| is_lift(told)))?;
            Some((told.length, limits(told, part)))
        });
        Self {
            size,
            narrowest: Section::narrowest(&lower, sizes.into_iter().chain(reduced(&parts)).collect()),
            height: high.filter(|(_, limits)| limits.is_none()).map(|(height, _)| height),
            limits: high.and_then(|(_, limits)| limits),
            run: run(&lower),
            bends: count(&parts, &["bend", "elbow", "bogen", "bögen", "codo", "90"], &["45"]),
            half_bends: count(&parts, &["45"], &[]),
        }
    }
}

/// Numbers by which pipes and ducts are called (EN 10255, EN 1451 and ISO 6708, from memory).
const NOMINAL_SIZES: [u32; 26] =
    [6, 8, 10, 12, 15, 20, 25, 30, 32, 40, 50, 56, 63, 70, 75, 80, 90, 100, 110, 120, 125, 150, 160, 180, 200, 250];

/// What is called by such a number is no pipe in inches.
const LEAST_IN_MILLIMETRES: u32 = 25;

/// A text in small letters, in which what is called by a number alone has its unit, as that says it: `DN 50`, `HT50`,
/// `Ø 50`.
pub(super) fn with_nominal_sizes(lower: &str, in_unit: impl Fn(u32) -> Option<String>) -> String {
    let mut written = String::with_capacity(lower.len());
    let mut rest = lower;
    while let Some(letter) = rest.chars().next() {
        let begins = written.chars().next_back().is_none_or(|before: char| !before.is_alphanumeric());
        let named = ["dn", "ht", "nw", "ø", "⌀"].iter().find_map(|mark| rest.strip_prefix(mark)).filter(|_| begins);
        let sized = named.and_then(|after| {
            let after = after.trim_start_matches([' ', '\u{a0}', '\u{202f}', '-', '.']);
            let end = after.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(after.len());
            let (number, behind) = (after.get(..end)?, after.get(end..)?);
            let size = number.parse().ok().filter(|size| NOMINAL_SIZES.contains(size))?;
            let is_digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
            let goes_on = behind.starts_with(['.', ',', '/']) && is_digit(behind.chars().nth(1));
            let next = behind.trim_start();
            // `Ø 6 in` are inches, and `DN 50 in the wall` are not.
            let inches = next.starts_with(['"', '″', '”', '\'', '½', '¼', '¾'])
                || size < LEAST_IN_MILLIMETRES && next.starts_with("in");
            let has_a_unit = goes_on || inches || ["mm", "cm"].iter().any(|unit| next.starts_with(unit));
            let ends = !behind.chars().next().is_some_and(char::is_alphanumeric);
            if has_a_unit || !ends { None } else { Some((in_unit(size)?, behind)) }
        });
        match sized {
            Some((size, behind)) => {
                written.push_str(&size);
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

/// Numbers from three on in words, as ducts are named by.
const IN_WORDS: [&str; 8] = ["three", "four", "five", "six", "seven", "eight", "nine", "ten"];
/// From so many on a size without a unit is in millimetres: no duct of a house is as many inches wide.
const LEAST_MILLIMETRES: i64 = 40;

/// The sizes of a reducer, which the trade gives without a unit: `8x6 reducer`, `8-to-6 reducer`, `reduced to six inch`.
fn reduced(parts: &[&str]) -> Vec<Length> {
    let told = parts.iter().filter(|part| ["reduc", "necks down", "steps down"].iter().any(|word| part.contains(word)));
    let words = |part: &&str| -> Vec<String> {
        let apart = |letter: char| !letter.is_alphanumeric();
        let apart = part.split(apart);
        apart
            .flat_map(|word| if word.starts_with(char::is_numeric) { word.split('x').collect() } else { vec![word] })
            .map(str::to_owned)
            .collect()
    };
    let size = |word: &String| {
        let in_words = IN_WORDS.iter().position(|known| known == word).and_then(|at| i64::try_from(at).ok());
        let number: i64 = word.parse().ok().or(in_words.map(|at| at + 3))?;
        match number {
            3..=16 => Some(Length::from_inches(number)),
            LEAST_MILLIMETRES..=500 => Some(Length::from_millimetres(number)),
            _ => None,
        }
    };
    told.flat_map(|part| words(part).iter().filter_map(size).collect::<Vec<_>>()).collect()
}

/// Between which heights something may be, where the words say that a height limits it.
fn limits(told: &LengthInWords, part: &str) -> Option<LengthRange> {
    let says = |words: &[&str]| words.iter().any(|word| part.contains(word));
    match told.to {
        Some(to) => LengthRange::between(told.length, to).ok(),
        None if says(&MOST) => Some(LengthRange::at_most(told.length)),
        None if says(&LEAST) => Some(LengthRange::at_least(told.length)),
        None => None,
    }
}

/// What air or water goes through: round, or two sides of a rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// Of that diameter.
    Round(Length),
    /// Of those sides.
    Rectangle(Length, Length),
}

impl Section {
    /// The least of those that a text names: `8" round, reduced to 6" at the wall` is one of 6".
    fn narrowest(lower: &str, sizes: Vec<Length>) -> Option<Self> {
        let sides = rectangle(lower);
        // What is less is the thickness of something around it.
        let is_lagged = LAGGED.iter().any(|word| lower.contains(word));
        let ducts = |least: Length| sizes.iter().copied().filter(move |size| *size >= least);
        let least = if is_lagged || ducts(LEAST_DUCT).next().is_some() { LEAST_DUCT } else { LEAST_FLUE };
        let round = ducts(least);
        let round = round.filter(|size| sides.is_none_or(|(one, other)| *size != one && *size != other));
        let round = round.min().map(Self::Round);
        let rectangle = sides.map(|(one, other)| Self::Rectangle(one, other));
        round.into_iter().chain(rectangle).min_by_key(|section| section.quarters())
    }

    /// Four times its area in square nanometres, of a circle to a ten-thousandth.
    fn quarters(self) -> i128 {
        match self {
            Self::Round(across) => i128::from(across.nanometres()).pow(2) / 10_000 * 31_416,
            Self::Rectangle(one, other) => i128::from(one.nanometres()) * i128::from(other.nanometres()) * 4,
        }
    }

    /// Whether less goes through it than through another. Round ones are named by a rounded size, so that
    /// an inch may be 25 mm: what is 8" in inches is 200 mm in metric.
    pub fn is_narrower_than(self, other: Self) -> bool {
        let nominal = |of: Length, inch: i128| i128::from(of.nanometres()) * inch;
        match (self, other) {
            (Self::Round(own), Self::Round(other)) => nominal(own, 254) < nominal(other, 250),
            _ => self.quarters() < other.quarters(),
        }
    }

    /// The diameter, or both sides.
    pub fn say(self, say: impl Fn(Length) -> Value) -> Phrase {
        match self {
            Self::Round(across) => say(across).into(),
            Self::Rectangle(one, other) => phrase!("{} by {}", say(one), say(other)),
        }
    }
}

/// Two sides, one times the other: `3 1/4" x 10"`, `222 x 89 mm`, `220×90 mm`.
fn rectangle(lower: &str) -> Option<(Length, Length)> {
    lower.split([',', ';']).find_map(|part| {
        let part = part.replace(" by ", " x ");
        part.match_indices(['x', '×']).find_map(|(at, times)| sides(part.get(..at)?, part.get(at + times.len()..)?))
    })
}

/// The sides before and after the sign between them, without the words around; a unit after the second is both's.
fn sides(before: &str, after: &str) -> Option<(Length, Length)> {
    let (before, after): (Vec<&str>, Vec<&str>) =
        (before.split_whitespace().collect(), after.split_whitespace().collect());
    let tails = (1..=2_usize).rev().filter_map(|words| before.get(before.len().checked_sub(words)?..));
    tails.flat_map(|tail| (1..=3_usize).rev().map(move |words| (tail, words))).find_map(|(tail, words)| {
        let read = Sides::parse(&format!("{} x {}", tail.join(" "), after.get(..words)?.join(" "))).ok()?;
        if let [one, other] = read.sides() { Some((*one, *other)) } else { None }
    })
}

/// Units in which the length of a pipe or duct is told.
const RUNS: [&str; 14] =
    ["ft", "foot", "feet", "pie", "pies", "m", "metre", "metres", "meter", "meters", "metro", "metros", "'", "′"];

/// The length in feet or metres anywhere in a text: `40 ft`, `at most 25 feet`, `12 m`, `9'`.
pub(super) fn run(lower: &str) -> Option<Length> {
    let in_feet = lower.split([',', ';']).find_map(|part| {
        let words = part.split_whitespace().map(|word| word.trim_end_matches('.'));
        let words: Vec<&str> = words.filter(|word| !["lineal", "linear", "running"].contains(word)).collect();
        let apart = words.windows(2).filter_map(|pair| match pair {
            [number, unit] if RUNS.contains(unit) => Some(in_figures(number) + in_english(unit)),
            _ => None,
        });
        let is_one = |word: &&&str| {
            let number = word.trim_start_matches(|letter: char| letter.is_ascii_digit() || "./½¼¾".contains(letter));
            number.len() < word.len() && RUNS.contains(&number)
        };
        let together = words.iter().filter(is_one).map(ToString::to_string);
        apart.chain(together).find_map(|run| Length::parse(&run).ok())
    });
    // What is as long as that goes through nothing: `35'-0"`.
    let long = || phrase::lengths(lower).into_iter().find(|told| told.is == Meaning::Size && told.length >= LEAST_RUN);
    in_feet.or_else(|| long().map(|told| told.to.unwrap_or(told.length)))
}

/// A number in a word as a figure: `nine feet` is 9 ft.
fn in_figures(number: &str) -> String {
    let told = WHOLE.iter().position(|known| *known == number).map(|at| (at + 1).to_string());
    told.unwrap_or_else(|| number.to_owned())
}

/// Whole numbers from one on, as lengths are told by.
const WHOLE: [&str; 20] = [
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
    "twenty",
];

/// A unit of a run as it is called in English.
fn in_english(unit: &str) -> &str {
    match unit {
        "metro" | "metros" => "m",
        "pie" | "pies" => "ft",
        unit => unit,
    }
}

/// How many bends the phrases tell, in figures or words: the last count before what they are called.
fn count(parts: &[&str], named: &[&str], but: &[&str]) -> u32 {
    let told = parts.iter().filter_map(|part| {
        let words: Vec<&str> = part.split_whitespace().collect();
        let called = called(&words, named).filter(|_| called(&words, but).is_none())?;
        let before = words.get(..called)?.iter().zip(words.iter().skip(1));
        // `9 ft with two elbows`: what a unit follows is a length.
        let mut counts = before.filter(|(_, next)| !RUNS.contains(next)).filter_map(|(word, _)| counted(word));
        counts.next_back()
    });
    told.sum()
}

/// Where some words name a bend, by its word or its angle: `45 ft` are none.
fn called(words: &[&str], named: &[&str]) -> Option<usize> {
    (0..words.len()).find(|at| {
        named.iter().any(|name| match name.parse::<u32>() {
            Ok(angle) => is_an_angle(words, *at, angle),
            Err(_) => words.get(*at).is_some_and(|word| word.contains(name)),
        })
    })
}

/// Units of lengths, and what stands between two sides: no angle is followed by them.
const OF_LENGTHS: [&str; 10] = ["mm", "cm", "in", "inch", "inches", "\"", "″", "”", "x", "×"];

/// Whether a word is an angle of so many degrees, as bends are called by: `90`, `90°`, `90s`, and no side of a duct
/// (`220 x 90 mm`) and no length.
fn is_an_angle(words: &[&str], at: usize, angle: u32) -> bool {
    let Some(word) = words.get(at).map(|word| word.trim_matches(['(', ')', '.', ':', '@', '~'])) else { return false };
    let Some(tail) = word.strip_prefix(&angle.to_string()) else { return false };
    let is_unit = |word: &str| RUNS.contains(&word) || OF_LENGTHS.contains(&word);
    let next = words.get(at + 1).map(|next| next.trim_end_matches(['.', ',', ')']));
    let goes_on = tail.starts_with(|letter: char| letter.is_ascii_digit() || "./x×\"″”½¼¾".contains(letter));
    let is_a_length = goes_on || is_unit(tail) || tail.is_empty() && next.is_some_and(is_unit);
    // `220 x 90` are sides, and `2 x 90°` are two bends.
    let is_a_side = || {
        let times =
            at.checked_sub(1).and_then(|before| words.get(before)).is_some_and(|sign| ["x", "×", "by"].contains(sign));
        let first = at.checked_sub(2).and_then(|first| words.get(first)).and_then(|first| first.parse::<u32>().ok());
        times && first.is_none_or(|first| first > MOST_BENDS)
    };
    !is_a_length && !is_a_side()
}

/// No duct has as many bends.
const MOST_BENDS: u32 = 12;

/// A small number, in figures or in a word.
fn counted(word: &str) -> Option<u32> {
    const WORDS: [[&str; 3]; 7] = [
        ["no", "kein", "sin"],
        ["one", "ein", "un"],
        ["two", "zwei", "dos"],
        ["three", "drei", "tres"],
        ["four", "vier", "cuatro"],
        ["five", "fünf", "cinco"],
        ["six", "sechs", "seis"],
    ];
    let by_word = WORDS.iter().position(|known| known.contains(&word)).and_then(|at| u32::try_from(at).ok());
    let one = || ["a", "an", "einen"].contains(&word).then_some(1);
    word.parse().ok().or(by_word).or_else(one)
}
