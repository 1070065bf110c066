//! The `source/` rules.
