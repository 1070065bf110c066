//! The head that is kept after each line, and what else lies beside the ledger, by which a lost line shows.

use std::fs;

use crate::digest::canonical;
use crate::ledger::{BesideLedger, Head};

use super::error::RecordError;
use super::store::Store;

/// The file of the head.
const NAME: &str = "head.json";
/// The largest head, in bytes.
const MAX_HEAD: u64 = 1024;

impl Store {
    /// What lies beside the ledger.
    ///
    /// # Errors
    /// When a folder of the record can't be listed.
    pub(super) fn look_beside(&self) -> Result<BesideLedger, RecordError> {
        let mut beside = BesideLedger { head: self.head(), ..BesideLedger::default() };
        for folder in ["issues", "responses", "photographs", "keys"] {
            let path = self.folder.join(folder);
            let listed = match fs::read_dir(&path) {
                Ok(listed) => listed,
                Err(error) if error.kind() == std::io::ErrorKind::NotFound => continue,
                Err(error) => return Err(RecordError::disk("list", &path, error)),
            };
            for entry in listed {
                let entry = entry.map_err(|error| RecordError::disk("list", &path, error))?;
                beside.take(folder, &entry.file_name().to_string_lossy());
            }
        }
        Ok(beside)
    }

    /// The head that was kept; none where none was, or a crash left it unwritten.
    fn head(&self) -> Option<Head> {
        let path = self.folder.join(NAME);
        let facts = fs::symlink_metadata(&path).ok()?;
        let bytes = if facts.is_file() && facts.len() <= MAX_HEAD { fs::read(&path).ok()? } else { return None };
        serde_json::from_slice(&bytes).ok()
    }

    /// Keeps the head. What it is of is recorded already, so that a disk that refuses loses nothing: an older
    /// head is of a line that is there too.
    pub(super) fn keep_head(&self, head: Head) {
        let part = self.folder.join(format!(".{NAME}.part"));
        let bytes = serde_json::to_value(head).ok().and_then(|value| canonical(&value).ok());
        let Some(bytes) = bytes else { return };
        let is_link = part.symlink_metadata().is_ok_and(|found| found.is_symlink());
        if is_link && self.disk.remove(&part).is_err() {
            return;
        }
        let kept = self.disk.write(&part, &bytes).and_then(|()| self.disk.rename(&part, &self.folder.join(NAME)));
        if kept.is_err() {
            let _ = self.disk.remove(&part);
        }
    }
}
