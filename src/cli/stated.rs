//! What a published folder states of the ledger, held against the ledger that there is.

use std::path::Path;

use crate::ledger::{FaultKind, LedgerFault, Line, Stated};
use crate::source::STATED;

/// The largest such file, in bytes.
const MAX: u64 = 4096;

/// What is wrong, where a folder was published over another ledger than these lines, or over more of it.
pub fn published_over_another(published: &Path, lines: &[Line]) -> Option<LedgerFault> {
    let path = published.join(STATED);
    let facts = std::fs::symlink_metadata(&path).ok().filter(|facts| facts.is_file() && facts.len() <= MAX)?;
    let stated: Stated = serde_json::from_slice(&std::fs::read(&path).ok().filter(|_| facts.is_file())?).ok()?;
    let head = stated.ledger;
    let kind = FaultKind::PublishedOther(published.display().to_string(), head.line);
    (!head.is_in(lines)).then_some(LedgerFault { at: head.line, kind })
}
