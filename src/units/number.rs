//! Reads numbers and units as people write them: decimals, mixed fractions, `½`, primes and quotes.

use super::typography::{is_hyphen, is_space};
use super::{Fault, Phrase, Unit, find_unit, phrase, shown};
use rust_decimal::Decimal;

/// An exact number: `over / under`, in lowest terms, `under` above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Ratio {
    pub over: i128,
    pub under: i128,
}

/// Why a number times a unit can't be held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ScaleError {
    /// The product is not a whole number of base units.
    NotWhole,
    /// The product is past the limit.
    TooLarge,
}

impl Ratio {
    fn new(over: i128, under: i128) -> Ratio {
        let mut divisor = (over.abs(), under);
        while divisor.1 != 0 {
            divisor = (divisor.1, divisor.0 % divisor.1);
        }
        Ratio { over: over / divisor.0, under: under / divisor.0 }
    }

    /// This many of a unit of `size` base units, as a whole number no larger than `limit`.
    pub(crate) fn of(self, size: i128, limit: i128) -> Result<i128, ScaleError> {
        let product = self.over.checked_mul(size).ok_or(ScaleError::TooLarge)?;
        let whole = if self.under == 1 { product } else { product / self.under };
        if whole > limit {
            return Err(ScaleError::TooLarge);
        }
        if whole * self.under != product {
            return Err(ScaleError::NotWhole);
        }
        Ok(whole)
    }

    /// The same as a decimal, if one holds it exactly.
    pub(crate) fn decimal(self) -> Option<Decimal> {
        let places = (0..=DIGITS as u32).find(|places| 10_i128.pow(*places) % self.under == 0)?;
        let over = self.over.checked_mul(10_i128.pow(places) / self.under)?;
        Decimal::try_from_i128_with_scale(over, places).ok().map(|decimal| decimal.normalize())
    }
}

/// Why what is written is not a number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// A comma, be it for thousands or for decimals.
    Comma(String),
    /// Points or digits that make no number, such as `1.2.3`.
    Malformed(String),
    /// A fraction over nothing.
    ZeroDenominator(String),
    /// A whole number followed by a fraction of one or more, such as `34 5/4`.
    Improper(String),
    /// More digits than any measure needs.
    TooLong(String),
}

impl Fault for NumberError {
    fn message(&self) -> Phrase {
        match self {
            NumberError::Comma(n) => {
                phrase!("`{n}` has a comma, which some read as a decimal point and some as thousands", n)
            }
            NumberError::Malformed(n) => phrase!("`{n}` is not a number", n),
            NumberError::ZeroDenominator(n) => phrase!("`{n}` divides by zero", n),
            NumberError::Improper(n) => {
                phrase!("`{n}` adds a fraction of one or more to a whole number", n)
            }
            NumberError::TooLong(n) => phrase!("`{n}` has more digits than can be held", n),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            NumberError::Comma(n) => comma_remedy(n),
            NumberError::Malformed(_) => {
                "write a whole number, a decimal such as `40.5`, or a fraction such as `40 1/2`".into()
            }
            NumberError::ZeroDenominator(_) => {
                "write the fraction with the number below the line, such as `1/2`".into()
            }
            NumberError::Improper(_) => "write a fraction below one after the whole number, such as `34 1/4`".into(),
            NumberError::TooLong(_) => "write it with fewer digits".into(),
        }
    }
}

shown!(NumberError);

fn comma_remedy(written: &str) -> Phrase {
    let without = written.replace(',', "");
    let tail = written.rsplit(',').next().unwrap_or_default();
    if written.matches(',').count() > 1 || written.contains('.') {
        phrase!("leave the comma out: `{without}`", without)
    } else if tail.len() == 3 {
        phrase!("write `{without}` or `{}`, with no comma", without, written.replace(',', "."))
    } else {
        phrase!("write decimals with a point: `{}`", written.replace(',', "."))
    }
}

/// What stands where a unit may stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum UnitRead {
    Missing,
    Known(&'static Unit),
    Unknown(String),
}

/// Most digits before, and after, a decimal point.
const DIGITS: usize = 15;

/// A place in a text, moved on by each read. A copy is a look ahead.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cursor<'a> {
    rest: &'a str,
}

impl<'a> Cursor<'a> {
    pub(crate) fn new(text: &'a str) -> Cursor<'a> {
        Cursor { rest: text.trim_matches(is_space) }
    }

    /// What has not been read.
    pub(crate) fn rest(self) -> &'a str {
        self.rest
    }

    pub(crate) fn at_end(self) -> bool {
        self.rest.is_empty()
    }

