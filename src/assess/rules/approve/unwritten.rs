//! Choices that were made and that the book does not say.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::Selection;
use crate::finding::{Remark, phrase};

declare! {
    /// An option was chosen, and the book does not say so yet
    ///
    /// ## What it checks
    /// Items with several options and no `chosen`, of which those who approved chose the same one.
    ///
    /// ## Why it matters
    /// Once all who must have approved it, pages, sheets and sums have the option that was signed, written or not. A
    /// folder that does not say so is read otherwise by everybody else, and nothing is issued for construction of it.
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
    let unwritten = |selection: &Selection| selection.settled().is_none() || selection.chosen_by_record;
    for (room, selection) in context.book.selections().filter(|(_, selection)| unwritten(selection)) {
        let Some(chosen) = context.approvals.item(room, selection).and_then(|item| item.chosen()) else { continue };
        let name = &selection.name.value;
        let message = phrase!("option `{chosen}` of `{name}` was chosen, and the book does not say so", chosen, name);
        let finding = Remark::note(selection.span, message).room(&room.folder).selection(&selection.name);
        findings.push(finding.remedy(phrase!("write `chosen: {chosen}`", chosen)));
    }
}
