//! The chosen thing's width against its opening.

use super::{Direction, tell};
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::Remark;
use crate::site::Placement;

declare! {
    /// The thing is wider than its opening, or the opening wider than its sheet allows
    ///
    /// ## What it checks
    /// The governing width of the opening (the least of the readings; seen from one plumb line, the
    /// least distance to the right side less the greatest to the left) against the width that the
    /// maker's sheet asks for, and against the thing's own width with the air that the sheet wants
    /// at its sides. What the sheet allows at most is held against the greatest reading; a single figure of a sheet is
    /// what such holes are built to, and more than {1/4"} over it is asked about. Lengths are
    /// compared exactly, before any rounding for print; a figure that is met exactly passes.
    ///
    /// ## Why it matters
    /// {1/8"} decides whether an appliance slides in or goes back. Openings are
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
    /// A refrigerator {32.8"} wide does not go into this opening, though it does at the floor.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/width", Stop,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let fit = context.site.fitting(fitted);
    let width = &fit.width;
    let direction = Direction {
        word: "wide".into(),
        too_small: "choose a narrower model, or have the opening widened and measured again",
        too_large: "order the maker's filler or trim, or have the opening made narrower",
    };
    tell(context, fitted, width, &direction)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(opening: &str, size: &str) -> Trial {
        Trial::of("fit/width")
            .opening("fridge", &format!("{{takes: refrigerator, {opening}}}"))
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", size)
    }

    /// Source: trade reports F-05 (opening 33 1/2", unit 32.8", not plumb).
    #[test]
    fn a_refrigerator_that_meets_the_narrow_top_of_its_opening_is_told() {
        fridge("width: [33 1/2\", 33 1/4\", 32 3/4\"]", "size: {width: 32.8\"}")
            .finds("the opening `fridge` is 32 3/4\" (832 mm) wide, ≈ 1/16\" (1.3 mm) less than the ≈ 32 13/16\" (833 mm) needed");
        fridge("width: [33 1/2\", 33 1/4\", 33\"]", "size: {width: 32.8\"}").stays_silent();
    }

    /// A size behind a front that is larger both ways is the body's: it must go into the hole that the sheet asks for.
    #[test]
    fn a_body_behind_a_trim_goes_into_its_hole() {
        let microwave = |rule: &'static str, size: &str, air: &str| {
            Trial::of(rule)
                .opening("hole", "{takes: microwave, width: 24 3/8\", height: 16 3/4\"}")
                .selection(
                    "selection: It\nkind: microwave\nplace: hole",
                    &format!("size: {{{size}}}\nfit: {{opening: {{width: 24 3/8\" to 24 1/2\", height: 16 5/8\" to 16 7/8\"}}, face: {{width: 29 3/4\", height: 19 1/8\"}}{air}}}"),
                )
        };
        let body = "width: 21 3/4\", height: 12 5/8\"";
        for rule in ["fit/width", "fit/height"] {
            microwave(rule, body, "").stays_silent();
            microwave(rule, body, ", air: {top: 1/4\"}").stays_silent();
            // The size of the front, as many sheets have it.
            microwave(rule, "width: 29 3/4\", height: 19\"", "").stays_silent();
        }
        microwave("fit/width", "width: 25 1/2\", height: 12 5/8\"", "").finds_one().weighs("query");
        microwave("fit/width", body, ", air: {left: 2\", right: 2\"}").finds_one();
        microwave("fit/height", "width: 21 3/4\", height: 17 5/8\"", "").finds_one().weighs("query");
    }

    /// The cabinet that an oven is built into may name the oven's place, and is none that goes in there.
    #[test]
    fn the_cabinet_around_an_opening_does_not_go_into_it() {
        let oven = |rule: &'static str, holds: &str| {
            Trial::of(rule)
                .room(&format!("ceiling: 96\"\nruns: {{a: {{parts: [{{tall: oven cabinet, width: 33\"{holds}}}]}}}}"))
                .opening("oven", "{takes: wall oven, width: 28 1/2\", height: 28\", depth: 23 3/4\", sill: 32\"}")
                .selection(
                    "selection: Oven cabinet\nkind: cabinet\nplace: oven",
                    "size: {width: 33\", height: 90\", depth: 24\"}",
                )
        };
        for rule in ["fit/width", "fit/height", "fit/depth", "run/ceiling"] {
            oven(rule, ", holds: [oven]").stays_silent();
        }
        oven("fit/width", "").finds_one();
    }

    /// Source: check values UN-06: 610 mm into 24" (609.6 mm), though both print as 24.
    #[test]
    fn fit_is_decided_before_rounding() {
        fridge("width: 24\"", "size: {width: 610 mm}").finds_one();
        fridge("width: 24\"", "size: {width: 609.6 mm}").stays_silent();
    }

    /// Source: trade reports F-04, F-27: from one plumb line, min(right) − max(left).
    #[test]
    fn a_leaning_side_governs_though_every_width_is_enough() {
        let leaning = "width: 30\", plumb: {left: [1\", 1 1/8\", 1\"], right: [31\", 31 1/8\", 31 1/8\"]}";
        fridge(leaning, "fit: {opening: {width: 30\" to 30 1/4\"}}").finds_one();
        let upright = "width: 30\", plumb: {left: [1\", 1\", 1\"], right: [31\", 31\", 31\"]}";
        fridge(upright, "fit: {opening: {width: 30\" to 30 1/4\"}}").stays_silent();
    }

    #[test]
    fn an_opening_wider_than_the_sheet_allows_is_told() {
        fridge("width: 30 5/16\"", "fit: {opening: {width: 30\" to 30 1/4\"}}").finds_one();
        fridge("width: 30 1/4\"", "fit: {opening: {width: 30\" to 30 1/4\"}}").stays_silent();
        // The reading that governs is pointed at, of a least and of a greatest.
        fridge("width: [30\", 30\", 30 5/16\"]", "fit: {opening: {width: 30\" to 30 1/4\"}}")
            .finds_one()
            .points_at(&["rooms/kitchen/room.yaml:3:51"]);
        fridge("width: [30\", 30\", 29 7/8\"]", "fit: {opening: {width: 30\" to 30 1/4\"}}")
            .finds_one()
            .points_at(&["rooms/kitchen/room.yaml:3:51"]);
    }

    /// Source: common practice: a niche of 600 mm is built a few millimetres wider than what goes in.
    #[test]
    fn a_single_figure_of_a_sheet_is_no_limit_from_above() {
        for (width, figure) in [("603 mm", "600 mm"), ("604 mm", "600 mm"), ("30 1/8\"", "30\""), ("30 1/4\"", "30\"")]
        {
            fridge(&format!("width: {width}"), &format!("fit: {{opening: {{width: {figure}}}}}")).stays_silent();
        }
        fridge("width: 620 mm", "fit: {opening: {width: 600 mm}}")
            .finds("the opening `fridge` is ≈ 24 7/16\" (620 mm) wide, ≈ 13/16\" (20 mm) more than the ≈ 23 5/8\" (600 mm) of the maker's sheet")
            .weighs("query");
        fridge("width: 604 mm", "fit: {opening: {width: 600 mm to 603 mm}}").finds_one().weighs("stop");
        fridge("width: 599 mm", "fit: {opening: {width: 600 mm}}").finds_one().weighs("stop");
        // A hole in stone is cut as its sheet says.
        Trial::of("fit/width")
            .opening("hob", "{takes: cooktop, width: 562 mm}")
            .selection("selection: Hob\nkind: cooktop\nplace: hob", "fit: {opening: {width: 560 mm}}")
            .finds_one()
            .weighs("stop");
    }

    #[test]
    fn while_the_client_still_chooses_a_misfit_is_a_query_that_names_the_option() {
        fridge("width: 30\"", "options:\n  - {id: wide, size: {width: 31\"}}\n  - {id: slim, size: {width: 29\"}}")
            .finds("option `wide`: the opening `fridge` is 30\" (762 mm) wide, 1\" (25.4 mm) less than the 31\" (787 mm) needed")
            .weighs("query");
    }

    /// Source: trade reports section 6 (a 30" wall oven's cutout 28 1/2", its front wider by the overlap).
    #[test]
    fn a_front_that_covers_the_edge_is_not_what_goes_into_the_hole() {
        let oven = |opening: &str| {
            Trial::of("fit/width").opening("oven", &format!("{{takes: wall oven, width: {opening}}}")).selection(
                "selection: Oven\nkind: wall oven\nplace: oven",
                "size: {width: 29 3/4\"}\nfit: {opening: {width: 28 1/2\" to 28 5/8\"}}",
            )
        };
        oven("28 1/2\"").stays_silent();
        oven("28 3/8\"").finds_one().weighs("stop");
    }

    /// Source: arithmetic: 89 7/8" measured less two cabinets of 30" leave 29 7/8".
    #[test]
    fn what_a_measured_run_leaves_is_the_width_of_its_one_opening() {
        let range = |space: &str, opening: &str| {
            Trial::of("fit/width")
                .room(&format!("runs: {{w: {{space: {space}, parts: [{{cabinet: a, width: 30\"}}, {{opening: range}}, {{cabinet: b, width: 30\"}}]}}}}"))
                .opening("range", &format!("{{takes: range{opening}}}"))
                .selection("selection: Range\nkind: range\nplace: range", "size: {width: 30\"}\nfit: {opening: {width: 30\" to 30 1/4\"}}")
        };
        range("[90\", 89 7/8\"]", "")
            .finds("the opening `range` is 29 7/8\" (759 mm) wide, 1/8\" (3.2 mm) less than the 30\" (762 mm) needed")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:2:25"]);
        range("90\"", "").stays_silent();
        // What is left over may be filled; and what was measured counts first.
        range("95\"", "").stays_silent();
        range("89 7/8\"", ", width: 30 1/8\"").stays_silent();
    }
}
