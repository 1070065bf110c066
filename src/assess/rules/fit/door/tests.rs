//! Doors and drawers against the floor in front and what stands at their hinges.

use crate::assess::rules::trial::Trial;

fn fridge(opening: &str, option: &str) -> Trial {
    Trial::of("fit/door")
        .opening("fridge", &format!("{{takes: refrigerator, {opening}}}"))
        .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", option)
}

/// Source: trade reports F-11 (2" to 2 1/2" at a wall; with thick panels at least 4 1/2").
#[test]
fn a_wall_at_the_hinges_nearer_than_the_sheet_asks_is_told() {
    let sheet = "hinge: left\nfit: {door: {wall clearance: 4 1/2\"}}";
    fridge("left: {what: wall, gap: 2 1/2\"}", sheet)
        .finds("`wall` is 2 1/2\" (64 mm) from the hinges at the left of the opening `fridge`, 2\" (51 mm) less than the 4 1/2\" (114 mm) that the maker's sheet asks for")
        .weighs("stop");
    fridge("left: {what: wall, gap: 4 1/2\"}", sheet).stays_silent();
    fridge("right: {what: wall, gap: 1\"}", sheet).stays_silent();
    fridge("left: wall cabinet", sheet).stays_silent();
}

#[test]
fn what_nobody_says_the_depth_of_is_asked_about() {
    let sheet = "hinge: left\nfit: {door: {wall clearance: 2 1/2\"}}";
    for what in
        ["gable", "radiator", "door frame", "water heater", "oven tower", "tall housing", "boiler cupboard tower"]
    {
        fridge(&format!("left: {{what: {what}, gap: 1\"}}"), sheet).finds_one().weighs("query");
    }
    fridge("left: {what: gable, gap: 1\"}", sheet)
        .finds("`gable` is 1\" (25.4 mm) from the hinges at the left of the opening `fridge`, and nobody says how far it stands out")
        .points_at(&["rooms/kitchen/room.yaml:3:39"]);
    for what in ["tabique", "pared de ladrillo", "partition", "pipe chase", "pilar", "column of the house wall"] {
        fridge(&format!("left: {{what: {what}, gap: 1\"}}"), sheet).finds_one().weighs("stop");
    }
    fridge("left: {what: gable, gap: 3\"}", sheet).stays_silent();
    fridge("counter depth: 25 1/2\", left: {what: gable, gap: 1\", depth: 24\"}", sheet).stays_silent();
    fridge("left: {what: base cabinet, gap: 1\"}", sheet).stays_silent();
}

/// Source: trade reports F-11: a panel is struck as a wall is, where it stands out past the door.
#[test]
fn a_panel_that_stands_out_past_the_door_is_not_seen_through() {
    let beside = |part: &str, place: &str| {
        fridge(
            "width: 36 1/4\", height: 72\", depth: 26\"",
            "hinge: left\nsize: {width: 35 3/4\", depth: 24\", depth with door: 27\"}\nfit: {door: {wall clearance: 2 1/2\"}}",
        )
        .room(&format!(
            "outline: 14' x 10'\nruns: {{a: {{{place}depth: 24\", parts: [{{tall: pantry, width: 24\", height: 84\"}}, {{{part}}}, {{opening: fridge}}]}}}}"
        ))
    };
    for place in ["wall: A, starts: 30\", ", ""] {
        beside("panel: 3/4\", depth: 30\", height: 84\"", place).finds_one().weighs("stop").says("`panel` is 0\"");
        beside("filler: 2\", depth: 30\", height: 84\"", place).finds_one();
        beside("panel: 3/4\", height: 84\"", place).stays_silent();
        beside("panel: 3/4\", depth: 26\", height: 84\"", place).stays_silent();
    }
}

