//! What was issued for approval and is in the book no longer.

use crate::book::Book;
use crate::ledger::{Decided, Decision, Issue};

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
pub fn of(book: &Book, issue: &Issue, given: &[&Decided]) -> Vec<Withdrawn> {
    let is_here = |room: &str, item: &str| {
        book.room(room).is_some_and(|room| room.selections.iter().any(|selection| selection.id == item))
    };
    let approvers = &book.project.approvers;
    let gone = issue.items.iter().filter(|item| !is_here(&item.room, &item.item) && !book.unread.contains(&item.room));
    let told = gone.map(|item| {
        let approved = |who: &str| {
            let mut asked = given.iter().filter(|given| given.who == who).flat_map(|given| &given.items);
            let last = asked.rfind(|asked| asked.room == item.room && asked.item == item.item);
            last.is_some_and(|asked| matches!(asked.decision, Decision::Approved | Decision::ApprovedAsNoted))
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
