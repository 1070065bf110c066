//! One run at a time publishes to a folder; a crash lets go of it.

use std::fs::{File, OpenOptions, TryLockError};

use super::error::WriteError;
use super::ground::{LOCK, OutputTarget, see};

/// Held while a folder is written. The empty file stays: to remove it would let two runs in.
pub(super) struct Lock {
    file: File,
}

impl Lock {
    /// Takes the folder for this run.
    ///
    /// # Errors
    /// [`WriteError::Busy`] when another run has it.
    pub(super) fn take(ground: &OutputTarget<'_>) -> Result<Self, WriteError> {
        let path = ground.at(LOCK);
        if see(&path)?.is_some_and(|meta| !meta.is_file()) {
            return Err(WriteError::Link(path));
        }
        let open = OpenOptions::new().create(true).truncate(false).write(true).open(&path);
        let file = open.map_err(|error| WriteError::disk("open", &path, error))?;
        match file.try_lock() {
            Ok(()) => Ok(Self { file }),
            Err(TryLockError::WouldBlock) => Err(WriteError::Busy(ground.dir.clone())),
            Err(TryLockError::Error(error)) => Err(WriteError::disk("lock", &path, error)),
        }
    }
}

impl Drop for Lock {
    fn drop(&mut self) {
        // Said aloud: a child process started meanwhile may hold the file open a moment longer.
        let _ = self.file.unlock();
    }
}
