//! The clock: the only place that asks it, for the day of a run and for the moment of what is recorded.

use crate::ledger::Moment;
use crate::units::{Date, Fault};

use super::Failure;

/// `--today`, for results that can be repeated.
#[derive(clap::Args, Clone, Debug)]
pub struct Today {
    /// The day to count from, such as 2027-01-15; today if left out
    #[arg(long = "today", value_name = "DATE", value_parser = date)]
    today: Option<Date>,
}

fn date(text: &str) -> Result<Date, String> {
    Date::parse(text).map_err(|error| format!("{error}; {}", error.remedy()))
}

impl Today {
    /// The day asked for, or the clock's.
    #[expect(clippy::disallowed_methods, reason = "the one place that asks the clock for the day")]
    pub fn date(&self) -> Result<Date, Failure> {
        if let Some(today) = self.today {
            return Ok(today);
        }
        let now = jiff::ZonedDateTime::now().date();
        Date::new(now.year(), now.month(), now.day())
            .ok_or_else(|| "the clock shows no day; give one with --today".into())
    }
}

/// The moment by the clock, to the second, for what is recorded.
#[expect(clippy::disallowed_methods, reason = "the one place that asks the clock for the moment")]
pub fn now() -> Result<Moment, Failure> {
    Moment::at(jiff::Timestamp::now()).ok_or_else(|| "the clock shows no moment that can be written; set it".into())
}
