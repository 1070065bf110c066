//! Tests of the whole program, from outside.

#[cfg(feature = "sheets")]
mod sheets;

mod units;
