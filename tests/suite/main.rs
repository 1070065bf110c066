//! What a user sees, and the house rules, tested from outside the crate.

mod browser;
mod house;
mod project;
#[cfg(feature = "sheets")]
mod sheets;
