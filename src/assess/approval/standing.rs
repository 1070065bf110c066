//! What the words of all approvers come to.

use crate::book::{Approval, Book};
use crate::ledger::Decision;

use super::{ApproverDecision, Given};

/// Names, in the book's order.
pub type Whose = Vec<String>;

/// How far the approval of an item has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ApprovalState {
    /// The newest issue does not hold it: nobody was asked.
    NotIssued,
    /// Nobody has decided.
    Waiting,
    /// Somebody decided, and nobody can know yet whether it was the approver.
    Unsigned,
    /// Approved by some, and others are still to decide.
    Partly(Whose),
    /// Approved by one and sent back by another, different options were chosen, or nobody can know what
    /// somebody said last.
    Conflict,
    /// It changed since it was approved.
    Stale(Whose),
    /// It was approved, and nobody can tell whether it changed since: a file or a word that tells of it can't be
    /// read.
    Unread,
    /// Somebody wants it revised.
    Revise(Whose),
    /// Somebody rejected it.
    Rejected(Whose),
    /// Every needed approver approved it, and a condition is still open.
    Condition(Whose),
    /// Every needed approver approved what it is now, on terms that are others now, or in an issue that
    /// bears another day than its own.
    Held,
    /// Every needed approver approved what it is now, and another came and was taken: it is to be asked anew.
    CameOtherwise,
    /// Every needed approver approved what it is now.
    Approved,
}

impl ApprovalState {
    /// In a word or a few.
    pub fn word(&self) -> &'static str {
        match self {
            Self::NotIssued => "not asked",
            Self::Waiting => "waiting",
            Self::Unsigned => "unsigned",
            Self::Partly(_) => "approved by some",
            Self::Conflict => "not agreed",
            Self::Stale(_) => "changed since signed",
            Self::Unread => "not known: not all of it can be read",
            Self::Revise(_) => "to be revised",
            Self::Rejected(_) => "rejected",
            Self::Condition(_) => "approved as noted",
            Self::Held => "approved, and held",
            Self::CameOtherwise => "came otherwise than approved",
            Self::Approved => "approved",
        }
    }

    /// Whether it is asked anew though it is ordered: somebody had decided, and what is ordered is not agreed.
    pub fn opens_again(&self) -> bool {
        match self {
            Self::Stale(_) | Self::CameOtherwise | Self::Partly(_) | Self::Conflict => true,
            Self::Revise(_) | Self::Rejected(_) => true,
            Self::NotIssued | Self::Waiting | Self::Unsigned | Self::Unread => false,
            Self::Condition(_) | Self::Held | Self::Approved => false,
        }
    }

    /// Of an item that was issued or not, by the words on it.
    pub fn of(book: &Book, issued: bool, words: &[ApproverDecision]) -> Self {
        let known = || words.iter().filter(|word| word.given.is_known());
        let holding = || known().filter(|word| word.holds);
        if known().any(|word| !word.rivals.is_empty()) {
            return Self::Conflict;
        }
        let names = |wanted: &dyn Fn(&&ApproverDecision) -> bool| -> Whose {
            holding().filter(|word| wanted(word)).map(|word| word.name.clone()).collect()
        };
        let approving = names(&|word| word.approves() && !word.lacks_option && !word.on_other_terms);
        let rejecting = names(&|word| word.decision == Decision::Rejected);
        let revising = names(&|word| word.decision == Decision::ReviseAndResubmit);
        let sent_back = !rejecting.is_empty() || !revising.is_empty();
        if !approving.is_empty() && (sent_back || disagree(holding())) {
            return Self::Conflict;
        }
        if !rejecting.is_empty() {
            return Self::Rejected(rejecting);
        }
        if !revising.is_empty() {
            return Self::Revise(revising);
        }
        let wanted = match book.project.approval {
            Approval::Any => 1,
            Approval::All => book.project.approvers.len().max(1),
        };
        if approving.len() >= wanted {
            let open = names(&|word| word.is_conditional());
            return if open.is_empty() { Self::Approved } else { Self::Condition(open) };
        }
        let stale: Whose =
            known().filter(|word| !word.holds && word.approves()).map(|word| word.name.clone()).collect();
        match (stale.is_empty(), approving.is_empty()) {
            (false, _) => Self::Stale(stale),
            (true, false) => Self::Partly(approving),
            _ if words.iter().any(|word| word.given == Given::Unsigned) => Self::Unsigned,
            _ if issued => Self::Waiting,
            _ => Self::NotIssued,
        }
    }
}

/// Whether those who approve chose different options.
fn disagree<'w>(words: impl Iterator<Item = &'w ApproverDecision>) -> bool {
    let mut options = words.filter(|word| word.approves()).filter_map(|word| word.option.as_deref());
    options.next().is_some_and(|first| options.any(|other| other != first))
}
