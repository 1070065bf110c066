//! Amounts of money: whole minor units of one currency.

mod currency;
mod parse;

pub use currency::{Currency, CurrencyError};

use super::figure::round_half_even;
use super::typography::is_space;
use rust_decimal::Decimal;
use std::cmp::Ordering;
use std::fmt;

use crate::units::{Fault, Phrase, phrase, shown};

/// An amount in whole minor units (cents, where the currency has them).
///
/// It has no `+` and no order, since neither means anything between currencies:
/// use [`Money::checked_add`], [`Money::sum`] and [`Money::compare`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Money {
    /// Minor units; below zero for a credit.
    pub minor: i64,
    /// What they are units of.
    pub currency: Currency,
}

/// Why an amount can't be read or reckoned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MoneyError {
    /// Not an amount.
    Unreadable(String),
    /// A comma that isn't plainly for thousands.
    Comma(String),
    /// More decimals than the currency has.
    Decimals(String, Currency),
    /// Written in another currency than is wanted here, or reckoned with one.
    OtherCurrency {
        /// The currency that governs.
        wanted: Currency,
        /// The other one, as written.
        found: String,
    },
    /// Past what can be held.
    TooLarge,
}

/// An amount with two digits after its last comma, as it is written with a point: the comma can be nothing but a decimal
/// one, and points or spaces before it part thousands.
fn with_a_point(text: &str) -> Option<String> {
    let is_mark = |letter: char| !letter.is_ascii_digit();
    let (whole, decimals) = text.trim_matches(is_mark).split_once(',')?;
    let groups: Vec<&str> = whole.split(|letter| letter == '.' || is_space(letter)).collect();
    let is_digits = |text: &str| !text.is_empty() && text.chars().all(|digit| digit.is_ascii_digit());
    let in_groups = groups.iter().skip(1).all(|group| group.len() == 3);
    let is_certain =
        decimals.len() == 2 && is_digits(decimals) && groups.iter().all(|group| is_digits(group)) && in_groups;
    is_certain.then(|| format!("{}.{decimals}", groups.concat()))
}

/// An amount whose one point stands before three digits, without it: where a currency has fewer decimals, people part
/// thousands so.
fn without_a_point(text: &str) -> Option<String> {
    let (whole, thousands) = text.trim_matches(|letter: char| !letter.is_ascii_digit()).split_once('.')?;
    let is_digits = |text: &str| !text.is_empty() && text.chars().all(|digit| digit.is_ascii_digit());
    (thousands.len() == 3 && is_digits(whole) && is_digits(thousands)).then(|| format!("{whole}{thousands}"))
}

impl Fault for MoneyError {
    fn message(&self) -> Phrase {
        match self {
            MoneyError::Unreadable(text) => phrase!("`{text}` is not an amount of money", text),
            MoneyError::Comma(text) if with_a_point(text).is_some() => {
                phrase!("`{text}` has a decimal comma, where the files have a point", text)
            }
            MoneyError::Comma(text) => {
                phrase!("the comma in `{text}` may be a decimal point or a mark of thousands", text)
            }
            MoneyError::Decimals(text, currency) => {
                phrase!(
                    "`{text}` has more decimals than {currency} has ({})",
                    text,
                    currency.code(),
                    currency.decimals()
                )
            }
            MoneyError::OtherCurrency { wanted, found } => {
                phrase!("an amount in `{found}` stands where {wanted} is wanted", found, wanted.code())
            }
            MoneyError::TooLarge => phrase!("the amount is too large"),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            MoneyError::Unreadable(text) | MoneyError::Comma(text) => match with_a_point(text) {
                Some(plain) => phrase!("write it without commas, with a point before decimals: `{plain}`", plain),
                None => "write it as a plain number without commas, with a point before its decimals".into(),
            },
            MoneyError::Decimals(text, currency) => match without_a_point(text) {
                Some(whole) => phrase!(
                    "write at most {} decimals; if the point parts thousands, write `{whole}`",
                    currency.decimals(),
                    whole
                ),
                None => phrase!("write at most {} decimals", currency.decimals()),
            },
            MoneyError::OtherCurrency { wanted, .. } => {
                phrase!("give the amount in {wanted}, the currency of the book", wanted.code())
            }
            MoneyError::TooLarge => "check the amount".into(),
        }
    }
}

shown!(MoneyError);

