//! Lead times and other stretches of days: `6-8 weeks`, `10 working days`, `in stock`.

use super::super::typography::{is_dash, is_hyphen, is_space};
use super::{Calendar, Date};
use std::fmt;

use crate::units::{Fault, Phrase, in_words, phrase, shown};

/// What a stretch of time is counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SpanUnit {
    /// Calendar days.
    Day,
    /// Days that the calendar works.
    WorkingDay,
    /// Seven calendar days.
    Week,
    /// Calendar months.
    Month,
}

/// What may follow a lead time and adds nothing to it.
const FROM_THE_ORDER: [&str; 4] = [" aro", " from order", " after order", " from the order"];

/// What may stand before a lead time and adds nothing to it: it is planned by the longest.
const ABOUT: [&str; 7] = ["approx. ", "approx ", "about ", "ca. ", "circa ", "ships in ", "aprox. "];

/// What is there at once.
const ON_THE_SHELF: [&str; 7] =
    ["in stock", "ex stock", "from stock", "stock", "stock item", "stocked", "off the shelf"];

impl SpanUnit {
    const ALL: [(SpanUnit, &'static str, &'static str); 8] = [
        (SpanUnit::Day, "day", "days"),
        (SpanUnit::WorkingDay, "working day", "working days"),
        (SpanUnit::WorkingDay, "business day", "business days"),
        (SpanUnit::Week, "week", "weeks"),
        (SpanUnit::Week, "wk", "wks"),
        (SpanUnit::Month, "month", "months"),
        (SpanUnit::Month, "mo", "mos"),
        (SpanUnit::Month, "mth", "mths"),
    ];

    /// Most of it that can be read: ten years.
    fn limit(self) -> u32 {
        match self {
            SpanUnit::Day | SpanUnit::WorkingDay => 3650,
            SpanUnit::Week => 520,
            SpanUnit::Month => 120,
        }
    }

    fn named(words: &str) -> Option<SpanUnit> {
        let words = words.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
        // A supplier counts from the order; so does a plan.
        let words = FROM_THE_ORDER.iter().find_map(|end| words.strip_suffix(end)).unwrap_or(&words);
        let words = words.trim_end().trim_end_matches('.');
        SpanUnit::ALL.iter().find(|(_, one, many)| words == *one || words == *many).map(|row| row.0)
    }

    /// The word for `count` of it.
    pub fn word(self, count: u32) -> &'static str {
        let row = SpanUnit::ALL.iter().find(|row| row.0 == self);
        row.map_or("", |(_, one, many)| if count == 1 { one } else { many })
    }
}

/// One stretch of time, such as `10 working days`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Span {
    /// How many.
    pub count: u32,
    /// Of what.
    pub unit: SpanUnit,
}

/// How long something takes to come: at the least, and at the most, which is what a plan must allow for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct LeadTime {
    /// At the least.
    pub least: u32,
    /// At the most.
    pub most: u32,
    /// Of what.
    pub unit: SpanUnit,
}

/// Why a text is not a stretch of time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LeadTimeError {
    /// A number without a unit.
    Bare(String),
    /// Not a number and a unit of time.
    Unreadable(String),
    /// The least is more than the most.
    Reversed(String),
    /// Past ten years.
    TooLong(String),
    /// A range where one number is wanted.
    NotOne(String),
}

impl Fault for LeadTimeError {
    fn message(&self) -> Phrase {
        match self {
            LeadTimeError::Bare(n) => phrase!("`{n}` doesn't say days, weeks or months", n),
            LeadTimeError::Unreadable(text) => phrase!("`{text}` is not a stretch of time", text),
            LeadTimeError::Reversed(text) => phrase!("`{text}` runs backwards", text),
            LeadTimeError::TooLong(text) => phrase!("`{text}` is more than ten years", text),
            LeadTimeError::NotOne(text) => {
                phrase!("`{text}` is a range where one stretch of time is wanted", text)
            }
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            LeadTimeError::Bare(n) => {
                phrase!("write `{n} weeks`, `{n} days` or `{n} working days`", n, n, n)
            }
            LeadTimeError::Unreadable(text) if in_words::stretch(text).is_some() => {
                phrase!("write `{}`", in_words::stretch(text).unwrap_or_default())
            }
            LeadTimeError::Unreadable(_) => {
                "write the longest that it may take in whole days, working days, weeks or months, such as `6-8 weeks`, or `in stock`".into()
            }
            LeadTimeError::Reversed(_) => "write the shorter time first, such as `6-8 weeks`".into(),
            LeadTimeError::TooLong(_) => "check the number".into(),
            LeadTimeError::NotOne(_) => "write one number, such as `10 working days`".into(),
        }
    }
}

shown!(LeadTimeError);

impl Span {
    /// Reads one stretch of time.
    ///
    /// # Errors
    /// As [`LeadTime::parse`], and [`LeadTimeError::NotOne`] for a range.
    pub fn parse(text: &str) -> Result<Span, LeadTimeError> {
        let read = LeadTime::parse(text)?;
        if read.least != read.most {
            return Err(LeadTimeError::NotOne(text.trim().into()));
        }
        Ok(read.latest())
    }

