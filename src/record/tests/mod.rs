//! What a record goes through: faults of the disk, kills, full disks, others who record too.

#![expect(clippy::disallowed_methods, reason = "the tests lay out folders and look at them")]

mod faults;
mod full;
mod kills;
mod lost;
mod photographs;
mod together;
mod whole;

use std::fs;
use std::path::{Path, PathBuf};

use tempfile::TempDir;

use super::disk::{Disk, Fault, When};
use super::*;
use crate::digest::Digest;
use crate::ledger::{Acknowledged, Chain, Delivery, Fact, Invited, LedgerEnd, Moment, Received, Sent};

/// A book's folder with a record.
struct Ground {
    book: TempDir,
}

impl Ground {
    fn new() -> Self {
        // In memory where there is such a disk: these tests flush some ten thousand times.
        let memory = Path::new("/dev/shm");
        let book = if memory.is_dir() { tempfile::tempdir_in(memory) } else { tempfile::tempdir() };
        Self { book: book.unwrap() }
    }

    /// A ledger that was opened, with so many facts.
    fn with(facts: u32) -> Self {
        let ground = Self::new();
        let store = ground.store();
        let mut open = store.open().unwrap();
        open.book("Alder Court", moment()).unwrap();
        for number in 1..=facts {
            open.append(moment(), fact("a", number)).unwrap();
        }
        drop(open);
        ground
    }

    /// Two facts, the second of which was whole on the disk when its writer was killed, before it said so.
    fn with_one_that_nobody_was_told_of() -> Self {
        let ground = Self::with(1);
        let head = fs::read(ground.head()).unwrap();
        record(&ground.store(), "a", 2).unwrap();
        fs::write(ground.head(), head).unwrap();
        ground
    }

    fn head(&self) -> PathBuf {
        self.book.path().join("record/head.json")
    }

    fn store(&self) -> Store {
        Store::of_book(self.book.path())
    }

    fn store_on(&self, when: When) -> Store {
        Store::on(Disk { fault: Fault { when, ..Fault::default() } }, self.book.path())
    }

    fn ledger(&self) -> PathBuf {
        self.book.path().join("record/ledger.jsonl")
    }

    fn bytes(&self) -> Vec<u8> {
        fs::read(self.ledger()).unwrap_or_default()
    }

    fn chain(&self) -> Chain {
        Chain::read(&self.bytes())
    }

    /// The facts that [`fact`] made, of a sound ledger.
    fn facts(&self) -> Vec<(String, u32)> {
        let chain = self.chain();
        assert!(chain.is_sound(), "{:?}", chain.faults);
        chain.lines.iter().filter_map(|line| made(&line.fact)).collect()
    }
}

fn moment() -> Moment {
    "2027-01-16T19:22:03Z".parse().unwrap()
}

/// A fact that is known again by who and number: a delivery, a transmittal, an invitation or an acknowledgement, in
/// turn.
fn fact(who: &str, number: u32) -> Fact {
    let on = "2027-01-16".parse().unwrap();
    match number % 4 {
        0 => Fact::Received(Received {
            response: Digest::of(format!("{who} {number}").as_bytes()),
            delivery: Delivery { from: "Oren".into(), load: None, note: number.to_string() },
            by: who.into(),
            on,
            made: moment(),
            device: None,
            items: vec![],
        }),
        1 => Fact::Sent(Sent { issue: number, to: who.into(), role: None, on }),
        3 => Fact::Acknowledged(Acknowledged {
            response: Digest::of(format!("{who} {number}").as_bytes()),
            issue: number,
            by: who.into(),
            on,
            made: moment(),
        }),
        _ => Fact::Invited(Invited { who: who.into(), key: format!("{number:08x}"), on }),
    }
}

fn made(fact: &Fact) -> Option<(String, u32)> {
    match fact {
        Fact::Received(received) => Some((received.by.clone(), received.delivery.note.parse().unwrap())),
        Fact::Sent(sent) => Some((sent.to.clone(), sent.issue)),
        Fact::Acknowledged(one) => Some((one.by.clone(), one.issue)),
        Fact::Invited(invited) => Some((invited.who.clone(), u32::from_str_radix(&invited.key, 16).unwrap())),
        _ => None,
    }
}

/// Records a fact as whoever takes in a response does: not again when it stands there already.
fn record(store: &Store, who: &str, number: u32) -> Result<(), RecordError> {
    let mut open = store.open()?;
    open.book("Alder Court", moment())?;
    let known = open.chain().lines.iter().rev().any(|line| made(&line.fact) == Some((who.into(), number)));
    if !known {
        open.append(moment(), fact(who, number))?;
    }
    Ok(())
}
