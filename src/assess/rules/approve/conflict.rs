//! Approvers who disagree.

use super::ordered_on;
use crate::assess::Context;
use crate::assess::approval::{ApprovalState, ApproverDecision};
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::ledger::Decision;
use crate::units::Wrote;

declare! {
    /// Those who decide do not agree
    ///
    /// ## What it checks
    /// An item that one approver approved and another sent back or rejected, and one of which they chose
    /// different options. And one of which the same person said two things, when nobody can know which was
    /// said last: what counts is when it was said, not when it came in. A device that said both tells by
    /// its own count, an issue by what was recorded before it, clocks by more than five minutes. Neither
    /// tells with two devices that signed within five minutes, a clock that is shown to be wrong, or two
    /// decisions written down for one day. A query; a stop once the item is ordered.
    ///
    /// ## Why it matters
    /// Partners disagree more often than not, and the designer who picks the louder one pays for it.
    ///
    /// ## Remedy
    /// Show both what the other said, and ask again. The newest word of each counts. Where it is not known
    /// which was the last, ask that person and record it with its hour: `bookmatch receive --by-hand WHO …
    /// --given "2027-01-16 14:30"`.
    ///
    /// ## Example
    /// ```text
    /// `Range`: Ada Marrowby approved `steel`, Sven Lint rejected it
    /// ```
    ///
    /// ## Source
    /// Trade practice: all who decide must agree, in writing.
    "approve/conflict", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        if item.standing != ApprovalState::Conflict {
            continue;
        }
        let is_shown = |word: &&ApproverDecision| word.given.is_known() && (word.holds || !word.rivals.is_empty());
        let told: Vec<Phrase> = item.words.iter().filter(is_shown).map(told).collect();
        let unsure = item.words.iter().find(|word| !word.rivals.is_empty());
        let name = &selection.name.value;
        let severity = if ordered_on(selection).is_some() { Severity::Stop } else { Severity::Query };
        let finding = Remark::new(severity, selection.span, phrase!("`{name}`: {}", name, Phrase::joined(told, ", ")));
        let remedy = match unsure {
            Some(word) => phrase!(
                "ask {} what holds, and record it with its hour: `bookmatch receive --by-hand {} … --given …`",
                Wrote(&word.name),
                Wrote(&word.who)
            ),
            None => "show each what the other said, and ask both again".into(),
        };
        findings.push(finding.room(&room.folder).selection(&selection.name).remedy(remedy));
    }
}

fn told(word: &ApproverDecision) -> Phrase {
    let chose = |agreed: bool, option: &Option<String>| {
        option.as_ref().filter(|_| agreed).map_or(Phrase::default(), |id| phrase!(" `{id}`", id))
    };
    let option = chose(word.approves(), &word.option);
    if !word.rivals.is_empty() {
        let agreed = |decision| matches!(decision, Decision::Approved | Decision::ApprovedAsNoted);
        let other = |(decision, option): &(Decision, Option<String>)| {
            phrase!("{}{}", decision.words(), chose(agreed(*decision), option))
        };
        let others: Vec<Phrase> = word.rivals.iter().map(other).collect();
        let (first, others) = (word.decision.words(), Phrase::series(others));
        return phrase!(
            "{} said {first}{option} and {others}, and which was last is not known",
            Wrote(&word.name),
            first,
            option,
            others
        );
    }
    let note = word.note.as_ref().map_or(Phrase::default(), |note| phrase!(" (\"{}\")", Wrote(&super::short(note))));
    phrase!("{} said {}{option}{note}", Wrote(&word.name), word.decision.words(), option, note)
}
