//! Items that nobody has decided.

use super::{listed, ordered, people, remedy_to_ask};
use crate::assess::approval::ApprovalState;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, RunsOut};
use crate::book::{Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};

declare! {
    /// What was issued for approval waits for a decision
    ///
    /// ## What it checks
    /// Once an issue for approval exists: the items that nobody has decided, told together, with whom
    /// they wait for; a note, and a query once one of them must soon be ordered. Items that are new or
    /// were changed since the newest issue are told apart, because nobody was asked about them. An item
    /// that is ordered and that nobody approved stops the work; a query is enough where the order is
    /// older than the first issue for approval.
    ///
    /// ## Why it matters
    /// A wait on the client is seldom told as urgent, and everything behind it waits too. Custom work
    /// can't be sent back: never order before the line was agreed.
    ///
    /// ## Remedy
    /// Remind those who decide, with the day by which it is needed; or issue the book again, so that
    /// they are asked about what is new.
    ///
    /// ## Example
    /// ```text
    /// 12 items of issue 2 wait for Ada Marrowby and Sven Lint: `Cabinets`, `Range`, `Sink` and 9 more
    /// ```
    ///
    /// ## Source
    /// Trade practice: no order before the client agreed the line.
    "approve/waiting", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

type Item<'a> = (&'a Room, &'a Selection);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let Some((issue, _)) = context.approvals.issue else { return };
    let of = |wanted: &dyn Fn(&ApprovalState) -> bool| -> Vec<Item<'_>> {
        let items = context.book.selections();
        items
            .filter(|(room, selection)| {
                context.approvals.item(room, selection).is_some_and(|item| wanted(&item.standing))
            })
            .collect()
    };
    let undecided = of(&|standing| matches!(standing, ApprovalState::Waiting | ApprovalState::NotIssued));
    let (asked, new): (Vec<Item<'_>>, Vec<Item<'_>>) = undecided
        .into_iter()
        .partition(|(room, selection)| context.approvals.item(room, selection).is_some_and(|item| item.asked));
    findings.extend(waits(context, issue, &asked));
    // Of what could not be read nobody knows whether it is another.
    let is_read = |(room, selection): &Item<'_>| !context.book.is_unsure_of_item(room, selection);
    findings.extend(unasked(context, issue, &new.iter().copied().filter(is_read).collect::<Vec<_>>()));
    for (room, selection) in asked.into_iter().chain(new) {
        findings.extend(ordered(context, (room, selection), "and nobody has approved it"));
    }
}

fn waits(context: &Context<'_>, issue: u32, items: &[Item<'_>]) -> Option<Remark> {
    let (room, selection) = items.first()?;
    let item = context.approvals.item(room, selection)?;
    let place = context.book.project.approvers.first()?.id.span;
    let near = items.iter().any(|(_, selection)| context.dates.runs_out(selection) != RunsOut::Later);
    let severity = if near { Severity::Query } else { Severity::Note };
    let (of, wait) = if items.len() == 1 { ("item", "waits") } else { ("items", "wait") };
    let who = people(&item.waits_for);
    let message =
        phrase!("{} {of} of issue {issue} {wait} for {}: {}", items.len(), of, issue, wait, who, listed(items));
    let first = items.iter().filter_map(|(_, selection)| context.dates.decide_by(selection)).min();
    let by = first.map_or(Phrase::default(), |day| phrase!("; the first must be decided by {day}", day));
    Some(Remark::new(severity, place, message).remedy(phrase!("remind those who decide{by}", by)))
}

fn unasked(context: &Context<'_>, issue: u32, items: &[Item<'_>]) -> Option<Remark> {
    items.first()?;
    let place = context.book.project.approvers.first()?.id.span;
    let are = if items.len() == 1 { "item is" } else { "items are" };
    let message = phrase!("{} {are} new or changed since issue {issue}: {}", items.len(), are, issue, listed(items));
    Some(Remark::note(place, message).remedy(remedy_to_ask()))
}
