//! What stands of each item: who decided what, of which mark, and whether it still holds.
//!
//! A decision is of a mark. When the item changes, the decision stays on record and holds no longer;
//! what nobody can know to be an approver's own counts only once it is confirmed.

mod held;
mod signed;
mod standing;
mod withdrawn;
mod word;

use std::collections::{BTreeMap, HashMap};

use crate::book::{Approval, Book, Room, Selection};
use crate::digest::Digest;
use crate::ledger::{Decided, Decision, Fact, Issue, IssuedItem, Line, MomentFault, Purpose, Statements, Vouched};
use crate::shown::{self, Change, ChangedField, Marked, MarkedField};

use super::receiving::Deliveries;

pub use held::{Ahead, HoldReason, TermsChange, between as terms_between, terms_of};
pub use signed::take as take_signed;
pub use standing::{ApprovalState, Whose};
pub use withdrawn::Withdrawn;
pub use word::{ApproverDecision, Given};

/// What stands of every item; nothing while nothing was issued for approval.
#[derive(Clone, Debug, Default)]
pub struct Approvals {
    items: BTreeMap<(String, String), ItemApproval>,
    /// Responses whose sender nobody can know yet, by whom they name: in the book's order, then strangers.
    pub unsigned: Vec<Unsigned>,
    /// What the newest issue for approval asks about, and the book holds no longer.
    pub withdrawn: Vec<Withdrawn>,
    /// Why nothing may be ordered on what was approved.
    pub held: Vec<HoldReason>,
    /// The newest issue for approval, where it bears a day ahead of its own.
    pub ahead: Option<Ahead>,
    /// Responses whose moments can't be, and what is wrong with them.
    pub odd: Vec<(Line, MomentFault)>,
    /// What was said of everything that came.
    pub deliveries: Deliveries,
    /// The newest issue for approval, and its day.
    pub issue: Option<(u32, crate::units::Date)>,
}

/// What stands of one item.
#[derive(Clone, Debug)]
pub struct ItemApproval {
    /// What it is now, and its mark.
    pub now: Marked,
    /// What it is now is what the newest issue asks about.
    pub asked: bool,
    /// The newest word of each approver who gave one, in the book's order.
    pub words: Vec<ApproverDecision>,
    /// Approvers whose word is wanted and not given, or holds no longer, by name: nobody's where one word is
    /// enough, and given.
    pub waits_for: Vec<String>,
    /// All of it in one.
    pub standing: ApprovalState,
}

/// Responses in one name whose sender nobody can know yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unsigned {
    /// Whom they say they are from, by id.
    pub who: String,
    /// The name.
    pub name: String,
    /// Each of them, in the order in which they came in.
    pub waiting: Vec<WaitingResponse>,
}

/// A response that waits to be confirmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WaitingResponse {
    /// Its digest.
    pub response: Digest,
    /// The issue that it answers.
    pub issue: u32,
    /// How many items it decides.
    pub items: usize,
}

impl Approvals {
    /// What stands in a book, by its record and what its items are now.
    pub fn of(book: &Book) -> Self {
        let Some(issue) = book.record.latest_for(Purpose::Approval) else { return Self::default() };
        let now = shown::items(book, &shown::as_read(book));
        let said = Statements::of(&book.record.lines);
        let (held, deliveries) = (held::of(book, issue), Deliveries::of(book));
        let issued: BTreeMap<u32, HashMap<(&str, &str), &IssuedItem>> =
            book.record.issues.iter().map(|(number, issue)| (*number, issue.by_item())).collect();
        let items = book.selections().filter_map(|(room, selection)| {
            let key = (room.folder.as_str(), selection.id.as_str());
            let facts =
                word::Facts { book, now: now.get(&key)?, said: &said, issued: &issued, terms: issue.terms.as_ref() };
            let mut item = ItemApproval::of(&facts, issue, room, selection);
            if matches!(item.standing, ApprovalState::Stale(_)) && item.may_be_unread(book, room, selection) {
                item.standing = ApprovalState::Unread;
            }
            if !held.is_empty() && item.standing == ApprovalState::Approved {
                item.standing = ApprovalState::Held;
            }
            if item.standing == ApprovalState::Approved
                && deliveries.taken(book, (room, selection), &item.now).is_some()
            {
                item.standing = ApprovalState::CameOtherwise;
            }
            Some(((room.folder.clone(), selection.id.clone()), item))
        });
        let items = items.collect();
        let odd: BTreeMap<u32, MomentFault> = said.odd().collect();
        let odd = book.record.lines.iter().filter_map(|line| Some((line.clone(), *odd.get(&line.number)?)));
        Self {
            items,
            unsigned: unsigned(book, said.vouched()),
            withdrawn: withdrawn::of(book, &said),
            held,
            ahead: held::ahead(book, issue.number),
            odd: odd.collect(),
            deliveries,
            issue: Some((issue.number, issue.on)),
        }
    }

