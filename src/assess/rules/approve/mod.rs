//! Rules on what was issued and decided.

pub mod ledger;
