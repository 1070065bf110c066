//! `publish --one-file`: some pages in one file, written whole or not at all.

use std::path::{Path, PathBuf};

use crate::pipeline::{BuildResult, Review, bound};
use crate::publish::bound::MARK;

use super::report::say;
use super::{CLEAN, FAILED, Failure, laid};

/// What is asked for instead of a folder.
#[derive(clap::Args)]
pub struct OneFile {
    /// Write one file that can be mailed, and no folder: it holds what `--of` names
    #[arg(long, value_name = "FILE", requires = "of", conflicts_with = "out")]
    one_file: Option<PathBuf>,
    /// What the one file holds: a room, `ROOM/OPENING`, `ROOM/joiner` or another of those who build,
    /// `installer` for all of their sheets, or a trade such as `plumbing`
    #[arg(long, value_name = "WHAT", requires = "one_file")]
    of: Option<String>,
}

impl OneFile {
    /// The file, and what it is to hold.
    pub fn asked(&self) -> Option<(&Path, &str)> {
        self.one_file.as_deref().zip(self.of.as_deref())
    }
}

/// Binds what is asked for, and writes the file.
///
/// # Errors
/// When something else stands in its place, or it can't be written.
pub fn write(review: &Review, made: &BuildResult, draft: bool, (file, of): (&Path, &str)) -> Result<u8, Failure> {
    let Some(text) = bound(review, &made.output, draft, of)? else {
        say(&format!(
            "not written: the book has no room, no opening with a sheet and no trade of the name `{of}`; name a room, \
             `ROOM/OPENING`, `installer`, or a trade such as `plumbing`"
        ));
        return Ok(FAILED);
    };
    let is_bound = |start: &[u8]| String::from_utf8_lossy(start).contains(MARK);
    laid::may_replace(file, is_bound, "file of this kind")?;
    laid::put(file, laid::beside(file, text.as_bytes())?)?;
    say(&format!("written: {}, {} KB, to be opened as it is", file.display(), text.len().div_ceil(1024)));
    Ok(CLEAN)
}
