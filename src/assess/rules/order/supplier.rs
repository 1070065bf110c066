//! Who supplies what is ordered, held beside what was issued and what came.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, phrase};
use crate::ledger::IssuedItem;
use crate::units::{Wrote, is_same_name};

declare! {
    /// What is ordered comes from another supplier than was said
    ///
    /// ## What it checks
    /// What is ordered and had another supplier in the newest issue that tells of it; and what somebody received of
    /// another supplier than the book has it from, once that is confirmed. A supplier that nobody wrote, on either
    /// side, tells nothing.
    ///
    /// ## Why it matters
    /// Each supplier has a page of its own, on which what comes is held beside what was approved: whoever looks for
    /// the box on the other one does not find it there. Terms, days and claims are that supplier's too.
    ///
    /// ## Remedy
    /// Write from whom it comes, with its new order, and issue the book again.
    ///
    /// ## Example
    /// ```text
    /// `Lantern` came from Brassock & Lune (B-12), and the book has it from Wickmarrow Lighting
    /// ```
    ///
    /// ## Source
    /// Common practice: an order that moves to another supplier is a new order.
    "order/supplier", Query,
    due: WhenSet, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection) in context.book.selections() {
        let Some(option) = selection.settled() else { continue };
        let supplier = option.supplier.text().trim();
        if supplier.is_empty() {
            continue;
        }
        findings.extend(moved(context, (room, selection, option), supplier));
        findings.extend(came(context, (room, selection), supplier));
    }
}

/// That it is ordered, and was to come from another.
fn moved(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
    supplier: &str,
) -> Option<Remark> {
    option.order.placed_on.get()?;
    let mut issues = context.book.record.issues.values().rev();
    let (issue, then) = issues.find_map(|issue| Some((issue, issue.item(&room.folder, &selection.id)?)))?;
    let now = IssuedItem::supplied_by(supplier)?;
    if then.supplier.is_none_or(|then| then == now) {
        return None;
    }
    let name = &selection.name.value;
    let message = phrase!(
        "`{name}` is ordered, and comes from {} now, which issue {} has from another supplier",
        name,
        Wrote(supplier),
        issue.number
    );
    let at = option.supplier.span().unwrap_or(selection.span);
    let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name);
    Some(finding.remedy(
        "if the order moved, write its day and terms and issue the book again, so that it is received on the page of \
         that supplier; else put back who supplies it",
    ))
}

/// That it came from another.
fn came(context: &Context<'_>, (room, selection): (&Room, &Selection), supplier: &str) -> Option<Remark> {
    let said = context.approvals.deliveries.said(room, selection).iter().rfind(|said| said.counts)?;
    let (from, note) = (said.received.delivery.from.trim(), &said.received.delivery.note);
    if from.is_empty() || is_same_name(from, supplier) {
        return None;
    }
    let name = &selection.name.value;
    let message = phrase!(
        "`{name}` came from {} ({}), and the book has it from {}",
        name,
        Wrote(from),
        Wrote(note),
        Wrote(supplier)
    );
    let finding = Remark::query(selection.span, message).room(&room.folder).selection(&selection.name);
    Some(finding.remedy("ask whose delivery it was; write from whom it came, or have the other thing fetched"))
}
