//! Items that were sent back.

use super::{ordered_on, people, short};
use crate::assess::Context;
use crate::assess::approval::ApprovalState;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::Wrote;

declare! {
    /// An approver wants it revised, or rejected it
    ///
    /// ## What it checks
    /// Items of which the newest word of an approver is "revise and resubmit" or "rejected", and that
    /// nobody has changed since. A query; a stop once the item is ordered.
    ///
    /// ## Why it matters
    /// It was answered, and the answer was no: whatever waits for it waits for the designer now.
    ///
    /// ## Remedy
    /// Change the item, and issue the book again.
    ///
    /// ## Example
    /// ```text
    /// `Range` is to be revised for Sven Lint: "narrower, please"
    /// ```
    ///
    /// ## Source
    /// Trade practice: the review stamps of submittals.
    "approve/sent-back", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        let (who, how) = match &item.standing {
            ApprovalState::Revise(who) => (who, "is to be revised for"),
            ApprovalState::Rejected(who) => (who, "is rejected by"),
            _ => continue,
        };
        let note = item
            .words
            .iter()
            .filter(|word| word.holds && word.given.is_known() && !word.approves())
            .find_map(|word| word.note.as_ref());
        let note = note.map_or(Phrase::default(), |note| phrase!(": \"{}\"", Wrote(&short(note))));
        let name = &selection.name.value;
        let message = phrase!("`{name}` {how} {}{note}", name, how, people(who), note);
        let severity = if ordered_on(selection).is_some() { Severity::Stop } else { Severity::Query };
        let finding = Remark::new(severity, selection.span, message).room(&room.folder).selection(&selection.name);
        findings.push(finding.remedy("change it, and issue the book again: `bookmatch issue`"));
    }
}
