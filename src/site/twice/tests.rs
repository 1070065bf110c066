//! What is chosen against what the plan sets out.

use crate::assess::rules::trial::Trial;

#[test]
fn a_service_is_as_high_in_words_as_its_point() {
    let sink = |point: &str| {
        Trial::of("source/contradiction").opening(
            "sink",
            &format!("{{takes: sink, service: {{drain: '1 1/2\", 20\" AFF'}}, service points: {{drain: {{height: {point}}}}}}}"),
        )
    };
    sink("28\"").finds_one().says("the height of the drain of `sink` is 28\"").weighs("stop");
    sink("20\"").stays_silent();
}

/// What the opening says of a side does not hide the wall that the plan has there.
#[test]
fn what_is_told_at_a_side_does_not_hide_the_wall() {
    let fridge = |left: &str, starts: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 14' x 10'\nruns: {{a: {{wall: A, starts: {starts}, depth: 24\", parts: [{{opening: cold}}]}}}}"))
            .opening("cold", &format!("{{takes: refrigerator, width: 36\", left: {left}}}"))
    };
    for left in ["{what: filler, gap: 3\"}", "{what: pantry, gap: 3\"}", "nothing"] {
        fridge(left, "1/2\"").finds_one().weighs("stop");
        fridge(left, "40\"").stays_silent();
    }
    fridge("{what: filler, gap: 1/2\"}", "1/2\"").stays_silent();
}

#[test]
fn a_run_is_planned_with_the_pulls_that_are_chosen() {
    let pulls = |projection: &str| {
        Trial::of("source/contradiction")
            .room("runs: {a: {depth: 24\", handles: 1\", parts: [{cabinet: b, width: 30\"}]}}")
            .selection("selection: Pulls\nkind: pull", &format!("projection: {projection}"))
    };
    pulls("2 1/4\"").finds_one().says("how far its handles stand out of `a` is 1\"").weighs("stop");
    pulls("1\"").stays_silent();
    pulls("2 1/4\"").selection("selection: Knobs\nkind: knob", "projection: 1\"").stays_silent();
}

/// Source: common practice (a sub-top of 3/4").
#[test]
fn a_counter_is_as_high_as_what_it_lies_on() {
    let run = |height: &str, more: &str| {
        Trial::of("source/contradiction")
            .room(&format!("runs: {{a: {{depth: 24\", height: {height}, {more}counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{cabinet: b, width: 30\"}}]}}}}"))
            .selection("selection: Top\nkind: counter", "thickness: 1 1/2\"")
    };
    run("32 1/2\"", "").finds_one().weighs("stop").says("more than cabinets and counter together");
    run("34 1/2\"", "").stays_silent();
    run("33 3/4\"", "").stays_silent();
    run("30\"", "toe kick: 4 1/2\", ").stays_silent();
}

/// What is larger than the plan sets it out must have its place, and is told; smaller leaves what is kept for it.
#[test]
fn what_is_chosen_is_no_larger_than_its_fixture() {
    let tub = |plan: &str, size: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 9' x 7'\nfixtures: {{tub: {{wall: A, centre: 40\", {plan}, selection: Tub}}}}"))
            .selection("selection: Tub\nkind: bathtub", &format!("size: {{{size}}}"))
    };
    tub("width: 60\", depth: 30\"", "width: 66\", depth: 30\"")
        .finds("the width of `tub` is 66\" (1676 mm) at `Tub`, and 60\" (1524 mm) at the fixture `tub`")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:3:47"]);
    tub("width: 60\", depth: 30\"", "width: 54\", depth: 30\"").stays_silent();
    tub("width: 60\", depth: 30\"", "width: 60 1/8\", depth: 30\"").stays_silent();
    tub("width: 60\", depth: 30\"", "width: 60\", depth: 32\"").finds_one();
    // Its end stands to the wall.
    tub("width: 30\", depth: 60\"", "width: 60\", depth: 30\"").stays_silent();
    tub("width: 30\", depth: 60\"", "width: 66\", depth: 30\"").finds_one();
}

/// A mat lies in the bed as far as that is thick enough; what is thicker raises the floor.
#[test]
fn a_heating_mat_is_part_of_the_floor_that_was_planned() {
    let floor = |laid: &str, mat: &str| {
        Trial::of("source/contradiction")
            .room("floor build-up: 1/2\"")
            .selection("selection: Floor tile\nkind: tile", &format!("thickness: 3/8\"\n{laid}"))
            .selection("selection: Warm floor\nkind: heating mat", mat)
    };
    floor("", "thickness: 1/4\"").finds_one().says("is 5/8\" (15.9 mm)");
    floor("laid: {bed: 1/8\"}", "thickness: 1/8\"").stays_silent();
    floor("laid: {bed: 1/8\"}", "thickness: 1/4\"").finds_one();
    floor("", "thickness: 1/8\"").stays_silent();
}

#[test]
fn a_blind_that_hangs_between_the_jambs_is_no_wider_than_they_are_apart() {
    let blind = |wide: &str, mount: &str| {
        Trial::of("source/contradiction").room("windows: {yard: {sill: 40\", width: 36\", height: 40\"}}").selection(
            "selection: Blind\nkind: blind",
            &format!("size: {{width: {wide}, height: 40\"}}\nmount: {mount}"),
        )
    };
    blind("37\"", "inside the reveal")
        .finds("the width of `Blind` is 37\" (940 mm), more than the width inside its window of 36\" (914 mm) at the window `yard`");
    blind("36\"", "inside").stays_silent();
    blind("34\"", "inside").stays_silent();
    blind("40\"", "outside, on the casing").stays_silent();
}

/// A leaf reaches behind the head of its frame by its rebate, and no further; one that is cut down at its foot is lower.
#[test]
fn a_leaf_is_no_higher_than_its_doorway() {
    let door = |high: &str, doorway: &str| {
        Trial::of("source/contradiction")
            .room(&format!(
                "outline: 8' x 5'\ndoors: {{bath door: {{wall: B, at: 2\", width: 34\", height: {doorway}}}}}"
            ))
            .selection("selection: Bath door\nkind: door", &format!("size: {{width: 34\", height: {high}}}"))
    };
    door("80\"", "79\"").finds(
        "the height of `Bath door` is 80\" (2032 mm) at `Bath door`, and 79\" (2007 mm) at the doorway `bath door`",
    );
    door("80\"", "79 1/2\"").stays_silent();
    door("80\"", "81 1/2\"").stays_silent();
    door("80\"", "83\"").finds_one();
}

#[test]
fn the_leaf_of_a_shower_is_that_of_its_glass() {
    let shower = |door: &str, glass: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 8' x 5'\nfixtures: {{shower: {{wall: A, centre: 30\", width: 36\", depth: 36\", door: {door}, hinge: left, selection: Screen}}}}"))
            .selection("selection: Screen\nkind: shower glass\nhinge: left", &format!("size: {{width: {glass}, height: 76\"}}"))
    };
    shower("28\"", "34\"")
        .finds(
            "the width of its door of `shower` is 34\" (864 mm) at `Screen`, and 28\" (711 mm) at the fixture `shower`",
        )
        .weighs("stop");
    shower("34\"", "34\"").stays_silent();
}

/// A row that stands in the wall's corner: panel, refrigerator, base, dishwasher, sink in its base, range.
fn in_a_row(opening: &str, says: &str) -> Trial {
    let trial = Trial::of("source/contradiction").room(
        "runs: {a: {depth: 24\", parts: [{panel: 3/4\"}, {opening: cold}, {cabinet: base, width: 30\"}, {opening: washing up}, {cabinet: sink base, width: 36\", holds: [sink]}, {opening: cooker}]}}",
    );
    let kinds = [("cold", "refrigerator"), ("washing up", "dishwasher"), ("sink", "sink"), ("cooker", "range")];
    kinds.into_iter().fold(trial, |trial, (name, kind)| {
        let more = if name == opening { format!(", {says}") } else { String::new() };
        trial.opening(name, &format!("{{takes: {kind}{more}}}"))
    })
}

#[test]
fn what_is_told_beside_an_opening_stands_in_its_row() {
    in_a_row("washing up", "right: range")
        .finds("what stands at the right of `washing up` is range at the opening `washing up`, and sink base in the run `a`")
        .weighs("query");
    for says in [
        "left: wall",
        "left: nothing",
        "left: refrigerator",
        "left: pared",
        "left: window",
        "right: {what: cooker, gap: 2\"}",
        "left: wall, right: sink",
    ] {
        in_a_row("washing up", says).finds_one().weighs("query");
    }
    in_a_row("cooker", "left: wall").finds_one();
    for says in [
        "left: base cabinet, right: sink base",
        "right: sink",
        "right: {what: sink, gap: 0\"}",
        "left: drawers",
        "left: panel",
        "right: base cabinet",
        "left: the baker's shelf",
        "right: cupboard under the sink",
        "left: base",
    ] {
        in_a_row("washing up", says).stays_silent();
    }
    in_a_row("cold", "left: panel, right: base cabinet").stays_silent();
    in_a_row("cold", "left: wall").stays_silent();
    // Right of the last part nothing is told by the row.
    in_a_row("cooker", "right: wall").stays_silent();
    in_a_row("cooker", "right: refrigerator").stays_silent();
}

#[test]
fn a_panel_at_an_opening_is_a_part_of_its_row() {
    let fridge = |parts: &str, side: &str| {
        Trial::of("source/contradiction")
            .room(&format!("runs: {{a: {{depth: 24\", {parts}}}}}"))
            .opening("cold", &format!("{{takes: refrigerator, {side}}}"))
    };
    let bare = "parts: [{cabinet: base, width: 30\"}, {opening: cold}]";
    fridge(bare, "right: panel")
        .finds("what stands at the right of `cold` is panel at the opening `cold`, and no panel in the run `a`");
    fridge("parts: [{filler: 3\"}, {opening: cold}]", "left: end panel").finds_one();
    fridge("from: right, parts: [{filler: 3\"}, {opening: cold}]", "right: panel").finds_one();
    fridge("from: right, parts: [{filler: 3\"}, {opening: cold}]", "left: panel").finds_one();
    fridge("parts: [{cabinet: base, width: 30\"}, {opening: cold}, {panel: 3/4\"}]", "right: panel").stays_silent();
    fridge("parts: [{tall: pantry, width: 24\"}, {opening: cold}]", "left: panel").stays_silent();
}

#[test]
fn what_is_told_below_is_in_the_cabinet_that_holds_it() {
    let hob = |part: &str, below: &str| {
        Trial::of("source/contradiction")
            .room(&format!("runs: {{a: {{depth: 24\", parts: [{{cabinet: pans, width: 30\", {part}}}]}}}}"))
            .opening("hob", &format!("{{takes: cooktop, below: {below}}}"))
            .opening("oven", "{takes: oven}")
    };
    let (drawers, oven) = ("drawers: 3, holds: [hob]", "holds: [hob, oven]");
    for free in ["{what: open shelf, clear: 20\"}", "{what: Nothing, clear: 24\"}"] {
        hob(drawers, free).finds_one().weighs("query");
        hob(oven, free).finds_one().weighs("query");
        hob("doors: 2, holds: [hob]", free).stays_silent();
    }
    hob(oven, "nothing").finds_one();
    hob(drawers, "{what: oven, clear: 100 mm}")
        .finds("what stands below `hob` is oven at the opening `hob`, and drawers at `pans` in `a`")
        .weighs("query");
    hob(drawers, "lavavajillas").finds_one();
    hob(oven, "lavavajillas").finds_one();
    hob(oven, "drawer").finds_one();
    for (part, below) in [
        (oven, "oven"),
        (oven, "horno"),
        (drawers, "drawer"),
        (drawers, "shelf"),
        ("holds: [hob]", "oven"),
        (oven, "air"),
    ] {
        hob(part, below).stays_silent();
    }
}

/// Source: arithmetic: a vanity of 33" and a top of 3/4" are 33 3/4" high.
#[test]
fn the_rim_of_a_basin_is_as_high_as_what_carries_it() {
    let bath = |vanity: &str| {
        Trial::of("source/contradiction")
            .room("clearances: {basin height: 34\"}")
            .opening("vanity", "{takes: cabinet, service: {drain: '1 1/4\", 18\" AFF'}}")
            .selection(
                "selection: Vanity\nkind: vanity\nplace: vanity",
                &format!("size: {{width: 35\", height: {vanity}, depth: 21\"}}"),
            )
            .selection("selection: Top\nkind: vanity top", "thickness: 3/4\"")
            .selection("selection: Basin\nkind: basin", "mount: undermount")
    };
    bath("37\"")
        .finds(
            "the height of the rim of `Basin` is 34\" (864 mm) under `clearances`, and 37 3/4\" (959 mm) at `Vanity`",
        )
        .weighs("query");
    bath("34 1/2\"").finds_one();
    bath("33\"").stays_silent();
    let pedestal = |height: &str| {
        Trial::of("source/contradiction")
            .room("clearances: {basin height: 33\"}")
            .opening("basin", "{takes: basin}")
            .selection(
                "selection: Basin\nkind: basin\nplace: basin",
                &format!("mount: pedestal\nsize: {{width: 22\", height: {height}}}"),
            )
    };
    pedestal("36\"").finds_one().weighs("query");
    pedestal("33\"").stays_silent();
    pedestal("838 mm").stays_silent();
}

#[test]
fn a_counter_is_as_thick_as_its_model_s_name_says() {
    let top = |model: &str, thick: &str| {
        Trial::of("source/contradiction")
            .selection("selection: Top\nkind: counter", &format!("model: {model}\nthickness: {thick}"))
    };
    top("'QZ Mist, 2 cm'", "1 1/4\"")
        .finds("the thickness of `Top` is 1 1/4\" (31.8 mm) at `Top`, and ≈ 13/16\" (20 mm) at `Top`")
        .weighs("query");
    top("'Mist 12 mm'", "20 mm").finds_one();
    top("'QZ Mist, 3 cm'", "1 1/4\"").stays_silent();
    top("'Mist 12 mm, edge 40 mm'", "20 mm").stays_silent();
    top("QZ 4141", "20 mm").stays_silent();
}

#[test]
fn a_pull_is_longer_than_the_way_between_its_screws() {
    let pull = |length: &str| {
        Trial::of("source/contradiction").selection(
            "selection: Pulls\nkind: pull",
            &format!("size: {{length: {length}}}\ncentre to centre: 5 1/16\""),
        )
    };
    pull("4\"")
        .finds(
            "the length of `Pulls` is 4\" (102 mm), less than the way between its screws, 5 1/16\" (129 mm) at `Pulls`",
        )
        .weighs("query");
    pull("5 5/8\"").stays_silent();
}

#[test]
fn what_is_clear_below_a_hob_ends_at_the_oven_of_its_cabinet() {
    let hob = |clear: &str| {
        Trial::of("source/contradiction")
            .metric()
            .room("runs: {a: {depth: 600 mm, parts: [{cabinet: base, width: 600 mm, holds: [hob, oven]}]}}")
            .opening(
                "hob",
                &format!("{{takes: cooktop, counter height: 920 mm, below: {{what: oven, clear: {clear}}}}}"),
            )
            .opening("oven", "{takes: oven, sill: 250 mm, height: 600 mm}")
    };
    hob("80 mm")
        .finds("what is clear below `hob` is 80 mm (≈ 3 1/8\") at the opening `hob`, and 70 mm (≈ 2 3/4\") by the plan, to `wall oven`")
        .weighs("stop");
    hob("70 mm").stays_silent();
    // Less is on the safe side.
    hob("50 mm").stays_silent();
}

#[test]
fn counter_to_set_things_down_on_is_what_the_plan_has() {
    let sink = |landing: &str, row: &str| {
        Trial::of("source/contradiction")
            .room(&format!(
                "outline: 14' x 10'\nruns:\n  a: {{wall: A, starts: 20\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{row}]}}"
            ))
            .opening("sink", &format!("{{takes: sink, width: 33\", landing: {landing}}}"))
            .opening("fridge", "{takes: refrigerator, width: 36\"}")
    };
    let row = "{cabinet: a, width: 24\"}, {opening: sink}, {cabinet: b, width: 18\"}, {opening: fridge}";
    sink("{left: 24\", right: 40\"}", row)
        .finds("the counter at the right of `sink` is 40\" (1016 mm) at the opening `sink`, and 18\" (457 mm) by the plan, to `fridge`")
        .weighs("query");
    sink("{left: 48\", right: 18\"}", row).finds_one();
    sink("{left: 24\", right: 18\"}", row).stays_silent();
    sink("{left: 25\", right: 12\"}", row).stays_silent();
    // Behind the panel of a refrigerator the counter is told past the panel.
    let cold = "{cabinet: a, width: 24\"}, {opening: sink}, {panel: 3/4\"}, {opening: fridge}";
    sink("{left: 24\"}", cold).stays_silent();
}
