//! The ledger: what was issued, sent, decided, confirmed, measured and received, one line a fact, each line with the
//! digest of the one before.
//!
//! Pure: text in, facts and faults out, and the next line. A line is the canonical JSON (RFC 8785) of
//! `at`, `before`, `fact`, `line` and `sha256`, and a line break; `sha256` is the SHA-256 of the same
//! without `sha256`. Lines count from 1, and their order is the order in which facts were recorded: `at` is what
//! the clock said then. Which of two statements was made last is another question, see [`Statements`].
//! Lines cut off whole at the end leave no trace in the chain itself; see [`BesideLedger`] for what shows them.

mod beside;
mod chain;
mod delivery;
mod drawing;
mod fact;
mod fault;
mod head;
mod issue;
mod line;
mod moment;
mod order;
pub mod photograph;
mod reading;
mod shown;
mod statement;
#[cfg(test)]
mod tests;
mod transmittal;
mod vouched;

/// The page that `explain ledger` shows: every format of the record, and what counts by it.
pub const FORMATS: &str = include_str!("formats.md");

pub use beside::BesideLedger;
pub use chain::{Chain, LedgerEnd};
pub use delivery::{Came, Delivery, ItemReceived, Kept, LineReceived, Looked, PhotoTaken, Received};
pub use drawing::{Drawing, MAX_DRAWING};
pub use fact::{
    Attestation, Confirmed, Decided, Decision, Fact, Invited, Issued, ItemDecision, Met, NotTheirs, Opened, Purpose,
    Refused, Signed, Withdrawn,
};
pub use fault::{FaultKind, LedgerFault};
pub use head::{Head, Stated};
pub use issue::{
    AllowedTerms, AskedChange, Issue, IssuedItem, IssuedSheet, ItemName, MoneyTerms, Named, TakenUnapproved, Terms,
    TitleBlock, Total, WhoMust,
};
pub use line::{FIRST_BEFORE, Line};
pub use moment::{Moment, NotAMoment};
pub use order::{Device, During, MomentFault, ResponseOrder, TOLERANCE, day_in};
pub use reading::{Measured, Read, ReadFrom, ReadingSpot, Side, TakenBack};
pub use shown::{ItemContent, OptionContent};
pub use statement::{Statement, Statements};
pub use transmittal::{Acknowledged, Sent};
pub use vouched::Vouched;
