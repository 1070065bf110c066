//! What came of each item, by the record: as it was approved, or otherwise, and what that does to its approval.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::book::{Book, ProductOption, Room, Selection};
use crate::ledger::{
    Came, Fact, IssuedItem, ItemContent, ItemReceived, Kept, LineReceived, Moment, Purpose, Received, TOLERANCE,
    Vouched,
};
use crate::shown::{self, Marked};
use crate::units::{Date, LeadTime, Phrase, Wrote, phrase};

use super::approval::{ApprovalState, Approvals};

mod parts;

pub use parts::{Counted, named};

/// What was said of everything that came.
#[derive(Clone, Debug, Default)]
pub struct Deliveries {
    said: BTreeMap<(String, String), Vec<Said>>,
    /// Deliveries that count for nothing yet, in the order in which they came in.
    pub waiting: Vec<Arc<Received>>,
}

/// What somebody said of one item of a delivery.
#[derive(Clone, Debug)]
pub struct Said {
    /// The delivery.
    pub received: Arc<Received>,
    /// What came.
    pub item: ItemReceived,
    /// The line of the ledger.
    pub line: u32,
    /// Whether it was confirmed.
    pub counts: bool,
}

/// How it stands with what came of an item.
#[derive(Clone, Copy, Debug)]
pub enum Receipt<'a> {
    /// Nobody has received it.
    Nothing,
    /// It came as it was approved.
    AsApproved(&'a Said),
    /// It came as it was approved as far as anybody looked at it: that is not all of it.
    LookedAtInPart(&'a Said),
    /// So many of them came, and the rest is still to come.
    InPart(&'a Said, Counted),
    /// It came otherwise, was taken, and a revision that was issued since is approved.
    Revised(&'a Said),
    /// It came as it was approved then, and something else is approved now.
    Changed(&'a Said),
    /// It came otherwise and was taken: what was approved is not what came.
    Taken(&'a Said),
    /// It came otherwise, and was sent back or set aside.
    Otherwise(&'a Said),
    /// Two say different things of it, in the same delivery.
    Disputed(&'a Said, &'a Said),
}

impl Receipt<'_> {
    /// Whether it may be set, as far as what came goes.
    pub fn is_good(self) -> bool {
        matches!(self, Self::AsApproved(_) | Self::Revised(_))
    }
}

/// By when what came otherwise can be claimed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClaimBy {
    /// That is not known: nobody asked the supplier.
    Unknown,
    /// Until that day.
    Until(Date),
}

impl Deliveries {
    /// By the record of a book.
    pub fn of(book: &Book) -> Self {
        let vouched = Vouched::of(&book.record.lines);
        let mut all = Self::default();
        for line in &book.record.lines {
            let Fact::Received(received) = &line.fact else { continue };
            if vouched.is_back(&received.response) {
                continue;
            }
            let is_ahead = received.made > line.at.plus_seconds(TOLERANCE);
            let counts = !is_ahead && vouched.is_confirmed(&received.response);
            let received = Arc::new(received.clone());
            if !counts {
                all.waiting.push(Arc::clone(&received));
            }
            for item in &received.items {
                let (received, item) = (Arc::clone(&received), item.clone());
                let key = (item.room.clone(), item.item.clone());
                all.said.entry(key).or_default().push(Said { received, item, line: line.number, counts });
            }
        }
        for said in all.said.values_mut() {
            in_order(said);
        }
        all
    }

    /// All that was said of an item, in the order in which it was made.
    pub fn said(&self, room: &Room, selection: &Selection) -> &[Said] {
        self.said.get(&(room.folder.clone(), selection.id.clone())).map_or(&[], Vec::as_slice)
    }

    /// How it stands with what came of an item.
    pub fn receipt<'a>(
        &'a self,
        book: &Book,
        approvals: &Approvals,
        (room, selection): (&Room, &Selection),
    ) -> Receipt<'a> {
        let Some((last, others)) = newest(self.said(room, selection)) else { return Receipt::Nothing };
        if let Some(other) = others.into_iter().find(|other| !other.item.says_as(&last.item)) {
            return Receipt::Disputed(other, last);
        }
        let Some(item) = approvals.item(room, selection) else { return Receipt::Changed(last) };
        let holds = last.is_what_is_now(book, &item.now);
        let taken = last.item.kept == Some(Kept::Taken);
        if let Some(counted) = parts::counted(self.said(room, selection), book, selection, &item.now) {
            return if counted.is_whole() { Receipt::AsApproved(last) } else { Receipt::InPart(last, counted) };
        }
        match (last.item.is_as_approved(), taken) {
            (true, _) if holds && !last.unlooked(book).is_empty() => Receipt::LookedAtInPart(last),
            (true, _) if holds => Receipt::AsApproved(last),
            (true, _) => Receipt::Changed(last),
            (false, false) => Receipt::Otherwise(last),
            (false, true) if item.standing == ApprovalState::Approved && !last.outdates(book, &item.now) => {
                Receipt::Revised(last)
            }
            (false, true) => Receipt::Taken(last),
        }
    }

    /// What was taken although it came otherwise than what an item is now, or than what it was before anybody
    /// could be asked anew.
    pub(super) fn taken<'a>(
        &'a self,
        book: &Book,
        (room, selection): (&Room, &Selection),
        now: &Marked,
    ) -> Option<&'a Said> {
        let (last, _) = newest(self.said(room, selection))?;
        let is_taken = !last.item.is_as_approved() && last.item.kept == Some(Kept::Taken);
        let is_part = || parts::counted(self.said(room, selection), book, selection, now).is_some();
        (is_taken && last.outdates(book, now) && !is_part()).then_some(last)
    }

    /// What came otherwise and is neither claimed nor settled, whether it was confirmed or not: a claim does not
    /// wait for that.
    pub fn to_claim<'a>(
        &'a self,
        book: &Book,
        approvals: &Approvals,
        (room, selection): (&Room, &Selection),
    ) -> Option<&'a Said> {
        let said = self.said(room, selection);
        let counted = approvals.item(room, selection).and_then(|item| parts::counted(said, book, selection, &item.now));
        let is_whole = counted.is_some_and(Counted::is_whole);
        // Parts that make up the whole are no want.
        let is_want = |one: &Said| !(is_whole && one.counts && one.is_short());
        let last = said.iter().rfind(|one| !one.item.is_as_approved() && is_want(one))?;
        // What came after it as approved, and is confirmed, takes its place; so does an approved revision.
        let is_replaced = |one: &Said| one.counts && one.received.delivery != last.received.delivery;
        let later = said.iter().skip_while(|one| !std::ptr::eq(*one, last)).skip(1);
        let settled = matches!(self.receipt(book, approvals, (room, selection)), Receipt::Revised(_));
        let claimed = selection.settled().and_then(|option| option.order.claimed_on.get());
        let is_claimed = claimed.is_some_and(|on| *on >= last.received.on);
        (!settled && !is_claimed && !later.into_iter().any(is_replaced)).then_some(last)
    }
}

