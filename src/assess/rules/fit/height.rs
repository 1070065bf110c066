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
    /// The least height of the opening from the finished floor (what is still to be laid is taken
    /// off where it was measured from the present floor; the lower edge of what hangs above counts
    /// too) against the height that the maker's sheet asks for, and against the thing's own least
    /// height, its hinge cap included, with the air that the sheet wants above it. A single figure
    /// of the sheet is the least for what stands on the floor.
    ///
    /// ## Why it matters
    /// A new floor takes the height away that a dishwasher needs. A refrigerator is as high as its
    /// hinge cap, not as its door.
    ///
    /// ## Remedy
    /// Choose a lower model, have the opening raised or the floor stop short with the maker's
    /// consent, and measure again from the finished floor.
    ///
    /// ## Example
    /// ```yaml
    /// floor build-up: 1 1/2"
    /// openings:
    ///   dishwasher: {takes: dishwasher, height: 34 1/2"}     # 33" when the tile is laid
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement; trade reports F-01, F-03, F-17, F-19, F-25.
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
    let laid = Some(fitting.to_lay).filter(|to_lay| *to_lay > Length::ZERO);
    let once = |to_lay| format!("high once {} of floor is laid", say(to_lay, context.book.project.units));
    let direction = Direction {
        rule: RULE.code,
        word: laid.map_or("high".into(), once),
        too_small: "choose a lower model, or have the opening raised and measured again from the finished floor",
        too_large: "order the maker's filler or trim, or have the opening made lower",
    };
    tell(context, fitted, &fitting.height, &direction)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(room: &str, opening: &str, option: &str) -> Trial {
        let trial = Trial::of("fit/height").room(room).opening("hole", &format!("{{takes: refrigerator, {opening}}}"));
        trial.selection("selection: It\nkind: refrigerator\nplace: hole", option)
    }

    /// Source: trade reports F-17: a floor about 1 1/2" higher than the one under the unit traps it.
    #[test]
    fn a_floor_still_to_be_laid_is_taken_off() {
        let unit = "size: {height: 33 1/2\" to 34 1/2\"}";
        trial("floor build-up: 1 1/2\"", "height: 34 1/2\"", unit)
            .finds("the opening `hole` is 33\" (838.2 mm) high once 1 1/2\" (38.1 mm) of floor is laid, 1/2\" (12.7 mm) less than the 33 1/2\" (850.9 mm) needed");
        trial("floor build-up: 1\"", "height: 34 1/2\"", unit).stays_silent();
        trial("floor build-up: 1 1/2\"", "height: 34 1/2\", measured from: finished floor", unit).stays_silent();
        trial("floor build-up: 1 1/2\"", "height: 34 1/2\", sill: 4\"", unit).stays_silent();
    }

    /// Source: trade reports F-01: 8" believed above the old unit, really about 1 1/2": the wall cabinet decides.
    #[test]
    fn the_hinge_cap_and_the_air_above_meet_the_wall_cabinet() {
        let unit = "size: {height: 69\", height to hinge: 69 7/8\"}\nfit: {air: {top: 1\"}}";
        trial("", "above: {what: wall cabinet, height: 70 3/4\"}", unit).finds_one();
        trial("", "above: {what: wall cabinet, height: 70 7/8\"}", unit).stays_silent();
    }

    /// Source: trade reports F-19: a dishwasher known to be 1/4" too tall.
    #[test]
    fn a_quarter_inch_too_tall_is_too_tall_and_an_exact_fit_passes() {
        trial("", "height: 34\"", "size: {height: 34 1/4\"}").finds_one().weighs("stop");
        trial("", "height: 34 1/4\"", "size: {height: 34 1/4\"}").stays_silent();
    }

    /// Source: trade reports section 3: built-in refrigerator opening 83 1/2" to 84 1/2".
    #[test]
    fn an_opening_higher_than_the_sheet_allows_is_told() {
        let sheet = "fit: {opening: {height: 83 1/2\" to 84 1/2\"}}";
        trial("", "height: 84 9/16\"", sheet).finds_one();
        trial("", "height: 84 1/2\"", sheet).stays_silent();
    }

    /// Source: trade reports F-03 (1/2" too high for its niche).
    #[test]
    fn the_least_of_several_heights_governs_and_a_choice_still_open_is_a_query() {
        let heights = "height: [70 1/4\", 69 1/2\", 70\"]";
        trial("", heights, "size: {height: 70\"}").finds_one().weighs("stop");
        let two = "options:\n  - {id: tall, size: {height: 70\"}}\n  - {id: low, size: {height: 69 1/2\"}}";
        trial("", heights, two).finds_one().weighs("query");
    }

    /// A neighbour bounds the height from above; how high the opening is meant to be it does not say.
    #[test]
    fn what_hangs_high_above_makes_no_opening_too_high() {
        let sheet = "fit: {opening: {height: 83 1/2\" to 84 1/2\"}}";
        trial("", "above: {what: soffit, height: 90\"}", sheet).stays_silent();
    }
}
