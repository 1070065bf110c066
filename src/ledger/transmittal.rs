//! Who was sent which issue, and who says that it came, as facts of the ledger.

use serde::{Deserialize, Serialize};

use crate::digest::Digest;
use crate::units::Date;

use super::Moment;

/// An issue was sent to somebody.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sent {
    /// The issue.
    pub issue: u32,
    /// To whom.
    pub to: String,
    /// What they do on the job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub role: Option<String>,
    /// The day.
    pub on: Date,
}

/// Somebody says that an issue came to hand. It counts once it is confirmed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Acknowledged {
    /// Of the canonical JSON of the response.
    pub response: Digest,
    /// The issue.
    pub issue: u32,
    /// Who says so.
    pub by: String,
    /// The day, by the clock where it was said.
    pub on: Date,
    /// The moment, by the same clock.
    pub made: Moment,
}
