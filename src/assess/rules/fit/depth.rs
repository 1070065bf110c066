//! The chosen thing's depth against its opening.

use super::{Direction, tell};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{DepthStack, DimensionCheck, setting};
use crate::units::Length;

declare! {
    /// The opening is not as deep as the thing, or its sheet, needs
    ///
    /// ## What it checks
    /// The least depth of the opening, to the wall or to whatever stands before it (an outlet, a
    /// valve, a baseboard), against the depth that the maker's sheet asks for, or for what is built
    /// in, against the body and the air behind it; where the opening has no depth, that of the cabinet or the
    /// part of a row that holds it. And what is meant to be flush (`set: flush` at the
    /// opening or the thing): case, front panel and the air behind it, or the plug or valve that stands
    /// further out of the wall, against the recess: the opening's depth, or the depth of its run. What is built in, and
    /// with the air behind it deeper than an opening that is as its sheet asks, is asked about.
    ///
    /// ## Why it matters
    /// Width and height are measured, depth is believed. A refrigerator box that is deep enough for
    /// the old unit leaves the new one standing in the aisle.
    ///
    /// ## Remedy
    /// Choose a shallower model, or have what stands behind it recessed (outlet, valve) or moved.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   oven: {takes: wall oven, depth: 23"}     # its sheet asks for 23 1/2"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement.
    "fit/depth", Stop,
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
    if let Some(stack) = fit.flush {
        return flush(context, fitted, &stack, &fit.depth);
    }
    let direction = Direction {
        word: "deep".into(),
        too_small: "choose a shallower model, or have what stands behind it recessed and measured again",
        too_large: "fur the back out to the depth that the sheet asks for",
    };
    tell(context, fitted, &fit.depth, &direction)
}

