//! An order whose last day is near.

use super::to_order;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, RunsOut};
use crate::finding::{Finding, Severity};

declare! {
    /// The last day to order is within four weeks
    ///
    /// ## What it checks
    /// Things that are chosen and not ordered, whose last day to order is today or within four weeks.
    ///
    /// ## Why it matters
    /// The lead time begins when quotation, signatures and deposit are there, not when one wishes to
    /// order. Four weeks are what those take.
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
    /// Four weeks ahead: common practice.
    "order/soon", Note,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in to_order(context) {
        let last = context.dates.order_by(selection, option).and_then(|when| when.order);
        let (Some(last), RunsOut::Soon) = (last, context.dates.runs_out(selection)) else { continue };
        let from = option.supplier.get().map_or(String::new(), |supplier| format!(" from {supplier}"));
        let message = format!("`{}` must be ordered{from} by {last}", selection.name.value);
        let at = option.lead_time.span().unwrap_or(selection.span);
        let finding = Finding::new(RULE.code, Severity::Note, at, message).room(&room.folder);
        let remedy = "ask whether it can still be had, order it, and write `order: {placed on: …}`";
        findings.push(finding.item(&selection.name.value).remedy(remedy));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Eight weeks before 5 April 2027 is 8 February.
    #[test]
    fn an_order_within_four_weeks_is_told_until_it_is_placed() {
        let trial = |order: &str| {
            Trial::of("order/soon").selection(
                "selection: Hood\nkind: hood\nneeded for: 2027-04-05",
                &format!("supplier: Oren\nlead time: 6-8 weeks\n{order}"),
            )
        };
        trial("").finds("`Hood` must be ordered from Oren by 8 Feb 2027").weighs("note");
        trial("").today("2027-01-11").finds_one();
        trial("").today("2027-01-10").stays_silent();
        trial("").today("2027-02-09").stays_silent();
        trial("order: {placed on: 2027-01-14}").stays_silent();
    }
}
