//! The pictures that a folder shows, under names that stay the same as long as the picture does.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

use crate::book::Photo as Named;
use crate::pictures::{Digest, Renditions};
use crate::views::photo::{Photo, PhotoSize};

/// The width that a page takes when it can't choose.
const MIDDLE: u32 = 960;

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
        let made = self.pictures.get(&named.path)?;
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
            alt: named.alt.clone().unwrap_or_else(|| alt.to_string()),
            caption: named.caption.clone(),
        })
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
