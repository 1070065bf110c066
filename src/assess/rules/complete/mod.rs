//! The `complete/` rules.
