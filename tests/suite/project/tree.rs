//! Everything in a folder with its digest, to prove that files stayed as they were.

use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Each path in a folder, and what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tree(BTreeMap<String, Entry>);

#[derive(Clone, Debug, PartialEq, Eq)]
enum Entry {
    Folder,
    Link(String),
    File(String),
}

/// Reads a folder; links are noted, not followed. A folder that is not there is an empty tree.
pub fn tree(folder: &Path) -> Tree {
    if !folder.exists() {
        return Tree(BTreeMap::new());
    }
    let entries = walkdir::WalkDir::new(folder).min_depth(1).into_iter().map(|entry| {
        let entry = entry.expect("the folder can be read");
        let inside = entry.path().strip_prefix(folder).expect("inside");
        (inside.to_string_lossy().into_owned(), what_stands_at(entry.path()))
    });
    Tree(entries.collect())
}

fn what_stands_at(path: &Path) -> Entry {
    let kind = fs::symlink_metadata(path).expect("an entry").file_type();
    if kind.is_symlink() {
        return Entry::Link(fs::read_link(path).expect("a link").to_string_lossy().into_owned());
    }
    if kind.is_dir() {
        return Entry::Folder;
    }
    let digest = Sha256::digest(fs::read(path).expect("a file"));
    Entry::File(digest.iter().map(|byte| format!("{byte:02x}")).collect())
}

impl Tree {
    /// Paths of the files, in order.
    pub fn files(&self) -> impl Iterator<Item = &str> {
        let files = self.0.iter().filter(|(_, entry)| matches!(entry, Entry::File(_)));
        files.map(|(path, _)| path.as_str())
    }

    /// The same without what stands under a path, such as a cache that may change.
    pub fn without(mut self, path: &str) -> Self {
        self.0.retain(|entry, _| entry != path && !entry.starts_with(&format!("{path}/")));
        self
    }

    /// What differs, a line each: `gone`, `new` or `changed`, and the path.
    pub fn differences(&self, later: &Self) -> Vec<String> {
        let mut paths: Vec<&String> = self.0.keys().chain(later.0.keys()).collect();
        paths.sort();
        paths.dedup();
        let differs = |path: &String| match (self.0.get(path), later.0.get(path)) {
            (Some(before), Some(after)) if before == after => None,
            (Some(_), Some(_)) => Some(format!("changed {path}")),
            (Some(_), None) => Some(format!("gone {path}")),
            (None, _) => Some(format!("new {path}")),
        };
        paths.into_iter().filter_map(differs).collect()
    }

    /// Fails and names what differs.
    #[track_caller]
    pub fn same_as(&self, later: &Self) {
        let differences = self.differences(later);
        assert!(differences.is_empty(), "the folder changed:\n{}", differences.join("\n"));
    }
}

#[test]
fn every_kind_of_change_is_told_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::create_dir(at("sub")).unwrap();
    for name in ["kept", "edited", "removed"] {
        fs::write(at("sub").join(name), name).unwrap();
    }
    std::os::unix::fs::symlink("kept", at("sub/link")).unwrap();
    let before = tree(folder.path());
    before.same_as(&tree(folder.path()));
    fs::write(at("sub/edited"), "Edited").unwrap();
    fs::remove_file(at("sub/removed")).unwrap();
    fs::remove_file(at("sub/link")).unwrap();
    std::os::unix::fs::symlink("edited", at("sub/link")).unwrap();
    fs::create_dir(at("added")).unwrap();
    assert_eq!(
        before.differences(&tree(folder.path())),
        ["new added", "changed sub/edited", "changed sub/link", "gone sub/removed"]
    );
    assert_eq!(before.without("sub").files().count(), 0);
}

#[test]
fn a_folder_that_is_not_there_is_an_empty_tree() {
    assert_eq!(tree(Path::new("/no/such/folder")).files().count(), 0);
}
