//! What a change opens again: the items that rest on one that is another now.

use std::collections::HashSet;

use crate::assess::{Depends, Reason};
use crate::book::Book;
use crate::ledger::Issue;
use crate::units::Date;

use super::{ChangeOrder, Changed, Fate};

/// An item that rests on one that changed, and did not change itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reopened {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// Its number on drawings.
    pub tag: String,
    /// What it is called.
    pub name: String,
    /// Why it rests on the other.
    pub because: Reason,
    /// The first of those that changed, by what it is called.
    pub on: String,
    /// The last day to order it, by the later issue.
    pub order_by: Option<Date>,
}

impl ChangeOrder {
    /// What its changes open again, by what rests on what in the book, the earliest order first: another option
    /// that is chosen as much as another model. A first choice opens nothing, since all options were on show.
    pub fn reopened(&self, (from, to): (&Issue, &Issue), book: &Book) -> Vec<Reopened> {
        let depends = Depends::of(book);
        let asks: HashSet<(&str, &str)> =
            self.items.iter().filter(|item| item.asks()).map(|item| (item.room.as_str(), item.item.as_str())).collect();
        let another = |item: &&Changed| {
            matches!(item.fate, Fate::Changed | Fate::Gone)
                && from.item(&item.room, &item.item).is_some_and(|item| !item.shown().is_open())
        };
        let another: HashSet<(&str, &str)> =
            self.items.iter().filter(another).map(|item| (item.room.as_str(), item.item.as_str())).collect();
        let rests = book.selections().filter_map(|(room, selection)| {
            let issued = to.item(&room.folder, &selection.id)?;
            let ground = depends
                .grounds(selection)
                .iter()
                .find(|ground| another.contains(&(ground.room.folder.as_str(), ground.selection.id.as_str())))?;
            (!asks.contains(&(room.folder.as_str(), selection.id.as_str()))).then(|| Reopened {
                room: room.folder.clone(),
                item: selection.id.clone(),
                tag: issued.tag.clone(),
                name: issued.name.clone(),
                because: ground.because,
                on: ground.selection.name.value.clone(),
                order_by: issued.order_by,
            })
        });
        let mut all: Vec<Reopened> = rests.collect();
        all.sort_by_key(|one| (one.order_by.is_none(), one.order_by));
        all
    }
}
