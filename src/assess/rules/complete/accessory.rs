//! A kit that the sheet requires and nobody orders.

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, declare};
use crate::finding::{Finding, Severity};

declare! {
    /// A kit, trim or filler that the sheet requires is not ordered
    ///
    /// ## What it checks
    /// Each name under `requires` against the names under `accessories`.
    ///
    /// ## Why it matters
    /// A pair of tall units without its joining kit, a range on the wrong gas without its
    /// conversion kit: the opening is made for the sum with the kit, and the remedy is invasive.
    ///
    /// ## Remedy
    /// Order it: add it under `accessories`, with its price.
    ///
    /// ## Example
    /// ```yaml
    /// requires: [joining kit]
    /// accessories: [{name: joining kit, price: 140.00}]
    /// ```
    ///
    /// ## Source
    /// trade reports F-13 (joining kit), F-47 (conversion kit).
    "complete/accessory", Stop,
    sources: ["the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in context.options() {
        let ordered = |name: &str| option.accessories.iter().any(|with| with.name.value.eq_ignore_ascii_case(name));
        for required in option.requires.iter().filter(|name| !ordered(name)) {
            let message = format!("the sheet requires `{}`, and nothing orders it", required.value);
            let finding = about(room, selection, option, RULE.code, Severity::Stop, required.span, message);
            findings.push(finding.remedy(format!("add `accessories: [{{name: {}, price: …}}]`", required.value)));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-13, F-47.
    #[test]
    fn a_kit_that_the_sheet_requires_must_be_ordered() {
        let trial = |with: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [joining kit]\n{with}"))
        };
        trial("").finds("the sheet requires `joining kit`, and nothing orders it");
        trial("accessories: [{name: anti-tip bracket}]").finds_one();
        trial("accessories: [{name: Joining kit, price: 140}]").stays_silent();
    }
}
