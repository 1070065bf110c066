//! Turns a folder from one output into the next, all at once.

use std::path::{Path, PathBuf};
use std::sync::atomic::AtomicBool;

use super::disk::Disk;
use super::error::WriteError;
use super::ground::OutputTarget;
use super::journal::{self, clear};
use super::lock::Lock;
use super::manifest::Manifest;
use super::plan::FolderChanges;
use super::stage::stage;
use super::switch;
use super::{Output, OutputFolder};

/// What a run did to the folder, in files.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub struct Written {
    /// Written where nothing stood.
    pub added: usize,
    /// Written over an older one.
    pub changed: usize,
    /// Left as they were, because the same bytes stood there.
    pub same: usize,
    /// Taken away, because they no longer belong.
    pub removed: usize,
}

/// Publishes an output to a folder.
///
/// The folder holds the previous output until the new one is complete on the disk, and then that, from one
/// moment to the next. When this fails, every file is as it was; when it is killed, what stands is the one or
/// the other, and the next run clears what it began. On a disk or at a place where two folders can't exchange
/// their names, a kill amid the moves leaves some old and some new files until the next run.
/// A file is ours when the manifest lists its path: ours is replaced (also when somebody edited
/// it) and removed once it no longer belongs. Nothing else is touched, and no link is followed.
/// Setting `interrupt` stops it until the moment the files change places, which takes no time.
///
/// # Errors
/// See [`WriteError`]; each says what to do about it.
pub fn write(output: &Output, place: &OutputFolder, interrupt: &AtomicBool) -> Result<Written, WriteError> {
    write_on(&Disk::default(), output, place, interrupt)
}

pub(super) fn write_on(
    disk: &Disk,
    output: &Output,
    place: &OutputFolder,
    interrupt: &AtomicBool,
) -> Result<Written, WriteError> {
    let dir = place.checked()?;
    let made = make_folders(disk, &dir)?;
    let ground = OutputTarget { disk, dir };
    let written = Lock::take(&ground).and_then(|_lock| write_locked(output, &ground, interrupt));
    if written.is_err() && !made.is_empty() {
        unmake_folders(&ground, &made);
    }
    written
}

fn write_locked(output: &Output, ground: &OutputTarget<'_>, interrupt: &AtomicBool) -> Result<Written, WriteError> {
    switch::recover(ground)?;
    journal::recover(ground)?;
    let old = Manifest::read(ground)?;
    let plan = FolderChanges::make(output, &old, ground, interrupt)?;
    let listed = old.files.iter().map(|(path, digest)| (path.as_str(), *digest));
    let listed = listed.eq(output.files().map(|(path, content)| (path, content.digest())));
    if !(plan.is_nothing() && listed) {
        let staged =
            stage(&plan, output, ground, interrupt).and_then(|journal| journal.store(ground).map(|()| journal));
        match staged {
            Ok(journal) => switch::commit(&journal, ground)?,
            Err(error) => {
                // What cannot be cleared now is cleared by the next run.
                let _ = clear(ground);
                return Err(error);
            }
        }
    }
    let changed = plan.puts.iter().filter(|put| put.replaces).count();
    Ok(Written {
        added: plan.puts.len() - changed,
        changed,
        same: plan.same,
        removed: plan.before.len() + plan.after.len(),
    })
}

/// Makes a folder and those above it; gives the ones that were not there, the outermost first.
fn make_folders(disk: &Disk, dir: &Path) -> Result<Vec<PathBuf>, WriteError> {
    let missing: Vec<_> = dir.ancestors().take_while(|folder| !folder.exists()).collect();
    let mut made = Vec::new();
    for folder in missing.into_iter().rev() {
        if let Err(error) = disk.make_folder(folder) {
            made.iter().rev().for_each(|folder: &PathBuf| {
                let _ = disk.remove_empty_folder(folder);
            });
            return Err(error);
        }
        made.push(folder.to_path_buf());
    }
    Ok(made)
}

/// Takes away the folders that this run made for nothing, with the lock file in the innermost.
fn unmake_folders(ground: &OutputTarget<'_>, made: &[PathBuf]) {
    let _ = ground.disk.remove_file(&ground.at(super::ground::LOCK));
    for folder in made.iter().rev() {
        let _ = ground.disk.remove_empty_folder(folder);
    }
}
