//! The values that sentences are made of.

use std::fmt;

use rust_decimal::Decimal;

use crate::units::length::Grain;
use crate::units::{Area, Date, Figure, Length, LengthRange, Money, Percent, Quantity, System, Weight};

/// A value in a sentence: itself, and not yet its words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// A length in both systems, that of the book first: `30 1/16" (763.6 mm)`.
    Length(Length, System),
    /// A range of lengths, in the book's system first: `51 mm to 711 mm (2" to 28")`.
    Range(LengthRange, System),
    /// A length as it is written, in its own unit.
    Written(Length),
    /// A range as it is written.
    WrittenRange(LengthRange),
    /// How many.
    Count(i128),
    /// A number.
    Number(Decimal),
    /// A number as it is shown, rounded where it must be.
    Figure(Figure),
    /// How much of something.
    Quantity(Quantity),
    /// A day.
    Date(Date),
    /// An amount.
    Money(Money),
    /// A percentage.
    Percent(Percent),
    /// A weight.
    Weight(Weight),
    /// An area.
    Area(Area),
}

impl Value {
    /// What it is a value of, in a word, for programs.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Length(..) | Self::Written(_) => "length",
            Self::Range(..) | Self::WrittenRange(_) => "range",
            Self::Count(_) => "count",
            Self::Number(_) | Self::Figure(_) => "number",
            Self::Quantity(_) => "quantity",
            Self::Date(_) => "date",
            Self::Money(_) => "money",
            Self::Percent(_) => "percent",
            Self::Weight(_) => "weight",
            Self::Area(_) => "area",
        }
    }

    /// It exactly, as no sentence rounds it: lengths in whole nanometres, a day as `2027-01-15`.
    pub fn exact(&self) -> String {
        let nanometres = |length: Length| format!("{} nm", length.nanometres());
        match self {
            Self::Length(length, _) | Self::Written(length) => nanometres(*length),
            Self::Range(range, _) | Self::WrittenRange(range) => {
                let end = |end: Option<Length>| end.map_or_else(|| "..".to_string(), nanometres);
                format!("{} to {}", end(range.least), end(range.most))
            }
            Self::Date(date) => date.iso(),
            other => other.to_string(),
        }
    }
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length(length, system) => in_both(f, *length, *system),
            Self::Range(range, system) => range_in_both(f, *range, *system),
            Self::Written(length) => write!(f, "{length}"),
            Self::WrittenRange(range) => write!(f, "{range}"),
            Self::Count(count) => write!(f, "{count}"),
            Self::Number(number) => write!(f, "{number}"),
            Self::Figure(figure) => write!(f, "{figure}"),
            Self::Quantity(quantity) => write!(f, "{quantity}"),
            Self::Date(date) => write!(f, "{date}"),
            Self::Money(money) => write!(f, "{money}"),
            Self::Percent(percent) => write!(f, "{percent}"),
            Self::Weight(weight) => write!(f, "{weight}"),
            Self::Area(area) => write!(f, "{area}"),
        }
    }
}

fn in_both(f: &mut fmt::Formatter<'_>, length: Length, system: System) -> fmt::Result {
    let sixteenth = length.imperial(Grain::Sixteenth);
    let inches = if sixteenth.exact { sixteenth } else { length.imperial(Grain::ThirtySecond) };
    match system {
        System::Imperial => write!(f, "{inches} ({})", length.metric()),
        System::Metric => write!(f, "{} ({inches})", length.metric()),
    }
}

fn range_in_both(f: &mut fmt::Formatter<'_>, range: LengthRange, system: System) -> fmt::Result {
    if system == System::Imperial {
        return write!(f, "{range}");
    }
    match (range.least, range.most) {
        (Some(least), Some(most)) if least == most => write!(f, "{}", least.metric())?,
        (Some(least), Some(most)) => write!(f, "{} to {}", least.metric(), most.metric())?,
        (Some(least), None) => write!(f, "at least {}", least.metric())?,
        (None, Some(most)) => write!(f, "at most {}", most.metric())?,
        (None, None) => return write!(f, "{range}"),
    }
    let inches = |length: Length| {
        let sixteenth = length.imperial(Grain::Sixteenth);
        if sixteenth.exact { sixteenth } else { length.imperial(Grain::ThirtySecond) }
    };
    match (range.least, range.most) {
        (Some(least), Some(most)) if least == most => write!(f, " ({})", inches(least)),
        (Some(least), Some(most)) => write!(f, " ({} to {})", inches(least), inches(most)),
        (Some(least), None) => write!(f, " (at least {})", inches(least)),
        (None, Some(most)) => write!(f, " (at most {})", inches(most)),
        (None, None) => Ok(()),
    }
}
