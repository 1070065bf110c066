//! Who asked for each change between two issues, and why.

use crate::book::{Book, Record};
use crate::ledger::{AskedChange, Issue};

use crate::shown::{Change, ChangedField, MarkedField};

use super::{ChangeOrder, Changed, Sort};

/// What the record says of who asked, item by item, the earliest first.
#[derive(Clone, Debug, Default)]
pub struct Asked<'a>(Vec<&'a AskedChange>);

impl<'a> Asked<'a> {
    /// From one issue to a later one: what each issue between them says, and the later one.
    pub fn between(record: &'a Record, (from, to): (&Issue, &'a Issue)) -> Self {
        let is_draft = to.number == 0;
        let between = |issue: &&Issue| issue.number > from.number && (is_draft || issue.number < to.number);
        let issues = record.issues.values().filter(between).chain([to]);
        Self(issues.flat_map(|issue| &issue.asked).collect())
    }

    /// Of an item.
    pub fn of(&self, item: &Changed) -> impl Iterator<Item = &'a AskedChange> {
        let is_of = |said: &&&AskedChange| (&said.room, &said.item) == (&item.room, &item.item);
        self.0.iter().filter(is_of).copied()
    }
}

/// What the book says of who asked for what changed, where no issue says it already: what was written for an earlier
/// change is no answer for this one.
pub fn asked(book: &Book, order: &ChangeOrder) -> Vec<AskedChange> {
    let told = |item: &Changed| {
        let selection = book.room(&item.room)?.selections.iter().find(|selection| selection.id == item.item)?;
        let written = selection.asked.get()?;
        let said = AskedChange {
            room: item.room.clone(),
            item: item.item.clone(),
            by: written.by.get().cloned(),
            because: written.because.get().cloned(),
        };
        let is_new = book.record.issues.values().all(|issue| !issue.asked.contains(&said));
        (is_new && (said.by.is_some() || said.because.is_some())).then_some(said)
    };
    order.items.iter().filter(|item| item.is_asked_for()).filter_map(told).collect()
}

impl Changed {
    /// Whether somebody asked for it: a choice among what was on show is the client's own; a date alone, or what a
    /// newer release shows more of, is nobody's.
    pub fn is_asked_for(&self) -> bool {
        let is_choice = |change: &Change| change.what == ChangedField::Marked(MarkedField::Chosen);
        let chosen_alone =
            self.sort() == Sort::Choice && !self.changes.is_empty() && self.changes.iter().all(is_choice);
        self.asks() && !chosen_alone && !self.shows_more
    }
}
