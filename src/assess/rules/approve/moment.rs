//! Moments that can't be.

use crate::assess::Context;
use crate::assess::approval::{Ahead, HoldReason};
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, phrase};
use crate::ledger::{Decided, Fact, Line, MomentFault};
use crate::source::Place;
use crate::units::Wrote;

declare! {
    /// A response or an issue bears a moment that can't be
    ///
    /// ## What it checks
    /// Responses whose moment lies ahead of their receipt or before the issue that they answer, and those
    /// of a device whose clock ran backwards between two of them; and whether the newest issue for approval
    /// bears the day on which it was made, and none before that of an earlier issue. Five minutes are let
    /// pass between two clocks, and a day between time zones. Nothing can be ordered on what was approved
    /// in an issue that bears an earlier day than its own; one that bears a later day is told.
    ///
    /// ## Why it matters
    /// What counts is what somebody said last. A clock that is wrong puts an old word after a new one, and
    /// a paper with an earlier date than its own proves the opposite of what it should.
    ///
    /// ## Remedy
    /// Ask the person what holds, and record it with its hour: `bookmatch receive --by-hand WHO … --given
    /// "2027-01-16 14:30"`. Issue the book again on its own day, without `--today`.
    ///
    /// ## Example
    /// ```text
    /// a response of Ada Marrowby to issue 2 says 20 Jan 2027, and came in on 16 Jan 2027
    /// ```
    ///
    /// ## Source
    /// The record's own rule; five minutes are common practice for clocks that nobody sets alike.
    "approve/moment", Query,
    due: WithThing, tells: [],
    sources: ["the record's own rule", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let approvers = &context.book.project.approvers;
    for (line, odd) in &context.approvals.odd {
        let Fact::Decided(decided) = &line.fact else { continue };
        let approver = approvers.iter().find(|approver| approver.id.value == decided.who);
        let Some(place) = approver.or(approvers.first()).map(|approver| approver.id.span) else { continue };
        let name = Wrote(approver.map_or(decided.who.as_str(), |approver| approver.name.as_str()));
        let message = phrase!("a response of {name} to issue {} {}", name, decided.issue, said(line, decided, *odd));
        let remedy = phrase!(
            "ask {name} what holds, and record it with its hour: `bookmatch receive --by-hand {} … --given …`",
            name,
            decided.who
        );
        findings.push(Remark::query(place, message).remedy(remedy));
    }
    let place = approvers.first().map_or_else(|| Place::Path("record/ledger.jsonl".into()), |one| one.id.span.into());
    for held in &context.approvals.held {
        let message = match held {
            HoldReason::Terms(..) => continue,
            HoldReason::MadeLater { issue, on, made } => {
                phrase!("issue {issue} bears the day {on}, and was made on {made}", issue, on, made)
            }
            HoldReason::BeforeAnother { issue, on, other: (number, day) } => {
                phrase!(
                    "issue {issue} bears the day {on}, which is before {day}, the day of issue {number}",
                    issue,
                    on,
                    day,
                    number
                )
            }
        };
        let remedy = "nothing can be ordered on it: issue the book again on its own day, without `--today`";
        findings.push(Remark::query(place.clone(), message).remedy(remedy));
    }
    if let Some(Ahead { issue, on, made }) = context.approvals.ahead {
        let message =
            phrase!("issue {issue} bears the day {on}, which is ahead of {made}, the day it was made", issue, on, made);
        let remedy = "issue the book again on its own day, without `--today`";
        findings.push(Remark::query(place, message).remedy(remedy));
    }
}

fn said(line: &Line, decided: &Decided, odd: MomentFault) -> Phrase {
    let made = decided.given.map_or(decided.made, |given| given.from);
    match odd {
        MomentFault::Ahead => phrase!("says `{made}`, and came in at `{}`", made, line.at),
        MomentFault::BeforeIssue(_) => phrase!("says `{made}`, which is before that issue was made", made),
        MomentFault::Backwards => phrase!("says `{made}`; the clock of its device ran backwards", made),
    }
}
