//! What came otherwise than it was approved, and by when that can be claimed.

use crate::assess::Context;
use crate::assess::receiving::{ClaimBy, Said};
use crate::assess::rules::{Check, Findings, declare};
use crate::book::Selection;
use crate::finding::{Phrase, Remark, phrase};

declare! {
    /// What came damaged or different is not claimed yet
    ///
    /// ## What it checks
    /// What was received otherwise than it was approved (damaged, another model or finish, too few), and nobody
    /// has claimed of its supplier: the last day to claim, by `claim within` of the order or else of the supplier,
    /// counted from the day on which it came. Where neither says so the day is not known, and is asked for. It is
    /// told before the delivery is confirmed too, since a claim does not wait. It ends once `claimed on` says so,
    /// once another delivery brought it as approved, or once what came is approved.
    ///
    /// ## Why it matters
    /// Suppliers and carriers take a claim for some days only. A crack that is told after them is the firm's own.
    ///
    /// ## Remedy
    /// Claim it in writing, with the photographs, and write the day. Ask each supplier for the term when ordering.
    ///
    /// ## Example
    /// ```yaml
    /// suppliers: {Oren & Daughters: {claim within: 5 working days}}
    /// ```
    ///
    /// ## Source
    /// Trade practice. The terms are the supplier's own and are never assumed.
    "order/claim", Query,
    due: WhenSet, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let approvals = context.approvals;
    for (room, selection) in context.book.selections() {
        let Some(said) = approvals.deliveries.to_claim(context.book, approvals, (room, selection)) else { continue };
        let (message, remedy) = told(context, selection, said);
        let at = selection.settled().and_then(|option| option.order.placed_on.span()).unwrap_or(selection.span);
        let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name);
        findings.push(finding.remedy(remedy));
    }
}

fn told(context: &Context<'_>, selection: &Selection, said: &Said) -> (Phrase, &'static str) {
    let name = &selection.name.value;
    let came = phrase!("`{name}` came {} on {}", name, said.how(), said.received.on);
    match said.claim_by(context.book, selection) {
        ClaimBy::Unknown => (
            phrase!("{came}, and until when that can be claimed is not known", came),
            "ask the supplier today, and write it: `order: {claim within: …}`, or at the supplier under `suppliers` \
             in `book.yaml`; then claim it, and write `order: {claimed on: …}`",
        ),
        ClaimBy::Until(last) if last < context.today => (
            phrase!("{came}, and the last day to claim it, {last}, has passed", came, last),
            "ask the supplier all the same, and write `order: {claimed on: …}`; what can't be claimed is replaced at \
             the firm's cost, or issued as it came and approved",
        ),
        ClaimBy::Until(last) => (
            phrase!("{came}, and must be claimed by {last}", came, last),
            "claim it in writing, with the photographs, and write `order: {claimed on: …}`",
        ),
    }
}
