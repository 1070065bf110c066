//! What the cache remembers of a photo: its sizes, and which files hold its renditions.

use std::path::PathBuf;

use bookmatch_pictures::{Rendered, SETTINGS};

use super::cache::{Cache, CacheError};
use crate::digest::Digest;

/// The kind under which photos are kept.
const KIND: &str = "pictures";

/// A photo made ready for pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Renditions {
    /// SHA-256 of the photo's own file.
    pub digest: Digest,
    /// The photo's width in pixels as shown, before any reduction.
    pub width: u32,
    /// The photo's height in pixels as shown.
    pub height: u32,
    /// The mean colour in sRGB, for the picture's place while it loads.
    pub average: [u8; 3],
    /// The photo carries a colour profile that can't be read: its colours were taken as sRGB.
    pub unread_profile: bool,
    /// The renditions, widest first; at least one.
    pub files: Vec<Rendition>,
}

/// One rendition: a JPEG file in sRGB without metadata.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rendition {
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// Length of the file.
    pub bytes: u64,
    /// SHA-256 of the file.
    pub digest: Digest,
    /// Where it stands in the cache; read it by [`Cache::rendition`], which checks it.
    pub path: PathBuf,
}

/// What an entry is kept under: the same photo, settings and widths give the same renditions.
pub(super) fn key(photo: &Digest, widths: &[u32]) -> Digest {
    let widths: Vec<u8> = widths.iter().flat_map(|width| width.to_be_bytes()).collect();
    Digest::of_parts(&[photo.as_bytes(), SETTINGS.as_bytes(), &widths])
}

/// The photo's renditions, if the entry and every file of it are there and whole.
pub(super) fn load(cache: &Cache, photo: Digest, key: &Digest) -> Option<Renditions> {
    let text = String::from_utf8(cache.get(KIND, key)?).ok()?;
    let mut lines = text.lines();
    let mut photo_words = lines.next()?.split(' ');
    let [width, height, red, green, blue, unread] = numbers(&mut photo_words)?;
    let average = [red, green, blue].map(|sample| sample.min(255) as u8);
    let mut files = Vec::new();
    for line in lines {
        let mut words = line.split(' ');
        let [width, height, bytes] = numbers(&mut words)?;
        let digest: Digest = words.next()?.parse().ok()?;
        let path = cache.rendition_path(&digest);
        let file = Rendition { width, height, bytes: bytes.into(), digest, path };
        cache.rendition(&file)?;
        files.push(file);
    }
    let unread_profile = unread == 1;
    Some(Renditions { digest: photo, width, height, average, unread_profile, files })
}

fn numbers<'a, const N: usize>(words: &mut impl Iterator<Item = &'a str>) -> Option<[u32; N]> {
    let mut numbers = [0; N];
    for number in &mut numbers {
        *number = words.next()?.parse().ok()?;
    }
    Some(numbers)
}

/// Keeps a photo's renditions: the files first, then the entry that names them.
pub(super) fn store(cache: &Cache, photo: Digest, key: &Digest, rendered: Rendered) -> Result<Renditions, CacheError> {
    let Rendered { width, height, average, unread_profile, files } = rendered;
    let [red, green, blue] = average;
    let unread = u8::from(unread_profile);
    let mut text = format!("{width} {height} {red} {green} {blue} {unread}\n");
    let mut kept = Vec::with_capacity(files.len());
    for file in files {
        let digest = Digest::of(&file.bytes);
        let path = cache.put_rendition(&digest, &file.bytes)?;
        let (width, height, bytes) = (file.width, file.height, file.bytes.len() as u64);
        text.push_str(&format!("{width} {height} {bytes} {digest}\n"));
        kept.push(Rendition { width, height, bytes, digest, path });
    }
    cache.put(KIND, key, text.as_bytes())?;
    Ok(Renditions { digest: photo, width, height, average, unread_profile, files: kept })
}
