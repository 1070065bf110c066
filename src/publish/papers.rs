//! The sheets to sign: taken as they were set when nothing on them has changed, else handed to the press.

use std::collections::BTreeMap;

use rayon::prelude::*;

use crate::pictures::{Cache, Digest, Rendition, Renditions};
use crate::theme::Group;
use crate::views::paper::sign_off::SignOff;

use super::output::{Content, Spool};
use super::press::{Job, SetSheet, SheetLook, SheetToSet, Shelf};
use super::{File, PublishError, Setting};

/// Sheets as they were set last, by path, and those that the press has put out since.
#[derive(Debug, Default)]
pub struct PaperCache {
    papers: BTreeMap<String, CachedSheet>,
    shelf: Shelf,
}

/// A sheet, and the digest of all that stands on it.
#[derive(Debug, Clone)]
struct CachedSheet {
    from: Digest,
    content: Content,
}

/// Every sheet that there is.
#[derive(Default)]
pub struct Papers {
    pub files: Vec<File>,
    /// Some are to be set, or set anew; those that were set before stand among the files as they were.
    pub waiting: Option<Job>,
}

/// What sheets are made of.
pub struct Papering<'a> {
    pub pictures: &'a BTreeMap<String, Renditions>,
    pub cache: &'a Cache,
    pub spool: &'a Spool,
    pub setting: Setting<'a>,
    pub look: SheetLook,
}

/// How a sheet stands.
enum SheetState {
    /// It was set, and says what it should.
    Ready(CachedSheet),
    /// It is to be set; what it was before may stand meanwhile.
    Wanted(Option<CachedSheet>, Box<SheetToSet>),
}

impl Papering<'_> {
    /// Every sheet, with its path. Where they may come later, none is set now.
    ///
    /// # Errors
    /// When a sheet can't be set, or the work was interrupted before the last was set.
    pub fn take(&self, papers: Vec<(String, SignOff)>, kept: &mut PaperCache) -> Result<Papers, PublishError> {
        if !cfg!(feature = "sheets") {
            return Ok(Papers::default());
        }
        let (before, made) = (std::mem::take(&mut kept.papers), kept.shelf.emptied());
        let stand = |(path, view): (String, SignOff)| {
            let stands = self.stands(&path, view, before.get(&path), made.get(&path))?;
            Ok((path, stands))
        };
        let stand: Vec<Result<(String, SheetState), PublishError>> = papers.into_par_iter().map(stand).collect();
        let (mut orders, mut taken) = (vec![], Papers::default());
        for one in stand {
            let (path, stands) = one?;
            let paper = match stands {
                SheetState::Ready(paper) => Some(paper),
                SheetState::Wanted(paper, order) => {
                    orders.push(*order);
                    paper
                }
            };
            if let Some(paper) = paper {
                taken.files.push((path.clone(), paper.content.clone()));
                kept.papers.insert(path, paper);
            }
        }
        let job = Job::new(orders, self.look.clone(), self.cache.clone(), self.spool.clone(), kept.shelf.clone());
        if self.setting.later || job.is_empty() {
            taken.waiting = Some(job).filter(|job| !job.is_empty());
            return Ok(taken);
        }
        job.run_at_once(self.setting.interrupt)?;
        self.collect(kept, taken.files)
    }

    /// The sheets that were ready, and those that the press put out just now.
    fn collect(&self, kept: &mut PaperCache, ready: Vec<File>) -> Result<Papers, PublishError> {
        let mut files: BTreeMap<String, Content> = ready.into_iter().collect();
        for (path, SetSheet { from, content }) in kept.shelf.emptied() {
            let content = content.map_err(|why| PublishError::Sheet(path.clone(), why))?;
            files.insert(path.clone(), content.clone());
            kept.papers.insert(path, CachedSheet { from, content });
        }
        Ok(Papers { files: files.into_iter().collect(), waiting: None })
    }

    fn stands(
        &self,
        path: &str,
        view: SignOff,
        before: Option<&CachedSheet>,
        made: Option<&SetSheet>,
    ) -> Result<SheetState, PublishError> {
        let fail = |why: String| PublishError::Sheet(path.to_string(), why);
        let words = serde_json::to_vec(&view).map_err(|error| fail(error.to_string()))?;
        let shown = view.pictures().filter_map(|picture| Some((picture.key.clone(), self.rendition(&picture.key)?)));
        let shown: Vec<(String, &Rendition)> = shown.collect();
        let digests: Vec<String> = shown.iter().map(|(_, rendition)| rendition.digest.to_string()).collect();
        let digests = digests.join(" ");
        let mut parts = vec![super::press::SETTING.as_bytes(), &words, digests.as_bytes()];
        let own = [self.look.theme.digest(&[Group::Sheets]), self.look.says(&view.language)];
        parts.extend(own.iter().flatten().map(|digest| digest.as_bytes().as_slice()));
        let from = Digest::of_parts(&parts);
        if let Some(paper) = before.filter(|paper| paper.from == from) {
            return Ok(SheetState::Ready(paper.clone()));
        }
        if let Some(SetSheet { content, .. }) = made.filter(|made| made.from == from) {
            let content = content.clone().map_err(fail)?;
            return Ok(SheetState::Ready(CachedSheet { from, content }));
        }
        if let Some(bytes) = self.cache.get("sheet", &from) {
            return Ok(SheetState::Ready(CachedSheet { from, content: self.spool.lay(bytes) }));
        }
        let pictures = shown.into_iter().map(|(key, rendition)| (key, rendition.clone())).collect();
        let order = SheetToSet { path: path.to_owned(), from, view, pictures };
        Ok(SheetState::Wanted(before.cloned(), Box::new(order)))
    }

    /// The smallest rendition that is wide enough for paper.
    fn rendition(&self, key: &str) -> Option<&Rendition> {
        /// 38 mm at 300 dots an inch, in pixels.
        const WIDE_ENOUGH: u32 = 450;

        let made = self.pictures.get(key)?;
        let enough = made.files.iter().filter(|file| file.width >= WIDE_ENOUGH).min_by_key(|file| file.width);
        enough.or_else(|| made.files.iter().max_by_key(|file| file.width))
    }
}
