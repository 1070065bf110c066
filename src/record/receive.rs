//! Takes in what was handed over: one way, whether from a file or from the server.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};

use crate::digest::Digest;
use crate::ledger::{
    Attestation, Chain, Decided, Decision, Fact, Issue, Issued, ItemDecision, Moment, Refused, Signed,
};

use super::error::RecordError;
use super::flood::{Full, Waits};
use super::keys::Key;
use super::mac::{hmac_sha256, same};
use super::response::{Decisions, Malformed, Submission, SubmissionKind};
use super::store::{Open, Store};

/// The largest issue that is read, in bytes.
const MAX_ISSUE: u64 = 64 * 1024 * 1024;

/// Takes in what is handed over for one book. May be shared by threads.
#[derive(Debug)]
pub struct Receiver {
    store: Store,
    /// Who may decide, by id.
    approvers: BTreeSet<String>,
    /// What may be measured: room and opening.
    pub(super) openings: BTreeSet<(String, String)>,
    issues: Mutex<BTreeMap<Digest, Arc<Issue>>>,
}

/// What became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It is recorded as the approver's own, or as what was measured.
    Recorded(Vec<Refused>),
    /// It is recorded, and it is not known whose it is.
    Unsigned(Vec<Refused>),
    /// It is recorded, and counts once the designer has confirmed it.
    Waiting,
    /// It was recorded before.
    Already,
}

impl Outcome {
    /// In words.
    pub fn words(&self) -> &'static str {
        match self {
            Self::Recorded(_) => "recorded",
            Self::Unsigned(_) => "recorded as unsigned",
            Self::Waiting => "recorded to be confirmed",
            Self::Already => "already recorded",
        }
    }

    /// The decisions that were not taken.
    pub fn refused(&self) -> &[Refused] {
        match self {
            Self::Recorded(refused) | Self::Unsigned(refused) => refused,
            Self::Already | Self::Waiting => &[],
        }
    }
}

/// Why it is not recorded.
#[derive(Debug)]
pub enum Refusal {
    /// It is no response.
    Malformed(Malformed),
    /// It is of another book, or nothing was issued.
    OtherBook,
    /// There is no such issue.
    NoIssue(u32),
    /// The page that it was made on states a line that is not in the ledger: its number.
    OtherLedger(u32),
    /// It says that it was made at a moment that is still to come.
    Ahead(Moment),
    /// Nobody of that name may decide.
    NoApprover(String),
    /// It was not made with the approver's key, or that key was withdrawn.
    WrongKey(String),
    /// None of its decisions is of what is issued now.
    NothingHolds(Vec<Refused>),
    /// What the designer wrote down can't be so of an item: nothing of it is recorded.
    NotSo(Refused),
    /// It was given of an item as an issue showed it that was the newest then; one made since shows it otherwise: the
    /// item, and both issues.
    SeenOtherwise(String, u32, u32),
    /// As much as may wait to be confirmed waits already.
    Full(Full),
    /// There is no such opening: room and opening.
    NoOpening(String, String),
    /// No issue shows the item so: room and item.
    NotShown(String, String),
    /// There is no such item in the newest issue: room and item.
    NoItem(String),
    /// No unsigned response begins with those digits, or several do.
    NoResponse(String),
    /// The item has no condition that is open: room and item.
    NoCondition(String, String),
    /// The item has several conditions that are open: each by whose it is, its digits and its words.
    Conditions(Vec<String>),
    /// There are no readings whose digest begins so or that one of that name made, or there are several: each
    /// by its digits.
    Readings(String, Vec<String>),
    /// It was fine, and could not be kept.
    Failed(RecordError),
}

impl Refusal {
    /// Whether it may be handed over again, as it is.
    pub fn may_be_repeated(&self) -> bool {
        matches!(self, Self::Failed(_))
    }
}

impl From<RecordError> for Refusal {
    fn from(error: RecordError) -> Self {
        Self::Failed(error)
    }
}

/// A decision that was not taken, in words.
pub fn said(refused: &Refused) -> String {
    format!("{}/{}: {}", plain(&refused.room), plain(&refused.item), refused.why)
}

