//! The `source/` rules: the folder itself.

pub mod bare_length;
pub mod contradiction;
pub mod duplicate;
pub mod geometry;
pub mod outside_book;
pub mod stray;
pub mod syntax;
pub mod tag;
pub mod too_large;
pub mod unchecked;
pub mod unknown_key;
pub mod unknown_name;
pub mod unportable;
pub mod wrong_type;
