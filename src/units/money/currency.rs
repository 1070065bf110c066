//! Currencies by their ISO 4217 codes.

use std::fmt;

use crate::units::{Fault, Phrase, phrase, shown};

/// A currency of ISO 4217 that has minor units (or says that it has none): not gold, not test codes.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Currency(iso_currency::Currency);

/// A code that is no currency one can pay in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CurrencyError(pub String);

impl Fault for CurrencyError {
    fn message(&self) -> Phrase {
        phrase!("`{}` is not a currency code", self.0)
    }

    fn remedy(&self) -> Phrase {
        "write the three capital letters of ISO 4217, such as `USD`, `CAD` or `EUR`".into()
    }
}

shown!(CurrencyError);

/// Symbols that mean one currency wherever they are read. All others print by code, since `$`
/// alone is a dozen of them.
const SYMBOLS: &[(&str, &str)] = &[("USD", "$"), ("EUR", "€"), ("GBP", "£"), ("JPY", "¥")];

impl Currency {
    /// The United States dollar.
    pub const USD: Currency = Currency(iso_currency::Currency::USD);

    /// The currency of a code such as `USD`.
    ///
    /// # Errors
    /// When no such currency is in ISO 4217, or it isn't one to pay in.
    pub fn parse(code: &str) -> Result<Currency, CurrencyError> {
        let found = iso_currency::Currency::from_code(code.trim()).filter(|found| found.exponent().is_some());
        found.map(Currency).ok_or_else(|| CurrencyError(code.trim().into()))
    }

    /// Its code.
    pub fn code(self) -> &'static str {
        self.0.code()
    }

    /// Its name in English.
    pub fn name(&self) -> &str {
        self.0.name()
    }

    /// Decimals of its minor unit (SD-23).
    pub fn decimals(self) -> u32 {
        self.0.exponent().unwrap_or(0).into()
    }

    /// Its symbol, if that is well known and means no other.
    pub fn symbol(self) -> Option<&'static str> {
        SYMBOLS.iter().find(|(code, _)| *code == self.code()).map(|(_, symbol)| *symbol)
    }

    /// What stands before an amount: its symbol, or its letters and a space.
    pub fn mark(self) -> String {
        self.symbol().map_or_else(|| format!("{} ", self.code()), Into::into)
    }
}

impl std::str::FromStr for Currency {
    type Err = CurrencyError;

    fn from_str(code: &str) -> Result<Currency, CurrencyError> {
        Currency::parse(code)
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl fmt::Debug for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}
