//! Reads a number and one unit of a given kind, for areas and weights.

use super::number::{Cursor, NumberError, ScaleError, UnitRead};
use super::{Fault, Kind, Phrase, phrase, shown};

/// Why a text is not a measure of the kind that is wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MeasureError {
    /// Nothing is written.
    Empty(Kind),
    /// A number without a unit.
    Bare(Kind, String),
    /// Not a number and a unit, or more than that.
    Unreadable(Kind, String),
    /// The number itself is wrong.
    Number(NumberError),
    /// A unit nobody knows, or one of another kind.
    WrongUnit(Kind, String),
    /// No whole number of base units.
    NotExact(Kind, String),
    /// Past the largest that can be read.
    TooLarge(Kind, String),
}

impl From<NumberError> for MeasureError {
    fn from(error: NumberError) -> MeasureError {
        MeasureError::Number(error)
    }
}

impl Fault for MeasureError {
    fn message(&self) -> Phrase {
        match self {
            MeasureError::Empty(kind) => {
                phrase!("{} is wanted and nothing is written", kind.name())
            }
            MeasureError::Bare(_, n) => phrase!("`{n}` has no unit", n),
            MeasureError::Unreadable(kind, text) => phrase!("`{text}` is not {}", text, kind.name()),
            MeasureError::Number(error) => error.message(),
            MeasureError::WrongUnit(kind, unit) => {
                phrase!("`{unit}` is not a unit for {}", unit, kind.name())
            }
            MeasureError::NotExact(_, text) => phrase!("`{text}` can't be held exactly", text),
            MeasureError::TooLarge(kind, text) => {
                phrase!("`{text}` is too large for {}", text, kind.name())
            }
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            MeasureError::Empty(kind) | MeasureError::Unreadable(kind, _) | MeasureError::WrongUnit(kind, _) => {
                phrase!("write a number and its unit, such as {}", kind.examples("42"))
            }
            MeasureError::Bare(kind, n) => phrase!("write {}", kind.examples(n)),
            MeasureError::Number(error) => error.remedy(),
            MeasureError::NotExact(..) => "write it with fewer decimals".into(),
            MeasureError::TooLarge(..) => "check the number and its unit".into(),
        }
    }
}

shown!(MeasureError);

impl Kind {
    fn examples(self, number: &str) -> Phrase {
        let (imperial, metric) = match self {
            Kind::Length => ("in", "mm"),
            Kind::Area => ("sq ft", "m²"),
            Kind::Weight => ("lb", "kg"),
        };
        let written = |unit: &str| phrase!("`{number} {unit}`", number, unit);
        Phrase::by_units(written(imperial), written(metric))
    }
}

/// Sums of a measure, past what can be held at that end, and its reading out of text.
macro_rules! adds {
    ($of:ident) => {
        impl std::ops::Add for $of {
            type Output = $of;

            fn add(self, other: $of) -> $of {
                $of(self.0.saturating_add(other.0))
            }
        }

        impl std::ops::Sub for $of {
            type Output = $of;

            fn sub(self, other: $of) -> $of {
                $of(self.0.saturating_sub(other.0))
            }
        }

        impl std::iter::Sum for $of {
            fn sum<I: Iterator<Item = $of>>(all: I) -> $of {
                all.fold($of::ZERO, |sum, one| sum + one)
            }
        }

        impl std::str::FromStr for $of {
            type Err = MeasureError;

            fn from_str(text: &str) -> Result<$of, MeasureError> {
                $of::parse(text)
            }
        }
    };
}
pub(super) use adds;

/// A number and a unit of that kind, in its base units, from zero to `limit`.
pub(super) fn measure(text: &str, kind: Kind, limit: i128) -> Result<i128, MeasureError> {
    let written = text.trim();
    let mut cursor = Cursor::new(text);
    if cursor.at_end() {
        return Err(MeasureError::Empty(kind));
    }
    let unreadable = || MeasureError::Unreadable(kind, written.into());
    let number = cursor.number()?.ok_or_else(unreadable)?;
    let unit = match cursor.unit() {
        UnitRead::Known(unit) if unit.kind == kind => unit,
        UnitRead::Known(unit) => {
            return Err(MeasureError::WrongUnit(kind, unit.written.first().copied().unwrap_or_default().into()));
        }
        UnitRead::Unknown(word) => return Err(MeasureError::WrongUnit(kind, word)),
        UnitRead::Missing if cursor.at_end() => {
            return Err(MeasureError::Bare(kind, written.into()));
        }
        UnitRead::Missing => return Err(unreadable()),
    };
    if !cursor.at_end() {
        return Err(unreadable());
    }
    number.of(unit.size, limit).map_err(|error| match error {
        ScaleError::NotWhole => MeasureError::NotExact(kind, written.into()),
        ScaleError::TooLarge => MeasureError::TooLarge(kind, written.into()),
    })
}
