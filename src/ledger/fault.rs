//! What can be wrong with a ledger, by line.

use std::fmt;

/// A fault of a ledger.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The line of the file, from 1.
    pub at: u32,
    /// What is wrong there.
    pub kind: FaultKind,
}

/// What is wrong with a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FaultKind {
    /// It is not as it was written.
    Edited,
    /// Lines are gone before it: the first and the last of them.
    Missing(u32, u32),
    /// It stands after a line that came later: its own number, and that of the later one.
    Moved(u32, u32),
    /// Its number stands twice.
    Twice(u32),
    /// It was written after another line than the one that stands before it: its own number.
    Unlinked(u32),
    /// The ledger does not begin with its opening, or is opened again.
    NotOpening,
    /// It holds a fact that this program does not know.
    Unknown,
}

/// What is wrong, in words.
impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let at = self.at;
        match &self.kind {
            FaultKind::Edited => write!(f, "line {at} of the ledger is not as it was written"),
            FaultKind::Missing(from, to) if from == to => write!(f, "line {from} of the ledger is gone"),
            FaultKind::Missing(from, to) => write!(f, "lines {from} to {to} of the ledger are gone"),
            FaultKind::Moved(number, later) => {
                write!(f, "line {number} of the ledger stands after line {later}")
            }
            FaultKind::Twice(number) => write!(f, "line {number} of the ledger stands twice"),
            FaultKind::Unlinked(number) => {
                write!(f, "line {number} of the ledger was written after another line {}", number.saturating_sub(1))
            }
            FaultKind::NotOpening => write!(f, "line {at} of the ledger is not where a ledger is opened"),
            FaultKind::Unknown => write!(f, "line {at} of the ledger holds a fact that this program does not know"),
        }
    }
}

impl std::error::Error for Fault {}

impl Fault {
    /// How to mend it.
    pub fn remedy(&self) -> &'static str {
        match self.kind {
            FaultKind::Unknown => "use the newest `bookmatch`; until then nothing can be recorded",
            _ => "put `record/ledger.jsonl` back as it was, from a backup; until then nothing can be recorded",
        }
    }
}
