//! Requests and answers, without a socket.

use std::net::{IpAddr, Ipv4Addr};
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderValue, Method, StatusCode, header};
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use tokio::time::{Instant, timeout};

use super::answer::WhyNot;
use super::guard::Peer;
use super::limits::Buckets;
use super::log::Log;
use super::mount::Mount;
use super::{Answer, Event, HostLimits, HostedBook, NotTaken, Proxies, TakenIn, Tell, guard};
use crate::serving::{media, path as asked};

/// The path below a book's own that responses are sent to: the only one where anything changes.
const RESPONSES: &str = "responses";

/// What is served, and how.
pub struct Hosted {
    /// The books: one whose path is empty, or several that each have a path of their own.
    pub books: Vec<HostedBook>,
    /// Hears what happens.
    pub tell: Tell,
    /// What is allowed, for each book by itself.
    pub limits: HostLimits,
    /// Proxies of our own that pass requests on.
    pub proxies: Proxies,
}

/// What requests share.
pub(super) struct Shared {
    pub(super) mounts: Vec<Arc<Mount>>,
    pub(super) tell: Tell,
    pub(super) limits: HostLimits,
    pub(super) proxies: Proxies,
    /// Hears of what is of no book.
    pub(super) log: Log,
    /// How fast what is of no book may be asked for.
    reading: Buckets,
}

impl Shared {
    pub(super) fn new(hosted: Hosted) -> Arc<Self> {
        let Hosted { books, tell, limits, proxies } = hosted;
        let mounts = books.into_iter().map(|book| Arc::new(Mount::new(book, limits, &tell))).collect();
        let log = Log::new(Arc::clone(&tell), "", limits.quiet);
        Arc::new(Self { mounts, tell, limits, proxies, log, reading: Buckets::new(limits.reading, None) })
    }

    /// Every log: that of each book, and that of none.
    pub(super) fn logs(&self) -> impl Iterator<Item = &Log> {
        self.mounts.iter().map(|mount| &mount.log).chain([&self.log])
    }

    /// The book that a path is of, and what of the path is left below that book's; none for a book's path that
    /// does not end with its slash.
    fn find<'p>(&self, path: &'p str) -> Option<(&Arc<Mount>, Option<&'p str>)> {
        let path = path.trim_start_matches('/');
        if let [only] = self.mounts.as_slice()
            && only.book.path.is_empty()
        {
            return Some((only, Some(path)));
        }
        let (first, below) = path.split_once('/').map_or((path, None), |(first, below)| (first, Some(below)));
        let name = asked::decoded(first)?;
        Some((self.mounts.iter().find(|mount| mount.book.path == name)?, below))
    }

    fn sender(&self, request: &Request) -> IpAddr {
        let peer = request.extensions().get::<Peer>().map_or(Ipv4Addr::UNSPECIFIED.into(), |peer| peer.0);
        self.proxies.sender(peer, request.headers())
    }
}

/// The server without a socket.
pub fn router(hosted: Hosted) -> Router {
    routed(Shared::new(hosted))
}

pub(super) fn routed(shared: Arc<Shared>) -> Router {
    let covered = middleware::from_fn_with_state(Arc::clone(&shared), covered);
    Router::new().fallback(answer).with_state(shared).layer(covered)
}

/// Gives every answer its headers and its time, and tells the log.
async fn covered(State(shared): State<Arc<Shared>>, request: Request, next: Next) -> Response {
    let from = shared.sender(&request);
    let found = shared.find(request.uri().path());
    let (mount, below) = found.map_or((None, None), |(mount, below)| (Some(Arc::clone(mount)), below));
    let sends = *request.method() == Method::POST && below == Some(RESPONSES);
    let longer = if sends { shared.limits.longer(length(&request).unwrap_or(0)) } else { Duration::ZERO };
    let answered = timeout(shared.limits.request + longer, next.run(request)).await;
    let mut answer = answered.unwrap_or_else(|_| NotTaken::TooSlow.into_response());
    guard::cover(&mut answer, &mount.as_ref().map_or_else(|| guard::headers(None), |mount| mount.headers()));
    let why = answer.extensions_mut().remove::<WhyNot>().map(|why| why.0);
    let (status, log) = (answer.status(), mount.as_ref().map_or(&shared.log, |mount| &mount.log));
    if sends {
        log.hear(Event::Response(from, status.as_u16(), why), Instant::now());
    } else if !status.is_success() && !status.is_redirection() && status != StatusCode::NOT_FOUND {
        log.hear(Event::Refused(from, status.as_u16()), Instant::now());
    }
    answer
}

async fn answer(State(shared): State<Arc<Shared>>, request: Request) -> Response {
    let from = shared.sender(&request);
    let path = request.uri().path().to_owned();
    let Some((mount, below)) = shared.find(&path) else {
        return of_no_book(&shared, &request, from);
    };
    let is_responses = below == Some(RESPONSES);
    let mut answer = match *request.method() {
        Method::GET | Method::HEAD if !is_responses => match below {
            Some(below) => file(mount, &request, below, from),
            None => moved(&format!("{}/client/", path.rsplit('/').next().unwrap_or_default())),
        },
        Method::POST if is_responses => response(mount, shared.limits, request, from).await,
        // Asked by browsers before a page of another site, or one opened from a disk, may send (Fetch, CORS).
        Method::OPTIONS if is_responses => permission(),
        _ => {
            let allowed = if is_responses { "POST, OPTIONS" } else { "GET, HEAD" };
            (StatusCode::METHOD_NOT_ALLOWED, [(header::ALLOW, allowed)]).into_response()
        }
    };
    if is_responses {
        // Whoever holds the file may send it, from wherever; no answer depends on who asks.
        answer.headers_mut().insert(header::ACCESS_CONTROL_ALLOW_ORIGIN, HeaderValue::from_static("*"));
    }
    answer
}

