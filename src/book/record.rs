//! What the record says: lines of the ledger, and the issues that they name.

use std::collections::{BTreeMap, BTreeSet};

use crate::digest::Digest;
use crate::ledger::{Drawing, Fact, Head, Issue, Line, Measured, Purpose};
use crate::source::RecordFile;
use crate::units::Date;

/// The record of a book; nothing while nothing was issued.
#[derive(Clone, Debug, Default)]
pub struct Record {
    /// The book's id: 32 hex digits.
    pub id: Option<String>,
    /// The lines that are as they were written, in their order.
    pub lines: Vec<Line>,
    /// The issues whose files are as they were issued, by number.
    pub issues: BTreeMap<u32, Issue>,
    /// The line that names each issue, by the issue's number.
    pub heads: BTreeMap<u32, Head>,
    /// Readings that do not count, in their order.
    pub waiting: Vec<WaitingReadings>,
    /// What responses keep beside their facts, by the response.
    pub kept: BTreeMap<Digest, KeptResponse>,
    /// The photographs of what came that are as they were handed over, by the digests of their bytes.
    pub photographs: BTreeSet<Digest>,
    /// Something in it is not as it was written; findings say what.
    pub faulty: bool,
}

/// Readings that do not count.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WaitingReadings {
    /// What was measured.
    pub measured: Measured,
    /// Why they do not count.
    pub because: Uncounted,
}

/// Why readings do not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Uncounted {
    /// Nobody has confirmed them.
    Unconfirmed,
    /// They say that they were made after the day on which they came in, which is this one.
    Ahead(Date),
    /// They are older than the book's own measurement of that day, the newest of the openings that they are of.
    Older(Date),
}

/// What a response keeps that its fact does not say.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct KeptResponse {
    /// The signature as it was drawn.
    pub drawing: Option<Drawing>,
    /// The scan of the sheet that was signed on paper.
    pub scan: Option<Scan>,
}

/// A scan of the record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Scan {
    /// The name of its file: its digest in hex, and an ending.
    pub name: String,
    /// Of its bytes.
    pub digest: Digest,
    /// How many there are.
    pub bytes: u64,
}

/// Where a photograph of what came lies in the book's folder.
pub fn photograph_path(digest: &Digest) -> String {
    RecordFile::Photograph(&digest.to_string()).path()
}

impl Record {
    /// Whether there is a record at all.
    pub fn is_open(&self) -> bool {
        self.id.is_some() || !self.lines.is_empty()
    }

    /// The facts in their order.
    pub fn facts(&self) -> impl Iterator<Item = &Fact> {
        self.lines.iter().map(|line| &line.fact)
    }

    /// The newest issue.
    pub fn latest(&self) -> Option<&Issue> {
        self.issues.values().next_back()
    }

    /// The newest issue for that.
    pub fn latest_for(&self, purpose: Purpose) -> Option<&Issue> {
        self.issues.values().rfind(|issue| issue.purpose == purpose)
    }
}
