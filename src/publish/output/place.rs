//! Where to publish, and that it is not the book itself.

use std::ffi::OsString;
use std::io;
use std::path::{Component, Path, PathBuf};

use super::error::WriteError;

/// The folder to publish to, and the book it must not write over.
///
/// A folder of its own inside the book is fine (`site`, say), because nothing is read from it; the
/// book's root, any folder above it, and the parts that the book is read from or remembered in are not.
#[derive(Debug, Clone)]
pub struct OutputFolder {
    /// Where to publish; made when it does not exist.
    pub dir: PathBuf,
    /// The book's root folder.
    pub book: PathBuf,
}

/// The folders of a book that are not to be published into.
const PARTS: [&str; 4] = ["rooms", "products", "record", ".bookmatch"];

impl OutputFolder {
    /// The folder's real path, or why it is no place to publish to. Changes nothing.
    pub(super) fn checked(&self) -> Result<PathBuf, WriteError> {
        let dir = real(&self.dir).map_err(|error| WriteError::disk("find", &self.dir, error))?;
        let book = real(&self.book).map_err(|error| WriteError::disk("find", &self.book, error))?;
        let within = dir.strip_prefix(&book).ok().map(|rest| rest.components().next());
        let part = |first: Component<'_>| PARTS.iter().any(|part| first.as_os_str().eq_ignore_ascii_case(part));
        match within {
            Some(None) => Err(WriteError::IsTheBook(self.dir.clone())),
            Some(Some(first)) if part(first) => Err(WriteError::IsTheBook(self.dir.clone())),
            _ if book.starts_with(&dir) => Err(WriteError::IsTheBook(self.dir.clone())),
            _ if dir.is_file() => Err(WriteError::NotAFolder(self.dir.clone())),
            _ => Ok(dir),
        }
    }
}

/// The path with links and `..` resolved, as far as it exists; the rest must be plain names.
fn real(path: &Path) -> io::Result<PathBuf> {
    let mut known = std::path::absolute(path)?;
    let mut rest: Vec<OsString> = Vec::new();
    loop {
        match known.canonicalize() {
            Ok(found) => return Ok(rest.iter().rev().fold(found, |path, name| path.join(name))),
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                let name = known.file_name().ok_or(error)?.to_owned();
                rest.push(name);
                known.pop();
            }
            Err(error) => return Err(error),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(dir: &str) -> Result<PathBuf, WriteError> {
        let ground = tempfile::tempdir().unwrap();
        let book = ground.path().join("above/alder");
        #[expect(clippy::disallowed_methods, reason = "the test lays out a book")]
        std::fs::create_dir_all(book.join("rooms/bath")).unwrap();
        OutputFolder { dir: ground.path().join("above").join(dir), book }.checked()
    }

    #[test]
    fn a_folder_beside_or_inside_the_book_is_a_place_to_publish() {
        for dir in ["site", "alder/site", "alder/out/deep", "alder-site", "new/site"] {
            let real = check(dir).unwrap();
            assert!(real.ends_with(Path::new("above").join(dir)), "{real:?}");
        }
    }

    #[test]
    fn the_book_what_holds_it_and_what_it_is_read_from_are_not() {
        for dir in
            ["alder", "alder/", ".", "..", "alder/rooms", "alder/rooms/bath/site", "alder/Record", "alder/.bookmatch/x"]
        {
            assert!(matches!(check(dir), Err(WriteError::IsTheBook(_))), "{dir}");
        }
    }

    #[test]
    fn a_way_round_to_the_book_is_seen_through() {
        assert!(matches!(check("alder/rooms/.."), Err(WriteError::IsTheBook(_))));
        assert!(matches!(check("missing/../alder"), Err(WriteError::Disk { .. })));
    }
}
