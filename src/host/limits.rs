//! How much may come: in size, at once, and over time.

use std::collections::BTreeMap;
use std::net::{IpAddr, Ipv6Addr};
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use tokio::time::Instant;

/// How many addresses are told apart at once; further ones share what is left in all.
const ADDRESSES: usize = 4_096;

/// What is allowed.
#[derive(Clone, Copy, Debug)]
pub struct HostLimits {
    /// The largest body, in bytes.
    pub body: usize,
    /// The largest body that may take a place of its own, since photographs are with it, in bytes.
    pub carried: usize,
    /// How many such bodies there may be at once.
    pub carried_at_once: usize,
    /// How many of them may be of one address.
    pub carried_each: usize,
    /// How many bytes of a body are waited for one second more.
    pub carried_in_a_second: usize,
    /// How long the head of a request, or the next request of a connection, may take to arrive.
    pub head: Duration,
    /// How long a body may take to arrive.
    pub arriving: Duration,
    /// How long a request may take from its head to its answer.
    pub request: Duration,
    /// How long a connection may last; what it is being sent is then cut off.
    pub connection: Duration,
    /// How many connections there may be at once.
    pub connections: usize,
    /// How many of them may be of one address.
    pub connections_each: usize,
    /// How fast one address may open connections.
    pub connecting: Pace,
    /// How many responses may wait for those before them.
    pub waiting: usize,
    /// How fast one address may ask for files.
    pub reading: Pace,
    /// How fast one address may send responses.
    pub sending: Pace,
    /// How fast all together may send responses.
    pub sending_in_all: Pace,
    /// How long nothing of a flood may come until it has ended.
    pub quiet: Duration,
    /// How long what is under way may take to end, when the server is told to end.
    pub farewell: Duration,
}

impl HostLimits {
    /// The largest body of all that is taken, in bytes.
    pub const LARGEST: usize = 3 * 1024 * 1024;

    /// How much longer than others a body of so many bytes may take.
    pub(super) fn longer(&self, bytes: usize) -> Duration {
        let more = if bytes > self.body { bytes.min(self.carried) / self.carried_in_a_second.max(1) } else { 0 };
        Duration::from_secs(more as u64)
    }
}

/// So many at once, and after that one more in each interval.
#[derive(Clone, Copy, Debug)]
pub struct Pace {
    /// At once.
    pub burst: u32,
    /// Then one in each.
    pub every: Duration,
}

impl Default for HostLimits {
    fn default() -> Self {
        Self {
            body: 256 * 1024,
            carried: Self::LARGEST,
            carried_at_once: 8,
            carried_each: 2,
            carried_in_a_second: 32 * 1024,
            head: Duration::from_secs(10),
            arriving: Duration::from_secs(20),
            request: Duration::from_secs(40),
            connection: Duration::from_secs(300),
            connections: 256,
            connections_each: 32,
            connecting: Pace { burst: 200, every: Duration::from_millis(50) },
            waiting: 256,
            reading: Pace { burst: 600, every: Duration::from_millis(20) },
            sending: Pace { burst: 20, every: Duration::from_secs(3) },
            sending_in_all: Pace { burst: 400, every: Duration::from_millis(50) },
            quiet: Duration::from_secs(30),
            farewell: Duration::from_secs(15),
        }
    }
}

/// A bucket of tokens: one is taken for each request, and they come back over time.
#[derive(Clone, Copy, Debug)]
struct Bucket {
    /// When it is full again; never further ahead than all its tokens take to come back.
    full: Instant,
}

impl Bucket {
    /// Takes a token, where there is one.
    fn take(&mut self, pace: Pace, now: Instant) -> bool {
        let full = self.full.max(now) + pace.every;
        let fits = full <= now + pace.every * pace.burst;
        if fits {
            self.full = full;
        }
        fits
    }
}

/// Buckets by address, and one in all.
#[derive(Debug)]
pub(super) struct Buckets {
    each: Pace,
    all: Option<Pace>,
    state: Mutex<State>,
}

#[derive(Debug)]
struct State {
    by_address: BTreeMap<IpAddr, Bucket>,
    all: Bucket,
    /// The latest moment that anybody came: who read the clock, and then waited, comes no earlier.
    latest: Instant,
}

