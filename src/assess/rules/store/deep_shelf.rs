//! Shelves that are too deep to see into, or roll out above reach.

use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{ShelfKind, Stores, System};
use crate::finding::{Phrase, Severity, phrase};
use crate::units::Length;

declare! {
    /// A deep shelf does not roll out, or one that does is above reach
    ///
    /// ## What it checks
    /// Shelves inside cabinets (`stores`): fixed or adjustable ones deeper than {16"}; roll-outs
    /// and pull-outs higher than {48"} from the finished floor.
    ///
    /// ## Why it matters
    /// What stands behind something is bought twice. A shelf {12"} deep shows all that is on it; one of
    /// {24"} wants to come out. Above reach nobody sees into what has come out.
    ///
    /// ## Remedy
    /// Roll-outs or drawers below, shallow shelves above.
    ///
    /// ## Example
    /// ```yaml
    /// stores: {depth: 24", shelves: fixed}
    /// ```
    ///
    /// ## Source
    /// {16"}: common practice. {48"}: the high reach of the 2010 ADA Standards, 308.2.1, taken here as advice.
    "store/deep-shelf", Query,
    due: CabinetsOrdered, tells: [Client],
    living: "living.store.deep_shelf",
    judges: [Cabinet],
    sources: ["common practice", "2010 ADA Standards, 308.2.1"],
    caution: None,
    Check::Book(check)
}

/// Depth past which a shelf should come out (common practice).
const DEEP: Length = Length::from_inches(16);
/// The high reach of the 2010 ADA Standards, 308.2.1.
const REACH: Length = Length::from_inches(48);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let Some(stores) = option.stores.get() else { continue };
        let Some((message, source)) = judge(stores, &selection.name.value, context.book.project.units) else {
            continue;
        };
        let at = option.stores.span().unwrap_or(selection.span);
        let finding = about(room, selection, option, Severity::Query, at, message).source(source);
        findings.push(finding.remedy("roll-outs or drawers below reach, shelves of a wall cabinet's depth above it"));
    }
}

fn judge(stores: &Stores, name: &str, units: System) -> Option<(Phrase, &'static str)> {
    match stores.shelves.get()? {
        ShelfKind::Fixed | ShelfKind::Adjustable => {
            let depth = *stores.depth.get().filter(|depth| **depth > DEEP)?;
            let message = phrase!("the shelves of `{name}` are {} deep and do not come out", name, say(depth, units));
            Some((message, "common practice"))
        }
        ShelfKind::RollOut | ShelfKind::PullOut => {
            let highest = *stores.highest.get().filter(|highest| **highest > REACH)?;
            let message = phrase!(
                "a shelf of `{name}` comes out at {}, above a reach of {}",
                name,
                say(highest, units),
                say(REACH, units)
            );
            Some((message, "2010 ADA Standards, 308.2.1"))
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn pantry(stores: &str) -> Trial {
        Trial::of("store/deep-shelf").selection("selection: Pantry\nkind: cabinet", &format!("stores: {{{stores}}}"))
    }

    /// Source: trade reports section 7: shelves deeper than 16" roll out, a pantry of 12 to 16" is fixed.
    #[test]
    fn a_deep_shelf_comes_out_and_a_shallow_one_need_not() {
        pantry("depth: 24\", shelves: fixed")
            .finds("the shelves of `Pantry` are 24\" (610 mm) deep and do not come out")
            .weighs("query");
        pantry("depth: 16\", shelves: fixed").stays_silent();
        pantry("depth: 24\", shelves: roll-out").stays_silent();
    }

    /// Source: check values AD-07: 48" passes.
    #[test]
    fn nothing_comes_out_above_reach() {
        pantry("depth: 24\", shelves: roll-out, highest: 60\"").finds_one();
        pantry("depth: 24\", shelves: roll-out, highest: 48\"").stays_silent();
        pantry("depth: 12\", shelves: fixed, highest: 84\"").stays_silent();
    }
}
