//! Requests and answers, without a socket.

use axum::body::{Body, to_bytes};
use axum::http::{Request, Response, header};
use tokio_stream::StreamExt;
use tower::ServiceExt;

use super::*;

fn address() -> SocketAddr {
    SocketAddr::from(([127, 0, 0, 1], 8123))
}

fn request(method: &str, path: &str, host: &str) -> Request<Body> {
    let request = Request::builder().method(method).uri(path).header(header::HOST, host);
    request.body(Body::empty()).unwrap()
}

fn ask(live: &Arc<Live>, request: Request<Body>) -> Response<Body> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(server::router(address(), Arc::clone(live)).oneshot(request)).unwrap()
}

fn get(live: &Arc<Live>, path: &str) -> (u16, String, String) {
    let response = ask(live, request("GET", path, "127.0.0.1:8123"));
    let kind = response.headers()[header::CONTENT_TYPE].to_str().unwrap().to_owned();
    (response.status().as_u16(), kind, text(response))
}

fn text(response: Response<Body>) -> String {
    let runtime = tokio::runtime::Builder::new_current_thread().build().unwrap();
    let bytes = runtime.block_on(to_bytes(response.into_body(), 1 << 20)).unwrap();
    String::from_utf8(bytes.to_vec()).unwrap()
}

fn live() -> Arc<Live> {
    let live = Arc::new(Live::default());
    live.show(built(&[
        ("client/index.html", "<body>cover</body>"),
        ("client/a b½.css", "ink"),
        ("office/index.html", "<body>costs</body>"),
        ("office/orders.csv", "a,b"),
    ]));
    live
}

#[test]
fn the_first_page_lists_the_parts_that_there_are() {
    let (status, _, page) = get(&live(), "/");
    assert_eq!(status, 200);
    assert!(page.contains("href=\"/client/\"") && page.contains("href=\"/office/\""));
    assert!(!page.contains("/installer/"));
}

#[test]
fn a_folder_shows_its_index_and_a_file_has_its_media_type() {
    let live = live();
    let (status, kind, page) = get(&live, "/client/");
    assert_eq!((status, kind.as_str()), (200, "text/html; charset=utf-8"));
    assert!(page.starts_with("<body>cover<link"));
    let (status, kind, text) = get(&live, "/client/a%20b%C2%BD.css");
    assert_eq!((status, kind.as_str(), text.as_str()), (200, "text/css; charset=utf-8", "ink"));
    assert_eq!(get(&live, "/office/orders.csv").1, "text/csv; charset=utf-8");
}

#[test]
fn a_folder_without_its_slash_is_sent_to_the_one_with_it() {
    for path in ["/client", "//client"] {
        let answer = ask(&live(), request("GET", path, "localhost:8123"));
        assert_eq!(answer.status(), 308);
        assert_eq!(answer.headers()[header::LOCATION], "/client/");
    }
}

#[test]
fn a_path_reaches_only_files_of_the_draft() {
    for path in ["/../Cargo.toml", "/client/%2e%2e/%2e%2e/etc/passwd", "/etc/passwd", "/none"] {
        assert_eq!(get(&live(), path).0, 404, "{path}");
    }
    for path in ["/%ff", "/%+1", "/%2", "/%zz"] {
        assert_eq!(get(&live(), path).0, 400, "{path}");
    }
}

#[test]
fn a_picture_is_read_from_the_cache_and_missed_when_it_is_gone() {
    let file = tempfile::NamedTempFile::new().unwrap();
    let content = Content::File { path: file.path().into(), digest: crate::publish::output::Digest::of(b""), bytes: 0 };
    let live = Arc::new(Live::default());
    let mut built = built(&[]);
    built.output.insert("client/tap.webp", content).unwrap();
    live.show(built);
    let (status, kind, _) = get(&live, "/client/tap.webp");
    assert_eq!((status, kind.as_str()), (200, "image/webp"));
    drop(file);
    assert_eq!(get(&live, "/client/tap.webp").0, 404);
}