    /// What was read since `start`.
    pub(crate) fn since(self, start: Cursor<'a>) -> &'a str {
        start.rest.strip_suffix(self.rest).unwrap_or(start.rest).trim_matches(is_space)
    }

    fn take(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let end = self.rest.find(|c| !wanted(c)).unwrap_or(self.rest.len());
        let (taken, rest) = self.rest.split_at_checked(end).unwrap_or((self.rest, ""));
        self.rest = rest;
        taken
    }

    /// Reads one character if it is wanted.
    pub(crate) fn one(&mut self, wanted: impl Fn(char) -> bool) -> bool {
        let mut rest = self.rest.chars();
        let found = rest.next().is_some_and(wanted);
        if found {
            self.rest = rest.as_str();
        }
        found
    }

    /// Reads spaces of every width; true if there were any.
    pub(crate) fn spaces(&mut self) -> bool {
        !self.take(is_space).is_empty()
    }

    /// Reads a leading minus sign.
    pub(crate) fn minus(&mut self) -> bool {
        self.one(|c| matches!(c, '-' | '−'))
    }

    /// Reads a number without a sign: `34`, `40.5`, `1/2`, `34 1/2`, `34-1/2`, `34½`. `None` if none stands here.
    pub(crate) fn number(&mut self) -> Result<Option<Ratio>, NumberError> {
        let start = *self;
        if let Some(fraction) = self.vulgar() {
            return Ok(Some(fraction));
        }
        let written = self.take(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
        if !written.bytes().any(|b| b.is_ascii_digit()) {
            *self = start;
            return Ok(None);
        }
        if written.contains(',') {
            return Err(NumberError::Comma(written.into()));
        }
        if self.one(is_slash) {
            return self.below(written, start).map(Some);
        }
        let number = decimal(written)?;
        if written.contains('.') {
            return Ok(Some(number));
        }
        let Some(part) = self.fraction_after_whole()? else {
            return Ok(Some(number));
        };
        if part.over >= part.under {
            return Err(NumberError::Improper(self.since(start).into()));
        }
        Ok(Some(Ratio::new(number.over * part.under + part.over, part.under)))
    }

    /// A fraction that belongs to the whole number just read; reads nothing if there is none.
    fn fraction_after_whole(&mut self) -> Result<Option<Ratio>, NumberError> {
        let mut ahead = *self;
        let parted = ahead.spaces() || ahead.one(is_hyphen);
        if let Some(fraction) = ahead.vulgar() {
            *self = ahead;
            return Ok(Some(fraction));
        }
        let start = ahead;
        let above = ahead.take(|c| c.is_ascii_digit());
        if !parted || above.is_empty() || !ahead.one(is_slash) {
            return Ok(None);
        }
        let fraction = ahead.below(above, start)?;
        *self = ahead;
        Ok(Some(fraction))
    }

    /// The number below the line, after `above` and a slash.
    fn below(&mut self, above: &str, start: Cursor<'a>) -> Result<Ratio, NumberError> {
        let below = self.take(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
        let whole = |text: &str| text.bytes().all(|b| b.is_ascii_digit()) && !text.is_empty();
        if !whole(above) || !whole(below) {
            return Err(NumberError::Malformed(self.since(start).into()));
        }
        let (above, below) = (decimal(above)?, decimal(below)?);
        if below.over == 0 {
            return Err(NumberError::ZeroDenominator(self.since(start).into()));
        }
        Ok(Ratio::new(above.over, below.over))
    }

    fn vulgar(&mut self) -> Option<Ratio> {
        let letter = self.rest.chars().next().filter(|letter| !letter.is_ascii())?;
        let (_, over, under) = VULGAR.iter().find(|row| row.0 == letter)?;
        self.one(|_| true);
        Some(Ratio { over: *over, under: *under })
    }

    /// Reads the unit that stands here, spaces before it included.
    pub(crate) fn unit(&mut self) -> UnitRead {
        self.spaces();
        if let Some(mark) = self.quotes() {
            return find_unit(mark).map_or(UnitRead::Missing, UnitRead::Known);
        }
        let first = self.word();
        if first.is_empty() {
            return UnitRead::Missing;
        }
        let mut ahead = *self;
        ahead.spaces();
        let second = ahead.word();
        if !second.is_empty()
            && let Some(unit) = find_unit(&format!("{first} {second}"))
        {
            *self = ahead;
            return UnitRead::Known(unit);
        }
        find_unit(&first).map_or(UnitRead::Unknown(first), UnitRead::Known)
    }

    /// Letters, with the 2 of `m²` or `ft2`, without a closing full stop.
    fn word(&mut self) -> String {
        let letters = self.take(char::is_alphabetic);
        if letters.is_empty() {
            return String::new();
        }
        let digits = self.take(|c| c.is_ascii_digit() || c == '²');
        self.one(|c| c == '.');
        format!("{letters}{}", digits.replace('²', "2"))
    }

    /// A foot or inch mark: primes, straight or curly quotes, or two single marks for an inch.
    fn quotes(&mut self) -> Option<&'static str> {
        if self.one(|c| matches!(c, '"' | '″' | '”' | '“')) {
            return Some("\"");
        }
        let single = |c| matches!(c, '\'' | '′' | '’' | '‘');
        match (self.one(single), self.one(single)) {
            (false, _) => None,
            (true, false) => Some("'"),
            (true, true) => Some("\""),
        }
    }
}

fn is_slash(c: char) -> bool {
    matches!(c, '/' | '⁄' | '∕')
}

fn decimal(written: &str) -> Result<Ratio, NumberError> {
    let (whole, part) = written.split_once('.').unwrap_or((written, ""));
    let malformed = || NumberError::Malformed(written.into());
    if whole.len() > DIGITS || part.len() > DIGITS {
        return Err(NumberError::TooLong(written.into()));
    }
    let mut digits = whole.bytes().chain(part.bytes());
    let ends_in_a_point = part.is_empty() && written.contains('.');
    if ends_in_a_point || written.is_empty() || !digits.clone().all(|byte| byte.is_ascii_digit()) {
        return Err(malformed());
    }
    let over = digits.try_fold(0_i64, |over, digit| over.checked_mul(10)?.checked_add((digit - b'0').into()));
    let over = match over {
        Some(over) => over.into(),
        None => format!("{whole}{part}").parse().map_err(|_| malformed())?,
    };
    Ok(if part.is_empty() { Ratio { over, under: 1 } } else { Ratio::new(over, 10_i128.pow(part.len() as u32)) })
}

/// Unicode's vulgar fractions (The Unicode Standard, Number Forms and Latin-1 Supplement).
const VULGAR: &[(char, i128, i128)] = &[
    ('¼', 1, 4),
    ('½', 1, 2),
    ('¾', 3, 4),
    ('⅐', 1, 7),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('↉', 0, 3),
];
