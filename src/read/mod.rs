//! Folder to book, all faults at once.
//!
//! Reading never fails on what a book says: it answers the book as far as it can be understood, and
//! every fault of every file.

mod beside;
mod cut_sheets;
mod load;
mod names;
mod photos;

mod case;
mod choice;
mod disk_names;
#[cfg(test)]
mod examples;
mod kept;
mod plan_names;
mod project;
mod quotes;
mod readings;
mod record;
mod room;
mod selection;
mod suppliers;
mod tags;
mod theme;
pub use theme::can_hold_a_theme;
mod undated;

use std::fmt;

use crate::book::Book;
use crate::finding::{Finding, Subject};
use crate::source::{Files, Folder};

pub use load::PROJECT_FILES;
pub use photos::PhotoCache;

/// What reading a folder gives.
#[derive(Debug)]
pub struct Reading {
    /// The book, as far as it can be understood.
    pub book: Book,
    /// Every fault found while reading, ordered by place.
    pub findings: Vec<Finding>,
    /// The text of the files, for showing where faults stand.
    pub files: Files,
}

/// Why a folder is no book at all.
#[derive(Debug, PartialEq, Eq)]
pub enum NotABook {
    /// Nothing is in it.
    Empty,
    /// It has no `book.yaml`.
    NoBookFile,
    /// Its `book.yaml` is written with capitals, as here.
    Capitals(String),
}

impl fmt::Display for NotABook {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Capitals(name) => {
                return write!(f, "the folder has `{name}`: rename it to `book.yaml`, without capitals");
            }
            Self::Empty => "the folder is empty; `bookmatch start DIR` lays out a small book to begin with",
            Self::NoBookFile => {
                "the folder has no `book.yaml`; name the folder that holds one, or lay out a new book with \
                 `bookmatch start DIR`"
            }
        })
    }
}

impl std::error::Error for NotABook {}

/// Reads a folder.
///
/// # Errors
/// When the folder is no book: empty, or without `book.yaml`.
pub fn read(folder: &Folder) -> Result<Reading, NotABook> {
    read_again(folder, &mut PhotoCache::default())
}

/// Reads a folder of which some pictures are known, and notes those that it looked at.
///
/// # Errors
/// As [`read`].
pub fn read_again(folder: &Folder, looked: &mut PhotoCache) -> Result<Reading, NotABook> {
    if folder.entries().is_empty() && folder.strays().is_empty() {
        return Err(NotABook::Empty);
    }
    let project_file =
        load::PROJECT_FILES.into_iter().find(|path| folder.contains(path)).ok_or_else(|| no_book_file(folder))?;
    let mut loaded = load::load(folder);
    let mut findings = std::mem::take(&mut loaded.findings);

    let theme = theme::read(folder, &mut loaded, project_file, &mut findings);
    let project = project::read(&loaded, project_file, &theme, &mut findings);
    let mut book = Book { unread: loaded.unread.clone(), unread_files: loaded.unread_files.clone(), ..Book::default() };
    book.open.clone_from(&loaded.open);
    book.project_unread = !loaded.trees.contains_key(project_file);
    let common = room::Common { loaded: &loaded, currency: project.currency };
    book.rooms = room::read_all(&common, &project.project.rooms, &mut findings);
    book.project = project.project;
    (book.theme, book.theme_faulty) = (theme.files, theme.faulty);
    names::unused_products(&common, &mut findings);
    names::check(&book, &loaded, &mut findings);
    suppliers::check(&book, &loaded, &mut findings);
    book.record = record::read(folder, &mut loaded.files, &mut findings);
    tags::as_issued(&mut book, &mut findings);
    readings::apply(&mut book);
    cut_sheets::look(folder, &loaded, &mut book, &mut looked.sheets, &mut findings);
    photos::look(folder, &loaded, &mut book, looked, &mut findings);

    let unread: Vec<&Finding> = findings.iter().filter(|one| one.rule.tells_of_unread_words()).collect();
    let named = |one: &&Finding| match &one.subject {
        Subject::Selection(name) | Subject::Option(name, _) | Subject::Thing(name) => Some(name.span),
        _ => None,
    };
    book.partly_unread = unread.iter().filter_map(named).collect();
    book.project_partly_unread = unread.iter().any(|one| loaded.files.path(&one.place) == project_file);

    let load::Loaded { files, trees, products, .. } = loaded;
    // Nobody waits until every node of every file is let go of.
    rayon::spawn(|| drop((trees, products)));
    findings.sort_by(|a, b| {
        (files.path(&a.place).cmp(files.path(&b.place)))
            .then_with(|| a.place.cmp(&b.place))
            .then_with(|| a.rule.cmp(&b.rule))
            .then_with(|| a.message.text().cmp(b.message.text()))
    });
    // A product that several options share is read with each of them: its faults are told once.
    findings.dedup_by(|a, b| a.rule == b.rule && a.place == b.place && a.message == b.message);
    Ok(Reading { book, findings, files })
}

fn no_book_file(folder: &Folder) -> NotABook {
    let is_it = |path: &&str| load::PROJECT_FILES.contains(&path.to_lowercase().as_str());
    let found = folder.entries().iter().map(|entry| entry.path.as_str()).find(is_it);
    found.map_or(NotABook::NoBookFile, |name| NotABook::Capitals(name.into()))
}
