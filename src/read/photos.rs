//! Finds the pictures that the book names, and looks at their headers.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use crate::book::{Book, Photo, PhotoFile};
use crate::digest::Digest;
use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::pictures::{PictureError, PictureLimits, inspect};
use crate::source::{Folder, FolderError, Spanned};
use crate::units::Fault;

use super::beside::{Sort, find};
use super::cut_sheets::SheetCache;
use super::load::Loaded;

/// Endings of picture files.
const ENDINGS: [&str; 9] = ["jpg", "jpeg", "png", "webp", "tif", "tiff", "heic", "heif", "avif"];

/// A picture as named, and for what.
struct Named<'b> {
    photo: &'b mut Photo,
    room: Option<String>,
    item: Option<Spanned<String>>,
}

/// What the headers of pictures and the makers' sheets said, by path: what is known is not looked at again.
#[derive(Debug, Default)]
pub struct PhotoCache {
    known: BTreeMap<String, PhotoFile>,
    pub(super) sheets: SheetCache,
    digests: bool,
}

impl PhotoCache {
    /// Nothing is known, and the digest of every picture is wanted, also of a book without a record.
    pub fn with_digests() -> Self {
        Self { digests: true, ..Self::default() }
    }

    /// Forgets the picture or the sheet at a path of the book: it has changed.
    pub fn forget(&mut self, path: &str) {
        self.known.remove(path);
        self.sheets.forget(path);
    }
}

/// Finds every picture, looks at its header, and lists those that nobody names.
pub fn look(folder: &Folder, loaded: &Loaded, book: &mut Book, looked: &mut PhotoCache, findings: &mut Vec<Finding>) {
    let paths: BTreeSet<&str> = folder.entries().iter().map(|entry| entry.path.as_str()).collect();
    let mut found: BTreeMap<String, Named<'_>> = BTreeMap::new();
    for named in named(&mut book.project, &mut book.rooms) {
        match find(&loaded.files, &paths, Sort::Picture, (&named.photo.path, named.photo.span)) {
            Ok(path) => {
                named.photo.path.clone_from(&path);
                found.entry(path).or_insert(named);
            }
            Err(finding) => {
                findings.push(of_its_own(&named, finding));
                named.photo.path.clear();
            }
        }
    }
    let known = std::mem::take(&mut looked.known);
    // A mark is of the pictures' bytes, and a record is of marks.
    let digests = looked.digests || book.record.is_open();
    let look = |path: &String, named: &Named<'_>| match known.get(path) {
        Some(&file) if paths.contains(path.as_str()) && (file.digest.is_some() || !digests) => Ok(file),
        _ => header(folder, path, named, digests),
    };
    let headers: Vec<_> = found.par_iter().map(|(path, named)| (path, look(path, named))).collect();
    for (path, header) in headers {
        match header {
            Ok(file) => {
                book.photos.insert(path.clone(), file);
            }
            Err(finding) => findings.push(finding),
        }
    }
    let is_read = |path: &str| super::case::capitals(path).is_none() && !book.theme.is_in(path);
    let unnamed = paths.iter().filter(|path| is_picture(path) && !found.contains_key(**path) && is_read(path));
    looked.known.clone_from(&book.photos);
    book.unnamed_photos = unnamed.map(|path| (*path).to_string()).collect();
}

/// Every picture that the book names.
fn named<'b>(project: &'b mut crate::book::Project, rooms: &'b mut [crate::book::Room]) -> Vec<Named<'b>> {
    let mut all: Vec<Named<'b>> =
        project.cover.iter_mut().map(|photo| Named { photo, room: None, item: None }).collect();
    for room in rooms {
        let folder = room.folder.clone();
        let own = room.photo.iter_mut().chain(&mut room.photos);
        all.extend(own.map(|photo| Named { photo, room: Some(folder.clone()), item: None }));
        for selection in &mut room.selections {
            let item = selection.name.clone();
            let photos = selection.options.iter_mut().flat_map(|option| &mut option.photos);
            all.extend(photos.map(|photo| Named { photo, room: Some(folder.clone()), item: Some(item.clone()) }));
        }
    }
    all
}

/// A finding about what the picture is of.
fn of_its_own(named: &Named<'_>, mut finding: Finding) -> Finding {
    finding.remark = finding.remark.in_room(named.room.clone());
    if let Some(item) = &named.item {
        finding.remark = finding.remark.selection(item);
    }
    finding
}

fn header(folder: &Folder, path: &str, named: &Named<'_>, digests: bool) -> Result<PhotoFile, Finding> {
    let span = named.photo.span;
    let finding =
        |rule, message: Phrase, remedy: Phrase| of_its_own(named, Remark::stop(span, message).remedy(remedy).of(rule));
    let limits = PictureLimits::default();
    let bytes = folder.read(path, limits.file_bytes).map_err(|error| match error {
        FolderError::TooLarge(..) => finding(
            Code::TOO_LARGE,
            phrase!("the picture `{path}` is larger than {} MB", path, limits.file_bytes / 1024 / 1024),
            "save a smaller copy of it".into(),
        ),
        error => finding(Code::PHOTO, error.message(), "give yourself the right to read it".into()),
    })?;
    match inspect(&bytes) {
        Ok(facts) => {
            let digest = digests.then(|| Digest::of(&bytes));
            Ok(PhotoFile { width: facts.width, height: facts.height, digest })
        }
        Err(error) => {
            let rule = if matches!(error, PictureError::TooLarge(..)) { Code::TOO_LARGE } else { Code::PHOTO };
            Err(finding(
                rule,
                phrase!("the picture `{path}` can't be used: {error}", path, error.message()),
                error.remedy(),
            ))
        }
    }
}

fn is_picture(path: &str) -> bool {
    let ending = path.rsplit_once('.').map_or("", |(_, ending)| ending).to_lowercase();
    ENDINGS.contains(&ending.as_str())
}
