//! A quotation that is past its date.

use super::to_order;
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::Wrote;

declare! {
    /// The quotation holds no longer
    ///
    /// ## What it checks
    /// `good until` of what is chosen and not ordered, against today.
    ///
    /// ## Why it matters
    /// Firms quote for thirty days, some for fifteen, and price anew afterwards. The price that the
    /// client signed is then nobody's price.
    ///
    /// ## Remedy
    /// Have it quoted again before anybody signs; write the new price, number and date.
    ///
    /// ## Example
    /// ```yaml
    /// order: {quote: Q-1182, good until: 2027-01-10}
    /// ```
    ///
    /// ## Source
    /// Trade practice (quotations for 30 and for 15 days, then priced anew).
    "order/expired", Query,
    due: GoodsOrdered, tells: [],
    judges: each,
    sources: ["the supplier's quotation"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in to_order(context) {
        let Some(until) = option.order.good_until.spanned().filter(|until| until.value < context.today) else {
            continue;
        };
        let quote = option.order.quote.get().map_or(Phrase::default(), |quote| phrase!(" {quote}", Wrote(quote)));
        let message = phrase!("the quotation{quote} for `{}` held until {}", quote, selection.name.value, until.value);
        let finding = Remark::query(until.span, message).room(&room.folder);
        let remedy = "have it quoted again before anybody signs, and write the new price and date";
        findings.push(finding.selection(&selection.name).remedy(remedy));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_quotation_holds_on_its_last_day() {
        let trial = |order: &str| {
            Trial::of("order/expired")
                .selection("selection: Hood\nkind: hood", &format!("order: {{quote: Q-1, {order}}}"))
        };
        trial("good until: 2027-01-15").stays_silent();
        trial("good until: 2027-01-14").finds("the quotation Q-1 for `Hood` held until 14 Jan 2027").weighs("query");
        trial("good until: 2027-01-14, placed on: 2027-01-10").stays_silent();
    }
}
