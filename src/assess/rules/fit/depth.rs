//! The chosen thing's depth against its opening.

use super::{Direction, tell};
use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted};
use crate::finding::Finding;

declare! {
    /// The opening is shallower than the thing needs, or deeper than its sheet allows
    ///
    /// ## What it checks
    /// The least depth of the opening, to the wall or to whatever stands before it, against the
    /// depth that the maker's sheet asks for. For what is cut into a cabinet and has no such figure,
    /// against the body and the air that the sheet wants behind it. What stands free in an opening
    /// that is open in front goes in at any depth; how far it then stands out is told by
    /// `fit/projection`.
    ///
    /// ## Why it matters
    /// A valve, a plug or a back panel takes the last half inch, and a built-in that does not go
    /// all the way in cannot be fixed.
    ///
    /// ## Remedy
    /// Choose a shallower model, recess the outlet or valve, or have the cabinet made deeper.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   oven: {takes: wall oven, depth: 23"}
    /// ```
    /// An oven that asks for at least 23 1/2" does not go into this opening.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/depth", Stop,
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let depth = fitting(fitted.room, fitted.opening, fitted.option).depth;
    let direction = Direction {
        rule: RULE.code,
        word: "deep".into(),
        too_small: "choose a shallower model, recess what stands behind it, or have the opening made deeper",
        too_large: "have a stop set behind it, or write `at least` where the sheet gives only the least depth",
    };
    tell(context, fitted, &depth, &direction)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn oven(opening: &str, option: &str) -> Trial {
        Trial::of("fit/depth")
            .opening("oven", &format!("{{takes: wall oven, {opening}}}"))
            .selection("selection: Oven\nkind: wall oven\nplace: oven", option)
    }

    /// Source: trade.md F-35 (23" where 23 1/2" is the least).
    #[test]
    fn a_cabinet_too_shallow_for_the_oven_is_told() {
        let sheet = "fit: {opening: {depth: at least 23 1/2\"}}";
        oven("depth: 23\"", sheet).finds(
            "the opening `oven` is 23\" (584.2 mm) deep, 1/2\" (12.7 mm) less than the 23 1/2\" (596.9 mm) needed",
        );
        oven("depth: 23 1/2\"", sheet).is_silent();
        let two = "options:\n  - {id: deep, fit: {opening: {depth: at least 23 1/2\"}}}\n  - {id: flat}";
        oven("depth: 23\"", two).finds_one().weighs("query");
    }

    /// Source: trade.md section 6 (built-in microwave, at least 22" deep), with 1" behind it.
    #[test]
    fn what_is_cut_into_a_cabinet_goes_in_with_the_air_behind_it() {
        let body = "size: {depth: 22\"}\nfit: {air: {back: 1\"}}";
        oven("depth: 22 15/16\", cabinet: {inside width: 30\"}", body).finds_one().weighs("stop");
        oven("depth: 23\", cabinet: {inside width: 30\"}", body).is_silent();
    }

    /// Source: trade.md F-07: a full-depth refrigerator stands out; that is told once, as projection.
    #[test]
    fn what_stands_free_goes_in_at_any_depth() {
        Trial::of("fit/depth")
            .opening("fridge", "{takes: refrigerator, depth: 24\"}")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", "size: {depth: 29\"}")
            .is_silent();
    }
}
