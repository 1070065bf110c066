//! Many responses: at once and in a row, without a socket and on one; each recorded exactly once.

use std::collections::BTreeSet;
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, RwLock};
use std::thread;
use std::time::{Duration, Instant};

use axum::Router;
use axum::body::Body;
use axum::http::Request;
use bookmatch::host::{Answer, HostLimits, Hosted, HostedBook, Pace, Proxies, ServedSite, router, run};
use bookmatch::ledger::Fact;
use bookmatch::serving::Stop;
use tower::ServiceExt;

use crate::issued::{IssuedBook, now};

/// The server of a book, that lets everybody in as fast as they come.
fn hosted(book: &IssuedBook) -> Hosted {
    let receiver = book.receiver();
    let take_in = move |bytes: &[u8]| match receiver.take_in(bytes, now()) {
        Ok(outcome) => {
            Answer::Recorded { outcome: outcome.words(), why: String::new(), not_taken: vec![], newest: None }.into()
        }
        Err(_) => Answer::Refused.into(),
    };
    let all = Pace { burst: 100_000, every: Duration::from_nanos(1) };
    let limits =
        HostLimits { sending: all, sending_in_all: all, request: Duration::from_secs(300), ..HostLimits::default() };
    let served = HostedBook {
        path: String::new(),
        site: RwLock::new(Arc::new(ServedSite::default())),
        read: None,
        watched: Default::default(),
        take_in: Arc::new(take_in),
        post: None,
    };
    Hosted { books: vec![served], tell: Arc::new(|_, _| {}), limits, proxies: Proxies::default() }
}

async fn send(router: Router, body: Vec<u8>) -> u16 {
    let request = Request::builder().method("POST").uri("/responses").body(Body::from(body)).unwrap();
    router.oneshot(request).await.unwrap().status().as_u16()
}

fn recorded_once(book: &IssuedBook, many: usize) {
    let responses = book.facts().into_iter().map(|fact| match fact {
        Fact::Decided(fact) => fact.response.to_string(),
        _ => panic!("{fact:?}"),
    });
    let responses: Vec<String> = responses.collect();
    assert_eq!(responses.len(), many);
    assert_eq!(responses.iter().collect::<BTreeSet<_>>().len(), many);
    for response in responses {
        assert!(book.path().join(format!("record/responses/{response}.json")).is_file());
    }
}

fn told(what: &str, many: usize, began: Instant) {
    let took = began.elapsed();
    println!("{what}: {many} responses in {:.1?}, {:.2?} each", took, took / u32::try_from(many).unwrap());
}

#[test]
fn two_hundred_at_once_are_recorded_once_each_and_those_sent_twice_too() {
    let book = IssuedBook::new();
    let router = router(hosted(&book));
    let bodies: Vec<Vec<u8>> = (0..100).map(|n| book.sealed(n)).collect();
    let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(4).enable_all().build().unwrap();
    let began = Instant::now();
    let twice = bodies.iter().chain(&bodies).cloned();
    let sent: Vec<_> = twice.map(|body| runtime.spawn(send(router.clone(), body))).collect();
    for sent in sent {
        assert_eq!(runtime.block_on(sent).unwrap(), 200);
    }
    recorded_once(&book, 100);
    told("at once, each twice", 200, began);
    let began = Instant::now();
    let sent: Vec<_> = (1_000..1_200).map(|n| runtime.spawn(send(router.clone(), book.sealed(n)))).collect();
    for sent in sent {
        assert_eq!(runtime.block_on(sent).unwrap(), 200);
    }
    recorded_once(&book, 300);
    told("at once", 200, began);
}

#[test]
fn two_thousand_in_a_row_are_recorded_once_each() {
    let book = IssuedBook::new();
    let router = router(hosted(&book));
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let began = Instant::now();
    for n in 0..2_000 {
        assert_eq!(runtime.block_on(send(router.clone(), book.sealed(n))), 200);
    }
    told("in a row", 2_000, began);
    recorded_once(&book, 2_000);
}

#[test]
fn twenty_at_once_on_sockets_are_recorded_once_each() {
    let book = IssuedBook::new();
    let (listener, stop) = (TcpListener::bind("127.0.0.1:0").unwrap(), Stop::default());
    let address = listener.local_addr().unwrap();
    let (hosted, ends) = (hosted(&book), stop.clone());
    let server = thread::spawn(move || run(listener, hosted, &ends));
    let began = Instant::now();
    let senders: Vec<_> = (0..20)
        .map(|n| book.sealed(n))
        .map(|body| {
            thread::spawn(move || {
                let mut stream = TcpStream::connect(address).unwrap();
                let length = body.len();
                write!(
                    stream,
                    "POST /responses HTTP/1.1\r\nhost: a\r\nconnection: close\r\ncontent-length: {length}\r\n\r\n"
                )
                .unwrap();
                stream.write_all(&body).unwrap();
                let mut told = String::new();
                stream.read_to_string(&mut told).unwrap();
                assert!(told.starts_with("HTTP/1.1 200") && told.ends_with(r#"{"outcome":"recorded"}"#), "{told}");
            })
        })
        .collect();
    senders.into_iter().for_each(|sender| sender.join().unwrap());
    told("at once on sockets", 20, began);
    stop.now();
    server.join().unwrap().unwrap();
    recorded_once(&book, 20);
}
