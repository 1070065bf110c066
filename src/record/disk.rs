//! The operations that change a disk: one door, so that a test can make each of them fail.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::Path;

use super::error::RecordError;

#[cfg(test)]
pub(super) use fault::{Fault, When};

/// The disk as it is, or as a test wants it.
#[derive(Debug, Default)]
pub(super) struct Disk {
    #[cfg(test)]
    pub(super) fault: Fault,
}

/// The only functions that write, rename or remove; each is one operation for [`Fault`].
#[expect(clippy::disallowed_methods, reason = "this is the one writer of the record")]
impl Disk {
    /// Makes one folder and flushes its name; gives whether it was not there yet.
    pub(super) fn make_folder(&self, path: &Path) -> Result<bool, RecordError> {
        match fs::symlink_metadata(path) {
            Ok(found) if found.is_dir() => return Ok(false),
            Ok(_) => return Err(RecordError::NotOurs(path.to_path_buf())),
            Err(_) => {}
        }
        match self.may("make the folder").and_then(|()| fs::create_dir(path)) {
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => return Ok(false),
            made => made.map_err(|error| RecordError::disk("make the folder", path, error))?,
        }
        path.parent().map_or(Ok(()), |above| self.flush_folder(above))?;
        Ok(true)
    }

    /// Opens a file to add to its end, and makes it when it is not there.
    pub(super) fn open_to_append(&self, path: &Path) -> Result<File, RecordError> {
        let opened = self.may("open").and_then(|()| OpenOptions::new().read(true).append(true).create(true).open(path));
        opened.map_err(|error| RecordError::disk("open", path, error))
    }

    /// Adds to the end of an open file, in one write as far as the system does so.
    pub(super) fn append(&self, mut file: &File, path: &Path, bytes: &[u8]) -> Result<(), RecordError> {
        #[cfg(test)]
        self.fault.tear(file, bytes);
        let written = self.may("write").and_then(|()| file.write_all(bytes));
        written.map_err(|error| RecordError::disk("write", path, error))
    }

    /// Cuts an open file to a length.
    pub(super) fn cut(&self, file: &File, path: &Path, length: u64) -> Result<(), RecordError> {
        let cut = self.may("cut").and_then(|()| file.set_len(length));
        cut.map_err(|error| RecordError::disk("cut", path, error))
    }

    /// Waits until an open file is on the disk.
    pub(super) fn flush(&self, file: &File, path: &Path) -> Result<(), RecordError> {
        let flushed = self.may("flush").and_then(|()| file.sync_all());
        flushed.map_err(|error| RecordError::disk("flush", path, error))
    }

    /// Waits until the names in a folder are on the disk, where the system can.
    pub(super) fn flush_folder(&self, path: &Path) -> Result<(), RecordError> {
        let flush = || if cfg!(unix) { File::open(path)?.sync_all() } else { Ok(()) };
        let flushed = self.may("flush the folder").and_then(|()| flush());
        flushed.map_err(|error| RecordError::disk("flush", path, error))
    }

    /// Writes a file anew and flushes it; what stood there is gone.
    pub(super) fn write(&self, path: &Path, bytes: &[u8]) -> Result<(), RecordError> {
        let write = || -> io::Result<()> {
            let mut file = File::create(path)?;
            file.write_all(bytes)?;
            file.sync_all()
        };
        let written = self.may("write anew").and_then(|()| write());
        written.map_err(|error| RecordError::disk("write", path, error))
    }

    /// Writes a new file that the owner alone can read, and flushes it.
    pub(super) fn write_private(&self, path: &Path, bytes: &[u8]) -> Result<(), RecordError> {
        let write = || -> io::Result<()> {
            let mut options = OpenOptions::new();
            options.write(true).create_new(true);
            #[cfg(unix)]
            std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
            let mut file = options.open(path)?;
            file.write_all(bytes)?;
            file.sync_all()
        };
        let written = self.may("write anew").and_then(|()| write());
        written.map_err(|error| RecordError::disk("write", path, error))
    }

