//! A draft on a loopback address that follows the folder.
//!
//! One thread waits for changes, builds, and swaps what is shown; the server only reads what is
//! shown. A build that breaks changes the findings and nothing else: the last good page stays.

mod findings;

mod seen;
mod watch;

mod behind;
mod root;

mod live;
mod page;

mod host;
mod server;

use std::fmt;
use std::io;
use std::net::{SocketAddr, TcpListener};
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::thread;
use std::time::Duration;

pub use behind::Later;
pub use findings::{FindingLine, Run, Severity, plain};
pub use seen::Changes;

use crate::publish::output::Output;
use crate::serving::Stop;
use behind::Behind;
use live::Live;
use root::Root;
use seen::Seen;
use watch::Signal;

/// What to preview, and how.
pub struct Preview {
    /// The book's folder.
    pub folder: PathBuf,
    /// Where to serve it; a loopback address. Port 0 takes any that is free.
    pub address: SocketAddr,
    /// Builds the draft: all of it, what the changes touch, or without any what was made later.
    pub build: Box<dyn FnMut(&Changes) -> Built + Send>,
    /// Hears what happens, for the terminal.
    pub tell: Box<dyn FnMut(News<'_>) + Send>,
}

/// What a build gave.
pub struct Built {
    /// The draft; not looked at when the book is broken.
    pub output: Output,
    /// What the review found, the gravest first.
    pub findings: Vec<FindingLine>,
    /// The book cannot be read, or not be rendered: the last good pages stay.
    pub broken: bool,
    /// A part that takes long is not made yet: this makes it, beside everything else, once the folder rests.
    /// The next build then shows it, though nothing changes.
    pub waiting: Option<Later>,
}

/// What happens during a preview.
#[derive(Debug)]
pub enum News<'a> {
    /// The pages can be opened at this address.
    Serving(SocketAddr),
    /// A build ended.
    Built {
        /// What the review found.
        findings: &'a [FindingLine],
        /// The last good pages stay.
        broken: bool,
        /// How many files of the draft are new, changed or gone.
        changed: usize,
    },
}

/// Why a preview could not start, or ended.
#[derive(Debug)]
pub enum PreviewError {
    /// The address could be reached from other machines.
    NotLoopback(SocketAddr),
    /// The address cannot be listened on.
    Listen(SocketAddr, io::Error),
    /// The folder cannot be watched.
    Watch(PathBuf, notify::Error),
    /// The server ended on its own.
    Serve(io::Error),
    /// The build ended by a fault of the program.
    Build,
}

impl PreviewError {
    /// What the user can do about it.
    #[must_use]
    pub fn remedy(&self) -> &'static str {
        match self {
            Self::NotLoopback(_) => "use `127.0.0.1`: a draft with its costs is for this machine alone",
            Self::Listen(..) => "choose another port, or end the program that has it",
            Self::Watch(_, error) => match error.kind {
                notify::ErrorKind::MaxFilesWatch => {
                    "let the system watch more files (on Linux: `fs.inotify.max_user_watches`)"
                }
                _ => "see that the folder exists and may be read",
            },
            Self::Serve(_) => "start the preview again",
            Self::Build => "report this as a fault of bookmatch, with the lines above",
        }
    }
}

impl fmt::Display for PreviewError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotLoopback(address) => write!(f, "`{address}` is open to other machines"),
            Self::Listen(address, error) => {
                write!(f, "cannot listen on `{address}`: {}", error.kind())
            }
            Self::Watch(folder, error) => {
                write!(f, "cannot watch `{}`: {error}", folder.display())
            }
            Self::Serve(error) => write!(f, "the server ended: {}", error.kind()),
            Self::Build => f.write_str("the build came to a sudden end"),
        }
    }
}

impl std::error::Error for PreviewError {}

/// How long open pages are given to hear that the preview ends.
const FAREWELL: Duration = Duration::from_millis(500);

/// So long without a change, and what takes long is begun; as often the folder itself is looked for.
const REST: Duration = Duration::from_millis(1_000);

/// Serves and follows a book until it is told to stop.
///
/// # Errors
/// See [`PreviewError`]; a book that does not build is no error, its findings are shown.
pub fn run(mut preview: Preview, stop: &Stop) -> Result<(), PreviewError> {
    let address = preview.address;
    if !address.ip().is_loopback() {
        return Err(PreviewError::NotLoopback(address));
    }
    let listen = |error| PreviewError::Listen(address, error);
    let listener = TcpListener::bind(address).map_err(listen)?;
    listener.set_nonblocking(true).map_err(listen)?;
    let address = listener.local_addr().map_err(listen)?;
    let (signals, heard) = channel();
    // Watched before it is first read: what changes meanwhile is seen.
    let root = Root::new(&preview.folder, signals.clone())
        .map_err(|error| PreviewError::Watch(preview.folder.clone(), error))?;
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build()
        .map_err(PreviewError::Serve)?;
    let live = Arc::new(Live::default());
    (preview.tell)(News::Serving(address));
    let (working, ended) = channel::<()>();
    let builder = thread::spawn({
        let (live, last, behind) = (Arc::clone(&live), EndWith(stop.clone()), Behind::new(signals.clone()));
        move || {
            let _held = (working, last);
            follow(preview, root, behind, &heard, &live);
        }
    });
    let served = runtime.block_on(server::serve(listener, address, Arc::clone(&live), stop));
    let _ = signals.send(Signal::Stop);
    // A long build is not waited for: it changes nothing but the cache, which is safe at any time.
    let has_ended = ended.recv_timeout(FAREWELL) == Err(RecvTimeoutError::Disconnected);
    runtime.shutdown_timeout(FAREWELL);
    if has_ended && builder.join().is_err() {
        return Err(PreviewError::Build);
    }
    served.map_err(PreviewError::Serve)
}

/// Ends the preview when the builder ends, so that no page follows a folder that nobody builds.
struct EndWith(Stop);

impl Drop for EndWith {
    fn drop(&mut self) {
        self.0.now();
    }
}

/// Builds once, and again after each change or when what takes long is made, until told to stop.
fn follow(mut preview: Preview, mut root: Root, mut behind: Behind, heard: &Receiver<Signal>, live: &Live) {
    let mut seen = Seen::new(root.folder().into());
    let mut changes = seen.everything();
    loop {
        let mut built = (preview.build)(&changes);
        behind.wait(built.waiting.take());
        let (findings, broken) = (built.findings.clone(), built.broken);
        let changed = live.show(built);
        (preview.tell)(News::Built { findings: &findings, broken, changed });
        changes = loop {
            let Some(mut dirty) = watch::next(heard, REST) else {
                return;
            };
            if root.renewed(&dirty) {
                seen.moved(root.folder());
                dirty.all = true;
            }
            let made = dirty.made && behind.ended();
            if dirty.is_quiet() {
                behind.rest();
            }
            let changes = seen.compare(&dirty);
            if !changes.is_empty() {
                // Whoever saves waits for nothing but the pages.
                behind.leave();
                break changes;
            }
            if made {
                break changes;
            }
        };
    }
}

#[cfg(test)]
mod tests;
