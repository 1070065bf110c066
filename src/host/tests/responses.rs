//! Responses: what is handed on, what is not, and what is told of it.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use super::*;

async fn send(router: &Router, body: impl Into<Body>) -> (u16, String) {
    let answer = ask(router, request("POST", "/responses", body)).await;
    (answer.status().as_u16(), text(answer).await)
}

#[tokio::test]
async fn a_response_is_handed_on_as_it_came_and_its_outcome_told() {
    let (hosted, _) = hosted(|bytes| {
        assert_eq!(bytes, b"{\"format\":\"x\"}");
        Answer::Recorded {
            outcome: "already recorded",
            why: "two were not taken".into(),
            not_taken: vec!["kitchen/range".into()],
            newest: Some(2),
        }
    });
    let (status, told) = send(&router(hosted), "{\"format\":\"x\"}").await;
    let expected =
        r#"{"outcome":"already recorded","why":"two were not taken","not taken":["kitchen/range"],"newest issue":2}"#;
    assert_eq!((status, told.as_str()), (200, expected));
}

#[tokio::test]
async fn a_response_to_what_is_gone_is_told_so_and_which_issue_stands() {
    let told = send(&router(hosted(|_| Answer::Outdated { newest: Some(3) }).0), "{}").await;
    assert_eq!(told.0, 409);
    assert!(told.1.contains("\"outcome\":\"not recorded\"") && told.1.ends_with("\"newest issue\":3}"), "{}", told.1);
}

/// RFC 4918, section 11.5: what is answered with 507 is not sent again until somebody asks for it.
#[tokio::test]
async fn that_as_much_as_may_wait_waits_is_told_as_such() {
    let told = send(&router(hosted(|_| Answer::Full).0), "{}").await;
    assert_eq!(told.0, 507);
    assert!(told.1.contains("\"outcome\":\"not recorded\"") && told.1.contains("answer by private link"), "{}", told.1);
}