    /// Makes a folder that the owner alone can look into, if it is not there yet.
    pub(super) fn make_private_folder(&self, path: &Path) -> Result<(), RecordError> {
        match path.symlink_metadata() {
            Ok(found) if found.is_dir() => return Ok(()),
            Ok(_) => return Err(RecordError::NotOurs(path.to_path_buf())),
            Err(_) => {}
        }
        let make = || {
            let mut builder = fs::DirBuilder::new();
            #[cfg(unix)]
            std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
            builder.create(path)
        };
        let made = self.may("make the folder").and_then(|()| make());
        made.map_err(|error| RecordError::disk("make the folder", path, error))
    }

    /// Moves a file over another, or to a free place, in one step.
    pub(super) fn rename(&self, from: &Path, to: &Path) -> Result<(), RecordError> {
        let moved = self.may("rename").and_then(|()| fs::rename(from, to));
        moved.map_err(|error| RecordError::disk("put in place", to, error))
    }

    /// Removes one file; it is fine when it is not there.
    pub(super) fn remove(&self, path: &Path) -> Result<(), RecordError> {
        match self.may("remove").and_then(|()| fs::remove_file(path)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => Err(RecordError::disk("remove", path, error)),
            _ => Ok(()),
        }
    }

    #[cfg(not(test))]
    #[expect(clippy::unused_self, reason = "a test's disk counts its operations")]
    fn may(&self, _doing: &'static str) -> io::Result<()> {
        Ok(())
    }

    #[cfg(test)]
    fn may(&self, doing: &'static str) -> io::Result<()> {
        self.fault.may(doing)
    }
}

/// Faults at chosen operations.
#[cfg(test)]
mod fault {
    use std::fs::File;
    use std::io::{self, Write};
    use std::sync::Mutex;

    /// Which operation fails, and how; they are counted from 1.
    #[derive(Debug, Default)]
    pub(in super::super) struct Fault {
        pub(in super::super) when: When,
        /// What was done, in its order.
        pub(in super::super) done: Mutex<Vec<&'static str>>,
    }

    #[derive(Debug, Default, Clone, Copy)]
    pub(in super::super) enum When {
        #[default]
        Never,
        /// This operation and all after it fail: to the folder the same as a kill. A write is torn.
        From(usize),
        /// From this operation on whatever needs room fails, a write in its middle.
        Full(usize),
        /// The process ends by a signal at this operation, a write in its middle.
        Die(usize),
        /// The process says so and waits to be killed at this operation, a write in its middle.
        Halt(usize),
    }

    impl Fault {
        /// What was done.
        pub(in super::super) fn log(&self) -> Vec<&'static str> {
            self.done.lock().unwrap().clone()
        }

        /// Before a write that fails: half of it gets to the disk.
        pub(super) fn tear(&self, mut file: &File, bytes: &[u8]) {
            let next = self.done.lock().unwrap().len() + 1;
            let torn = match self.when {
                When::Never => false,
                When::From(then) | When::Full(then) => next >= then,
                When::Die(then) | When::Halt(then) => next == then,
            };
            if torn {
                let _ = file.write_all(&bytes[..bytes.len() / 2]);
            }
        }

        pub(super) fn may(&self, doing: &'static str) -> io::Result<()> {
            let mut done = self.done.lock().unwrap();
            done.push(doing);
            let now = done.len();
            match self.when {
                When::From(then) if now >= then => Err(io::Error::other(doing)),
                When::Full(then) if now >= then && matches!(doing, "write" | "write anew" | "make the folder") => {
                    Err(io::ErrorKind::StorageFull.into())
                }
                When::Die(then) if now == then => std::process::abort(),
                When::Halt(then) if now == then => {
                    eprintln!("halted");
                    loop {
                        std::thread::park();
                    }
                }
                _ => Ok(()),
            }
        }
    }
}
