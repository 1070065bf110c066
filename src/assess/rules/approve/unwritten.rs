//! Choices that were made and that the book does not say.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Remark, phrase};

declare! {
    /// An option was chosen, and the book does not say so yet
    ///
    /// ## What it checks
    /// Items with several options and no `chosen`, of which those who approved chose the same one.
    ///
    /// ## Why it matters
    /// Until it is written down the other options are still checked, priced and drawn.
    ///
    /// ## Remedy
    /// Write the option after `chosen`. The approval goes on standing: that alone is no change.
    ///
    /// ## Example
    /// ```yaml
    /// chosen: steel
    /// ```
    ///
    /// ## Source
    /// The record.
    "approve/unwritten", Note,
    due: WithThing, tells: [],
    sources: ["the record"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection) in context.book.selections().filter(|(_, selection)| selection.settled().is_none()) {
        let Some(chosen) = context.approvals.item(room, selection).and_then(|item| item.chosen()) else { continue };
        let name = &selection.name.value;
        let message = phrase!("option `{chosen}` of `{name}` was chosen, and the book does not say so", chosen, name);
        let finding = Remark::note(selection.span, message).room(&room.folder).selection(&selection.name);
        findings.push(finding.remedy(phrase!("write `chosen: {chosen}`", chosen)));
    }
}
