//! What is to be looked at again after a change, and what was looked at and stays: the items that rest on one that is another now.

use std::collections::{HashMap, HashSet};

use crate::assess::{Depends, Prerequisite, Reason};
use crate::book::{Book, Selection};
use crate::ledger::Issue;
use crate::units::Date;

use super::{ChangeOrder, Changed, Fate};

/// What becomes of an item that rests on one that changed, and did not change itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// It is to be looked at again.
    OpensAgain,
    /// Nothing changed that it could rest on.
    NothingItRestsOn,
    /// Somebody looked at it since, on that day: it was chosen anew.
    ChosenAnew(Date),
}

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
    /// What becomes of it.
    pub look: Look,
}

impl Look {
    /// What becomes of an item that rests on what changed so, since a day.
    fn of(selection: &Selection, ground: &Prerequisite<'_>, (from, to): (&Issue, &Issue)) -> Self {
        if let Some(on) = looked_at(selection, ground.selection, from.on) {
            return Self::ChosenAnew(on);
        }
        let of = |issue: &Issue| issue.item(&ground.room.folder, &ground.selection.id).cloned();
        let touched = of(from).zip(of(to)).is_none_or(|(was, is)| {
            let kind = ground.selection.kind.get().copied();
            ground.because.touched_by(kind, (&was.content, &is.content), is.shown().chosen()).is_some()
        });
        if touched { Self::OpensAgain } else { Self::NothingItRestsOn }
    }
}

/// The day after an issue on which a selection was chosen, no earlier than what it rests on was.
pub fn looked_at(selection: &Selection, ground: &Selection, since: Date) -> Option<Date> {
    let on = *selection.chosen_on.get()?;
    let is_later = ground.chosen_on.get().is_none_or(|chosen| *chosen <= on);
    (on > since && is_later).then_some(on)
}

impl ChangeOrder {
    /// What rests on what changed, by what rests on what in the book, the earliest order first: another option
    /// that is chosen counts as much as another model. A first choice touches nothing, since all options were on show.
    pub fn reopened(&self, (from, to): (&Issue, &Issue), book: &Book) -> Vec<Reopened> {
        let depends = Depends::of(book);
        let asks: HashSet<(&str, &str)> = self.items.iter().filter(|item| item.asks()).map(key).collect();
        let another = |item: &&Changed| {
            matches!(item.fate, Fate::Changed | Fate::Gone)
                && from.item(&item.room, &item.item).is_some_and(|item| !item.shown().is_open())
        };
        let another: HashMap<(&str, &str), &Changed> =
            self.items.iter().filter(another).map(|item| (key(item), item)).collect();
        let rests = book.selections().filter_map(|(room, selection)| {
            let issued = to.item(&room.folder, &selection.id)?;
            if asks.contains(&(room.folder.as_str(), selection.id.as_str())) {
                return None;
            }
            let changed = |ground: &&Prerequisite<'_>| {
                another.get(&(ground.room.folder.as_str(), ground.selection.id.as_str())).copied()
            };
            let looks = depends.grounds(selection).iter().filter_map(|ground| {
                changed(&ground)?;
                Some((Look::of(selection, ground, (from, to)), ground))
            });
            // What opens it again counts before what does not.
            let (look, ground) = looks.min_by_key(|(look, _)| *look != Look::OpensAgain)?;
            Some(Reopened {
                room: room.folder.clone(),
                item: selection.id.clone(),
                tag: issued.tag.clone(),
                name: issued.name.clone(),
                because: ground.because,
                on: ground.selection.name.value.clone(),
                order_by: issued.order_by,
                look,
            })
        });
        let mut all: Vec<Reopened> = rests.collect();
        all.sort_by_key(|one| (one.order_by.is_none(), one.order_by));
        all
    }
}

fn key(item: &Changed) -> (&str, &str) {
    (&item.room, &item.item)
}
