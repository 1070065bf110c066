//! What a user sees, and the house rules, tested from outside the crate.

mod project;

mod browser;
mod house;
#[cfg(feature = "sheets")]
mod sheets;
mod units;
