//! The `depends/` rules: what rests on what.

pub mod circle;
