//! The published files that strangers may see: a map from path to bytes, read once.

use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};

use axum::body::Bytes;
use walkdir::WalkDir;

use super::HostError;
use crate::publish::output::Digest;

/// The folders that are served. What the office reads is not among them.
const SERVED: [&str; 2] = ["client", "installer"];

/// A file as it is served.
#[derive(Clone, Debug)]
pub(super) struct Held {
    /// What it holds.
    pub(super) bytes: Bytes,
    /// Names its bytes, in quotes, for browsers that have it already.
    pub(super) tag: String,
}

/// Every file that is served, by its path.
#[derive(Clone, Debug, Default)]
pub struct Site {
    files: BTreeMap<String, Held>,
}

impl Site {
    /// Reads the folders for client and installer of a published folder.
    ///
    /// # Errors
    /// When there are no pages for a client, or a file can't be read.
    pub fn read(published: &Path) -> Result<Self, HostError> {
        let mut site = Self::default();
        for folder in SERVED {
            let root = published.join(folder);
            if !root.is_dir() || root.is_symlink() {
                continue;
            }
            // Links are not followed: they could lead to what is nobody's business.
            for item in WalkDir::new(&root).sort_by_file_name() {
                let item = item.map_err(|error| unreadable(&root, error.into()))?;
                if !item.file_type().is_file() {
                    continue;
                }
                let inside = item.path().strip_prefix(published).ok().and_then(Path::to_str);
                if let Some(path) = inside {
                    let bytes = std::fs::read(item.path()).map_err(|error| unreadable(item.path(), error))?;
                    site.insert(&path.replace('\\', "/"), bytes);
                }
            }
        }
        if site.get("client/index.html").is_none() {
            return Err(HostError::NotPublished(published.into()));
        }
        Ok(site)
    }

    /// The files of an output, as they would be read back; what is for the office is left out.
    pub fn of(files: impl IntoIterator<Item = (String, Vec<u8>)>) -> Self {
        let mut site = Self::default();
        for (path, bytes) in files {
            site.insert(&path, bytes);
        }
        site
    }

    fn insert(&mut self, path: &str, bytes: Vec<u8>) {
        if SERVED.iter().any(|folder| path.split('/').next() == Some(folder)) {
            let tag = format!("\"{}\"", Digest::of(&bytes));
            self.files.insert(path.to_owned(), Held { bytes: bytes.into(), tag });
        }
    }

    /// The file at a path.
    pub(super) fn get(&self, path: &str) -> Option<&Held> {
        self.files.get(path)
    }

    /// How many files there are.
    pub fn len(&self) -> usize {
        self.files.len()
    }

    /// Whether there is nothing to serve.
    pub fn is_empty(&self) -> bool {
        self.files.is_empty()
    }
}

fn unreadable(path: &Path, error: io::Error) -> HostError {
    HostError::Unreadable(PathBuf::from(path), error)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_office_hidden_links_and_everything_else_are_left_out() {
        let dir = tempfile::tempdir().unwrap();
        let place = |path: &str| {
            let whole = dir.path().join(path);
            std::fs::create_dir_all(whole.parent().unwrap()).unwrap();
            std::fs::write(&whole, path).unwrap();
        };
        for path in ["client/index.html", "client/a/b.css", "installer/index.html", "office/index.html", "key"] {
            place(path);
        }
        #[cfg(unix)]
        for (target, link) in [("../office", "client/costs"), ("../key", "client/key")] {
            std::os::unix::fs::symlink(target, dir.path().join(link)).unwrap();
        }
        let site = Site::read(dir.path()).unwrap();
        let paths: Vec<&str> = site.files.keys().map(String::as_str).collect();
        assert_eq!(paths, ["client/a/b.css", "client/index.html", "installer/index.html"]);
    }

    #[test]
    fn a_folder_without_pages_is_refused() {
        let dir = tempfile::tempdir().unwrap();
        assert!(matches!(Site::read(dir.path()), Err(HostError::NotPublished(_))));
    }
}
