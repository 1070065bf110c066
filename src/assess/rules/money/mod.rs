//! The `money/` rules: allowances, currency, sums.

pub mod allowance;
pub mod arithmetic;
pub mod currency;
