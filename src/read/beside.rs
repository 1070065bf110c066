//! Files that a record names: beside it, or in a folder of their sort there, and never out of the book.

use std::collections::BTreeSet;
use std::ops::Bound;

use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::source::{Files, Span, is_aside};
use crate::vocabulary::nearest;

/// How many files on either side of a name are tried when the one that is named is not there.
const BESIDE: usize = 100;

/// What sort of file is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sort {
    /// A picture.
    Picture,
    /// A maker's own sheet.
    CutSheet,
}

impl Sort {
    /// Where it may stand: its folder, or beside the record. Cameras and file managers write the folder with
    /// capitals, and some disks don't tell them apart.
    fn folders(self) -> [&'static str; 4] {
        match self {
            Self::Picture => ["photos/", "", "Photos/", "PHOTOS/"],
            Self::CutSheet => ["sheets/", "", "Sheets/", "SHEETS/"],
        }
    }

    fn usual(self) -> &'static str {
        let [usual, ..] = self.folders();
        usual
    }

    /// The rule that asks for it.
    pub fn code(self) -> Code {
        match self {
            Self::Picture => Code::PHOTO,
            Self::CutSheet => Code::CUT_SHEET,
        }
    }

    fn copy_it(self) -> &'static str {
        match self {
            Self::Picture => "copy the picture into the book, and name it from the record's own folder",
            Self::CutSheet => "copy the sheet into the book, and name it from the record's own folder",
        }
    }

    fn name_another(self) -> &'static str {
        match self {
            Self::Picture => "name a picture of the book; the record, the cache and hidden files are never shown",
            Self::CutSheet => "name a file of the book; the record, the cache and hidden files are never passed on",
        }
    }

    fn is_missing(self, written: &str) -> Phrase {
        match self {
            Self::Picture => phrase!("the picture `{written}` is not in the book", written),
            Self::CutSheet => phrase!("the cut sheet `{written}` is not in the book", written),
        }
    }
}

/// The file's path inside the book, as a record names it at a place.
pub fn find(files: &Files, paths: &BTreeSet<&str>, sort: Sort, (written, at): (&str, Span)) -> Result<String, Finding> {
    let leaves = written.starts_with('/')
        || written.contains('\\')
        || written.contains(':')
        || written.split('/').any(|part| part == "..");
    if leaves {
        let message = phrase!("`{written}` leads out of the book", written);
        return Err(Remark::stop(at, message).remedy(sort.copy_it()).of(Code::OUTSIDE_BOOK));
    }
    if is_aside(written) {
        let message = phrase!("`{written}` is no part of a book", written);
        return Err(Remark::stop(at, message).remedy(sort.name_another()).of(Code::OUTSIDE_BOOK));
    }
    let record = files.get(at.file).map_or("", |file| file.path.as_str());
    let base = record.rsplit_once('/').map_or(String::new(), |(folder, _)| format!("{folder}/"));
    let candidates = sort.folders().map(|folder| format!("{base}{folder}{written}"));
    if let Some(path) = candidates.iter().find(|path| paths.contains(path.as_str())) {
        return Ok(path.clone());
    }
    let folder = format!("{base}{}", sort.usual());
    let remedy = match nearest(written, beside(paths, &folder, written).into_iter()) {
        Some(near) => phrase!("did you mean `{near}`?", near),
        None => phrase!("put it into `{folder}`", folder),
    };
    Err(Remark::stop(at, sort.is_missing(written)).remedy(remedy).of(sort.code()))
}

/// The files of a folder that stand nearest to a name in the alphabet: all of them where they are few, so that a
/// thousand missing pictures are not held against a thousand others each.
fn beside<'p>(paths: &BTreeSet<&'p str>, folder: &str, name: &str) -> Vec<&'p str> {
    let at = format!("{folder}{name}");
    let before = paths.range::<str, _>((Bound::Unbounded, Bound::Excluded(at.as_str()))).rev().take(BESIDE);
    let after = paths.range::<str, _>((Bound::Included(at.as_str()), Bound::Unbounded)).take(BESIDE);
    let names =
        before.map_while(|path| path.strip_prefix(folder)).chain(after.map_while(|path| path.strip_prefix(folder)));
    let mut names: Vec<&str> = names.collect();
    names.sort_unstable();
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_missing_picture_is_held_against_those_beside_it_alone() {
        let names: Vec<String> = (0..5_000).map(|number| format!("rooms/bath/photos/{number:05}.jpg")).collect();
        let mut paths: BTreeSet<&str> = names.iter().map(String::as_str).collect();
        paths.extend(["rooms/bath/photos.txt", "rooms/hall/photos/02500.jpg"]);
        let tried = beside(&paths, "rooms/bath/photos/", "02500x.jpg");
        assert_eq!(tried.len(), 2 * BESIDE);
        assert!(tried.contains(&"02500.jpg") && tried.is_sorted());
        assert_eq!(beside(&paths, "rooms/hall/photos/", "a.jpg"), ["02500.jpg"]);
    }
}
