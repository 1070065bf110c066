//! Sets the sheets to sign as PDF, or takes them as they were set when nothing on them has changed.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::pictures::{Cache, Digest, Renditions};
use crate::views::sign_off::SignOff;

use super::{File, PublishError, Setting};

/// Sheets as they were set last, by path.
#[derive(Debug, Default)]
pub struct Kept(BTreeMap<String, Paper>);

/// A sheet, and the digest of all that stands on it.
#[derive(Debug, Clone)]
struct Paper {
    from: Digest,
    bytes: Arc<[u8]>,
}

/// Every sheet.
#[derive(Default)]
pub struct Papers {
    pub files: Vec<File>,
    /// One of them stands as it was set last, and should say something else.
    pub waiting: bool,
}

/// What every sheet is set with.
pub struct Press<'a> {
    pub pictures: &'a BTreeMap<String, Renditions>,
    pub cache: &'a Cache,
    pub setting: Setting<'a>,
}

impl Press<'_> {
    /// Every sheet, with its path; none is begun once the work is interrupted.
    ///
    /// # Errors
    /// When a sheet can't be set, or the work was interrupted before the last was begun.
    #[cfg(feature = "sheets")]
    pub fn set(&self, papers: &[(String, SignOff)], kept: &mut Kept) -> Result<Papers, PublishError> {
        use rayon::prelude::*;
        let before = std::mem::take(&mut kept.0);
        let one = |(path, view): &(String, SignOff)| self.one(path, view, before.get(path));
        let made: Vec<_> = papers.par_iter().map(one).collect();
        let mut set = Papers::default();
        for ((path, _), made) in papers.iter().zip(made) {
            let (wanted, paper) = made?;
            set.waiting |= paper.from != wanted;
            set.files.push((path.clone(), Arc::clone(&paper.bytes)));
            kept.0.insert(path.clone(), paper);
        }
        Ok(set)
    }

    /// Without the feature there are no sheets.
    #[cfg(not(feature = "sheets"))]
    pub fn set(&self, _: &[(String, SignOff)], _: &mut Kept) -> Result<Papers, PublishError> {
        Ok(Papers::default())
    }

    /// The digest of all that should stand on a sheet, and the sheet: as it was, from the cache, or set.
    #[cfg(feature = "sheets")]
    fn one(&self, path: &str, view: &SignOff, before: Option<&Paper>) -> Result<(Digest, Paper), PublishError> {
        /// Raised when the same view would be set otherwise.
        const SETTING: &str = concat!("sheets 5 ", env!("CARGO_PKG_VERSION"));

        if self.setting.interrupt.load(std::sync::atomic::Ordering::SeqCst) {
            return Err(PublishError::Stopped);
        }
        let fail = |why: String| PublishError::Sheet(path.to_string(), why);
        let words = serde_json::to_vec(view).map_err(|error| fail(error.to_string()))?;
        let shown: Vec<String> =
            view.pictures().filter_map(|picture| Some(self.rendition(&picture.key)?.digest.to_string())).collect();
        let wanted = Digest::of_parts(&[SETTING.as_bytes(), &words, shown.join(" ").as_bytes()]);
        if let Some(paper) = before.filter(|paper| paper.from == wanted) {
            return Ok((wanted, paper.clone()));
        }
        if let Some(bytes) = self.cache.get("sheet", &wanted) {
            return Ok((wanted, Paper { from: wanted, bytes: bytes.into() }));
        }
        if let Some(paper) = before.filter(|_| self.setting.later) {
            return Ok((wanted, paper.clone()));
        }
        let bytes = super::sheets::sign_off(view, &|key| self.cache.rendition(self.rendition(key)?))
            .map_err(|error| fail(error.to_string()))?;
        // A sheet that can't be kept is set again next time.
        let _ = self.cache.put("sheet", &wanted, &bytes);
        Ok((wanted, Paper { from: wanted, bytes: bytes.into() }))
    }

    /// The smallest rendition that is wide enough for paper.
    #[cfg(feature = "sheets")]
    fn rendition(&self, key: &str) -> Option<&crate::pictures::Rendition> {
        /// 38 mm at 300 dots an inch, in pixels.
        const WIDE_ENOUGH: u32 = 450;

        let made = self.pictures.get(key)?;
        let enough = made.files.iter().filter(|file| file.width >= WIDE_ENOUGH).min_by_key(|file| file.width);
        enough.or_else(|| made.files.iter().max_by_key(|file| file.width))
    }
}
