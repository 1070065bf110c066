//! What is asked of those who decide, as data for the scripts of the theme.

use std::collections::BTreeMap;

use crate::assess::Amounts;
use crate::assess::approval::ApproverDecision;
use crate::book::{Book, Room, Selection};
use crate::digest::canonical;
use crate::ledger::{Head, Purpose, Stated};
use crate::units::{Currency, Money};
use crate::views::client::due::resting;
use crate::views::pages::PageBuilder;
use crate::views::shared::called::called;
use crate::views::shared::data::Data;
use crate::views::shared::state::State;
use serde::Serialize;

/// One issue: who is asked, what for, and where the answer goes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DecisionRequest {
    /// The book's id: 32 hex digits.
    pub book: String,
    /// Number of the issue.
    pub issue: u32,
    /// `approval` or `construction`.
    #[serde(rename = "for")]
    pub purpose: String,
    /// The line of the ledger that names the issue: by it a cut or exchanged ledger shows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ledger: Option<Head>,
    /// What the book is called.
    pub title: String,
    /// The address that a response is posted to.
    pub post: Option<String>,
    /// Where to write instead.
    pub email: Option<String>,
    pub approvers: Vec<RequestedApprover>,
    pub items: Vec<RequestedItem>,
    pub allowances: Vec<RequestedAllowance>,
    /// Three letters.
    pub currency: String,
    /// What stands before an amount: `$`, or the letters and a space.
    pub sign: String,
    /// Of the currency.
    pub decimals: u32,
}

/// Someone who is asked.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RequestedApprover {
    pub id: String,
    pub name: String,
}

/// One item that is asked about.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RequestedItem {
    /// The room's folder.
    pub room: String,
    /// What the room is called.
    #[serde(rename = "room name")]
    pub room_name: String,
    /// The item's id, unique in its room.
    pub item: String,
    pub name: String,
    pub tag: String,
    /// Its page, in the client's folder.
    pub page: String,
    /// The whole mark: 64 hex digits.
    pub mark: String,
    /// False when it is no longer what was issued: it is asked about in the next issue.
    pub askable: bool,
    pub options: Vec<RequestedOption>,
    /// The option that the book has settled on.
    pub chosen: Option<String>,
    /// The allowance that it draws on.
    pub allowance: Option<String>,
    /// Day by which it must be decided: `2027-01-26`.
    pub due: Option<String>,
    /// What waits for it.
    #[serde(rename = "holds up")]
    pub holds_up: Option<String>,
    /// What is on record.
    pub decided: Vec<EarlierDecision>,
}

/// An option that may be crossed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RequestedOption {
    pub id: String,
    pub name: String,
    /// Before tax, plain: `3180.00`.
    pub price: Option<String>,
    /// Whether it fits; absent where nothing is known.
    pub fit: Option<RequestedOptionFit>,
}

/// Whether an option fits, in plain words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RequestedOptionFit {
    /// The verdict and its shape.
    #[serde(flatten)]
    pub verdict: State,
    /// By how much, in a sentence.
    pub sentence: String,
}

/// A decision on record.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EarlierDecision {
    pub who: String,
    /// One of the four review stamps, in lower case.
    pub decision: String,
    pub option: Option<String>,
    pub note: Option<String>,
    /// `holds` or `stale`.
    pub state: String,
}

/// An allowance, and what the book's own choices draw on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RequestedAllowance {
    pub name: String,
    /// Plain: `14500.00`.
    pub allowed: String,
    /// Plain; absent while nothing is settled.
    pub settled: Option<String>,
}

/// What an issue froze, as far as pages need it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LatestIssue {
    /// The book's id.
    pub book: String,
    /// The last issue's number.
    pub number: u32,
    /// `approval` or `construction`.
    pub purpose: String,
    /// The line of the ledger that names it.
    pub line: Option<Head>,
    /// The mark of each item, by room and item.
    pub marks: BTreeMap<(String, String), String>,
}

