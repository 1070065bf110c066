//! One at a time records; a crash lets go.

use std::fs::{File, OpenOptions};
use std::path::Path;

use super::error::RecordError;

/// Held while something is recorded. The empty file stays: to remove it would let two in.
#[derive(Debug)]
pub(super) struct Lock(File);

impl Lock {
    /// Waits for whoever records, which takes no time, and takes the lock.
    pub(super) fn take(path: &Path) -> Result<Self, RecordError> {
        // A link there would have us make a file elsewhere.
        if path.symlink_metadata().is_ok_and(|found| !found.is_file()) {
            return Err(RecordError::NotOurs(path.to_path_buf()));
        }
        let open = OpenOptions::new().create(true).truncate(false).write(true).open(path);
        let file = open.map_err(|error| RecordError::disk("open", path, error))?;
        file.lock().map_err(|error| RecordError::disk("lock", path, error))?;
        Ok(Self(file))
    }
}

impl Drop for Lock {
    fn drop(&mut self) {
        // Said aloud: a child process started meanwhile may hold the file open a moment longer.
        let _ = self.0.unlock();
    }
}
