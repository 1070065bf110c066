//! Sets sheets as PDF: work of its own, which can go on beside everything else and be left at any sheet.

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{RecvTimeoutError, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::Duration;

use rayon::prelude::*;

use crate::language::{Language, Tongues, Words};
use crate::pictures::{Cache, Digest, Rendition};
use crate::theme::ThemeFiles;
use crate::views::paper::sign_off::SignOff;

use super::PublishError;
use super::output::{Content, Spool};

/// Raised when the same view would be set otherwise.
pub const SETTING: &str = concat!("sheets 9 ", env!("CARGO_PKG_VERSION"));

/// The most items of the sheets that are set at the same time; a larger sheet is set alone.
const AT_ONCE: usize = 40;

/// How soon a wish to stop is heard.
const ATTENTION: Duration = Duration::from_millis(20);

/// What sheets look like, and the languages that they may be in.
#[derive(Clone, Debug, Default)]
pub struct SheetLook {
    /// The theme.
    pub theme: ThemeFiles,
    /// The languages of the book.
    pub tongues: Tongues,
}

/// The groups of words that sheets of paper say.
pub const ON_SHEETS: [&str; 2] = ["on_paper", "state"];

impl SheetLook {
    /// The words of a language.
    pub fn words(&self, tag: &str) -> Words {
        self.tongues.named(tag).unwrap_or_else(|| self.tongues.usual()).words()
    }

    /// By what a sheet says otherwise in the words of the theme; none where it says the same.
    pub fn says(&self, tag: &str) -> Option<Digest> {
        let said = |words: Words| ON_SHEETS.map(|group| words.tree().get(group));
        let own = said(self.words(tag));
        let same = Language::named(tag).is_some_and(|standard| said(standard.words()) == own);
        (!same).then(|| Digest::of(&serde_json::to_vec(&own).unwrap_or_default()))
    }
}

/// A sheet to set.
#[derive(Debug)]
pub struct SheetToSet {
    pub path: String,
    /// Of all that stands on it.
    pub from: Digest,
    pub view: SignOff,
    /// The file of each picture on it.
    #[cfg_attr(not(feature = "sheets"), expect(dead_code, reason = "without the feature no sheet is set"))]
    pub pictures: BTreeMap<String, Rendition>,
}

/// A sheet that was set, or why it could not be.
#[derive(Debug)]
pub struct SetSheet {
    pub from: Digest,
    pub content: Result<Content, String>,
}

/// Where the press puts what it has set.
#[derive(Debug, Clone, Default)]
pub struct Shelf(Arc<Mutex<BTreeMap<String, SetSheet>>>);

impl Shelf {
    /// Takes away all that lies there.
    pub fn emptied(&self) -> BTreeMap<String, SetSheet> {
        std::mem::take(&mut self.0.lock().unwrap_or_else(PoisonError::into_inner))
    }

    fn put(&self, path: String, made: SetSheet) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).insert(path, made);
    }
}

/// Sheets to set, in the order in which they are asked for.
#[derive(Debug)]
pub struct Job {
    orders: Vec<SheetToSet>,
    look: SheetLook,
    cache: Cache,
    spool: Spool,
    shelf: Shelf,
}

impl Job {
    pub(super) fn new(orders: Vec<SheetToSet>, look: SheetLook, cache: Cache, spool: Spool, shelf: Shelf) -> Self {
        Self { orders, look, cache, spool, shelf }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.orders.is_empty()
    }

    /// Sets the sheets, beside other work: on all processors but one. Once `stop` is raised no further one
    /// is begun; those that were set stay set.
    pub fn run(self, stop: &AtomicBool) {
        let threads = thread::available_parallelism().map_or(1, |n| n.get().saturating_sub(1)).max(1);
        // On threads of its own: whoever shares those of the program would have to wait for a sheet to end.
        match rayon::ThreadPoolBuilder::new().num_threads(threads).build() {
            Ok(pool) => pool.install(|| self.set_all(stop)),
            Err(_) => self.set_all(stop),
        }
    }

    /// Sets the sheets while this thread waits, and leaves them as soon as `interrupt` is raised, though one
    /// be half set: nothing of it was written anywhere.
    pub(super) fn run_at_once(self, interrupt: &AtomicBool) -> Result<(), PublishError> {
        let stop = Arc::new(AtomicBool::new(false));
        let (working, ended) = channel::<()>();
        let raised = Arc::clone(&stop);
        thread::spawn(move || {
            let _working = working;
            self.set_all(&raised);
        });
        loop {
            if interrupt.load(Ordering::SeqCst) {
                stop.store(true, Ordering::SeqCst);
                return Err(PublishError::Stopped);
            }
            if ended.recv_timeout(ATTENTION) != Err(RecvTimeoutError::Timeout) {
                return Ok(());
            }
        }
    }

    fn set_all(mut self, stop: &AtomicBool) {
        while !self.orders.is_empty() && !stop.load(Ordering::SeqCst) {
            let rest = self.orders.split_off(batch(&self.orders));
            let now = std::mem::replace(&mut self.orders, rest);
            now.into_par_iter().for_each(|order| self.set(order, stop));
            forget();
        }
    }

    fn set(&self, order: SheetToSet, stop: &AtomicBool) {
        if stop.load(Ordering::SeqCst) {
            return;
        }
        let set = catch_unwind(AssertUnwindSafe(|| paper(&order, &self.look, &self.cache)));
        let bytes = set.unwrap_or_else(|_| Err("the engine that sets it gave up".into()));
        if let Ok(bytes) = &bytes {
            // A sheet that can't be kept is set again next time.
            let _ = self.cache.put("sheet", &order.from, bytes);
        }
        self.shelf.put(order.path, SetSheet { from: order.from, content: bytes.map(|bytes| self.spool.lay(bytes)) });
    }
}

/// How many of the orders, from the first on, are set at the same time.
fn batch(orders: &[SheetToSet]) -> usize {
    let mut items = 0;
    let fits = orders.iter().take_while(|order| {
        items += order.view.count();
        items <= AT_ONCE
    });
    fits.count().max(1)
}

#[cfg(feature = "sheets")]
fn paper(order: &SheetToSet, look: &SheetLook, cache: &Cache) -> Result<Vec<u8>, String> {
    let picture = |key: &str| cache.rendition(order.pictures.get(key)?);
    super::sheets::sign_off(&order.view, look, &picture).map_err(|error| error.to_string())
}

#[cfg(feature = "sheets")]
fn forget() {
    super::sheets::forget();
}

/// Without the feature there are no sheets, and nobody orders one.
#[cfg(not(feature = "sheets"))]
fn paper(_: &SheetToSet, _: &SheetLook, _: &Cache) -> Result<Vec<u8>, String> {
    Err("this program sets no sheets".into())
}

#[cfg(not(feature = "sheets"))]
fn forget() {}
