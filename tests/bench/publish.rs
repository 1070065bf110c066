//! A second `publish` of the example with nothing changed, against the first.

use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

fn main() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let (book, out) = (folder.path().join("book"), folder.path().join("site"));
    copy(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/example-project")), &book);
    let first = publish(&book, &out);
    let second = (0..5).map(|_| publish(&book, &out)).min().unwrap_or_default();
    println!("first publish of the example: {first:?}");
    println!("again with nothing changed, best of 5: {second:?}");
    println!("ratio {:.3} (goal: under 0.1)", second.as_secs_f64() / first.as_secs_f64());
}

#[allow(clippy::disallowed_methods)]
fn publish(book: &Path, out: &Path) -> Duration {
    let start = Instant::now();
    let run = Command::new(env!("CARGO_BIN_EXE_bookmatch"))
        .args(["publish", "--today", "2027-01-15", "--out"])
        .args([out, book])
        .output()
        .expect("bookmatch");
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    start.elapsed()
}

#[allow(clippy::disallowed_methods)]
fn copy(from: &Path, to: &Path) {
    for entry in walkdir::WalkDir::new(from).into_iter().map(|entry| entry.expect("the example")) {
        let inside = entry.path().strip_prefix(from).expect("inside");
        if inside.starts_with(".bookmatch") {
            continue;
        }
        let place = to.join(inside);
        if entry.file_type().is_dir() {
            std::fs::create_dir_all(place).expect("a folder");
        } else {
            std::fs::copy(entry.path(), place).expect("a copy");
        }
    }
}