/// What is of no book is not there, whatever is asked; nobody is told which books there are.
fn of_no_book(shared: &Shared, request: &Request, from: IpAddr) -> Response {
    if !shared.reading.allows(from, Instant::now()) {
        return NotTaken::TooMany.into_response();
    }
    match *request.method() {
        Method::GET | Method::HEAD => missing(),
        _ => (StatusCode::METHOD_NOT_ALLOWED, [(header::ALLOW, "GET, HEAD")]).into_response(),
    }
}

fn missing() -> Response {
    (StatusCode::NOT_FOUND, "there is no such page\n").into_response()
}

/// Leads on to a path beside the one that was asked for: whatever stands before that, at a proxy, stays.
fn moved(to: &str) -> Response {
    // A dot in front: whatever the first part holds, it is a path and names no other host.
    (StatusCode::PERMANENT_REDIRECT, [(header::LOCATION, format!("./{to}"))]).into_response()
}

fn permission() -> Response {
    let headers = [
        (header::ACCESS_CONTROL_ALLOW_METHODS, "POST"),
        (header::ACCESS_CONTROL_ALLOW_HEADERS, "content-type"),
        (header::ACCESS_CONTROL_MAX_AGE, "86400"),
    ];
    (StatusCode::NO_CONTENT, headers).into_response()
}

/// A file of the site. What a request names is looked up in the map alone, never on the disk.
fn file(mount: &Mount, request: &Request, below: &str, from: IpAddr) -> Response {
    if !mount.reading.allows(from, Instant::now()) {
        return NotTaken::TooMany.into_response();
    }
    let site = mount.site();
    let Some(path) = asked::decoded(below) else {
        return missing();
    };
    let path = path.trim_start_matches('/');
    if path.is_empty() {
        return (StatusCode::TEMPORARY_REDIRECT, [(header::LOCATION, "./client/")]).into_response();
    }
    if !path.ends_with('/') && site.get(&format!("{path}/index.html")).is_some() {
        return moved(&format!("{}/", below.rsplit('/').next().unwrap_or_default()));
    }
    let path = if path.ends_with('/') { format!("{path}index.html") } else { path.to_owned() };
    let Some(held) = site.get(&path) else {
        return missing();
    };
    let known = request.headers().get(header::IF_NONE_MATCH);
    let mut answer = if known.is_some_and(|known| known.as_bytes() == held.tag.as_bytes()) {
        StatusCode::NOT_MODIFIED.into_response()
    } else {
        ([(header::CONTENT_TYPE, media::of(&path))], Body::from(held.bytes.clone())).into_response()
    };
    let keep = if media::never_changes(&path) { "private, max-age=86400, immutable" } else { "private, no-cache" };
    answer.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static(keep));
    if let Ok(tag) = held.tag.parse() {
        answer.headers_mut().insert(header::ETAG, tag);
    }
    answer
}

/// How large a body says that it is.
fn length(request: &Request) -> Option<usize> {
    request.headers().get(header::CONTENT_LENGTH)?.to_str().ok()?.parse().ok()
}

/// Takes in a response.
async fn response(mount: &Mount, limits: HostLimits, request: Request, from: IpAddr) -> Response {
    if !mount.sending.allows(from, Instant::now()) {
        return NotTaken::TooMany.into_response();
    }
    // One that does not say how large it is is a small one.
    let says = length(&request).unwrap_or(0);
    let is_large = says > limits.body;
    if says > limits.carried {
        return NotTaken::TooLarge.into_response();
    }
    let large = is_large.then(|| mount.large.admit(from));
    if matches!(large, Some(None)) {
        return NotTaken::TooMany.into_response();
    }
    let most = if is_large { limits.carried } else { limits.body };
    let body = match timeout(limits.arriving + limits.longer(says), to_bytes(request.into_body(), most)).await {
        Err(_) => return NotTaken::TooSlow.into_response(),
        Ok(Err(_)) => return NotTaken::TooLarge.into_response(),
        Ok(Ok(body)) => body,
    };
    let Ok(_waiting) = mount.waiting.try_acquire() else {
        return NotTaken::TooMany.into_response();
    };
    let Ok(turn) = Arc::clone(&mount.recording).acquire_owned().await else {
        return Answer::Failed.into_response();
    };
    let take_in = Arc::clone(&mount.book.take_in);
    // On a thread of its own, to its end: also when whoever sent it is gone, or the server is to end.
    let taken = tokio::task::spawn_blocking(move || {
        let _turn = turn;
        take_in(&body)
    });
    let failed = || TakenIn { answer: Answer::Failed, why: Some("the program itself failed at it".into()) };
    taken.await.unwrap_or_else(|_| failed()).into_response()
}