/// Words of a stranger for a terminal: nothing that steers it, and not much of it.
pub fn plain(text: &str) -> String {
    text.chars().take(200).map(|letter| if letter.is_control() { ' ' } else { letter }).collect()
}

impl Receiver {
    /// A receiver for the book in a folder.
    pub fn new(book: &Path, approvers: BTreeSet<String>, openings: BTreeSet<(String, String)>) -> Self {
        Self { store: Store::of_book(book), approvers, openings, issues: Mutex::default() }
    }

    /// The record itself.
    pub fn store(&self) -> &Store {
        &self.store
    }

    /// The number of the newest issue; none when nothing was issued, or the record can't be read just now.
    pub fn newest_issue(&self) -> Option<u32> {
        issued(self.store.open().ok()?.chain()).map(|issued| issued.number).max()
    }

    pub(super) fn may_decide(&self, who: &str) -> bool {
        self.approvers.contains(who)
    }

    /// Takes in the bytes of a response, at a moment by the clock here. When this says that it is recorded,
    /// it is on the disk.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn take_in(&self, bytes: &[u8], at: Moment) -> Result<Outcome, Refusal> {
        let handed = Submission::read(bytes).map_err(Refusal::Malformed)?;
        // Held from the first look to the last write: nobody records the same meanwhile.
        let mut open = self.store.open()?;
        match &handed.says {
            SubmissionKind::Decisions(decisions) => self.decided(&mut open, &handed, decisions, at),
            SubmissionKind::Readings(readings) => self.measured(&mut open, &handed, readings, at),
            SubmissionKind::Delivery(delivery) => self.received(&mut open, &handed, delivery, at),
            SubmissionKind::Acknowledgement(one) => self.acknowledged(&mut open, &handed, one, at),
        }
    }

    fn decided(
        &self,
        open: &mut Open<'_>,
        handed: &Submission,
        says: &Decisions,
        at: Moment,
    ) -> Result<Outcome, Refusal> {
        let key = self.key_of(open.chain(), says);
        // Worked out for whoever it is, so that the time that it takes says nothing.
        let expected = hmac_sha256(key.as_ref().unwrap_or(&Key::of([0; 32])).bytes(), &handed.signed);
        if !is_of(open.chain(), &says.book) {
            return Err(Refusal::OtherBook);
        }
        if !self.approvers.contains(&says.who) {
            return Err(Refusal::NoApprover(says.who.clone()));
        }
        if let Some(stated) = says.ledger.filter(|stated| !stated.is_in(&open.chain().lines)) {
            return Err(Refusal::OtherLedger(stated.line));
        }
        let key = proving(says, key, &expected)?;
        if is_recorded(open.chain(), &handed.digest, key.is_some()) {
            return Ok(Outcome::Already);
        }
        let (items, refused) = self.holding(open.chain(), says)?;
        if items.is_empty() {
            return Err(Refusal::NothingHolds(refused));
        }
        if key.is_none() {
            open.may_wait(Waits::Responses, &says.who, handed.signed.len())?;
        }
        let (name, statement) = (says.signed.name.clone(), says.signed.statement.clone());
        let fact = Decided {
            response: handed.digest,
            issue: says.issue,
            who: says.who.clone(),
            by: if key.is_some() { Attestation::PrivateLink } else { Attestation::Unsigned },
            key: key.as_ref().map(Key::id),
            how: None,
            given: None,
            made: says.made,
            device: says.device.clone(),
            signed: Some(Signed { name, statement, drawn: !says.signed.drawing.is_empty() }),
            items,
            refused: refused.clone(),
        };
        open.keep_response(&handed.value, &handed.digest)?;
        open.append(at, Fact::Decided(fact))?;
        Ok(if key.is_some() { Outcome::Recorded(refused) } else { Outcome::Unsigned(refused) })
    }

    /// The approver's key that counts; none when there is none, or the file holds another.
    fn key_of(&self, chain: &Chain, says: &Decisions) -> Option<Key> {
        self.store.counting_key(&chain.lines, &says.who)
    }

    /// The decisions of what is issued now, and those of anything else.
    fn holding(&self, chain: &Chain, says: &Decisions) -> Result<(Vec<ItemDecision>, Vec<Refused>), Refusal> {
        let answered = self.issue(chain, says.issue)?.ok_or(Refusal::NoIssue(says.issue))?;
        let newest = issued(chain).map(|issued| issued.number).max().unwrap_or(says.issue);
        let newest = if newest == says.issue {
            Arc::clone(&answered)
        } else {
            self.issue(chain, newest)?.ok_or(Refusal::NoIssue(newest))?
        };
        let (mut taken, mut refused) = (Vec::new(), Vec::new());
        for asked in &says.items {
            match fault(asked, &answered, &newest) {
                None => taken.push(asked.clone()),
                Some(why) => refused.push(Refused { room: asked.room.clone(), item: asked.item.clone(), why }),
            }
        }
        Ok((taken, refused))
    }

    /// An issue that the ledger names, as it was issued.
    pub(super) fn issue(&self, chain: &Chain, number: u32) -> Result<Option<Arc<Issue>>, RecordError> {
        let Some(named) = issued(chain).find(|issued| issued.number == number) else {
            return Ok(None);
        };
        let mut issues = self.issues.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(issue) = issues.get(&named.sha256) {
            return Ok(Some(Arc::clone(issue)));
        }
        let path = self.store.folder.join("issues").join(format!("{number:04}.json"));
        let read = std::fs::symlink_metadata(&path).and_then(|facts| match facts.len() {
            _ if !facts.is_file() => Err(std::io::Error::other("it is no file of the record")),
            0..=MAX_ISSUE => std::fs::read(&path),
            _ => Err(std::io::ErrorKind::FileTooLarge.into()),
        });
        let bytes = read.map_err(|error| RecordError::disk("read", &path, error))?;
        let issue = serde_json::from_slice::<Issue>(&bytes).ok().filter(|_| Digest::of(&bytes) == named.sha256);
        let issue = Arc::new(issue.ok_or(RecordError::NotOurs(path))?);
        issues.insert(named.sha256, Arc::clone(&issue));
        Ok(Some(issue))
    }
}

