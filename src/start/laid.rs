//! Lays files down, and never over one that is there.

use std::fs::OpenOptions;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::StartError;

/// A folder for a new book: new or empty, and in no other book.
///
/// # Errors
/// When it holds something, lies in another book, or can't be read.
pub fn new_book(folder: &Path) -> Result<(), StartError> {
    match book_around(folder) {
        Some(book) => Err(StartError::InABook(folder.to_path_buf(), book)),
        None => new_folder(folder),
    }
}

/// A folder that is new, or empty, wherever it lies.
///
/// # Errors
/// When it holds something, or can't be read.
pub fn new_folder(folder: &Path) -> Result<(), StartError> {
    match std::fs::read_dir(folder).map(Iterator::count) {
        Ok(count) if count > 0 => Err(StartError::NotEmpty(folder.to_path_buf())),
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(StartError::Disk(folder.to_path_buf(), error)),
        _ => Ok(()),
    }
}

/// The book that a folder lies in, if it lies in one.
fn book_around(folder: &Path) -> Option<PathBuf> {
    let whole = resolved(folder)?;
    let is_a_book = |above: &&Path| ["book.yaml", "book.yml"].iter().any(|name| above.join(name).is_file());
    whole.ancestors().skip(1).find(is_a_book).map(Path::to_path_buf)
}

/// A path as the system has it, as far as there is anything: `..` leads out of a folder.
fn resolved(folder: &Path) -> Option<PathBuf> {
    let whole = std::path::absolute(folder).ok()?;
    let mut there = whole.ancestors().skip_while(|above| std::fs::symlink_metadata(above).is_err());
    let nearest = there.next()?;
    let rest = whole.strip_prefix(nearest).ok()?;
    Some(nearest.canonicalize().ok()?.join(rest))
}

/// Writes a file of the book that is not there yet, and gives its path in the book.
///
/// # Errors
/// When something is there, or the system refuses.
#[expect(clippy::disallowed_methods, reason = "a new file, where none is: there is nothing to keep whole")]
pub fn write(folder: &Path, path: &str, bytes: &[u8]) -> Result<String, StartError> {
    let whole = folder.join(path);
    let disk = |error: io::Error| match error.kind() {
        io::ErrorKind::AlreadyExists => StartError::IsThere(path.into()),
        _ => StartError::Disk(whole.clone(), error),
    };
    if let Some(above) = whole.parent() {
        std::fs::create_dir_all(above).map_err(disk)?;
    }
    let mut file = OpenOptions::new().write(true).create_new(true).open(&whole).map_err(disk)?;
    file.write_all(bytes).map_err(disk)?;
    Ok(path.into())
}
