//! The whole road, in one place: folder → book → assessment → pictures → views → files.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};

use crate::assess::{Assessment, assess};
use crate::book::Book;
use crate::pictures::{Cache, DEFAULT_WIDTHS, PictureError, Renditions, Source, prepare};
use crate::publish::output::Output;
use crate::publish::theme::Theme;
use crate::publish::{PublishError, publish};
use crate::read::{NotABook, read};
use crate::source::{Files, Folder};
use crate::units::Date;
use crate::views::tell::{Subject, tell};

/// Largest picture file that is read, in bytes; the review has refused larger ones.
const MAX_PICTURE: u64 = 64 * 1024 * 1024;

/// A book that was read and assessed.
#[derive(Debug)]
pub struct Review {
    /// The book.
    pub book: Book,
    /// What is to be said of it.
    pub assessment: Assessment,
    /// The texts, for showing where findings stand.
    pub files: Files,
    /// The day of the review.
    pub today: Date,
}

/// Reads and assesses a folder, as of a day.
///
/// # Errors
/// When the folder is no book.
pub fn review(folder: &Folder, today: Date) -> Result<Review, NotABook> {
    let reading = read(folder)?;
    let assessment = assess(&reading.book, reading.findings, today);
    Ok(Review { book: reading.book, assessment, files: reading.files, today })
}

/// The files of a book, and the pictures that could not be made.
pub struct Made {
    /// Every file to publish.
    pub output: Output,
    /// Pictures whose header was whole and whose rest was not, by path.
    pub failed: Vec<(String, PictureError)>,
}

/// How files are made.
pub struct Making<'a> {
    /// Every page and sheet is marked as a draft.
    pub draft: bool,
    /// Hears how many pictures of how many are done.
    pub progress: &'a (dyn Fn(usize, usize) + Sync),
    /// Once raised, no further picture or sheet is begun.
    pub interrupt: &'a AtomicBool,
}

/// Makes every file of a reviewed book.
///
/// # Errors
/// When the theme, a path or a sheet is at fault, or the work was interrupted.
pub fn make(folder: &Folder, review: &Review, cache: &Cache, making: &Making<'_>) -> Result<Made, PublishError> {
    let (pictures, failed) = pictures(folder, review, cache, making);
    let told = tell(Subject {
        book: &review.book,
        assessment: &review.assessment,
        files: &review.files,
        pictures: &pictures,
        today: review.today,
        draft: making.draft,
    });
    let output = publish(&told, &Theme::standard()?, &pictures, cache, making.interrupt)?;
    Ok(Made { output, failed })
}

type Pictures = (BTreeMap<String, Renditions>, Vec<(String, PictureError)>);

fn pictures(folder: &Folder, review: &Review, cache: &Cache, making: &Making<'_>) -> Pictures {
    let paths: Vec<&String> = review.book.photos.keys().collect();
    let source = |path: &String| {
        let read = path.clone();
        Source::new(path.clone(), move || {
            if making.interrupt.load(Ordering::SeqCst) {
                return Err(std::io::Error::other("stopped"));
            }
            folder.read(&read, MAX_PICTURE).map_err(std::io::Error::other)
        })
    };
    let sources: Vec<Source<'_>> = paths.iter().map(|path| source(path)).collect();
    let made = prepare(cache, &sources, &DEFAULT_WIDTHS, &|done| (making.progress)(done, sources.len()));
    let mut pictures = BTreeMap::new();
    let mut failed = Vec::new();
    for (path, made) in paths.into_iter().zip(made) {
        match made {
            Ok(made) => {
                pictures.insert(path.clone(), made);
            }
            Err(error) => failed.push((path.clone(), error)),
        }
    }
    (pictures, failed)
}
