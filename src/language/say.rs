//! What can stand in the hole of a sentence, and the macro that fills it.

use crate::units::date::{Span, SpanUnit};
use crate::units::{Date, LeadTime, Money, Percent};

use super::Words;

/// Can be said in any language.
pub trait Say {
    /// Its words.
    fn said(&self, words: Words) -> String;

    /// How many it is, by which a sentence takes its plural form.
    fn count(&self) -> Option<u64> {
        None
    }
}

/// The sentence of a key, with what stands in its holes by name: `say!(words, "units.items", n = 3)`.
macro_rules! say {
    ($words:expr, $key:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $words.fill($key, &[$((stringify!($name), &$value as &dyn $crate::language::Say)),*])
    };
}
pub(crate) use say;

impl<T: Say + ?Sized> Say for &T {
    fn said(&self, words: Words) -> String {
        (**self).said(words)
    }

    fn count(&self) -> Option<u64> {
        (**self).count()
    }
}

impl Say for str {
    fn said(&self, _: Words) -> String {
        self.to_owned()
    }
}

impl Say for String {
    fn said(&self, _: Words) -> String {
        self.clone()
    }
}

macro_rules! counts {
    ($($number:ty),+) => {
        $(impl Say for $number {
            fn said(&self, words: Words) -> String {
                words.number(&self.to_string())
            }

            fn count(&self) -> Option<u64> {
                u64::try_from(*self).ok()
            }
        })+
    };
}

counts! { usize, u32, u64, i64 }

impl Say for Date {
    fn said(&self, words: Words) -> String {
        words.day(*self)
    }
}

impl Say for Money {
    fn said(&self, words: Words) -> String {
        words.amount(*self)
    }
}

impl Say for Percent {
    fn said(&self, words: Words) -> String {
        say!(words, "units.percent", number = words.decimal(&self.to_string().replace(" %", "")))
    }
}

impl Say for Span {
    fn said(&self, words: Words) -> String {
        let key = match self.unit {
            SpanUnit::Day => "units.time.days",
            SpanUnit::WorkingDay => "units.time.working_days",
            SpanUnit::Week => "units.time.weeks",
            SpanUnit::Month => "units.time.months",
        };
        say!(words, key, n = self.count)
    }
}

impl Say for LeadTime {
    fn said(&self, words: Words) -> String {
        let (least, most) = (self.earliest(), self.latest());
        match (least.count, most.count) {
            (0, 0) => say!(words, "units.time.in_stock"),
            (same, other) if same == other => most.said(words),
            (least, _) => say!(words, "units.time.range", least = least, most = most.said(words)),
        }
    }
}
