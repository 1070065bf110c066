//! Approvals with a condition that is still open.

use super::{ordered_on, short};
use crate::assess::Context;
use crate::assess::approval::ApprovalState;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::Wrote;

declare! {
    /// Approved as noted, and the condition is still open
    ///
    /// ## What it checks
    /// Items that every needed approver approved, one of them on a condition that nobody has said to be
    /// met. Such an item is not to be ordered; one that is stops the work. Each condition is closed by
    /// itself alone: to say that one is met closes neither another person's nor a later one.
    ///
    /// ## Why it matters
    /// "If the grout sample is right" is no yes. An order that was placed on it is the firm's.
    ///
    /// ## Remedy
    /// Meet the condition, show it, and record it: `bookmatch receive --met ROOM/ITEM --of DIGITS
    /// --by NAME --note …`, with the digits of the response that states it.
    /// Or change the item and ask again.
    ///
    /// ## Example
    /// ```text
    /// `Wall tile` is approved by Sven Lint as noted: "if the grout sample is right"
    /// ```
    ///
    /// ## Source
    /// Trade practice: a condition that is open makes a line not orderable.
    "approve/condition", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        let ApprovalState::Condition(_) = item.standing else { continue };
        let name = &selection.name.value;
        for word in item.words.iter().filter(|word| word.holds && word.given.is_known() && word.is_conditional()) {
            let note = word.note.as_ref().map_or(Phrase::default(), |note| phrase!(": \"{}\"", Wrote(&short(note))));
            let message = phrase!("`{name}` is approved by {} as noted{note}", name, Wrote(&word.name), note);
            let severity = if ordered_on(selection).is_some() { Severity::Stop } else { Severity::Query };
            let finding = Remark::new(severity, selection.span, message).room(&room.folder).selection(&selection.name);
            let remedy = phrase!(
                "meet the condition and record it: `bookmatch receive --met {}/{} --of {} --by NAME --note …`; or change the item and ask again",
                room.folder,
                selection.id,
                word.response.short(8)
            );
            findings.push(finding.remedy(remedy));
        }
    }
}
