//! What reaches into what stands below it.

use crate::assess::rules::trial::Trial;

fn cooktop(below: &str) -> Trial {
    Trial::of("fit/below")
        .opening("hole", &format!("{{takes: cooktop, below: {below}}}"))
        .selection("selection: Cooktop\nkind: cooktop\nplace: hole", "fit: {below: 6 1/4\", not over: [oven]}")
}

/// Source: trade reports section 6 (a cooktop reaches 3" to 6" below the counter), cautions 2 (the sheet's list decides).
#[test]
fn a_drawer_that_the_cooktop_reaches_into_and_a_forbidden_oven_stop() {
    cooktop("{what: drawer, clear: 5\"}")
        .finds("`Cooktop` reaches 6 1/4\" (159 mm) below the counter, 1 1/4\" (31.8 mm) into the drawer")
        .weighs("stop")
        .cautions();
    cooktop("{what: drawer, clear: 6 1/4\"}").stays_silent();
    cooktop("{what: wall oven, clear: 10\"}").finds("`Cooktop` may not stand over a wall oven, by its sheet");
}

/// Source: trade reports F-59: a deep bowl and a disposer below the wall's drain.
#[test]
fn a_deep_bowl_and_its_disposer_below_the_drain_stop() {
    let sink = |bowl: &str, disposer: &str| {
        Trial::of("fit/below")
            .opening("hole", "{takes: sink, counter height: 36\", service: {drain: '1 1/2\", 14\" AFF'}}")
            .selection("selection: Sink\nkind: sink\nplace: hole", &format!("bowl depth: {bowl}"))
            .selection("selection: Disposer\nkind: disposer", disposer)
    };
    let outlet = "size: {height: 13\"}\noutlet below bowl: 6 1/2\"";
    sink("16\"", outlet)
        .finds("`Sink` with its disposer comes out 13 1/2\" (343 mm) above the floor, 1/2\" (12.7 mm) below the drain")
        .weighs("stop")
        .cautions();
    sink("15 1/2\"", outlet).stays_silent();
    // A sheet that is silent is asked for, unless even the disposer's bottom is above the drain.
    sink("10\"", "size: {height: 13\"}")
        .finds("nobody says how far below `Sink` the outlet of `Disposer` is; above the drain there are 12\" (305 mm)")
        .weighs("query")
        .cautions()
        .points_at(&["rooms/kitchen/selection-1.yaml:1:12"]);
    sink("9\"", "size: {height: 13\"}").stays_silent();
    sink("23\"", "size: {height: 13\"}")
        .finds("`Sink` comes out 13\" (330 mm) above the floor, 1\" (25.4 mm) below the drain");
    sink("10\"", "place: prep\nsize: {height: 13\"}").opening("prep", "{takes: sink}").stays_silent();
}

/// Source: common practice (a strainer and the inlet of a trap take 2" and more).
#[test]
fn between_a_bowl_and_its_drain_is_room_for_strainer_and_trap() {
    let sink = |bowl: &str, kind: &str| {
        Trial::of("fit/below")
            .opening(
                "hole",
                &format!("{{takes: {kind}, counter height: 36\", service: {{drain: '1 1/2\", 24\" AFF'}}}}"),
            )
            .selection(&format!("selection: Sink\nkind: {kind}\nplace: hole"), &format!("bowl depth: {bowl}"))
    };
    sink("11\"", "sink")
        .finds("`Sink` comes out 1\" (25.4 mm) above its drain, and strainer and trap want 2\" (51 mm) there as usual")
        .weighs("query")
        .cautions();
    sink("12\"", "sink").finds_one().weighs("query");
    sink("10\"", "sink").stays_silent();
    sink("12 1/2\"", "sink").finds_one().weighs("stop");
}

/// Air that the sheet wants under a hob is below it too.
#[test]
fn a_hob_reaches_down_with_the_air_under_it() {
    let hob = |air: &str| {
        Trial::of("fit/below").opening("hole", "{takes: cooktop, below: {what: drawer, clear: 6\"}}").selection(
            "selection: Hob\nkind: cooktop\nplace: hole",
            &format!("size: {{height: 4\"}}\nfit: {{below: 4 1/4\", air: {{bottom: {air}}}}}"),
        )
    };
    hob("2\"").stays_silent();
    hob("10\"").finds("`Hob` reaches 14\" (356 mm) below the counter, 8\" (203 mm) into the drawer").weighs("query");
}

/// Source: arithmetic: 36" less a slab of 1 1/4" and a bowl of 9" leave 25 3/4".
#[test]
fn a_bowl_under_the_stone_hangs_lower_by_its_thickness() {
    let sink = |mount: &str, drain: &str, row: &str| {
        Trial::of("fit/below")
            .room(row)
            .opening(
                "hole",
                &format!("{{takes: sink, counter height: 36\", service: {{drain: '1 1/2\", {drain} AFF'}}}}"),
            )
            .selection("selection: Stone\nkind: counter", "thickness: 1 1/4\"")
            .selection("selection: Sink\nkind: sink\nplace: hole", &format!("mount: {mount}\nbowl depth: 9\""))
    };
    let run = "runs: {wet side: {parts: [{cabinet: base, width: 36\", holds: [hole]}]}}";
    for row in ["", run] {
        sink("undermount", "26 3/4\"", row)
            .finds("`Sink` comes out 25 3/4\" (654 mm) above the floor, 1\" (25.4 mm) below the drain")
            .weighs("stop");
        sink("undermount", "23 3/4\"", row).stays_silent();
        sink("drop-in", "25\"", row).stays_silent();
    }
    // The stone of another row says nothing of this one, and what is not known does not pass.
    let elsewhere = "runs: {wet side: {parts: [{cabinet: base, width: 36\", holds: [hole]}]}, dry side: {parts: [{cabinet: pots, width: 36\"}]}}";
    sink("undermount", "26 3/4\"", elsewhere)
        .selection("selection: Other\nkind: counter", "thickness: 3\"\ntop: {lies on: [dry side]}")
        .finds("nobody says how thick the counter over `Sink` is; without it, 1/4\" (6.4 mm) are left above the drain")
        .weighs("query")
        .cautions();
    sink("undermount", "24\"", elsewhere)
        .selection("selection: Other\nkind: counter", "thickness: 3\"\ntop: {lies on: [dry side]}")
        .stays_silent();
    // Of two that may still be chosen, the thicker hangs it lower.
    sink("undermount", "25 3/4\"", run)
        .selection(
            "selection: Slab\nkind: counter",
            "options: [{id: thin, thickness: 3/4\", top: {lies on: [wet side]}}, {id: thick, thickness: 2\", top: {lies on: [wet side]}}]",
        )
        .finds_one()
        .weighs("stop");
}

