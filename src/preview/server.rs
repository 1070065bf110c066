//! Serves what is shown, to this machine alone.

use std::convert::Infallible;
use std::io;
use std::net::{SocketAddr, TcpListener};
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::Body;
use axum::extract::{RawQuery, Request, State};
use axum::http::{HeaderMap, Method, StatusCode, header};
use axum::middleware::{self, Next};
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use tokio_stream::wrappers::BroadcastStream;
use tokio_stream::{Stream, StreamExt, once};

use super::live::{Live, Notice, Shown};
use crate::serving::{Stop, media, path as asked};

use super::{FAREWELL, host, page};
use crate::publish::output::Content;

/// Serves until told to stop; open pages are let go first.
pub(super) async fn serve(listener: TcpListener, address: SocketAddr, live: Arc<Live>, stop: &Stop) -> io::Result<()> {
    let listener = tokio::net::TcpListener::from_std(listener)?;
    let app = router(address, Arc::clone(&live));
    let ended = {
        let stop = stop.clone();
        async move {
            stop.asked().await;
            live.end()
        }
    };
    let server = axum::serve(listener, app).with_graceful_shutdown(ended);
    tokio::select! {
        served = server.into_future() => served,
        () = async { stop.asked().await; tokio::time::sleep(FAREWELL).await } => Ok(()),
    }
}

/// The server without a socket: tests call it as it is.
pub(super) fn router(address: SocketAddr, live: Arc<Live>) -> Router {
    let guard = middleware::from_fn(move |request, next| guard(address, request, next));
    Router::new()
        .route("/-/events", get(events))
        .route("/-/reload.js", get(|| async { asset("reload.js", page::SCRIPT) }))
        .route("/-/strip.css", get(|| async { asset("strip.css", page::STYLE) }))
        .fallback(file)
        .with_state(live)
        .layer(guard)
}

/// Refuses what does not come from a page of this machine, and lets nothing be kept or embedded.
async fn guard(address: SocketAddr, request: Request, next: Next) -> Response {
    let mut response = if !host::is_ours(address, request.headers(), request.uri()) {
        (StatusCode::MISDIRECTED_REQUEST, "open the preview by its own address\n").into_response()
    } else if !matches!(*request.method(), Method::GET | Method::HEAD) {
        (StatusCode::METHOD_NOT_ALLOWED, [(header::ALLOW, "GET, HEAD")]).into_response()
    } else {
        next.run(request).await
    };
    // What has a tag may be kept, and is asked for again each time (RFC 9111, section 5.2.2.4).
    let tagged = response.headers().contains_key(header::ETAG);
    let usual = header::HeaderValue::from_static(if tagged { "no-cache" } else { "no-store" });
    response.headers_mut().entry(header::CACHE_CONTROL).or_insert(usual);
    let headers = [
        ("x-content-type-options", "nosniff"),
        ("x-frame-options", "DENY"),
        ("cross-origin-resource-policy", "same-origin"),
        ("referrer-policy", "no-referrer"),
    ];
    for (name, value) in headers {
        response.headers_mut().insert(name, header::HeaderValue::from_static(value));
    }
    response
}

fn asset(name: &str, text: &'static str) -> Response {
    ([(header::CONTENT_TYPE, media::of(name))], text).into_response()
}

fn html(status: StatusCode, page: Vec<u8>) -> Response {
    (status, [(header::CONTENT_TYPE, media::of("a.html"))], page).into_response()
}

/// A reload shows at once what it need not ask for again (RFC 8246).
const KEEP: header::HeaderValue = header::HeaderValue::from_static("private, max-age=3600, immutable");

