//! A file that a command writes where the user says: laid beside its place, on the disk already, then put there.

use std::io::{self, Read, Write};
use std::path::Path;

use tempfile::NamedTempFile;

use super::Failure;

/// How much of a file is looked at to know what it is.
const START: u64 = 512;

/// Refuses a place where something else stands than what the command writes, which is known by how it starts.
///
/// # Errors
/// When something else is there, with what the file should be.
pub fn may_replace(file: &Path, is_ours: impl Fn(&[u8]) -> bool, what: &str) -> Result<(), Failure> {
    let mut start = Vec::new();
    let there = std::fs::File::open(file).and_then(|file| file.take(START).read_to_end(&mut start));
    if file.is_dir() || (there.is_ok() && !is_ours(&start)) {
        return Err(format!("`{}` is there and is no {what}; name another file", file.display()).into());
    }
    Ok(())
}

/// Lays a file out beside its place, on the disk already; [`put`] puts it there.
///
/// # Errors
/// When it can't be written.
pub fn beside(file: &Path, bytes: &[u8]) -> Result<NamedTempFile, Failure> {
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut building = tempfile::Builder::new();
    // As any new file: the system takes away what the user does not want others to have.
    #[cfg(unix)]
    building.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let lay = || {
        let mut laid = building.tempfile_in(folder)?;
        laid.write_all(bytes).and_then(|()| laid.as_file().sync_all())?;
        Ok(laid)
    };
    Ok(lay().map_err(|error| refused(file, &error))?)
}

/// Puts what was laid out in its place.
///
/// # Errors
/// When it can't be put there.
pub fn put(file: &Path, laid: NamedTempFile) -> Result<(), Failure> {
    laid.persist(file).map_err(|error| refused(file, &error.error))?;
    Ok(())
}

fn refused(file: &Path, error: &io::Error) -> String {
    format!("can't write `{}`: {error}", file.display())
}
