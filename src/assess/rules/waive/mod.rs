//! The `waive/` rules: what was set aside, and no longer should be.

pub mod expired;
pub mod orphan;
