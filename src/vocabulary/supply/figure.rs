//! Figures with their units in the trade's words: `120/240 V`, `300–600 cfm`, `≥ 7.2 kW`, `51,000 Btu/h`.

use std::iter::Peekable;
use std::str::Chars;

/// A unit of what is supplied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Volt,
    Ampere,
    Watt,
    Kilowatt,
    /// Cubic feet a minute.
    Cfm,
    /// Cubic metres an hour.
    CubicMetres,
    /// Litres a second.
    Litres,
    /// Btu an hour.
    Btu,
    /// Thousands of Btu an hour.
    KiloBtu,
    /// Megajoules an hour.
    Megajoules,
}

const UNITS: &[(&str, Unit)] = &[
    ("v", Unit::Volt),
    ("vac", Unit::Volt),
    ("volt", Unit::Volt),
    ("volts", Unit::Volt),
    ("a", Unit::Ampere),
    ("amp", Unit::Ampere),
    ("amps", Unit::Ampere),
    ("ampere", Unit::Ampere),
    ("amperes", Unit::Ampere),
    ("w", Unit::Watt),
    ("watt", Unit::Watt),
    ("watts", Unit::Watt),
    ("kw", Unit::Kilowatt),
    ("cfm", Unit::Cfm),
    ("m³/h", Unit::CubicMetres),
    ("m³/hr", Unit::CubicMetres),
    ("l/s", Unit::Litres),
    ("btu/h", Unit::Btu),
    ("btu/hr", Unit::Btu),
    ("btuh", Unit::Btu),
    ("btu", Unit::Btu),
    ("btus", Unit::Btu),
    ("btus/h", Unit::Btu),
    ("btus/hr", Unit::Btu),
    ("btu/hour", Unit::Btu),
    ("kbtu/h", Unit::KiloBtu),
    ("kbtu/hr", Unit::KiloBtu),
    ("kbtu", Unit::KiloBtu),
    ("kbtus", Unit::KiloBtu),
    ("kbtuh", Unit::KiloBtu),
    ("mbh", Unit::KiloBtu),
    ("mj/h", Unit::Megajoules),
    ("mj/hr", Unit::Megajoules),
    ("mj", Unit::Megajoules),
];

impl Unit {
    pub(super) fn read(word: &str) -> Option<Self> {
        UNITS.iter().find(|(written, _)| *written == word).map(|(_, unit)| *unit)
    }

    /// Whether people part its thousands with a space: `51 000 Btu/h`. Volts and amperes have none.
    fn has_thousands(self) -> bool {
        !matches!(self, Self::Volt | Self::Ampere)
    }
}

/// The numbers that stand before one unit: `120/240 V` has two, `300 to 600 cfm` too.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Figure {
    /// In thousandths of the unit, in the order written; never empty.
    thousandths: Vec<u64>,
    unit: Unit,
}

impl Figure {
    /// Each number, without its fraction.
    pub(super) fn each(&self) -> impl Iterator<Item = u32> + '_ {
        self.thousandths.iter().filter_map(|number| u32::try_from(number / 1000).ok())
    }

    /// The greatest, in thousandths: what a thing may ask for.
    fn most(&self) -> Option<u64> {
        self.thousandths.iter().copied().max()
    }

    /// The least, in thousandths: what is there in any case.
    fn least(&self) -> Option<u64> {
        self.thousandths.iter().copied().min()
    }
}

/// An amount as written, in whole units: of `20–30 A` from 20 to 30. A figure alone is both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Amount {
    least: u32,
    most: u32,
}

impl Amount {
    /// What a thing takes: the greatest, rounded up.
    pub fn taken(self) -> u32 {
        self.most
    }

    /// What is there in any case: the least, rounded down.
    pub fn there(self) -> u32 {
        self.least
    }

    /// From a least and a greatest number of units, each times `numerator` over `denominator`.
    pub(super) fn scaled((least, most): (u64, u64), numerator: u64, denominator: u64) -> Option<Self> {
        let least = u32::try_from(least.checked_mul(numerator)? / denominator).ok()?;
        let most = u32::try_from(most.checked_mul(numerator)?.div_ceil(denominator)).ok()?;
        Some(Self { least, most })
    }
}

/// Every figure of a text, in order.
pub(super) struct Figures(Vec<Figure>);

impl Figures {
    /// Reads them. Dashes, spaces, fraction strokes and signs of comparison count in every typographic form.
    pub(super) fn of(text: &str) -> Self {
        Self(figures(&parts(text)))
    }

    /// The figures of a unit.
    pub(super) fn all(&self, unit: Unit) -> impl Iterator<Item = &Figure> {
        self.0.iter().filter(move |figure| figure.unit == unit)
    }

    /// How many figures a unit has.
    pub(super) fn count(&self, unit: Unit) -> usize {
        self.all(unit).count()
    }

    /// The least and the greatest of all figures of a unit, in thousandths: of `15–20 kW, 12 kW` from 12 to 20.
    pub(super) fn ends(&self, unit: Unit) -> Option<(u64, u64)> {
        let least = self.all(unit).filter_map(Figure::least).min()?;
        Some((least, self.all(unit).filter_map(Figure::most).max()?))
    }

