//! Many photos to renditions: few decoded at once, memory bounded, those already done not decoded.

use std::fs::File;
use std::io::{self, Read};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};

use bookmatch_pictures::{PictureError, PictureLimits, Rendered, inspect_within, render, working_bytes};
use rayon::prelude::*;

use super::cache::Cache;
use super::entry::{self, Renditions};
use super::gate::Gate;
use crate::digest::Digest;

/// Photos in work at once, however many processors there are: each holds its file and pixels.
const AT_ONCE: usize = 4;
/// Bytes that decoders may hold together; a photo that needs more is decoded alone.
const BUDGET: u64 = 160 * 1024 * 1024;
/// The renditions in work and their files, beside a decoder's own need.
const BESIDE: u64 = 16 * 1024 * 1024;

/// Reads a photo's file whole.
type Open<'a> = Box<dyn Fn() -> io::Result<Vec<u8>> + Send + Sync + 'a>;

/// A photo to be prepared, read only when its turn comes.
pub struct Source<'a> {
    /// The photo's name, for the caller's own use.
    pub name: String,
    open: Open<'a>,
}

impl<'a> Source<'a> {
    /// A photo whose bytes `open` gives, perhaps from several threads at once.
    pub fn new(name: impl Into<String>, open: impl Fn() -> io::Result<Vec<u8>> + Send + Sync + 'a) -> Source<'a> {
        Source { name: name.into(), open: Box::new(open) }
    }

    /// A photo in a file, of which no more is read than the limit on files needs.
    pub fn file(name: impl Into<String>, path: PathBuf) -> Source<'a> {
        let most = PictureLimits::default().file_bytes + 1;
        Source::new(name, move || {
            let mut bytes = Vec::new();
            File::open(&path)?.take(most).read_to_end(&mut bytes)?;
            Ok(bytes)
        })
    }
}

/// Makes the renditions of each photo at `widths` (see [`super::DEFAULT_WIDTHS`]), or takes them
/// from the cache; answers in the order of `sources`. One photo's fault leaves the others be.
///
/// `progress` is told how many photos are done, each count once, in rising order.
pub fn prepare(
    cache: &Cache,
    sources: &[Source<'_>],
    widths: &[u32],
    progress: &(dyn Fn(usize) + Sync),
) -> Vec<Result<Renditions, PictureError>> {
    let work = Work { cache, widths, limits: PictureLimits::default(), gate: Gate::new(BUDGET) };
    let done = Mutex::new(0);
    let each = |source: &Source<'_>| {
        let outcome = work.one(source);
        let mut done = done.lock().unwrap_or_else(PoisonError::into_inner);
        *done += 1;
        progress(*done);
        outcome
    };
    let threads = std::thread::available_parallelism().map_or(1, |n| n.get()).min(AT_ONCE);
    match rayon::ThreadPoolBuilder::new().num_threads(threads).build() {
        Ok(pool) => pool.install(|| sources.par_iter().with_max_len(1).map(each).collect()),
        Err(_) => sources.iter().map(each).collect(),
    }
}

/// What every photo's work shares.
struct Work<'a> {
    cache: &'a Cache,
    widths: &'a [u32],
    limits: PictureLimits,
    gate: Gate,
}

impl Work<'_> {
    fn one(&self, source: &Source<'_>) -> Result<Renditions, PictureError> {
        let bytes = (source.open)().map_err(|fault| PictureError::Io { detail: fault.to_string() })?;
        self.limits.check_file(bytes.len() as u64)?;
        let photo = Digest::of(&bytes);
        let key = entry::key(&photo, self.widths);
        if let Some(renditions) = entry::load(self.cache, photo, &key) {
            return Ok(renditions);
        }
        let rendered = self.rendered(bytes)?;
        entry::store(self.cache, photo, &key, rendered)
            .map_err(|fault| PictureError::Cache { detail: fault.to_string() })
    }

    fn rendered(&self, bytes: Vec<u8>) -> Result<Rendered, PictureError> {
        let facts = inspect_within(&bytes, &self.limits)?;
        let need = working_bytes(&bytes, &facts) + bytes.len() as u64 + BESIDE;
        let _share = self.gate.enter(need);
        // A decoder that panics on hostile bytes costs its photo, not the book.
        catch_unwind(AssertUnwindSafe(|| render(&bytes, &facts, self.widths, &self.limits))).unwrap_or_else(|_| {
            let detail = "its decoder gave up".into();
            Err(PictureError::Damaged { format: facts.format, detail })
        })
    }
}

#[cfg(test)]
mod tests {
    use bookmatch_pictures::Encoded;

    use super::*;

    #[test]
    fn a_photo_that_the_cache_holds_is_not_decoded_and_under_other_widths_it_is() {
        let (cache, bytes) = (Cache::temporary().unwrap(), b"no decoder reads this".to_vec());
        let photo = Digest::of(&bytes);
        let file = Encoded { width: 2, height: 1, bytes: b"a rendition".to_vec() };
        let (average, unread_profile) = ([1, 2, 3], false);
        let rendered = Rendered { width: 4, height: 2, average, unread_profile, files: vec![file] };
        let kept = entry::store(&cache, photo, &entry::key(&photo, &[2]), rendered).unwrap();
        let source = [Source::new("any", || Ok(bytes.clone()))];
        assert_eq!(prepare(&cache, &source, &[2], &|_| ()), [Ok(kept)]);
        let text = PictureError::NotAPicture { seems: "text" };
        assert_eq!(prepare(&cache, &source, &[1], &|_| ()), [Err(text)]);
    }
}
