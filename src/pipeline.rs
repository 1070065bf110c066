//! The whole road, in one place: folder → book → assessment → pictures → views → files.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::atomic::{AtomicBool, Ordering};

use crate::assess::approval::take_signed;
use crate::assess::{Assessment, assess};
use crate::book::{Book, Scan, photograph_path, room_of};
use crate::finding::{Code, Finding, Phrase, Remark, Severity, phrase};
use crate::pictures::{Cache, DEFAULT_WIDTHS, Digest, PictureError, Renditions, Source, prepare};
use crate::publish::bound::{BindError, bind};
use crate::publish::output::{Content, Output, PathError};
use crate::publish::theme::Theme;
use crate::publish::{Job, PublishError, Published, RenderCache, Setting, publish};
use crate::read::{NotABook, PhotoCache, read_again};
use crate::source::{Files, Folder, Place, RecordFile, STATED};
use crate::units::{Date, Fault};
use crate::views::client::decision_request::stated;
use crate::views::office::responses::scan_path;
use crate::views::pages::Subject;
use crate::views::shared::bound::pages_of;
use crate::views::trades::cut_sheets::cut_sheet_files;

/// Largest picture file that is read, in bytes; the review has refused larger ones.
const MAX_PICTURE: u64 = 64 * 1024 * 1024;

/// Where the record lies, which holds pictures of what came.
const RECORD: &str = "record/";

/// The rule that asks for whole pictures: making them finds what the review can't.
const PHOTO: Code = Code::PHOTO;

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
    reviewed(folder, today, &mut PhotoCache::default(), Choices::AsSigned)
}

/// As [`review`], with the digest of every picture, also of a book that has no record yet.
///
/// # Errors
/// When the folder is no book.
pub fn review_to_issue(folder: &Folder, today: Date) -> Result<Review, NotABook> {
    reviewed(folder, today, &mut PhotoCache::with_digests(), Choices::AsSigned)
}

/// The same, to ask the client about: that is what the book says, since an option that was signed and is not written
/// may be sent back.
///
/// # Errors
/// When the folder is no book.
pub fn review_to_ask(folder: &Folder, today: Date) -> Result<Review, NotABook> {
    reviewed(folder, today, &mut PhotoCache::with_digests(), Choices::AsWritten)
}

/// Whether an option that all who must signed stands as chosen before it is written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Choices {
    AsSigned,
    AsWritten,
}

fn reviewed(folder: &Folder, today: Date, looked: &mut PhotoCache, choices: Choices) -> Result<Review, NotABook> {
    let mut reading = read_again(folder, looked)?;
    if choices == Choices::AsSigned {
        take_signed(&mut reading.book);
    }
    let assessment = assess(&reading.book, reading.findings, today);
    Ok(Review { book: reading.book, assessment, files: reading.files, today })
}

/// The files of a book, and what only their making could tell.
pub struct BuildResult {
    /// Every file to publish.
    pub output: Output,
    /// Pictures whose header was whole and whose rest was not, and those whose colours are not sure.
    pub findings: Vec<Finding>,
    /// Sheets that are still to be set, where they may come `later`: once that is done, make once more.
    pub waiting: Option<Job>,
    /// Holds the pictures until they are written, where they stand in a passing folder.
    _cache: Cache,
}

/// What one making leaves for the next: pictures that did not change, and pages that still say the same.
pub struct BuildCaches {
    theme: Theme,
    looked: PhotoCache,
    kept: RenderCache,
    pictures: BTreeMap<String, Renditions>,
    faulty: BTreeMap<String, PictureError>,
}

impl BuildCaches {
    /// A workshop with the standard theme, where everything is still to be made.
    ///
    /// # Errors
    /// When the theme is faulty.
    pub fn new() -> Result<Self, PublishError> {
        let (pictures, faulty) = (BTreeMap::new(), BTreeMap::new());
        let (looked, kept) = (PhotoCache::default(), RenderCache::default());
        Ok(Self { theme: Theme::standard()?, looked, kept, pictures, faulty })
    }

