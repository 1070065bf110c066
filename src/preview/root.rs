//! The folder that is followed, by the path it was named by: laid anew at that path, it is followed anew.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::mpsc::Sender;
use std::time::SystemTime;

use notify::RecommendedWatcher;

use super::watch::{self, Dirty, Signal};

/// The folder, and the watch on it. A watch is on the folder itself, not on its path: when another folder
/// takes that place, nothing more would be heard.
pub(super) struct Root {
    named: PathBuf,
    signals: Sender<Signal>,
    /// The real path of what is watched.
    folder: PathBuf,
    watched: Option<Watched>,
}

struct Watched {
    which: Identity,
    _watcher: RecommendedWatcher,
}

/// What tells one folder from another at the same path.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Identity {
    folder: PathBuf,
    node: Option<(u64, u64)>,
    /// A new folder may get the number of one that is gone.
    born: Option<SystemTime>,
}

impl Root {
    /// Watches a folder; what happens in it is told to `signals`.
    ///
    /// # Errors
    /// When there is no such folder, or the system will not watch it.
    pub(super) fn new(named: &Path, signals: Sender<Signal>) -> Result<Self, notify::Error> {
        let which = Identity::of(named).map_err(notify::Error::io)?;
        let folder = which.folder.clone();
        let watched = Watched::new(which, &signals)?;
        Ok(Self { named: named.into(), signals, folder, watched: Some(watched) })
    }

    /// The folder's real path.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    /// True when another folder stands in the place now, which is watched from here on: any file may be
    /// another. The system's word that the folder itself changed is heard too.
    pub(super) fn renewed(&mut self, dirty: &Dirty) -> bool {
        if dirty.paths.contains(&self.folder) {
            self.watched = None;
        }
        let Ok(now) = Identity::of(&self.named) else {
            self.watched = None;
            return false;
        };
        if self.watched.as_ref().is_some_and(|watched| watched.which == now) {
            return false;
        }
        self.folder.clone_from(&now.folder);
        // One that can't be watched yet is tried again at the next look.
        self.watched = Watched::new(now, &self.signals).ok();
        self.watched.is_some()
    }
}

impl Watched {
    fn new(which: Identity, signals: &Sender<Signal>) -> Result<Self, notify::Error> {
        let watcher = watch::start(&which.folder, signals.clone())?;
        Ok(Self { which, _watcher: watcher })
    }
}

impl Identity {
    fn of(named: &Path) -> std::io::Result<Self> {
        let folder = named.canonicalize()?;
        let meta = fs::metadata(&folder)?;
        #[cfg(unix)]
        let node = {
            use std::os::unix::fs::MetadataExt;
            Some((meta.dev(), meta.ino()))
        };
        #[cfg(not(unix))]
        let node = None;
        Ok(Self { folder, node, born: meta.created().ok() })
    }
}
