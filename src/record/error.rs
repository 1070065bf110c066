//! Why something can't be recorded, and what to do about it.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use crate::ledger::LedgerFault;
use crate::units::Fault;

/// Why something can't be recorded.
#[derive(Debug)]
pub enum RecordError {
    /// The disk refuses: what was being done, where, and the system's word.
    Disk(&'static str, PathBuf, io::Error),
    /// The ledger is not as it was written: the first fault, and how many more there are.
    Faulty(LedgerFault, usize),
    /// A file stands where another one belongs: nothing is written over.
    Taken(PathBuf),
    /// A link or something else stands where a file or folder of the record should.
    NotOurs(PathBuf),
    /// A fact that is not an opening for a ledger that was not opened, or a second opening.
    NotOpening,
    /// A number that JSON can't hold exactly.
    NotExact,
    /// The system gives no random bytes.
    NotRandom,
    /// An approver's id that can't be the name of a file.
    NotAName(String),
}

impl RecordError {
    pub(super) fn disk(doing: &'static str, path: &Path, error: io::Error) -> Self {
        Self::Disk(doing, path.to_path_buf(), error)
    }

    /// What to do about it.
    pub fn remedy(&self) -> String {
        match self {
            Self::Disk(_, _, error) => match error.kind() {
                io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
                    "make room on the disk and record it again".into()
                }
                io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
                    "give yourself the right to write to `record` and record it again".into()
                }
                _ => "mend what the system says and record it again".into(),
            },
            Self::Faulty(fault, _) => fault.remedy().to_string(),
            Self::Taken(_) => "put `record/ledger.jsonl` back from a backup that names it".into(),
            Self::NotOurs(path) => format!("move `{}` away", path.display()),
            Self::NotOpening => "issue the book first, with `bookmatch issue`".into(),
            Self::NotExact => "write it with fewer digits".into(),
            Self::NotRandom => "try again".into(),
            Self::NotAName(_) => "use letters, digits and hyphens for the `id` of an approver".into(),
        }
    }
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Disk(doing, path, error) => {
                let word: &dyn fmt::Display = match error.kind() {
                    io::ErrorKind::StorageFull => &"no room is left on the disk",
                    _ => error,
                };
                write!(f, "can't {doing} `{}`: {word}", path.display())
            }
            Self::Faulty(fault, 0) => fault.fmt(f),
            Self::Faulty(fault, more) => write!(f, "{fault}, and {more} more faults"),
            Self::Taken(path) => write!(f, "`{}` is there already, and nothing is written over it", path.display()),
            Self::NotOurs(path) => write!(f, "`{}` is not a file or folder of the record", path.display()),
            Self::NotOpening => f.write_str("the book's ledger does not stand so that this can be recorded"),
            Self::NotExact => f.write_str("a number has more digits than can be recorded exactly"),
            Self::NotRandom => f.write_str("the system gives no random bytes"),
            Self::NotAName(who) => write!(f, "`{}` can't be the name of a file", who.escape_debug()),
        }
    }
}

impl std::error::Error for RecordError {}