#[test]
fn another_name_for_this_machine_is_refused_on_every_path() {
    for path in ["/", "/client/", "/-/events", "/-/reload.js", "/none"] {
        let answer = ask(&live(), request("GET", path, "book.invalid:8123"));
        assert_eq!(answer.status(), 421, "{path}");
        assert!(!text(answer).contains("cover"));
    }
}

#[test]
fn only_reading_is_allowed() {
    for method in ["POST", "PUT", "DELETE", "OPTIONS"] {
        let answer = ask(&live(), request(method, "/client/", "localhost:8123"));
        assert_eq!(answer.status(), 405, "{method}");
    }
    assert_eq!(ask(&live(), request("HEAD", "/client/", "localhost:8123")).status(), 200);
}

#[test]
fn nothing_is_kept_sniffed_or_embedded() {
    let answer = ask(&live(), request("GET", "/client/", "localhost:8123"));
    for (name, value) in [
        ("cache-control", "no-store"),
        ("x-content-type-options", "nosniff"),
        ("x-frame-options", "DENY"),
        ("cross-origin-resource-policy", "same-origin"),
    ] {
        assert_eq!(answer.headers()[name], value);
    }
}

#[test]
fn a_picture_or_style_that_did_not_change_is_not_sent_again() {
    let live = live();
    let style = || request("GET", "/client/a%20b%C2%BD.css", "localhost:8123");
    let first = ask(&live, style());
    assert_eq!(first.headers()["cache-control"], "no-cache");
    let again = |tag: &str| {
        let mut request = style();
        request.headers_mut().insert(header::IF_NONE_MATCH, tag.parse().unwrap());
        ask(&live, request)
    };
    let tag = first.headers()[header::ETAG].to_str().unwrap().to_owned();
    assert_eq!(again(&tag).status(), 304);
    live.show(built(&[("client/a b½.css", "blue ink")]));
    let changed = again(&tag);
    assert_eq!(changed.status(), 200);
    assert_eq!(text(changed), "blue ink");
}

#[test]
fn a_broken_book_keeps_its_last_good_page_and_shows_why() {
    let live = live();
    live.show(broken());
    let (status, _, page) = get(&live, "/client/");
    assert_eq!(status, 200);
    assert!(page.starts_with("<body>cover") && page.contains("a tab stands where spaces belong"));
    live.show(built(&[("client/index.html", "<body>mended</body>")]));
    let (_, _, page) = get(&live, "/client/");
    assert!(page.contains("mended") && !page.contains("a tab stands"));
}

#[test]
fn a_book_that_never_built_shows_its_findings_on_every_page() {
    let live = Arc::new(Live::default());
    live.show(broken());
    for path in ["/", "/client/", "/client/rooms/attic.html"] {
        let (status, _, page) = get(&live, path);
        assert_eq!(status, 503);
        assert!(page.contains("use spaces to indent") && page.contains("/-/reload.js"));
    }
}

/// What an open page hears at once, given the state that it was served from.
fn hears(live: &Arc<Live>, query: &str, last: Option<&str>) -> String {
    let mut request = request("GET", &format!("/-/events{query}"), "localhost:8123");
    if let Some(last) = last {
        request.headers_mut().insert("last-event-id", last.parse().unwrap());
    }
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        let router = server::router(address(), Arc::clone(live));
        let answer = router.oneshot(request).await.unwrap();
        assert_eq!(answer.headers()[header::CONTENT_TYPE], "text/event-stream");
        live.end();
        let mut heard = String::new();
        let mut stream = answer.into_body().into_data_stream();
        while let Some(piece) = stream.next().await {
            heard.push_str(std::str::from_utf8(&piece.unwrap()).unwrap());
        }
        heard
    })
}

#[test]
fn a_page_that_missed_a_build_is_told_to_reload() {
    let live = live();
    let before = live.now().mark.clone();
    assert!(!hears(&live, &format!("?mark={before}"), None).contains("event: built"));
    live.show(built(&[]));
    let heard = hears(&live, &format!("?mark={before}"), None);
    assert!(heard.contains("event: built") && heard.contains("\"changed\":null"), "{heard}");
    // What the browser heard last counts more than how the page was served.
    let now = live.now().mark.clone();
    assert!(!hears(&live, &format!("?mark={before}"), Some(&now)).contains("event: built"));
}
