//! Several books of one server: each under its own path, and none held up by another.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use axum::http::header;

use super::*;

/// Two books; the one takes responses in by a function, the other records them all.
fn two(take_in: impl Fn(&[u8]) -> Answer + Send + Sync + 'static) -> Hosted {
    let site = |of: &str| {
        ServedSite::of(
            [("client/index.html", of), ("installer/index.html", "openings")]
                .map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec())),
        )
    };
    let books = vec![book("elm-row", site("Elm Row"), take_in), book("alder", site("Alder Court"), recorded)];
    Hosted { books, tell: Arc::new(|_, _| {}), limits: HostLimits::default(), proxies: Proxies::default() }
}

#[tokio::test]
async fn each_book_is_under_its_own_path_and_nothing_is_told_of_the_others() {
    let router = router(two(recorded));
    for (path, says) in [("/elm-row/client/", "Elm Row"), ("/alder/client/index.html", "Alder Court")] {
        assert_eq!(text(ask(&router, request("GET", path, "")).await).await, says);
    }
    for (path, to) in [("/alder", "./alder/client/"), ("/alder/", "./client/"), ("/elm-row/installer", "./installer/")]
    {
        let answer = ask(&router, request("GET", path, "")).await;
        assert!(answer.status().is_redirection(), "{path}");
        assert_eq!(answer.headers()[header::LOCATION], to);
    }
    for path in ["/", "/client/", "/responses", "/Elm-row/client/", "/elm-row/../alder/client/", "/none/client/"] {
        let answer = ask(&router, request("GET", path, "")).await;
        assert_eq!((answer.status().as_u16(), text(answer).await.as_str()), (404, "there is no such page\n"), "{path}");
    }
    assert_eq!(ask(&router, request("POST", "/responses", "{}")).await.status(), 405);
    assert_eq!(ask(&router, request("POST", "/alder/responses", "{}")).await.status(), 200);
}

/// RFC 9110, section 10.2.2: a reference that is not whole is resolved against what was asked for.
#[tokio::test]
async fn where_one_is_led_on_to_is_below_whatever_path_a_proxy_adds() {
    let router = router(two(recorded));
    let answer = ask(&router, request("GET", "/alder", "")).await;
    assert!(!answer.headers()[header::LOCATION].to_str().unwrap().starts_with('/'));
}

#[tokio::test]
async fn a_flood_of_one_book_and_its_faults_leave_the_other_as_it_was() {
    let mut hosted = two(|_| panic!("planted"));
    hosted.limits.sending_in_all = Pace { burst: 3, every: Duration::from_secs(60) };
    hosted.limits.reading = Pace { burst: 3, every: Duration::from_secs(60) };
    let router = router(hosted);
    let mut statuses = Vec::new();
    for n in 1..=5u8 {
        let mut asked = request("POST", "/elm-row/responses", "{}");
        asked.extensions_mut().insert(Peer(IpAddr::from([192, 0, 2, n])));
        statuses.push(ask(&router, asked).await.status().as_u16());
        ask(&router, request("GET", "/elm-row/client/", "")).await;
    }
    assert_eq!(statuses, [503, 503, 503, 429, 429]);
    assert_eq!(ask(&router, request("GET", "/elm-row/client/", "")).await.status(), 429);
    assert_eq!(ask(&router, request("GET", "/alder/client/", "")).await.status(), 200);
    assert_eq!(ask(&router, request("POST", "/alder/responses", "{}")).await.status(), 200);
}

/// The disk of one book answers nobody.
#[tokio::test(flavor = "multi_thread")]
async fn a_book_whose_disk_hangs_holds_up_no_other() {
    let (inside, ends) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicUsize::new(0)));
    let hosted = two({
        let (inside, ends) = (Arc::clone(&inside), Arc::clone(&ends));
        move |bytes| {
            inside.fetch_add(1, Ordering::SeqCst);
            while ends.load(Ordering::SeqCst) == 0 {
                std::thread::yield_now();
            }
            recorded(bytes)
        }
    });
    let router = router(hosted);
    let hangs: Vec<_> =
        (0..4).map(|_| tokio::spawn(router.clone().oneshot(request("POST", "/elm-row/responses", "{}")))).collect();
    while inside.load(Ordering::SeqCst) == 0 {
        tokio::task::yield_now().await;
    }
    for _ in 0..4 {
        assert_eq!(ask(&router, request("POST", "/alder/responses", "{}")).await.status(), 200);
    }
    assert_eq!(inside.load(Ordering::SeqCst), 1, "one at a time of one book");
    ends.store(1, Ordering::SeqCst);
    for one in hangs {
        assert_eq!(one.await.unwrap().unwrap().status(), 200);
    }
}

#[tokio::test]
async fn the_log_hears_which_book_it_is_and_why_and_nothing_that_was_sent() {
    let mut hosted = two(|_| Answer::Refused);
    let heard: Arc<Mutex<Vec<(String, Event)>>> = Arc::default();
    hosted.tell = {
        let heard = Arc::clone(&heard);
        Arc::new(move |path, event| heard.lock().unwrap().push((path.into(), event.clone())))
    };
    hosted.books[0].take_in =
        Arc::new(|_| TakenIn { answer: Answer::Refused, why: Some("it is of another book".into()) });
    let router = router(hosted);
    let answer = ask(&router, request("POST", "/elm-row/responses", "{\"note\":\"blue door\"}")).await;
    assert_eq!(text(answer).await, r#"{"outcome":"not recorded"}"#, "the stranger is not told");
    ask(&router, request("POST", "/alder/responses", vec![b' '; 256 * 1024 + 1])).await;
    ask(&router, request("PUT", "/none", "")).await;
    let from = IpAddr::from([192, 0, 2, 1]);
    let expected = [
        ("elm-row", Event::Response(from, 400, Some("it is of another book".into()))),
        ("alder", Event::Response(from, 413, Some("it is larger than a response can be".into()))),
        ("", Event::Refused(from, 405)),
    ];
    assert_eq!(*heard.lock().unwrap(), expected.map(|(path, event)| (path.to_owned(), event)));
}
