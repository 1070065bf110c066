//! The whole road, in one place: folder → book → assessment → pictures → views → files.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};

use crate::assess::{Assessment, assess};
use crate::book::Book;
use crate::pictures::{Cache, DEFAULT_WIDTHS, PictureError, Renditions, Source, prepare};
use crate::publish::output::Output;
use crate::publish::site::Kept;
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

/// What one making leaves for the next: pictures that did not change, and pages that still say the same.
pub struct Workshop {
    theme: Theme,
    pages: Kept,
    pictures: BTreeMap<String, Renditions>,
}

impl Workshop {
    /// A workshop with the standard theme, where everything is still to be made.
    ///
    /// # Errors
    /// When the theme is faulty.
    pub fn new() -> Result<Self, PublishError> {
        Ok(Self { theme: Theme::standard()?, pages: Kept::default(), pictures: BTreeMap::new() })
    }

    /// Forgets the picture at a path of the book: it has changed.
    pub fn forget(&mut self, path: &str) {
        self.pictures.remove(path);
    }
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
pub fn make(
    folder: &Folder,
    review: &Review,
    cache: &Cache,
    making: &Making<'_>,
    workshop: &mut Workshop,
) -> Result<Made, PublishError> {
    let failed = pictures(folder, review, cache, making, &mut workshop.pictures);
    let Workshop { theme, pages, pictures } = workshop;
    let told = tell(Subject {
        book: &review.book,
        assessment: &review.assessment,
        files: &review.files,
        pictures,
        today: review.today,
        draft: making.draft,
    });
    let output = publish(&told, theme, pages, pictures, cache, making.interrupt)?;
    Ok(Made { output, failed })
}

/// Makes the pictures that are not made yet, drops those that the book no longer names, and tells which
/// could not be made.
fn pictures(
    folder: &Folder,
    review: &Review,
    cache: &Cache,
    making: &Making<'_>,
    pictures: &mut BTreeMap<String, Renditions>,
) -> Vec<(String, PictureError)> {
    // The cache may be deleted at any time: what is gone from it is made again.
    let is_there = |made: &Renditions| made.files.iter().all(|file| file.path.is_file());
    pictures.retain(|path, made| review.book.photos.contains_key(path) && is_there(made));
    let paths: Vec<&String> = review.book.photos.keys().filter(|path| !pictures.contains_key(*path)).collect();
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
    let mut failed = Vec::new();
    for (path, made) in paths.into_iter().zip(made) {
        match made {
            Ok(made) => {
                pictures.insert(path.clone(), made);
            }
            Err(error) => failed.push((path.clone(), error)),
        }
    }
    failed
}
