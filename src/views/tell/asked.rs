//! Tells what is asked of the client, as data for scripts.

use crate::assess::Amounts;
use crate::assess::approval::ApproverDecision;
use crate::book::{Book, Room, Selection};
use crate::digest::canonical;
use crate::ledger::{Head, Purpose, Stated};
use crate::units::{Currency, Money};
use crate::views::asked::{Asked, AskedAllowance, AskedBefore, AskedFit, AskedItem, AskedOf, AskedOption, Issued};
use crate::views::data::Data;

use super::PageBuilder;

/// What is published states of its ledger and of where its pages send responses: the bytes of a file of the
/// office's; nothing while there is no ledger.
pub fn stated(book: &Book) -> Option<Vec<u8>> {
    let ledger = book.record.lines.last().map(Head::of)?;
    let stated = Stated { ledger, post: book.project.responses.post.get().cloned() };
    canonical(&serde_json::to_value(stated).ok()?).ok()
}

impl PageBuilder<'_> {
    /// The newest issue for approval; none when there is none.
    pub fn issued(&self) -> Option<Issued> {
        let issue = self.subject.book.record.latest_for(Purpose::Approval)?;
        let marks = issue.items.iter().map(|item| ((item.room.clone(), item.item.clone()), item.mark.to_string()));
        Some(Issued {
            book: issue.book.clone(),
            number: issue.number,
            purpose: issue.purpose.word().into(),
            line: self.subject.book.record.heads.get(&issue.number).copied(),
            marks: marks.collect(),
        })
    }

    /// What is on record of an item, the newest word of each approver that is known to be theirs.
    fn before(&self, room: &Room, selection: &Selection) -> Vec<AskedBefore> {
        let counts = |word: &ApproverDecision| word.holds && word.rivals.is_empty() && !word.lacks_option;
        let state = |word: &ApproverDecision| if counts(word) { "holds" } else { "stale" };
        let before = |word: &ApproverDecision| AskedBefore {
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
        let allowances = self.subject.assessment.amounts.allowances.iter().map(|(name, allowance)| AskedAllowance {
            name: name.clone(),
            allowed: allowance.allowed.plain(),
            settled: allowance.due.settled.map(Money::plain),
        });
        asked.allowances = allowances.collect();
        Some(Data::of(&asked))
    }

    /// What one item's page asks.
    pub fn asked_of(&self, asking: &(Issued, Asked), room: &Room, selection: &Selection) -> Data {
        let (issued, asked) = asking;
        Data::of(&Asked { items: vec![self.asked_item(issued, room, selection)], ..asked.clone() })
    }

    /// What every page asks that asks at all, still without its items; none while no issue was made, or
    /// nobody is named who decides.
    pub fn asking(&self) -> Option<(Issued, Asked)> {
        let issued = self.issued()?;
        let project = &self.subject.book.project;
        if project.approvers.is_empty() {
            return None;
        }
        let (post, email) = self.responses_go();
        let currency = currency_of(&self.subject.assessment.amounts);
        let asked = Asked {
            title: project.title.text().into(),
            post,
            email,
            approvers: project.approvers.iter().map(approver).collect(),
            items: vec![],
            allowances: vec![],
            currency: currency.code().into(),
            sign: currency.symbol().map_or_else(|| format!("{} ", currency.code()), Into::into),
            decimals: currency.decimals(),
            book: issued.book.clone(),
            issue: issued.number,
            purpose: issued.purpose.clone(),
            ledger: issued.line,
        };
        Some((issued, asked))
    }

    fn asked_item(&self, issued: &Issued, room: &Room, selection: &Selection) -> AskedItem {
        let mark =
            self.marks.get(&(room.folder.as_str(), selection.id.as_str())).map(ToString::to_string).unwrap_or_default();
        let as_issued = issued.marks.get(&(room.folder.clone(), selection.id.clone()));
        let options = selection.options.iter().enumerate().map(|(at, option)| AskedOption {
            id: option.id.value.clone(),
            name: option.title(),
            price: Amounts::price(option).map(Money::plain),
            fit: self
                .fit(room, selection, option, at)
                .map(|fit| AskedFit { verdict: fit.verdict, sentence: fit.sentence.plain() }),
        });
        AskedItem {
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
        rests.map(|rests| format!("{}, {}", rests.name, rests.because.of_it())).or_else(|| self.holds_up(selection))
    }

    /// The address to post to, and the one to write to.
    pub fn responses_go(&self) -> (Option<String>, Option<String>) {
        let project = &self.subject.book.project;
        let email = project.responses.email.get().or_else(|| project.firm.email.get());
        (project.responses.post.get().cloned(), email.cloned())
    }
}

/// The currency of all amounts; of a book without any, the first that would be written.
fn currency_of(amounts: &Amounts) -> Currency {
    let allowed = amounts.allowances.values().map(|allowance| allowance.allowed).next();
    let any = amounts.book.settled.or(amounts.book.open_least).or(allowed);
    any.map_or(Currency::USD, |money| money.currency)
}

fn approver(approver: &crate::book::Approver) -> AskedOf {
    AskedOf { id: approver.id.value.clone(), name: approver.name.clone() }
}
