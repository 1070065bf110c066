//! On a socket: slow strangers, crowds, and the end.

use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use super::*;
use crate::serving::Stop;

/// A server on a free port, ended when dropped.
struct Running {
    address: SocketAddr,
    stop: Stop,
    thread: Option<JoinHandle<Result<(), HostError>>>,
}

impl Running {
    fn new(hosted: Hosted) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let (address, stop) = (listener.local_addr().unwrap(), Stop::default());
        let ends = stop.clone();
        let thread = Some(thread::spawn(move || run(listener, hosted, &ends)));
        Self { address, stop, thread }
    }

    fn connect(&self) -> TcpStream {
        let stream = TcpStream::connect(self.address).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(20))).unwrap();
        stream
    }

    fn send(&self, text: &str) -> String {
        let mut stream = self.connect();
        stream.write_all(text.as_bytes()).unwrap();
        answer(&mut stream)
    }

    fn end(&mut self) {
        self.stop.now();
        if let Some(thread) = self.thread.take() {
            thread.join().unwrap().unwrap();
        }
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        self.end();
    }
}

/// All that comes until the connection ends, in whatever way it does.
fn answer(stream: &mut TcpStream) -> String {
    let mut bytes = Vec::new();
    let mut piece = [0; 4096];
    while let Ok(read) = stream.read(&mut piece) {
        if read == 0 {
            break;
        }
        bytes.extend_from_slice(&piece[..read]);
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

const POST: &str = "POST /responses HTTP/1.1\r\nhost: book.example\r\nconnection: close\r\ncontent-length: 2\r\n\r\n{}";

#[test]
fn a_page_and_a_response_go_over_a_socket() {
    let running = Running::new(hosted(recorded).0);
    let page = running.send("GET /client/ HTTP/1.1\r\nhost: book.example\r\nconnection: close\r\n\r\n");
    assert!(page.starts_with("HTTP/1.1 200") && page.ends_with("<body>cover</body>"), "{page}");
    let sent = running.send(POST);
    assert!(sent.starts_with("HTTP/1.1 200") && sent.ends_with(r#"{"outcome":"recorded"}"#), "{sent}");
}

#[test]
fn a_head_that_never_ends_and_one_that_is_too_large_are_given_up() {
    let (mut hosted, _) = hosted(recorded);
    hosted.limits.head = Duration::from_millis(200);
    let running = Running::new(hosted);
    let mut slow = running.connect();
    slow.write_all(b"GET /client/ HTTP/1.1\r\nhost: a").unwrap();
    assert!(!answer(&mut slow).contains("200 OK"), "given up, not answered");
    let large = format!("GET /client/ HTTP/1.1\r\nhost: a\r\nx: {}\r\n\r\n", "y".repeat(40_000));
    let mut stream = running.connect();
    let _ = stream.write_all(large.as_bytes());
    assert!(!answer(&mut stream).contains("200 OK"));
    let many = format!("GET /client/ HTTP/1.1\r\nhost: a\r\nconnection: close\r\n{}\r\n", "x: y\r\n".repeat(100));
    assert!(running.send(&many).starts_with("HTTP/1.1 431"));
}

#[test]
fn past_the_most_connections_further_ones_are_let_go_at_once() {
    let (mut hosted, heard) = hosted(recorded);
    hosted.limits.connections = 2;
    let running = Running::new(hosted);
    let _held = [running.connect(), running.connect()];
    assert_eq!(answer(&mut running.connect()), "");
    assert!(heard.lock().unwrap().contains(&Event::Full));
}

/// Connects from an address of this machine other than the usual one.
fn connect_from(address: [u8; 4], to: SocketAddr) -> TcpStream {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let stream = runtime.block_on(async {
        let socket = tokio::net::TcpSocket::new_v4().unwrap();
        socket.bind((std::net::Ipv4Addr::from(address), 0).into()).unwrap();
        socket.connect(to).await.unwrap().into_std().unwrap()
    });
    stream.set_nonblocking(false).unwrap();
    stream.set_read_timeout(Some(Duration::from_secs(20))).unwrap();
    stream
}

/// Three hundred slow strangers of one address.
#[cfg(target_os = "linux")]
#[test]
fn one_address_with_many_slow_connections_shuts_nobody_out_and_fills_no_log() {
    let (mut hosted, heard) = hosted(recorded);
    hosted.limits.quiet = Duration::from_millis(200);
    let mut running = Running::new(hosted);
    let _slow: Vec<TcpStream> = (0..300)
        .map(|_| {
            let mut stream = connect_from([127, 0, 0, 2], running.address);
            let _ = stream.write_all(b"GET /client/ HTTP/1.1\r\nhost: a");
            stream
        })
        .collect();
    let page = running.send("GET /client/ HTTP/1.1\r\nhost: book.example\r\nconnection: close\r\n\r\n");
    assert!(page.starts_with("HTTP/1.1 200"), "{page}");
    running.end();
    let heard = heard.lock().unwrap();
    let from = IpAddr::from([127, 0, 0, 2]);
    let ended = heard.iter().filter_map(|event| match event {
        Event::FloodEnded(Some(address), more) if *address == from => Some(*more),
        _ => None,
    });
    assert!(ended.sum::<u64>() > 200, "{heard:?}");
    assert!(heard.contains(&Event::Flood(Some(from))) && heard.len() < 30, "{heard:?}");
}

#[test]
fn what_is_being_recorded_when_the_server_is_told_to_end_is_recorded_and_answered() {
    let (begun, done) = (Arc::new(AtomicBool::new(false)), Arc::new(AtomicBool::new(false)));
    let ending = Arc::new(AtomicBool::new(false));
    let (hosted, heard) = hosted({
        let (begun, done, ending) = (Arc::clone(&begun), Arc::clone(&done), Arc::clone(&ending));
        move |bytes| {
            begun.store(true, Ordering::SeqCst);
            // It is at work until after the server was told to end.
            while !ending.load(Ordering::SeqCst) {
                thread::yield_now();
            }
            done.store(true, Ordering::SeqCst);
            recorded(bytes)
        }
    });
    let mut running = Running::new(hosted);
    let mut stream = running.connect();
    stream.write_all(POST.as_bytes()).unwrap();
    while !begun.load(Ordering::SeqCst) {
        thread::yield_now();
    }
    running.stop.now();
    ending.store(true, Ordering::SeqCst);
    running.end();
    assert!(done.load(Ordering::SeqCst));
    assert!(answer(&mut stream).ends_with(r#"{"outcome":"recorded"}"#));
    // That it ends may be told before or after.
    assert!(heard.lock().unwrap().contains(&Event::Response([127, 0, 0, 1].into(), 200, None)));
}

#[test]
fn a_stranger_who_leaves_in_the_middle_takes_nothing_back() {
    let [begun, left, done] = [(); 3].map(|()| Arc::new(AtomicBool::new(false)));
    let (hosted, _) = hosted({
        let [begun, left, done] = [&begun, &left, &done].map(Arc::clone);
        move |bytes| {
            begun.store(true, Ordering::SeqCst);
            while !left.load(Ordering::SeqCst) {
                thread::yield_now();
            }
            done.store(true, Ordering::SeqCst);
            recorded(bytes)
        }
    });
    let mut running = Running::new(hosted);
    let mut stream = running.connect();
    stream.write_all(POST.as_bytes()).unwrap();
    while !begun.load(Ordering::SeqCst) {
        thread::yield_now();
    }
    drop(stream);
    left.store(true, Ordering::SeqCst);
    running.end();
    assert!(done.load(Ordering::SeqCst));
}
