//! Lays out and flushes all new files beside the old output, which stays as it is.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::atomic::AtomicBool;

use super::error::WriteError;
use super::ground::{Look, MANIFEST, OutputTarget, STAGING};
use super::journal::{Journal, Step};
use super::manifest::Manifest;
use super::plan::{FolderChanges, Put, Removal, go_on};
use super::{Content, Output, path};

/// Stages a plan and gives the moves that are left to make.
///
/// # Errors
/// When a file cannot be written, a kept picture is damaged, or the user asks to stop; the caller
/// then removes the staging folder.
pub(super) fn stage(
    plan: &FolderChanges,
    output: &Output,
    ground: &OutputTarget<'_>,
    interrupt: &AtomicBool,
) -> Result<Journal, WriteError> {
    let staging = ground.at(STAGING);
    for folder in [staging.clone(), staging.join("new"), staging.join("old")] {
        ground.disk.make_folder(&folder)?;
    }
    let mut stage = Stage { ground, interrupt, n: 0, steps: Vec::new(), written: Vec::new() };
    stage.removals(&plan.before, output)?;
    stage.steps.extend(plan.folders.iter().map(|path| Step::Make { path: path.clone() }));
    for put in &plan.puts {
        let content = output.get(&put.path);
        content.map_or(Ok(()), |content| stage.put(put, content))?;
    }
    stage.removals(&plan.after, output)?;
    stage.manifest(output)?;
    let Stage { steps, written, .. } = stage;
    ground.disk.flush_files(&written)?;
    ground.disk.flush_folder(&staging.join("new"))?;
    ground.disk.flush_folder(&staging.join("old"))?;
    Ok(Journal { steps })
}

struct Stage<'a> {
    ground: &'a OutputTarget<'a>,
    interrupt: &'a AtomicBool,
    n: usize,
    steps: Vec<Step>,
    /// What is still to be flushed.
    written: Vec<PathBuf>,
}

impl Stage<'_> {
    fn put(&mut self, put: &Put, content: &Content) -> Result<(), WriteError> {
        go_on(self.interrupt)?;
        let n = self.number();
        self.ground.disk.write(&self.ground.new_file(n), content)?;
        if put.replaces {
            self.keep(&put.path, n)?;
        }
        self.written.push(self.ground.new_file(n));
        self.steps.push(Step::Put { path: put.path.clone(), n, replaces: put.replaces });
        Ok(())
    }

    fn keep(&mut self, path: &str, n: usize) -> Result<(), WriteError> {
        let kept = self.ground.old_file(n);
        self.ground.disk.keep(&self.ground.at(path), &kept)?;
        self.written.push(kept);
        Ok(())
    }

    /// Removals, then the folders that they leave empty and that the output has no use for.
    fn removals(&mut self, removals: &[Removal], output: &Output) -> Result<(), WriteError> {
        let mut empty = BTreeSet::new();
        for Removal { path, was } in removals {
            go_on(self.interrupt)?;
            let n = self.number();
            self.keep(path, n)?;
            self.steps.push(Step::Remove { path: path.clone(), n, was: was.to_string() });
            empty.extend(path::folders(path).filter(|folder| !output.has_folder(folder)));
        }
        let prunes = empty.iter().rev().map(|folder| Step::Prune { path: (*folder).into() });
        self.steps.extend(prunes);
        Ok(())
    }

    fn manifest(&mut self, output: &Output) -> Result<(), WriteError> {
        let digests = output.files().map(|(path, content)| (path.to_owned(), content.digest()));
        let bytes = Manifest { files: digests.collect() }.to_bytes();
        let replaces = self.ground.look(MANIFEST)? != Look::Missing;
        self.put(&Put { path: MANIFEST.into(), replaces }, &Content::Bytes(bytes.into()))
    }

    fn number(&mut self) -> usize {
        self.n += 1;
        self.n
    }
}
