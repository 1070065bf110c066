//! Pages: what there is, what there is not, and what every answer carries.

use axum::http::header;

use super::*;

fn site() -> Router {
    router(hosted(recorded).0)
}

#[tokio::test]
async fn pages_styles_and_folders_are_served_with_their_media_types() {
    let router = site();
    for (path, kind, says) in [
        ("/client/", "text/html; charset=utf-8", "<body>cover</body>"),
        ("/installer/index.html", "text/html; charset=utf-8", "openings"),
        ("/client/a%20b%C2%BD.css", "text/css; charset=utf-8", "ink"),
    ] {
        let answer = ask(&router, request("GET", path, "")).await;
        assert_eq!((answer.status().as_u16(), &answer.headers()[header::CONTENT_TYPE]), (200, &kind.parse().unwrap()));
        assert_eq!(text(answer).await, says);
    }
    for (path, to) in [("/", "./client/"), ("/installer", "./installer/"), ("//client", "./client/")] {
        let answer = ask(&router, request("GET", path, "")).await;
        assert!(answer.status().is_redirection());
        assert_eq!(answer.headers()[header::LOCATION], to);
    }
}

#[tokio::test]
async fn the_office_the_record_and_every_other_path_are_the_same_nothing() {
    let router = site();
    let mut answers = Vec::new();
    for path in [
        "/office/",
        "/office/index.html",
        "/client/../office/index.html",
        "/client/%2e%2e/office/index.html",
        "/record/keys/odile.key",
        "/client/..%2f..%2frecord/ledger.jsonl",
        "/etc/passwd",
        "/%ff",
        "/none",
    ] {
        let answer = ask(&router, request("GET", path, "")).await;
        let (status, headers) = (answer.status(), answer.headers().clone());
        answers.push((status, headers, text(answer).await));
    }
    assert_eq!(answers[0].0, 404);
    assert!(answers.iter().all(|answer| *answer == answers[0]), "{answers:?}");
}

#[tokio::test]
async fn only_a_response_may_be_sent_and_nothing_else_changed() {
    let router = site();
    for method in ["POST", "PUT", "DELETE", "PATCH", "OPTIONS"] {
        let answer = ask(&router, request(method, "/client/", "")).await;
        assert_eq!((answer.status().as_u16(), &answer.headers()[header::ALLOW]), (405, &"GET, HEAD".parse().unwrap()));
    }
    for method in ["GET", "HEAD", "PUT", "DELETE"] {
        assert_eq!(ask(&router, request(method, "/responses", "")).await.status(), 405, "{method}");
    }
    assert_eq!(ask(&router, request("POST", "/responses/", "{}")).await.status(), 405);
}

/// Published source: RFC 9110, section 13.1.2 (a client that has it is not sent it again).
#[tokio::test]
async fn what_a_browser_has_is_not_sent_again() {
    let router = site();
    let first = ask(&router, request("GET", "/client/pictures/1f.webp", "")).await;
    assert!(first.headers()[header::CACHE_CONTROL].to_str().unwrap().contains("immutable"));
    let mut again = request("GET", "/client/pictures/1f.webp", "");
    again.headers_mut().insert(header::IF_NONE_MATCH, first.headers()[header::ETAG].clone());
    let again = ask(&router, again).await;
    assert_eq!((again.status().as_u16(), text(again).await.as_str()), (304, ""));
    let page = ask(&router, request("GET", "/client/", "")).await;
    assert_eq!(page.headers()[header::CACHE_CONTROL], "private, no-cache");
}

#[tokio::test]
async fn every_answer_carries_the_headers_that_keep_it_safe() {
    let router = site();
    for (method, path) in [("GET", "/client/"), ("GET", "/none"), ("POST", "/responses"), ("PUT", "/client/")] {
        let answer = ask(&router, request(method, path, "")).await;
        for (name, value) in
            [("x-content-type-options", "nosniff"), ("referrer-policy", "no-referrer"), ("x-frame-options", "DENY")]
        {
            assert_eq!(answer.headers()[name], value, "{method} {path}");
        }
        let policy = answer.headers()["content-security-policy"].to_str().unwrap();
        assert!(policy.contains("script-src 'self';") && policy.contains("frame-ancestors 'none'"), "{policy}");
        assert!(answer.headers().contains_key("permissions-policy"));
    }
}

#[tokio::test]
async fn an_address_that_asks_too_fast_waits_and_others_do_not() {
    let (mut hosted, heard) = hosted(recorded);
    hosted.limits.reading.burst = 3;
    let router = router(hosted);
    for _ in 0..3 {
        assert_eq!(ask(&router, request("GET", "/client/", "")).await.status(), 200);
    }
    let answer = ask(&router, request("GET", "/client/", "")).await;
    assert_eq!((answer.status().as_u16(), &answer.headers()["retry-after"]), (429, &"60".parse().unwrap()));
    let mut other = request("GET", "/client/", "");
    other.extensions_mut().insert(Peer(IpAddr::from([192, 0, 2, 2])));
    assert_eq!(ask(&router, other).await.status(), 200);
    assert_eq!(*heard.lock().unwrap(), [Event::Refused([192, 0, 2, 1].into(), 429)]);
}

/// What pages may send to is what they were published with, whatever the book said when the server was started.
#[tokio::test]
async fn the_address_that_pages_send_to_follows_what_is_published() {
    let (mut hosted, _) = hosted(recorded);
    hosted.books[0].post = Some("https://old.example/responses".into());
    let shared = super::super::router::Shared::new(hosted);
    let router = super::super::router::routed(Arc::clone(&shared));
    let policy = async || {
        let answer = ask(&router, request("GET", "/client/", "")).await;
        answer.headers()["content-security-policy"].to_str().unwrap().to_owned()
    };
    assert!(policy().await.ends_with("connect-src 'self' https://old.example"));
    for (stated, ends) in [
        (r#"{"ledger":{},"post":"https://new.example/responses"}"#, "connect-src 'self' https://new.example"),
        (r#"{"ledger":{}}"#, "connect-src 'self'"),
    ] {
        let files = [("client/index.html", "cover"), ("office/stated.json", stated)];
        let site = ServedSite::of(files.map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec())));
        *shared.mounts[0].book.site.write().unwrap() = Arc::new(site);
        assert!(policy().await.ends_with(ends), "{stated}");
    }
    assert_eq!(ask(&router, request("GET", "/office/stated.json", "")).await.status(), 404);
}