    /// The first figure of a unit, in whole units.
    pub(super) fn whole(&self, unit: Unit) -> Option<Amount> {
        Amount::scaled(self.thousandths(unit)?, 1, 1000)
    }

    /// The first figure of a unit, in thousandths: watts, where the unit is a kilowatt.
    pub(super) fn in_thousandths(&self, unit: Unit) -> Option<Amount> {
        Amount::scaled(self.thousandths(unit)?, 1, 1)
    }

    /// The ends of the first figure of a unit, in thousandths.
    pub(super) fn thousandths(&self, unit: Unit) -> Option<(u64, u64)> {
        let first = self.all(unit).next()?;
        first.least().zip(first.most())
    }
}

/// A piece of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Part {
    /// In thousandths, and its digits before the point.
    Number(u64, usize),
    /// A dash, a stroke, or `to`.
    Joint,
    Word(String),
    Space,
    Other,
}

fn parts(text: &str) -> Vec<Part> {
    let lower = text.to_lowercase();
    let mut rest = lower.chars().peekable();
    let mut parts = Vec::new();
    while let Some(letter) = rest.next() {
        parts.push(match letter {
            digit if digit.is_ascii_digit() => number(digit, &mut rest),
            letter if letter.is_alphabetic() => word(letter, &mut rest),
            '-' | '‐' | '‑' | '‒' | '–' | '—' | '−' | '/' | '⁄' | '∕' => Part::Joint,
            // Signs of comparison say how sure a figure is, not what it is.
            '≈' | '≥' | '≤' | '~' | '<' | '>' | '=' | '±' => Part::Space,
            space if space.is_whitespace() => Part::Space,
            _ => Part::Other,
        });
    }
    parts
}

fn number(first: char, rest: &mut Peekable<Chars<'_>>) -> Part {
    let mut written = String::from(first);
    loop {
        let mut ahead = rest.clone();
        match (ahead.next(), ahead.next()) {
            (Some(digit), _) if digit.is_ascii_digit() => written.push(digit),
            (Some(mark @ (',' | '.')), Some(digit)) if digit.is_ascii_digit() => written.push(mark),
            _ => break,
        }
        rest.next();
    }
    thousandths(&written).map_or(Part::Other, |(value, digits)| Part::Number(value, digits))
}

/// `51,000`, `7.2`, `7,2`, `1.500,5`: commas and points before three digits part thousands where that is the
/// one way to read them all; a lone point is always a decimal one.
fn thousandths(written: &str) -> Option<(u64, usize)> {
    let groups_of_three = |mark| written.split(mark).skip(1).all(|group: &str| group.len() == 3);
    let (commas, points) = (written.matches(',').count(), written.matches('.').count());
    let (whole, part) = match (commas, points) {
        (0, 0) => (written.to_owned(), ""),
        (0, 1) | (_, 1) if written.rfind('.') > written.rfind(',') => {
            let (whole, part) = written.split_once('.')?;
            (whole.replace(',', ""), part)
        }
        (_, 0) if groups_of_three(',') => (written.replace(',', ""), ""),
        (0, _) if groups_of_three('.') => (written.replace('.', ""), ""),
        (1, _) => {
            let (whole, part) = written.split_once(',')?;
            (whole.replace('.', ""), part)
        }
        _ => return None,
    };
    let part: String = part.chars().chain("000".chars()).take(3).collect();
    let value = whole.parse::<u64>().ok()?.checked_mul(1000)?.checked_add(part.parse().ok()?)?;
    Some((value, whole.len()))
}

/// Letters, with a stroke that letters follow: `btu/h`, `m³/h`.
fn word(first: char, rest: &mut Peekable<Chars<'_>>) -> Part {
    let mut word = String::from(first);
    loop {
        let mut ahead = rest.clone();
        match (ahead.next(), ahead.next()) {
            (Some(letter), _) if letter.is_alphabetic() => word.push(letter),
            (Some('/'), Some(letter)) if letter.is_alphabetic() => word.push('/'),
            (Some('3' | '³'), Some('/')) if word == "m" => word.push('³'),
            _ => break,
        }
        rest.next();
    }
    if word == "to" { Part::Joint } else { Part::Word(word) }
}

/// Numbers, joined or alone, that a unit follows.
fn figures(parts: &[Part]) -> Vec<Figure> {
    let mut found = Vec::new();
    let (mut numbers, mut joined) = (Vec::new(), false);
    let mut rest = parts;
    while let Some((part, after)) = rest.split_first() {
        rest = after;
        match part {
            Part::Number(value, digits) => {
                let mut value = *value;
                if let Some((more, after)) = thousands(*digits, after) {
                    value = value.saturating_mul(1000).saturating_add(more);
                    rest = after;
                }
                if !joined {
                    numbers.clear();
                }
                numbers.push(value);
                joined = false;
            }
            Part::Joint => joined = true,
            Part::Space => {}
            Part::Word(word) => {
                let thousandths = std::mem::take(&mut numbers);
                // `70k Btu/h`: thousands of them.
                if word == "k" && next_unit(rest) == Some(Unit::Btu) {
                    numbers = thousandths.iter().map(|number: &u64| number.saturating_mul(1000)).collect();
                    joined = false;
                    continue;
                }
                let unit = Unit::read(word).filter(|_| !thousandths.is_empty());
                found.extend(unit.map(|unit| Figure { thousandths, unit }));
            }
            Part::Other => numbers.clear(),
        }
    }
    found
}

