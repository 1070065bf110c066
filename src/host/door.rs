//! Who is let in: how many connections at once, in all and from one address, and how fast new ones may come.

use std::collections::BTreeMap;
use std::net::IpAddr;
use std::sync::{Arc, Mutex, PoisonError};

use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::Instant;

use super::limits::{Buckets, network};
use super::{Event, HostLimits, Proxies};

/// How many connections each address has.
type ConnectionsByAddress = Arc<Mutex<BTreeMap<IpAddr, usize>>>;

/// The door of the server.
pub(super) struct ConnectionGate {
    places: Arc<Semaphore>,
    each: usize,
    held: ConnectionsByAddress,
    connecting: Buckets,
    /// Connections from our own proxies are of many people: the proxies have limits of their own.
    proxies: Proxies,
}

/// A connection's place; it is free again once this is dropped.
pub(super) struct ConnectionPermit {
    _in_all: OwnedSemaphorePermit,
    _of_address: Option<OfAddress>,
}

/// One of the places that an address may have.
struct OfAddress {
    address: IpAddr,
    held: ConnectionsByAddress,
}

impl ConnectionGate {
    pub(super) fn new(limits: HostLimits, proxies: Proxies) -> Self {
        let connecting = Buckets::new(limits.connecting, None);
        let (places, held) = (Arc::new(Semaphore::new(limits.connections)), ConnectionsByAddress::default());
        Self { places, each: limits.connections_each, held, connecting, proxies }
    }

    /// A place for a connection from there, or what to tell of why there is none.
    pub(super) fn admit(&self, from: IpAddr, now: Instant) -> Result<ConnectionPermit, Event> {
        let of_address = if self.proxies.trusts(from) { None } else { Some(self.of_address(from, now)?) };
        let in_all = Arc::clone(&self.places).try_acquire_owned().map_err(|_| Event::Full)?;
        Ok(ConnectionPermit { _in_all: in_all, _of_address: of_address })
    }

    fn of_address(&self, from: IpAddr, now: Instant) -> Result<OfAddress, Event> {
        if !self.connecting.allows(from, now) {
            return Err(Event::Crowded(from));
        }
        let address = network(from);
        let mut held = self.held.lock().unwrap_or_else(PoisonError::into_inner);
        let count = held.entry(address).or_default();
        if *count >= self.each {
            return Err(Event::Crowded(from));
        }
        *count += 1;
        drop(held);
        Ok(OfAddress { address, held: Arc::clone(&self.held) })
    }

    /// Waits until all that were let in are gone.
    pub(super) async fn is_empty(&self, all: usize) {
        let all = u32::try_from(all).unwrap_or(u32::MAX);
        let _ = self.places.acquire_many(all).await;
    }
}

impl Drop for OfAddress {
    fn drop(&mut self) {
        let mut held = self.held.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(count) = held.get_mut(&self.address) {
            *count = count.saturating_sub(1);
            if *count == 0 {
                held.remove(&self.address);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_has_so_many_places_and_they_come_back() {
        let limits = HostLimits { connections: 3, connections_each: 2, ..HostLimits::default() };
        let (door, now) = (ConnectionGate::new(limits, Proxies::default()), Instant::now());
        let [one, other] = [[192, 0, 2, 1], [192, 0, 2, 2]].map(IpAddr::from);
        let first = door.admit(one, now).unwrap();
        let _second = door.admit(one, now).unwrap();
        assert_eq!(door.admit(one, now).err(), Some(Event::Crowded(one)));
        let _third = door.admit(other, now).unwrap();
        assert_eq!(door.admit(other, now).err(), Some(Event::Full));
        drop(first);
        assert!(door.admit(other, now).is_ok());
        assert_eq!(door.held.lock().unwrap().len(), 2, "who was let go holds nothing");
        let proxies = Proxies { trusted: vec!["192.0.2.1".parse().unwrap()], ..Proxies::default() };
        let limits = HostLimits { connections: 9, ..limits };
        let proxied = ConnectionGate::new(limits, proxies);
        let all: Vec<_> = (0..3).map(|_| proxied.admit(one, now)).collect();
        assert!(all.iter().all(Result::is_ok), "all of a proxy's connections are of one address");
        let others: Vec<_> = (0..3).map(|_| proxied.admit(other, now)).collect();
        assert_eq!(others.iter().filter(|place| place.is_ok()).count(), 2, "who comes past the proxy is counted");
    }
}
