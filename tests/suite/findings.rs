//! What a book brings must not change with what does not matter to the work: units, the way a plan lies, more room.

mod any_room;
mod either_units;
mod larger;
mod planned;
mod turned;

use std::path::Path;

use bookmatch::assess::assess;
use bookmatch::finding::Finding;
use bookmatch::read::read;
use bookmatch::source::{Files, Folder};
use bookmatch::units::Date;

/// The files of a book, by path.
type Book = Vec<(String, Vec<u8>)>;

/// All that is found in a book on the example's day, and the files that it stands in.
fn found(book: &[(String, Vec<u8>)]) -> (Vec<Finding>, Files) {
    let reading = read(&Folder::in_memory(book.to_vec())).expect("a book");
    let today = Date::parse("2027-01-15").expect("a day");
    (assess(&reading.book, reading.findings, today).findings, reading.files)
}

/// Rule, weight and file of each finding, in order.
fn told(book: &[(String, Vec<u8>)]) -> Vec<String> {
    let (findings, files) = found(book);
    let mut told: Vec<String> = findings
        .iter()
        .map(|finding| format!("{} {} {}", finding.rule, finding.severity.word(), files.path(&finding.place)))
        .collect();
    told.sort();
    told
}

/// The example, with its photographs.
fn example() -> Book {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("example-project");
    let files = walkdir::WalkDir::new(&root).into_iter().map(|entry| entry.expect("the example can be read"));
    let files = files.filter(|entry| entry.file_type().is_file());
    let files = files.map(|entry| {
        let path = entry.path().strip_prefix(&root).expect("inside").to_string_lossy().into_owned();
        (path, std::fs::read(entry.path()).expect("a file"))
    });
    files.filter(|(path, _)| !path.starts_with('.')).collect()
}

/// A file's text.
fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("text")
}