/// Puts what was said of one item in the order in which it was made: by the clocks where it was made, and by the
/// device's own count of what one device said, whatever its clock says.
fn in_order(said: &mut [Said]) {
    // A later word of a device was made no earlier than those before it that count.
    let moments: Vec<Moment> = said
        .iter()
        .map(|one| {
            let Some(device) = &one.received.device else { return one.received.made };
            let before = said.iter().filter(|other| {
                let theirs = other.received.device.as_ref();
                other.counts && theirs.is_some_and(|theirs| theirs.id == device.id && theirs.turn < device.turn)
            });
            before.map(|other| other.received.made).max().map_or(one.received.made, |made| made.max(one.received.made))
        })
        .collect();
    let turn = |one: &Said| one.received.device.as_ref().map_or(0, |device| device.turn);
    let mut order: BTreeMap<u32, (Moment, u32)> = BTreeMap::new();
    for (one, moment) in said.iter().zip(moments) {
        order.insert(one.line, (moment, turn(one)));
    }
    said.sort_by_key(|one| (order.get(&one.line).copied(), one.line));
}

/// The newest statement that counts, and all that count of the same delivery.
fn newest(said: &[Said]) -> Option<(&Said, Vec<&Said>)> {
    let last = said.iter().rfind(|one| one.counts)?;
    let same = |one: &&Said| one.counts && one.received.delivery == last.received.delivery;
    Some((last, said.iter().filter(same).collect()))
}

impl Said {
    fn holds(&self, now: &Marked) -> bool {
        shown::holds(self.item.mark, self.item.option.as_deref(), now)
    }

    /// Whether what came is what the item is now: by its mark, or by all that can come in a carton. A price, words for the
    /// client and an option that was not chosen can't.
    fn is_what_is_now(&self, book: &Book, now: &Marked) -> bool {
        let then = self.beside(book);
        let chosen = ItemContent(&now.content).chosen();
        let is_chosen = self.item.option.as_deref().is_none_or(|came| chosen.is_none_or(|chosen| chosen == came));
        let is_same = |then: &IssuedItem| {
            let changes = shown::changes_to_rest_on(&then.content, &now.content, chosen);
            changes.iter().all(|change| !change.what.may_be_rested_on())
        };
        self.holds(now) || is_chosen && then.is_some_and(is_same)
    }

    /// Whether what an item is now was asked about before this came, or is what this was held beside: then
    /// nobody has approved what came.
    fn outdates(&self, book: &Book, now: &Marked) -> bool {
        let issues = book.record.issues.values().filter(|issue| issue.purpose == Purpose::Approval);
        let shows = |issue: &&crate::ledger::Issue| {
            issue.item(&self.item.room, &self.item.item).is_some_and(|issued| now.is(&issued.mark))
        };
        let first = issues.filter(shows).filter_map(|issue| book.record.heads.get(&issue.number)).map(|head| head.line);
        self.holds(now) || first.min().is_none_or(|line| line < self.line)
    }

    /// `damaged (finish: scratched), taken`.
    pub fn how(&self) -> Phrase {
        let worst = self.item.otherwise().map(|line| line.came).max().unwrap_or(Came::Approved);
        let told = |line: &LineReceived| match &line.words {
            Some(words) => phrase!("{}: {}", line.of.told(), Wrote(words)),
            None => line.of.told().into(),
        };
        let lines: Vec<Phrase> = self.item.otherwise().map(told).collect();
        if lines.is_empty() {
            return worst.word().into();
        }
        phrase!("{} ({})", worst.word(), Phrase::joined(lines, "; "))
    }

    /// By when it can be claimed.
    pub fn claim_by(&self, book: &Book, selection: &Selection) -> ClaimBy {
        let within = selection.settled().and_then(|option| claim_within(book, option));
        // Of a range the shorter time is sure.
        within.map_or(ClaimBy::Unknown, |within| {
            ClaimBy::Until(within.earliest().after(self.received.on, &book.project.calendar))
        })
    }
}

/// How long a claim can be made for a thing after it came: as its order says, or else its supplier.
pub fn claim_within(book: &Book, option: &ProductOption) -> Option<LeadTime> {
    let own = option.order.claim_within.get().copied();
    own.or_else(|| book.project.suppliers.called(option.supplier.text().trim())?.claim_within.get().copied())
}
