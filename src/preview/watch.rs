//! Hears that something in the folder may have changed; [`super::seen`] finds out what.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender};
use std::time::{Duration, Instant};

use notify::{Config, Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher};

/// What the builder waits for.
#[derive(Debug)]
pub(super) enum Signal {
    /// These paths may have changed; none means that any may have.
    Dirty(Vec<PathBuf>),
    /// What was made behind everything else has ended.
    Made,
    /// The preview ends.
    Stop,
}

/// Which paths may have changed.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Dirty {
    pub(super) paths: BTreeSet<PathBuf>,
    /// The system lost count: look at everything.
    pub(super) all: bool,
    /// What was made behind everything else has ended.
    pub(super) made: bool,
}

impl Dirty {
    /// Nothing was heard at all.
    pub(super) fn is_quiet(&self) -> bool {
        *self == Self::default()
    }
}

/// An editor's save is several events; this long without another and it is over.
const QUIET: Duration = Duration::from_millis(10);

/// However busy the folder, a build starts after this long.
const PATIENCE: Duration = Duration::from_millis(100);

/// Starts to watch a folder; it ends when the watcher is dropped.
pub(super) fn start(folder: &Path, signals: Sender<Signal>) -> Result<RecommendedWatcher, notify::Error> {
    let config = Config::default().with_follow_symlinks(false);
    let hear = move |event: Result<Event, notify::Error>| {
        if let Some(signal) = signal(event) {
            // Nobody listens any more once the preview ends.
            let _ = signals.send(signal);
        }
    };
    let mut watcher = RecommendedWatcher::new(hear, config)?;
    watcher.watch(folder, RecursiveMode::Recursive)?;
    Ok(watcher)
}

/// A read is an event too, and building reads everything: without this a build wakes the next.
fn signal(event: Result<Event, notify::Error>) -> Option<Signal> {
    match event {
        Ok(event) if event.need_rescan() => Some(Signal::Dirty(Vec::new())),
        Ok(event) if matches!(event.kind, EventKind::Access(_)) => None,
        Ok(event) => Some(Signal::Dirty(event.paths)),
        Err(_) => Some(Signal::Dirty(Vec::new())),
    }
}

/// Waits for a change, at most for `patience`, and gathers what comes with it; nothing when the preview ends.
pub(super) fn next(heard: &Receiver<Signal>, patience: Duration) -> Option<Dirty> {
    let mut dirty = Dirty::default();
    let first = heard.recv_timeout(patience);
    let mut signal = match first {
        Err(RecvTimeoutError::Timeout) => return Some(dirty),
        first => first.ok()?,
    };
    #[expect(clippy::disallowed_methods, reason = "a preview waits, it does not date")]
    let began = Instant::now();
    loop {
        match signal {
            Signal::Stop => return None,
            Signal::Made => dirty.made = true,
            Signal::Dirty(paths) if paths.is_empty() => dirty.all = true,
            Signal::Dirty(paths) => dirty.paths.extend(paths),
        }
        if began.elapsed() >= PATIENCE {
            return Some(dirty);
        }
        match heard.recv_timeout(QUIET) {
            Ok(next) => signal = next,
            Err(_) => return Some(dirty),
        }
    }
}

#[cfg(test)]
mod tests {
    use std::sync::mpsc::channel;

    use notify::event::{AccessKind, CreateKind, Flag, ModifyKind};

    use super::*;

    /// Longer than any test.
    const LONG: Duration = Duration::from_secs(3_600);

    #[test]
    fn a_read_is_no_change_and_any_other_event_may_be_one() {
        let event = |kind| Ok(Event::new(kind).add_path("room.yaml".into()));
        assert!(signal(event(EventKind::Access(AccessKind::Any))).is_none());
        for kind in
            [EventKind::Create(CreateKind::File), EventKind::Modify(ModifyKind::Any), EventKind::Any, EventKind::Other]
        {
            let heard = signal(event(kind));
            assert!(matches!(heard, Some(Signal::Dirty(paths)) if paths.len() == 1), "{kind:?}");
        }
    }

    #[test]
    fn when_the_system_lost_count_everything_is_looked_at() {
        let lost = Event::new(EventKind::Other).set_flag(Flag::Rescan);
        let (signals, heard) = channel();
        signals.send(signal(Ok(lost)).unwrap()).unwrap();
        assert!(next(&heard, LONG).unwrap().all);
    }

    #[test]
    fn the_events_of_one_save_are_one_change() {
        let (signals, heard) = channel();
        for path in ["a", "b", "a"] {
            signals.send(Signal::Dirty(vec![path.into()])).unwrap();
        }
        let dirty = next(&heard, LONG).unwrap();
        assert_eq!(dirty.paths, BTreeSet::from(["a".into(), "b".into()]));
        signals.send(Signal::Stop).unwrap();
        assert_eq!(next(&heard, LONG), None);
    }

    #[test]
    fn whoever_does_not_wait_for_ever_hears_of_no_change() {
        let (signals, heard) = channel();
        assert_eq!(next(&heard, Duration::ZERO), Some(Dirty::default()));
        signals.send(Signal::Dirty(vec!["a".into()])).unwrap();
        assert_eq!(next(&heard, Duration::ZERO).unwrap().paths, BTreeSet::from(["a".into()]));
        drop(signals);
        assert_eq!(next(&heard, Duration::ZERO), None);
    }

    #[test]
    fn a_folder_that_never_rests_is_built_all_the_same() {
        // Each signal waits until it is heard.
        let (signals, heard) = std::sync::mpsc::sync_channel(0);
        let restless = std::thread::spawn(move || while signals.send(Signal::Dirty(vec!["log".into()])).is_ok() {});
        // Would wait for ever if it waited for quiet.
        assert!(next(&heard, LONG).is_some());
        drop(heard);
        restless.join().unwrap();
    }
}
