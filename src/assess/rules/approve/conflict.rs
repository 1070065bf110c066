//! Approvers who disagree.

use super::ordered_on;
use crate::assess::Context;
use crate::assess::approval::{Standing, Word};
use crate::assess::rules::{Check, declare};
use crate::finding::{Finding, Severity};

declare! {
    /// Those who decide do not agree
    ///
    /// ## What it checks
    /// An item that one approver approved and another sent back or rejected, and one of which they chose
    /// different options. A query; a stop once the item is ordered.
    ///
    /// ## Why it matters
    /// Partners disagree more often than not, and the designer who picks the louder one pays for it.
    ///
    /// ## Remedy
    /// Show both what the other said, and ask again. The newest word of each counts.
    ///
    /// ## Example
    /// ```text
    /// `Range`: Ada Marrowby approved `steel`, Sven Lint rejected it
    /// ```
    ///
    /// ## Source
    /// Trade practice: all who decide must agree, in writing.
    "approve/conflict", Query,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        if item.standing != Standing::Conflict {
            continue;
        }
        let holding = item.words.iter().filter(|word| word.holds && word.given.is_known());
        let told: Vec<String> = holding.map(told).collect();
        let name = &selection.name.value;
        let severity = if ordered_on(selection).is_some() { Severity::Stop } else { Severity::Query };
        let finding = Finding::new(RULE.code, severity, selection.span, format!("`{name}`: {}", told.join(", ")));
        findings.push(
            finding
                .room(&room.folder)
                .item(&selection.name)
                .remedy("show each what the other said, and ask both again"),
        );
    }
}

fn told(word: &Word) -> String {
    let option = word.option.as_ref().filter(|_| word.approves()).map_or(String::new(), |id| format!(" `{id}`"));
    let note = word.note.as_ref().map_or(String::new(), |note| format!(" (\"{}\")", super::short(note)));
    format!("{} said {}{option}{note}", word.name, word.decision.words())
}
