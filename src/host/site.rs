//! The published files that strangers may see: a map from path to bytes, read once, of one publication.

use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use axum::body::Bytes;
use serde::Deserialize;
use walkdir::WalkDir;

use super::HostError;
use crate::publish::STATED;
use crate::publish::output::{Digest, listed};

/// The folders that are served. What the office reads is not among them.
const SERVED: [&str; 2] = ["client", "installer"];

/// A file as it is served.
#[derive(Clone, Debug)]
pub(super) struct ServedFile {
    /// What it holds.
    pub(super) bytes: Bytes,
    /// Names its bytes, in quotes, for browsers that have it already.
    pub(super) tag: String,
}

/// Every file that is served, by its path.
#[derive(Clone, Debug, Default)]
pub struct ServedSite {
    files: BTreeMap<String, ServedFile>,
    /// Where its pages send responses, as it states itself; nothing where it states nothing.
    post: Option<Option<String>>,
}

/// What a publication states of itself.
#[derive(Deserialize)]
struct Stated {
    #[serde(default)]
    post: Option<String>,
}

/// How often a publication is read that changes while it is read.
const TRIES: usize = 5;
/// How long is waited before it is read again.
const AGAIN: Duration = Duration::from_millis(200);

impl ServedSite {
    /// Reads the folders for client and installer of a published folder.
    ///
    /// All of them are of one publication: each file is what the list of what was published says of it, and the
    /// list is the same before and after. A folder without such a list is taken as it is.
    ///
    /// # Errors
    /// When there are no pages for a client, a file can't be read, or what stands there is not one publication.
    pub fn read(published: &Path) -> Result<Self, HostError> {
        let mut read = Self::read_once(published);
        for _ in 1..TRIES {
            // While it is published anew a file may be gone, or of the other publication.
            if !matches!(&read, Err(HostError::Mixed(_) | HostError::Unreadable(..))) {
                break;
            }
            std::thread::sleep(AGAIN);
            read = Self::read_once(published);
        }
        read
    }

    fn read_once(published: &Path) -> Result<Self, HostError> {
        let before = listed(published);
        let site = Self::found(published)?;
        let Some(listed_files) = &before else { return Ok(site) };
        if listed(published) != before {
            return Err(HostError::Mixed(published.into()));
        }
        let served = listed_files.iter().filter(|(path, _)| is_served(path));
        let other =
            served.into_iter().find(|(path, digest)| site.get(path).is_none_or(|held| held.tag != tag(**digest)));
        other.map_or(Ok(site), |(path, _)| Err(HostError::Mixed(published.join(path))))
    }

    fn found(published: &Path) -> Result<Self, HostError> {
        let mut site = Self::default();
        if let Ok(bytes) = std::fs::read(published.join(STATED)) {
            site.state(&bytes);
        }
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
        if path == STATED {
            self.state(&bytes);
        }
        if is_served(path) {
            let tag = tag(Digest::of(&bytes));
            self.files.insert(path.to_owned(), ServedFile { bytes: bytes.into(), tag });
        }
    }

    fn state(&mut self, bytes: &[u8]) {
        self.post = serde_json::from_slice::<Stated>(bytes).ok().map(|stated| stated.post);
    }

    /// Where its pages send responses; nothing where it does not say.
    pub(super) fn post(&self) -> Option<Option<&str>> {
        self.post.as_ref().map(Option::as_deref)
    }

    /// The file at a path.
    pub(super) fn get(&self, path: &str) -> Option<&ServedFile> {
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

fn is_served(path: &str) -> bool {
    SERVED.iter().any(|folder| path.split('/').next() == Some(folder))
}

fn tag(digest: Digest) -> String {
    format!("\"{digest}\"")
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
        let site = ServedSite::read(dir.path()).unwrap();
        let paths: Vec<&str> = site.files.keys().map(String::as_str).collect();
        assert_eq!(paths, ["client/a/b.css", "client/index.html", "installer/index.html"]);
    }

    #[test]
    fn a_folder_without_pages_is_refused() {
        let dir = tempfile::tempdir().unwrap();
        assert!(matches!(ServedSite::read(dir.path()), Err(HostError::NotPublished(_))));
    }

    /// A folder that was published with these two pages.
    fn published(dir: &Path, pages: [&str; 2]) {
        let mut output = crate::publish::output::Output::default();
        for (path, text) in ["client/index.html", "installer/index.html"].into_iter().zip(pages) {
            let content = crate::publish::output::Content::Bytes(text.as_bytes().into());
            output.insert(path, content).unwrap();
        }
        let book = dir.join("book");
        std::fs::create_dir_all(&book).unwrap();
        let place = crate::publish::output::OutputFolder { dir: dir.join("site"), book };
        crate::publish::output::write(&output, &place, &std::sync::atomic::AtomicBool::new(false)).unwrap();
    }

    #[test]
    fn pages_of_two_publications_are_not_served_together() {
        let dir = tempfile::tempdir().unwrap();
        let site = dir.path().join("site");
        published(dir.path(), ["one", "one"]);
        let old = std::fs::read(site.join("installer/index.html")).unwrap();
        published(dir.path(), ["two", "two"]);
        assert_eq!(ServedSite::read(&site).unwrap().len(), 2);
        // As a reader finds it that opened one file before the exchange and one after.
        std::fs::write(site.join("installer/index.html"), old).unwrap();
        assert!(
            matches!(ServedSite::read(&site), Err(HostError::Mixed(path)) if path.ends_with("installer/index.html"))
        );
        std::fs::remove_file(site.join("installer/index.html")).unwrap();
        assert!(matches!(ServedSite::read(&site), Err(HostError::Mixed(_))));
    }

    /// Source of the expectation: every page of a publication bears its number, so that two numbers are a mixture.
    #[test]
    fn whoever_reads_while_it_is_published_reads_one_publication() {
        let dir = tempfile::tempdir().unwrap();
        published(dir.path(), ["0", "0"]);
        std::thread::scope(|scope| {
            let writing = scope.spawn(|| {
                for number in 1..40 {
                    published(dir.path(), [&number.to_string(); 2]);
                }
            });
            while !writing.is_finished() {
                let Ok(site) = ServedSite::read_once(&dir.path().join("site")) else { continue };
                let of = |path: &str| site.get(path).unwrap().bytes.clone();
                assert_eq!(of("client/index.html"), of("installer/index.html"));
            }
        });
    }
}
