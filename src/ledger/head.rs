//! The head of a ledger: its last line, by number and digest. Whoever has it can tell a cut or a rewritten ledger.

use serde::{Deserialize, Serialize};

use crate::digest::Digest;

use super::{Chain, Line};

/// A line of a ledger, by its number and its digest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Head {
    /// Its number.
    pub line: u32,
    /// Its digest, which is of all lines before it too.
    pub sha256: Digest,
}

/// What is published states of the ledger that it was published over, and where its pages send responses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stated {
    /// The last line of the ledger then.
    pub ledger: Head,
    /// The address that responses are posted to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub post: Option<String>,
}

impl Head {
    /// Of a line.
    pub fn of(line: &Line) -> Self {
        Self { line: line.number, sha256: line.digest }
    }

    /// Whether these lines hold it.
    pub fn is_in(self, lines: &[Line]) -> bool {
        lines.iter().any(|line| Self::of(line) == self)
    }
}

impl Chain {
    /// The last line; none of an empty ledger.
    pub fn head(&self) -> Option<Head> {
        self.lines.last().map(Head::of)
    }
}
