//! What was taken although it came otherwise than it was approved.

use crate::assess::Context;
use crate::assess::receiving::Receipt;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Remark, phrase};
use crate::units::Wrote;

declare! {
    /// What was taken is not what was approved
    ///
    /// ## What it checks
    /// Things that came different or damaged and were taken all the same. What was approved is not what came, so
    /// that the approval is no longer good for it: it is a new revision, for whoever must approve to sign. It ends
    /// once the book holds what came and a later issue of it is approved, or once another delivery brought it as
    /// approved.
    ///
    /// ## Why it matters
    /// The client signed for one thing and will live with another. What the site accepts, the client has not.
    ///
    /// ## Remedy
    /// Write what came, and issue the book for approval; or have it replaced. Set nothing before.
    ///
    /// ## Example
    /// ```text
    /// `Hood` came different (finish: black) on 3 Apr 2027 and was taken by Teo Varrick
    /// ```
    ///
    /// ## Source
    /// Trade practice: a substitution is a revision, and is approved by whoever approved the first.
    "approve/came", Query,
    due: WhenSet, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let approvals = context.approvals;
    for (room, selection) in context.book.selections() {
        let Receipt::Taken(said) = approvals.deliveries.receipt(context.book, approvals, (room, selection)) else {
            continue;
        };
        let name = &selection.name.value;
        let by = Wrote(&said.received.by);
        let message = phrase!("`{name}` came {} on {} and was taken by {by}", name, said.how(), said.received.on, by);
        let finding = Remark::query(selection.span, message).room(&room.folder).selection(&selection.name);
        if said.is_short() {
            findings.push(finding.remedy(
                "if only a part of them came, have it received anew with how many came, such as `1 of 2`; if more came, \
                 write and issue that, or send it back",
            ));
            continue;
        }
        findings.push(finding.remedy(
            "write what came and issue it, so that it is asked anew: `bookmatch issue --for approval`; or have it \
             replaced, and receive that",
        ));
    }
}
