//! The moves that turn one output into the next: each can be made, unmade, and made again.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};

use super::Content;
use super::error::WriteError;
use super::ground::{Look, MANIFEST, OutputTarget, STAGING, see};
use super::path;
use crate::pictures::Digest;

/// All moves of one run, in order. Written before the first is made.
#[derive(Debug, Serialize, Deserialize)]
pub(super) struct Journal {
    pub(super) steps: Vec<Step>,
}

/// One move; `n` numbers the file in the staging folder.
#[derive(Debug, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "lowercase")]
pub(super) enum Step {
    /// Makes a folder.
    Make { path: String },
    /// Puts a new file in place; `replaces` tells that an old one was kept.
    Put { path: String, n: usize, replaces: bool },
    /// Removes an old file, if it is still what it `was`.
    Remove { path: String, n: usize, was: String },
    /// Removes a folder, if it is empty now.
    Prune { path: String },
}

/// The journal while moves are made, and while they are unmade.
const FORWARD: &str = "forward.json";
const BACK: &str = "back.json";

impl Journal {
    /// Writes the journal; from now on the run is ended by making its moves.
    pub(super) fn store(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        let staging = ground.at(STAGING);
        let draft = staging.join("draft.json");
        let bytes = serde_json::to_vec(self).unwrap_or_default();
        ground.disk.write(&draft, &Content::Bytes(bytes.into()))?;
        ground.disk.flush_files(std::slice::from_ref(&draft))?;
        ground.disk.rename(&draft, &staging.join(FORWARD))?;
        ground.disk.flush_folder(&staging)
    }

    /// Makes all moves, or none: when one fails, those made are unmade.
    pub(super) fn commit(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        let Err(error) = self.forward(ground) else {
            // The new output stands; what is left of the staging goes now or at the next run.
            let _ = clear(ground);
            return Ok(());
        };
        match self.back(ground) {
            Ok(()) => Err(error),
            Err(_) => Err(WriteError::Unfinished { dir: ground.dir.clone(), error: error.into() }),
        }
    }

    fn forward(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        self.steps.iter().try_for_each(|step| step.make(ground))?;
        self.flush(ground)
    }

    fn back(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        let staging = ground.at(STAGING);
        if see(&staging.join(FORWARD))?.is_some() {
            ground.disk.rename(&staging.join(FORWARD), &staging.join(BACK))?;
        }
        self.steps.iter().rev().try_for_each(|step| step.unmake(ground))?;
        self.flush(ground)?;
        clear(ground)
    }

    /// Flushes the names in every folder that a move touched and that is still there.
    fn flush(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        let above = |path: &str| ground.at(path).parent().map(PathBuf::from);
        let folders: BTreeSet<_> = self.steps.iter().filter_map(|step| above(step.path())).collect();
        for folder in folders.iter().filter(|folder| folder.is_dir()) {
            ground.disk.flush_folder(folder)?;
        }
        Ok(())
    }

    fn read(ground: &OutputTarget<'_>, name: &str) -> Result<Option<Self>, WriteError> {
        let path = ground.at(STAGING).join(name);
        match see(&path)? {
            None => return Ok(None),
            Some(meta) if !meta.is_file() => return Err(WriteError::Damaged(path)),
            Some(_) => {}
        }
        let bytes = fs::read(&path).map_err(|error| WriteError::disk("read", &path, error))?;
        let journal = serde_json::from_slice::<Self>(&bytes).ok();
        let ours = journal.filter(|journal| journal.steps.iter().all(Step::stays_inside));
        ours.map(Some).ok_or(WriteError::Damaged(path))
    }
}

/// Ends what an earlier run began and did not end.
///
/// # Errors
/// When the moves can now neither be made nor unmade.
pub(super) fn recover(ground: &OutputTarget<'_>) -> Result<(), WriteError> {
    match see(&ground.at(STAGING))? {
        None => return Ok(()),
        Some(meta) if !meta.is_dir() => return Err(WriteError::Link(ground.at(STAGING))),
        Some(_) => {}
    }
    if let Some(journal) = Journal::read(ground, BACK)? {
        return journal.back(ground);
    }
    let Some(journal) = Journal::read(ground, FORWARD)? else {
        return clear(ground);
    };
    match journal.commit(ground) {
        Err(error @ WriteError::Unfinished { .. }) => Err(error),
        // Made or unmade: the folder is whole either way.
        _ => Ok(()),
    }
}

/// Removes the staging folder, the journal first.
pub(super) fn clear(ground: &OutputTarget<'_>) -> Result<(), WriteError> {
    let staging = ground.at(STAGING);
    for name in [FORWARD, BACK] {
        if see(&staging.join(name))?.is_some() {
            ground.disk.remove_file(&staging.join(name))?;
        }
    }
    if see(&staging)?.is_some() { ground.disk.remove_tree(&staging) } else { Ok(()) }
}

impl Step {
    fn path(&self) -> &str {
        match self {
            Self::Make { path } | Self::Put { path, .. } | Self::Remove { path, .. } | Self::Prune { path } => path,
        }
    }

    /// The path at which it leaves nothing of what stood there.
    pub(super) fn replaces(&self) -> Option<&str> {
        match self {
            Self::Put { path, .. } | Self::Remove { path, .. } => Some(path),
            Self::Make { .. } | Self::Prune { .. } => None,
        }
    }

    fn stays_inside(&self) -> bool {
        self.path() == MANIFEST || path::check(self.path()).is_ok()
    }

    fn make(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        let full = ground.at(self.path());
        match (self, ground.look(self.path())?) {
            (Self::Make { .. }, Look::Missing) => ground.disk.make_folder(&full),
            (Self::Put { n, replaces, .. }, stands) => {
                let staged = ground.new_file(*n);
                match stands {
                    _ if see(&staged)?.is_none() => Ok(()),
                    Look::File { .. } if !replaces => Err(WriteError::Foreign(full)),
                    _ => ground.disk.rename(&staged, &full),
                }
            }
            (Self::Remove { was, .. }, Look::File { .. }) => {
                let is = Digest::of_file(&full).map_err(|e| WriteError::disk("read", &full, e))?;
                if is.to_string() == *was { ground.disk.remove_file(&full) } else { Ok(()) }
            }
            (Self::Prune { .. }, Look::Folder) => ground.disk.remove_empty_folder(&full),
            _ => Ok(()),
        }
    }

    fn unmake(&self, ground: &OutputTarget<'_>) -> Result<(), WriteError> {
        let full = ground.at(self.path());
        match (self, ground.look(self.path())?) {
            (Self::Make { .. }, Look::Folder) => ground.disk.remove_empty_folder(&full),
            (Self::Put { n, replaces, .. }, stands) => {
                let (staged, kept) = (ground.new_file(*n), ground.old_file(*n));
                match stands {
                    _ if see(&staged)?.is_some() => Ok(()),
                    _ if *replaces && see(&kept)?.is_some() => ground.disk.rename(&kept, &full),
                    Look::File { .. } if !replaces => ground.disk.rename(&full, &staged),
                    _ => Ok(()),
                }
            }
            (Self::Remove { n, .. }, Look::Missing) if see(&ground.old_file(*n))?.is_some() => {
                ground.disk.rename(&ground.old_file(*n), &full)
            }
            (Self::Prune { .. }, Look::Missing) => ground.disk.make_folder(&full),
            _ => Ok(()),
        }
    }
}
