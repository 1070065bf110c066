//! The `fit/` rules.

pub mod width;
