//! Adds a fact to the ledger: one line, one write, on the disk before anybody is told.

use std::fs::File;

use crate::ledger::{Chain, Fact, Head, LedgerEnd, Line, Moment, Opened};

use super::error::RecordError;
use super::store::{KnownLedger, Open};

/// An id that no other book has: 32 random hex digits.
///
/// # Errors
/// When the system gives no random bytes.
pub fn new_id() -> Result<String, RecordError> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes).map_err(|_| RecordError::NotRandom)?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

impl Open<'_> {
    /// The ledger as it stands.
    pub fn chain(&self) -> &Chain {
        &self.known.chain
    }

    /// The book's id; the ledger is begun with a new one when there is none yet.
    ///
    /// # Errors
    /// As [`Open::append`].
    pub fn book(&mut self, title: &str, at: Moment) -> Result<String, RecordError> {
        if let Some(opened) = self.chain().opening() {
            return Ok(opened.book.clone());
        }
        let book = new_id()?;
        self.append(at, Fact::Opened(Opened { book: book.clone(), title: title.into() }))?;
        Ok(book)
    }

    /// Records a fact. When this returns, its line is on the disk.
    ///
    /// A torn last line is cut off first. When the disk refuses, what was written of the line is cut off
    /// again; where even that fails, the next writer does so.
    ///
    /// # Errors
    /// When the disk refuses, or the fact does not fit: an opening comes first, and once.
    pub fn append(&mut self, at: Moment, fact: Fact) -> Result<Line, RecordError> {
        let first = self.known.chain.lines.is_empty();
        if matches!(fact, Fact::Opened(_)) != first {
            return Err(RecordError::NotOpening);
        }
        let line = Line::next(&self.known.chain, at, fact).map_err(|_| RecordError::NotExact)?;
        let bytes = line.bytes().map_err(|_| RecordError::NotExact)?;
        let (disk, path) = (&self.store.disk, self.store.ledger());
        let file = disk.open_to_append(&path).inspect_err(|_| self.store.take_away(&line.fact))?;
        let added = self.repair(&file).and_then(|start| {
            let added = disk.append(&file, &path, &bytes).and_then(|()| disk.flush(&file, &path));
            added.inspect_err(|_| {
                // Where the line may be there all the same, its files must be there too.
                if disk.cut(&file, &path, start).and_then(|()| disk.flush(&file, &path)).is_ok() {
                    self.store.take_away(&line.fact);
                }
            })
        });
        let added = added.and_then(|()| if first { disk.flush_folder(&self.store.folder) } else { Ok(()) });
        if let Err(error) = added {
            // What is on the disk now is read anew by whoever is next.
            *self.known = KnownLedger::default();
            return Err(error);
        }
        if !self.known.add(&bytes) {
            *self.known = KnownLedger::default();
        }
        self.store.keep_head(Head::of(&line));
        // It is recorded, whatever becomes of this: whoever is next does it.
        let _ = self.store.settle(&line.fact);
        Ok(line)
    }

    /// Puts the end of the ledger in order, and gives its length.
    fn repair(&mut self, file: &File) -> Result<u64, RecordError> {
        let (disk, path) = (&self.store.disk, self.store.ledger());
        let whole = self.known.chain.whole as u64;
        match self.known.chain.tail {
            LedgerEnd::Whole => return Ok(self.known.length),
            LedgerEnd::Torn => {
                disk.cut(file, &path, whole)?;
                self.known.length = whole;
            }
            LedgerEnd::NoBreak => {
                // What a crash left behind the line is cut off too.
                disk.cut(file, &path, whole)?;
                disk.append(file, &path, b"\n")?;
                self.known.last.push(b'\n');
                self.known.length = whole + 1;
                self.known.chain.whole += 1;
            }
        }
        self.known.chain.tail = LedgerEnd::Whole;
        disk.flush(file, &path)?;
        Ok(self.known.length)
    }
}
