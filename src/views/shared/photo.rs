//! A photograph as a page shows it, and the pictures that a folder shows, under names that stay the same.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

use crate::book::Photo as Named;
use crate::pictures::{Digest, Renditions};
use serde::Serialize;

/// The width that a page takes when it can't choose.
const MIDDLE: u32 = 960;

/// A photograph with the sizes that it was made in.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Photo {
    /// Path from the folder's root, with forward slashes; a middle size.
    pub src: String,
    /// All sizes, smallest first.
    pub sizes: Vec<PhotoSize>,
    /// Pixels of `src`: a page reserves the space before the picture is there.
    pub width: u32,
    pub height: u32,
    /// What is to be seen, for those who cannot see it; empty when the words beside it say the same.
    pub alt: String,
    pub caption: Option<String>,
}

/// One file of a photograph.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct PhotoSize {
    pub path: String,
    /// Pixels across.
    pub width: u32,
}

/// A picture file to carry into a folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PageFile {
    /// Its path in the folder.
    pub path: String,
    /// Where it stands in the cache.
    pub from: PathBuf,
    /// Of its bytes.
    pub digest: Digest,
    /// Its size.
    pub bytes: u64,
}

/// The pictures at hand, and those that were shown.
pub struct Album<'a> {
    pictures: &'a BTreeMap<String, Renditions>,
    shown: Mutex<BTreeMap<String, PageFile>>,
}

impl<'a> Album<'a> {
    /// An album with nothing shown yet.
    pub fn of(pictures: &'a BTreeMap<String, Renditions>) -> Self {
        Self { pictures, shown: Mutex::default() }
    }

    /// A picture for a page, no wider than `most`; none when it could not be made.
    pub fn photo(&self, named: &Named, alt: &str, most: u32) -> Option<Photo> {
        let alt = named.alt.as_deref().unwrap_or(alt);
        Some(Photo { caption: named.caption.clone(), ..self.picture(&named.path, alt, most)? })
    }

    /// As [`Album::photo`], by where it lies in the book's folder.
    pub fn picture(&self, path: &str, alt: &str, most: u32) -> Option<Photo> {
        let made = self.pictures.get(path)?;
        let smallest = made.files.iter().map(|file| file.width).min()?;
        let mut files: Vec<_> = made.files.iter().filter(|file| file.width <= most.max(smallest)).collect();
        files.sort_by_key(|file| file.width);
        let middle = files.iter().rev().find(|file| file.width <= MIDDLE).or(files.first())?;
        let path = |file: &crate::pictures::Rendition| format!("pictures/{}-{}.jpg", made.digest.short(16), file.width);
        let mut shown = self.shown.lock().unwrap_or_else(PoisonError::into_inner);
        for file in &files {
            let page = PageFile { path: path(file), from: file.path.clone(), digest: file.digest, bytes: file.bytes };
            shown.insert(page.path.clone(), page);
        }
        Some(Photo {
            src: path(middle),
            sizes: files.iter().map(|file| PhotoSize { path: path(file), width: file.width }).collect(),
            width: middle.width,
            height: middle.height,
            alt: alt.to_string(),
            caption: None,
        })
    }

    /// Whether anything was made of a picture, by where it lies in the book's folder.
    pub fn has(&self, path: &str) -> bool {
        self.pictures.contains_key(path)
    }

    /// What was made of a picture.
    pub fn made(&self, named: &Named) -> Option<&'a Renditions> {
        self.pictures.get(&named.path)
    }

    /// The files that were shown, ordered by path.
    pub fn shown(self) -> Vec<PageFile> {
        self.shown.into_inner().unwrap_or_else(PoisonError::into_inner).into_values().collect()
    }
}