impl PageBuilder<'_> {
    /// The newest issue for approval; none when there is none.
    pub fn issued(&self) -> Option<LatestIssue> {
        let issue = self.subject.book.record.latest_for(Purpose::Approval)?;
        let marks = issue.items.iter().map(|item| ((item.room.clone(), item.item.clone()), item.mark.to_string()));
        Some(LatestIssue {
            book: issue.book.clone(),
            number: issue.number,
            purpose: issue.purpose.word().into(),
            line: self.subject.book.record.heads.get(&issue.number).copied(),
            marks: marks.collect(),
        })
    }

    /// What is on record of an item, the newest word of each approver that is known to be theirs.
    fn before(&self, room: &Room, selection: &Selection) -> Vec<EarlierDecision> {
        let counts = |word: &ApproverDecision| word.holds && word.rivals.is_empty() && !word.lacks_option;
        let state = |word: &ApproverDecision| if counts(word) { "holds" } else { "stale" };
        let before = |word: &ApproverDecision| EarlierDecision {
            who: word.who.clone(),
            decision: word.decision.words().into(),
            option: word.option.clone(),
            note: word.note.clone(),
            state: state(word).into(),
        };
        self.known_words(room, selection).map(before).collect()
    }

    /// What the sheet for signature asks: every item, and the allowances.
    pub fn asked(&self) -> Option<Data> {
        let (issued, mut asked) = self.asking()?;
        asked.items = self.subject.book.selections().map(|(room, one)| self.asked_item(&issued, room, one)).collect();
        let allowances =
            self.subject.assessment.amounts.allowances.iter().map(|(name, allowance)| RequestedAllowance {
                name: name.clone(),
                allowed: allowance.allowed.plain(),
                settled: allowance.due.settled.map(Money::plain),
            });
        asked.allowances = allowances.collect();
        Some(Data::of(&asked))
    }

    /// What one item's page asks.
    pub fn asked_of(&self, asking: &(LatestIssue, DecisionRequest), room: &Room, selection: &Selection) -> Data {
        let (issued, asked) = asking;
        Data::of(&DecisionRequest { items: vec![self.asked_item(issued, room, selection)], ..asked.clone() })
    }

    /// What every page asks that asks at all, still without its items; none while no issue was made, or
    /// nobody is named who decides.
    pub fn asking(&self) -> Option<(LatestIssue, DecisionRequest)> {
        let issued = self.issued()?;
        let project = &self.subject.book.project;
        if project.approvers.is_empty() {
            return None;
        }
        let (post, email) = self.responses_go();
        let currency = currency_of(&self.subject.assessment.amounts);
        let asked = DecisionRequest {
            title: project.title.text().into(),
            post,
            email,
            approvers: project.approvers.iter().map(approver).collect(),
            items: vec![],
            allowances: vec![],
            currency: currency.code().into(),
            sign: currency.mark(),
            decimals: currency.decimals(),
            book: issued.book.clone(),
            issue: issued.number,
            purpose: issued.purpose.clone(),
            ledger: issued.line,
        };
        Some((issued, asked))
    }

    fn asked_item(&self, issued: &LatestIssue, room: &Room, selection: &Selection) -> RequestedItem {
        let mark =
            self.marks.get(&(room.folder.as_str(), selection.id.as_str())).map(ToString::to_string).unwrap_or_default();
        let as_issued = issued.marks.get(&(room.folder.clone(), selection.id.clone()));
        let options = selection.options.iter().enumerate().map(|(at, option)| RequestedOption {
            id: option.id.value.clone(),
            name: called(selection, option),
            price: Amounts::price(option).map(Money::plain),
            fit: self
                .fit(room, selection, option, at)
                .map(|fit| RequestedOptionFit { verdict: fit.verdict, sentence: fit.sentence.plain() }),
        });
        RequestedItem {
            room: room.folder.clone(),
            room_name: room.title().into(),
            item: selection.id.clone(),
            name: selection.name.value.clone(),
            tag: selection.tag.clone(),
            page: self.chrome.item_path(room, selection),
            askable: as_issued == Some(&mark),
            mark,
            options: options.collect(),
            chosen: selection.settled().map(|option| option.id.value.clone()),
            allowance: selection.allowance.get().cloned(),
            due: self.due_of(room, selection).map(|due| due.on.iso()),
            holds_up: self.waits_on(selection),
            decided: self.before(room, selection),
        }
    }

    /// What waits for a selection: what rests on it where that comes first, else the work.
    fn waits_on(&self, selection: &Selection) -> Option<String> {
        let due = self.subject.assessment.dates.decision(selection);
        let rests = due.and_then(|due| due.rests.as_ref());
        rests.map(|rests| resting(self.words, rests)).or_else(|| self.holds_up(selection))
    }

    /// The address to post to, and the one to write to.
    pub fn responses_go(&self) -> (Option<String>, Option<String>) {
        let project = &self.subject.book.project;
        let email = project.responses.email.get().or_else(|| project.firm.email.get());
        (project.responses.post.get().cloned(), email.cloned())
    }
}

/// What is published states of its ledger and of where its pages send responses: the bytes of a file of the
/// office's; nothing while there is no ledger.
pub fn stated(book: &Book) -> Option<Vec<u8>> {
    let ledger = book.record.lines.last().map(Head::of)?;
    let stated = Stated { ledger, post: book.project.responses.post.get().cloned() };
    canonical(&serde_json::to_value(stated).ok()?).ok()
}

/// The currency of all amounts; of a book without any, the first that would be written.
fn currency_of(amounts: &Amounts) -> Currency {
    let allowed = amounts.allowances.values().map(|allowance| allowance.allowed).next();
    let any = amounts.book.settled.or(amounts.book.open_least).or(allowed);
    any.map_or(Currency::USD, |money| money.currency)
}

fn approver(approver: &crate::book::Approver) -> RequestedApprover {
    RequestedApprover { id: approver.id.value.clone(), name: approver.name.clone() }
}
