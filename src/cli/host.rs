//! `host`: serves what was published for client and installer, and takes in what they answer.

use std::net::{IpAddr, SocketAddr, TcpListener};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError, RwLock};

use crate::host::{Answer, Event, HostError, HostLimits, Hosted, ServedSite, TakeIn, run};
use crate::read::read;
use crate::record::{Receiver, Refusal, said};
use crate::serving::Stop;
use crate::source::{Folder, FolderState};
use crate::units::Fault;

use super::book_folder::BookFolder;
use super::invite::tell_open_keys;
use super::receive::{receiver, receiver_of};
use super::report::say;
use super::stated::published_over_another;
use super::{CLEAN, Failure, clock};

/// Serves what was published, and takes in responses
///
/// Listens on this machine alone, in plain HTTP: to be reached from elsewhere it is meant to stand behind
/// a proxy that speaks TLS and passes requests on (with `--behind-proxy`). The office's pages are never
/// served. Only `POST /responses` changes anything: it records, as `receive` does. Ctrl-C ends it once
/// what is being recorded is recorded.
#[derive(clap::Args)]
pub struct Host {
    #[command(flatten)]
    book: BookFolder,
    /// The folder that the book was published to
    #[arg(long, value_name = "DIR", default_value = "site")]
    site: PathBuf,
    /// Where to listen; an address of a network opens it to that network, without encryption
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:8420")]
    address: SocketAddr,
    /// A proxy passes requests on, and says in `X-Forwarded-For` where they come from
    #[arg(long)]
    behind_proxy: bool,
}

impl Host {
    /// Runs the command until Ctrl-C.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let post = read(&folder)?.book.project.responses.post.get().cloned();
        let receiver = receiver(&folder)?;
        {
            let open = receiver.store().open()?;
            if open.chain().opening().is_none() {
                return Err("nothing of this book was issued; issue it first".into());
            }
            if let Some(fault) = published_over_another(&self.site, &open.chain().lines) {
                return Err(format!("{fault}; {}", fault.remedy()).into());
            }
        }
        tell_open_keys(&folder);
        let site = ServedSite::read(&self.site).map_err(|error| worded(&error))?;
        let listener =
            TcpListener::bind(self.address).map_err(|error| worded(&HostError::Listen(self.address, error)))?;
        if !self.address.ip().is_loopback() {
            say("open to other machines, without encryption: put a proxy that speaks TLS before it");
        }
        let stop = Stop::default();
        let ended = stop.clone();
        ctrlc::set_handler(move || ended.now())?;
        let hosted = Hosted {
            site: RwLock::new(Arc::new(site)),
            take_in: take_in(Following::new(folder, receiver)),
            tell: Arc::new(tell),
            limits: HostLimits::default(),
            behind_proxy: self.behind_proxy,
            post,
        };
        run(listener, hosted, Some(self.site.clone()), &stop).map_err(|error| worded(&error))?;
        Ok(CLEAN)
    }
}

/// Who may decide, and what may be measured, as the book says it now: whoever was named after the server
/// was started may answer too.
struct Following {
    book: Option<PathBuf>,
    known: Mutex<(FolderState, Arc<Receiver>)>,
}

impl Following {
    fn new(folder: Folder, receiver: Receiver) -> Self {
        let book = folder.root().map(PathBuf::from);
        Self { book, known: Mutex::new((folder.stamp(), Arc::new(receiver))) }
    }

    /// What takes a response in. A book that can't be read just now is taken as it was last.
    fn receiver(&self) -> Arc<Receiver> {
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        let Some(folder) = self.book.as_deref().and_then(|book| Folder::open(book).ok()) else {
            return Arc::clone(&known.1);
        };
        let stamp = folder.stamp();
        if stamp != known.0 {
            known.0 = stamp;
            if let Some(receiver) = receiver_of(&folder) {
                known.1 = Arc::new(receiver);
            }
        }
        Arc::clone(&known.1)
    }
}

/// Takes responses in as `receive` does; strangers hear less than the log does.
fn take_in(following: Following) -> TakeIn {
    Arc::new(move |bytes| {
        let Ok(now) = clock::now() else {
            return Answer::Failed;
        };
        let receiver = following.receiver();
        match receiver.take_in(bytes, now) {
            Ok(outcome) => {
                let why: Vec<String> = outcome.refused().iter().map(said).collect();
                let not_taken = outcome.refused().iter().map(|one| format!("{}/{}", one.room, one.item)).collect();
                let newest = receiver.newest_issue();
                Answer::Recorded { outcome: outcome.words(), why: why.join("; "), not_taken, newest }
            }
            // It names this book and one of its issues, both of which stand on the pages: no stranger learns more.
            Err(Refusal::NothingHolds(_)) => Answer::Outdated { newest: receiver.newest_issue() },
            // Told once all else was in order: whoever is told has what is on the pages.
            Err(Refusal::Full(_)) => Answer::Full,
            Err(refusal) if refusal.may_be_repeated() => {
                say(&format!("a response could not be kept: {refusal}"));
                Answer::Failed
            }
            Err(_) => Answer::Refused,
        }
    })
}

fn tell(event: &Event) {
    let at = clock::now().map(|now| now.to_string()).unwrap_or_default();
    match event {
        Event::Serving(address) => say(&format!("serving at http://{address}/client/ (Ctrl-C ends it)")),
        Event::Response(from, status) => say(&format!("{at} {from} response {status}")),
        Event::Refused(from, status) => say(&format!("{at} {from} refused {status}")),
        Event::Full => say(&format!("{at} too many connections; one was let go")),
        Event::Crowded(from) => say(&format!("{at} {from} too many connections; one was let go")),
        Event::Flood(from) => say(&format!("{at} {} more of it is counted and told when it ends", whose(*from))),
        Event::FloodEnded(from, more) => say(&format!("{at} {} has ended: {more} more were refused", whose(*from))),
        Event::Stopping => say("ending; what is being recorded is recorded first"),
    }
}

fn whose(from: Option<IpAddr>) -> String {
    from.map_or_else(|| "of all".into(), |from| from.to_string())
}

fn worded(error: &HostError) -> Failure {
    format!("{error}; {}", error.remedy()).into()
}
