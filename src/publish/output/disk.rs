//! The file operations that change a disk: one door, so that a test can make each of them fail.

use std::fs::{self, File, Metadata};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use super::Content;
use super::error::WriteError;
use super::spool::Laid;
use crate::pictures::{Hasher, PIECE};

#[cfg(test)]
pub(super) use fault::{Fault, When};

/// The disk as it is, or as a test wants it.
#[derive(Default)]
pub(super) struct Disk {
    #[cfg(test)]
    pub(super) fault: Fault,
}

/// How many files are flushed at a time.
const FLUSHES: usize = 16;

/// The only functions that write, rename or remove; each is one operation for [`Fault`].
#[expect(clippy::disallowed_methods, reason = "this is the one writer of published folders")]
impl Disk {
    /// Makes one folder; it is fine when it is there already.
    pub(super) fn make_folder(&self, path: &Path) -> Result<(), WriteError> {
        let made = self.may("make the folder").and_then(|()| fs::create_dir(path));
        match made {
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists && path.is_dir() => Ok(()),
            made => made.map_err(|error| WriteError::disk("make the folder", path, error)),
        }
    }

    /// Writes a new file, not yet flushed. A picture is checked against its digest on the way.
    pub(super) fn write(&self, path: &Path, content: &Content) -> Result<(), WriteError> {
        let failed = |error| WriteError::disk("write", path, error);
        if let Err(error) = self.may("write") {
            let _ = fs::write(path, b"torn");
            return Err(failed(error));
        }
        let mut file = File::create_new(path).map_err(failed)?;
        match content {
            Content::Bytes(bytes) => file.write_all(bytes).map_err(failed)?,
            Content::Laid(laid) => copy_laid(laid, &mut file).map_err(failed)?,
            Content::File { path: kept, digest, .. } => {
                let gone = |_| WriteError::Picture(kept.clone());
                let mut source = File::open(kept).map_err(gone)?;
                let mut hasher = Hasher::default();
                let mut piece = vec![0; PIECE];
                loop {
                    let read = source.read(&mut piece).map_err(gone)?;
                    if read == 0 {
                        break;
                    }
                    let piece = piece.get(..read).unwrap_or(&piece);
                    hasher.add(piece);
                    file.write_all(piece).map_err(failed)?;
                }
                if hasher.finish() != *digest {
                    return Err(WriteError::Picture(kept.clone()));
                }
            }
        }
        Ok(())
    }

    /// Flushes files. Several at a time: a disk flushes many files nearly as fast as one.
    pub(super) fn flush_files(&self, paths: &[PathBuf]) -> Result<(), WriteError> {
        let flush = |path: &Path| File::open(path).and_then(|file| file.sync_all());
        let failed = |path: &Path, error| WriteError::disk("flush", path, error);
        let Some(first) = paths.first() else {
            return Ok(());
        };
        self.may("flush").map_err(|error| failed(first, error))?;
        #[cfg(test)]
        self.fault.flushed.set(self.fault.flushed.get() + paths.len());
        let share = paths.len().div_ceil(FLUSHES);
        std::thread::scope(|scope| {
            let flush_share =
                |share: &[PathBuf]| share.iter().try_for_each(|path| flush(path).map_err(|error| failed(path, error)));
            let shares: Vec<_> = paths.chunks(share).map(|share| scope.spawn(move || flush_share(share))).collect();
            shares
                .into_iter()
                .try_for_each(|share| share.join().unwrap_or_else(|_| Err(failed(first, io::ErrorKind::Other.into()))))
        })
    }

    /// Moves a file over another, or to a free place, in one step.
    pub(super) fn rename(&self, from: &Path, to: &Path) -> Result<(), WriteError> {
        self.may("rename")
            .and_then(|()| fs::rename(from, to))
            .map_err(|error| WriteError::disk("put in place", to, error))
    }

    /// Keeps a second name for a file, or a copy where the disk knows no second names.
    pub(super) fn keep(&self, file: &Path, kept: &Path) -> Result<(), WriteError> {
        let failed = |error| WriteError::disk("keep a copy of", file, error);
        self.may("keep").map_err(failed)?;
        if fs::hard_link(file, kept).is_err() {
            fs::copy(file, kept).map_err(failed)?;
            File::open(kept).and_then(|copy| copy.sync_all()).map_err(failed)?;
        }
        Ok(())
    }

    /// Gives a file a second name, a link itself rather than what it leads to.
    pub(super) fn link(&self, file: &Path, name: &Path) -> Result<(), WriteError> {
        self.may("link").and_then(|()| fs::hard_link(file, name)).map_err(|error| WriteError::disk("link", file, error))
    }

    /// Gives a folder the rights of another, and its owner where that is allowed.
    pub(super) fn like(&self, meta: &Metadata, folder: &Path) -> Result<(), WriteError> {
        #[cfg(unix)]
        {
            use std::os::unix::fs::{MetadataExt, chown};
            let _ = chown(folder, Some(meta.uid()), Some(meta.gid()));
        }
        fs::set_permissions(folder, meta.permissions())
            .map_err(|error| WriteError::disk("set the rights of", folder, error))
    }