/// What is meant to be flush against the recess that it stands in.
fn flush(context: &Context<'_>, fitted: &Placement<'_>, stack: &DepthStack, depth: &DimensionCheck) -> Option<Remark> {
    let (_, meant_at) = setting(fitted.opening, fitted.option)?;
    let (over, recess, at) = (depth.too_small_by()?, depth.there?, depth.there_at?);
    let say = |length| say(length, context.book.project.units);
    let panel = (stack.panel > Length::ZERO).then(|| phrase!("{} of panel", say(stack.panel)));
    let behind = (stack.behind > Length::ZERO).then(|| match stack.struck {
        Some(service) => phrase!("{} of {service} point behind it", say(stack.behind), service),
        None => phrase!("{} of air behind it", say(stack.behind)),
    });
    let parts = [Some(phrase!("{} of case", say(stack.case))), panel, behind].into_iter().flatten();
    let message = phrase!(
        "`{}` is meant to be flush and needs {} ({}), {} more than the recess `{}` is deep: {}",
        fitted.selection.name.value,
        say(stack.total()),
        Phrase::joined(parts, ", "),
        say(over),
        fitted.opening.name.value,
        say(recess)
    );
    let finding = fitted.finding(Severity::Stop, at, message).also(meant_at, "meant to be flush");
    Some(finding.remedy(
        "have the recess made deeper or what stands behind recessed, or agree that it stands out: `set: proud`",
    ))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn oven(depth: &str) -> Trial {
        let trial = Trial::of("fit/depth").opening("hole", &format!("{{takes: wall oven, depth: {depth}}}"));
        trial.selection("selection: It\nkind: wall oven\nplace: hole", "fit: {opening: {depth: at least 23 1/2\"}}")
    }

    /// Source: trade reports F-35: a wall-oven cabinet 23" deep where the sheet asks for 23 1/2" at least.
    #[test]
    fn an_oven_cabinet_half_an_inch_too_shallow_is_told() {
        oven("23\"")
            .finds("the opening `hole` is 23\" (584 mm) deep, 1/2\" (12.7 mm) less than the 23 1/2\" (597 mm) needed");
        oven("23 1/2\"").stays_silent();
    }

    /// Of two figures of one sheet the larger counts, and the sheet is asked.
    #[test]
    fn a_body_that_does_not_go_into_its_sheet_s_opening_is_asked_about() {
        let oven = |size: &str, more: &str| {
            Trial::of("fit/depth")
                .opening("hole", "{takes: wall oven, depth: 23 3/4\"}")
                .selection(
                    "selection: It\nkind: wall oven\nplace: hole",
                    &format!("size: {{{size}}}\nfit: {{opening: {{depth: at least 23 1/2\"}}, face: {{width: 30\", height: 29\"}}{more}}}"),
                )
        };
        oven("depth: 24 1/2\"", "")
            .finds("`It` is 24 1/2\" (622 mm) deep, 3/4\" (19 mm) more than the opening `hole`, though its sheet asks for an opening that is no larger")
            .weighs("query");
        oven("depth: 23\"", ", air: {back: 1\"}")
            .finds("`It` with its air is 24\" (610 mm) deep, 1/4\" (6.4 mm) more than the opening `hole`, though its sheet asks for an opening that is no larger");
        oven("depth: 23\", depth with door: 24 1/2\", depth with handle: 27\"", ", air: {back: 1/2\"}").stays_silent();
        // What stands open in front may be deeper.
        Trial::of("fit/depth")
            .opening("hole", "{takes: dishwasher, depth: 24\"}")
            .selection(
                "selection: It\nkind: dishwasher\nplace: hole",
                "size: {depth: 24 3/4\"}\nfit: {opening: {depth: at least 24\"}}",
            )
            .stays_silent();
        // A hob's rim lies on its counter.
        Trial::of("fit/depth")
            .opening("hole", "{takes: cooktop, depth: 490 mm, cabinet: {inside width: 564 mm}}")
            .selection(
                "selection: It\nkind: cooktop\nplace: hole",
                "size: {depth: 522 mm}\nfit: {opening: {depth: 490 mm}}",
            )
            .stays_silent();
    }

    #[test]
    fn the_least_of_several_depths_governs() {
        oven("[24\", 23 1/4\"]").finds_one();
    }

    #[test]
    fn while_the_client_still_chooses_a_shallow_opening_is_a_query() {
        Trial::of("fit/depth")
            .opening("hole", "{takes: wall oven, depth: 23\"}")
            .selection(
                "selection: It\nkind: wall oven\nplace: hole",
                "options:\n  - {id: deep, fit: {opening: {depth: at least 23 1/2\"}}}\n  - {id: flat}",
            )
            .finds_one()
            .weighs("query");
    }

    /// Source: trade reports section 6 (built-in microwave, at least 22" deep), with 1" behind it.
    #[test]
    fn what_is_cut_into_a_cabinet_goes_in_with_the_air_behind_it() {
        let microwave = |depth: &str| {
            Trial::of("fit/depth")
                .opening("hole", &format!("{{takes: microwave, depth: {depth}, cabinet: {{inside width: 30\"}}}}"))
                .selection(
                    "selection: It\nkind: microwave\nplace: hole",
                    "size: {depth: 22\"}\nfit: {air: {back: 1\"}}",
                )
        };
        microwave("22 15/16\"").finds_one().weighs("stop");
        microwave("23\"").stays_silent();
    }

    /// Source: trade reports F-07: a full-depth refrigerator stands out; that is told once, as projection.
    #[test]
    fn what_stands_free_goes_in_at_any_depth() {
        Trial::of("fit/depth")
            .opening("fridge", "{takes: refrigerator, depth: 24\"}")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", "size: {depth: 29\"}")
            .stays_silent();
    }

    /// Source: arithmetic of a sheet's own figures: 24" of case, 3/4" of panel and 1/2" of air want 25 1/4".
    #[test]
    fn what_is_meant_flush_goes_in_with_its_panel_and_the_air_behind_it() {
        let fridge = |opening: &str, option: &str| {
            Trial::of("fit/depth").opening("bay", &format!("{{takes: refrigerator, {opening}}}")).selection(
                "selection: Refrigerator\nkind: refrigerator\nplace: bay",
                &format!("size: {{depth: 24\"}}\nfit: {{air: {{back: 1/2\"}}}}\npanel: {{thickness: 3/4\"}}\n{option}"),
            )
        };
        fridge("depth: 25\", set: flush", "")
            .finds("`Refrigerator` is meant to be flush and needs 25 1/4\" (641 mm) (24\" (610 mm) of case, 3/4\" (19 mm) of panel, 1/2\" (12.7 mm) of air behind it), 1/4\" (6.4 mm) more than the recess `bay` is deep: 25\" (635 mm)")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:3:37"]);
        fridge("depth: 25\"", "set: flush").finds_one();
        fridge("depth: 25 1/4\", set: flush", "").stays_silent();
        fridge("depth: 25\"", "").stays_silent();
        fridge("depth: 25\", set: proud", "").stays_silent();
        // A plug that stands out further than the air asked for; one that is beside it does not count.
        let plug =
            |more: &str| format!("depth: 25 1/4\", set: flush, service points: {{power: {{proud: 1 1/4\"{more}}}}}");
        fridge(&plug(""), "").finds_one();
        fridge(&plug(", beside: true"), "").stays_silent();
    }

    #[test]
    fn a_panel_that_the_joiner_has_as_a_line_of_its_own_counts() {
        let fridge = |line: &str| {
            Trial::of("fit/depth")
                .opening("bay", "{takes: refrigerator, depth: 24\", set: flush}")
                .selection("selection: Refrigerator\nkind: refrigerator\nplace: bay", "size: {depth: 23 1/2\"}")
                .selection(&format!("selection: {line}\nkind: cabinet"), "size: {thickness: 3/4\"}")
        };
        fridge("Refrigerator door panel").finds_one().weighs("stop");
        fridge("Dishwasher panel").stays_silent();
    }

    #[test]
    fn the_recess_is_as_deep_as_the_run_it_stands_in() {
        let fridge = |depth: &str| {
            Trial::of("fit/depth")
                .room(&format!("runs: {{cold wall: {{depth: {depth}, parts: [{{opening: bay}}]}}}}"))
                .opening("bay", "{takes: refrigerator, width: 36\"}")
                .selection(
                    "selection: Refrigerator\nkind: refrigerator\nplace: bay",
                    "size: {depth: 24\"}\nfit: {panel: {thickness: 3/4\"}}\nset: flush",
                )
        };
        fridge("24\"").finds_one();
        fridge("24 3/4\"").stays_silent();
    }

    /// Source: arithmetic: a closet of 32" for a machine that asks 35".
    #[test]
    fn a_closet_is_no_deeper_than_the_room_that_it_is() {
        let washer = |room: &str, opening: &str, sheet: &str| {
            Trial::of("fit/depth").room(room).opening("washer", &format!("{{takes: washer, {opening}}}")).selection(
                "selection: Washer\nkind: washer\nplace: washer",
                &format!("size: {{width: 27\", depth: 31 1/2\"}}\n{sheet}"),
            )
        };
        let at = "wall: A, at: 2\", width: 28\"";
        let asks = "fit: {opening: {depth: at least 35\"}}";
        washer("outline: 60\" x 32\"", at, asks)
            .finds("the opening `washer` is 32\" (813 mm) deep, 3\" (76 mm) less than the 35\" (889 mm) needed")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:2:10"]);
        let run = "outline: 60\" x 32\"\nruns: {w: {wall: A, starts: 2\", depth: 32\", parts: [{opening: washer}]}}";
        washer(run, "width: 28\"", asks).finds_one();
        // With the air behind it, where the sheet asks for no opening.
        washer("outline: 60\" x 34\"", at, "fit: {air: {back: 3 1/2\"}}").finds_one();
        washer("outline: 60\" x 35\"", at, asks).stays_silent();
        // What was measured counts first, as far as both can be; a closet without a front is as deep as what is before it.
        washer("outline: 60\" x 34\"", &format!("{at}, depth: 36\""), asks).stays_silent();
        let cased =
            |leaf: &str| format!("outline: 60\" x 32\"\ndoors: {{way: {{wall: C, at: 10\", width: 48\"{leaf}}}}}");
        washer(&cased(""), at, asks).stays_silent();
        washer(&cased(", slides: true"), at, asks).finds_one();
    }
}
