//! The chosen thing's width against its opening.

use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};

declare! {
    /// The thing is wider than its opening, or the opening wider than its sheet allows
    ///
    /// ## What it checks
    /// The governing width of the opening (the least of the readings; seen from one plumb line, the
    /// least distance to the right side less the greatest to the left) against the width that the
    /// maker's sheet asks for, and against the thing's own width with the air that the sheet wants
    /// at its sides. Lengths are compared exactly, before any rounding for print; a figure that is
    /// met exactly passes.
    ///
    /// ## Why it matters
    /// An eighth of an inch decides whether an appliance slides in or goes back. Openings are
    /// seldom plumb: the narrowest point rules, not the middle.
    ///
    /// ## Remedy
    /// Choose a narrower model, have the opening widened, or, where the opening is too wide, order
    /// the maker's filler or trim.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   fridge: {takes: refrigerator, width: [33 1/2", 33 1/4", 32 3/4"]}
    /// ```
    /// A refrigerator 32.8" wide does not go into this opening, though it does at the floor.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/width", Stop,
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let width = fitting(fitted.room, fitted.opening, fitted.option).width;
    let there = width.there?;
    let at = width.there_at.unwrap_or(fitted.opening.span);
    let asked = width.asked_at.or(width.body_at);
    if let Some(short) = width.too_small_by() {
        let least = width.least()?;
        let message = format!(
            "the opening `{}` is {} wide, {} less than the {} needed",
            fitted.opening.name.value,
            say(there),
            say(short),
            say(least)
        );
        let finding = fitted.finding(RULE.code, Severity::Stop, at, message);
        let finding = finding.remedy("choose a narrower model, or have the opening widened and measured again");
        return Some(asked.map_or(finding.clone(), |span| finding.also(span, "needs this")));
    }
    let excess = width.too_large_by()?;
    let message = format!(
        "the opening `{}` is {} wide, {} more than the maker's sheet allows",
        fitted.opening.name.value,
        say(there),
        say(excess)
    );
    let finding = fitted.finding(RULE.code, Severity::Stop, at, message);
    Some(finding.remedy("order the maker's filler or trim, or have the opening made narrower"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(opening: &str, size: &str) -> Trial {
        Trial::of("fit/width")
            .opening("fridge", &format!("{{takes: refrigerator, {opening}}}"))
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", size)
    }

    /// Source: trade.md F-05 (opening 33 1/2", unit 32.8", not plumb).
    #[test]
    fn a_refrigerator_that_meets_the_narrow_top_of_its_opening_is_told() {
        fridge("width: [33 1/2\", 33 1/4\", 32 3/4\"]", "size: {width: 32.8\"}")
            .finds("the opening `fridge` is 32 3/4\" (≈ 831.8 mm) wide, ≈ 1/16\" (≈ 1.3 mm) less than the ≈ 32 13/16\" (≈ 833.1 mm) needed");
        fridge("width: [33 1/2\", 33 1/4\", 33\"]", "size: {width: 32.8\"}").is_silent();
    }

    /// Source: standards.md UN-06: 610 mm into 24" (609.6 mm), though both print as 24.
    #[test]
    fn fit_is_decided_before_rounding() {
        fridge("width: 24\"", "size: {width: 610 mm}").finds_one();
        fridge("width: 24\"", "size: {width: 609.6 mm}").is_silent();
    }

    /// Source: trade.md F-04, F-27: from one plumb line, min(right) − max(left).
    #[test]
    fn a_leaning_side_governs_though_every_width_is_enough() {
        let leaning = "width: 30\", plumb: {left: [1\", 1 1/8\", 1\"], right: [31\", 31 1/8\", 31 1/8\"]}";
        fridge(leaning, "fit: {opening: {width: 30\" to 30 1/4\"}}").finds_one();
        let upright = "width: 30\", plumb: {left: [1\", 1\", 1\"], right: [31\", 31\", 31\"]}";
        fridge(upright, "fit: {opening: {width: 30\" to 30 1/4\"}}").is_silent();
    }

    #[test]
    fn an_opening_wider_than_the_sheet_allows_is_told() {
        fridge("width: 30 5/16\"", "fit: {opening: {width: 30\" to 30 1/4\"}}").finds_one();
        fridge("width: 30 1/4\"", "fit: {opening: {width: 30\" to 30 1/4\"}}").is_silent();
    }

    #[test]
    fn while_the_client_still_chooses_a_misfit_is_a_query_that_names_the_option() {
        fridge("width: 30\"", "options:\n  - {id: wide, size: {width: 31\"}}\n  - {id: slim, size: {width: 29\"}}")
            .finds("option `wide`: the opening `fridge` is 30\" (762 mm) wide, 1\" (25.4 mm) less than the 31\" (787.4 mm) needed")
            .weighs("query");
    }
}
