//! Why a text is not a length, and how to write it.

use super::super::number::NumberError;
use super::Length;
use crate::units::{Fault, Phrase, phrase, shown};

/// Why a text is not a length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LengthError {
    /// Nothing is written.
    Empty,
    /// A number without a unit.
    Bare(String),
    /// Not a number and a unit at all.
    Unreadable(String),
    /// The number itself is wrong.
    Number(NumberError),
    /// A unit nobody knows.
    UnknownUnit(String),
    /// A unit of another kind, such as an area's, with what it measures.
    OtherKind {
        /// The whole text.
        written: String,
        /// What it measures, with its article.
        is: &'static str,
    },
    /// No whole number of nanometres, such as a third of an inch.
    NotExact(String),
    /// Past 1 km.
    TooLarge(String),
    /// Two units that don't go together, such as `3' 20 mm`.
    MixedUnits(String),
    /// Two lengths where one is wanted, such as `36" 40"`.
    TwoLengths(String),
    /// Inches after feet without their mark, such as `2' 10`.
    BareInches(String),
    /// Twelve inches or more after feet.
    InchesPastFoot {
        /// The whole text.
        written: String,
        /// What it adds up to.
        total: Length,
    },
    /// A part of a foot with inches after it, such as `2.5' 6"`.
    PartFoot(String),
    /// More words after the length.
    Trailing {
        /// The length that could be read.
        length: Length,
        /// What follows it.
        rest: String,
    },
}

impl From<NumberError> for LengthError {
    fn from(error: NumberError) -> LengthError {
        LengthError::Number(error)
    }
}

impl Fault for LengthError {
    fn message(&self) -> Phrase {
        match self {
            LengthError::Empty => phrase!("no length is written"),
            LengthError::Bare(n) => phrase!("`{n}` has no unit", n),
            LengthError::Unreadable(text) => phrase!("`{text}` is not a length", text),
            LengthError::Number(error) => error.message(),
            LengthError::UnknownUnit(unit) => phrase!("`{unit}` is not a unit of length", unit),
            LengthError::OtherKind { written, is } => {
                phrase!("`{written}` is {is}, not a length", written, is)
            }
            LengthError::NotExact(text) => phrase!("`{text}` can't be held exactly", text),
            LengthError::TooLarge(text) => phrase!("`{text}` is longer than 1 km", text),
            LengthError::MixedUnits(text) => phrase!("`{text}` mixes units", text),
            LengthError::TwoLengths(text) => {
                phrase!("`{text}` is two lengths where one is wanted", text)
            }
            LengthError::BareInches(text) => {
                phrase!("`{text}` has a number without a unit after the feet", text)
            }
            LengthError::InchesPastFoot { written, .. } => {
                phrase!("`{written}` has a foot or more of inches after the feet", written)
            }
            LengthError::PartFoot(text) => {
                phrase!("`{text}` has a part of a foot and inches after it", text)
            }
            LengthError::Trailing { length, rest } => {
                phrase!("`{rest}` follows the length {length}", rest, length)
            }
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            LengthError::Empty | LengthError::Unreadable(_) => {
                phrase!("write a number and its unit: {}", Phrase::by_units("`…\"`", "`… mm`"))
            }
            LengthError::Bare(n) => phrase!(
                "write {}",
                Phrase::by_units(phrase!("`{n}\"` for inches", n), phrase!("`{n} mm` for millimetres", n))
            ),
            LengthError::Number(error) => error.remedy(),
            LengthError::UnknownUnit(_) | LengthError::OtherKind { .. } => {
                phrase!("use {}", Phrase::by_units("`\"`, `in`, `'`, `ft`", "`mm`, `cm`, `m`"))
            }
            LengthError::NotExact(_) => {
                phrase!("round it to {}", Phrase::by_units("a 64th of an inch", "a tenth of a millimetre"))
            }
            LengthError::TooLarge(_) => "check the number and its unit".into(),
            LengthError::MixedUnits(_) => {
                let ways = Phrase::by_units("feet then inches", "one metric unit");
                phrase!("write the whole length in one system: {}", ways)
            }
            LengthError::TwoLengths(_) => "write one length; where a range may stand, part its ends with `to`".into(),
            LengthError::BareInches(text) => phrase!("mark the inches: `{text}\"`", text),
            LengthError::InchesPastFoot { total, .. } => in_both_ways(*total),
            LengthError::PartFoot(_) => "write whole feet before the inches, or feet alone".into(),
            LengthError::Trailing { rest, .. } => {
                phrase!("take `{rest}` out; words go behind a `#`, or in a `note` where there is one", rest)
            }
        }
    }
}

shown!(LengthError);

fn in_both_ways(total: Length) -> Phrase {
    let inches = super::Shown::in_inches(total.nanometres(), 64);
    phrase!("write `{}`, or inches alone: `{inches}`", inches.feet_and_inches().to_string(), inches.to_string())
}
