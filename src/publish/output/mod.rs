//! What is published, path by path, and the only code that writes a published folder.
//!
//! The folder changes all at once or not at all. Everything new is first laid out and flushed in
//! `.bookmatch-staging/`, then a journal of the moves is flushed, then a stand-in with the new output takes
//! the folder's place while the moves are made (see `switch`). Without a journal a staging folder is thrown
//! away; what else was begun is ended by the next run. See [`write()`] for what is never touched.

mod path;

mod error;
mod place;

mod disk;
mod ground;
mod lock;
mod manifest;

mod plan;

mod journal;
mod stage;

mod switch;

mod spool;

mod write;

#[cfg(test)]
mod tests;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

pub use crate::pictures::Digest;
pub use error::WriteError;
pub use ground::MANIFEST;
pub use path::PathError;
pub use place::OutputFolder;
pub use spool::{Laid, Spool};
pub use write::{Written, write};

/// Every file of a publication, in the order of its paths.
#[derive(Debug, Default, Clone, PartialEq, Eq)]
pub struct Output {
    files: BTreeMap<String, Content>,
    /// Each path and each folder above one, in lower case, and a path that it came from.
    taken: BTreeMap<String, Taken>,
}

/// What a file holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Content {
    /// A page, style sheet, script or sheet, made just now.
    Bytes(Arc<[u8]>),
    /// What was made just now and lies aside until it is written.
    Laid(Laid),
    /// A picture that stands in the picture cache; it is never held in memory whole.
    File {
        /// Where it stands now.
        path: PathBuf,
        /// The digest of its bytes; checked while they are copied.
        digest: Digest,
        /// How many bytes it has.
        bytes: u64,
    },
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Taken {
    File(String),
    Folder { folder: String, of: String },
}

impl Output {
    /// Adds a file. Paths are relative, parted by `/`.
    ///
    /// # Errors
    /// When the path leaves the folder, cannot be stored on every kind of disk, or is taken (also
    /// when it differs only in case, or when a file stands where a folder is needed).
    pub fn insert(&mut self, path: impl Into<String>, content: Content) -> Result<(), PathError> {
        let path = path.into();
        path::check(&path)?;
        self.check_free(&path)?;
        for folder in path::folders(&path) {
            self.taken
                .entry(path::folded(folder))
                .or_insert_with(|| Taken::Folder { folder: folder.into(), of: path.clone() });
        }
        self.taken.insert(path::folded(&path), Taken::File(path.clone()));
        self.files.insert(path, content);
        Ok(())
    }

    fn check_free(&self, path: &str) -> Result<(), PathError> {
        let taken = |by: &str| PathError::Taken { path: path.into(), by: by.into() };
        match self.taken.get(&path::folded(path)) {
            Some(Taken::File(by) | Taken::Folder { of: by, .. }) => return Err(taken(by)),
            None => {}
        }
        for folder in path::folders(path) {
            match self.taken.get(&path::folded(folder)) {
                Some(Taken::File(by)) => return Err(taken(by)),
                Some(Taken::Folder { folder: spelt, of }) if spelt != folder => {
                    return Err(taken(of));
                }
                _ => {}
            }
        }
        Ok(())
    }

    /// True when some file lies in this folder.
    fn has_folder(&self, folder: &str) -> bool {
        matches!(self.taken.get(&path::folded(folder)), Some(Taken::Folder { .. }))
    }

    /// The file at a path.
    #[must_use]
    pub fn get(&self, path: &str) -> Option<&Content> {
        self.files.get(path)
    }

    /// Every file, in the order of the paths.
    pub fn files(&self) -> impl ExactSizeIterator<Item = (&str, &Content)> {
        self.files.iter().map(|(path, content)| (path.as_str(), content))
    }
}

/// True when a folder was published to: no part of a book, whatever lies in it.
#[must_use]
pub fn is_published(folder: &Path) -> bool {
    let has = |name| folder.join(name).symlink_metadata().is_ok();
    has(ground::LOCK) || has(ground::MANIFEST)
}

/// What a published folder lists as its own, each path with the digest of what was written there; nothing where
/// there is no list, or none that can be read.
#[must_use]
pub fn listed(folder: &Path) -> Option<BTreeMap<String, Digest>> {
    let bytes = std::fs::read(folder.join(ground::MANIFEST)).ok()?;
    manifest::Manifest::parse(&bytes).map(|manifest| manifest.files)
}

impl Content {
    /// The digest of the bytes: computed for a page, known for a picture.
    #[must_use]
    pub fn digest(&self) -> Digest {
        match self {
            Self::Bytes(bytes) => Digest::of(bytes),
            Self::Laid(laid) => laid.digest(),
            Self::File { digest, .. } => *digest,
        }
    }

    /// How many bytes it has.
    #[must_use]
    pub fn size(&self) -> u64 {
        match self {
            Self::Bytes(bytes) => bytes.len() as u64,
            Self::Laid(laid) => laid.size(),
            Self::File { bytes, .. } => *bytes,
        }
    }
}
