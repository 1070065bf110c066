//! A span of lengths: `36" to 36 1/4"`, `at least 24"`, `at most 36"`, `35 7/8" ± 1/8"`.

use super::length::{Grain, Length, LengthError, parse_in, sole_unit};
use super::typography::{is_dash, is_space};
use super::{Fault, Phrase, phrase, shown};
use std::fmt;

/// Lengths from `least` to `most`, both included; an end that is missing is open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct LengthRange {
    /// The shortest that will do.
    pub least: Option<Length>,
    /// The longest that will do.
    pub most: Option<Length>,
}

/// Why a text is not a range of lengths.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RangeError {
    /// One of its lengths is wrong.
    Length(LengthError),
    /// The least is more than the most.
    Reversed {
        /// The first length.
        least: Length,
        /// The second.
        most: Length,
    },
    /// A tolerance below zero.
    NegativeTolerance(String),
}

impl From<LengthError> for RangeError {
    fn from(error: LengthError) -> RangeError {
        RangeError::Length(error)
    }
}

impl Fault for RangeError {
    fn message(&self) -> Phrase {
        match self {
            RangeError::Length(error) => error.message(),
            RangeError::Reversed { least, most } => {
                phrase!("the range runs backwards: {least} is more than {most}", least, most)
            }
            RangeError::NegativeTolerance(text) => {
                phrase!("the tolerance `{text}` is below zero", text)
            }
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            RangeError::Length(LengthError::TwoLengths(_)) => "part the ends with `to`: `… to …`".into(),
            RangeError::Length(error) => error.remedy(),
            RangeError::Reversed { least, most } => {
                phrase!("write the smaller length first: {most} to {least}", most, least)
            }
            RangeError::NegativeTolerance(_) => "write the tolerance without a sign after `±`: `… ± …`".into(),
        }
    }
}

shown!(RangeError);

impl RangeError {
    /// True when the fault is a length without a unit.
    pub fn is_bare(&self) -> bool {
        matches!(self, RangeError::Length(LengthError::Bare(_)))
    }
}

impl LengthRange {
    /// One length only.
    pub const fn exactly(length: Length) -> LengthRange {
        LengthRange { least: Some(length), most: Some(length) }
    }

    /// This long or longer.
    pub const fn at_least(least: Length) -> LengthRange {
        LengthRange { least: Some(least), most: None }
    }

    /// This long or shorter.
    pub const fn at_most(most: Length) -> LengthRange {
        LengthRange { least: None, most: Some(most) }
    }

    /// From one length to another.
    ///
    /// # Errors
    /// [`RangeError::Reversed`] when `least` is more than `most`.
    pub fn between(least: Length, most: Length) -> Result<LengthRange, RangeError> {
        if least > most {
            return Err(RangeError::Reversed { least, most });
        }
        Ok(LengthRange { least: Some(least), most: Some(most) })
    }

    /// Reads a range; a single length is a range of that length only. A unit that stands only after
    /// the last number governs both: `36 to 36 1/4 in`.
    ///
    /// # Errors
    /// When a length is wrong, when the range runs backwards, when the tolerance is below zero.
    pub fn parse(text: &str) -> Result<LengthRange, RangeError> {
        // A space of any width parts words as a plain one does.
        let text: String = text.chars().map(|c| if is_space(c) { ' ' } else { c }).collect();
        let text = text.trim();
        if let Some(least) = after_words(text, "at least").or_else(|| text.strip_prefix('≥')) {
            return Ok(LengthRange::at_least(Length::parse(least)?));
        }
        if let Some(most) = after_words(text, "at most").or_else(|| text.strip_prefix('≤')) {
            return Ok(LengthRange::at_most(Length::parse(most)?));
        }
        if let Some((middle, tolerance)) = text.split_once('±').or_else(|| text.split_once("+/-")) {
            return around(middle, tolerance);
        }
        let to = text.to_ascii_lowercase().find(" to ");
        if let Some((least, most)) = to.and_then(|at| Some((text.get(..at)?, text.get(at + 4..)?))) {
            return ends(least, most);
        }
        // A dash may also part feet from inches (`2' - 10"`). Whatever reads as one length is one: as a
        // range it would run backwards, since inches after feet are fewer than twelve.
        match Length::parse(text) {
            Ok(length) => Ok(LengthRange::exactly(length)),
            Err(error) => match split_at_dash(text) {
                Some((least, most)) => ends(least, most),
                None => Err(error.into()),
            },
        }
    }

    /// True when `length` lies within, the ends included.
    pub fn contains(self, length: Length) -> bool {
        self.least.is_none_or(|least| least <= length) && self.most.is_none_or(|most| length <= most)
    }

    /// The range in inches, each end to the nearest `grain`.
    pub fn imperial(self, grain: Grain) -> String {
        self.worded(|length| length.imperial(grain).to_string())
    }

    /// The range in millimetres.
    pub fn metric(self) -> String {
        self.worded(|length| length.metric().to_string())
    }

    /// The range with each end as `shown` prints it.
    pub fn worded(self, shown: impl Fn(Length) -> String) -> String {
        match (self.least, self.most) {
            (Some(least), Some(most)) if least == most => shown(least),
            (Some(least), Some(most)) => format!("{} to {}", shown(least), shown(most)),
            (Some(least), None) => format!("at least {}", shown(least)),
            (None, Some(most)) => format!("at most {}", shown(most)),
            (None, None) => "any length".into(),
        }
    }
}

fn after_words<'a>(text: &'a str, words: &str) -> Option<&'a str> {
    let start = text.get(..words.len())?;
    let rest = text.get(words.len()..)?;
    (start.eq_ignore_ascii_case(words) && rest.starts_with(' ')).then_some(rest)
}

