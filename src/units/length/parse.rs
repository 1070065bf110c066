//! Reads a length as people write it.

use super::super::number::{Cursor, Ratio, ScaleError, UnitRead};
use super::super::typography::{is_dash, is_hyphen};
use super::super::{FOOT, INCH, Kind, Unit};
use super::{Length, LengthError};

/// Reads a length; where it has no unit, `otherwise` governs it, if there is one.
pub(crate) fn parse_in(text: &str, otherwise: Option<&'static Unit>) -> Result<Length, LengthError> {
    let mut cursor = Cursor::new(text);
    if cursor.at_end() {
        return Err(LengthError::Empty);
    }
    let negative = cursor.minus();
    let length = after_sign(text.trim(), cursor, otherwise)?;
    Ok(if negative { -length } else { length })
}

/// The one unit of length that a text ends in, if all of it is a number and that unit.
pub(crate) fn sole_unit(text: &str) -> Option<&'static Unit> {
    let mut cursor = Cursor::new(text);
    cursor.minus();
    cursor.number().ok()??;
    match cursor.unit() {
        UnitRead::Known(unit) if unit.kind == Kind::Length && cursor.at_end() => Some(unit),
        _ => None,
    }
}

fn after_sign(text: &str, mut cursor: Cursor<'_>, otherwise: Option<&'static Unit>) -> Result<Length, LengthError> {
    let unreadable = || LengthError::Unreadable(text.into());
    let number = cursor.number()?.ok_or_else(unreadable)?;
    let unit = match cursor.unit() {
        UnitRead::Known(unit) if unit.kind == Kind::Length => unit,
        UnitRead::Known(unit) => {
            return Err(LengthError::OtherKind { written: text.into(), is: unit.kind.name() });
        }
        UnitRead::Unknown(word) => return Err(LengthError::UnknownUnit(word)),
        UnitRead::Missing if cursor.at_end() => otherwise.ok_or_else(|| LengthError::Bare(text.into()))?,
        UnitRead::Missing => return Err(unreadable()),
    };
    let first = scale(number, unit, text)?;
    if cursor.at_end() {
        return Ok(first);
    }
    second_part(text, cursor, number, unit, first)
}

/// Inches after feet; anything else that follows a length is refused.
fn second_part(
    text: &str,
    mut cursor: Cursor<'_>,
    feet: Ratio,
    unit: &'static Unit,
    first: Length,
) -> Result<Length, LengthError> {
    let rest = cursor.rest().trim();
    cursor.spaces();
    cursor.one(|c| is_hyphen(c) || is_dash(c));
    cursor.spaces();
    let number = cursor.number()?;
    let trailing = || LengthError::Trailing { length: first, rest: rest.into() };
    let number = number.ok_or_else(trailing)?;
    let second = match cursor.unit() {
        UnitRead::Known(second) => second,
        UnitRead::Missing if unit.size == FOOT && cursor.at_end() => {
            return Err(LengthError::BareInches(text.into()));
        }
        UnitRead::Missing | UnitRead::Unknown(_) => return Err(trailing()),
    };
    if second.size == unit.size {
        return Err(LengthError::TwoLengths(text.into()));
    }
    if second.size != INCH || unit.size != FOOT {
        return Err(LengthError::MixedUnits(text.into()));
    }
    let inches = scale(number, second, text)?;
    if !cursor.at_end() {
        return Err(LengthError::Trailing { length: first + inches, rest: cursor.rest().trim().into() });
    }
    if feet.under != 1 {
        return Err(LengthError::PartFoot(text.into()));
    }
    let total = first + inches;
    if inches >= Length::from_inches(12) {
        return Err(LengthError::InchesPastFoot { written: text.into(), total });
    }
    if total > Length::LONGEST {
        return Err(LengthError::TooLarge(text.into()));
    }
    Ok(total)
}

fn scale(number: Ratio, unit: &Unit, text: &str) -> Result<Length, LengthError> {
    let nanometres = number.of(unit.size, Length::LONGEST.nanometres().into()).map_err(|error| match error {
        ScaleError::NotWhole => LengthError::NotExact(text.into()),
        ScaleError::TooLarge => LengthError::TooLarge(text.into()),
    })?;
    i64::try_from(nanometres).map(Length::from_nanometres).map_err(|_| LengthError::TooLarge(text.into()))
}
