//! The house rules, held by tests: who imports whom, how long things are, and that nothing is left out.

mod check_values;
mod code;
mod features;
mod imports;
mod kinds;
mod layout;
mod records;
mod registries;
mod rules;
mod scripts;
mod sizes;
mod unfinished;
mod words;

use std::fs;
use std::path::{Path, PathBuf};

/// The folder that holds `Cargo.toml`.
fn repository() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A source file: its path from the top of the repository, with `/`, and its text.
struct Source {
    path: String,
    text: String,
}

/// Every Rust file under one folder of the repository, in order of path.
fn rust_files(folder: &str) -> Vec<Source> {
    let mut files: Vec<Source> = walkdir::WalkDir::new(repository().join(folder))
        .sort_by_file_name()
        .into_iter()
        .filter_entry(|entry| entry.file_name() != "node_modules")
        .map(|entry| entry.expect("the repository can be read").into_path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "rs"))
        .map(|path| Source { text: text_of(&path), path: from_the_top(&path) })
        .collect();
    files.sort_by(|one, other| one.path.cmp(&other.path));
    assert!(!files.is_empty(), "`{folder}` has no Rust file to look at");
    files
}

fn text_of(path: &PathBuf) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn from_the_top(path: &Path) -> String {
    let inside = path.strip_prefix(repository()).expect("inside the repository");
    inside.to_string_lossy().replace('\\', "/")
}

/// Fails with every fault on a line of its own.
#[track_caller]
fn none(faults: Vec<String>) {
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}