/// Source: arithmetic: a panel of the joiner's hangs in the fronts of the row, whatever the depth of the niche.
#[test]
fn a_door_behind_a_panel_opens_in_the_fronts_of_its_row() {
    let column = |panel: &str, beside: &str| {
        Trial::of("fit/door")
            .opening("column", "{takes: panel refrigerator, width: 562 mm, depth: 560 mm, height: 1780 mm}")
            .selection(
                "selection: Refrigerator\nkind: panel refrigerator\nplace: column",
                &format!("hinge: right\nsize: {{width: 557 mm, depth: 545 mm}}\n{panel}"),
            )
            .room(&format!(
                "outline: 4200 mm x 3100 mm\nruns: {{tall: {{wall: A, starts: 600 mm, depth: 600 mm, parts: [{{opening: column}}, {{{beside}}}, {{tall: tower, width: 600 mm, height: 2180 mm}}]}}}}"
            ))
    };
    let panel = "panel: {width: 595 mm, height: 1780 mm, thickness: 19 mm}";
    column(panel, "panel: 19 mm, height: 2180 mm").stays_silent();
    column(panel, "filler: 60 mm, height: 2180 mm").stays_silent();
    column(panel, "panel: 19 mm, height: 2180 mm, depth: 700 mm").finds_one().says("`panel` is 0");
}

/// Source: trade reports F-11 (freestanding ones typically ask for 2" to 2 1/2").
#[test]
fn without_a_sheet_s_figure_the_usual_one_is_only_asked_about() {
    fridge("left: {what: door casing, gap: 2\"}", "hinge: left").finds_one().weighs("query");
    fridge("left: {what: door casing, gap: 2 1/2\"}", "hinge: left").stays_silent();
}

#[test]
fn what_stands_out_past_the_counter_is_struck_as_a_wall_is() {
    let opening = |depth: &str| format!("counter depth: 25 1/2\", left: {{what: pantry, depth: {depth}}}");
    let sheet = "hinge: left\nfit: {door: {wall clearance: 2\"}}";
    fridge(&opening("30\""), sheet).finds_one();
    fridge(&opening("25 1/2\""), sheet).stays_silent();
}

#[test]
fn both_doors_need_room_and_one_that_hangs_either_way_needs_one_side() {
    let walls = "left: wall, right: {what: wall, gap: 3\"}";
    let hinge = |side: &str| format!("hinge: {side}\nfit: {{door: {{wall clearance: 2 1/2\"}}}}");
    fridge(walls, &hinge("both")).finds_one();
    fridge(walls, &hinge("either")).stays_silent();
    fridge("left: wall, right: wall", &hinge("either")).finds_one();
}

/// Source: trade reports section 3 (21" to 22" free in front of a built-in's door), F-09 (2" deeper).
#[test]
fn a_door_needs_the_floor_that_it_sweeps() {
    let door = "fit: {door: {swings: 20\", in front: 21\"}}";
    fridge("in front: 20 15/16\"", door).finds_one().weighs("stop");
    fridge("in front: 21\"", door).stays_silent();
    let deeper = "size: {depth: 27\"}\nfit: {door: {swings: 20\"}}";
    fridge("in front: 21\", depth: 25\"", deeper).finds_one();
    fridge("in front: 22\", depth: 25\"", deeper).stays_silent();
}

#[test]
fn while_the_client_still_chooses_a_struck_wall_is_a_query() {
    let two = "hinge: left\noptions:\n  - {id: wide, fit: {door: {wall clearance: 4\"}}}\n  - {id: slim, fit: {door: {wall clearance: 2\"}}}";
    fridge("left: {what: wall, gap: 3\"}", two).finds_one().weighs("query");
}

/// Source: trade reports F-11: 1" of filler at a wall, where the sheet asks 2 1/2".
#[test]
fn past_fillers_and_panels_the_run_says_what_stands_at_the_hinges() {
    let sheet = "hinge: left\nfit: {door: {wall clearance: 2 1/2\"}}";
    let run = |outline: &str, parts: &str| {
        fridge("width: 36\", depth: 25\"", sheet)
            .room(&format!("{outline}left end: wall, depth: 24\", parts: [{parts}]}}}}"))
    };
    for outline in ["runs: {cold wall: {", "outline: 12' x 10'\nruns: {cold wall: {wall: A, "] {
        run(outline, "{filler: 1\"}, {panel: 3/4\"}, {opening: fridge}").finds_one().weighs("stop");
        run(outline, "{filler: 1 3/4\"}, {panel: 3/4\"}, {opening: fridge}").stays_silent();
        run(outline, "{filler: 1\"}, {tall: pantry, width: 24\", depth: 27\"}, {opening: fridge}").finds_one();
        // A filler that the opening names hides no wall past it.
        for filler in ["filler, gap: 1\"", "scribe, gap: 0\"", "Passleiste, gap: 1\""] {
            let left = format!("width: 36\", left: {{what: {filler}}}");
            let named = |wide: &str| {
                fridge(&left, sheet)
                    .room(&format!("{outline}left end: wall, parts: [{{filler: {wide}}}, {{opening: fridge}}]}}}}"))
            };
            named("1\"").finds_one().weighs("stop");
            named("3\"").stays_silent();
        }
        run(outline, "{cabinet: base, width: 24\"}, {opening: fridge}").stays_silent();
        run(outline, "{opening: fridge}, {tall: pantry, width: 24\", depth: 27\"}, {filler: 3\"}").finds_one();
    }
}

