//! The one moment at which a published folder changes: a stand-in with the new output takes its place.
//!
//! The stand-in is a folder beside it, made of links to the files of both, so that it costs no room. The two
//! exchange their names in one step; out of sight the folder itself is then brought up to date, move by move,
//! and takes its name back. So whoever opens the folder by its path finds the old output or the new one, and
//! whoever holds the folder open (a server, a container, a terminal) keeps a folder that is there. Where two
//! names can't be exchanged, the moves are made in the folder itself.

use std::collections::BTreeSet;
use std::fs::{self, Metadata};
use std::path::{Path, PathBuf};

use super::Content;
use super::error::WriteError;
use super::ground::{LOCK, OutputTarget, STAGING, see};
use super::journal::{self, Journal, Step};
use super::manifest::Manifest;

/// Marks a stand-in: before it took the folder's place, and since then.
const STAND_IN: &str = ".bookmatch-stand-in";
const STOOD_IN: &str = ".bookmatch-stood-in";

/// Makes all moves of a journal that is stored, or none, so that they show at once.
///
/// # Errors
/// When a move can't be made: the old output stands. [`WriteError::Unfinished`] when it could not be put back
/// either; what stands is whole all the same, unless names can't be exchanged here.
pub(super) fn commit(journal: &Journal, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
    let stands_in = match lay_out(journal, ground) {
        Ok(aside) => aside,
        Err(error) => {
            discard(ground)?;
            let _ = journal::clear(ground);
            return Err(error);
        }
    };
    let Some(aside) = stands_in else {
        discard(ground)?;
        return journal.commit(ground);
    };
    match ground.disk.exchange(&aside, &ground.dir) {
        Ok(()) => finish(ground, &aside, |own| journal.commit(own)),
        Err(error) => {
            // The folder stands as it did: what was laid out for it goes, and the journal last.
            discard(ground)?;
            if can_not(&error) {
                return journal.commit(ground);
            }
            let _ = journal::clear(ground);
            Err(error)
        }
    }
}

/// Ends a switch that an earlier run began and did not end.
///
/// # Errors
/// When the folder can't take its name back, or the moves can neither be made nor unmade.
pub(super) fn recover(ground: &OutputTarget<'_>) -> Result<(), WriteError> {
    let Some(aside) = ground.aside() else { return Ok(()) };
    if !is_folder(&aside)? {
        return Ok(());
    }
    if [STAND_IN, STOOD_IN].iter().any(|mark| ground.at(mark).is_file()) {
        return finish(ground, &aside, journal::recover);
    }
    if aside.join(STOOD_IN).is_file() {
        return retire(ground, &aside);
    }
    // It never stood in: the old output stands, and the journal would change it where everybody looks.
    journal::clear(ground)?;
    discard(ground)
}

/// The stand-in has the folder's name: brings the folder up to date and gives it its name back.
fn finish(
    ground: &OutputTarget<'_>,
    aside: &Path,
    moves: impl FnOnce(&OutputTarget<'_>) -> Result<(), WriteError>,
) -> Result<(), WriteError> {
    let own = OutputTarget { disk: ground.disk, dir: aside.to_path_buf() };
    let marked = if ground.at(STAND_IN).is_file() {
        ground.disk.rename(&ground.at(STAND_IN), &ground.at(STOOD_IN))
    } else {
        Ok(())
    };
    // Unless it is marked nobody would look into it for what the user laid there meanwhile.
    let moved = marked.and_then(|()| moves(&own));
    if let Err(error @ WriteError::Unfinished { .. }) = moved {
        return Err(error);
    }
    let back = || ground.disk.exchange(aside, &ground.dir);
    if let Err(error) = back().or_else(|_| back()) {
        return Err(WriteError::Unfinished { dir: ground.dir.clone(), error: error.into() });
    }
    if moved.is_err() {
        // The folder stands as it did before: no run is to make these moves.
        let _ = journal::clear(ground);
    }
    // The output stands; what is left of the stand-in goes now or at the next run.
    let retired = retire(ground, aside);
    moved.and(retired.or(Ok(())))
}

/// Takes over what the user laid into the stand-in while it stood, and removes it.
fn retire(ground: &OutputTarget<'_>, aside: &Path) -> Result<(), WriteError> {
    let stood = OutputTarget { disk: ground.disk, dir: aside.to_path_buf() };
    let ours = Manifest::read(&stood)?;
    take_over(ground, aside, "", &ours)?;
    let mark = aside.join(STOOD_IN);
    if mark.is_file() {
        ground.disk.remove_file(&mark)?;
    }
    discard(ground)
}

fn take_over(ground: &OutputTarget<'_>, aside: &Path, folder: &str, ours: &Manifest) -> Result<(), WriteError> {
    for (name, meta) in entries(&aside.join(folder))? {
        let path = if folder.is_empty() { name } else { format!("{folder}/{name}") };
        if is_own(&path) || ours.files.contains_key(&path) {
            continue;
        }
        let (from, to) = (aside.join(&path), ground.at(&path));
        let ours_below =
            || ours.files.range(format!("{path}/")..).next().is_some_and(|(file, _)| is_below(file, &path));
        match see(&to)? {
            Some(there) if there.is_dir() && meta.is_dir() => take_over(ground, aside, &path, ours)?,
            Some(there) if there.is_dir() != meta.is_dir() => {}
            None if meta.is_dir() && ours_below() => take_over(ground, aside, &path, ours)?,
            Some(there) if same(&there, &meta) || !is_later(&meta, &there) => {}
            _ => {
                for folder in super::path::folders(&path) {
                    ground.disk.make_folder(&ground.at(folder))?;
                }
                ground.disk.rename(&from, &to)?;
            }
        }
    }
    Ok(())
}

fn is_below(path: &str, folder: &str) -> bool {
    path.strip_prefix(folder).is_some_and(|rest| rest.starts_with('/'))
}

/// Removes the stand-in.
fn discard(ground: &OutputTarget<'_>) -> Result<(), WriteError> {
    match ground.aside() {
        Some(aside) if is_folder(&aside)? => ground.disk.remove_tree(&aside),
        _ => Ok(()),
    }
}

/// Lays the stand-in out beside the folder; nothing where this disk or this place can't have one.
fn lay_out(journal: &Journal, ground: &OutputTarget<'_>) -> Result<Option<PathBuf>, WriteError> {
    let Some(aside) = ground.aside().filter(|_| cfg!(unix)) else { return Ok(None) };
    if see(&aside)?.is_some() {
        return Ok(None);
    }
    let laid = ground.disk.make_folder(&aside).and_then(|()| StandIn { ground, aside: &aside }.fill(journal));
    match laid {
        Err(error) if can_not(&error) => Ok(None),
        laid => laid.map(|()| Some(aside)),
    }
}

struct StandIn<'a> {
    ground: &'a OutputTarget<'a>,
    aside: &'a Path,
}

