//! The server as a stranger meets it: without a socket, and on one.

mod responses;
mod serving;
mod several;
mod sockets;

use std::net::IpAddr;
use std::sync::{Arc, Mutex, RwLock};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Request, Response};
use tower::ServiceExt;

use super::guard::Peer;
use super::*;

/// What a server told its log.
type Heard = Arc<Mutex<Vec<Event>>>;

/// A small site, with a function that takes responses in, and what the log hears.
fn hosted(take_in: impl Fn(&[u8]) -> Answer + Send + Sync + 'static) -> (Hosted, Heard) {
    let files = [
        ("client/index.html", "<body>cover</body>"),
        ("client/a b½.css", "ink"),
        ("client/pictures/1f.webp", "tap"),
        ("installer/index.html", "openings"),
        ("office/index.html", "costs"),
    ];
    let site = ServedSite::of(files.map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec())));
    let heard = Heard::default();
    let tell: Tell = {
        let heard = Arc::clone(&heard);
        Arc::new(move |_, event| heard.lock().unwrap().push(event.clone()))
    };
    let books = vec![book("", site, take_in)];
    (Hosted { books, tell, limits: HostLimits::default(), proxies: Proxies::default() }, heard)
}

/// A book that nobody publishes anew.
fn book(path: &str, site: ServedSite, take_in: impl Fn(&[u8]) -> Answer + Send + Sync + 'static) -> HostedBook {
    HostedBook {
        path: path.into(),
        site: RwLock::new(Arc::new(site)),
        read: None,
        watched: Default::default(),
        take_in: Arc::new(move |bytes| take_in(bytes).into()),
        post: None,
    }
}

fn recorded(_: &[u8]) -> Answer {
    Answer::Recorded { outcome: "recorded", why: String::new(), not_taken: vec![], newest: None }
}

fn request(method: &str, path: &str, body: impl Into<Body>) -> Request<Body> {
    let mut request = Request::builder().method(method).uri(path).body(body.into()).unwrap();
    request.extensions_mut().insert(Peer(IpAddr::from([192, 0, 2, 1])));
    request
}

async fn ask(router: &Router, request: Request<Body>) -> Response<Body> {
    router.clone().oneshot(request).await.unwrap()
}

async fn text(response: Response<Body>) -> String {
    String::from_utf8(to_bytes(response.into_body(), 1 << 20).await.unwrap().to_vec()).unwrap()
}
