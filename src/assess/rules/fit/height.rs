//! The chosen thing's height against its opening.

use super::{Direction, tell};
use crate::assess::fitting::fitting;
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::Finding;
use crate::units::Length;

declare! {
    /// The thing is higher than its opening, or the opening higher than its sheet allows
    ///
    /// ## What it checks
    /// The governing height of the opening, from the finished floor, against the height that the
    /// maker's sheet asks for, and against the thing itself with its hinge cap and the air that the
    /// sheet wants above it. The least reading governs, or the lower edge of what hangs above where
    /// that is lower. Floor that is still to be laid is taken off, unless the opening was measured
    /// from the finished floor or has a sill. Legs count at their lowest. A figure that is met
    /// exactly passes.
    ///
    /// ## Why it matters
    /// Width is measured and height is guessed. A new floor under an old opening takes the last
    /// half inch, and a floor that ends in front of a dishwasher locks it in.
    ///
    /// ## Remedy
    /// Choose a lower model, raise what is above, or carry the floor's thickness under the counter
    /// before the cabinets are set.
    ///
    /// ## Example
    /// ```yaml
    /// floor build-up: 1 1/2"
    /// openings:
    ///   dishwasher: {takes: dishwasher, height: 34 1/2", measured from: present floor}
    /// ```
    /// Only 33" stay above the finished floor, less than the 33 1/2" that most dishwashers need.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/height", Stop,
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let fitting = fitting(fitted.room, fitted.opening, fitted.option);
    let word = match fitting.to_lay {
        Length::ZERO => "high".to_string(),
        to_lay => format!("high, with {} of floor still to be laid taken off", say(to_lay, context.book.project.units)),
    };
    let direction = Direction {
        rule: RULE.code,
        word,
        too_small: "choose a lower model, raise what is above, or set the cabinets up by what is still to be laid",
        too_large: "order the maker's filler, have the opening made lower, or write `at least` where the sheet gives only the least",
    };
    tell(context, fitted, &fitting.height, &direction)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(opening: &str, option: &str) -> Trial {
        Trial::of("fit/height")
            .opening("fridge", &format!("{{takes: refrigerator, {opening}}}"))
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", option)
    }

    fn dishwasher(build_up: &str, opening: &str, option: &str) -> Trial {
        Trial::of("fit/height")
            .room(&format!("floor build-up: {build_up}"))
            .opening("dishwasher", &format!("{{takes: dishwasher, {opening}}}"))
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", option)
    }

    /// Source: trade.md F-01: over the old unit, here 66" high, the gap was believed 8" and is 1 1/2".
    #[test]
    fn the_hinge_cap_and_the_air_above_meet_the_cabinet_that_hangs_there() {
        let tall = "size: {height: 69\", height to hinge: 70\"}\nfit: {air: {top: 1\"}}";
        fridge("above: {what: wall cabinet, height: 74\"}", tall).is_silent();
        fridge("above: {what: wall cabinet, height: 67 1/2\"}", tall).finds(
            "the opening `fridge` is 5'-7 1/2\" (1714.5 mm) high, 3 1/2\" (88.9 mm) less than the 5'-11\" (1803.4 mm) needed",
        );
        fridge("above: {what: wall cabinet, height: 71\"}", tall).is_silent();
        fridge("height: 72\", above: {what: wall cabinet, height: 70 15/16\"}", tall).finds_one().weighs("stop");
    }

    /// Source: trade.md F-03 (1/2" too high).
    #[test]
    fn half_an_inch_too_high_is_told() {
        fridge("height: [70 1/4\", 69 1/2\", 70\"]", "size: {height: 70\"}").finds_one().weighs("stop");
        fridge("height: [70 1/4\", 70\", 70\"]", "size: {height: 70\"}").is_silent();
    }

    /// Source: trade.md F-17 (floor 1 1/2" higher than under the unit), F-25 (3/4" to 1" is lost).
    #[test]
    fn floor_still_to_be_laid_is_taken_off() {
        let legs = "size: {height: 33 1/2\" to 34 1/2\"}";
        dishwasher("1 1/2\"", "height: 34 1/2\"", legs).finds(
            "the opening `dishwasher` is 33\" (838.2 mm) high, with 1 1/2\" (38.1 mm) of floor still to be laid taken off, \
             1/2\" (12.7 mm) less than the 33 1/2\" (850.9 mm) needed",
        );
        dishwasher("1\"", "height: 34 1/2\"", legs).is_silent();
        dishwasher("1 1/2\"", "height: 34 1/2\", measured from: finished floor", legs).is_silent();
        dishwasher("1 1/2\"", "height: 34 1/2\", sill: 4\"", legs).is_silent();
    }

    /// Source: trade.md F-19 (bought 1/4" too tall).
    #[test]
    fn a_quarter_too_tall_is_a_stop_and_a_query_while_there_is_a_choice() {
        dishwasher("0\"", "height: 33 1/4\"", "size: {height: 33 1/2\"}").finds_one().weighs("stop");
        let two = "options:\n  - {id: tall, size: {height: 33 1/2\"}}\n  - {id: low, size: {height: 32\"}}";
        dishwasher("0\"", "height: 33 1/4\"", two).finds_one().weighs("query");
    }

    /// Source: trade.md section 3 (built-in refrigerator, 83 1/2" to 84 1/2").
    #[test]
    fn an_opening_higher_than_the_sheet_allows_is_told_when_it_is_measured() {
        let sheet = "fit: {opening: {height: 83 1/2\" to 84 1/2\"}}";
        fridge("height: 84 5/8\"", sheet).finds_one();
        fridge("height: 84 1/2\"", sheet).is_silent();
        fridge("above: {what: soffit, height: 90\"}", sheet).is_silent();
    }
}
