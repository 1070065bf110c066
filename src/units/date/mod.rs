//! Dates, working days and lead times, with no clock: who calls says what day it is.

mod calendar;
mod lead_time;
#[cfg(test)]
mod tests;

pub use calendar::Calendar;
pub use lead_time::{LeadTime, LeadTimeError, Span, SpanUnit};

use std::fmt;

use crate::units::{Fault, Phrase, phrase, shown};

/// A day of the Gregorian calendar, without time or zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date(jiff::civil::Date);

/// Why a text is not a date.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DateError {
    /// Not in the one notation.
    Notation(String),
    /// In the notation, but the calendar has no such day.
    NoSuchDay(String),
}

impl Fault for DateError {
    fn message(&self) -> Phrase {
        match self {
            DateError::Notation(text) => phrase!("`{text}` is not a date as year, month and day", text),
            DateError::NoSuchDay(text) => phrase!("the calendar has no day `{text}`", text),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            DateError::Notation(_) => "write the year, month and day with hyphens, such as `2027-03-01`".into(),
            DateError::NoSuchDay(_) => "check the month and the day".into(),
        }
    }
}

shown!(DateError);

/// Short names of the months, in English.
const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

impl Date {
    /// The day of a year, month (1–12) and day of the month; none if there is no such day.
    pub fn new(year: i16, month: i8, day: i8) -> Option<Date> {
        jiff::civil::Date::new(year, month, day).ok().map(Date)
    }

    /// Reads `2027-03-01` and no other notation, since `03/01/2027` is two days to two readers.
    ///
    /// # Errors
    /// [`DateError`] says whether the notation is wrong or the day doesn't exist.
    pub fn parse(text: &str) -> Result<Date, DateError> {
        let written = text.trim();
        let notation = || DateError::Notation(written.into());
        let shape: String = written.chars().map(|c| if c.is_ascii_digit() { '0' } else { c }).collect();
        if shape != "0000-00-00" {
            return Err(notation());
        }
        let mut parts = written.split('-');
        let mut part = || parts.next().ok_or_else(notation);
        let year = part()?.parse().map_err(|_| notation())?;
        let month = part()?.parse().map_err(|_| notation())?;
        let day = part()?.parse().map_err(|_| notation())?;
        Date::new(year, month, day).ok_or_else(|| DateError::NoSuchDay(written.into()))
    }

    /// The year.
    pub fn year(self) -> i16 {
        self.0.year()
    }

    /// The month, 1 to 12.
    pub fn month(self) -> i8 {
        self.0.month()
    }

    /// The day of the month, from 1.
    pub fn day(self) -> i8 {
        self.0.day()
    }

    /// Monday is 1, Sunday 7 (ISO 8601).
    pub fn weekday(self) -> i8 {
        self.0.weekday().to_monday_one_offset()
    }

    /// The year and number of its week (ISO 8601), which may belong to the year before or after.
    pub fn iso_week(self) -> (i16, i8) {
        let week = self.0.iso_week_date();
        (week.year(), week.week())
    }

    /// So many calendar days later, or earlier if below zero; the last day there is when past it.
    pub fn plus_days(self, days: i64) -> Date {
        let days = days.clamp(-FOREVER, FOREVER);
        Date(self.0.saturating_add(jiff::Span::new().days(days)))
    }

    /// So many calendar months later; the last of the month when that has no such day.
    pub fn plus_months(self, months: i64) -> Date {
        let months = months.clamp(-FOREVER / 31, FOREVER / 31);
        Date(self.0.saturating_add(jiff::Span::new().months(months)))
    }

    /// Calendar days from this day to `later`; below zero if that is earlier.
    pub fn days_until(self, later: Date) -> i64 {
        self.0.duration_until(later.0).as_hours() / 24
    }

    /// As in files: `2027-01-11`.
    pub fn iso(self) -> String {
        self.0.to_string()
    }
}

/// More days than lie between any two dates, and few enough for the date library to hold.
const FOREVER: i64 = 7_000_000;

impl std::str::FromStr for Date {
    type Err = DateError;

    fn from_str(text: &str) -> Result<Date, DateError> {
        Date::parse(text)
    }
}

/// As on a sheet: `11 Jan 2027`, which no reader can take for another day.
impl serde::Serialize for Date {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.iso())
    }
}

impl<'de> serde::Deserialize<'de> for Date {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Date, D::Error> {
        let text = String::deserialize(deserializer)?;
        let date = Date::parse(&text).map_err(serde::de::Error::custom)?;
        if date.iso() == text { Ok(date) } else { Err(serde::de::Error::custom("not a date as year, month and day")) }
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let month = usize::try_from(self.month() - 1).ok().and_then(|at| MONTHS.get(at)).copied().unwrap_or_default();
        write!(f, "{} {month} {}", self.day(), self.year())
    }
}
