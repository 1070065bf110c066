//! What a published folder goes through: outputs, the user's own files, faults, kills, full disks.

#![expect(clippy::disallowed_methods, reason = "the tests lay out folders and look at them")]

mod faults;
mod full;
mod kills;
mod outputs;
mod switching;
mod theirs;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::AtomicBool;

use tempfile::TempDir;

use super::disk::Disk;
use super::write::write_on;
use super::{Content, Digest, Output, OutputFolder, WriteError, Written};

/// A book and a folder beside it, to publish into.
struct Ground {
    root: TempDir,
}

impl Ground {
    fn new() -> Self {
        // In memory where there is such a disk: these tests flush some ten thousand files.
        let memory = Path::new("/dev/shm");
        let root = if memory.is_dir() { tempfile::tempdir_in(memory) } else { tempfile::tempdir() };
        let root = root.unwrap();
        fs::create_dir_all(root.path().join("book/.bookmatch")).unwrap();
        Self { root }
    }

    fn site(&self) -> PathBuf {
        self.root.path().join("site")
    }

    fn place(&self) -> OutputFolder {
        OutputFolder { dir: self.site(), book: self.root.path().join("book") }
    }

    fn publish(&self, output: &Output) -> Result<Written, WriteError> {
        self.publish_on(&Disk::default(), output)
    }

    fn publish_on(&self, disk: &Disk, output: &Output) -> Result<Written, WriteError> {
        write_on(disk, output, &self.place(), &AtomicBool::new(false))
    }

    /// A picture in the cache, and the content that refers to it.
    fn picture(&self, bytes: &[u8]) -> Content {
        let digest = Digest::of(bytes);
        let path = self.root.path().join("book/.bookmatch").join(digest.to_string());
        fs::write(&path, bytes).unwrap();
        Content::File { path, digest, bytes: bytes.len() as u64 }
    }

    /// Lays a file of the user's own into the published folder.
    fn lay(&self, path: &str, text: &str) {
        let path = self.site().join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }

    /// What whoever opens the folder finds: all but what is being laid out for the next output.
    fn shows(&self) -> BTreeMap<String, String> {
        let mut stands = self.stands();
        stands.retain(|path, _| !path.starts_with(".bookmatch-staging/"));
        stands
    }

    /// Every file and folder below the published folder but the manifest and the lock; folders
    /// end in `/`, and a link shows as what it points to.
    fn stands(&self) -> BTreeMap<String, String> {
        let mut found = BTreeMap::new();
        list(&self.site(), "", &mut found);
        let own = [".bookmatch-manifest.json", ".bookmatch-lock", ".bookmatch-stand-in", ".bookmatch-stood-in"];
        found.retain(|path, _| !own.contains(&path.as_str()));
        found
    }
}

fn list(folder: &Path, name: &str, found: &mut BTreeMap<String, String>) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for entry in entries {
        let entry = entry.unwrap();
        let name = format!("{name}{}", entry.file_name().into_string().unwrap());
        let kind = entry.file_type().unwrap();
        if kind.is_dir() {
            found.insert(format!("{name}/"), String::new());
            list(&entry.path(), &format!("{name}/"), found);
        } else if kind.is_symlink() {
            let to = fs::read_link(entry.path()).unwrap();
            found.insert(name, format!("-> {}", to.display()));
        } else {
            let bytes = fs::read(entry.path()).unwrap();
            found.insert(name, String::from_utf8_lossy(&bytes).into_owned());
        }
    }
}

/// An output of pages: path, text.
fn pages(pages: &[(&str, &str)]) -> Output {
    let mut output = Output::default();
    for (path, text) in pages {
        output.insert(*path, Content::Bytes(text.as_bytes().into())).unwrap();
    }
    output
}

/// What [`Ground::stands`] shows when exactly these files are there.
fn exactly(files: &[(&str, &str)]) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    for (path, text) in files {
        for (at, _) in path.match_indices('/') {
            found.insert(path[..=at].to_owned(), String::new());
        }
        found.insert((*path).to_owned(), (*text).to_owned());
    }
    found
}

const FIRST: [(&str, &str); 4] = [
    ("client/index.html", "first cover"),
    ("client/rooms/attic.html", "an attic"),
    ("client/style.css", "ink"),
    ("office/index.html", "office"),
];

/// One page changed, one the same, one new, two gone; a file in place of a folder and back.
const SECOND: [(&str, &str); 5] = [
    ("client/index.html", "second cover"),
    ("client/rooms", "was a folder"),
    ("client/style.css/print", "was a file"),
    ("installer/index.html", "sheets"),
    ("installer/range.svg", "drawing"),
];