impl Money {
    /// So many minor units.
    pub const fn new(minor: i64, currency: Currency) -> Money {
        Money { minor, currency }
    }

    /// Nothing, in that currency.
    pub const fn zero(currency: Currency) -> Money {
        Money { minor: 0, currency }
    }

    /// Reads an amount: `3180`, `3180.00`, `3,180.00`, `-120`, with or without its own symbol or code.
    /// Commas are read only when they can be nothing but marks of thousands.
    ///
    /// # Errors
    /// Says what is wrong, and [`MoneyError::remedy`] how to mend it.
    pub fn parse(text: &str, currency: Currency) -> Result<Money, MoneyError> {
        parse::parse(text, currency)
    }

    /// The sum of two amounts of one currency.
    ///
    /// # Errors
    /// [`MoneyError::OtherCurrency`] between currencies, [`MoneyError::TooLarge`] past what can be held.
    pub fn checked_add(self, other: Money) -> Result<Money, MoneyError> {
        self.alike(other)?;
        let minor = self.minor.checked_add(other.minor).ok_or(MoneyError::TooLarge)?;
        Ok(Money { minor, ..self })
    }

    /// The difference of two amounts of one currency.
    ///
    /// # Errors
    /// As [`Money::checked_add`].
    pub fn checked_sub(self, other: Money) -> Result<Money, MoneyError> {
        self.alike(other)?;
        let minor = self.minor.checked_sub(other.minor).ok_or(MoneyError::TooLarge)?;
        Ok(Money { minor, ..self })
    }

    /// The sum of all amounts, each in `currency`.
    ///
    /// # Errors
    /// As [`Money::checked_add`].
    pub fn sum(currency: Currency, amounts: impl IntoIterator<Item = Money>) -> Result<Money, MoneyError> {
        amounts.into_iter().try_fold(Money::zero(currency), Money::checked_add)
    }

    /// Which of two amounts of one currency is more.
    ///
    /// # Errors
    /// [`MoneyError::OtherCurrency`] between currencies.
    pub fn compare(self, other: Money) -> Result<Ordering, MoneyError> {
        self.alike(other)?;
        Ok(self.minor.cmp(&other.minor))
    }

    /// This amount so many times, rounded to a minor unit, ties to even.
    ///
    /// # Errors
    /// [`MoneyError::TooLarge`] past what can be held.
    pub fn times(self, quantity: Decimal) -> Result<Money, MoneyError> {
        // Whole numbers all the way: a product of decimals may be rounded once before it is rounded here.
        let product = quantity.mantissa().checked_mul(self.minor.into()).ok_or(MoneyError::TooLarge)?;
        let rounded = round_half_even(product, 10_i128.pow(quantity.scale()));
        let minor = i64::try_from(rounded).map_err(|_| MoneyError::TooLarge)?;
        Ok(Money { minor, ..self })
    }

    /// True below zero.
    pub const fn is_negative(self) -> bool {
        self.minor < 0
    }

    /// The amount as tables and other programs want it: `-1234.50`, no symbol, no grouping.
    pub fn plain(self) -> String {
        let sign = if self.is_negative() { "-" } else { "" };
        let (whole, part) = self.parts();
        format!("{sign}{whole}{part}")
    }

    /// Its figures, in threes: `1,234.50`; neither sign nor currency.
    pub fn digits(self) -> String {
        let (whole, part) = self.parts();
        grouped(&whole) + &part
    }

    /// Whole units, and decimals with their point.
    fn parts(self) -> (String, String) {
        let decimals = self.currency.decimals();
        let unit = 10_u64.pow(decimals);
        let (whole, part) = (self.minor.unsigned_abs() / unit, self.minor.unsigned_abs() % unit);
        let part = if decimals == 0 { String::new() } else { format!(".{part:0width$}", width = decimals as usize) };
        (whole.to_string(), part)
    }

    fn alike(self, other: Money) -> Result<(), MoneyError> {
        if self.currency == other.currency {
            return Ok(());
        }
        Err(MoneyError::OtherCurrency { wanted: self.currency, found: other.currency.code().into() })
    }
}

/// `$3,180.00`, `−€120.50`, `CAD 3,180.00`, `¥1,234`.
impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.is_negative() { "−" } else { "" };
        write!(f, "{sign}{}{}", self.currency.mark(), self.digits())
    }
}

fn grouped(digits: &str) -> String {
    let mut grouped = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    grouped
}

#[cfg(test)]
mod tests;
