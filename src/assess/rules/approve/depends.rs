//! Approvals that rest on something that changed.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Ground};
use crate::book::{Room, Selection};
use crate::finding::{Finding, Severity};
use crate::marks;

declare! {
    /// Something that an approved item rests on has changed since
    ///
    /// ## What it checks
    /// Each approved item, and what it rests on (cabinets on the appliances that they house, the counter
    /// on sink and taps, heights and panels on the floor, trim on its valve, and what `depends on`
    /// names): whether any of these is another one now than in the issue that was approved.
    ///
    /// ## Why it matters
    /// The item changed and its neighbours did not. A cabinet that was approved for one refrigerator is
    /// the wrong cabinet for the next.
    ///
    /// ## Remedy
    /// Look whether it still suits what it rests on; change it, or have it approved again with the change
    /// in view.
    ///
    /// ## Example
    /// ```text
    /// `Cabinets` was approved in issue 1, and `Range`, which it is built around, has changed since
    /// ```
    ///
    /// ## Source
    /// Trade practice: appliances before cabinets, sink and taps before the counter.
    "approve/depends", Query,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    if !context.approvals.is_asked() {
        return;
    }
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        let Some(issue) = item.words.iter().filter(|word| word.holds && word.approves()).map(|word| word.issue).max()
        else {
            continue;
        };
        for ground in context.depends.grounds(selection) {
            findings.extend(changed(context, issue, room, selection, ground));
        }
    }
}

fn changed(
    context: &Context<'_>,
    issue: u32,
    room: &Room,
    selection: &Selection,
    ground: &Ground<'_>,
) -> Option<Finding> {
    let issued = context.book.record.issues.get(&issue)?.item(&ground.room.folder, &ground.selection.id)?;
    let now = context.approvals.marked(ground.room, ground.selection)?;
    // That a choice was written down is no change of the thing that was on show.
    if marks::holds(issued.mark, ground.selection.chosen.get().map(String::as_str), now) {
        return None;
    }
    let changes = marks::changes(&issued.content, &now.content);
    let told = changes.first().map_or(String::new(), |change| format!(": {}", change.words()));
    let (name, other) = (&selection.name.value, &ground.selection.name.value);
    let message = format!(
        "`{name}` was approved in issue {issue}, and `{other}`, which it {}, has changed since{told}",
        ground.because.words()
    );
    let finding = Finding::new(RULE.code, Severity::Query, selection.span, message).room(&room.folder).item(name);
    let remedy = format!("look whether `{name}` still suits it; change it, or have it approved again");
    Some(finding.also(ground.selection.span, "has changed").remedy(remedy))
}