    /// Reads and assesses the folder anew, as [`review`] does, but for pictures that have not changed:
    /// only those at the paths of `changed` are looked at again.
    ///
    /// # Errors
    /// When the folder is no book.
    pub fn review<'a>(
        &mut self,
        folder: &'a Folder,
        changed: impl Iterator<Item = &'a str>,
        today: Date,
    ) -> Result<Review, NotABook> {
        // What a link leads to may change without a word.
        let linked = folder.entries().iter().filter(|entry| entry.linked.is_some()).map(|entry| entry.path.as_str());
        for path in changed.chain(linked) {
            self.looked.forget(path);
            self.pictures.remove(path);
            self.faulty.remove(path);
        }
        reviewed(folder, today, &mut self.looked, Choices::AsSigned)
    }
}

/// How files are made.
pub struct BuildOptions<'a> {
    /// Every page and sheet is marked as a draft.
    pub draft: bool,
    /// Sheets that say something else now may stand as they were set last, and new ones be missing.
    pub later: bool,
    /// Hears how many pictures of how many are done.
    pub progress: &'a (dyn Fn(usize, usize) + Sync),
    /// Once raised, no further picture is begun, and the sheets are left.
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
    making: &BuildOptions<'_>,
    workshop: &mut BuildCaches,
) -> Result<BuildResult, PublishError> {
    // Before anything that takes long.
    if review.book.theme_faulty {
        return Err(PublishError::UnreadTheme);
    }
    if *workshop.theme.files() != review.book.theme {
        workshop.theme = Theme::of(review.book.theme.clone())?;
    }
    make_pictures(folder, review, cache, making, workshop);
    let BuildCaches { theme, kept, pictures, faulty, .. } = workshop;
    let subject = Subject {
        book: &review.book,
        assessment: &review.assessment,
        files: &review.files,
        pictures,
        today: review.today,
        draft: making.draft,
    };
    let setting = Setting { later: making.later, interrupt: making.interrupt };
    let Published { mut output, waiting } = publish(subject, theme, kept, cache, setting)?;
    put_scans(folder, &review.book, &mut output)?;
    put_cut_sheets(folder, &review.book, &mut output)?;
    put_stated(&review.book, &mut output)?;
    Ok(BuildResult { output, findings: of_pictures(faulty, pictures), waiting, _cache: cache.clone() })
}

/// Binds what somebody asked for of what was made into one file: a room, `ROOM/OPENING`, `installer`, or a trade;
/// none where the book has nothing of that name.
///
/// # Errors
/// When what was made can't be read back.
pub fn bound(review: &Review, output: &Output, draft: bool, asked: &str) -> Result<Option<String>, BindError> {
    let pictures = BTreeMap::new();
    let subject = Subject {
        book: &review.book,
        assessment: &review.assessment,
        files: &review.files,
        pictures: &pictures,
        today: review.today,
        draft,
    };
    let tongues = &review.book.project.tongues;
    pages_of(subject, asked).map(|pages| bind(output, tongues, pages.folder, &pages.paths)).transpose()
}

/// States in the office's folder over which line of the ledger it was published, by which a lost one shows.
fn put_stated(book: &Book, output: &mut Output) -> Result<(), PathError> {
    stated(book).map_or(Ok(()), |bytes| output.insert(STATED, Content::Bytes(bytes.into())))
}

/// Puts the scans of signed sheets into the office's folder, and into no other.
fn put_scans(folder: &Folder, book: &Book, output: &mut Output) -> Result<(), PathError> {
    let scans = book.record.kept.values().filter_map(|kept| kept.scan.as_ref());
    let scans: BTreeMap<&str, &Scan> = scans.map(|scan| (scan.name.as_str(), scan)).collect();
    for (name, scan) in scans {
        let Some(root) = folder.root() else { continue };
        let path = root.join(RecordFile::Scan(name).path());
        let content = Content::File { path, digest: scan.digest, bytes: scan.bytes };
        output.insert(format!("office/{}", scan_path(name)), content)?;
    }
    Ok(())
}

/// Puts the makers' own sheets into the folder of those who build, each as it was looked at.
fn put_cut_sheets(folder: &Folder, book: &Book, output: &mut Output) -> Result<(), PathError> {
    let Some(root) = folder.root() else { return Ok(()) };
    for (path, held) in cut_sheet_files(book) {
        let content = Content::File { path: root.join(&held.path), digest: held.digest, bytes: held.bytes };
        output.insert(format!("installer/{path}"), content)?;
    }
    Ok(())
}

