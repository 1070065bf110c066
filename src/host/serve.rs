//! The sockets: how many there may be, how long each may last, and how they end.

use std::net::TcpListener;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::http::Request;
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper::service::{Service, service_fn};
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::TcpStream;
use tokio::sync::watch;
use tokio::task::JoinHandle;
use tokio::time::{Instant, sleep, timeout};

use super::door::ConnectionGate;
use super::guard::Peer;
use super::log::Log;
use super::mount::Mount;
use super::router::{Shared, routed};
use super::{Event, HostError, HostLimits, Hosted};
use crate::serving::Stop;

/// The largest head of a request, in bytes.
const HEAD: usize = 16 * 1024;
/// The most headers of a request.
const HEADERS: usize = 64;

/// Serves until told to stop; what is being recorded then is recorded to its end. When a book is published
/// anew, its new pages are served.
///
/// # Errors
/// When the address can't be listened on, or the system takes the listener away.
pub fn run(listener: TcpListener, hosted: Hosted, stop: &Stop) -> Result<(), HostError> {
    let address = listener.local_addr().map_err(HostError::Serve)?;
    listener.set_nonblocking(true).map_err(HostError::Serve)?;
    let runtime =
        tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().map_err(HostError::Serve)?;
    let shared = Shared::new(hosted);
    for mount in shared.mounts.iter().filter(|mount| !mount.site().is_empty()) {
        (shared.tell)(&mount.book.path, &Event::Serving(address));
    }
    let served = runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener).map_err(HostError::Serve)?;
        let follow = |mount: &Arc<Mount>| tokio::spawn(Arc::clone(mount).follow(Arc::clone(&shared.tell)));
        let following: Vec<_> = shared.mounts.iter().map(follow).collect();
        let counting = tokio::spawn(sweep(Arc::clone(&shared)));
        accept(&listener, &shared, stop).await;
        counting.abort();
        shared.logs().for_each(Log::close);
        following.iter().for_each(JoinHandle::abort);
        Ok(())
    });
    // What is being recorded holds a thread until it is on the disk: it is waited for.
    drop(runtime);
    served
}

/// Takes connections until told to stop, then lets those there are end.
async fn accept(listener: &tokio::net::TcpListener, shared: &Arc<Shared>, stop: &Stop) {
    let limits = shared.limits;
    let door = ConnectionGate::new(limits, shared.proxies.clone());
    let (ending, ends) = watch::channel(false);
    let mut asked = pin!(stop.asked());
    let router = routed(Arc::clone(shared));
    loop {
        let taken = tokio::select! {
            () = &mut asked => break,
            taken = listener.accept() => taken,
        };
        let Ok((stream, from)) = taken else {
            // Out of file handles, or gone before it was taken: others may still be served.
            sleep(Duration::from_millis(50)).await;
            continue;
        };
        let now = Instant::now();
        let place = match door.admit(from.ip(), now) {
            Ok(place) => place,
            Err(why) => {
                shared.log.hear(why, now);
                continue;
            }
        };
        let served = connection(stream, router.clone(), Peer(from.ip()), limits, ends.clone());
        tokio::spawn(async move {
            let _place = place;
            served.await;
        });
    }
    (shared.tell)("", &Event::Stopping);
    ending.send_replace(true);
    let _ = timeout(limits.farewell, door.is_empty(limits.connections)).await;
    // Whatever still records does so to its end, and nothing further begins.
    for mount in &shared.mounts {
        let _last = mount.recording.acquire().await;
        mount.recording.close();
    }
}

/// One connection, from its first request to its end.
async fn connection(
    stream: TcpStream,
    router: Router,
    peer: Peer,
    limits: HostLimits,
    mut ends: watch::Receiver<bool>,
) {
    let router = TowerToHyperService::new(router);
    let service = service_fn(move |mut request: Request<Incoming>| {
        request.extensions_mut().insert(peer);
        router.call(request)
    });
    let mut builder = http1::Builder::new();
    builder.timer(TokioTimer::new()).header_read_timeout(limits.head).max_buf_size(HEAD).max_headers(HEADERS);
    let mut served = pin!(builder.serve_connection(TokioIo::new(stream), service));
    let ended = async move {
        tokio::select! {
            _ = ends.wait_for(|ends| *ends) => {}
            () = sleep(limits.connection) => {}
        }
    };
    tokio::select! {
        _ = served.as_mut() => return,
        () = ended => served.as_mut().graceful_shutdown(),
    }
    // The request under way may end; then the connection does.
    let _ = timeout(limits.request, served).await;
}

/// Tells of floods once they have ended.
async fn sweep(shared: Arc<Shared>) {
    loop {
        sleep(shared.limits.quiet / 4).await;
        shared.logs().for_each(|log| log.sweep(Instant::now()));
    }
}
