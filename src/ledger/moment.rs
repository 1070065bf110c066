//! A moment as the clock said it, to the second: `2027-01-16T19:22:03Z`.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::units::{Date, Piece, Say};

/// A moment in universal time, to the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment(jiff::Timestamp);

/// Text that is no moment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAMoment(String);

impl fmt::Display for NotAMoment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}` is not a moment such as `2027-01-16T19:22:03Z`", self.0)
    }
}

impl std::error::Error for NotAMoment {}

impl Moment {
    /// Its day, in universal time.
    pub fn day(self) -> Option<Date> {
        Date::parse(self.to_string().get(..10)?).ok()
    }

    /// The moment so many seconds later, or earlier where they are less than none.
    pub fn plus_seconds(self, seconds: i64) -> Moment {
        Moment(self.0.saturating_add(jiff::Span::new().seconds(seconds)).unwrap_or(self.0))
    }

    /// Midnight of a day in universal time.
    pub fn midnight(day: Date) -> Option<Moment> {
        format!("{}T00:00:00Z", day.iso()).parse().ok()
    }

    /// The second that a clock's timestamp is in.
    pub fn at(timestamp: jiff::Timestamp) -> Option<Moment> {
        jiff::Timestamp::from_second(timestamp.as_second()).ok().map(Moment)
    }
}

impl std::str::FromStr for Moment {
    type Err = NotAMoment;

    fn from_str(text: &str) -> Result<Moment, NotAMoment> {
        let fault = || NotAMoment(text.into());
        let moment = Moment::at(text.parse().map_err(|_| fault())?).ok_or_else(fault)?;
        // One way to write it, so that the same moment has the same digest.
        if moment.to_string() == text { Ok(moment) } else { Err(fault()) }
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl crate::units::Told for Moment {}

impl Say for Moment {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        self.to_string().add_to(pieces);
    }
}

impl Serialize for Moment {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Moment {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Moment, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_moment_is_written_in_one_way() {
        let text = "2027-01-16T19:22:03Z";
        assert_eq!(text.parse::<Moment>().unwrap().to_string(), text);
        for other in ["2027-01-16T19:22:03+00:00", "2027-01-16T19:22:03.5Z", "2027-01-16 19:22:03Z", "2027-01-16", ""] {
            assert!(other.parse::<Moment>().is_err(), "{other}");
        }
    }
}