    /// The day this long after `date`. Working days are those of `calendar`; other units pay it no heed.
    pub fn after(self, date: Date, calendar: &Calendar) -> Date {
        self.from(date, calendar, 1)
    }

    /// The day this long before `date`.
    pub fn before(self, date: Date, calendar: &Calendar) -> Date {
        self.from(date, calendar, -1)
    }

    fn from(self, date: Date, calendar: &Calendar, sign: i64) -> Date {
        let count = i64::from(self.count) * sign;
        match self.unit {
            SpanUnit::Day => date.plus_days(count),
            SpanUnit::WorkingDay => calendar.plus_working_days(date, count),
            SpanUnit::Week => date.plus_days(count * 7),
            SpanUnit::Month => date.plus_months(count),
        }
    }
}

impl LeadTime {
    /// On the shelf: no time at all.
    pub const IN_STOCK: LeadTime = LeadTime { least: 0, most: 0, unit: SpanUnit::Day };

    /// Reads `6-8 weeks`, `6 to 8 wks ARO`, `12 weeks`, `10 working days`, `3 months` or `in stock`; and the same in words
    /// of other languages, such as `zwei Wochen`.
    ///
    /// # Errors
    /// Says what is wrong, and [`LeadTimeError::remedy`] how to write it.
    pub fn parse(text: &str) -> Result<LeadTime, LeadTimeError> {
        let read = Self::parse_as_written(text);
        match read {
            Err(LeadTimeError::Unreadable(_)) => {
                let in_these = in_words::whole_stretch(text).and_then(|words| Self::parse_as_written(&words).ok());
                in_these.map_or(read, Ok)
            }
            _ => read,
        }
    }

    /// Reads it in the words in which it is printed.
    pub(in crate::units) fn parse_as_written(text: &str) -> Result<LeadTime, LeadTimeError> {
        let written = text.trim_matches(is_space);
        let unreadable = || LeadTimeError::Unreadable(written.into());
        match written.to_lowercase().replace('-', " ").as_str() {
            "next day" => return Ok(LeadTime { least: 1, most: 1, unit: SpanUnit::Day }),
            words if ON_THE_SHELF.contains(&words) => return Ok(LeadTime::IN_STOCK),
            _ => {}
        }
        let counted = ABOUT.iter().find_map(|about| after_in_any_case(written, about)).unwrap_or(written);
        let (first, rest) = leading_count(counted).ok_or_else(unreadable)?;
        let (last, rest) = match after_to(rest) {
            Some(rest) => leading_count(rest).ok_or_else(unreadable)?,
            None => (first, rest),
        };
        if rest.trim().is_empty() {
            return Err(LeadTimeError::Bare(written.into()));
        }
        let unit = SpanUnit::named(rest).ok_or_else(unreadable)?;
        let too_long = || LeadTimeError::TooLong(written.into());
        let least: u32 = first.parse().map_err(|_| too_long())?;
        let most: u32 = last.parse().map_err(|_| too_long())?;
        if least.max(most) > unit.limit() {
            return Err(too_long());
        }
        if least > most {
            return Err(LeadTimeError::Reversed(written.into()));
        }
        Ok(LeadTime { least, most, unit })
    }

    /// The longest it may take.
    pub const fn latest(self) -> Span {
        Span { count: self.most, unit: self.unit }
    }

    /// The shortest it may take.
    pub const fn earliest(self) -> Span {
        Span { count: self.least, unit: self.unit }
    }

    /// The last day to order, for it to be there on `date` though it takes its longest.
    pub fn before(self, date: Date, calendar: &Calendar) -> Date {
        self.latest().before(date, calendar)
    }
}

/// Digits at the start, and what follows them.
fn leading_count(text: &str) -> Option<(&str, &str)> {
    let text = text.trim_start_matches(is_space);
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    (end > 0).then(|| text.split_at(end))
}

/// What follows some plain words at the start, whatever their case.
fn after_in_any_case<'t>(text: &'t str, words: &str) -> Option<&'t str> {
    let (start, rest) = text.split_at_checked(words.len())?;
    start.eq_ignore_ascii_case(words).then_some(rest)
}

/// What follows a dash, a stroke or `to`.
fn after_to(text: &str) -> Option<&str> {
    let text = text.trim_start_matches(is_space);
    let to = || text.strip_prefix("to").filter(|rest| rest.starts_with(is_space));
    text.strip_prefix(|c| is_hyphen(c) || is_dash(c) || c == '/').or_else(to)
}

impl std::str::FromStr for LeadTime {
    type Err = LeadTimeError;

    fn from_str(text: &str) -> Result<LeadTime, LeadTimeError> {
        LeadTime::parse(text)
    }
}

impl std::str::FromStr for Span {
    type Err = LeadTimeError;

    fn from_str(text: &str) -> Result<Span, LeadTimeError> {
        Span::parse(text)
    }
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.count, self.unit.word(self.count))
    }
}

impl fmt::Display for LeadTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.least, self.most) {
            (0, 0) => write!(f, "in stock"),
            (least, most) if least == most => self.latest().fmt(f),
            (least, _) => write!(f, "{least} to {}", self.latest()),
        }
    }
}
