//! How much may wait that anybody can have sent: a flood of it swells neither the record nor the pages.
//!
//! What came by private link is never counted and never held up. The limits are of our own choice: a household
//! answers a few times an issue.

use std::collections::BTreeMap;
use std::fmt;

use crate::digest::Digest;
use crate::ledger::{Fact, Vouched};

use super::receive::{Refusal, plain};
use super::store::Open;

/// The most that waits in one name.
pub const MOST_IN_A_NAME: usize = 20;
/// The most that waits.
pub const MOST_IN_ALL: usize = 60;
/// The most bytes that wait.
pub const MOST_BYTES: u64 = 4 * 1024 * 1024;
/// The most bytes of photographs that wait.
pub const MOST_PHOTOGRAPHED: u64 = 24 * 1024 * 1024;

/// What waits to be confirmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Waits {
    /// Responses that bear no key.
    Responses,
    /// Readings.
    Readings,
    /// What was said of deliveries.
    Deliveries,
    /// Acknowledgements of issues.
    Acknowledgements,
}

/// Why no more is taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Full {
    /// As many as may wait in that name.
    InAName(Waits, String),
    /// As many as may wait in all.
    InAll(Waits),
    /// As many bytes as may wait.
    Bytes(Waits),
    /// As many bytes of photographs as may wait.
    Photographed,
}

impl fmt::Display for Full {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let waits = match self {
            Self::InAName(waits, _) | Self::InAll(waits) | Self::Bytes(waits) => waits,
            Self::Photographed => &Waits::Deliveries,
        };
        let what = match waits {
            Waits::Responses => "responses that bear no key",
            Waits::Readings => "readings",
            Waits::Deliveries => "deliveries",
            Waits::Acknowledgements => "acknowledgements",
        };
        match self {
            Self::InAName(_, who) => write!(f, "{MOST_IN_A_NAME} {what} of `{}` wait to be confirmed", plain(who)),
            Self::InAll(_) => write!(f, "{MOST_IN_ALL} {what} wait to be confirmed"),
            Self::Bytes(_) => write!(f, "{} MiB of {what} wait to be confirmed", MOST_BYTES / 1024 / 1024),
            Self::Photographed => {
                write!(f, "{} MiB of photographs of {what} wait to be confirmed", MOST_PHOTOGRAPHED / 1024 / 1024)
            }
        }?;
        f.write_str(match waits {
            Waits::Responses => {
                ", and no more are taken; confirm them with `--confirm` or put them aside with `--not-theirs`; what \
                 comes by private link is taken all the same"
            }
            Waits::Readings | Waits::Deliveries | Waits::Acknowledgements => {
                ", and no more are taken; confirm them with `--confirm` or take them back with `--withdraw`"
            }
        })
    }
}

impl Open<'_> {
    /// Whether one more of so many bytes may wait, in that name.
    pub(super) fn may_wait(&self, waits: Waits, who: &str, bytes: usize) -> Result<(), Refusal> {
        let waiting = self.waiting(waits);
        let full = if waiting.values().filter(|name| **name == who).count() >= MOST_IN_A_NAME {
            Full::InAName(waits, who.into())
        } else if waiting.len() >= MOST_IN_ALL {
            Full::InAll(waits)
        } else if waiting.keys().map(|one| self.size(one)).sum::<u64>() + bytes as u64 > MOST_BYTES {
            Full::Bytes(waits)
        } else {
            return Ok(());
        };
        Err(Refusal::Full(full))
    }

    /// Whether so many more bytes of photographs may wait.
    pub(super) fn may_carry(&self, bytes: u64) -> Result<(), Refusal> {
        let lines = &self.chain().lines;
        let vouched = Vouched::of(lines);
        let waits = lines.iter().filter_map(|line| match &line.fact {
            Fact::Received(one) if vouched.is_open(&one.response) => Some(one.photographs()),
            _ => None,
        });
        let waiting: u64 = waits.flat_map(BTreeMap::into_values).map(u64::from).sum();
        let fits = bytes == 0 || waiting + bytes <= MOST_PHOTOGRAPHED;
        if fits { Ok(()) } else { Err(Refusal::Full(Full::Photographed)) }
    }

    /// What waits, and in whose name.
    fn waiting(&self, waits: Waits) -> BTreeMap<Digest, &str> {
        let lines = &self.chain().lines;
        let vouched = Vouched::of(lines);
        let found = lines.iter().filter_map(|line| match (waits, &line.fact) {
            (Waits::Responses, Fact::Decided(one)) if vouched.waits(one) => Some((one.response, one.who.as_str())),
            (Waits::Readings, Fact::Measured(one)) if vouched.readings_wait(one) => {
                Some((one.response, one.by.as_str()))
            }
            (Waits::Deliveries, Fact::Received(one)) if vouched.is_open(&one.response) => {
                Some((one.response, one.by.as_str()))
            }
            (Waits::Acknowledgements, Fact::Acknowledged(one)) if vouched.is_open(&one.response) => {
                Some((one.response, one.by.as_str()))
            }
            _ => None,
        });
        found.collect()
    }

    /// How large the file of a response is; nothing where it is gone.
    fn size(&self, response: &Digest) -> u64 {
        let file = self.store.place("responses", &format!("{response}.json"));
        std::fs::symlink_metadata(file).map_or(0, |facts| facts.len())
    }
}
