//! What the folder's files were when last looked at, so that a save that changes nothing builds nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, Metadata};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use super::watch::Dirty;
use crate::publish::output::{Digest, is_published};

/// The files that a build has to look at again, as paths within the folder.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Changes {
    /// New, changed or gone.
    pub paths: BTreeSet<PathBuf>,
    /// The first build: nothing is known yet.
    pub everything: bool,
}

impl Changes {
    /// True when there is nothing to build.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.paths.is_empty() && !self.everything
    }
}

/// The folder's files as they were.
#[derive(Debug, Clone)]
pub(super) struct Seen {
    folder: PathBuf,
    files: BTreeMap<PathBuf, FileState>,
}

/// What a file was: its digest if it is known, else its size and time.
#[derive(Debug, Clone, PartialEq, Eq)]
enum FileState {
    Digest(Digest),
    Meta { size: u64, time: Option<SystemTime> },
}

/// Larger files (photographs) are digested when they first change, not at the start.
const SMALL: u64 = 256 * 1024;

impl Seen {
    /// Looks at the whole folder.
    pub(super) fn new(folder: PathBuf) -> Self {
        let mut seen = Self { folder, files: BTreeMap::new() };
        for path in seen.below(&seen.folder) {
            if let Some(stamp) = stamp(&path, SMALL) {
                seen.files.insert(path, stamp);
            }
        }
        seen
    }

    /// The changes that the first build is for.
    pub(super) fn everything(&self) -> Changes {
        Changes { everything: true, ..Changes::default() }
    }

    /// Finds out which of the dirty paths really changed, and remembers them as they are now.
    pub(super) fn compare(&mut self, dirty: &Dirty) -> Changes {
        let mut candidates = BTreeSet::new();
        let folder = self.folder.clone();
        for path in dirty.all.then_some(&folder).into_iter().chain(&dirty.paths) {
            if !self.is_of_the_book(path) {
                continue;
            }
            candidates.extend(self.files.keys().filter(|file| file.starts_with(path)).cloned());
            candidates.extend(self.below(path));
        }
        let mut changes = Changes::default();
        for path in candidates {
            if self.update(&path) {
                changes.paths.insert(self.within(&path));
            }
        }
        changes
    }

    /// The folder stands at another path now: its files are known by what they were at the old one.
    pub(super) fn moved(&mut self, folder: &Path) {
        let files = std::mem::take(&mut self.files);
        let at =
            |path: PathBuf| path.strip_prefix(&self.folder).map_or_else(|_| path.clone(), |rest| folder.join(rest));
        self.files = files.into_iter().map(|(path, stamp)| (at(path), stamp)).collect();
        self.folder = folder.into();
    }

    /// True when the file is not what it was.
    fn update(&mut self, path: &Path) -> bool {
        let Some(now) = stamp(path, u64::MAX) else {
            return self.files.remove(path).is_some();
        };
        let same = match self.files.get(path) {
            Some(meta @ FileState::Meta { .. }) => stamp(path, 0).as_ref() == Some(meta),
            was => was == Some(&now),
        };
        self.files.insert(path.into(), now);
        !same
    }

    /// Every file at or below a path that a book may be read from; links are not followed.
    fn below(&self, path: &Path) -> Vec<PathBuf> {
        let entries = walkdir::WalkDir::new(path).into_iter();
        entries
            .filter_entry(|entry| {
                entry.depth() == 0
                    || !(is_aside(Path::new(entry.file_name()))
                        || entry.file_type().is_dir() && is_published(entry.path()))
            })
            .filter_map(Result::ok)
            .filter(|entry| !entry.file_type().is_dir())
            .map(walkdir::DirEntry::into_path)
            .collect()
    }

    /// False for what lies outside, hidden files, editors' copies, and published folders.
    fn is_of_the_book(&self, path: &Path) -> bool {
        let Ok(within) = path.strip_prefix(&self.folder) else {
            return false;
        };
        let mut folder = self.folder.clone();
        !is_aside(within)
            && within.components().all(|step| {
                folder.push(step);
                !is_published(&folder)
            })
    }

    fn within(&self, path: &Path) -> PathBuf {
        path.strip_prefix(&self.folder).unwrap_or(path).into()
    }
}

/// Hidden files and folders (the picture cache, version control), and copies that editors leave.
fn is_aside(path: &Path) -> bool {
    path.components().any(|step| {
        let name = step.as_os_str().to_string_lossy();
        name.starts_with('.') || name.ends_with('~')
    })
}

