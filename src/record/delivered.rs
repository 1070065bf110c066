//! What came in a delivery, and that an issue came to hand: their forms, and how they are taken in. Both count
//! once the designer has confirmed them.

use std::collections::BTreeSet;

use serde::Deserialize;

use crate::ledger::{
    Acknowledged, Came, Chain, Delivery, Device, Fact, Head, ItemReceived, Moment, Received, TOLERANCE, Vouched,
};
use crate::units::Date;

use super::flood::Waits;
use super::receive::{Outcome, Receiver, Refusal, is_of, is_recorded, issued};
use super::response::{Malformed, Submission, count, device, line, nonce, text};
use super::store::Open;

/// The most photographs of one item.
const MAX_PHOTOS: usize = 40;

/// What came in a delivery.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedDelivery {
    /// Which form it is of.
    pub format: String,
    /// The book's id.
    pub book: String,
    /// The newest issue when the page was made.
    pub issue: u32,
    /// Which delivery it was.
    pub delivery: Delivery,
    /// Who received it.
    pub by: String,
    /// Makes two that say the same two.
    pub nonce: String,
    /// When it was made, by the clock where it was made.
    pub made: Moment,
    /// The device that it was made on, and the how-manieth there; older pages do not say it.
    #[serde(default)]
    pub device: Option<Device>,
    /// The line of the ledger that names the issue, as the page stated it.
    #[serde(default)]
    pub ledger: Option<Head>,
    /// What was looked at.
    pub items: Vec<ItemReceived>,
}

/// That an issue came to hand.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedAcknowledgement {
    /// Which form it is of.
    pub format: String,
    /// The book's id.
    pub book: String,
    /// The issue.
    pub issue: u32,
    /// Who says so.
    pub by: String,
    /// Makes two that say the same two.
    pub nonce: String,
    /// When it was made, by the clock where it was made.
    pub made: Moment,
    /// The line of the ledger that names the issue, as the page stated it.
    #[serde(default)]
    pub ledger: Option<Head>,
}

impl HandedDelivery {
    pub(super) fn check(&self) -> Result<(), Malformed> {
        line("by", &self.by)?;
        line("delivery.note", &self.delivery.note)?;
        if !self.delivery.from.is_empty() {
            line("delivery.from", &self.delivery.from)?;
        }
        self.delivery.load.as_deref().map_or(Ok(()), |load| line("delivery.load", load))?;
        nonce(&self.nonce)?;
        device(self.device.as_ref())?;
        count(self.items.len())?;
        let mut seen = BTreeSet::new();
        for item in &self.items {
            if !seen.insert((&item.room, &item.item)) {
                return Err(Malformed::Twice(item.room.clone(), item.item.clone()));
            }
            check(item)?;
        }
        Ok(())
    }
}

fn check(item: &ItemReceived) -> Result<(), Malformed> {
    line("room", &item.room)?;
    line("item", &item.item)?;
    item.option.as_deref().map_or(Ok(()), |option| line("option", option))?;
    item.note.as_deref().map_or(Ok(()), |note| text("note", note))?;
    let looked: BTreeSet<_> = item.lines.iter().map(|line| line.of).collect();
    count(item.lines.len())?;
    if looked.len() != item.lines.len() {
        return Err(Malformed::Text("lines.of"));
    }
    if item.photos.len() > MAX_PHOTOS {
        return Err(Malformed::Text("photos"));
    }
    for photo in &item.photos {
        line("photos.name", &photo.name)?;
    }
    for one in &item.lines {
        one.words.as_deref().map_or(Ok(()), |words| text("lines.words", words))?;
    }
    let untold = item.lines.iter().any(|line| line.came == Came::Different && line.words.is_none());
    if untold || item.is_as_approved() != item.kept.is_none() {
        return Err(Malformed::NotSaid(item.room.clone(), item.item.clone()));
    }
    Ok(())
}

impl HandedAcknowledgement {
    pub(super) fn check(&self) -> Result<(), Malformed> {
        line("by", &self.by)?;
        nonce(&self.nonce)
    }
}

/// What a response without a key states of where and when it was made.
struct Stated<'a> {
    book: &'a str,
    issue: u32,
    ledger: Option<Head>,
    made: Moment,
}

