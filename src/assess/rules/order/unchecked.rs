//! Availability that nobody has asked about since the choice.

use super::to_order;
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Remark, phrase};
use crate::units::Date;

declare! {
    /// Nobody has asked lately whether the thing can still be had
    ///
    /// ## What it checks
    /// What is chosen and not ordered: the last day on which the supplier said that it can be had
    /// (`available on`), or, where nobody asked, the day it was chosen (`chosen on`). More than thirty
    /// days ago is a query. Without either date the rule is silent.
    ///
    /// ## Why it matters
    /// Approved in March, gone in May. A line that is no longer made is cheap to replace on the evening
    /// of the choice, and dear when its rough-in is closed.
    ///
    /// ## Remedy
    /// Ask the supplier; write the day after `available on`, or offer the alternate.
    ///
    /// ## Example
    /// ```yaml
    /// chosen on: 2026-11-20
    /// order: {available on: 2026-11-18}     # eight weeks ago
    /// ```
    ///
    /// ## Source
    /// Thirty days are common practice (as long as most quotations hold).
    "order/unchecked", Query,
    due: GoodsOrdered, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// For how many days a word of the supplier's is good.
const GOOD_FOR: i64 = 30;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let old = |day: Date| day.days_until(context.today) > GOOD_FOR;
    for (room, selection, option) in to_order(context) {
        let name = &selection.name.value;
        let asked = option.order.available_on.spanned();
        let (message, at) = match (asked, selection.chosen_on.spanned()) {
            (Some(asked), _) if old(asked.value) => {
                (phrase!("nobody has asked since {} whether `{name}` can still be had", asked.value, name), asked.span)
            }
            (None, Some(chosen)) if old(chosen.value) => {
                let message = phrase!(
                    "`{name}` was chosen on {}, and nobody has asked since whether it can be had",
                    name,
                    chosen.value
                );
                (message, chosen.span)
            }
            _ => continue,
        };
        let finding = Remark::query(at, message).room(&room.folder);
        let remedy = "ask the supplier, and write the day: `order: {available on: …}`; or offer the alternate";
        findings.push(finding.selection(&selection.name).remedy(remedy));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn light(selection: &str, order: &str) -> Trial {
        Trial::of("order/unchecked")
            .today("2027-05-10")
            .selection(&format!("selection: Light\nkind: wall light\n{selection}"), &format!("order: {{{order}}}"))
    }

    /// Source: trade reports F-115: approved in March, gone in May.
    #[test]
    fn what_was_chosen_in_march_is_asked_about_before_may() {
        light("chosen on: 2027-03-10", "")
            .finds("`Light` was chosen on 10 Mar 2027, and nobody has asked since whether it can be had")
            .weighs("query");
        light("chosen on: 2027-03-10", "available on: 2027-05-03").stays_silent();
        light("chosen on: 2027-03-10", "available on: 2027-03-12").finds_one();
    }

    #[test]
    fn thirty_days_pass_and_what_is_ordered_is_not_asked_about() {
        light("", "available on: 2027-04-10").stays_silent();
        light("", "available on: 2027-04-09").finds_one();
        light("", "available on: 2027-01-09, placed on: 2027-01-10").stays_silent();
        light("", "").stays_silent();
    }
}