/// The key that a response is sealed with; none of one that came without a seal.
fn proving(says: &Decisions, key: Option<Key>, expected: &[u8; 32]) -> Result<Option<Key>, Refusal> {
    match (&says.mac, key) {
        (None, _) => Ok(None),
        (Some(mac), Some(key)) if same(mac.as_bytes(), expected) => Ok(Some(key)),
        _ => Err(Refusal::WrongKey(says.who.clone())),
    }
}

/// Why a decision is not of what is issued now.
pub(super) fn fault(asked: &ItemDecision, answered: &Issue, newest: &Issue) -> Option<String> {
    let Some(item) = answered.item(&asked.room, &asked.item) else {
        return Some(format!("issue {} has no such item", answered.number));
    };
    if item.mark != asked.mark {
        return Some("the mark is not the one that was issued".into());
    }
    if newest.item(&asked.room, &asked.item).is_none_or(|now| !now.is(&asked.mark)) {
        return Some("the mark is no longer the one that was issued".into());
    }
    let agreed = matches!(asked.decision, Decision::Approved | Decision::ApprovedAsNoted);
    match &asked.option {
        Some(option) if item.shown().option(option).is_none() => Some("there is no such option".into()),
        None if agreed && item.shown().is_open() => Some("several options stand open, and it names none".into()),
        _ => None,
    }
}

pub(super) fn issued(chain: &Chain) -> impl Iterator<Item = &Issued> {
    chain.lines.iter().filter_map(|line| match &line.fact {
        Fact::Issued(issued) => Some(issued),
        _ => None,
    })
}

pub(super) fn is_of(chain: &Chain, book: &str) -> bool {
    chain.opening().is_some_and(|opened| opened.book == book)
}

/// Whether a response is recorded. One that was unsigned may come again with its proof.
pub(super) fn is_recorded(chain: &Chain, digest: &Digest, proved: bool) -> bool {
    chain.lines.iter().any(|line| match &line.fact {
        Fact::Decided(decided) => decided.response == *digest && (!proved || decided.by != Attestation::Unsigned),
        Fact::Measured(measured) => measured.response == *digest,
        Fact::Received(received) => received.response == *digest,
        Fact::Acknowledged(one) => one.response == *digest,
        _ => false,
    })
}
