//! Who is let in: how many connections at once, in all and from one address, and how fast new ones may come.

use std::collections::BTreeMap;
use std::net::IpAddr;
use std::sync::{Arc, Mutex, PoisonError};

use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::Instant;

use super::limits::{Buckets, network};
use super::{Event, HostLimits, Proxies};

/// How many places each address has.
type PlacesByAddress = Arc<Mutex<BTreeMap<IpAddr, usize>>>;

/// So many places for each address.
struct PlacesOfEach {
    most: usize,
    held: PlacesByAddress,
}

/// The door of the server.
pub(super) struct ConnectionGate {
    places: Arc<Semaphore>,
    of_each: PlacesOfEach,
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
    held: PlacesByAddress,
}

/// Where bodies wait that are larger than others: so many at once, and of one address.
pub(super) struct LargeBodies {
    places: Arc<Semaphore>,
    of_each: PlacesOfEach,
}

/// The place of a large body; it is free again once this is dropped.
pub(super) struct LargeBody {
    _in_all: OwnedSemaphorePermit,
    _of_address: OfAddress,
}

impl LargeBodies {
    pub(super) fn new(limits: HostLimits) -> Self {
        let of_each = PlacesOfEach { most: limits.carried_each, held: PlacesByAddress::default() };
        Self { places: Arc::new(Semaphore::new(limits.carried_at_once)), of_each }
    }

    /// A place for a body from there, where there is one.
    pub(super) fn admit(&self, from: IpAddr) -> Option<LargeBody> {
        let of_address = self.of_each.take(from)?;
        let in_all = Arc::clone(&self.places).try_acquire_owned().ok()?;
        Some(LargeBody { _in_all: in_all, _of_address: of_address })
    }
}

impl PlacesOfEach {
    fn take(&self, from: IpAddr) -> Option<OfAddress> {
        let address = network(from);
        let mut held = self.held.lock().unwrap_or_else(PoisonError::into_inner);
        let count = held.entry(address).or_default();
        if *count >= self.most {
            return None;
        }
        *count += 1;
        drop(held);
        Some(OfAddress { address, held: Arc::clone(&self.held) })
    }
}

impl ConnectionGate {
    pub(super) fn new(limits: HostLimits, proxies: Proxies) -> Self {
        let connecting = Buckets::new(limits.connecting, None);
        let of_each = PlacesOfEach { most: limits.connections_each, held: PlacesByAddress::default() };
        Self { places: Arc::new(Semaphore::new(limits.connections)), of_each, connecting, proxies }
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
        self.of_each.take(from).ok_or(Event::Crowded(from))
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
    fn large_bodies_have_few_places_and_an_address_fewer() {
        let limits = HostLimits { carried_at_once: 3, carried_each: 2, ..HostLimits::default() };
        let bodies = LargeBodies::new(limits);
        let [one, other] = [[192, 0, 2, 1], [192, 0, 2, 2]].map(IpAddr::from);
        let held = [bodies.admit(one), bodies.admit(one)];
        assert!(held.iter().all(Option::is_some) && bodies.admit(one).is_none());
        let third = bodies.admit(other);
        assert!(third.is_some() && bodies.admit(other).is_none(), "no more are there in all");
        drop(held);
        assert!(bodies.admit(other).is_some() && bodies.admit(one).is_some());
    }

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
        assert_eq!(door.of_each.held.lock().unwrap().len(), 2, "who was let go holds nothing");
        let proxies = Proxies { trusted: vec!["192.0.2.1".parse().unwrap()], ..Proxies::default() };
        let limits = HostLimits { connections: 9, ..limits };
        let proxied = ConnectionGate::new(limits, proxies);
        let all: Vec<_> = (0..3).map(|_| proxied.admit(one, now)).collect();
        assert!(all.iter().all(Result::is_ok), "all of a proxy's connections are of one address");
        let others: Vec<_> = (0..3).map(|_| proxied.admit(other, now)).collect();
        assert_eq!(others.iter().filter(|place| place.is_ok()).count(), 2, "who comes past the proxy is counted");
    }
}
