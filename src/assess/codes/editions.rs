//! Codes by name and year, as a book adopts them.

use crate::book::{Codes, Country};
use crate::units::Phrase;

/// A code that comes in editions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// International Residential Code.
    Irc,
    /// International Building Code.
    Ibc,
    /// National Electrical Code (NFPA 70).
    Nec,
    /// International Fuel Gas Code.
    Ifgc,
    /// International Plumbing Code.
    Ipc,
    /// Uniform Plumbing Code.
    Upc,
    /// ASHRAE 62.2, ventilation of houses.
    Ashrae622,
    /// ADA Standards for Accessible Design.
    Ada,
    /// Ontario Building Code.
    Obc,
    /// The planning guidelines of kitchen and bath designers: advice, in editions that are numbered.
    KitchenAndBath,
}

/// The guidelines' title, which a book may adopt without a year.
const GUIDELINES: &str = "Kitchen and Bath Planning Guidelines";
/// Their edition here.
const GUIDELINES_EDITION: u16 = 2;

impl Family {
    /// Its name, as a book writes it before the year.
    pub fn name(self) -> &'static str {
        NAMES.iter().find(|(family, _)| *family == self).map_or("", |(_, name)| name)
    }

    /// The country that it is published for.
    pub fn country(self) -> Country {
        if self == Self::Obc { Country::Canada } else { Country::UnitedStates }
    }
}

const NAMES: [(Family, &str); 10] = [
    (Family::Irc, "IRC"),
    (Family::Ibc, "IBC"),
    (Family::Nec, "NEC"),
    (Family::Ifgc, "IFGC"),
    (Family::Ipc, "IPC"),
    (Family::Upc, "UPC"),
    (Family::Ashrae622, "ASHRAE 62.2"),
    (Family::Ada, "ADA"),
    (Family::Obc, "OBC"),
    (Family::KitchenAndBath, GUIDELINES),
];

/// A code that is printed anew every so many years: the first and the last year that is known here.
const fn every(step: u16, first: u16, last: u16) -> Years {
    Years::Every { step, first, last }
}

/// The years of a code's editions.
#[derive(Clone, Copy, Debug)]
enum Years {
    Every { step: u16, first: u16, last: u16 },
    These(&'static [u16]),
}

impl Family {
    /// The editions that are known here (from memory; a book may set figures of another one itself).
    fn years(self) -> Vec<u16> {
        let years = match self {
            Self::Irc | Self::Ibc | Self::Ifgc | Self::Ipc => every(3, 2000, 2024),
            Self::Nec => every(3, 1981, 2026),
            Self::Upc => every(3, 1985, 2024),
            Self::Ashrae622 => Years::These(&[2003, 2004, 2007, 2010, 2013, 2016, 2019, 2022, 2025]),
            Self::Ada => Years::These(&[1991, 2010]),
            Self::Obc => Years::These(&[1997, 2006, 2012, 2024]),
            Self::KitchenAndBath => Years::These(&[GUIDELINES_EDITION]),
        };
        match years {
            Years::Every { step, first, last } => (first..=last).step_by(step.into()).collect(),
            Years::These(these) => these.to_vec(),
        }
    }
}

/// The editions that a book adopts.
#[derive(Clone, Debug, Default)]
pub struct Editions(Vec<(Family, u16)>);

impl Editions {
    /// Those of a book; what can't be read is told elsewhere.
    pub fn of(codes: &Codes) -> Self {
        let known = |(family, year): &(Family, u16)| family.years().contains(year);
        Self(codes.adopts.iter().filter_map(|adopted| read(&adopted.value).filter(known)).collect())
    }

    /// The adopted year of a code.
    pub fn year(&self, family: Family) -> Option<u16> {
        self.0.iter().find(|(adopted, _)| *adopted == family).map(|(_, year)| *year)
    }
}

/// `IRC 2021` as code and year.
pub(super) fn read(text: &str) -> Option<(Family, u16)> {
    if text.trim() == GUIDELINES {
        return Some((Family::KitchenAndBath, GUIDELINES_EDITION));
    }
    let (name, year) = text.trim().rsplit_once(' ')?;
    let year: u16 = year.parse().ok().filter(|year| (1980..2100).contains(year))?;
    NAMES.iter().find(|(_, known)| *known == name.trim()).map(|(family, _)| (*family, year))
}

/// The edition that a text names and nobody knows, with those that are known.
pub(super) fn unknown_edition(text: &str) -> Option<(Family, Vec<u16>)> {
    let (family, year) = read(text)?;
    let years = family.years();
    (!years.contains(&year)).then_some((family, years))
}

/// The names that are known.
pub(super) fn names() -> Phrase {
    Phrase::joined(NAMES.map(|(_, name)| name), ", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_and_a_year_are_an_edition() {
        assert_eq!(read("IRC 2021"), Some((Family::Irc, 2021)));
        assert_eq!(read("ASHRAE 62.2 2016"), Some((Family::Ashrae622, 2016)));
        assert_eq!(read("ADA 2010"), Some((Family::Ada, 2010)));
        assert_eq!(read("Kitchen and Bath Planning Guidelines"), Some((Family::KitchenAndBath, 2)));
        assert_eq!(read("IRC"), None);
        assert_eq!(read("IRC 21"), None);
    }

    #[test]
    fn every_code_has_editions_that_can_be_adopted() {
        for (family, name) in NAMES {
            let years = family.years();
            assert!(!years.is_empty() && years.is_sorted(), "{name}");
            assert!(years.iter().all(|year| unknown_edition(&format!("{name} {year}")).is_none()), "{name}");
        }
    }
}
