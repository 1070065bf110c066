//! The `store/` rules: what is kept where, and reached.

pub mod bins;
pub mod deep_shelf;
