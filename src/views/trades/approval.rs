//! Whether the client has approved what a sheet is built from, for whoever builds it.

use crate::book::{Room, Selection};
use crate::language::say;
use crate::ledger::Purpose;
use crate::views::pages::PageBuilder;
use crate::views::shared::sheet::Fact;

impl PageBuilder<'_> {
    /// How far the client's approval of a thing has come; nothing in a book that names nobody who approves.
    pub fn approval_fact(&self, room: &Room, selection: &Selection) -> Option<Fact> {
        let book = self.subject.book;
        if book.project.approvers.is_empty() {
            return None;
        }
        let is_given = self.subject.assessment.approvals.is_orderable(room, selection);
        let issued = book.record.latest_for(Purpose::Construction);
        let taken = issued.and_then(|issue| Some((issue.number, issue.taken_unapproved(&room.folder, &selection.id)?)));
        let told = match (is_given, taken) {
            (true, _) => say!(self.words, "trades.approved"),
            (false, Some((issue, because))) => {
                say!(self.words, "trades.taken_unapproved", issue = issue.to_string(), because = because)
            }
            (false, None) => say!(self.words, "trades.unapproved"),
        };
        Some(self.worded("trades.approval", told))
    }
}
