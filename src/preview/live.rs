//! What the pages show now, swapped as one when a build ends.

use std::collections::BTreeSet;
use std::hash::{BuildHasher, RandomState};
use std::sync::{Arc, PoisonError, RwLock};

use tokio::sync::broadcast::{Receiver, Sender, channel};

use super::{Built, FindingLine, page};
use crate::publish::output::Output;

/// What is shown, and who hears when that changes.
pub(super) struct Live {
    shown: RwLock<Arc<Shown>>,
    notices: Sender<Notice>,
}

/// One state of the preview; never changed, only replaced.
#[derive(Debug, Default)]
pub(super) struct Shown {
    /// The last good draft; nothing before the first.
    pub(super) output: Option<Output>,
    /// What the last build found.
    pub(super) findings: Vec<FindingLine>,
    /// The last build broke: `output` is an earlier one.
    pub(super) broken: bool,
    /// Names this state, among those of earlier previews too.
    pub(super) mark: String,
}

/// What open pages hear.
#[derive(Debug, Clone)]
pub(super) enum Notice {
    /// A build ended: the state's mark, and the message for the pages.
    Built { mark: String, message: String },
    /// The preview ends.
    End,
}

impl Default for Live {
    fn default() -> Self {
        // Pages left open by an earlier preview must not take this one's state for theirs.
        let run = RandomState::new().hash_one(0u8);
        let shown = Shown { mark: format!("{run:016x}-0"), ..Shown::default() };
        Self { shown: RwLock::new(Arc::new(shown)), notices: channel(16).0 }
    }
}

impl Live {
    /// What is shown now.
    pub(super) fn now(&self) -> Arc<Shown> {
        Arc::clone(&self.shown.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Notices from now on.
    pub(super) fn listen(&self) -> Receiver<Notice> {
        self.notices.subscribe()
    }

    /// Shows a build and tells the pages; gives the number of files that changed.
    pub(super) fn show(&self, built: Built) -> usize {
        let old = self.now();
        let (changed, output) = if built.broken {
            (BTreeSet::new(), old.output.clone())
        } else {
            (changed(old.output.as_ref(), &built.output), Some(built.output))
        };
        let new = Shown { output, findings: built.findings, broken: built.broken, mark: next(&old.mark) };
        let notice = Notice::Built { mark: new.mark.clone(), message: page::message(Some(&changed), &new) };
        *self.shown.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(new);
        // No page is open: nobody hears it.
        let _ = self.notices.send(notice);
        changed.len()
    }

    /// Lets the pages go.
    pub(super) fn end(&self) {
        let _ = self.notices.send(Notice::End);
    }
}

fn next(mark: &str) -> String {
    let (run, number) = mark.rsplit_once('-').unwrap_or((mark, "0"));
    format!("{run}-{}", number.parse::<u64>().unwrap_or(0) + 1)
}

/// The paths of files that are new, changed or gone.
fn changed(old: Option<&Output>, new: &Output) -> BTreeSet<String> {
    let Some(old) = old else {
        return new.files().map(|(path, _)| path.to_owned()).collect();
    };
    let differ = new.files().filter(|(path, content)| old.get(path) != Some(content));
    let gone = old.files().filter(|(path, _)| new.get(path).is_none());
    differ.chain(gone).map(|(path, _)| path.to_owned()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::publish::output::Content;

    fn built(pages: &[(&str, &str)], broken: bool) -> Built {
        let mut output = Output::default();
        for (path, text) in pages {
            output.insert(*path, Content::Bytes(text.as_bytes().into())).unwrap();
        }
        Built { output, findings: Vec::new(), broken, waiting: None }
    }

    #[test]
    fn only_what_differs_counts_as_changed() {
        let live = Live::default();
        assert_eq!(live.show(built(&[("a", "1"), ("b", "1"), ("c", "1")], false)), 3);
        assert_eq!(live.show(built(&[("a", "1"), ("b", "2"), ("d", "1")], false)), 3);
        assert_eq!(live.show(built(&[("a", "1"), ("b", "2"), ("d", "1")], false)), 0);
    }

    #[test]
    fn a_broken_build_leaves_the_last_good_output() {
        let live = Live::default();
        live.show(built(&[], true));
        assert!(live.now().output.is_none() && live.now().broken);
        live.show(built(&[("a", "1")], false));
        assert_eq!(live.show(built(&[("z", "")], true)), 0);
        let shown = live.now();
        assert!(shown.broken && shown.output.as_ref().unwrap().get("a").is_some());
    }

    #[test]
    fn every_build_has_a_mark_of_its_own() {
        let (one, other) = (Live::default(), Live::default());
        let first = one.now().mark.clone();
        one.show(built(&[], false));
        assert_ne!(first, one.now().mark);
        assert_ne!(first, other.now().mark);
    }
}
