//! Items that some have approved and others have not.

use std::collections::BTreeMap;

use super::{listed, ordered, people};
use crate::assess::approval::ApprovalState;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, RunsOut};
use crate::finding::{Remark, Severity, phrase};

declare! {
    /// One has approved, and another is still to decide
    ///
    /// ## What it checks
    /// Where all approvers must sign: items that some of them have approved, told together by whom they
    /// wait for. A note, and a query once one of them must soon be ordered. One that is ordered stops.
    ///
    /// ## Why it matters
    /// One signature does not bind the other owner.
    ///
    /// ## Remedy
    /// Ask the one who is missing; or let one decide for all with `approval: any` in `book.yaml`.
    ///
    /// ## Example
    /// ```text
    /// 24 items are approved by Ada Marrowby and wait for Sven Lint: `Range`, `Sink`, `Tap` and 21 more
    /// ```
    ///
    /// ## Source
    /// Trade practice: one signature doesn't bind the other; get both.
    "approve/one-of-two", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut groups = BTreeMap::<(&[String], &[String]), Vec<_>>::new();
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        if let ApprovalState::Partly(who) = &item.standing {
            let waits_for = people(&item.waits_for);
            findings.extend(ordered(context, (room, selection), phrase!("and waits for {waits_for}", waits_for)));
            groups.entry((who, &item.waits_for)).or_default().push((room, selection));
        }
    }
    let Some(first) = context.book.project.approvers.first() else { return };
    for ((who, waits_for), items) in groups {
        let near = items.iter().any(|(_, selection)| context.dates.runs_out(selection) != RunsOut::Later);
        let severity = if near { Severity::Query } else { Severity::Note };
        let (are, wait) = if items.len() == 1 { ("item is", "waits") } else { ("items are", "wait") };
        let message = phrase!(
            "{} {are} approved by {who} and {wait} for {waits_for}: {}",
            items.len(),
            are,
            people(who),
            wait,
            people(waits_for),
            listed(&items)
        );
        let missing = context.book.project.approvers.iter().find(|approver| waits_for.contains(&approver.name));
        let place = missing.unwrap_or(first).id.span;
        findings.push(Remark::new(severity, place, message).remedy(phrase!("ask {}", people(waits_for))));
    }
}
