//! What can be wrong with a ledger, by line.

use std::fmt;

use crate::units::series;

/// A fault of a ledger.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LedgerFault {
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
    /// There is no ledger, or an empty one, beside so many issues, responses and keys.
    Gone([usize; 3]),
    /// Lines that were recorded are not there: the first and the last of them.
    Lost(u32, u32),
    /// This line is not the one that was recorded.
    Rewritten(u32),
    /// No line names an issue that lies beside it.
    NoIssue(u32),
    /// No line names a response that lies beside it, by its first digits, and so many more.
    NoResponse(String, usize),
    /// No line names a key that lies beside it, by whose it is.
    NoKey(String),
    /// A response states a line that is not the one that stands there: whose it is, and the line.
    AnsweredOther(String, u32),
    /// What was published states a line that is not the one that stands there: the folder, and the line.
    PublishedOther(String, u32),
    /// An issue states a line that is not the one that stands there: the issue, and the line.
    OtherHead(u32, u32),
}

/// What is wrong, in words.
impl fmt::Display for LedgerFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let at = self.at;
        match &self.kind {
            FaultKind::Edited => write!(f, "line {at} of the ledger is not as it was written"),
            FaultKind::Missing(from, to) if from == to => write!(f, "line {from} of the ledger is gone"),
            FaultKind::Missing(from, to) => write!(f, "lines {from} to {to} of the ledger are gone"),
            FaultKind::Moved(number, later) => {
                write!(f, "line {number} of the ledger stands after line {later}")
            }
            FaultKind::Twice(number) => write!(f, "line {number} of the ledger appears twice"),
            FaultKind::Unlinked(number) => {
                write!(f, "line {number} of the ledger was written after another line {}", number.saturating_sub(1))
            }
            FaultKind::NotOpening => write!(f, "line {at} of the ledger is not where a ledger is opened"),
            FaultKind::Gone(counts) => write!(f, "the ledger is gone or empty, beside {}", beside(*counts)),
            FaultKind::Lost(from, to) if from == to => {
                write!(f, "line {from} of the ledger is lost: it was recorded, and is cut off")
            }
            FaultKind::Lost(from, to) => {
                write!(f, "lines {from} to {to} of the ledger are lost: they were recorded, and are cut off")
            }
            FaultKind::Rewritten(line) => write!(f, "line {line} of the ledger is not the one that was recorded"),
            FaultKind::NoIssue(number) => {
                write!(f, "issue {number} is in the record, and no line of the ledger names it")
            }
            FaultKind::NoResponse(digits, 0) => {
                write!(f, "the response `{digits}` is in the record, and no line of the ledger names it")
            }
            FaultKind::NoResponse(digits, more) => {
                write!(
                    f,
                    "the response `{digits}` and {more} more are in the record, and no line of the ledger names them"
                )
            }
            FaultKind::NoKey(who) => {
                write!(f, "a key of `{}` is in the record, and no line of the ledger names it", who.escape_debug())
            }
            FaultKind::OtherHead(..) | FaultKind::AnsweredOther(..) | FaultKind::PublishedOther(..) => {
                self.kind.other(f)
            }
            FaultKind::Unknown => write!(f, "line {at} of the ledger holds a fact that this program does not know"),
        }
    }
}

impl FaultKind {
    /// What states a line that is not the one that stands there.
    fn other(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (what, line) = match self {
            Self::OtherHead(issue, line) => (format!("issue {issue} was made on"), line),
            Self::AnsweredOther(who, line) => (format!("a response of `{}` was made on", who.escape_debug()), line),
            Self::PublishedOther(site, line) => (format!("`{}` was published over", site.escape_debug()), line),
            _ => return Ok(()),
        };
        write!(f, "{what} another line {line} of the ledger than the one that stands there")
    }
}

/// "2 issues, 1 response and 2 keys".
fn beside(counts: [usize; 3]) -> String {
    let words = [("issue", "issues"), ("response", "responses"), ("key", "keys")];
    let told = counts.into_iter().zip(words).filter(|(count, _)| *count > 0);
    let told: Vec<String> =
        told.map(|(count, (one, many))| format!("{count} {}", if count == 1 { one } else { many })).collect();
    if told.is_empty() { "the head of one that had lines".into() } else { series(&told) }
}

impl std::error::Error for LedgerFault {}

impl LedgerFault {
    /// How to mend it.
    pub fn remedy(&self) -> &'static str {
        match self.kind {
            FaultKind::NoIssue(_) | FaultKind::NoResponse(..) | FaultKind::NoKey(_) => {
                "put `record/ledger.jsonl` back from a backup that names it; a file that is no part of this record, \
                 move out of `record`; until then nothing can be recorded"
            }
            FaultKind::PublishedOther(..) => {
                "put `record` back as it was, from a backup; where this is another book, or one that is begun anew, \
                 publish it to a folder of its own and move the old one away"
            }
            FaultKind::Unknown => "use the newest `bookmatch`; until then nothing can be recorded",
            _ => "put `record/ledger.jsonl` back as it was, from a backup; until then nothing can be recorded",
        }
    }
}
