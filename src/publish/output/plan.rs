//! What has to change in a folder for an output to stand there; finds out, changes nothing.

use std::collections::BTreeSet;
use std::fs;
use std::sync::atomic::{AtomicBool, Ordering};

use super::error::WriteError;
use super::ground::{Look, OutputTarget};
use super::manifest::Manifest;
use super::{Content, Output, path};
use crate::pictures::Digest;

/// The changes, each list in the order in which it is made.
#[derive(Debug, Default)]
pub(super) struct FolderChanges {
    /// Old files that stand where a folder or a file of another case must go: removed first.
    pub(super) before: Vec<Removal>,
    /// Folders to make, the outermost first.
    pub(super) folders: BTreeSet<String>,
    /// Files to write, pages last.
    pub(super) puts: Vec<Put>,
    /// Old files that no longer belong.
    pub(super) after: Vec<Removal>,
    /// How many files stay as they are.
    pub(super) same: usize,
}

/// A file to write.
#[derive(Debug)]
pub(super) struct Put {
    pub(super) path: String,
    /// A file of ours stands there now.
    pub(super) replaces: bool,
}

/// A file to remove.
#[derive(Debug)]
pub(super) struct Removal {
    pub(super) path: String,
    /// The digest of what stands there now.
    pub(super) was: Digest,
}

impl FolderChanges {
    /// Compares an output with the folder, byte for byte: times and sizes alone prove nothing.
    ///
    /// # Errors
    /// When something that is not ours stands in the way, or the user asks to stop.
    pub(super) fn make(
        output: &Output,
        old: &Manifest,
        ground: &OutputTarget<'_>,
        interrupt: &AtomicBool,
    ) -> Result<Self, WriteError> {
        let mut plan = Self::default();
        let gone = |path: &str| old.files.contains_key(path) && output.get(path).is_none();
        for (path, content) in output.files() {
            go_on(interrupt)?;
            match stands(ground, path, content, old)? {
                Comparison::Same => plan.same += 1,
                Comparison::Ours => plan.puts.push(Put { path: path.into(), replaces: true }),
                Comparison::Nothing => plan.puts.push(Put { path: path.into(), replaces: false }),
                Comparison::Under(file) if gone(&file) => {
                    plan.puts.push(Put { path: path.into(), replaces: false });
                }
                Comparison::Under(file) => return Err(WriteError::Foreign(ground.at(&file))),
                Comparison::Folder => {
                    only_ours(ground, path, &gone)?;
                    plan.puts.push(Put { path: path.into(), replaces: false });
                }
            }
        }
        // Pictures and styles before the pages that show them.
        plan.puts.sort_by_key(|put| put.path.ends_with(".html"));
        plan.folders = missing_folders(ground, &plan.puts)?;
        for path in old.files.keys().filter(|path| gone(path)) {
            go_on(interrupt)?;
            // What the user put in the place of our file (a link, a folder) is not ours to remove.
            let Ok(Look::File { .. }) = ground.look(path) else {
                continue;
            };
            let full = ground.at(path);
            let was = Digest::of_file(&full).map_err(|e| WriteError::disk("read", &full, e))?;
            let removal = Removal { path: path.clone(), was };
            match output.check_free(path) {
                Err(_) => plan.before.push(removal),
                Ok(()) => plan.after.push(removal),
            }
        }
        Ok(plan)
    }

    /// True when the folder already holds the output and nothing else of ours.
    pub(super) fn is_nothing(&self) -> bool {
        self.puts.is_empty() && self.before.is_empty() && self.after.is_empty()
    }
}

/// [`WriteError::Interrupted`] once the user asked to stop.
pub(super) fn go_on(interrupt: &AtomicBool) -> Result<(), WriteError> {
    if interrupt.load(Ordering::Relaxed) { Err(WriteError::Interrupted) } else { Ok(()) }
}

enum Comparison {
    Nothing,
    Same,
    Ours,
    Folder,
    Under(String),
}

fn stands(ground: &OutputTarget<'_>, path: &str, content: &Content, old: &Manifest) -> Result<Comparison, WriteError> {
    let size = match ground.look(path)? {
        Look::Missing => return Ok(Comparison::Nothing),
        Look::Folder => return Ok(Comparison::Folder),
        Look::Under(file) => return Ok(Comparison::Under(file)),
        Look::File { size } => size,
    };
    let full = ground.at(path);
    let same = size == content.size()
        && Digest::of_file(&full).map_err(|e| WriteError::disk("read", &full, e))? == content.digest();
    match (same, old.files.contains_key(path)) {
        // The very same bytes: nobody loses anything when the manifest takes it in.
        (true, _) => Ok(Comparison::Same),
        (false, true) => Ok(Comparison::Ours),
        (false, false) => Err(WriteError::Foreign(full)),
    }
}

/// Fails unless a folder holds only files that go away now.
fn only_ours(ground: &OutputTarget<'_>, path: &str, gone: &impl Fn(&str) -> bool) -> Result<(), WriteError> {
    let full = ground.at(path);
    let in_the_way = || WriteError::FolderInTheWay(full.clone());
    let mut entries = 0;
    for entry in fs::read_dir(&full).map_err(|e| WriteError::disk("read", &full, e))? {
        entries += 1;
        let entry = entry.map_err(|e| WriteError::disk("read", &full, e))?;
        let name = entry.file_name().into_string().map_err(|_| in_the_way())?;
        let path = format!("{path}/{name}");
        match ground.look(&path) {
            Ok(Look::Folder) => only_ours(ground, &path, gone)?,
            Ok(Look::File { .. }) if gone(&path) => {}
            _ => return Err(in_the_way()),
        }
    }
    if entries == 0 { Err(in_the_way()) } else { Ok(()) }
}

fn missing_folders(ground: &OutputTarget<'_>, puts: &[Put]) -> Result<BTreeSet<String>, WriteError> {
    let mut missing = BTreeSet::new();
    for folder in puts.iter().flat_map(|put| path::folders(&put.path)) {
        if !missing.contains(folder) && ground.look(folder)? != Look::Folder {
            missing.insert(folder.to_owned());
        }
    }
    Ok(missing)
}
