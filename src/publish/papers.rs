//! Sets the sheets to sign as PDF, or takes them from the cache when nothing on them has changed.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use crate::pictures::{Cache, Digest, Renditions};
use crate::views::sign_off::SignOff;

use super::{File, PublishError};

/// Sheets as they were set last, by path, each with the digest of all that stands on it.
#[derive(Debug, Default)]
pub struct Kept(BTreeMap<String, (Digest, Arc<[u8]>)>);

/// Every sheet's bytes, with its path; none is begun once `interrupt` is raised.
#[cfg(feature = "sheets")]
pub fn set(
    papers: &[(String, SignOff)],
    kept: &mut Kept,
    pictures: &BTreeMap<String, Renditions>,
    cache: &Cache,
    interrupt: &AtomicBool,
) -> Result<Vec<File>, PublishError> {
    use rayon::prelude::*;
    let before = std::mem::take(&mut kept.0);
    let set = |(path, view): &(String, SignOff)| {
        if interrupt.load(std::sync::atomic::Ordering::SeqCst) {
            return Err(PublishError::Stopped);
        }
        Ok((path.clone(), one(path, view, before.get(path), pictures, cache)?))
    };
    let made: Vec<_> = papers.par_iter().map(set).collect();
    kept.0 = made.into_iter().collect::<Result<_, PublishError>>()?;
    Ok(kept.0.iter().map(|(path, (_, bytes))| (path.clone(), Arc::clone(bytes))).collect())
}

/// Without the feature there are no sheets.
#[cfg(not(feature = "sheets"))]
pub fn set(
    _: &[(String, SignOff)],
    _: &mut Kept,
    _: &BTreeMap<String, Renditions>,
    _: &Cache,
    _: &AtomicBool,
) -> Result<Vec<File>, PublishError> {
    Ok(vec![])
}

#[cfg(feature = "sheets")]
fn one(
    path: &str,
    view: &SignOff,
    before: Option<&(Digest, Arc<[u8]>)>,
    pictures: &BTreeMap<String, Renditions>,
    cache: &Cache,
) -> Result<(Digest, Arc<[u8]>), PublishError> {
    /// What a picture on paper is wide enough for: 38 mm at 300 dots an inch.
    const WIDE_ENOUGH: u32 = 450;
    /// Raised when the same view would be set otherwise.
    const SETTING: &str = concat!("sheets 1 ", env!("CARGO_PKG_VERSION"));

    let fail = |why: String| PublishError::Sheet(path.to_string(), why);
    let rendition = |key: &str| {
        let made = pictures.get(key)?;
        let enough = made.files.iter().filter(|file| file.width >= WIDE_ENOUGH).min_by_key(|file| file.width);
        enough.or_else(|| made.files.iter().max_by_key(|file| file.width))
    };
    let words = serde_json::to_vec(view).map_err(|error| fail(error.to_string()))?;
    let shown = view.rooms.iter().flat_map(|room| &room.items).filter_map(|item| item.picture.as_ref());
    let shown: Vec<String> = shown.filter_map(|picture| Some(rendition(&picture.key)?.digest.to_string())).collect();
    let key = Digest::of_parts(&[SETTING.as_bytes(), &words, shown.join(" ").as_bytes()]);
    if let Some((from, bytes)) = before.filter(|(from, _)| *from == key) {
        return Ok((*from, Arc::clone(bytes)));
    }
    if let Some(bytes) = cache.get("sheet", &key) {
        return Ok((key, bytes.into()));
    }
    let bytes = super::sheets::sign_off(view, &|key| cache.rendition(rendition(key)?))
        .map_err(|error| fail(error.to_string()))?;
    // A sheet that can't be kept is set again next time.
    let _ = cache.put("sheet", &key, &bytes);
    Ok((key, bytes.into()))
}