/// Its day, if it can be of this book and of now.
fn day_of(chain: &Chain, stated: &Stated<'_>, at: Moment) -> Result<Date, Refusal> {
    if !is_of(chain, stated.book) {
        return Err(Refusal::OtherBook);
    }
    if let Some(head) = stated.ledger.filter(|head| !head.is_in(&chain.lines)) {
        return Err(Refusal::OtherLedger(head.line));
    }
    if issued(chain).all(|issued| issued.number != stated.issue) {
        return Err(Refusal::NoIssue(stated.issue));
    }
    if stated.made > at.plus_seconds(TOLERANCE) {
        return Err(Refusal::Ahead(stated.made));
    }
    stated.made.day().ok_or(Refusal::Malformed(Malformed::Text("made")))
}

impl Receiver {
    /// Takes in what came in a delivery.
    pub(super) fn received(
        &self,
        open: &mut Open<'_>,
        handed: &Submission,
        says: &HandedDelivery,
        at: Moment,
    ) -> Result<Outcome, Refusal> {
        let stated = Stated { book: &says.book, issue: says.issue, ledger: says.ledger, made: says.made };
        let on = day_of(open.chain(), &stated, at)?;
        if is_recorded(open.chain(), &handed.digest, false) || is_said(open.chain(), says) {
            return Ok(Outcome::Already);
        }
        for item in &says.items {
            self.is_shown(open.chain(), item)?;
        }
        open.may_wait(Waits::Deliveries, &says.by, handed.signed.len())?;
        open.may_carry(handed.photographs.values().map(|bytes| bytes.len() as u64).sum())?;
        let (delivery, by, items) = (says.delivery.clone(), says.by.clone(), says.items.clone());
        let (made, device) = (says.made, says.device.clone());
        let fact = Received { response: handed.digest, delivery, by, on, made, device, items };
        open.record_received(at, fact, &handed.value, &handed.photographs)?;
        Ok(Outcome::Waiting)
    }

    /// Whether some issue shows an item as it was held beside what came.
    fn is_shown(&self, chain: &Chain, item: &ItemReceived) -> Result<(), Refusal> {
        for issued in issued(chain) {
            let issue = self.issue(chain, issued.number)?;
            let found = issue.as_ref().and_then(|issue| issue.item(&item.room, &item.item));
            if found.is_some_and(|found| found.is(&item.mark)) {
                return Ok(());
            }
        }
        Err(Refusal::NotShown(item.room.clone(), item.item.clone()))
    }

    /// Takes in that an issue came to hand. The same person and issue are one fact.
    pub(super) fn acknowledged(
        &self,
        open: &mut Open<'_>,
        handed: &Submission,
        says: &HandedAcknowledgement,
        at: Moment,
    ) -> Result<Outcome, Refusal> {
        let stated = Stated { book: &says.book, issue: says.issue, ledger: says.ledger, made: says.made };
        let on = day_of(open.chain(), &stated, at)?;
        let vouched = Vouched::of(&open.chain().lines);
        let is_it = |fact: &Fact| match fact {
            Fact::Acknowledged(one) => {
                (one.issue, &one.by) == (says.issue, &says.by) && !vouched.is_back(&one.response)
            }
            _ => false,
        };
        if is_recorded(open.chain(), &handed.digest, false) || open.chain().lines.iter().any(|line| is_it(&line.fact)) {
            return Ok(Outcome::Already);
        }
        open.may_wait(Waits::Acknowledgements, &says.by, handed.signed.len())?;
        open.keep_response(&handed.value, &handed.digest)?;
        let by = says.by.clone();
        let fact = Acknowledged { response: handed.digest, issue: says.issue, by, on, made: says.made };
        open.append(at, Fact::Acknowledged(fact))?;
        Ok(Outcome::Waiting)
    }
}

/// Whether the same person said the same of the same delivery, and it was not taken back.
fn is_said(chain: &Chain, says: &HandedDelivery) -> bool {
    let vouched = Vouched::of(&chain.lines);
    chain.lines.iter().any(|line| match &line.fact {
        Fact::Received(one) => {
            (&one.delivery, &one.by, &one.items) == (&says.delivery, &says.by, &says.items)
                && !vouched.is_back(&one.response)
        }
        _ => false,
    })
}