#[tokio::test]
async fn a_refusal_says_nothing_and_a_failure_asks_for_patience() {
    let refused = send(&router(hosted(|_| Answer::Refused).0), "{}").await;
    assert_eq!(refused, (400, r#"{"outcome":"not recorded"}"#.into()));
    let failed = send(&router(hosted(|_| Answer::Failed).0), "{}").await;
    assert_eq!(failed.0, 503);
    assert!(failed.1.contains("send it again later"));
    let broken = send(&router(hosted(|_| panic!("planted")).0), "{}").await;
    assert_eq!(broken, failed, "a fault of the program says no more than a full disk");
}

#[tokio::test]
async fn a_body_past_the_limit_is_never_looked_at() {
    let (hosted, heard) = hosted(|_| panic!("looked at"));
    let router = router(hosted);
    assert_eq!(send(&router, vec![b' '; 256 * 1024 + 1]).await.0, 413);
    let pieces = tokio_stream::iter((0..100).map(|_| Ok::<_, std::io::Error>(vec![b' '; 10_000])));
    assert_eq!(send(&router, Body::from_stream(pieces)).await.0, 413, "without a length that is told first");
    assert_eq!(heard.lock().unwrap().len(), 2);
    assert_eq!(send(&super::router(super::hosted(recorded).0), vec![b' '; 256 * 1024]).await.0, 200);
}

/// A body that says how large it is, from an address.
fn large(bytes: usize, from: u8) -> axum::extract::Request {
    let mut request = request("POST", "/responses", vec![b' '; bytes]);
    request.headers_mut().insert("content-length", bytes.into());
    request.extensions_mut().insert(Peer(IpAddr::from([192, 0, 2, from])));
    request
}

#[tokio::test]
async fn a_body_with_photographs_is_taken_where_it_says_how_large_it_is() {
    let router = router(hosted(recorded).0);
    assert_eq!(ask(&router, large(3 * 1024 * 1024, 1)).await.status(), 200);
    assert_eq!(ask(&router, large(3 * 1024 * 1024 + 1, 1)).await.status(), 413);
    let mut lies = large(256 * 1024 + 1, 1);
    lies.headers_mut().insert("content-length", 7.into());
    assert_eq!(ask(&router, lies).await.status(), 413, "one that says that it is small");
}

#[tokio::test]
async fn few_large_bodies_are_held_at_once_and_small_ones_are_taken_beside_them() {
    let (mut hosted, _) = hosted(recorded);
    hosted.limits = HostLimits { carried_at_once: 3, carried_each: 2, arriving: Duration::ZERO, ..hosted.limits };
    let router = router(hosted);
    let never = |from: u8| {
        let never = tokio_stream::pending::<Result<Vec<u8>, std::io::Error>>();
        let mut request = large(1024 * 1024, from);
        *request.body_mut() = Body::from_stream(never);
        let router = router.clone();
        tokio::spawn(async move { ask(&router, request).await.status() })
    };
    let slow = [never(1), never(1), never(2)];
    tokio::time::sleep(Duration::from_millis(50)).await;
    assert!(slow.iter().all(|one| !one.is_finished()), "a large one has longer to arrive");
    assert_eq!(ask(&router, large(1024 * 1024, 1)).await.status(), 429, "two of one address");
    assert_eq!(ask(&router, large(1024 * 1024, 3)).await.status(), 429, "three in all");
    slow.iter().for_each(tokio::task::JoinHandle::abort);
    tokio::time::sleep(Duration::from_millis(50)).await;
    assert_eq!(ask(&router, large(1024 * 1024, 3)).await.status(), 200);
}

#[tokio::test]
async fn a_body_that_never_ends_is_given_up() {
    let (mut hosted, _) = hosted(|_| panic!("looked at"));
    hosted.limits.arriving = Duration::from_millis(30);
    let never = tokio_stream::pending::<Result<Vec<u8>, std::io::Error>>();
    assert_eq!(send(&router(hosted), Body::from_stream(never)).await.0, 408);
}

#[tokio::test]
async fn a_page_elsewhere_or_on_a_disk_may_send_and_may_not_read() {
    let router = router(hosted(recorded).0);
    let asked = ask(&router, request("OPTIONS", "/responses", "")).await;
    assert_eq!(
        (asked.status().as_u16(), &asked.headers()["access-control-allow-methods"]),
        (204, &"POST".parse().unwrap())
    );
    assert_eq!(ask(&router, request("POST", "/responses", "{}")).await.headers()["access-control-allow-origin"], "*");
    let page = ask(&router, request("GET", "/client/", "")).await;
    assert!(!page.headers().contains_key("access-control-allow-origin"));
}

#[tokio::test]
async fn one_address_and_all_together_may_send_so_many() {
    let taken = Arc::new(AtomicUsize::new(0));
    let (mut hosted, heard) = hosted({
        let taken = Arc::clone(&taken);
        move |_| {
            taken.fetch_add(1, Ordering::SeqCst);
            Answer::Refused
        }
    });
    hosted.limits.sending = Pace { burst: 5, every: Duration::from_secs(60) };
    hosted.limits.sending_in_all = Pace { burst: 8, every: Duration::from_secs(60) };
    let router = router(hosted);
    for n in [1u8, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2] {
        let mut request = request("POST", "/responses", "{}");
        request.extensions_mut().insert(Peer(IpAddr::from([192, 0, 2, n])));
        ask(&router, request).await;
    }
    assert_eq!(taken.load(Ordering::SeqCst), 8, "five of the one, three of the other");
    assert_eq!(heard.lock().unwrap().iter().filter(|event| matches!(event, Event::Response(_, 429, _))).count(), 4);
}

#[tokio::test(flavor = "multi_thread")]
async fn one_is_recorded_at_a_time_and_a_crowd_is_sent_away() {
    let (inside, sent_away) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicUsize::new(0)));
    let (mut hosted, _) = hosted({
        let (inside, sent_away) = (Arc::clone(&inside), Arc::clone(&sent_away));
        move |bytes| {
            assert_eq!(inside.fetch_add(1, Ordering::SeqCst), 0, "two at once");
            // The first is at work until all who find no room have been sent away.
            while sent_away.load(Ordering::SeqCst) < 6 {
                std::thread::yield_now();
            }
            inside.fetch_sub(1, Ordering::SeqCst);
            recorded(bytes)
        }
    });
    hosted.limits.waiting = 4;
    let router = router(hosted);
    let sent: Vec<_> = (0..10).map(|_| tokio::spawn(send_owned(router.clone(), Arc::clone(&sent_away)))).collect();
    let mut statuses = Vec::new();
    for sent in sent {
        statuses.push(sent.await.unwrap());
    }
    statuses.sort_unstable();
    assert_eq!(statuses, [200, 200, 200, 200, 429, 429, 429, 429, 429, 429]);
}

async fn send_owned(router: Router, sent_away: Arc<AtomicUsize>) -> u16 {
    let status = send(&router, "{}").await.0;
    sent_away.fetch_add(usize::from(status == 429), Ordering::SeqCst);
    status
}