/// Makes the pictures of a reviewed book, and says what is wrong with them.
pub fn check_pictures(
    folder: &Folder,
    review: &Review,
    cache: &Cache,
    making: &BuildOptions<'_>,
    workshop: &mut BuildCaches,
) -> Vec<Finding> {
    make_pictures(folder, review, cache, making, workshop);
    of_pictures(&workshop.faulty, &workshop.pictures)
}

/// Makes the pictures that are not made yet, and drops those that the book no longer names.
fn make_pictures(
    folder: &Folder,
    review: &Review,
    cache: &Cache,
    making: &BuildOptions<'_>,
    workshop: &mut BuildCaches,
) {
    let BuildCaches { pictures, faulty, .. } = workshop;
    let photographs: BTreeMap<String, String> = review.book.record.photographs.iter().map(photograph).collect();
    let photos: BTreeSet<&String> = review.book.photos.keys().chain(photographs.keys()).collect();
    // The cache may be deleted at any time: what is gone from it is made again.
    let is_there = |made: &Renditions| made.files.iter().all(|file| file.path.is_file());
    pictures.retain(|path, made| photos.contains(path) && is_there(made));
    // What the system refused may go well the next time; what a decoder refused stays as it is.
    let is_of_the_file = |error: &PictureError| !matches!(error, PictureError::Io { .. } | PictureError::Cache { .. });
    faulty.retain(|path, error| photos.contains(path) && is_of_the_file(error));
    let is_known = |path: &&String| pictures.contains_key(*path) || faulty.contains_key(*path);
    let paths: Vec<&String> = photos.into_iter().filter(|path| !is_known(path)).collect();
    let source = |path: &String| {
        let (read, recorded) = (path.clone(), photographs.get(path));
        Source::new(path.clone(), move || {
            if making.interrupt.load(Ordering::SeqCst) {
                return Err(std::io::Error::other("stopped"));
            }
            let Some(digest) = recorded else { return folder.read(&read, MAX_PICTURE).map_err(std::io::Error::other) };
            let found = folder.record(RecordFile::Photograph(digest), MAX_PICTURE).map_err(std::io::Error::other)?;
            found.ok_or_else(|| std::io::ErrorKind::NotFound.into())
        })
    };
    let sources: Vec<Source<'_>> = paths.iter().map(|path| source(path)).collect();
    let made = prepare(cache, &sources, &DEFAULT_WIDTHS, &|done| (making.progress)(done, sources.len()));
    for (path, made) in paths.into_iter().zip(made) {
        match made {
            Ok(made) => _ = pictures.insert(path.clone(), made),
            Err(error) => _ = faulty.insert(path.clone(), error),
        }
    }
}

/// Where a photograph of the record lies, and its digest: it is made anew as any picture is, whatever its bytes are.
fn photograph(digest: &Digest) -> (String, String) {
    (photograph_path(digest), digest.to_string())
}

/// What is to be said of the pictures, by the rule that asks for them whole.
fn of_pictures(faulty: &BTreeMap<String, PictureError>, pictures: &BTreeMap<String, Renditions>) -> Vec<Finding> {
    let finding = |severity, path: &String, message: Phrase, remedy: Phrase| {
        let room = room_of(path);
        Remark::new(severity, Place::Path(path.clone()), message).remedy(remedy).in_room(room).of(PHOTO)
    };
    let unusable = |(path, error): (&String, &PictureError)| {
        // What a stranger can have sent keeps nothing from being published.
        let is_theirs = path.starts_with(RECORD);
        finding(
            if is_theirs { Severity::Note } else { Severity::Stop },
            path,
            phrase!("the picture `{path}` can't be used: {error}", path, error.message()),
            error.remedy(),
        )
    };
    let unsure = |path| {
        let message =
            phrase!("the colours of the picture `{path}` may be wrong: its colour profile can't be read", path);
        let remedy = "open it in a photo editor and export it in sRGB; until then its colours are taken as sRGB";
        finding(Severity::Note, path, message, remedy.into())
    };
    let unread = pictures.iter().filter(|(_, made)| made.unread_profile).map(|(path, _)| unsure(path));
    faulty.iter().map(unusable).chain(unread).collect()
}
