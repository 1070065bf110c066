//! A book's record on the disk, and the record held open to add to it.

use std::fs::{File, OpenOptions};
use std::io::{Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use crate::ledger::{Chain, LedgerEnd};

use super::disk::Disk;
use super::error::RecordError;
use super::lock::Lock;

/// The record of a book. May be shared by threads and by processes: one at a time records.
#[derive(Debug)]
pub struct Store {
    /// The folder `record` of the book.
    pub(super) folder: PathBuf,
    pub(super) disk: Disk,
    known: Mutex<KnownLedger>,
}

/// The ledger as it was when it was last read or added to.
#[derive(Debug, Default)]
pub(super) struct KnownLedger {
    pub(super) chain: Chain,
    /// How long the file was.
    pub(super) length: u64,
    /// Its last line, by which the file is known again.
    pub(super) last: Vec<u8>,
}

/// The record, held open: nobody else records until this is dropped.
#[derive(Debug)]
pub struct Open<'s> {
    pub(super) store: &'s Store,
    pub(super) known: MutexGuard<'s, KnownLedger>,
    _lock: Lock,
}

impl Store {
    /// The record of the book in a folder. Nothing is read or written yet.
    pub fn of_book(book: &Path) -> Self {
        Self::on(Disk::default(), book)
    }

    pub(super) fn on(disk: Disk, book: &Path) -> Self {
        Self { folder: book.join("record"), disk, known: Mutex::default() }
    }

    pub(super) fn ledger(&self) -> PathBuf {
        self.folder.join("ledger.jsonl")
    }

    /// Waits for whoever records, and holds the record open. The folder is made when it is not there.
    ///
    /// # Errors
    /// When the disk refuses, or the ledger is not as it was written: then nothing can be added.
    pub fn open(&self) -> Result<Open<'_>, RecordError> {
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        self.disk.make_folder(&self.folder)?;
        let lock = Lock::take(&self.folder.join(".lock"))?;
        self.read(&mut known)?;
        if let Some((fault, more)) = known.chain.faults.split_first() {
            return Err(RecordError::Faulty(fault.clone(), more.len()));
        }
        // Whoever recorded last may have been killed before its files took their places.
        known.chain.lines.last().map_or(Ok(()), |last| self.settle(&last.fact))?;
        Ok(Open { store: self, known, _lock: lock })
    }

    /// Reads what is new since the last time, or all.
    fn read(&self, known: &mut KnownLedger) -> Result<(), RecordError> {
        let path = self.ledger();
        match std::fs::symlink_metadata(&path) {
            Ok(found) if !found.is_file() => return Err(RecordError::NotOurs(path)),
            Ok(_) => {}
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => {
                *known = KnownLedger::default();
                known.chain.hold_to(&self.look_beside()?);
                return Ok(());
            }
            Err(error) => return Err(RecordError::disk("read", &path, error)),
        }
        let failed = |error| RecordError::disk("read", &path, error);
        let mut file = OpenOptions::new().read(true).append(true).open(&path).map_err(failed)?;
        if known.is_in(&mut file).map_err(failed)? {
            let mut more = Vec::new();
            file.read_to_end(&mut more).map_err(failed)?;
            if more.is_empty() {
                return Ok(());
            }
            if known.add(&more) {
                return self.disk.flush(&file, &path).inspect_err(|_| *known = KnownLedger::default());
            }
        }
        let mut bytes = Vec::new();
        file.seek(SeekFrom::Start(0)).and_then(|_| file.read_to_end(&mut bytes)).map_err(failed)?;
        // A line that somebody was killed over may be here and not on the disk yet. Whoever finds it says
        // that it is recorded.
        *known = KnownLedger::default();
        self.disk.flush(&file, &path)?;
        self.disk.flush_folder(&self.folder)?;
        *known = KnownLedger::of(&bytes);
        known.chain.hold_to(&self.look_beside()?);
        Ok(())
    }
}

impl KnownLedger {
    fn of(bytes: &[u8]) -> Self {
        let chain = Chain::read(bytes);
        let whole = bytes.get(..chain.whole).unwrap_or(bytes);
        Self { length: bytes.len() as u64, last: last_line(whole).to_vec(), chain }
    }

    /// Whether a file begins as it was known; then it stands at the end of what is known.
    fn is_in(&self, file: &mut File) -> std::io::Result<bool> {
        let sound = self.chain.is_sound() && self.chain.tail == LedgerEnd::Whole && !self.last.is_empty();
        if !sound || file.metadata()?.len() < self.length {
            return Ok(false);
        }
        file.seek(SeekFrom::Start(self.length - self.last.len() as u64))?;
        let mut last = vec![0; self.last.len()];
        file.read_exact(&mut last)?;
        Ok(last == self.last)
    }

    /// Takes whole lines that follow; false when they do not.
    pub(super) fn add(&mut self, more: &[u8]) -> bool {
        if !self.chain.add(more) {
            return false;
        }
        self.length += more.len() as u64;
        self.last = last_line(more).to_vec();
        true
    }
}

/// The last line with its line break.
fn last_line(bytes: &[u8]) -> &[u8] {
    bytes.split_inclusive(|byte| *byte == b'\n').next_back().unwrap_or_default()
}
