//! What takes long is made behind everything else: begun when the folder rests, left when somebody saves.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::Sender;
use std::thread;

use super::watch::Signal;

/// Work that takes long. Once the flag is raised it begins nothing further and ends soon; whatever it
/// made is there for the next build.
pub type Later = Box<dyn FnOnce(&AtomicBool) + Send>;

/// The work that waits, and the work that goes on: one at a time.
pub(super) struct Behind {
    signals: Sender<Signal>,
    waiting: Option<Later>,
    at_work: Option<Arc<AtomicBool>>,
}

/// Tells of the end, also when the work came to a sudden one.
struct Tell(Sender<Signal>);

impl Drop for Tell {
    fn drop(&mut self) {
        // Nobody listens any more once the preview ends.
        let _ = self.0.send(Signal::Made);
    }
}

impl Behind {
    /// Nothing waits yet; ends are told as [`Signal::Made`].
    pub(super) fn new(signals: Sender<Signal>) -> Self {
        Self { signals, waiting: None, at_work: None }
    }

    /// What a build left to be made, in place of what waited before.
    pub(super) fn wait(&mut self, later: Option<Later>) {
        self.waiting = later;
    }

    /// The folder rests: begins what waits, unless something is still at work.
    pub(super) fn rest(&mut self) {
        if self.at_work.is_some() {
            return;
        }
        let Some(later) = self.waiting.take() else { return };
        let left = Arc::new(AtomicBool::new(false));
        self.at_work = Some(Arc::clone(&left));
        let tell = Tell(self.signals.clone());
        thread::spawn(move || {
            let _tell = tell;
            later(&left);
        });
    }

    /// Somebody saved: what is at work is left.
    pub(super) fn leave(&self) {
        if let Some(left) = &self.at_work {
            left.store(true, Ordering::SeqCst);
        }
    }

    /// The work ended; true when it was not left before its end, so that there is something to show.
    pub(super) fn ended(&mut self) -> bool {
        self.at_work.take().is_some_and(|left| !left.load(Ordering::SeqCst))
    }
}

impl Drop for Behind {
    fn drop(&mut self) {
        self.leave();
    }
}
