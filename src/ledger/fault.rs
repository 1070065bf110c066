//! What can be wrong with a ledger, by line.

use crate::units::{Fault, Phrase, phrase, shown};

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
    /// No line names a photograph that lies beside it, by its first digits, and so many more.
    NoPhotograph(String, usize),
    /// No line names a key that lies beside it, by whose it is.
    NoKey(String),
    /// A response states a line that is not the one that stands there: whose it is, and the line.
    AnsweredOther(String, u32),
    /// What was published states a line that is not the one that stands there: the folder, and the line.
    PublishedOther(String, u32),
    /// An issue states a line that is not the one that stands there: the issue, and the line.
    OtherHead(u32, u32),
}

impl Fault for LedgerFault {
    fn message(&self) -> Phrase {
        let at = self.at;
        match &self.kind {
            FaultKind::Edited => phrase!("line {at} of the ledger is not as it was written", at),
            FaultKind::Missing(from, to) if from == to => phrase!("line {from} of the ledger is gone", from),
            FaultKind::Missing(from, to) => phrase!("lines {from} to {to} of the ledger are gone", from, to),
            FaultKind::Moved(number, later) => {
                phrase!("line {number} of the ledger stands after line {later}", number, later)
            }
            FaultKind::Twice(number) => phrase!("line {number} of the ledger appears twice", number),
            FaultKind::Unlinked(number) => {
                phrase!(
                    "line {number} of the ledger was written after another line {}",
                    number,
                    number.saturating_sub(1)
                )
            }
            FaultKind::NotOpening => phrase!("line {at} of the ledger is not where a ledger is opened", at),
            FaultKind::Gone(counts) => phrase!("the ledger is gone or empty, beside {}", beside(*counts)),
            FaultKind::Lost(from, to) if from == to => {
                phrase!("line {from} of the ledger is lost: it was recorded, and is cut off", from)
            }
            FaultKind::Lost(from, to) => {
                phrase!("lines {from} to {to} of the ledger are lost: they were recorded, and are cut off", from, to)
            }
            FaultKind::Rewritten(line) => phrase!("line {line} of the ledger is not the one that was recorded", line),
            FaultKind::NoIssue(_) | FaultKind::NoResponse(..) | FaultKind::NoPhotograph(..) | FaultKind::NoKey(_) => {
                self.kind.unnamed()
            }
            FaultKind::OtherHead(..) | FaultKind::AnsweredOther(..) | FaultKind::PublishedOther(..) => {
                self.kind.other()
            }
            FaultKind::Unknown => phrase!("line {at} of the ledger holds a fact that this program does not know", at),
        }
    }

    fn remedy(&self) -> Phrase {
        let remedy = match self.kind {
            FaultKind::NoIssue(_) | FaultKind::NoResponse(..) | FaultKind::NoPhotograph(..) | FaultKind::NoKey(_) => {
                "put `record/ledger.jsonl` back from a backup that names it; a file that is no part of this record, \
                 move out of `record`; until then nothing can be recorded"
            }
            FaultKind::PublishedOther(..) => {
                "put `record` back as it was, from a backup; where this is another book, or one that is begun anew, \
                 publish it to a folder of its own and move the old one away"
            }
            FaultKind::Unknown => "use the newest `bookmatch`; until then nothing can be recorded",
            _ => "put `record/ledger.jsonl` back as it was, from a backup; until then nothing can be recorded",
        };
        remedy.into()
    }
}

shown!(LedgerFault);

impl FaultKind {
    /// What lies beside the ledger and stands in no line of it.
    fn unnamed(&self) -> Phrase {
        match self {
            Self::NoIssue(number) => {
                phrase!("issue {number} is in the record, and no line of the ledger names it", number)
            }
            Self::NoResponse(digits, 0) => {
                phrase!("the response `{digits}` is in the record, and no line of the ledger names it", digits)
            }
            Self::NoResponse(digits, more) => {
                phrase!(
                    "the response `{digits}` and {more} more are in the record, and no line of the ledger names them",
                    digits,
                    more
                )
            }
            Self::NoPhotograph(digits, 0) => {
                phrase!("the photograph `{digits}` is in the record, and no line of the ledger names it", digits)
            }
            Self::NoPhotograph(digits, more) => {
                phrase!(
                    "the photograph `{digits}` and {more} more are in the record, and no line of the ledger names them",
                    digits,
                    more
                )
            }
            Self::NoKey(who) => {
                phrase!(
                    "a key of `{}` is in the record, and no line of the ledger names it",
                    who.escape_debug().to_string()
                )
            }
            _ => Phrase::default(),
        }
    }

    /// What states a line that is not the one that stands there.
    fn other(&self) -> Phrase {
        let (what, line) = match self {
            Self::OtherHead(issue, line) => (phrase!("issue {issue} was made on", issue), line),
            Self::AnsweredOther(who, line) => {
                (phrase!("a response of `{}` was made on", who.escape_debug().to_string()), line)
            }
            Self::PublishedOther(site, line) => {
                (phrase!("`{}` was published over", site.escape_debug().to_string()), line)
            }
            _ => return Phrase::default(),
        };
        phrase!("{what} another line {line} of the ledger than the one that stands there", what, line)
    }
}

/// "2 issues, 1 response and 2 keys".
fn beside(counts: [usize; 3]) -> Phrase {
    let words = [("issue", "issues"), ("response", "responses"), ("key", "keys")];
    let told = counts.into_iter().zip(words).filter(|(count, _)| *count > 0);
    let told: Vec<Phrase> =
        told.map(|(count, (one, many))| phrase!("{count} {}", count, if count == 1 { one } else { many })).collect();
    if told.is_empty() { "the head of one that had lines".into() } else { Phrase::series(told) }
}
