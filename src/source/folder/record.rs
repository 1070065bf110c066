//! What lies in a book's record, by name: to be held against the ledger. No key is read here.

use std::path::Path;

use super::super::aside::is_site;
use super::{Folder, Store};

/// The folders of the record whose files a line of the ledger names.
const FOLDERS: [&str; 4] = ["issues", "responses", "photographs", "keys"];

/// Where a published folder states the line of the ledger that it was published over.
pub const STATED: &str = "office/stated.json";
/// The largest such file, in bytes.
const MAX_STATED: u64 = 4096;

/// What a published folder states of the ledger, as it stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StatedIn {
    /// The published folder, inside the book's.
    pub site: String,
    /// What its file holds.
    pub bytes: Vec<u8>,
}

/// A file of the record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Recorded {
    /// Its folder in the record.
    pub folder: &'static str,
    /// Its name.
    pub name: String,
}

impl Folder {
    /// Every file of the record that a line of the ledger should name, in the order of their names. What is in
    /// the making, under a name that begins with a dot, is left out.
    pub fn recorded(&self) -> Vec<Recorded> {
        let mut found = Vec::new();
        for folder in FOLDERS {
            let mut names = match &self.store {
                Store::Memory(files) => {
                    let start = format!("record/{folder}/");
                    files.keys().filter_map(|path| path.strip_prefix(&start)).map(str::to_owned).collect()
                }
                Store::Disk(root) => names(&root.join("record").join(folder)),
            };
            names.sort_unstable();
            let shown = names.into_iter().filter(|name| !name.starts_with('.'));
            found.extend(shown.map(|name| Recorded { folder, name }));
        }
        found
    }

    /// What the published folders that lie in the book's own folder state of the ledger, in the order of their
    /// names.
    pub fn stated(&self) -> Vec<StatedIn> {
        let Store::Disk(root) = &self.store else { return vec![] };
        let mut sites = names(root);
        sites.sort_unstable();
        let sites = sites.into_iter().filter(|name| !root.join(name).is_symlink() && is_site(&root.join(name)));
        let stated = sites.filter_map(|site| {
            let bytes = super::without_links(root, &format!("{site}/{STATED}"), MAX_STATED).ok()??;
            Some(StatedIn { site, bytes })
        });
        stated.collect()
    }

    /// Keys that others than their owner may read, and the folder of keys where others may look into it: by
    /// their paths in the book. Always empty where the system keeps no such rights.
    pub fn open_keys(&self) -> Vec<String> {
        let Store::Disk(root) = &self.store else { return vec![] };
        let keys = root.join("record/keys");
        let mut found = Vec::new();
        if is_open(&keys) {
            found.push("record/keys".to_owned());
        }
        let mut files = names(&keys);
        files.sort_unstable();
        let open = files.into_iter().filter(|name| name.ends_with(".key") && is_open(&keys.join(name)));
        found.extend(open.map(|name| format!("record/keys/{name}")));
        found
    }
}

/// The names in a folder of the record; none where it can't be listed, or a link leads there.
fn names(folder: &Path) -> Vec<String> {
    if folder.is_symlink() || folder.parent().is_some_and(Path::is_symlink) {
        return vec![];
    }
    let listed = std::fs::read_dir(folder).into_iter().flatten().filter_map(Result::ok);
    listed.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect()
}

/// Whether others than the owner may do anything with it.
#[cfg(unix)]
fn is_open(path: &Path) -> bool {
    use std::os::unix::fs::PermissionsExt;
    std::fs::symlink_metadata(path).is_ok_and(|facts| !facts.is_symlink() && facts.permissions().mode() & 0o077 != 0)
}

#[cfg(not(unix))]
fn is_open(_path: &Path) -> bool {
    false
}