#[test]
fn a_basin_in_a_vanity_comes_out_above_the_drain() {
    let basin = |drain: &str, mount: &str| {
        Trial::of("fit/below")
            .opening("vanity", &format!("{{takes: cabinet, service: {{drain: '1 1/4\", {drain} AFF'}}}}"))
            .selection("selection: Vanity\nkind: cabinet\nplace: vanity", "size: {height: 31\"}")
            .selection("selection: Top\nkind: counter", "thickness: 1\"")
            .selection("selection: Basin\nkind: basin", &format!("mount: {mount}\nsize: {{height: 6\"}}"))
    };
    basin("28\"", "undermount")
        .finds("`Basin` in `Vanity` comes out 25\" (635 mm) above the floor, 3\" (76 mm) below the drain")
        .weighs("stop");
    basin("20\"", "undermount").stays_silent();
    basin("28\"", "on the counter").stays_silent();
}

#[test]
fn what_else_the_cabinet_holds_stands_below_it() {
    let held = |part: &str, not: &str| {
        Trial::of("fit/below")
            .room(&format!("runs: {{range wall: {{parts: [{{cabinet: base, width: 36\", {part}}}]}}}}"))
            .opening("hob", "{takes: cooktop}")
            .selection("selection: Cooktop\nkind: cooktop\nplace: hob", &format!("fit: {{not over: [{not}]}}"))
            .opening("oven", "{takes: wall oven}")
    };
    held("drawers: 3, holds: [hob]", "drawers")
        .finds("`Cooktop` may not stand over a drawer, by its sheet")
        .points_at(&["rooms/kitchen/room.yaml:2:66"]);
    held("doors: 2, holds: [hob]", "drawers").stays_silent();
    held("holds: [hob, oven]", "oven").finds("`Cooktop` may not stand over a wall oven, by its sheet");
    held("holds: [hob]", "oven").stays_silent();
}

#[test]
fn several_things_below_are_named_without_an_article() {
    Trial::of("fit/below")
        .opening("hole", "{takes: cooktop, below: {what: drawers, clear: 10\"}}")
        .selection("selection: Cooktop\nkind: cooktop\nplace: hole", "fit: {below: 6 1/4\", not over: [drawer]}")
        .finds("`Cooktop` may not stand over drawers, by its sheet");
}

/// Source: arithmetic: counter 36", an oven from 6" to 34": 2" are left for a cooktop 4" high.
#[test]
fn an_oven_in_the_same_cabinet_stands_below_by_its_own_sill() {
    let over = |oven: &str, sheet: &str| {
        Trial::of("fit/below")
            .room("runs: {w: {depth: 24\", counter: {height: 36\"}, parts: [{cabinet: oven base, width: 33\", holds: [hob, oven]}]}}")
            .opening("hob", "{takes: cooktop}")
            .opening("oven", &format!("{{takes: wall oven, {oven}}}"))
            .selection("selection: Cooktop\nkind: cooktop\nplace: hob", sheet)
    };
    over("height: 28\", sill: 6\"", "size: {height: 4\"}")
        .finds("`Cooktop` reaches 4\" (102 mm) below the counter, 2\" (51 mm) into the wall oven")
        .weighs("query")
        .points_at(&["rooms/kitchen/room.yaml:5:47"]);
    over("height: 28\", sill: 4\"", "size: {height: 4\"}").stays_silent();
    over("height: 28\", sill: 6\"", "fit: {below: 5\"}").finds_one().weighs("stop");
    // What its sheet asks for is the hole, where nobody measured one.
    over("sill: 6\"", "size: {height: 4\"}")
        .selection("selection: Oven\nkind: wall oven\nplace: oven", "fit: {opening: {height: 28\"}}")
        .finds_one();
    // What was measured counts first.
    over("height: 28\", sill: 6\"", "size: {height: 4\"}").opening("spare", "{takes: cooktop}").finds_one();
}

/// Source: common practice: most of a cooktop is below the counter.
#[test]
fn a_reach_below_the_counter_that_is_no_more_than_air_is_asked_about() {
    let hob = |below: &str| {
        Trial::of("fit/below").opening("hole", "{takes: cooktop}").selection(
            "selection: Cooktop\nkind: cooktop\nplace: hole",
            &format!("size: {{height: 3 1/2\"}}\nfit: {{below: {below}}}"),
        )
    };
    hob("3/4\"")
        .finds("`Cooktop` reaches 3/4\" (19 mm) below the counter by its sheet, and is 3 1/2\" (89 mm) high")
        .weighs("query")
        .points_at(&["rooms/kitchen/selection-0.yaml:5:14"]);
    hob("1 3/4\"").stays_silent();
    hob("3 1/4\"").stays_silent();
}