/// The three digits that a space parts from the thousands before them, and what follows.
fn thousands(digits: usize, after: &[Part]) -> Option<(u64, &[Part])> {
    let [Part::Space, Part::Number(more, 3), rest @ ..] = after else { return None };
    let parted = digits <= 3 && next_unit(rest).is_some_and(Unit::has_thousands);
    parted.then_some((*more, rest))
}

/// The unit that follows, past spaces.
fn next_unit(rest: &[Part]) -> Option<Unit> {
    let word = rest.iter().find_map(|part| match part {
        Part::Space => None,
        Part::Word(word) => Some(Unit::read(word)),
        _ => Some(None),
    });
    word.flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn ends(text: &str, unit: Unit) -> Option<(u64, u64)> {
        Figures::of(text).thousandths(unit)
    }

    #[test]
    fn every_typographic_form_says_what_the_plain_one_says() {
        let rows: &[(&[&str], Unit, (u64, u64))] = &[
            (
                &[
                    "120/240 V",
                    "120⁄240 V",
                    "120–240 V",
                    "120-240v",
                    "120 to 240 volts",
                    "120\u{a0}–\u{a0}240\u{202f}V",
                ],
                Unit::Volt,
                (120_000, 240_000),
            ),
            (&["300–600 cfm", "300 - 600 cfm", "300 to 600 CFM", "300—600\u{2009}cfm"], Unit::Cfm, (300_000, 600_000)),
            (
                &[
                    "65000 Btu/h",
                    "≈65000 Btu/h",
                    "65,000 BTU",
                    "~ 65 000 Btu/h",
                    "65\u{202f}000\u{a0}Btu/hr",
                    "65.000,0 btuh",
                ],
                Unit::Btu,
                (65_000_000, 65_000_000),
            ),
            (&["7.2 kW", "≥7.2 kW", "≥\u{a0}7,2 kW", "7.20kW"], Unit::Kilowatt, (7_200, 7_200)),
            (&["12.5 A", "≤ 12.5 amps", "12,5 A"], Unit::Ampere, (12_500, 12_500)),
        ];
        for (forms, unit, wanted) in rows {
            for form in *forms {
                assert_eq!(ends(form, *unit), Some(*wanted), "{form}");
            }
        }
    }

    #[test]
    fn a_number_belongs_to_the_unit_that_follows_it_and_to_no_other() {
        let figures = Figures::of("two circuits: 120 V 15 A 5-15, and 240V/30A (L6-30), 1500 W");
        let volts: Vec<u32> = figures.all(Unit::Volt).flat_map(Figure::each).collect();
        assert_eq!(volts, [120, 240]);
        assert_eq!(figures.whole(Unit::Ampere).map(Amount::taken), Some(15));
        assert_eq!(figures.whole(Unit::Watt).map(Amount::taken), Some(1500));
        assert_eq!(ends("no. 12 wire", Unit::Watt), None);
        for form in ["70K BTUs", "70k Btu/h", "70 k btu/hr", "70 kBtu/h"] {
            let figures = Figures::of(form);
            let read = figures.whole(Unit::Btu).or_else(|| figures.in_thousandths(Unit::KiloBtu));
            assert_eq!(read.map(Amount::taken), Some(70_000), "{form}");
        }
        assert_eq!(ends("2 120 V circuits", Unit::Volt), Some((120_000, 120_000)));
        assert_eq!(ends("V", Unit::Volt), None);
        assert_eq!(ends("99999999999999999999 W", Unit::Watt), None);
    }

    #[test]
    fn what_is_taken_is_rounded_up_and_what_is_there_down() {
        let figures = Figures::of("12.5–16.2 A");
        let amperes = figures.whole(Unit::Ampere).unwrap();
        assert_eq!((amperes.taken(), amperes.there()), (17, 12));
    }

    proptest! {
        #[test]
        fn no_text_ends_the_reading(text in any::<String>()) {
            let _ = Figures::of(&text);
        }

        #[test]
        fn no_text_of_digits_and_signs_ends_the_reading(text in "[0-9.,/–≈≥ \u{a0}\u{202f}vVaAwWkKbtuBTUhcfm½″′]{0,40}") {
            let _ = Figures::of(&text);
        }

        #[test]
        fn any_figure_is_read_back(whole in 1_u32..1_000_000, sign in "[≈≥≤~]?", gap in "[ \u{a0}\u{202f}\u{2009}]?") {
            let read = Figures::of(&format!("{sign}{whole}{gap}W")).whole(Unit::Watt).map(Amount::there);
            prop_assert_eq!(read, Some(whole));
        }
    }
}
