//! Reads a ledger's bytes: facts in their order, and every fault by line.

use std::collections::BTreeMap;

use crate::digest::Digest;

use super::fault::{FaultKind, LedgerFault};
use super::line::{FIRST_BEFORE, Line, Raw};
use super::{Fact, Opened};

/// How a ledger ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LedgerEnd {
    /// With a whole line.
    #[default]
    Whole,
    /// With a whole line that lacks its line break alone; the line counts.
    NoBreak,
    /// In the middle of a line: nobody was told that it was recorded.
    Torn,
}

/// A ledger as read.
#[derive(Clone, Debug, Default)]
pub struct Chain {
    /// The lines that are as they were written, in the order of the file.
    pub lines: Vec<Line>,
    /// What is wrong, by line.
    pub faults: Vec<LedgerFault>,
    /// How it ends.
    pub tail: LedgerEnd,
    /// How many bytes from the start are whole lines; what is after them is a torn line.
    pub whole: usize,
}

impl Chain {
    /// Reads a ledger.
    pub fn read(bytes: &[u8]) -> Chain {
        let whole = bytes.iter().rposition(|byte| *byte == b'\n').map_or(0, |at| at + 1);
        let (lines, rest) = bytes.split_at(whole);
        // After a crash a file may be longer than what was written of it.
        let rest = rest.split_at(rest.iter().rposition(|byte| *byte != 0).map_or(0, |at| at + 1)).0;
        let mut raws: Vec<Option<Raw>> =
            lines.split_inclusive(|byte| *byte == b'\n').map(|line| Raw::sound(unbroken(line))).collect();
        let mut tail = if bytes.len() == whole { LedgerEnd::Whole } else { LedgerEnd::Torn };
        let mut end = whole;
        if let Some(raw) = Raw::sound(rest) {
            raws.push(Some(raw));
            (tail, end) = (LedgerEnd::NoBreak, whole + rest.len());
        } else if !is_beginning(rest) {
            // No torn line reads like this: somebody wrote here.
            raws.push(None);
            (tail, end) = (LedgerEnd::Whole, bytes.len());
        }
        let mut chain = Chain { tail, whole: end, ..Chain::default() };
        chain.link(raws);
        chain
    }

    /// Takes bytes that were added to a sound ledger since; false, and nothing taken, when they are not
    /// whole lines that follow: then the ledger is to be read anew.
    pub fn add(&mut self, bytes: &[u8]) -> bool {
        if !self.is_sound() || self.tail != LedgerEnd::Whole || !bytes.ends_with(b"\n") {
            return false;
        }
        let mut added: Vec<Line> = Vec::new();
        for text in bytes.split_inclusive(|byte| *byte == b'\n') {
            let last = added.last().or(self.lines.last()).map_or((0, FIRST_BEFORE), |last| (last.number, last.digest));
            let raw = Raw::sound(unbroken(text)).filter(|raw| raw.line == last.0 + 1 && raw.before == last.1);
            let Some(raw) = raw else { return false };
            let Ok(fact) = serde_json::from_value::<Fact>(raw.fact) else { return false };
            if matches!(fact, Fact::Opened(_)) != (raw.line == 1) {
                return false;
            }
            added.push(Line { number: raw.line, at: raw.at, before: raw.before, fact, digest: raw.sha256 });
        }
        self.lines.append(&mut added);
        self.whole += bytes.len();
        true
    }

    /// Whether something may be added: no fault but a torn end.
    pub fn is_sound(&self) -> bool {
        self.faults.is_empty()
    }

    /// The opening, where there is one.
    pub fn opening(&self) -> Option<&Opened> {
        match &self.lines.first()?.fact {
            Fact::Opened(opened) => Some(opened),
            _ => None,
        }
    }

    fn link(&mut self, raws: Vec<Option<Raw>>) {
        let mut links = Links::of(&raws);
        for (at, raw) in (1..).zip(raws) {
            let mut fault = |kind| self.faults.push(LedgerFault { at, kind });
            let Some(raw) = raw else {
                fault(FaultKind::Edited);
                links.unsound += 1;
                continue;
            };
            if let Some(kind) = links.step(&raw) {
                fault(kind);
            }
            let Ok(fact) = serde_json::from_value::<Fact>(raw.fact) else {
                fault(FaultKind::Unknown);
                continue;
            };
            if matches!(fact, Fact::Opened(_)) != (raw.line == 1) {
                fault(FaultKind::NotOpening);
            }
            self.lines.push(Line { number: raw.line, at: raw.at, before: raw.before, fact, digest: raw.sha256 });
        }
    }
}

/// A line without its break.
fn unbroken(line: &[u8]) -> &[u8] {
    line.strip_suffix(b"\n").unwrap_or(line)
}

/// Whether a text may be the beginning of a line that was not written to its end.
fn is_beginning(rest: &[u8]) -> bool {
    // A letter of several bytes may be cut too.
    let text = match std::str::from_utf8(rest) {
        Ok(text) => text,
        Err(error) if error.error_len().is_none() => {
            rest.get(..error.valid_up_to()).and_then(|sound| std::str::from_utf8(sound).ok()).unwrap_or_default()
        }
        Err(_) => return false,
    };
    let cut_short = serde_json::from_str::<serde_json::Value>(text).is_err_and(|error| error.is_eof());
    cut_short && (text.is_empty() || text.starts_with('{'))
}

/// How lines hang together, by their numbers.
struct Links {
    /// Every number that stands somewhere, with the digest of its first line.
    digests: BTreeMap<u32, Digest>,
    /// Numbers that were passed.
    passed: std::collections::BTreeSet<u32>,
    /// The greatest number that was passed.
    last: u32,
    /// Lines since then that are not as they were written.
    unsound: u32,
}

impl Links {
    fn of(raws: &[Option<Raw>]) -> Self {
        let mut digests = BTreeMap::new();
        for raw in raws.iter().flatten() {
            digests.entry(raw.line).or_insert(raw.sha256);
        }
        Self { digests, passed: std::collections::BTreeSet::new(), last: 0, unsound: 0 }
    }

    /// Takes the next line, and says what is wrong with its place.
    fn step(&mut self, raw: &Raw) -> Option<FaultKind> {
        if !self.passed.insert(raw.line) {
            return Some(FaultKind::Twice(raw.line));
        }
        if raw.line <= self.last {
            return Some(FaultKind::Moved(raw.line, self.last));
        }
        let (from, to) = (self.last + 1 + std::mem::take(&mut self.unsound), raw.line.saturating_sub(1));
        self.last = raw.line;
        // What stands elsewhere is told there.
        let gone = |number: &u32| !self.digests.contains_key(number);
        if let (Some(first), Some(last)) = ((from..=to).find(gone), (from..=to).rfind(gone)) {
            return Some(FaultKind::Missing(first, last));
        }
        let before = if raw.line == 1 { Some(FIRST_BEFORE) } else { self.digests.get(&(raw.line - 1)).copied() };
        before.filter(|before| *before != raw.before).map(|_| FaultKind::Unlinked(raw.line))
    }
}
