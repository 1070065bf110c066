//! Requests and answers, without a socket.

use std::net::IpAddr;
use std::sync::{Arc, PoisonError, RwLock};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, header};
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use tokio::sync::Semaphore;
use tokio::time::{Instant, timeout};

use super::limits::Buckets;
use super::log::Log;
use super::{Answer, Event, HostLimits, NotTaken, ServedSite, TakeIn, Tell, guard};
use crate::serving::{media, path as asked};

/// The path that responses are sent to: the only one where anything changes.
pub(super) const RESPONSES: &str = "/responses";

/// What is served, and how.
pub struct Hosted {
    /// The files; they can be replaced as one.
    pub site: RwLock<Arc<ServedSite>>,
    /// Takes a response in.
    pub take_in: TakeIn,
    /// Hears what happens.
    pub tell: Tell,
    /// What is allowed.
    pub limits: HostLimits,
    /// A proxy stands before the server and says in `X-Forwarded-For` where requests come from.
    pub behind_proxy: bool,
    /// The address that the pages send responses to, where they do not state it themselves.
    pub post: Option<String>,
}

/// What requests share.
pub(super) struct Shared {
    pub(super) hosted: Hosted,
    pub(super) log: Log,
    reading: Buckets,
    sending: Buckets,
    /// Held while a response is recorded: one at a time, as the ledger has it.
    pub(super) recording: Arc<Semaphore>,
    /// Held by each response that waits.
    waiting: Semaphore,
}

impl Shared {
    pub(super) fn new(hosted: Hosted) -> Arc<Self> {
        let limits = hosted.limits;
        Arc::new(Self {
            log: Log::new(Arc::clone(&hosted.tell), limits.quiet),
            reading: Buckets::new(limits.reading, None),
            sending: Buckets::new(limits.sending, Some(limits.sending_in_all)),
            recording: Arc::new(Semaphore::new(1)),
            waiting: Semaphore::new(limits.waiting),
            hosted,
        })
    }

    /// What every answer carries: pages may send to the address that they were published with.
    fn headers(&self) -> HeaderMap {
        let site = self.site();
        guard::headers(site.post().unwrap_or(self.hosted.post.as_deref()))
    }

    fn site(&self) -> Arc<ServedSite> {
        Arc::clone(&self.hosted.site.read().unwrap_or_else(PoisonError::into_inner))
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
    let from = guard::from(&request, shared.hosted.behind_proxy);
    let sends = *request.method() == Method::POST && request.uri().path() == RESPONSES;
    let answered = timeout(shared.hosted.limits.request, next.run(request)).await;
    let mut answer = answered.unwrap_or_else(|_| NotTaken::TooSlow.into_response());
    guard::cover(&mut answer, &shared.headers());
    let status = answer.status();
    if sends {
        shared.log.hear(Event::Response(from, status.as_u16()), Instant::now());
    } else if !status.is_success() && !status.is_redirection() && status != StatusCode::NOT_FOUND {
        shared.log.hear(Event::Refused(from, status.as_u16()), Instant::now());
    }
    answer
}

async fn answer(State(shared): State<Arc<Shared>>, request: Request) -> Response {
    let from = guard::from(&request, shared.hosted.behind_proxy);
    let is_responses = request.uri().path() == RESPONSES;
    let mut answer = match *request.method() {
        Method::GET | Method::HEAD if !is_responses => file(&shared, &request, from),
        Method::POST if is_responses => response(&shared, request, from).await,
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

fn permission() -> Response {
    let headers = [
        (header::ACCESS_CONTROL_ALLOW_METHODS, "POST"),
        (header::ACCESS_CONTROL_ALLOW_HEADERS, "content-type"),
        (header::ACCESS_CONTROL_MAX_AGE, "86400"),
    ];
    (StatusCode::NO_CONTENT, headers).into_response()
}

/// A file of the site. What a request names is looked up in the map alone, never on the disk.
fn file(shared: &Shared, request: &Request, from: IpAddr) -> Response {
    if !shared.reading.allows(from, Instant::now()) {
        return NotTaken::TooMany.into_response();
    }
    let site = shared.site();
    let missing = || (StatusCode::NOT_FOUND, "there is no such page\n").into_response();
    let Some(path) = asked::decoded(request.uri().path()) else {
        return missing();
    };
    let path = path.trim_start_matches('/');
    let moved = |to: String| (StatusCode::PERMANENT_REDIRECT, [(header::LOCATION, to)]).into_response();
    if path.is_empty() {
        return (StatusCode::TEMPORARY_REDIRECT, [(header::LOCATION, "/client/")]).into_response();
    }
    if !path.ends_with('/') && site.get(&format!("{path}/index.html")).is_some() {
        // One slash in front: two would name another host.
        return moved(format!("/{}/", request.uri().path().trim_start_matches('/')));
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

/// Takes in a response.
async fn response(shared: &Shared, request: Request, from: IpAddr) -> Response {
    if !shared.sending.allows(from, Instant::now()) {
        return NotTaken::TooMany.into_response();
    }
    let most = shared.hosted.limits.body;
    let says = request.headers().get(header::CONTENT_LENGTH).and_then(|length| length.to_str().ok()?.parse().ok());
    if says.is_some_and(|length: u64| length > most as u64) {
        return NotTaken::TooLarge.into_response();
    }
    let body = match timeout(shared.hosted.limits.arriving, to_bytes(request.into_body(), most)).await {
        Err(_) => return NotTaken::TooSlow.into_response(),
        Ok(Err(_)) => return NotTaken::TooLarge.into_response(),
        Ok(Ok(body)) => body,
    };
    let Ok(_waiting) = shared.waiting.try_acquire() else {
        return NotTaken::TooMany.into_response();
    };
    let Ok(turn) = Arc::clone(&shared.recording).acquire_owned().await else {
        return Answer::Failed.into_response();
    };
    let take_in = Arc::clone(&shared.hosted.take_in);
    // On a thread of its own, to its end: also when whoever sent it is gone, or the server is to end.
    let taken = tokio::task::spawn_blocking(move || {
        let _turn = turn;
        take_in(&body)
    });
    taken.await.unwrap_or(Answer::Failed).into_response()
}