/// At a dash, or at a hyphen with spaces around it.
fn split_at_dash(text: &str) -> Option<(&str, &str)> {
    text.split_once(is_dash).or_else(|| text.split_once(" - "))
}

fn ends(least: &str, most: &str) -> Result<LengthRange, RangeError> {
    let last = Length::parse(most)?;
    LengthRange::between(parse_in(least, sole_unit(most))?, last)
}

fn around(middle: &str, tolerance: &str) -> Result<LengthRange, RangeError> {
    let by = Length::parse(tolerance)?;
    if by.is_negative() {
        return Err(RangeError::NegativeTolerance(tolerance.trim().into()));
    }
    let middle = parse_in(middle, sole_unit(tolerance))?;
    LengthRange::between(middle - by, middle + by)
}

impl std::str::FromStr for LengthRange {
    type Err = RangeError;

    fn from_str(text: &str) -> Result<LengthRange, RangeError> {
        LengthRange::parse(text)
    }
}

/// The exact range, as one may write it in a book.
impl fmt::Display for LengthRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.worded(|length| length.to_string()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_range_is_read_in_every_notation() {
        let rows = [
            ("36\" to 36 1/4\"", "36\" to 36 1/4\""),
            ("36 to 36 1/4 in", "36\" to 36 1/4\""),
            ("36\" TO 36 1/4\"", "36\" to 36 1/4\""),
            ("36\u{a0}to\u{a0}36¼″", "36\" to 36 1/4\""),
            ("36\" – 40\"", "36\" to 40\""),
            ("36–40 in", "36\" to 40\""),
            ("36\" - 40\"", "36\" to 40\""),
            ("24–26″", "24\" to 26\""),
            ("24½—26½”", "24 1/2\" to 26 1/2\""),
            ("24\u{2009}‒\u{202f}26\u{a0}in", "24\" to 26\""),
            ("\u{feff}24′\u{2060} to 26’", "288\" to 312\""),
            ("≥24\"", "at least 24\""),
            ("≤\u{a0}36\"", "at most 36\""),
            ("at least 24\"", "at least 24\""),
            ("At most 3'", "at most 36\""),
            ("35 7/8\" ± 1/8\"", "35 3/4\" to 36\""),
            ("35 7/8 ± 1/8 in", "35 3/4\" to 36\""),
            ("35 7/8\" +/- 1/8\"", "35 3/4\" to 36\""),
            ("876 mm", "876 mm"),
            ("600 to 610 mm", "600 mm to 610 mm"),
            ("-1\" to 1\"", "−1\" to 1\""),
        ];
        for (written, printed) in rows {
            let range = LengthRange::parse(written).unwrap_or_else(|error| panic!("{written}: {error}"));
            assert_eq!(range.to_string(), printed, "{written}");
            assert_eq!(LengthRange::parse(printed), Ok(range));
        }
    }

    #[test]
    fn a_dash_between_feet_and_inches_is_no_range() {
        for written in ["2' - 10 1/2\"", "2'–10 1/2\"", "2'-10 1/2\""] {
            let length = Length::parse("34 1/2\"").unwrap();
            assert_eq!(LengthRange::parse(written), Ok(LengthRange::exactly(length)));
        }
        assert_eq!(LengthRange::parse("2' - 30\"").unwrap().to_string(), "24\" to 30\"");
    }

    #[test]
    fn both_ends_belong_to_the_range() {
        let range = LengthRange::parse("36\" to 36 1/4\"").unwrap();
        let at = |sixty_fourths| range.contains(Length::from_sixty_fourths(sixty_fourths));
        assert_eq!([at(2303), at(2304), at(2320), at(2321)], [false, true, true, false]);
        assert!(LengthRange::default().contains(Length::ZERO));
        assert!(!LengthRange::at_least(Length::from_inches(1)).contains(Length::ZERO));
    }

    #[test]
    fn what_is_no_range_says_so() {
        let rows = [
            (
                "36\" to 24\"",
                "the range runs backwards: 36\" is more than 24\"",
                "write the smaller length first: 24\" to 36\"",
            ),
            ("36 to 40", "`40` has no unit", "write `40\"` for inches or `40 mm` for millimetres"),
            ("at least 24", "`24` has no unit", "write `24\"` for inches or `24 mm` for millimetres"),
            (
                "36\" ± -1\"",
                "the tolerance `-1\"` is below zero",
                "write the tolerance without a sign after `±`: `… ± …`",
            ),
            ("36\"-40\"", "`36\"-40\"` is two lengths where one is wanted", "part the ends with `to`: `… to …`"),
            ("36 to 3' 4\"", "`36` has no unit", "write `36\"` for inches or `36 mm` for millimetres"),
            ("", "no length is written", "write a number and its unit: `…\"` or `… mm`"),
        ];
        for (written, message, remedy) in rows {
            let error = LengthRange::parse(written).unwrap_err();
            assert_eq!((error.to_string().as_str(), error.remedy().text()), (message, remedy), "{written}");
        }
        assert!(LengthRange::parse("36 to 40").unwrap_err().is_bare());
    }

    #[test]
    fn a_range_is_told_in_either_system() {
        let range = LengthRange::parse("600 mm to 36\"").unwrap();
        assert_eq!(range.imperial(Grain::Sixteenth), "≈ 23 5/8\" to 36\"");
        assert_eq!(range.metric(), "600 mm to 914 mm");
    }

    proptest! {
        #[test]
        fn a_range_is_read_as_printed(least in -10_000..10_000_i64, wider in 0..10_000_i64) {
            let [least, most] = [least, least + wider].map(Length::from_sixty_fourths);
            let range = LengthRange::between(least, most).unwrap();
            prop_assert_eq!(LengthRange::parse(&range.to_string()), Ok(range));
        }
    }
}
