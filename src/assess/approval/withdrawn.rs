//! What was issued and is in the book no longer: its number is never used again.

use std::collections::{BTreeMap, HashSet};

use crate::book::{Approver, Book};
use crate::ledger::{Decision, IssuedItem, Statements};

use super::word::is_theirs;

/// An item that was issued and that the book does not hold any more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withdrawn {
    /// The room's folder.
    pub room: String,
    /// The item's number as it was issued.
    pub tag: String,
    /// Its name as it was issued.
    pub name: String,
    /// The last issue that it stands in.
    pub issue: u32,
    /// Who approved it last, by name: what they agreed is not being done.
    pub approved_by: Vec<String>,
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
        let approved = |approver: &Approver| {
            let mut newest = said.newest(&item.room, &item.item, &approver.id.value);
            newest.retain(|said| is_theirs(book, said.decided, approver));
            let agreed = |decision| matches!(decision, Decision::Approved | Decision::ApprovedAsNoted);
            newest.first().is_some_and(|last| said.is_known(last.decided) && agreed(last.asked.decision))
        };
        Withdrawn {
            room: item.room.clone(),
            tag: item.tag.clone(),
            name: item.name.clone(),
            issue,
            approved_by: approvers
                .iter()
                .filter(|approver| approved(approver))
                .map(|approver| approver.name.clone())
                .collect(),
        }
    });
    let mut told: Vec<Withdrawn> = told.collect();
    told.sort_by(|one, other| (&one.room, &one.tag).cmp(&(&other.room, &other.tag)));
    told
}
