//! The ledger: what was issued, decided, confirmed and measured, one line a fact, each line with the
//! digest of the one before.
//!
//! Pure: text in, facts and faults out, and the next line. A line is the canonical JSON (RFC 8785) of
//! `at`, `before`, `fact`, `line` and `sha256`, and a line break; `sha256` is the SHA-256 of the same
//! without `sha256`. Lines count from 1, and the order of lines is the order of facts: `at` is what the
//! clock said, and decides nothing. Lines cut off whole at the end leave no trace in the chain itself.

mod chain;
mod drawing;
mod fact;
mod fault;
mod issue;
mod line;
mod moment;
#[cfg(test)]
mod tests;

pub use chain::{Chain, Tail};
pub use drawing::{Drawing, MAX_DRAWING};
pub use fact::{
    Asked, By, Confirmed, Decided, Decision, Fact, Invited, Issued, Measured, Met, Opened, Purpose, Read, Refused,
    Side, Signed, Spot, Withdrawn,
};
pub use fault::{Fault, FaultKind};
pub use issue::{Issue, IssuedItem, Total};
pub use line::{FIRST_BEFORE, Line};
pub use moment::{Moment, NotAMoment};
