//! What was issued for approval and is in the book no longer.

use std::collections::HashSet;

use crate::book::Book;
use crate::ledger::{Decision, Issue, Statements};

/// An item of the newest issue that the book does not hold any more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withdrawn {
    /// The room's folder.
    pub room: String,
    /// The item's number as it was issued.
    pub tag: String,
    /// Its name as it was issued.
    pub name: String,
    /// Who approved it last, by name: what they agreed is not being done.
    pub approved_by: Vec<String>,
}

/// The items of an issue that the book does not hold any more, in the order of the issue.
pub fn of(book: &Book, issue: &Issue, said: &Statements<'_>) -> Vec<Withdrawn> {
    let here: HashSet<(&str, &str)> =
        book.selections().map(|(room, selection)| (room.folder.as_str(), selection.id.as_str())).collect();
    let is_here = |room: &str, item: &str| here.contains(&(room, item));
    let approvers = &book.project.approvers;
    let gone = issue.items.iter().filter(|item| !is_here(&item.room, &item.item) && !book.unread.contains(&item.room));
    let told = gone.map(|item| {
        let approved = |who: &str| {
            let newest = said.newest(&item.room, &item.item, who);
            let agreed = |decision| matches!(decision, Decision::Approved | Decision::ApprovedAsNoted);
            newest.first().is_some_and(|last| said.is_known(last.decided) && agreed(last.asked.decision))
        };
        Withdrawn {
            room: item.room.clone(),
            tag: item.tag.clone(),
            name: item.name.clone(),
            approved_by: approvers
                .iter()
                .filter(|approver| approved(&approver.id.value))
                .map(|approver| approver.name.clone())
                .collect(),
        }
    });
    told.collect()
}
