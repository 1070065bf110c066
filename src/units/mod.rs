//! Quantities that can't be mixed up: lengths, areas, weights, money, percentages, dates and lead times.
//!
//! Every value is a whole number of a fixed small unit (or an exact decimal), never a float, so that
//! reading, adding and comparing lose nothing. Rounding happens in printing only, and is marked `≈`.

mod article;
mod figure;
pub mod in_words;
mod letters;
mod measure;
mod number;
mod person;
mod sentence;
mod series;
mod system;

pub mod area;
pub mod date;
pub mod length;
pub mod money;
pub mod percent;
pub mod quantity;
pub mod range;
pub mod size;
pub mod typography;
pub mod weight;

pub use area::Area;
pub use article::{is_several, with_article};
pub use date::{Calendar, Date, LeadTime, SpanUnit};
pub use figure::Figure;
pub use length::Length;
pub use letters::letter;
pub use measure::MeasureError;
pub use money::{Currency, Money};
pub use number::NumberError;
pub use percent::Percent;
pub use person::{is_same_name, plain_name};
pub use quantity::{Counted, Quantity};
pub use range::LengthRange;
pub use sentence::{Fault, MayStand, Phrase, Piece, Say, Told, Value, Wrote, hole, holes, is_marked};
pub(crate) use sentence::{hole_values, phrase, shown};
pub use series::{series, series_of_most};
pub use size::Sides;
pub use system::System;
pub use weight::Weight;

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Base: nanometre.
    Length,
    /// Base: square nanometre.
    Area,
    /// Base: femtogram.
    Weight,
}

impl Kind {
    /// The kind with its article, as a message says it: `a length`.
    pub fn name(self) -> &'static str {
        match self {
            Kind::Length => "a length",
            Kind::Area => "an area",
            Kind::Weight => "a weight",
        }
    }
}

/// A unit that may be written after a number.
#[derive(Debug, PartialEq, Eq)]
pub struct Unit {
    /// Each way to write it, in lower case without full stops. The first is the one we print.
    pub written: &'static [&'static str],
    /// What it measures.
    pub kind: Kind,
    /// Its exact size in the base of its kind.
    pub size: i128,
}

/// One inch in nanometres: 25.4 mm exactly (1959 agreement; NIST SP 811; UN-01).
const INCH: i128 = 25_400_000;
/// One foot in nanometres.
const FOOT: i128 = 12 * INCH;
/// One avoirdupois pound in femtograms: 453.59237 g exactly (1959 agreement; NIST SP 811).
const POUND: i128 = 453_592_370_000_000_000;

const fn unit(kind: Kind, size: i128, written: &'static [&'static str]) -> Unit {
    Unit { written, kind, size }
}

/// Every unit, as written, with its kind and exact size. All parsers read this table and no other.
pub const UNITS: &[Unit] = &[
    unit(Kind::Length, INCH, &["\"", "in", "inch", "inches"]),
    unit(Kind::Length, FOOT, &["'", "ft", "foot", "feet"]),
    unit(Kind::Length, 1_000_000, &["mm", "millimetre", "millimetres", "millimeter", "millimeters"]),
    unit(Kind::Length, 10_000_000, &["cm", "centimetre", "centimetres", "centimeter", "centimeters"]),
    unit(Kind::Length, 1_000_000_000, &["m", "metre", "metres", "meter", "meters"]),
    unit(Kind::Area, FOOT * FOOT, &["sq ft", "sqft", "ft2", "sf", "square foot", "square feet"]),
    unit(Kind::Area, INCH * INCH, &["sq in", "sqin", "in2", "square inch", "square inches"]),
    unit(
        Kind::Area,
        10_i128.pow(14),
        &["cm2", "sq cm", "square centimetre", "square centimetres", "square centimeter", "square centimeters"],
    ),
    unit(
        Kind::Area,
        10_i128.pow(12),
        &["mm2", "sq mm", "square millimetre", "square millimetres", "square millimeter", "square millimeters"],
    ),
    unit(
        Kind::Area,
        10_i128.pow(18),
        &["m2", "sq m", "square metre", "square metres", "square meter", "square meters"],
    ),
    unit(Kind::Weight, POUND, &["lb", "lbs", "pound", "pounds"]),
    unit(Kind::Weight, POUND / 16, &["oz", "ounce", "ounces"]),
    unit(Kind::Weight, 10_i128.pow(18), &["kg", "kilogram", "kilograms"]),
    unit(Kind::Weight, 10_i128.pow(15), &["g", "gram", "grams"]),
];

/// The unit that is written so, case aside.
pub(crate) fn find_unit(written: &str) -> Option<&'static Unit> {
    UNITS.iter().find(|unit| unit.written.iter().any(|own| own.eq_ignore_ascii_case(written)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn no_two_units_are_written_the_same_way() {
        let mut seen = BTreeSet::new();
        for written in UNITS.iter().flat_map(|unit| unit.written) {
            assert!(seen.insert(*written), "`{written}` stands twice in the table");
            assert_eq!(*written, written.to_lowercase());
        }
    }

    /// NIST SP 811, appendix B.8: inch 25.4 mm, foot 0.3048 m, pound 0.453 592 37 kg, all exact.
    #[test]
    fn inch_foot_and_pound_have_their_legal_size() {
        assert_eq!(find_unit("in").map(|u| u.size), Some(25_400_000));
        assert_eq!(find_unit("FT").map(|u| u.size), Some(304_800_000));
        assert_eq!(find_unit("lb").map(|u| u.size), Some(453_592_370_000_000_000));
        assert_eq!(find_unit("oz").map(|u| u.size), Some(28_349_523_125_000_000));
        assert_eq!(find_unit("sq ft").map(|u| u.size), Some(92_903_040_000_000_000));
    }
}
