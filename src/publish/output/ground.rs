//! The published folder as it lies on the disk: names in it, and what stands at a path.

use std::fs::{self, Metadata};
use std::io;
use std::path::{Path, PathBuf};

use super::disk::Disk;
use super::error::WriteError;
use super::path;

pub const MANIFEST: &str = ".bookmatch-manifest.json";
pub(super) const STAGING: &str = ".bookmatch-staging";
pub(super) const LOCK: &str = ".bookmatch-lock";

/// The folder that is written, and the disk it is on.
pub(super) struct OutputTarget<'a> {
    pub(super) disk: &'a Disk,
    pub(super) dir: PathBuf,
}

/// What stands at a path of the published folder.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Look {
    Missing,
    File {
        size: u64,
    },
    Folder,
    /// This file stands where a folder above the path should be.
    Under(String),
}

impl OutputTarget<'_> {
    /// The real path of a published file or folder.
    pub(super) fn at(&self, path: &str) -> PathBuf {
        self.dir.join(path)
    }

    /// Where a stand-in for the folder is laid out: beside it, under a name that is hidden.
    pub(super) fn aside(&self) -> Option<PathBuf> {
        let name = self.dir.file_name()?.to_str()?;
        Some(self.dir.parent()?.join(format!(".{name}.bookmatch-stand-in")))
    }

    /// Where the new bytes of file `n` are laid out.
    pub(super) fn new_file(&self, n: usize) -> PathBuf {
        self.dir.join(STAGING).join("new").join(n.to_string())
    }

    /// Where the old bytes of file `n` are kept until all is done.
    pub(super) fn old_file(&self, n: usize) -> PathBuf {
        self.dir.join(STAGING).join("old").join(n.to_string())
    }

    /// What stands at a path, links not followed.
    ///
    /// # Errors
    /// When the path, or a folder above it, is a link or some other thing than a file or folder.
    pub(super) fn look(&self, path: &str) -> Result<Look, WriteError> {
        for folder in path::folders(path) {
            match self.look_at(folder)? {
                Look::Folder => {}
                Look::File { .. } => return Ok(Look::Under(folder.into())),
                other => return Ok(other),
            }
        }
        self.look_at(path)
    }

    fn look_at(&self, path: &str) -> Result<Look, WriteError> {
        let full = self.at(path);
        match see(&full)? {
            None => Ok(Look::Missing),
            Some(meta) if meta.is_dir() => Ok(Look::Folder),
            Some(meta) if meta.is_file() => Ok(Look::File { size: meta.len() }),
            Some(meta) if meta.is_symlink() => Err(WriteError::Link(full)),
            Some(_) => Err(WriteError::Foreign(full)),
        }
    }
}

/// What the system knows of a path, the link itself if it is one; nothing if it is not there.
pub(super) fn see(path: &Path) -> Result<Option<Metadata>, WriteError> {
    match fs::symlink_metadata(path) {
        Ok(meta) => Ok(Some(meta)),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(WriteError::disk("look at", path, error)),
    }
}