/// What a file is now; digested up to a size.
fn stamp(path: &Path, digest_up_to: u64) -> Option<FileState> {
    let meta = fs::symlink_metadata(path).ok()?;
    let by_meta = |meta: &Metadata| FileState::Meta { size: meta.len(), time: meta.modified().ok() };
    if meta.is_file() && meta.len() <= digest_up_to {
        return Some(Digest::of_file(path).map_or_else(|_| by_meta(&meta), FileState::Digest));
    }
    Some(by_meta(&meta))
}

#[cfg(test)]
#[expect(clippy::disallowed_methods, reason = "the tests change a folder under its watcher")]
mod tests {
    use tempfile::TempDir;

    use super::*;

    struct Book {
        folder: TempDir,
        seen: Seen,
    }

    impl Book {
        fn new() -> Self {
            let folder = tempfile::tempdir().unwrap();
            fs::create_dir_all(folder.path().join("rooms/attic")).unwrap();
            fs::write(folder.path().join("book.yaml"), "title: Attic").unwrap();
            fs::write(folder.path().join("rooms/attic/room.yaml"), "name: Attic").unwrap();
            let photo = vec![7; usize::try_from(SMALL).unwrap() + 1];
            fs::write(folder.path().join("rooms/attic/photo.jpg"), photo).unwrap();
            let root = folder.path().canonicalize().unwrap();
            Self { folder, seen: Seen::new(root) }
        }

        fn at(&self, path: &str) -> PathBuf {
            self.folder.path().canonicalize().unwrap().join(path)
        }

        fn write(&self, path: &str, text: impl AsRef<[u8]>) {
            fs::create_dir_all(self.at(path).parent().unwrap()).unwrap();
            fs::write(self.at(path), text).unwrap();
        }

        /// What is seen to have changed when these paths are dirty.
        fn changed(&mut self, dirty: &[&str]) -> Vec<String> {
            let paths = dirty.iter().map(|path| self.at(path)).collect();
            let changes = self.seen.compare(&Dirty { paths, ..Dirty::default() });
            changes.paths.iter().map(|path| path.display().to_string()).collect()
        }
    }

    #[test]
    fn the_same_bytes_written_again_are_no_change() {
        let mut book = Book::new();
        book.write("book.yaml", "title: Attic");
        assert!(book.changed(&["book.yaml", "rooms/attic/room.yaml"]).is_empty());
        book.write("book.yaml", "title: Cellar");
        assert_eq!(book.changed(&["book.yaml", "rooms/attic/room.yaml"]), ["book.yaml"]);
        assert!(book.changed(&["book.yaml"]).is_empty());
    }

    #[test]
    fn a_photograph_is_compared_from_its_first_change_on() {
        let mut book = Book::new();
        let photo = "rooms/attic/photo.jpg";
        assert!(book.changed(&[photo]).is_empty());
        book.write(photo, vec![8; 300_000]);
        assert_eq!(book.changed(&[photo]), [photo]);
        book.write(photo, vec![8; 300_000]);
        assert!(book.changed(&[photo]).is_empty());
    }

    #[test]
    fn a_folder_that_comes_moves_or_goes_brings_its_files() {
        let mut book = Book::new();
        book.write("rooms/bath/room.yaml", "name: Bath");
        assert_eq!(book.changed(&["rooms/bath"]), ["rooms/bath/room.yaml"]);
        fs::rename(book.at("rooms/bath"), book.at("rooms/wash")).unwrap();
        let both = ["rooms/bath/room.yaml", "rooms/wash/room.yaml"];
        assert_eq!(book.changed(&["rooms/bath", "rooms/wash"]), both);
        fs::remove_dir_all(book.at("rooms/wash")).unwrap();
        assert_eq!(book.changed(&["rooms/wash"]), ["rooms/wash/room.yaml"]);
    }

    #[test]
    fn the_cache_published_folders_and_editors_copies_are_not_of_the_book() {
        let mut book = Book::new();
        for path in [
            ".bookmatch/pictures/a",
            ".git/index",
            "rooms/attic/.room.yaml.swp",
            "rooms/attic/room.yaml~",
            "site/.bookmatch-lock",
            "site/client/index.html",
        ] {
            book.write(path, "x");
            assert!(book.changed(&[path]).is_empty(), "{path}");
        }
        let all = book.seen.compare(&Dirty { all: true, ..Dirty::default() });
        assert!(all.is_empty(), "{all:?}");
    }

    #[test]
    fn what_lies_outside_the_folder_is_not_looked_at() {
        let mut book = Book::new();
        assert!(book.changed(&["/etc/hostname", ".."]).is_empty());
    }
}
