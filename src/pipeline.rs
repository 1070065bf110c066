//! The whole road, in one place: folder → book → assessment → views → files.

use crate::assess::{Assessment, assess};
use crate::book::Book;
use crate::read::{NotABook, read};
use crate::source::{Files, Folder};
use crate::units::Date;

/// A book that was read and assessed.
#[derive(Debug)]
pub struct Review {
    /// The book.
    pub book: Book,
    /// What is to be said of it.
    pub assessment: Assessment,
    /// The texts, for showing where findings stand.
    pub files: Files,
}

/// Reads and assesses a folder, as of a day.
///
/// # Errors
/// When the folder is no book.
pub fn review(folder: &Folder, today: Date) -> Result<Review, NotABook> {
    let reading = read(folder)?;
    let assessment = assess(&reading.book, reading.findings, today);
    Ok(Review { book: reading.book, assessment, files: reading.files })
}
