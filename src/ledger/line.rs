//! One line of a ledger: read with its own digest, and the next one made.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::digest::{Digest, NotCanonical, canonical};

use super::{Chain, Fact, Moment};

/// What the first line names as the line before it.
pub const FIRST_BEFORE: Digest = Digest::from_bytes([0; 32]);

/// A fact with its place in the ledger.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its number, from 1.
    pub number: u32,
    /// What the clock said when it was written.
    pub at: Moment,
    /// The digest of the line before.
    pub before: Digest,
    /// What happened.
    pub fact: Fact,
    /// Its own digest.
    pub digest: Digest,
}

/// A line as JSON, without its digest.
#[derive(Serialize)]
struct Undigested<'a> {
    at: Moment,
    before: Digest,
    fact: &'a Fact,
    line: u32,
}

/// A line as JSON whose fact may be of a kind that nobody knows.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Raw {
    pub at: Moment,
    pub before: Digest,
    pub fact: Value,
    pub line: u32,
    pub sha256: Digest,
}

impl Raw {
    /// A line whose bytes are exactly as they were written.
    pub(super) fn sound(bytes: &[u8]) -> Option<Raw> {
        let value: Value = serde_json::from_slice(bytes).ok()?;
        if canonical(&value).ok()? != bytes {
            return None;
        }
        let mut undigested = value.clone();
        undigested.as_object_mut()?.remove("sha256");
        let raw: Raw = serde_json::from_value(value).ok()?;
        (Digest::of_json(&undigested).ok()? == raw.sha256).then_some(raw)
    }
}

impl Line {
    /// The line that comes after all of a chain.
    ///
    /// # Errors
    /// When the fact holds a number that JSON can't hold exactly.
    pub fn next(chain: &Chain, at: Moment, fact: Fact) -> Result<Line, NotCanonical> {
        let (number, before) = chain.lines.last().map_or((1, FIRST_BEFORE), |last| (last.number + 1, last.digest));
        let undigested = Undigested { at, before, fact: &fact, line: number };
        let digest = Digest::of_json(&serde_json::to_value(undigested).map_err(|_| NotCanonical)?)?;
        Ok(Line { number, at, before, fact, digest })
    }

    /// The line's bytes, with its line break.
    ///
    /// # Errors
    /// As [`Line::next`].
    pub fn bytes(&self) -> Result<Vec<u8>, NotCanonical> {
        let undigested = Undigested { at: self.at, before: self.before, fact: &self.fact, line: self.number };
        let mut value = serde_json::to_value(undigested).map_err(|_| NotCanonical)?;
        let fields = value.as_object_mut().ok_or(NotCanonical)?;
        fields.insert("sha256".into(), Value::String(self.digest.to_string()));
        let mut bytes = canonical(&value)?;
        bytes.push(b'\n');
        Ok(bytes)
    }
}
