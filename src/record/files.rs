//! Files of the record that are written whole: issues and responses.

use std::path::{Path, PathBuf};

use serde_json::Value;

use crate::digest::{Digest, canonical};
use crate::ledger::Issue;

use super::error::RecordError;
use super::store::Open;

impl Open<'_> {
    /// Keeps the file of an issue, and gives its digest. It counts once the ledger names it: one that a
    /// killed run left is replaced.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn keep_issue(&self, issue: &Issue) -> Result<Digest, RecordError> {
        let value = serde_json::to_value(issue).map_err(|_| RecordError::NotExact)?;
        let bytes = canonical(&value).map_err(|_| RecordError::NotExact)?;
        self.keep("issues", &format!("{:04}.json", issue.number), &bytes)?;
        Ok(Digest::of(&bytes))
    }

    /// Keeps a response as it came, under its digest: that of its canonical JSON without `mac`.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn keep_response(&self, response: &Value, digest: &Digest) -> Result<(), RecordError> {
        let bytes = canonical(response).map_err(|_| RecordError::NotExact)?;
        self.keep("responses", &format!("{digest}.json"), &bytes)
    }

    /// Writes a file whole: beside its place, flushed, moved there, and its name flushed.
    pub(super) fn keep(&self, folder: &str, name: &str, bytes: &[u8]) -> Result<(), RecordError> {
        let disk = &self.store.disk;
        let folder: PathBuf = self.store.folder.join(folder);
        disk.make_folder(&folder)?;
        let (place, part) = (folder.join(name), folder.join(format!(".{name}.part")));
        // A link there would have us write elsewhere.
        if is_link(&part) {
            disk.remove(&part)?;
        }
        let kept = disk.write(&part, bytes).and_then(|()| disk.rename(&part, &place));
        if kept.is_err() {
            // What can't be removed now is overwritten by the next run.
            let _ = disk.remove(&part);
        }
        kept.and_then(|()| disk.flush_folder(&folder))
    }
}

fn is_link(path: &Path) -> bool {
    path.symlink_metadata().is_ok_and(|found| found.is_symlink())
}