    /// Lets two folders exchange their names in one step, and flushes that.
    pub(super) fn exchange(&self, one: &Path, other: &Path) -> Result<(), WriteError> {
        let failed = |error| WriteError::disk("exchange", other, error);
        self.may("exchange").and_then(|()| exchanged(one, other)).map_err(failed)?;
        // The exchange is made: should it not be flushed, the disk still has the one or the other.
        let _ = other.parent().map(|above| File::open(above).and_then(|above| above.sync_all()));
        Ok(())
    }

    /// Removes one file.
    pub(super) fn remove_file(&self, path: &Path) -> Result<(), WriteError> {
        self.may("remove").and_then(|()| fs::remove_file(path)).map_err(|error| WriteError::disk("remove", path, error))
    }

    /// Removes a folder if it is empty; one that is not empty, or not there, stays as it is.
    pub(super) fn remove_empty_folder(&self, path: &Path) -> Result<(), WriteError> {
        let removed = self.may("remove the folder").and_then(|()| fs::remove_dir(path));
        match removed {
            Err(error) if matches!(error.kind(), io::ErrorKind::DirectoryNotEmpty | io::ErrorKind::NotFound) => Ok(()),
            removed => removed.map_err(|error| WriteError::disk("remove the folder", path, error)),
        }
    }

    /// Removes a folder of our own with all that is in it; links in it are removed, not followed.
    pub(super) fn remove_tree(&self, path: &Path) -> Result<(), WriteError> {
        self.may("remove all of")
            .and_then(|()| fs::remove_dir_all(path))
            .map_err(|error| WriteError::disk("remove", path, error))
    }

    /// Flushes the names in a folder, where the system can.
    pub(super) fn flush_folder(&self, path: &Path) -> Result<(), WriteError> {
        let flushed = self.may("flush").and_then(|()| if cfg!(unix) { File::open(path)?.sync_all() } else { Ok(()) });
        flushed.map_err(|error| WriteError::disk("flush", path, error))
    }

    #[cfg(not(test))]
    #[expect(clippy::unused_self, reason = "a test's disk counts its operations")]
    fn may(&self, _doing: &str) -> io::Result<()> {
        Ok(())
    }

    #[cfg(test)]
    fn may(&self, doing: &str) -> io::Result<()> {
        self.fault.may(doing)
    }
}

/// Writes what lay aside, and checks on the way that it is what was made.
fn copy_laid(laid: &Laid, file: &mut File) -> io::Result<()> {
    let mut hasher = Hasher::default();
    laid.pieces(|piece| {
        hasher.add(piece);
        file.write_all(piece)
    })?;
    if hasher.finish() == laid.digest() { Ok(()) } else { Err(io::Error::other("what lay aside for it is damaged")) }
}

#[cfg(any(target_os = "linux", target_os = "android", target_vendor = "apple"))]
fn exchanged(one: &Path, other: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    Ok(renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE)?)
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_vendor = "apple")))]
fn exchanged(_: &Path, _: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

/// Faults at chosen operations.
#[cfg(test)]
mod fault {
    use std::cell::Cell;
    use std::io;

    /// Which operations fail; they are counted from 1.
    #[derive(Default)]
    pub(in super::super) struct Fault {
        pub(in super::super) done: Cell<usize>,
        pub(in super::super) when: When,
        /// How many files were flushed.
        pub(in super::super) flushed: Cell<usize>,
    }

    #[derive(Default, Clone, Copy)]
    pub(in super::super) enum When {
        #[default]
        Never,
        /// One operation fails and the rest succeed, as on a disk with a bad spot.
        At(usize),
        /// This operation and all after it fail: to the folder the same as a kill.
        From(usize),
        /// The disk is full from this operation on, but names can still be moved and removed.
        Full(usize),
        /// The process ends by a signal just before this operation.
        Die(usize),
        /// The process says so and waits to be killed, just before this operation.
        Halt(usize),
        /// Names can't be exchanged here; this operation and all after it fail.
        Plain(usize),
    }

    impl Fault {
        pub(super) fn may(&self, doing: &str) -> io::Result<()> {
            self.done.set(self.done.get() + 1);
            let now = self.done.get();
            match self.when {
                When::At(then) if now == then => Err(io::Error::other(doing.to_owned())),
                When::From(then) if now >= then => Err(io::Error::other(doing.to_owned())),
                When::Full(then) if now >= then && matches!(doing, "write" | "make the folder") => {
                    Err(io::ErrorKind::StorageFull.into())
                }
                When::Die(then) if now == then => std::process::abort(),
                When::Halt(then) if now == then => {
                    eprintln!("halted");
                    loop {
                        std::thread::park();
                    }
                }
                When::Plain(_) if doing == "exchange" => Err(io::ErrorKind::Unsupported.into()),
                When::Plain(then) if now >= then => Err(io::Error::other(doing.to_owned())),
                _ => Ok(()),
            }
        }
    }
}
