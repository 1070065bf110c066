//! What the log hears: each refusal while they are few, and a flood of them in two lines, with its count.

use std::collections::BTreeMap;
use std::net::IpAddr;
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use tokio::time::Instant;

use super::limits::network;
use super::{Event, Tell};

/// So many refusals of one address are told one by one.
const LINES: u64 = 10;
/// How many addresses are told apart at once; further ones are counted together.
const ADDRESSES: usize = 256;

/// Hands on what the log hears of one book, or of none.
pub(super) struct Log {
    tell: Tell,
    /// Where the book is served.
    path: String,
    quiet: Duration,
    refused: Mutex<BTreeMap<Option<IpAddr>, Refused>>,
}

/// What was refused to an address, one after the other.
struct Refused {
    times: u64,
    last: Instant,
}

impl Log {
    /// A log in which a flood has ended once nothing more of it came for so long.
    pub(super) fn new(tell: Tell, path: &str, quiet: Duration) -> Self {
        Self { tell, path: path.into(), quiet, refused: Mutex::default() }
    }

    fn tell(&self, event: &Event) {
        (self.tell)(&self.path, event);
    }

    /// Hears of one event.
    pub(super) fn hear(&self, event: Event, now: Instant) {
        let Some(from) = event.refused() else {
            return self.tell(&event);
        };
        let times = self.count(from.map(network), now);
        if times <= LINES {
            self.tell(&event);
        } else if times == LINES + 1 {
            self.tell(&Event::Flood(from));
        }
    }

    fn count(&self, from: Option<IpAddr>, now: Instant) -> u64 {
        let mut refused = self.refused.lock().unwrap_or_else(PoisonError::into_inner);
        let known = refused.contains_key(&from) || refused.len() < ADDRESSES;
        let one = refused.entry(from.filter(|_| known)).or_insert(Refused { times: 0, last: now });
        one.times += 1;
        one.last = now;
        one.times
    }

    /// Tells of floods that have ended by now.
    pub(super) fn sweep(&self, now: Instant) {
        self.end(|last| now.saturating_duration_since(last) >= self.quiet);
    }

    /// Tells of every flood: the server ends.
    pub(super) fn close(&self) {
        self.end(|_| true);
    }

    fn end(&self, is_over: impl Fn(Instant) -> bool) {
        let mut refused = self.refused.lock().unwrap_or_else(PoisonError::into_inner);
        refused.retain(|from, one| {
            let over = is_over(one.last);
            if over && one.times > LINES {
                self.tell(&Event::FloodEnded(*from, one.times - LINES));
            }
            !over
        });
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;

    #[test]
    fn a_flood_is_two_lines_and_its_count_and_others_are_told_meanwhile() {
        let heard: Arc<Mutex<Vec<Event>>> = Arc::default();
        let tell: Tell = {
            let heard = Arc::clone(&heard);
            Arc::new(move |_, event| heard.lock().unwrap().push(event.clone()))
        };
        let log = Log::new(tell, "", Duration::from_secs(10));
        let (one, other, now) = (IpAddr::from([192, 0, 2, 1]), IpAddr::from([192, 0, 2, 2]), Instant::now());
        for _ in 0..300_000 {
            log.hear(Event::Crowded(one), now);
        }
        log.hear(Event::Response(other, 400, None), now);
        log.hear(Event::Response(one, 200, None), now);
        log.sweep(now + Duration::from_secs(9));
        assert_eq!(heard.lock().unwrap().len(), 10 + 1 + 2);
        log.sweep(now + Duration::from_secs(10));
        let last = heard.lock().unwrap().last().cloned().unwrap();
        assert_eq!(last, Event::FloodEnded(Some(one), 299_990));
        log.close();
        assert_eq!(heard.lock().unwrap().len(), 14, "what was told one by one is no flood");
    }

    #[test]
    fn a_crowd_of_addresses_is_counted_together() {
        let heard: Arc<Mutex<u32>> = Arc::default();
        let tell: Tell = {
            let heard = Arc::clone(&heard);
            Arc::new(move |_, _| *heard.lock().unwrap() += 1)
        };
        let log = Log::new(tell, "", Duration::from_secs(10));
        let now = Instant::now();
        for n in 0..100_000u32 {
            log.hear(Event::Crowded(IpAddr::from(n.to_be_bytes())), now);
        }
        assert!(*heard.lock().unwrap() <= 256 + 11);
        assert!(log.refused.lock().unwrap().len() <= ADDRESSES + 1);
    }
}
