//! A book in a folder of its own, the program run on it, and what it said and left behind.

pub mod example;
pub mod picture;
mod ran;
mod tree;

use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tempfile::TempDir;

pub use ran::Ran;
pub use tree::{Tree, tree};

/// A book being written for one test; the folder goes when it is dropped.
pub struct Project {
    folder: TempDir,
}

impl Project {
    /// An empty folder.
    pub fn new() -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        fs::create_dir(folder.path().join("book")).expect("the book's folder");
        Self { folder }
    }

    /// A book with one rug, issued.
    pub fn with_a_rug_issued() -> Self {
        let project = Self::with_a_rug();
        project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
        project
    }

    /// The same, not issued yet.
    pub fn with_a_rug() -> Self {
        Self::new()
            .file(
                "book.yaml",
                "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n\
                 approvers: [{id: ada, name: Ada Marrowby}]\n",
            )
            .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
            .file(
                "rooms/kitchen/rug.yaml",
                "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
                 needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\nfinish: oak\n\
                 price: 100.00\n",
            )
            .photo("rooms/kitchen/photos/rug.jpg")
    }

    /// A copy of a folder of the repository, such as `example-project`, without what the program keeps in it.
    pub fn copy_of(folder: &str) -> Self {
        let project = Self::new();
        let from = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
        for entry in walkdir::WalkDir::new(&from).min_depth(1).into_iter().filter_entry(|entry| !is_cache(entry)) {
            let entry = entry.expect("the folder can be read");
            if entry.file_type().is_file() {
                let inside = entry.path().strip_prefix(&from).expect("inside");
                fs::copy(entry.path(), project.place(inside)).expect("a copy");
            }
        }
        project
    }

    /// Adds or replaces a text file.
    pub fn file(self, path: &str, text: &str) -> Self {
        self.bytes(path, text.as_bytes())
    }

    /// Adds or replaces a file of any bytes.
    pub fn bytes(self, path: &str, bytes: &[u8]) -> Self {
        fs::write(self.place(path), bytes).expect("a file of the book");
        self
    }

    /// Adds a small JPEG (96 × 64); each path gets a picture of its own.
    pub fn photo(self, path: &str) -> Self {
        self.photo_of(path, 96, 64)
    }

    /// Adds a JPEG of a size in pixels.
    pub fn photo_of(self, path: &str, width: u16, height: u16) -> Self {
        let bytes = picture::jpeg(path, width, height);
        self.bytes(path, &bytes)
    }

    /// Adds a symbolic link; the target is taken as written.
    pub fn link(self, path: &str, target: impl AsRef<Path>) -> Self {
        std::os::unix::fs::symlink(target, self.place(path)).expect("a link");
        self
    }

    /// Removes a file.
    pub fn without(self, path: &str) -> Self {
        fs::remove_file(self.root().join(path)).expect("a file to remove");
        self
    }

    /// The folder of the book.
    pub fn root(&self) -> PathBuf {
        self.folder.path().join("book")
    }

    /// A path beside the book, for what the program writes.
    pub fn beside(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// The program, with its working folder in the book and nothing to read from.
    pub fn command<S: AsRef<OsStr>>(&self, arguments: impl IntoIterator<Item = S>) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_bookmatch"));
        command.args(arguments).current_dir(self.root()).stdin(Stdio::null());
        command
    }

    /// Runs the program to its end.
    pub fn run<S: AsRef<OsStr>>(&self, arguments: impl IntoIterator<Item = S>) -> Ran {
        Ran::of(&mut self.command(arguments))
    }

    /// Everything in the book's folder, to compare with later.
    pub fn tree(&self) -> Tree {
        tree(&self.root())
    }

    fn place(&self, path: impl AsRef<Path>) -> PathBuf {
        let place = self.root().join(path);
        fs::create_dir_all(place.parent().expect("a folder")).expect("a folder of the book");
        place
    }
}

fn is_cache(entry: &walkdir::DirEntry) -> bool {
    entry.file_name() == ".bookmatch"
}

#[test]
fn a_project_is_laid_out_as_it_was_told_and_copied_whole() {
    let project = Project::new().file("rooms/a/room.yaml", "name: A\n").photo("rooms/a/photos/b.jpg");
    assert_eq!(fs::read_to_string(project.root().join("rooms/a/room.yaml")).unwrap(), "name: A\n");
    assert_eq!(project.tree().files().count(), 2);
    let project = project.without("rooms/a/room.yaml").link("rooms/loop", "..");
    assert_eq!(project.tree().files().count(), 1);
    let copy = Project::copy_of("tests/suite/project");
    tree(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/suite/project")).same_as(&copy.tree());
}

#[test]
fn the_program_runs_inside_the_book_and_may_write_beside_it() {
    let project = Project::new();
    let command = project.command(["review"]);
    assert_eq!(command.get_current_dir(), Some(project.root().as_path()));
    let before = project.tree();
    fs::write(project.beside("site"), "").expect("a file beside the book");
    project.run(["--version"]).exits(0);
    before.same_as(&project.tree());
}
