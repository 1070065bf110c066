//! Items that changed after they were approved.

use super::{ordered_on, people, remedy_to_ask};
use crate::assess::Context;
use crate::assess::approval::ApprovalState;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::shown::Change;

declare! {
    /// What was approved has changed since
    ///
    /// ## What it checks
    /// Each approval is of a mark, a digest of all that the client was shown. Where the item's mark is
    /// another one now, the approval stands no longer; the finding tells who had approved it, in which
    /// issue, and what changed, from what to what. A query; a stop once the item is ordered, until those who decide
    /// are asked about what it is now.
    ///
    /// ## Why it matters
    /// A tap that was changed after the client signed is the designer's tap. Supplier, cost, lead time
    /// and private notes are not part of the mark, so that they can change without asking again.
    ///
    /// ## Remedy
    /// Issue the book again and ask; or put back what was approved.
    ///
    /// ## Example
    /// ```text
    /// `Tap` changed since Ada Marrowby approved it in issue 1: finish from brushed steel to black
    /// ```
    ///
    /// ## Source
    /// Trade practice: any edit to model, finish, size, price or quantity voids the approval of that line.
    "approve/stale", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// So many changes are told; the rest are counted.
const TOLD: usize = 3;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        let ApprovalState::Stale(who) = &item.standing else { continue };
        let Some(word) = item.words.iter().find(|word| !word.holds && word.given.is_known() && word.approves()) else {
            continue;
        };
        let told: Vec<Phrase> = word.changes.iter().take(TOLD).map(Change::words).collect();
        let more = word.changes.len().saturating_sub(TOLD);
        let more = if more > 0 { phrase!(" and {more} more", more) } else { Phrase::default() };
        let what =
            if told.is_empty() { Phrase::default() } else { phrase!(": {}{more}", Phrase::joined(told, "; "), more) };
        let name = &selection.name.value;
        // That another option was taken than they chose is more than a new name.
        let chose = word.option.as_ref().zip(selection.settled()).filter(|(chose, now)| **chose != now.id.value);
        let chose = chose.map_or(Phrase::default(), |(chose, now)| {
            phrase!("; option `{chose}` was chosen, and the book says `{}`", chose, now.id.value)
        });
        let message = phrase!(
            "`{name}` changed since {} approved it in issue {}{what}{chose}",
            name,
            people(who),
            word.issue,
            what,
            chose
        );
        // Once they are asked, to stop the pages on which they answer would keep it open for ever.
        let stops = ordered_on(selection).is_some() && !item.asked;
        let severity = if stops { Severity::Stop } else { Severity::Query };
        let finding = Remark::new(severity, selection.span, message).room(&room.folder).selection(&selection.name);
        let remedy =
            if item.asked { "remind those who decide: the newest issue asks them".into() } else { remedy_to_ask() };
        findings.push(finding.remedy(phrase!("{}; or put back what was approved", remedy)));
    }
}
