//! What lies beside a ledger, and what it tells of lines that are lost.
//!
//! A file of the record stands in its place only after the line that names it is on the disk, and the head
//! that was kept is of a line that somebody was told of. Where the ledger does not reach as far, it was
//! deleted, emptied, cut, or put back from an older copy.

use std::collections::BTreeSet;

use crate::digest::Digest;

use super::fault::{FaultKind, LedgerFault};
use super::{Chain, Fact, Head, LedgerEnd};

/// What lies beside a ledger.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BesideLedger {
    /// The head that was kept after the last line that was recorded.
    pub head: Option<Head>,
    /// Issues, by number.
    pub issues: BTreeSet<u32>,
    /// Responses, readings, deliveries and acknowledgements.
    pub responses: BTreeSet<Digest>,
    /// Photographs of deliveries.
    pub photographs: BTreeSet<Digest>,
    /// Keys, by whose they are.
    pub keys: BTreeSet<String>,
}

impl BesideLedger {
    /// Takes in a file by its folder in the record and its name; what is in the making is left out.
    pub fn take(&mut self, folder: &str, name: &str) {
        match folder {
            "issues" => self.issues.extend(name.strip_suffix(".json").and_then(|number| number.parse::<u32>().ok())),
            "responses" => {
                let digest = name.strip_suffix(".json").map(|name| name.strip_suffix("-sealed").unwrap_or(name));
                self.responses.extend(digest.and_then(|digest| digest.parse::<Digest>().ok()));
            }
            "photographs" => {
                self.photographs.extend(name.strip_suffix(".jpg").and_then(|digest| digest.parse::<Digest>().ok()));
            }
            "keys" => self.keys.extend(name.strip_suffix(".key").map(str::to_owned)),
            _ => {}
        }
    }

    fn is_empty(&self) -> bool {
        let files = self.issues.len() + self.responses.len() + self.photographs.len() + self.keys.len();
        self.head.is_none() && files == 0
    }
}

impl Chain {
    /// Holds the ledger to what lies beside it. A ledger that is faulty in itself is told by its own faults.
    pub fn hold_to(&mut self, beside: &BesideLedger) {
        if !self.faults.is_empty() || beside.is_empty() {
            return;
        }
        if self.lines.is_empty() {
            let counts = [beside.issues.len(), beside.responses.len(), beside.keys.len()];
            self.faults.push(LedgerFault { at: 0, kind: FaultKind::Gone(counts) });
            return;
        }
        let last = self.lines.last().map_or(0, |line| line.number);
        let unnamed = self.unnamed(beside);
        let lost = match beside.head {
            Some(head) if head.line > last => Some(FaultKind::Lost(last + 1, head.line)),
            Some(head) if !head.is_in(&self.lines) => Some(FaultKind::Rewritten(head.line)),
            _ if self.tail == LedgerEnd::Torn && !unnamed.is_empty() => Some(FaultKind::Lost(last + 1, last + 1)),
            _ => None,
        };
        self.faults.extend(lost.into_iter().chain(unnamed).map(|kind| LedgerFault { at: last, kind }));
    }

    /// What lies beside and no line names.
    fn unnamed(&self, beside: &BesideLedger) -> Vec<FaultKind> {
        let (mut issues, mut responses, mut keys) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
        let mut photographs = BTreeSet::new();
        for line in &self.lines {
            match &line.fact {
                Fact::Issued(issued) => _ = issues.insert(issued.number),
                Fact::Decided(decided) => _ = responses.insert(decided.response),
                Fact::Measured(measured) => _ = responses.insert(measured.response),
                Fact::Received(received) => {
                    responses.insert(received.response);
                    photographs.extend(received.photographs().into_keys());
                }
                Fact::Acknowledged(one) => _ = responses.insert(one.response),
                Fact::Invited(invited) => _ = keys.insert(invited.who.clone()),
                _ => {}
            }
        }
        let mut found: Vec<FaultKind> = beside.issues.difference(&issues).map(|one| FaultKind::NoIssue(*one)).collect();
        let mut gone = beside.responses.difference(&responses);
        if let Some(first) = gone.next() {
            found.push(FaultKind::NoResponse(first.to_string().chars().take(8).collect(), gone.count()));
        }
        let mut stray = beside.photographs.difference(&photographs);
        if let Some(first) = stray.next() {
            found.push(FaultKind::NoPhotograph(first.to_string().chars().take(8).collect(), stray.count()));
        }
        found.extend(beside.keys.difference(&keys).map(|who| FaultKind::NoKey(who.clone())));
        found
    }
}