/// A file of the draft. Paths are looked up in the output alone, never on the disk.
async fn file(State(live): State<Arc<Live>>, request: Request) -> Response {
    let shown = live.now();
    let Some(path) = asked::decoded(request.uri().path()) else {
        return html(StatusCode::BAD_REQUEST, page::missing(request.uri().path(), &shown));
    };
    let path = path.trim_start_matches('/');
    let Some(output) = &shown.output else {
        return html(StatusCode::SERVICE_UNAVAILABLE, page::parts(&shown));
    };
    if path.is_empty() && output.get("index.html").is_none() {
        return html(StatusCode::OK, page::parts(&shown));
    }
    if output.get(&format!("{path}/index.html")).is_some() {
        // One slash in front: two would name another host.
        let to = format!("/{}/", request.uri().path().trim_start_matches('/'));
        return (StatusCode::PERMANENT_REDIRECT, [(header::LOCATION, to)]).into_response();
    }
    let folder = path.is_empty() || path.ends_with('/');
    let path = if folder { format!("{path}index.html") } else { path.to_owned() };
    match output.get(&path).cloned() {
        Some(content) if media::is_page(&path) => answer(&path, content, &shown).await,
        // Fonts and pictures are told apart by their digest: a reload need not fetch them again.
        Some(content) => {
            let tag = format!("\"{}\"", content.digest());
            let known = request.headers().get(header::IF_NONE_MATCH);
            let mut answer = match known {
                Some(known) if known.as_bytes() == tag.as_bytes() => StatusCode::NOT_MODIFIED.into_response(),
                _ => answer(&path, content, &shown).await,
            };
            if let Ok(tag) = tag.parse() {
                answer.headers_mut().insert(header::ETAG, tag);
            }
            if media::never_changes(&path) {
                answer.headers_mut().insert(header::CACHE_CONTROL, KEEP);
            }
            answer
        }
        None if path == "favicon.ico" => StatusCode::NO_CONTENT.into_response(),
        None => html(StatusCode::NOT_FOUND, page::missing(&path, &shown)),
    }
}

async fn answer(path: &str, content: Content, shown: &Shown) -> Response {
    let bytes = match content {
        Content::Bytes(bytes) => Ok(bytes),
        Content::Laid(laid) => laid.whole().map(Arc::from),
        Content::File { path, .. } => {
            let read = tokio::task::spawn_blocking(move || std::fs::read(path).map(Arc::from)).await;
            read.unwrap_or_else(|_| Err(io::ErrorKind::Other.into()))
        }
    };
    match bytes {
        Ok(bytes) if media::is_page(path) => html(StatusCode::OK, page::with_strip(&bytes, shown)),
        Ok(bytes) => ([(header::CONTENT_TYPE, media::of(path))], Body::from(bytes.to_vec())).into_response(),
        // The picture cache was deleted meanwhile: the next build makes it anew.
        Err(_) => html(StatusCode::NOT_FOUND, page::missing(path, shown)),
    }
}

/// The stream of builds. `mark` names the state that the page was served from: a page that missed one is told at once.
async fn events(
    State(live): State<Arc<Live>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    // Listened to before the state is read: a build between the two is heard, not lost.
    let notices = BroadcastStream::new(live.listen());
    let shown = live.now();
    let last = headers.get("last-event-id").and_then(|last| last.to_str().ok());
    let served = query.as_deref().and_then(|query| query.strip_prefix("mark="));
    let known = last.or(served);
    let missed = known.is_some_and(|known| known != shown.mark);
    let hello = Event::default().retry(Duration::from_millis(500)).id(shown.mark.as_str());
    let hello =
        if missed { hello.event("built").data(page::message(None, &shown)) } else { hello.comment("listening") };
    let builds = notices.take_while(|notice| !matches!(notice, Ok(Notice::End))).map(move |notice| {
        match notice {
            Ok(Notice::Built { mark, message }) => event(&mark, message),
            // More builds than the page could hear: as if it had missed them.
            _ => event("", page::message(None, &live.now())),
        }
    });
    Sse::new(once(hello).chain(builds).map(Ok)).keep_alive(KeepAlive::default())
}

fn event(mark: &str, message: String) -> Event {
    Event::default().event("built").id(mark).data(message)
}
