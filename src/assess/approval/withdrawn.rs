//! What was issued and is in the book no longer: its number is never used again.

use std::collections::{BTreeMap, HashSet};

use crate::assess::Changed;
use crate::book::{Approval, Approver, Book};
use crate::ledger::{Decided, Decision, Fact, IssuedItem, Purpose, Statements};
use crate::units::{Currency, Money, series};

use super::word::is_theirs;

/// An item that was issued and that the book does not hold any more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withdrawn {
    /// The room's folder.
    pub room: String,
    /// The selection's id.
    pub item: String,
    /// The item's number as it was issued.
    pub tag: String,
    /// Its name as it was issued.
    pub name: String,
    /// The last issue that it stands in.
    pub issue: u32,
    /// Who approved it last, by name: what they agreed is not being done.
    pub approved_by: Vec<String>,
    /// What it came to, as it was issued; none where it was open.
    pub price: Option<Money>,
    /// Who approved it and has not agreed that it is withdrawn, by name. They agree by what they approve of a later issue
    /// for approval that no longer has it, or by taking their word on it back.
    pub waits_for: Vec<String>,
}

impl Withdrawn {
    /// By number and name, with what it came to: `K-01 Rug, $90.00`.
    pub fn named(&self) -> String {
        let name = format!("{} {}", self.tag, self.name);
        self.price.map_or_else(|| name.clone(), |price| format!("{name}, {price}"))
    }

    /// Whether it is that item of a change order.
    pub fn is(&self, item: &Changed) -> bool {
        (&self.room, &self.item) == (&item.room, &item.item)
    }

    /// Who had approved it, in a line; and who has not agreed to what became of it.
    pub fn had_approved(&self) -> String {
        let had = format!("{} had approved it", series(&self.approved_by));
        if self.waits_for.is_empty() { had } else { format!("{had}; still to agree: {}", series(&self.waits_for)) }
    }

    /// How it stands, with those who have still to agree.
    pub fn stands_for(&self) -> String {
        format!("approved, and withdrawn since; still to agree: {}", series(&self.waits_for))
    }
}

/// The items of all issues that the book does not hold any more, each as it was issued last, by room and number.
pub fn of(book: &Book, said: &Statements<'_>) -> Vec<Withdrawn> {
    let here: HashSet<(&str, &str)> =
        book.selections().map(|(room, selection)| (room.folder.as_str(), selection.id.as_str())).collect();
    let is_here = |room: &str, item: &str| here.contains(&(room, item));
    let approvers = &book.project.approvers;
    let issued = book.record.issues.values().flat_map(|issue| issue.items.iter().map(move |item| (issue.number, item)));
    let gone = issued.filter(|(_, item)| !is_here(&item.room, &item.item) && !book.unread.contains(&item.room));
    let last: BTreeMap<(&str, &str), (u32, &IssuedItem)> =
        gone.map(|(issue, item)| ((item.room.as_str(), item.item.as_str()), (issue, item))).collect();
    let told = last.into_values().map(|(issue, item)| {
        let currency = book.record.issues.get(&issue).and_then(|issue| Currency::parse(&issue.currency).ok());
        let price = item.price.as_deref().zip(currency).and_then(|(sum, currency)| Money::parse(sum, currency).ok());
        let approved = |approver: &Approver| {
            let mut newest = said.newest(&item.room, &item.item, &approver.id.value);
            newest.retain(|said| is_theirs(book, said.decided, &approver.id, &approver.name));
            let agreed = |decision| matches!(decision, Decision::Approved | Decision::ApprovedAsNoted);
            newest.first().is_some_and(|last| said.is_known(last.decided) && agreed(last.asked.decision))
        };
        let agreed = |approver: &Approver| agrees_since(book, said, issue, approver);
        let approving: Vec<&Approver> = approvers.iter().filter(|approver| approved(approver)).collect();
        let enough = book.project.approval == Approval::Any && approvers.iter().any(agreed);
        let waits = approving.iter().filter(|approver| !enough && !agreed(approver));
        Withdrawn {
            room: item.room.clone(),
            item: item.item.clone(),
            tag: item.tag.clone(),
            name: item.name.clone(),
            issue,
            waits_for: waits.map(|approver| approver.name.clone()).collect(),
            approved_by: approving.iter().map(|approver| approver.name.clone()).collect(),
            price,
        }
    });
    let mut told: Vec<Withdrawn> = told.collect();
    told.sort_by(|one, other| (&one.room, &one.tag).cmp(&(&other.room, &other.tag)));
    told
}

/// Whether somebody approved anything of an issue for approval that came after one: they were told there what is withdrawn.
fn agrees_since(book: &Book, said: &Statements<'_>, issue: u32, approver: &Approver) -> bool {
    let is_later = |given: &Decided| {
        let answered = book.record.issues.get(&given.issue);
        given.issue > issue && answered.is_some_and(|issue| issue.purpose == Purpose::Approval)
    };
    let approves = |given: &Decided| {
        given.items.iter().any(|one| matches!(one.decision, Decision::Approved | Decision::ApprovedAsNoted))
    };
    book.record.facts().any(|fact| match fact {
        Fact::Decided(given) => {
            given.who == approver.id.value
                && is_later(given)
                && approves(given)
                && said.is_known(given)
                && is_theirs(book, given, &approver.id, &approver.name)
        }
        _ => false,
    })
}
