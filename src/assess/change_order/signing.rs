//! Who signs a change order: one value for each way in which it is told.

use crate::book::{Approval, Book};
use crate::ledger::Issue;

use super::ChangeOrder;

/// Who signs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Signing<'a> {
    /// Nobody: nothing is shown otherwise.
    Nobody,
    /// Nobody yet, since one side was never issued.
    NotIssued,
    /// These, all of them or any one.
    By(Approval, Vec<&'a str>),
}

impl ChangeOrder {
    /// Who signs for what changed between two issues of a book.
    pub fn signing<'b>(&self, (from, to): (&Issue, &Issue), book: &'b Book) -> Signing<'b> {
        match (self.asks(), from.number == 0 || to.number == 0) {
            (false, _) => Signing::Nobody,
            (true, true) => Signing::NotIssued,
            (true, false) => {
                let names = book.project.approvers.iter().map(|approver| approver.name.as_str());
                Signing::By(book.project.approval, names.collect())
            }
        }
    }
}
