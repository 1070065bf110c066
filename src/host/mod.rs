//! Serves what was published for client and installer of one book or of several, and takes in what they answer.
//!
//! Made to stand behind a proxy that speaks TLS: it listens on a loopback address unless told otherwise,
//! and speaks plain HTTP/1.1. Nothing is looked up on the disk by what a request names: paths are found
//! in a map or not at all. Only `POST /responses` changes anything, and all that it does is hand the bytes
//! to the function that records them. Each book has its own path, limits and turn to be recorded: whatever happens
//! to one, the others are served.

mod limits;
mod log;
mod site;

mod answer;
mod guard;
mod proxy;

mod mount;

mod door;
mod router;
mod serve;

#[cfg(test)]
mod tests;

use std::fmt;
use std::io;
use std::net::{IpAddr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;

pub use answer::{Answer, NotTaken, TakenIn};
pub use limits::{HostLimits, Pace};
pub use mount::{HostedBook, ReadSite};
pub use proxy::{Network, NoNetwork, Proxies, ProxyHeader};
pub use router::{Hosted, router};
pub use serve::run;
pub use site::ServedSite;

/// Takes in the bytes of a response; called on a thread that may wait for the disk.
pub type TakeIn = Arc<dyn Fn(&[u8]) -> TakenIn + Send + Sync>;

/// Hears of what happened, for the log: where the book of it is served, and what it was.
pub type Tell = Arc<dyn Fn(&str, &Event) + Send + Sync>;

/// What the log is told: never a key, a note, a body, nor a path that is not one of the site's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// The pages can be opened at this address.
    Serving(SocketAddr),
    /// Nothing newer is served than before, and why.
    NotServed(String),
    /// A response came in: from where, the status that was answered, and why it is not recorded.
    Response(IpAddr, u16, Option<String>),
    /// A request was refused or failed: from where, and the status that was answered.
    Refused(IpAddr, u16),
    /// No more connections are taken for now.
    Full,
    /// No more connections are taken from there for now.
    Crowded(IpAddr),
    /// So much is refused to an address, or to all, that it is counted from here on.
    Flood(Option<IpAddr>),
    /// A flood has ended: whose, and how many more it was.
    FloodEnded(Option<IpAddr>, u64),
    /// The server ends once what is being recorded is recorded.
    Stopping,
}

impl Event {
    /// Whom something was refused, if this tells of that: an address, or all.
    fn refused(&self) -> Option<Option<IpAddr>> {
        match *self {
            Self::Refused(from, _) | Self::Crowded(from) => Some(Some(from)),
            Self::Response(from, status, _) if status >= 400 => Some(Some(from)),
            Self::Full => Some(None),
            _ => None,
        }
    }
}

/// Why there is no server, or no longer one.
#[derive(Debug)]
pub enum HostError {
    /// The book's record does not allow it: why, and what to do.
    Record(String, String),
    /// The folder is no published one.
    NotPublished(PathBuf),
    /// A published file can't be read.
    Unreadable(PathBuf, io::Error),
    /// What stands there is not one publication as it was written: the first file that is another.
    Mixed(PathBuf),
    /// The address can't be listened on.
    Listen(SocketAddr, io::Error),
    /// The server ended on its own.
    Serve(io::Error),
}

impl HostError {
    /// What can be done about it.
    pub fn remedy(&self) -> &str {
        match self {
            Self::Record(_, remedy) => remedy,
            Self::NotPublished(_) => "publish the book there, or name the folder with `--site`",
            Self::Mixed(_) => "publish the book again: nothing is served that is partly of another publication",
            Self::Unreadable(..) => "see that it may be read, or publish again",
            Self::Listen(..) => "choose another address, or end the program that has it",
            Self::Serve(_) => "start it again",
        }
    }
}

impl fmt::Display for HostError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Record(why, _) => f.write_str(why),
            Self::NotPublished(folder) => write!(f, "`{}` holds no pages for a client", folder.display()),
            Self::Mixed(path) => write!(f, "`{}` is not as it was published", path.display()),
            Self::Unreadable(path, error) => write!(f, "`{}` can't be read: {error}", path.display()),
            Self::Listen(address, error) => write!(f, "`{address}` can't be listened on: {error}"),
            Self::Serve(error) => write!(f, "the server ended: {error}"),
        }
    }
}

impl std::error::Error for HostError {}
