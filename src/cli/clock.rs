//! The moment of what is recorded: the only place that asks the clock for it.

use crate::ledger::Moment;

use super::Failure;

/// The moment by the clock, to the second.
#[expect(clippy::disallowed_methods, reason = "the one place that asks the clock for the moment")]
pub fn now() -> Result<Moment, Failure> {
    Moment::at(jiff::Timestamp::now()).ok_or_else(|| "the clock shows no moment; set it".into())
}
