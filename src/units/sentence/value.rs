//! The values that sentences are made of.

use std::fmt;

use rust_decimal::Decimal;

use crate::units::{Area, Date, Figure, Length, LengthRange, Money, Percent, Quantity, System, Weight};

/// A value in a sentence: itself, and not yet its words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// A length in both systems, that of the book first: `30 1/16" (763.6 mm)`.
    Length(Length, System),
    /// A length of a room or a run of one, told in feet and inches where it is not metric: `8'-1" (2464 mm)`.
    OfRoom(Length, System),
    /// A range of lengths, in the book's system first: `51 mm to 711 mm (2" to 28")`.
    Range(LengthRange, System),
    /// A length as one may write it in a book in these units, exactly.
    Written(Length, System),
    /// A range as one may write it.
    WrittenRange(LengthRange, System),
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
    Weight(Weight, System),
    /// An area.
    Area(Area, System),
}

impl Value {
    /// What it is a value of, in a word, for programs.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Length(..) | Self::OfRoom(..) | Self::Written(..) => "length",
            Self::Range(..) | Self::WrittenRange(..) => "range",
            Self::Count(_) => "count",
            Self::Number(_) | Self::Figure(_) => "number",
            Self::Quantity(_) => "quantity",
            Self::Date(_) => "date",
            Self::Money(_) => "money",
            Self::Percent(_) => "percent",
            Self::Weight(..) => "weight",
            Self::Area(..) => "area",
        }
    }

    /// The same in these units, where it is a measure.
    #[must_use]
    pub fn in_units(self, system: System) -> Self {
        match self {
            Self::Length(length, _) => Self::Length(length, system),
            Self::OfRoom(length, _) => Self::OfRoom(length, system),
            Self::Range(range, _) => Self::Range(range, system),
            Self::Written(length, _) => Self::Written(length, system),
            Self::WrittenRange(range, _) => Self::WrittenRange(range, system),
            Self::Weight(weight, _) => Self::Weight(weight, system),
            Self::Area(area, _) => Self::Area(area, system),
            Self::Count(_)
            | Self::Number(_)
            | Self::Figure(_)
            | Self::Quantity(_)
            | Self::Date(_)
            | Self::Money(_)
            | Self::Percent(_) => self,
        }
    }

    /// As pages print it: inches and feet with primes.
    pub fn printed(&self) -> String {
        self.to_string().replace('"', "\u{2033}").replace('\'', "\u{2032}")
    }

    /// It exactly, as no sentence rounds it: lengths in whole nanometres, a day as `2027-01-15`.
    pub fn exact(&self) -> String {
        let nanometres = |length: Length| format!("{} nm", length.nanometres());
        match self {
            Self::Length(length, _) | Self::OfRoom(length, _) | Self::Written(length, _) => nanometres(*length),
            Self::Range(range, _) | Self::WrittenRange(range, _) => {
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
            Self::Length(length, system) => f.write_str(&in_both(*length, *system)),
            Self::OfRoom(length, system) => f.write_str(
                &system.in_a_row(&length.inches().feet_and_inches().to_string(), &length.metric().to_string()),
            ),
            Self::Range(range, system) => f.write_str(&range_in_both(*range, *system)),
            Self::Written(length, system) => f.write_str(&written(*length, *system)),
            Self::WrittenRange(range, system) => f.write_str(&range.worded(|length| written(length, *system))),
            Self::Count(count) => write!(f, "{count}"),
            Self::Number(number) => write!(f, "{number}"),
            Self::Figure(figure) => write!(f, "{figure}"),
            Self::Quantity(quantity) => write!(f, "{quantity}"),
            Self::Date(date) => write!(f, "{date}"),
            Self::Money(money) => write!(f, "{money}"),
            Self::Percent(percent) => write!(f, "{percent}"),
            Self::Weight(weight, system) => {
                f.write_str(&system.in_a_row(&weight.imperial().to_string(), &weight.metric().to_string()))
            }
            Self::Area(area, system) => {
                f.write_str(&system.in_a_row(&area.imperial().to_string(), &area.metric().to_string()))
            }
        }
    }
}

/// In the book's own units; in millimetres too where it is in no 64ths of an inch.
fn written(length: Length, system: System) -> String {
    match system.is_metric() {
        true => length.in_millimetres(),
        false => length.to_string(),
    }
}

fn in_both(length: Length, system: System) -> String {
    system.in_a_row(&length.inches().to_string(), &length.metric().to_string())
}

fn range_in_both(range: LengthRange, system: System) -> String {
    system.in_a_row(&range.worded(|length| length.inches().to_string()), &range.metric())
}
