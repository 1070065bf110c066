//! Why a folder could not be published to, and what to do about it.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// Why [`write()`](super::write()) left the folder as it was.
#[derive(Debug)]
pub enum WriteError {
    /// The folder is the book, holds the book, or is a part that the book is read from.
    IsTheBook(PathBuf),
    /// A file stands where the folder should be.
    NotAFolder(PathBuf),
    /// Another run is publishing to the folder at this moment.
    Busy(PathBuf),
    /// A file that bookmatch did not write stands where one of ours should go.
    Foreign(PathBuf),
    /// A folder stands where a file should go.
    FolderInTheWay(PathBuf),
    /// A link stands on the way to a file; links are never followed.
    Link(PathBuf),
    /// The manifest or the journal is not as bookmatch wrote it.
    Damaged(PathBuf),
    /// A picture in the cache is missing, or no longer what it was when it was made.
    Picture(PathBuf),
    /// The user asked to stop before the new output was complete.
    Interrupted,
    /// The file system refused; the folder is as it was.
    Disk {
        /// What was being done, as in "cannot `write`".
        doing: &'static str,
        /// The file or folder it was done to.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
    /// The file system refused while files changed places, and refused to put them back as well.
    Unfinished {
        /// The published folder.
        dir: PathBuf,
        /// What went wrong first.
        error: Box<WriteError>,
    },
}

impl WriteError {
    pub(super) fn disk(doing: &'static str, path: &Path, error: io::Error) -> Self {
        Self::Disk { doing, path: path.into(), error }
    }

    /// What the user can do about it.
    #[must_use]
    pub fn remedy(&self) -> &'static str {
        match self {
            Self::IsTheBook(_) => "publish to a folder beside the book, or to a folder of its own such as `site`",
            Self::NotAFolder(_) => "name another folder, or move the file away",
            Self::Busy(_) => "wait until the other run has ended, then publish again",
            Self::Foreign(_) => {
                "move the file away, or publish to another folder; bookmatch replaces only files that it wrote"
            }
            Self::FolderInTheWay(_) => "move the folder away, or publish to another one",
            Self::Link(_) => "put a real folder or file in place of the link, or publish elsewhere",
            Self::Damaged(_) => "publish to a new folder; the files of the old one can be deleted by hand",
            Self::Picture(_) => "publish again; what is missing or damaged in the cache is made anew",
            Self::Interrupted => "publish again; what was published before is untouched",
            Self::Disk { error, .. } => match error.kind() {
                io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
                    "make room on the disk, or publish to another one"
                }
                io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
                    "publish to a folder that you may write to"
                }
                _ => "see that the disk is well and present, then publish again",
            },
            Self::Unfinished { .. } => {
                "mend what the message names, then publish again: that puts the folder in order first"
            }
        }
    }
}

impl fmt::Display for WriteError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::IsTheBook(path) => {
                write!(f, "`{}` belongs to the book itself", path.display())
            }
            Self::NotAFolder(path) => {
                write!(f, "`{}` is a file, not a folder to publish to", path.display())
            }
            Self::Busy(path) => {
                write!(f, "another run is publishing to `{}` now", path.display())
            }
            Self::Foreign(path) => {
                write!(f, "`{}` stands in the way and was not written by bookmatch", path.display())
            }
            Self::FolderInTheWay(path) => {
                write!(f, "the folder `{}` stands where a file should go", path.display())
            }
            Self::Link(path) => {
                write!(f, "`{}` is a link, and links are not followed", path.display())
            }
            Self::Damaged(path) => {
                write!(f, "`{}` is not as bookmatch wrote it", path.display())
            }
            Self::Picture(path) => {
                write!(f, "the kept picture `{}` is missing or damaged", path.display())
            }
            Self::Interrupted => f.write_str("stopped before the new output was complete"),
            Self::Disk { doing, path, error } => {
                write!(f, "cannot {doing} `{}`: {}", path.display(), plain(error))
            }
            Self::Unfinished { dir, error } => {
                write!(f, "`{}` is between two outputs: {error}", dir.display())
            }
        }
    }
}

/// The system's words without its number, in lower case.
fn plain(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::StorageFull => "no room is left on the disk".into(),
        io::ErrorKind::PermissionDenied => "you may not write there".into(),
        io::ErrorKind::ReadOnlyFilesystem => "the disk is read-only".into(),
        kind => kind.to_string(),
    }
}

impl std::error::Error for WriteError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Disk { error, .. } => Some(error),
            Self::Unfinished { error, .. } => Some(error),
            _ => None,
        }
    }
}
