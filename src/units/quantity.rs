//! How many or how much: `12`, `6 boxes`, `42 sq ft`, `18 ft`.

use super::area::Area;
use super::length::Length;
use super::number::{Cursor, NumberError};
use rust_decimal::Decimal;
use std::fmt;

/// A count, or an amount with the word it is counted in, as written.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Quantity {
    /// How many; exact, never below zero.
    pub amount: Decimal,
    /// What it is counted in, if that is said: `boxes`, `sq ft`.
    pub unit: Option<String>,
}

/// Why a text is not a quantity.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum QuantityError {
    /// No number to begin with, or no plain word after it.
    Unreadable(String),
    /// The number itself is wrong.
    Number(NumberError),
    /// A fraction that no decimal holds, such as a third.
    NotExact(String),
}

impl fmt::Display for QuantityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            QuantityError::Unreadable(text) => write!(f, "`{text}` is not a quantity"),
            QuantityError::Number(error) => error.fmt(f),
            QuantityError::NotExact(text) => write!(f, "`{text}` can't be held exactly"),
        }
    }
}

impl std::error::Error for QuantityError {}

impl QuantityError {
    /// How to write it.
    pub fn remedy(&self) -> String {
        match self {
            QuantityError::Unreadable(_) => {
                "write a number, and what is counted after it: `12`, `6 boxes`, `42 sq ft`".into()
            }
            QuantityError::Number(error) => error.remedy(),
            QuantityError::NotExact(_) => "write a decimal, such as `2.5`".into(),
        }
    }
}

impl Quantity {
    /// So many pieces.
    pub fn count(pieces: u32) -> Quantity {
        Quantity { amount: pieces.into(), unit: None }
    }

    /// Reads a number and the words after it, if any.
    ///
    /// # Errors
    /// When it has no number, or a sign or digits among its words.
    pub fn parse(text: &str) -> Result<Quantity, QuantityError> {
        let written = text.trim();
        let unreadable = || QuantityError::Unreadable(written.into());
        let mut cursor = Cursor::new(written);
        let number = cursor.number().map_err(QuantityError::Number)?.ok_or_else(unreadable)?;
        let amount = number.decimal().ok_or_else(|| QuantityError::NotExact(written.into()))?;
        cursor.spaces();
        let unit = cursor.rest();
        let word =
            |c: char| c.is_alphabetic() || c.is_whitespace() || matches!(c, '²' | '2' | '.' | '\'' | '"' | '′' | '″');
        if !unit.chars().all(word) || unit.starts_with(['.', '2', '²']) {
            return Err(unreadable());
        }
        Ok(Quantity { amount, unit: (!unit.is_empty()).then(|| unit.into()) })
    }

    /// The same as an area, if its word is a unit of area.
    pub fn area(&self) -> Option<Area> {
        Area::parse(&self.to_string()).ok()
    }

    /// The same as a length, if its word is a unit of length.
    pub fn length(&self) -> Option<Length> {
        Length::parse(&self.to_string()).ok()
    }

    /// The count, if it is a whole number of pieces or packs.
    pub fn whole(&self) -> Option<u64> {
        self.amount.is_integer().then(|| u64::try_from(self.amount).ok()).flatten()
    }
}

impl std::str::FromStr for Quantity {
    type Err = QuantityError;

    fn from_str(text: &str) -> Result<Quantity, QuantityError> {
        Quantity::parse(text)
    }
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.unit {
            Some(unit) => write!(f, "{} {unit}", self.amount),
            None => write!(f, "{}", self.amount),
        }
    }
}
