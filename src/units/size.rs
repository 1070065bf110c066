//! Sizes by their sides: cartons `32" x 41" x 30"` and rectangles `15' 6" x 12' 0"`.

use super::area::Area;
use super::length::{Length, LengthError, parse_in, sole_unit};
use super::{Fault, Phrase, phrase, shown};
use std::fmt;

/// Two or three sides, each above zero, in the order written.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Sides(Vec<Length>);

/// Why a text is not a size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SidesError {
    /// One of the sides is wrong.
    Length(LengthError),
    /// Fewer than two sides, or more than three.
    Count(usize),
    /// A side of zero or less.
    NotPositive(Length),
}

impl From<LengthError> for SidesError {
    fn from(error: LengthError) -> SidesError {
        SidesError::Length(error)
    }
}

impl Fault for SidesError {
    fn message(&self) -> Phrase {
        match self {
            SidesError::Length(error) => error.message(),
            SidesError::Count(1) => phrase!("the size has one side only"),
            SidesError::Count(count) => phrase!("the size has {count} sides", count),
            SidesError::NotPositive(side) => phrase!("the side {side} is not above zero", side),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            SidesError::Length(error) => error.remedy(),
            SidesError::Count(_) => "write two or three sides with `x` between them, such as `… x … x …`".into(),
            SidesError::NotPositive(_) => "write each side as it measures".into(),
        }
    }
}

shown!(SidesError);

impl SidesError {
    /// True when the fault is a length without a unit.
    pub fn is_bare(&self) -> bool {
        matches!(self, SidesError::Length(LengthError::Bare(_)))
    }
}

impl Sides {
    /// Two or three sides.
    ///
    /// # Errors
    /// When there are fewer or more, or one is not above zero.
    pub fn new(sides: Vec<Length>) -> Result<Sides, SidesError> {
        if !(2..=3).contains(&sides.len()) {
            return Err(SidesError::Count(sides.len()));
        }
        match sides.iter().find(|side| **side <= Length::ZERO) {
            Some(side) => Err(SidesError::NotPositive(*side)),
            None => Ok(Sides(sides)),
        }
    }

    /// Reads sides with `x` or `×` between them. A unit that stands only after the last governs all.
    ///
    /// # Errors
    /// When a length is wrong, or as [`Sides::new`].
    pub fn parse(text: &str) -> Result<Sides, SidesError> {
        // No unit of length has the letter x in it.
        let written: Vec<&str> = text.split(['x', 'X', '×']).collect();
        let unit = written.last().and_then(|last| sole_unit(last));
        let sides: Result<Vec<Length>, LengthError> = written.iter().map(|side| parse_in(side, unit)).collect();
        Sides::new(sides?)
    }

    /// The sides in the order written.
    pub fn sides(&self) -> &[Length] {
        &self.0
    }

    /// The sides from the shortest to the longest: what must pass a door first.
    pub fn sorted(&self) -> Vec<Length> {
        let mut sides = self.0.clone();
        sides.sort_unstable();
        sides
    }

    /// The first side times the second: the whole of a rectangle, the footprint of a box.
    pub fn area(&self) -> Area {
        match self.0.as_slice() {
            [first, second, ..] => *first * *second,
            _ => Area::default(),
        }
    }

    /// The sides as `shown` prints each, with `×` between.
    pub fn worded(&self, shown: impl Fn(Length) -> String) -> String {
        let sides: Vec<String> = self.0.iter().map(|side| shown(*side)).collect();
        sides.join(" × ")
    }
}

impl std::str::FromStr for Sides {
    type Err = SidesError;

    fn from_str(text: &str) -> Result<Sides, SidesError> {
        Sides::parse(text)
    }
}

/// The exact sides, as one may write them in a book.
impl fmt::Display for Sides {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.worded(|side| side.to_string()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sides_are_read_with_either_cross_and_the_last_unit_governs_bare_ones() {
        let carton = "32\" × 41\" × 30\"";
        for written in
            ["32\" x 41\" x 30\"", "32\"x41\"x30\"", "32 x 41 x 30 in", "32″ × 41″ × 30″", "32\" X 41\" X 30\""]
        {
            let sides = Sides::parse(written).unwrap();
            assert_eq!(sides.to_string(), carton, "{written}");
            assert_eq!(Sides::parse(&sides.to_string()), Ok(sides));
        }
        let room = Sides::parse("15' 6\" x 12' 0\"").unwrap();
        assert_eq!(room.sides(), [Length::from_inches(186), Length::from_inches(144)]);
        assert_eq!(room.area().to_string(), "186 sq ft");
        assert_eq!(room.sorted(), [Length::from_inches(144), Length::from_inches(186)]);
    }

    #[test]
    fn what_is_no_size_says_so() {
        let rows = [
            ("32\"", "the size has one side only"),
            ("1\" x 2\" x 3\" x 4\"", "the size has 4 sides"),
            ("32 x 41", "`32` has no unit"),
            ("32\" x 0\"", "the side 0\" is not above zero"),
            ("-3\" x 4\"", "the side −3\" is not above zero"),
            ("32\" x", "no length is written"),
        ];
        for (written, message) in rows {
            let error = Sides::parse(written).unwrap_err();
            assert_eq!(error.to_string(), message);
            assert!(!error.remedy().is_empty());
            assert_eq!(error.is_bare(), written == "32 x 41");
        }
    }
}
