//! Whether the client has approved what a sheet is built from, for whoever builds it.

use crate::book::{Room, Selection};
use crate::language::say;
use crate::ledger::Purpose;
use crate::views::pages::PageBuilder;
use crate::views::shared::sheet::Fact;

/// How far the approval of a thing has come, for whoever builds it.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Given<'a> {
    Yes,
    No,
    /// Another came than was approved, and was taken.
    Came,
    /// It was taken into an issue for construction all the same: the issue, and why.
    Taken(u32, &'a str),
}

impl<'a> PageBuilder<'a> {
    /// How far the client's approval of a thing has come; nothing in a book that names nobody who approves.
    pub fn approval_fact(&self, room: &Room, selection: &Selection) -> Option<Fact> {
        let told = match self.given(room, selection)? {
            Given::Yes => say!(self.words, "trades.approved"),
            Given::Taken(issue, because) => {
                say!(self.words, "trades.taken_unapproved", issue = issue.to_string(), because = because)
            }
            Given::No => say!(self.words, "trades.unapproved"),
            Given::Came => say!(self.words, "trades.came"),
        };
        Some(self.worded("trades.approval", told))
    }

    /// The same of all that a trade builds in a room: a line for what is not approved, and one for each reason why it is
    /// built all the same.
    pub fn approval_facts(&self, room: &Room, built: &[&Selection]) -> Vec<Fact> {
        let mut states: Vec<(Given<'_>, Vec<String>)> = Vec::new();
        for selection in built {
            let Some(given) = self.given(room, selection) else { return vec![] };
            let thing = format!("{} {}", selection.tag, selection.name.value);
            match states.iter_mut().find(|(state, _)| *state == given) {
                Some((_, things)) => things.push(thing),
                None => states.push((given, vec![thing])),
            }
        }
        let is_all = states.len() == 1;
        let told = states.iter().filter(|(given, _)| is_all || *given != Given::Yes).map(|(given, things)| {
            let things = self.words.series(things);
            match given {
                Given::Yes => say!(self.words, "trades.approved"),
                Given::No => say!(self.words, "trades.unapproved_of", things = things),
                Given::Came => say!(self.words, "trades.came_of", things = things),
                Given::Taken(issue, because) => {
                    let (issue, because) = (issue.to_string(), *because);
                    say!(self.words, "trades.taken_unapproved_of", things = things, issue = issue, because = because)
                }
            }
        });
        told.map(|told| self.worded("trades.approval", told)).collect()
    }

    fn given(&self, room: &Room, selection: &Selection) -> Option<Given<'a>> {
        let book = self.subject.book;
        if book.project.approvers.is_empty() {
            return None;
        }
        if self.subject.assessment.approvals.is_orderable(room, selection) {
            return Some(Given::Yes);
        }
        let issued = book.record.latest_for(Purpose::Construction);
        let taken = issued.and_then(|issue| Some((issue.number, issue.taken_unapproved(&room.folder, &selection.id)?)));
        let untaken = if self.came_otherwise(room, selection) { Given::Came } else { Given::No };
        Some(taken.map_or(untaken, |(issue, because)| Given::Taken(issue, because)))
    }
}
