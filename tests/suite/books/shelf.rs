//! The whole books on their shelf, each read into memory and reviewed there.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use bookmatch::assess::assess;
use bookmatch::finding::Finding;
use bookmatch::read::read;
use bookmatch::source::{self, Folder};
use bookmatch::units::Date;

use crate::project::picture::jpeg;

/// The day on which they are reviewed.
pub const TODAY: &str = "2027-01-15";

/// A book's texts, by path.
pub type Texts = BTreeMap<String, String>;

/// A whole book.
pub struct Whole {
    pub name: String,
    pub files: Texts,
}

/// What a review found, and the files it stands in.
pub struct Reviewed {
    pub findings: Vec<Finding>,
    pub files: source::Files,
}

/// A finding that is right and stays.
pub struct Rest {
    pub book: String,
    pub rule: String,
    pub says: String,
}

impl Rest {
    pub fn is(&self, book: &str, finding: &Finding) -> bool {
        self.book == book && self.rule == finding.rule.text() && finding.message.text().contains(&self.says)
    }
}

pub fn place() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/books")
}

/// All books, by name.
pub fn shelf() -> Vec<Whole> {
    books_in(&place())
}

/// The books of a folder, by name.
pub fn books_in(shelf: &Path) -> Vec<Whole> {
    let entries = std::fs::read_dir(shelf).unwrap().map(|entry| entry.unwrap().path());
    let mut folders: Vec<_> = entries.filter(|path| path.join("book.yaml").exists()).collect();
    folders.sort();
    folders.iter().map(|folder| whole(folder)).collect()
}

fn whole(folder: &Path) -> Whole {
    // Whoever publishes one of them leaves its cache there.
    let is_shown = |one: &walkdir::DirEntry| !one.file_name().to_string_lossy().starts_with('.');
    let files = walkdir::WalkDir::new(folder).into_iter().filter_entry(is_shown).map(Result::unwrap);
    let files = files.filter(|one| one.file_type().is_file());
    let text = |one: walkdir::DirEntry| {
        let path = one.path().strip_prefix(folder).unwrap().to_string_lossy().into_owned();
        (path, std::fs::read_to_string(one.path()).unwrap())
    };
    Whole { name: folder.file_name().unwrap().to_string_lossy().into_owned(), files: files.map(text).collect() }
}

/// The book's folder, with a picture at every path that its texts name.
pub fn folder(texts: &Texts) -> Folder {
    let mut files: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    for (path, text) in texts {
        files.insert(path.clone(), text.clone().into_bytes());
        let room = path.rsplit_once('/').map_or("", |(room, _)| room);
        for name in text.split(|one: char| !(one.is_alphanumeric() || "-._/".contains(one))) {
            if name.ends_with(".jpg") {
                let photos = if room.is_empty() { name.to_owned() } else { format!("{room}/photos/{name}") };
                files.entry(photos).or_insert_with_key(|path| jpeg(path, 96, 64));
            }
        }
    }
    Folder::in_memory(files)
}

pub fn review(texts: &Texts) -> Reviewed {
    review_on(texts, TODAY)
}

pub fn review_on(texts: &Texts, day: &str) -> Reviewed {
    let reading = read(&folder(texts)).expect("a book");
    let findings = assess(&reading.book, reading.findings, Date::parse(day).unwrap()).findings;
    assert_eq!(crate::stories::undeclared(&reading.book, &findings), [""; 0]);
    Reviewed { findings: findings.into_iter().filter(|one| one.waived.is_none()).collect(), files: reading.files }
}

/// `remains.txt`: a line each, `book | rule | what it says | why it is right and stays`.
pub fn remains(shelf: &Path) -> Vec<Rest> {
    let text = std::fs::read_to_string(shelf.join("remains.txt")).unwrap();
    let lines = text.lines().filter(|line| !line.is_empty() && !line.starts_with('#'));
    let rest = |line: &str| {
        let parts: Vec<&str> = line.split(" | ").collect();
        let [book, rule, says, why] = parts[..] else { panic!("remains.txt: {line}") };
        assert!(why.split_whitespace().count() >= 3, "remains.txt: no reason: {line}");
        Rest { book: book.into(), rule: rule.into(), says: says.into() }
    };
    lines.map(rest).collect()
}