impl StandIn<'_> {
    fn fill(&self, journal: &Journal) -> Result<(), WriteError> {
        let mark = self.aside.join(STAND_IN);
        self.ground.disk.write(&mark, &Content::Bytes([].into()))?;
        let mut folders = vec![self.aside.to_path_buf()];
        let replaced: BTreeSet<&str> = journal.steps.iter().filter_map(Step::replaces).collect();
        self.link("", &replaced, &mut folders)?;
        for step in &journal.steps {
            match step {
                Step::Make { path } => {
                    self.ground.disk.make_folder(&self.aside.join(path))?;
                    folders.push(self.aside.join(path));
                }
                Step::Put { path, n, .. } => {
                    self.ground.disk.link(&self.ground.new_file(*n), &self.aside.join(path))?;
                }
                Step::Prune { path } => self.ground.disk.remove_empty_folder(&self.aside.join(path))?,
                Step::Remove { .. } => {}
            }
        }
        for folder in folders.iter().filter(|folder| folder.is_dir()) {
            self.ground.disk.flush_folder(folder)?;
        }
        Ok(())
    }

    /// Links all that stands below a folder and stays.
    fn link(&self, folder: &str, replaced: &BTreeSet<&str>, folders: &mut Vec<PathBuf>) -> Result<(), WriteError> {
        for (name, meta) in entries(&self.ground.at(folder))? {
            let path = if folder.is_empty() { name } else { format!("{folder}/{name}") };
            let (from, to) = (self.ground.at(&path), self.aside.join(&path));
            if path == STAGING || replaced.contains(path.as_str()) {
                continue;
            }
            if meta.is_dir() {
                self.ground.disk.make_folder(&to)?;
                self.link(&path, replaced, folders)?;
                self.ground.disk.like(&meta, &to)?;
                folders.push(to);
            } else {
                self.ground.disk.link(&from, &to)?;
            }
        }
        if folder.is_empty()
            && let Some(meta) = see(&self.ground.dir)?
        {
            self.ground.disk.like(&meta, self.aside)?;
        }
        Ok(())
    }
}

/// What stands in a folder, by name. A name that is not text can't be linked by its path here.
fn entries(folder: &Path) -> Result<Vec<(String, Metadata)>, WriteError> {
    let failed = |error| WriteError::disk("read", folder, error);
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).map_err(failed)? {
        let entry = entry.map_err(failed)?;
        let odd = |_| failed(std::io::ErrorKind::Unsupported.into());
        found.push((entry.file_name().into_string().map_err(odd)?, entry.metadata().map_err(failed)?));
    }
    Ok(found)
}

/// What the writer keeps for itself in a published folder.
fn is_own(path: &str) -> bool {
    [STAND_IN, STOOD_IN, STAGING, LOCK, super::ground::MANIFEST].contains(&path)
}

fn is_folder(path: &Path) -> Result<bool, WriteError> {
    Ok(see(path)?.is_some_and(|meta| meta.is_dir()))
}

/// Whether a file was saved after another. What is not known to be later does not take the other's place.
fn is_later(one: &Metadata, other: &Metadata) -> bool {
    matches!((one.modified(), other.modified()), (Ok(one), Ok(other)) if one > other)
}

/// Whether two names are of one file.
fn same(one: &Metadata, other: &Metadata) -> bool {
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt;
        (one.dev(), one.ino()) == (other.dev(), other.ino())
    }
    #[cfg(not(unix))]
    {
        let _ = (one, other);
        false
    }
}

/// Whether it is a thing that this disk or this place does not do, rather than a fault: a second name, a folder
/// beside, an exchange (a folder that a disk is mounted at, FAT, a parent that is somebody else's).
fn can_not(error: &WriteError) -> bool {
    use std::io::ErrorKind as Kind;
    let WriteError::Disk { error, .. } = error else { return false };
    matches!(
        error.kind(),
        Kind::Unsupported
            | Kind::InvalidInput
            | Kind::CrossesDevices
            | Kind::PermissionDenied
            | Kind::ReadOnlyFilesystem
            | Kind::ResourceBusy
            | Kind::TooManyLinks
            | Kind::InvalidFilename
    )
}
