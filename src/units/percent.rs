//! Percentages, exact: `8.25 %`, `10 percent`.

use super::money::{Money, MoneyError};
use super::number::{Cursor, NumberError};
use super::{Fault, Phrase, phrase, shown};
use rust_decimal::Decimal;
use std::fmt;

/// A share in hundredths, as an exact decimal from 0 to 1000.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Percent(Decimal);

/// Why a text is not a percentage.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PercentError {
    /// A number without its sign.
    Bare(String),
    /// Not a number and a percent sign.
    Unreadable(String),
    /// The number itself is wrong.
    Number(NumberError),
    /// Past 1000 %.
    TooLarge(String),
}

impl Fault for PercentError {
    fn message(&self) -> Phrase {
        match self {
            PercentError::Bare(n) => phrase!("`{n}` has no percent sign", n),
            PercentError::Unreadable(text) => phrase!("`{text}` is not a percentage", text),
            PercentError::Number(error) => error.message(),
            PercentError::TooLarge(text) => phrase!("`{text}` is more than 1000 %", text),
        }
    }

    fn remedy(&self) -> Phrase {
        match self {
            PercentError::Bare(n) => phrase!("write `{n} %`", n),
            PercentError::Unreadable(_) => "write a number and its sign, such as `8.25 %`".into(),
            PercentError::Number(error) => error.remedy(),
            PercentError::TooLarge(_) => "check the number".into(),
        }
    }
}

shown!(PercentError);

impl Percent {
    /// None of it.
    pub const ZERO: Percent = Percent(Decimal::ZERO);

    /// So many hundredths; none below 0 or above 1000.
    pub fn new(percent: Decimal) -> Option<Percent> {
        (percent >= Decimal::ZERO && percent <= Decimal::from(1000)).then(|| Percent(percent.normalize()))
    }

    /// Reads a number and `%` or `percent`.
    ///
    /// # Errors
    /// Says what is wrong; a bare number is [`PercentError::Bare`], since `0.1` may mean either.
    pub fn parse(text: &str) -> Result<Percent, PercentError> {
        let written = text.trim();
        let unreadable = || PercentError::Unreadable(written.into());
        let mut cursor = Cursor::new(written);
        let number = cursor.number().map_err(PercentError::Number)?.ok_or_else(unreadable)?;
        cursor.spaces();
        match cursor.rest() {
            "" => return Err(PercentError::Bare(written.into())),
            sign if sign == "%" || sign.eq_ignore_ascii_case("percent") => {}
            _ => return Err(unreadable()),
        }
        let percent = number.decimal().ok_or_else(unreadable)?;
        Percent::new(percent).ok_or_else(|| PercentError::TooLarge(written.into()))
    }

    /// Hundredths.
    pub fn value(self) -> Decimal {
        self.0
    }

    /// What of an amount is this share added to the rest: the tax in a price that holds it. Rounded to a minor
    /// unit, ties to even, so that the rest and it are the amount to the cent.
    ///
    /// # Errors
    /// [`MoneyError::TooLarge`] past what can be held.
    pub fn within(self, money: Money) -> Result<Money, MoneyError> {
        let too_large = || MoneyError::TooLarge;
        let hundred = 100_i128.checked_mul(10_i128.pow(self.0.scale())).ok_or_else(too_large)?;
        let whole = self.0.mantissa().checked_add(hundred).ok_or_else(too_large)?;
        let share = self.0.mantissa().checked_mul(money.minor.into()).ok_or_else(too_large)?;
        let minor = i64::try_from(crate::units::figure::round_half_even(share, whole)).map_err(|_| too_large())?;
        Ok(Money { minor, ..money })
    }

    /// This share of an amount, rounded to a minor unit, ties to even.
    ///
    /// # Errors
    /// [`MoneyError::TooLarge`] past what can be held.
    pub fn of(self, money: Money) -> Result<Money, MoneyError> {
        money.times(self.0 / Decimal::ONE_HUNDRED)
    }
}

impl std::str::FromStr for Percent {
    type Err = PercentError;

    fn from_str(text: &str) -> Result<Percent, PercentError> {
        Percent::parse(text)
    }
}

impl fmt::Display for Percent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} %", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The tax in a price is the nearest cent to what the rate takes of it: with whole numbers, so that nothing is
    /// rounded before. What is left and it are the price.
    #[test]
    fn the_tax_in_a_price_is_its_share_to_the_nearest_cent() {
        let currency = crate::units::Currency::USD;
        for rate in ["0 %", "5.5 %", "7 %", "8.25 %", "19 %", "20 %", "25 %", "100 %"] {
            let rate = Percent::parse(rate).unwrap();
            for minor in (-500..3_000).chain([i64::MAX, 123_456_789_012]) {
                let tax = rate.within(Money { minor, currency }).unwrap().minor;
                let (share, whole) = (rate.0.mantissa(), rate.0.mantissa() + 100 * 10_i128.pow(rate.0.scale()));
                let off = (i128::from(tax) * whole - i128::from(minor) * share).abs();
                assert!(2 * off <= whole, "{rate} in {minor}: {tax}");
            }
        }
        let within = |rate: &str, minor| Percent::parse(rate).unwrap().within(Money { minor, currency }).unwrap().minor;
        assert_eq!(
            [within("20 %", 12_000), within("20 %", 3), within("20 %", 9), within("7 %", 10_700)],
            [2_000, 0, 2, 700]
        );
    }
    use crate::units::money::Currency;

    #[test]
    fn a_percentage_is_read_with_its_sign_or_word() {
        let rows =
            [("8.25 %", "8.25 %"), ("8.25%", "8.25 %"), ("10 percent", "10 %"), ("7 1/2 %", "7.5 %"), ("0 %", "0 %")];
        for (written, printed) in rows {
            let percent = Percent::parse(written).unwrap();
            assert_eq!(percent.to_string(), printed);
            assert_eq!(Percent::parse(printed), Ok(percent));
        }
    }

    #[test]
    fn a_share_of_money_is_rounded_once_with_ties_to_even() {
        let tax =
            |percent: &str, minor| Percent::parse(percent).unwrap().of(Money::new(minor, Currency::USD)).unwrap().minor;
        assert_eq!(tax("8.25 %", 318_000), 26_235);
        assert_eq!(tax("50 %", 5), 2);
        assert_eq!(tax("50 %", 15), 8);
        assert_eq!(tax("50 %", -5), -2);
        assert_eq!(tax("0 %", 12_345), 0);
    }

    #[test]
    fn what_is_no_percentage_says_so() {
        let rows = [
            ("8.25", "`8.25` has no percent sign", "write `8.25 %`"),
            ("-5 %", "`-5 %` is not a percentage", "write a number and its sign, such as `8.25 %`"),
            (
                "8,25 %",
                "`8,25` has a comma, which some read as a decimal point and some as thousands",
                "write decimals with a point: `8.25`",
            ),
            ("5 % of it", "`5 % of it` is not a percentage", "write a number and its sign, such as `8.25 %`"),
            ("1001 %", "`1001 %` is more than 1000 %", "check the number"),
        ];
        for (written, message, remedy) in rows {
            let error = Percent::parse(written).unwrap_err();
            assert_eq!((error.to_string().as_str(), error.remedy().text()), (message, remedy));
        }
    }
}