impl Buckets {
    /// Full buckets.
    pub(super) fn new(each: Pace, all: Option<Pace>) -> Self {
        let now = Instant::now();
        let state = State { by_address: BTreeMap::new(), all: Bucket { full: now }, latest: now };
        Self { each, all, state: Mutex::new(state) }
    }

    /// Whether one more may come from there now.
    pub(super) fn allows(&self, address: IpAddr, now: Instant) -> bool {
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        let address = network(address);
        let now = now.max(state.latest);
        state.latest = now;
        if !state.by_address.contains_key(&address) && state.by_address.len() >= ADDRESSES {
            state.by_address.retain(|_, bucket| bucket.full > now);
        }
        let known = state.by_address.contains_key(&address) || state.by_address.len() < ADDRESSES;
        if known && !state.by_address.entry(address).or_insert(Bucket { full: now }).take(self.each, now) {
            return false;
        }
        self.all.is_none_or(|pace| state.all.take(pace, now))
    }
}

/// What counts as one address: a household has a whole /64 of IPv6 (RFC 6177).
pub(super) fn network(address: IpAddr) -> IpAddr {
    match address.to_canonical() {
        IpAddr::V4(four) => IpAddr::V4(four),
        IpAddr::V6(six) => {
            let [a, b, c, d, ..] = six.segments();
            IpAddr::V6(Ipv6Addr::new(a, b, c, d, 0, 0, 0, 0))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SLOW: Pace = Pace { burst: 2, every: Duration::from_secs(3) };

    fn address(text: &str) -> IpAddr {
        text.parse().unwrap()
    }

    #[test]
    fn an_address_that_spent_its_tokens_gets_one_back_in_time() {
        let buckets = Buckets::new(SLOW, None);
        let (one, other, now) = (address("192.0.2.1"), address("192.0.2.2"), Instant::now());
        let allowed = |from, after| (0..9).filter(|_| buckets.allows(from, now + Duration::from_secs(after))).count();
        assert_eq!(allowed(one, 0), 2);
        assert_eq!(allowed(other, 0), 2, "another address has its own");
        assert_eq!(allowed(one, 3), 1);
        assert_eq!(allowed(one, 63), 2, "never more than the burst");
    }

    #[test]
    fn all_together_have_a_bucket_too() {
        let buckets = Buckets::new(SLOW, Some(Pace { burst: 3, every: Duration::from_secs(1) }));
        let now = Instant::now();
        let allowed = (1..=9).filter(|n| buckets.allows(address(&format!("192.0.2.{n}")), now)).count();
        assert_eq!(allowed, 3);
    }

    #[test]
    fn who_read_the_clock_before_others_and_had_to_wait_comes_no_earlier_than_they() {
        let buckets = Buckets::new(Pace { burst: 2, every: Duration::from_millis(1) }, None);
        let now = Instant::now();
        assert!(buckets.allows(address("192.0.2.1"), now + Duration::from_secs(1)));
        assert!(buckets.allows(address("192.0.2.1"), now));
        assert!(!buckets.allows(address("192.0.2.1"), now));
    }

    /// RFC 6177, section 2: a site is given a /64 at the least. RFC 4291, section 2.5.5.2: mapped IPv4.
    #[test]
    fn a_network_of_ipv6_counts_as_one_and_mapped_ipv4_as_ipv4() {
        assert_eq!(network(address("2001:db8:1:2:3:4:5:6")), network(address("2001:db8:1:2::9")));
        assert_ne!(network(address("2001:db8:1:2::1")), network(address("2001:db8:1:3::1")));
        assert_eq!(network(address("::ffff:192.0.2.1")), address("192.0.2.1"));
    }

    #[test]
    fn the_table_of_addresses_does_not_grow_without_end() {
        let buckets = Buckets::new(SLOW, None);
        let now = Instant::now();
        for n in 0..20_000u32 {
            buckets.allows(IpAddr::from(n.to_be_bytes()), now);
        }
        assert_eq!(buckets.state.lock().unwrap().by_address.len(), ADDRESSES);
        assert!(buckets.allows(address("192.0.2.1"), now + Duration::from_secs(60)));
        assert_eq!(buckets.state.lock().unwrap().by_address.len(), 1, "full buckets are forgotten");
    }
}
