//! Working days: Monday to Friday, less the days the book says are closed.

use super::Date;
use std::collections::BTreeSet;

/// Which days are worked. No public holiday is built in: a book lists the days its people are closed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Calendar {
    /// Days off besides Saturdays and Sundays.
    pub closed: BTreeSet<Date>,
}

impl Calendar {
    /// A calendar with these days off besides weekends.
    pub fn new(closed: impl IntoIterator<Item = Date>) -> Calendar {
        Calendar { closed: closed.into_iter().collect() }
    }

    /// True on Monday to Friday, unless closed.
    pub fn is_working(&self, date: Date) -> bool {
        date.weekday() <= 5 && !self.closed.contains(&date)
    }

    /// The `count`th working day after `date`, which itself is not counted (SD-05). Zero is `date` itself.
    pub fn plus_working_days(&self, date: Date, count: i64) -> Date {
        self.walk(date, count.unsigned_abs(), if count < 0 { -1 } else { 1 })
    }

    /// The `count`th working day before `date`, which itself is not counted (SD-05). Zero is `date` itself.
    pub fn minus_working_days(&self, date: Date, count: i64) -> Date {
        self.walk(date, count.unsigned_abs(), if count < 0 { 1 } else { -1 })
    }

    /// That day where it is worked, else the last one before it that is.
    pub fn worked_by(&self, date: Date) -> Date {
        if self.is_working(date) { date } else { self.minus_working_days(date, 1) }
    }

    /// Working days after `from`, up to and with `to`; none if `to` is not later.
    pub fn working_days_between(&self, from: Date, to: Date) -> u64 {
        let days = from.days_until(to).max(0);
        (1..=days).map(|day| u64::from(self.is_working(from.plus_days(day)))).sum()
    }

    fn walk(&self, mut date: Date, mut count: u64, step: i64) -> Date {
        while count > 0 {
            let next = date.plus_days(step);
            if next == date {
                break; // the calendar ends here
            }
            date = next;
            count -= u64::from(self.is_working(date));
        }
        date
    }
}
