//! One book of those that are served: where it is, its pages, what of it is limited, and how it follows what is
//! published.

use std::path::{Path, PathBuf};
use std::sync::{Arc, PoisonError, RwLock};
use std::time::{Duration, SystemTime};

use axum::http::HeaderMap;
use tokio::sync::Semaphore;
use tokio::time::sleep;

use super::door::LargeBodies;
use super::limits::Buckets;
use super::log::Log;
use super::{Event, HostError, HostLimits, ServedSite, TakeIn, Tell, guard};

/// How often it is looked whether the book was published again.
const LOOK: Duration = Duration::from_secs(5);

/// Reads the pages that may be served now.
pub type ReadSite = Arc<dyn Fn() -> Result<ServedSite, HostError> + Send + Sync>;

/// A book that is served.
pub struct HostedBook {
    /// The path that it is served under, such as `elm-row`; empty where there is no other book.
    pub path: String,
    /// The files; they can be replaced as one. None while there is nothing that may be served.
    pub site: RwLock<Arc<ServedSite>>,
    /// Reads them anew.
    pub read: Option<ReadSite>,
    /// What changes when that may come to something else: the list of what was published, and, while nothing is
    /// served, the ledger.
    pub watched: [PathBuf; 2],
    /// Takes a response in.
    pub take_in: TakeIn,
    /// The address that the pages send responses to, where they do not state it themselves.
    pub post: Option<String>,
}

/// A book at work.
pub(super) struct Mount {
    pub(super) book: HostedBook,
    pub(super) log: Log,
    pub(super) reading: Buckets,
    pub(super) sending: Buckets,
    /// Held while a response is recorded: one at a time, as the ledger has it.
    pub(super) recording: Arc<Semaphore>,
    /// Where responses with photographs are taken in.
    pub(super) large: LargeBodies,
    /// Held by each response that waits.
    pub(super) waiting: Semaphore,
}

impl Mount {
    pub(super) fn new(book: HostedBook, limits: HostLimits, tell: &Tell) -> Self {
        Self {
            log: Log::new(Arc::clone(tell), &book.path, limits.quiet),
            reading: Buckets::new(limits.reading, None),
            sending: Buckets::new(limits.sending, Some(limits.sending_in_all)),
            recording: Arc::new(Semaphore::new(1)),
            large: LargeBodies::new(limits),
            waiting: Semaphore::new(limits.waiting),
            book,
        }
    }

    /// What every answer carries: pages may send to the address that they were published with.
    pub(super) fn headers(&self) -> HeaderMap {
        let site = self.site();
        guard::headers(site.post().unwrap_or(self.book.post.as_deref()))
    }

    pub(super) fn site(&self) -> Arc<ServedSite> {
        Arc::clone(&self.book.site.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Serves the pages anew each time that the book is published again, and as soon as they may be served. What
    /// can't be is told once, and what was served before is served on.
    pub(super) async fn follow(self: Arc<Self>, tell: Tell) {
        let Some(read) = self.book.read.clone() else { return };
        let (mut seen, mut told) = (self.stamps(), None);
        loop {
            sleep(LOOK).await;
            let now = self.stamps();
            if now == seen {
                continue;
            }
            let read = Arc::clone(&read);
            // It waits for the disk on a thread of its own: other books are not held up.
            match tokio::task::spawn_blocking(move || read()).await {
                Ok(Ok(site)) => {
                    *self.book.site.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(site);
                    (seen, told) = (self.stamps_if(now), None);
                }
                // While it is being published a file may be gone: the next look reads it whole.
                Ok(Err(error)) => {
                    let why = Some(format!("{error}; {}", error.remedy()));
                    if let Some(why) = why.clone().filter(|_| why != told) {
                        tell(&self.book.path, &Event::NotServed(why));
                    }
                    told = why;
                }
                Err(_) => {}
            }
        }
    }

    fn stamps(&self) -> [Option<Stamp>; 2] {
        let [published, ledger] = &self.book.watched;
        [stamp(published), if self.site().is_empty() { stamp(ledger) } else { None }]
    }

    /// The stamps that were read before what is served now, as they are looked at from now on.
    fn stamps_if(&self, before: [Option<Stamp>; 2]) -> [Option<Stamp>; 2] {
        let [published, ledger] = before;
        [published, if self.site().is_empty() { ledger } else { None }]
    }
}

/// Changes whenever a file is written: the list of what was published is written last.
type Stamp = (SystemTime, u64);

fn stamp(path: &Path) -> Option<Stamp> {
    let facts = std::fs::metadata(path).ok()?;
    Some((facts.modified().ok()?, facts.len()))
}
