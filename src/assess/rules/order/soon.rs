//! An order whose last day is near.

use super::to_order;
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::Wrote;

declare! {
    /// The last day to order is within two weeks
    ///
    /// ## What it checks
    /// Things that are chosen and not ordered, whose last day to order is today or within two weeks.
    /// What still waits for another choice is told by `order/before` alone.
    ///
    /// ## Why it matters
    /// The lead time begins when quotation, signatures and deposit are there, not when one wishes to
    /// order. Two weeks are what those take.
    ///
    /// ## Remedy
    /// Ask whether it can still be had, fetch what is missing, order, and write `placed on`.
    ///
    /// ## Example
    /// ```yaml
    /// order: {placed on: 2027-01-14}
    /// ```
    ///
    /// ## Source
    /// Two weeks ahead: common practice (a buffer of two weeks on every order).
    "order/soon", Note,
    due: GoodsOrdered, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// How many days before the last day to order it is told.
const AHEAD: i64 = 14;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in to_order(context) {
        let last = context.dates.order_by(selection, option).and_then(|when| when.order);
        let days = last.map(|last| context.today.days_until(last));
        let (Some(last), Some(0..=AHEAD)) = (last, days) else { continue };
        if !context.depends.waits_for(selection, context.approvals).is_empty() {
            continue;
        }
        let from =
            option.supplier.get().map_or(Phrase::default(), |supplier| phrase!(" from {supplier}", Wrote(supplier)));
        let message = phrase!("`{}` must be ordered{from} by {last}", selection.name.value, from, last);
        let at = option.lead_time.span().unwrap_or(selection.span);
        let finding = Remark::note(at, message).room(&room.folder);
        let remedy = "ask whether it can still be had, order it, and write `order: {placed on: …}`";
        findings.push(finding.selection(&selection.name).remedy(remedy));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Eight weeks before 5 April 2027 is 8 February.
    #[test]
    fn an_order_within_two_weeks_is_told_until_it_is_placed() {
        let trial = |order: &str| {
            Trial::of("order/soon").selection(
                "selection: Hood\nkind: hood\nneeded for: 2027-04-05",
                &format!("supplier: Oren\nlead time: 6-8 weeks\n{order}"),
            )
        };
        trial("").today("2027-02-08").finds("`Hood` must be ordered from Oren by 8 Feb 2027").weighs("note");
        trial("").today("2027-01-25").finds_one();
        trial("").today("2027-01-24").stays_silent();
        trial("").today("2027-02-09").stays_silent();
        trial("order: {placed on: 2027-01-14}").today("2027-02-08").stays_silent();
    }
}
