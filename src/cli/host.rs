//! `host`: serves what was published for client and installer of one book or of several, and takes in what they
//! answer.

use std::net::{IpAddr, SocketAddr, TcpListener};
use std::path::PathBuf;
use std::sync::Arc;

use crate::host::{Event, HostError, HostLimits, Hosted, Network, Proxies, ProxyHeader, run};
use crate::record::MAX_HANDED;
use crate::serving::Stop;

use super::report::say;
use super::served::Served;
use super::{CLEAN, Failure, clock};

/// Serves what was published, and takes in responses
///
/// Listens on this machine alone, in plain HTTP: to be reached from elsewhere it is meant to stand behind
/// a proxy that speaks TLS and passes requests on (with `--behind-proxy`). The office's pages are never
/// served. Only `POST /responses` changes anything: it records, as `receive` does. Several books are each served
/// under a path of their own, such as `/elm-row/`, and follow what is published; what happens to one holds up no
/// other. Ctrl-C ends it once what is being recorded is recorded.
#[derive(clap::Args)]
pub struct Host {
    /// The folder that holds `book.yaml`; several are each served under the name of their folder, or under another:
    /// `NAME=FOLDER`
    #[arg(value_name = "BOOK", default_value = ".")]
    books: Vec<PathBuf>,
    /// The folder that the book was published to, once for each book, in their order; if left out, `site`: here for
    /// one book, in each book's folder for several
    #[arg(long, value_name = "DIR")]
    site: Vec<PathBuf>,
    /// Where to listen; an address of a network opens it to that network, without encryption
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:8420")]
    address: SocketAddr,
    /// A proxy of yours at this address, or in this network (`10.1.0.0/16`), passes requests on, and says where they
    /// come from; whoever else says so is not believed. Several with commas between
    #[arg(long, value_name = "ADDRESS", value_delimiter = ',')]
    behind_proxy: Vec<Network>,
    /// The header in which it says so; no other is looked at
    #[arg(long, value_enum, value_name = "HEADER", default_value = "x-forwarded-for", requires = "behind_proxy")]
    proxy_writes: Written,
}

/// The headers in which a proxy says where requests come from.
#[derive(clap::ValueEnum, Clone, Copy, Debug)]
enum Written {
    /// The last address that is none of your proxies'
    XForwardedFor,
    /// The same, as RFC 7239 has it
    Forwarded,
}

impl Host {
    /// Runs the command until Ctrl-C.
    pub fn run(&self) -> Result<u8, Failure> {
        let served = Served::all(&self.books, &self.site)?;
        let alone = served.len() == 1;
        let mut books = Vec::new();
        let mut served_now = 0;
        for one in &served {
            let (hosted, pages) = one.hosted();
            match pages {
                Ok(()) => served_now += 1,
                Err(error) if alone => return Err(worded(&error)),
                Err(error) => tell(&one.path, &Event::NotServed(format!("{error}; {}", error.remedy()))),
            }
            books.push(hosted);
        }
        if served_now == 0 {
            return Err("none of these books can be served".into());
        }
        let listener =
            TcpListener::bind(self.address).map_err(|error| worded(&HostError::Listen(self.address, error)))?;
        if !self.address.ip().is_loopback() {
            say("open to other machines, without encryption: put a proxy that speaks TLS before it");
        }
        let stop = Stop::default();
        let ended = stop.clone();
        ctrlc::set_handler(move || ended.now())?;
        let hosted = Hosted { books, tell: Arc::new(tell), limits: HostLimits::default(), proxies: self.proxies() };
        run(listener, hosted, &stop).map_err(|error| worded(&error))?;
        Ok(CLEAN)
    }

    fn proxies(&self) -> Proxies {
        let header = match self.proxy_writes {
            Written::XForwardedFor => ProxyHeader::XForwardedFor,
            Written::Forwarded => ProxyHeader::Forwarded,
        };
        Proxies { trusted: self.behind_proxy.clone(), header }
    }
}

/// Whatever `receive` takes as a file comes through the server too.
const _: () = assert!(MAX_HANDED <= HostLimits::LARGEST);

/// A line of the log; of one book among several it begins with the book's path.
fn tell(path: &str, event: &Event) {
    let at = clock::now().map(|now| now.to_string()).unwrap_or_default();
    let at = if path.is_empty() { at } else { format!("{at} {path}:") };
    let root = if path.is_empty() { String::new() } else { format!("/{path}") };
    say(&match event {
        Event::Serving(address) => format!("serving at http://{address}{root}/client/ (Ctrl-C ends it)"),
        Event::NotServed(why) => format!("{at} nothing newer is served: {why}"),
        Event::Response(from, status, None) => format!("{at} {from} response {status}"),
        Event::Response(from, status, Some(why)) if *status < 400 => format!("{at} {from} response {status}: {why}"),
        Event::Response(from, status, Some(why)) => format!("{at} {from} response {status}, not recorded: {why}"),
        Event::Refused(from, status) => format!("{at} {from} refused {status}"),
        Event::Full => format!("{at} too many connections; one was let go"),
        Event::Crowded(from) => format!("{at} {from} too many connections; one was let go"),
        Event::Flood(from) => format!("{at} {} more of it is counted and told when it ends", whose(*from)),
        Event::FloodEnded(from, more) => format!("{at} {} has ended: {more} more were refused", whose(*from)),
        Event::Stopping => "ending; what is being recorded is recorded first".into(),
    });
}

fn whose(from: Option<IpAddr>) -> String {
    from.map_or_else(|| "of all".into(), |from| from.to_string())
}

fn worded(error: &HostError) -> Failure {
    format!("{error}; {}", error.remedy()).into()
}
