//! Water, drain and duct: a size, a height, a length, bends, and what else their words say.

use crate::finding::{Phrase, Value, phrase};
use crate::units::{Length, LengthRange, Sides};

use super::InWords;
use super::phrase::{self, LengthInWords, Meaning};

/// No duct is narrower; what is less is insulation around one (common practice: ducts begin at 75 mm).
const LEAST_DUCT: Length = Length::from_millimetres(70);

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
        let lower = phrase::with_points(&with_nominal_sizes(&words.to_lowercase(), |size| Some(format!("{size} mm"))));
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
            bends: count(&parts, &["bend", "elbow", "90"], &["45"]),
            half_bends: count(&parts, &["45"], &[]),
        }
    }
}

/// Numbers by which pipes and ducts are called (EN 10255, EN 1451 and ISO 6708, from memory).
const NOMINAL_SIZES: [u32; 23] =
    [6, 8, 10, 12, 15, 20, 25, 30, 32, 40, 50, 56, 63, 70, 75, 80, 90, 100, 110, 125, 150, 160, 200];

/// What is called by such a number is no pipe in inches.
const LEAST_IN_MILLIMETRES: u32 = 25;

/// A text in small letters, in which what is called by a number alone has its unit, as that says it: `DN 50`, `HT50`,
/// `Ø 50`.
pub(super) fn with_nominal_sizes(lower: &str, in_unit: impl Fn(u32) -> Option<String>) -> String {
    let mut written = String::with_capacity(lower.len());
    let mut rest = lower;
    while let Some(letter) = rest.chars().next() {
        let begins = written.chars().next_back().is_none_or(|before: char| !before.is_alphanumeric());
        let named = ["dn", "ht", "ø", "⌀"].iter().find_map(|mark| rest.strip_prefix(mark)).filter(|_| begins);
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
        let round = sizes.into_iter().filter(|size| *size >= LEAST_DUCT);
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
const RUNS: [&str; 10] = ["ft", "foot", "feet", "m", "metre", "metres", "meter", "meters", "'", "′"];

/// The length in feet or metres anywhere in a text: `40 ft`, `at most 25 feet`, `12 m`, `9'`.
pub(super) fn run(lower: &str) -> Option<Length> {
    let in_feet = lower.split([',', ';']).find_map(|part| {
        let words = part.split_whitespace().map(|word| word.trim_end_matches('.'));
        let words: Vec<&str> = words.filter(|word| !["lineal", "linear", "running"].contains(word)).collect();
        let apart =
            words.windows(2).filter(|pair| matches!(pair, [_, unit] if RUNS.contains(unit))).map(<[&str]>::concat);
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
    words.iter().enumerate().position(|(at, word)| {
        let is_a_length = words.get(at + 1).is_some_and(|next| RUNS.contains(&next.trim_end_matches('.')));
        let is_with_its_unit = RUNS.contains(&word.trim_start_matches(|letter: char| letter.is_ascii_digit()));
        named.iter().any(|name| word.contains(name)) && !is_a_length && !is_with_its_unit
    })
}

/// A small number, in figures or in a word.
fn counted(word: &str) -> Option<u32> {
    const WORDS: [&str; 7] = ["no", "one", "two", "three", "four", "five", "six"];
    let by_word = WORDS.iter().position(|known| *known == word).and_then(|at| u32::try_from(at).ok());
    let one = || ["a", "an"].contains(&word).then_some(1);
    word.parse().ok().or(by_word).or_else(one)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(text: &str) -> Option<Length> {
        Some(text.parse().unwrap())
    }

    fn range(text: &str) -> Option<LengthRange> {
        Some(LengthRange::parse(text).unwrap())
    }

    #[test]
    fn what_is_called_by_a_number_alone_has_its_size() {
        for words in
            ["DN 50, 450 mm über OKFF", "DN50, 450 mm über OKFF", "HT 50, 450 mm über OKFF", "Ø 50, 450 mm AFF"]
        {
            let pipe = Pipe::of_words(words);
            assert_eq!((pipe.size, pipe.height), (length("50 mm"), length("450 mm")), "{words}");
        }
        assert_eq!(Pipe::of_words("DN 150, 3 m").narrowest, Pipe::of_words("150 mm, 3 m").narrowest);
        assert_eq!(Pipe::of_words("ht 36\"").size, None);
        assert_eq!(Pipe::of_words("Ø 6 in").size, length("6\""));
    }

    #[test]
    fn sizes_heights_runs_and_bends_are_read() {
        let duct = Pipe::of_words("4\" rigid, 9 ft to the yard, two bends");
        assert_eq!((duct.size, duct.run, duct.bends), (length("4\""), length("9'"), 2));
        let drain = Pipe::of_words("1 1/2\", at most 18\" AFF");
        assert_eq!((drain.size, drain.height, drain.limits), (length("1 1/2\""), None, range("at most 18\"")));
        for high in ["22\" AFF", "22\" above the floor", "22 inches high", "22\" a.f.f.", "centre 22\" off the floor"] {
            let drain = Pipe::of_words(&format!("1 1/2\", {high}"));
            assert_eq!((drain.size, drain.height, drain.limits), (length("1 1/2\""), length("22\""), None), "{high}");
        }
        for most in ["at most 18\" above the floor", "no higher than 18\" AFF", "max. 18\" AFF"] {
            assert_eq!(Pipe::of_words(&format!("1 1/2\", {most}")).limits, range("at most 18\""), "{most}");
        }
        for within in ["30\" to 42\" AFF", "between 30\" and 42\" above the floor"] {
            let pipe = Pipe::of_words(&format!("2\" standpipe, {within}"));
            assert_eq!((pipe.size, pipe.limits), (length("2\""), range("30\" to 42\"")), "{within}");
        }
        let metric = Pipe::of_words("standpipe, 600 mm to 1000 mm AFF");
        assert_eq!((metric.size, metric.limits), (None, range("600 mm to 1000 mm")));
        assert_eq!(Pipe::of_words("2\", at least 30\" AFF").limits, range("at least 30\""));
        let dryer = Pipe::of_words("4\" rigid, 20 ft, 2 elbows, 1 bend of 45");
        assert_eq!((dryer.bends, dryer.half_bends), (2, 1));
        let soft = Pipe::of_words("1/4\" soft copper, 8 ft");
        assert_eq!((soft.size, soft.run), (length("1/4\""), length("8'")));
        // A comma between digits is a decimal one, as it is written on the Continent.
        let comma = Pipe::of_words("2,5 mm, 500,5 mm AFF,12 m");
        assert_eq!((comma.size, comma.height, comma.run), (length("2.5 mm"), length("500.5 mm"), length("12 m")));
        let metric = Pipe::of_words("38 mm, at most 457 mm AFF, 12 m, two bends");
        assert_eq!(
            (metric.size, metric.limits, metric.run),
            (length("38 mm"), range("at most 457 mm"), length("12 m"))
        );
        let words = Pipe::of_words("4\" rigid, 38 feet with two elbows");
        assert_eq!((words.size, words.run, words.bends), (length("4\""), length("38'"), 2));
        for run in ["35'-0\"", "35 lineal feet", "35 linear ft"] {
            assert_eq!(Pipe::of_words(&format!("4\" rigid, {run}")).run, length("35'"), "{run}");
        }
        for run in ["12 metres", "12 m.", "12m"] {
            assert_eq!(Pipe::of_words(&format!("100 mm, {run} and a bend")).run, length("12 m"), "{run}");
        }
        let prime = Pipe::of_words("4\" rigid 9' with 2 tight bends");
        assert_eq!((prime.run, prime.bends), (length("9'"), 2));
        assert_eq!(Pipe::of_words("100 mm, 12 m and a bend").bends, 1);
        assert_eq!(Pipe::of_words("3\" flange, 12\" from the finished wall").size, length("3\""));
        assert_eq!(Pipe::of_words("12\" rough-in").size, None);
        assert_eq!(Pipe::of_words("to the disposer, air gap at the sink"), Pipe::default());
    }

    #[test]
    fn how_high_water_is_lifted_is_no_size() {
        for lift in ["standpipe 600 mm to 900 mm", "standpipe, 600-900 mm", "pump hose, head 600 mm to 900 mm"] {
            let pipe = Pipe::of_words(lift);
            assert_eq!((pipe.size, pipe.limits), (None, range("600 mm to 900 mm")), "{lift}");
        }
        assert_eq!(Pipe::of_words("standpipe, 30\"-36\"").limits, range("30\" to 36\""));
        let standpipe = Pipe::of_words("40 mm standpipe, 650 mm");
        assert_eq!((standpipe.size, standpipe.height), (length("40 mm"), length("650 mm")));
    }

    #[test]
    fn the_narrowest_of_all_sizes_governs() {
        let narrowest = |text: &str| Pipe::of_words(text).narrowest;
        let round = |text: &str| length(text).map(Section::Round);
        for text in [
            "8\" round, reduced to 6\" at the wall",
            "8\" round, 10 ft, 6\" at the roof cap",
            "8 in. reduced to 6 in. through the joists",
            "6\"",
            "6\" round, 20 ft",
            "6\" round in 1\" of insulation",
            "6\" round in 2 1/2\" of insulation",
        ] {
            assert_eq!(narrowest(text), round("6\""), "{text}");
        }
        for text in ["8\" round, 8x6 reducer at the roof cap", "8\", 8-to-6 reducer", "8\" round reduced to six inch"] {
            assert_eq!(narrowest(text), round("6\""), "{text}");
        }
        assert_eq!(narrowest("150 mm, 150/125 reducer at the wall"), round("125 mm"));
        assert_eq!(narrowest("75 mm rigid, 3 m"), round("75 mm"));
        let flat = Section::Rectangle(length("3 1/4\"").unwrap(), length("10\"").unwrap());
        assert_eq!(narrowest("3 1/4\" x 10\", 12 ft"), Some(flat));
        assert!(!flat.is_narrower_than(round("6\"").unwrap()) && flat.is_narrower_than(round("7\"").unwrap()));
        assert_eq!(narrowest("8\", then 3 1/4\" x 10\""), Some(flat));
        for channel in ["222 x 89 mm", "222 mm x 89 mm flat channel", "flat 222×89 mm", "222 by 89 mm, 3 m"] {
            let sides = Section::Rectangle(length("222 mm").unwrap(), length("89 mm").unwrap());
            assert_eq!(narrowest(channel), Some(sides), "{channel}");
        }
    }
}