    /// Whether anything was issued for approval.
    pub fn is_asked(&self) -> bool {
        self.issue.is_some()
    }

    /// What stands of an item; nothing while nothing was issued.
    pub fn item(&self, room: &Room, selection: &Selection) -> Option<&ItemApproval> {
        self.items.get(&(room.folder.clone(), selection.id.clone()))
    }

    /// What an item is now, and its mark.
    pub fn marked(&self, room: &Room, selection: &Selection) -> Option<&Marked> {
        Some(&self.item(room, selection)?.now)
    }

    /// What was approved and is withdrawn without a word of those who approved it.
    pub fn withdrawn_unasked(&self) -> impl Iterator<Item = &Withdrawn> {
        self.withdrawn.iter().filter(|gone| !gone.waits_for.is_empty())
    }

    /// Whether it may be ordered: every needed approver approved what it is now.
    pub fn is_orderable(&self, room: &Room, selection: &Selection) -> bool {
        self.item(room, selection).is_some_and(|item| item.standing == ApprovalState::Approved)
    }
}

impl ItemApproval {
    /// Whether all that changed may be what could not be read: a file that is missing, or words that are gone with
    /// nothing else in their place.
    fn may_be_unread(&self, book: &Book, room: &Room, selection: &Selection) -> bool {
        let of_the_room = |change: &Change| change.what == ChangedField::Marked(MarkedField::CounterLayout);
        let is_gone = |change: &Change| change.to.is_none() || of_the_room(change);
        let only_gone = || self.words.iter().flat_map(|word| &word.changes).all(is_gone);
        book.is_unsure_of(&room.folder) || book.is_unsure_of_item(room, selection) && only_gone()
    }

    fn of(facts: &word::Facts<'_>, issue: &Issue, room: &Room, selection: &Selection) -> Self {
        let issued =
            facts.issued.get(&issue.number).and_then(|all| all.get(&(room.folder.as_str(), selection.id.as_str())));
        let words = facts.words(&room.folder, &selection.id);
        let wanted = &facts.book.project.approvers;
        let holds = |id: &str| words.iter().any(|word| word.who == id && word.stands());
        let enough = facts.book.project.approval == Approval::Any && words.iter().any(ApproverDecision::stands);
        let waits = wanted.iter().filter(|approver| !enough && !holds(&approver.id.value));
        let waits_for = waits.map(|approver| approver.name.clone()).collect();
        let asked = issued.is_some_and(|issued| facts.now.is(&issued.mark));
        let standing = ApprovalState::of(facts.book, issued.is_some(), &words);
        Self { now: facts.now.clone(), asked, waits_for, standing, words }
    }

    /// Whose answer can be given now, by name: nobody's while what it is now was not issued to be answered, or while
    /// it must be revised by what came.
    pub fn still_to_answer(&self) -> &[String] {
        if self.asked { &self.waits_for } else { &[] }
    }

    /// Who rejected what it is now, by name.
    pub fn rejected_by(&self) -> Vec<String> {
        let rejects =
            |word: &&ApproverDecision| word.holds && word.given.is_known() && word.decision == Decision::Rejected;
        self.words.iter().filter(rejects).map(|word| word.name.clone()).collect()
    }

    /// The option that those who approved chose, where they chose one and agree.
    pub fn chosen(&self) -> Option<&str> {
        let stands = |word: &&ApproverDecision| word.holds && word.given.is_known() && word.rivals.is_empty();
        let approving = self.words.iter().filter(|word| stands(word) && word.approves());
        let mut options = approving.filter_map(|word| word.option.as_deref());
        let first = options.next()?;
        options.all(|other| other == first).then_some(first)
    }
}

/// What waits to be confirmed, by whom it names.
fn unsigned(book: &Book, vouched: &Vouched) -> Vec<Unsigned> {
    let mut found: BTreeMap<(usize, &str), Vec<WaitingResponse>> = BTreeMap::new();
    for decided in book.record.facts().filter_map(decided).filter(|decided| vouched.waits(decided)) {
        let place = book.project.approvers.iter().position(|approver| approver.id.value == decided.who);
        let of = found.entry((place.unwrap_or(usize::MAX), decided.who.as_str())).or_default();
        of.push(WaitingResponse { response: decided.response, issue: decided.issue, items: decided.items.len() });
    }
    let named = |((_, who), waiting)| Unsigned { who: str::to_string(who), name: name_of(book, who), waiting };
    found.into_iter().map(named).collect()
}

fn decided(fact: &Fact) -> Option<&Decided> {
    if let Fact::Decided(decided) = fact { Some(decided) } else { None }
}

/// The name of an approver; the id of one whom the book no longer names.
fn name_of(book: &Book, id: &str) -> String {
    let approver = book.project.approvers.iter().find(|approver| approver.id.value == id);
    approver.map_or_else(|| id.to_string(), |approver| approver.name.clone())
}