/// Source: arithmetic; trade reports F-11: a door that comes round strikes the pull of the cabinet beside it.
#[test]
fn the_pull_of_a_door_beside_the_hinges_is_struck_where_it_stands_out() {
    let beside = |hinge: &str, handles: &str, sheet: &str| {
        let option = format!("hinge: left\nsize: {{depth: 24\", depth with door: 24\"}}\nfit: {{door: {{{sheet}}}}}");
        fridge("width: 36\", depth: 24\"", &option).room(&format!(
            "runs: {{cold wall: {{handles: {handles}, left end: wall, depth: 24\", parts: [{{tall: pantry, width: 24\", doors: 1, hinge: {hinge}}}, {{opening: fridge}}]}}}}"
        ))
    };
    let sheet = "wall clearance: 4 1/2\"";
    beside("left", "1 1/2\"", sheet)
        .finds("the pull of `pantry` is 2\" (51 mm) from the hinges at the left of the opening `fridge`, 2 1/2\" (64 mm) less than the 4 1/2\" (114 mm) that the maker's sheet asks for");
    beside("right", "1 1/2\"", sheet).stays_silent();
    beside("left", "0\"", sheet).stays_silent();
    beside("left", "1 1/2\"", "wall clearance: 2\"").stays_silent();
    beside("left", "1 1/2\"", "").stays_silent();
}

/// Source: arithmetic: a hall of 48" less a machine of 31 1/2" leaves 16 1/2" for a door of 19".
#[test]
fn the_plan_tells_what_is_in_front_where_the_opening_does_not() {
    let washer = |outline: &str, opening: &str, door: &str| {
        Trial::of("fit/door")
            .room(&format!("outline: {outline}"))
            .opening("w", &format!("{{takes: washer, wall: A, at: 40\", width: 28\"{opening}}}"))
            .selection(
                "selection: W\nkind: washer\nplace: w",
                &format!("size: {{width: 27\", depth: 31 1/2\"}}\nfit: {{door: {{{door}}}}}"),
            )
    };
    washer("10' x 4'", "", "swings: 19\"")
        .finds("16 1/2\" (419 mm) of floor is clear in front of the opening `w`, 2 1/2\" (64 mm) less than the 19\" (483 mm) needed to open it")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:4:3"]);
    washer("10' x 4'", "", "swings: 19\", in front: 24\"").finds_one().says("needed to open it");
    washer("10' x 5'", "", "swings: 19\", in front: 24\"").stays_silent();
    washer("10' x 4'", ", in front: 16\"", "swings: 19\"").finds_one().says("16\" (406 mm) of floor is clear");
    washer("10' x 4'", ", depth: 34\"", "swings: 19\"").finds_one();
    // A door in the wall across is opened first.
    washer("10' x 4'\ndoors: {hall: {wall: C, at: 30\", width: 60\", slides: true}}", "", "swings: 19\"")
        .stays_silent();
}

/// Source: arithmetic: an island 44 1/2" before the counter's edge.
#[test]
fn an_island_is_in_front_by_the_plan() {
    let range = |away: &str| {
        Trial::of("fit/door")
            .room(&format!("outline: 14' x 14'\nruns: {{w: {{wall: A, starts: 48\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{opening: range}}]}}}}\nislands: {{island: {{wall: A, at: 40\", away: {away}, size: 72\" x 36\", height: 36\"}}}}"))
            .opening("range", "{takes: range, width: 30\", depth: 25 1/2\"}")
            .selection("selection: Range\nkind: range\nplace: range", "size: {depth: 25\"}\nfit: {door: {drops: 20 1/2\", in front: 48\"}}")
    };
    range("70\"").finds_one().says("44 1/2\" (1130 mm) of floor is clear in front of the opening `range`");
    range("73 1/2\"").stays_silent();
}
