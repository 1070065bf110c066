//! How many or how much: `12`, `6 boxes`, `42 sq ft`, `18 ft`.

use super::area::Area;
use super::length::Length;
use super::number::{Cursor, NumberError, UnitRead};
use super::typography::is_space;
use super::{Fault, Phrase, in_words, phrase, shown};
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

/// What things are counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// Nothing is said: single things.
    Unsaid,
    /// Pieces.
    Pieces,
    /// Lengths, as trim is sold.
    Lengths,
    /// Tiles.
    Tiles,
    /// Boxes.
    Boxes,
    /// Rolls.
    Rolls,
    /// Lights.
    Lights,
    /// Something else, an area or a length among it.
    Other,
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

impl Fault for QuantityError {
    fn message(&self) -> Phrase {
        match self {
            QuantityError::Unreadable(text) => phrase!("`{text}` is not a quantity", text),
            QuantityError::Number(error) => error.message(),
            QuantityError::NotExact(text) => phrase!("`{text}` can't be held exactly", text),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            QuantityError::Unreadable(text) if in_words::with_figure(text).is_some() => {
                phrase!("write the figure: `{}`", in_words::with_figure(text).unwrap_or_default())
            }
            QuantityError::Unreadable(_) => {
                "write a number, and what is counted after it: `12`, `6 boxes`, `42 sq ft`".into()
            }
            QuantityError::Number(error) => error.remedy(),
            QuantityError::NotExact(_) => "write a decimal, such as `2.5`".into(),
        }
    }
}

shown!(QuantityError);

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
        let known = matches!(cursor.unit(), UnitRead::Known(_)) && cursor.at_end();
        if !known && !unit.chars().all(|c| c.is_alphabetic() || is_space(c)) {
            return Err(unreadable());
        }
        Ok(Quantity { amount, unit: (!unit.is_empty()).then(|| unit.into()) })
    }

    /// What it is counted in.
    pub fn counted(&self) -> Counted {
        match self.unit.as_deref() {
            None => Counted::Unsaid,
            Some("piece" | "pieces") => Counted::Pieces,
            Some("length" | "lengths") => Counted::Lengths,
            Some("tile" | "tiles") => Counted::Tiles,
            Some("box" | "boxes") => Counted::Boxes,
            Some("roll" | "rolls") => Counted::Rolls,
            Some("light" | "lights") => Counted::Lights,
            Some(_) => Counted::Other,
        }
    }

    /// The same as an area, if its word is a unit of area.
    pub fn area(&self) -> Option<Area> {
        Area::parse(&self.to_string()).ok()
    }

    /// The same as a length, if its word is a unit of length.
    pub fn length(&self) -> Option<Length> {
        Length::parse(&self.to_string()).ok()
    }

    /// Whether it is counted in that unit, however either is written: `square feet` in `sq ft`, `boxes` in `box`; what
    /// is counted in nothing is counted in pieces.
    pub fn is_in(&self, unit: &str) -> bool {
        let own = self.unit.as_deref().unwrap_or("").trim().to_lowercase();
        let other = unit.trim().to_lowercase();
        let is_many = |one: &str, many: &str| matches!(many.strip_prefix(one), Some("" | "s" | "es"));
        if is_many(&own, &other) || is_many(&other, &own) {
            return !own.is_empty() || other.is_empty();
        }
        if own.is_empty() {
            return matches!(other.as_str(), "each" | "piece" | "pieces");
        }
        let one = |unit: &str| Quantity::parse(&format!("1 {unit}"));
        let (Ok(own), Ok(unit)) = (one(&own), one(unit)) else { return false };
        let area = own.area().is_some() && own.area() == unit.area();
        area || own.length().is_some() && own.length() == unit.length()
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quantity_is_read_with_its_words_and_printed_as_written() {
        let rows = [
            ("12", "12"),
            ("6 boxes", "6 boxes"),
            ("42 sq ft", "42 sq ft"),
            ("18 ft", "18 ft"),
            ("2.50 m²", "2.5 m²"),
            ("18 1/2 ft", "18.5 ft"),
            ("3 linear feet", "3 linear feet"),
        ];
        for (written, printed) in rows {
            assert_eq!(Quantity::parse(written).unwrap().to_string(), printed);
        }
        assert_eq!(Quantity::count(7).to_string(), "7");
        assert_eq!(Quantity::parse("6 boxes").unwrap().whole(), Some(6));
        assert_eq!(Quantity::parse("2.5 m²").unwrap().whole(), None);
    }

    #[test]
    fn a_quantity_in_a_unit_is_also_an_area_or_a_length() {
        let floor = Quantity::parse("42 sq ft").unwrap();
        assert_eq!(floor.area(), Some(Area::parse("42 sq ft").unwrap()));
        assert_eq!(floor.length(), None);
        let trim = Quantity::parse("18 ft").unwrap();
        assert_eq!(trim.length(), Some(Length::from_inches(216)));
        assert_eq!(trim.area(), None);
        assert_eq!(Quantity::parse("6 boxes").unwrap().area(), None);
    }

    #[test]
    fn a_number_in_words_is_told_as_its_figure() {
        for (written, remedy) in [("two", "`2`"), ("a pair", "`2`"), ("three boxes", "`3 boxes`")] {
            let told = Quantity::parse(written).unwrap_err().remedy().text().to_string();
            assert_eq!(told, format!("write the figure: {remedy}"));
        }
    }

    #[test]
    fn what_is_no_quantity_says_so() {
        let rows = [
            ("", "`` is not a quantity"),
            ("boxes", "`boxes` is not a quantity"),
            ("-3 boxes", "`-3 boxes` is not a quantity"),
            ("6 boxes 2", "`6 boxes 2` is not a quantity"),
            ("1/3 box", "`1/3 box` can't be held exactly"),
            ("1,5 m²", "`1,5` has a comma, which some read as a decimal point and some as thousands"),
        ];
        for (written, message) in rows {
            let error = Quantity::parse(written).unwrap_err();
            assert_eq!(error.to_string(), message);
            assert!(!error.remedy().is_empty());
        }
    }
}
