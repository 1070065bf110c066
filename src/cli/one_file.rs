//! `publish --one-file`: some pages in one file, written whole or not at all.

use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use crate::pipeline::{BuildResult, Review, bound};
use crate::publish::bound::MARK;

use super::report::say;
use super::{CLEAN, FAILED, Failure};

/// What is asked for instead of a folder.
#[derive(clap::Args)]
pub struct OneFile {
    /// Write one file that can be mailed, and no folder: it holds what `--of` names
    #[arg(long, value_name = "FILE", requires = "of", conflicts_with = "out")]
    one_file: Option<PathBuf>,
    /// What the one file holds: a room, `ROOM/OPENING`, `installer` for all of its sheets, or a trade such as
    /// `plumbing`
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
    may_replace(file)?;
    let refused = |error: &std::io::Error| format!("can't write `{}`: {error}", file.display());
    lay(file, text.as_bytes()).map_err(|error| refused(&error))?;
    say(&format!("written: {}, {} KB, to be opened as it is", file.display(), text.len().div_ceil(1024)));
    Ok(CLEAN)
}

/// Refuses a place where something stands that was not bound.
fn may_replace(file: &Path) -> Result<(), Failure> {
    let mut start = String::new();
    let there = std::fs::File::open(file).map(|file| file.take(512).read_to_string(&mut start));
    if file.is_dir() || (there.is_ok() && !start.contains(MARK)) {
        return Err(format!("`{}` is there and is no file of this kind; name another", file.display()).into());
    }
    Ok(())
}

/// Writes it beside its place, then puts it there.
fn lay(file: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut building = tempfile::Builder::new();
    #[cfg(unix)]
    building.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut laid = building.tempfile_in(folder)?;
    laid.write_all(bytes).and_then(|()| laid.as_file().sync_all())?;
    laid.persist(file).map_err(|error| error.error)?;
    Ok(())
}
