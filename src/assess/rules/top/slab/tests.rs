//! Pieces on slabs, seams, and who decides.

use crate::assess::rules::trial::Trial;

fn counter(top: &str) -> Trial {
    Trial::of("top/slab").selection(
        "selection: Counter\nkind: counter",
        &format!("top: {{material: stone, layout: signed drawing, {top}}}"),
    )
}

/// Source: check values ST-11: an island of 130 wants a seam or a larger slab than the usual 120.
#[test]
fn a_piece_longer_than_the_slab_is_told() {
    counter("pieces: {island: 130\" x 42\"}")
        .finds("the piece `island` of `Counter`, 130\" (3302 mm) by 42\" (1067 mm), does not come out of a usual slab, 120\" (3048 mm) by 72\" (1829 mm)")
        .weighs("query")
        .cautions();
    counter("pieces: {island: 118\" x 42\"}").stays_silent();
    counter("pieces: {island: 130\" x 42\"}, slab: {size: 132\" x 78\"}").stays_silent();
    counter("pieces: {island: 118\" x 42\"}, slab: {size: 120\" x 60\", usable: 116\" x 58\"}")
        .finds_one()
        .weighs("stop");
    let planned = |long: &str| {
        Trial::of("top/slab")
            .room(&format!(
                "outline: 20' x 14'\nislands: {{island: {{wall: A, at: 40\", away: 60\", size: {long} x 42\"}}}}"
            ))
            .selection("selection: Counter\nkind: counter", "top: {material: stone}")
    };
    planned("130\"").finds_one();
    planned("96\"").stays_silent();
}

/// Source: check values ST-11: two runs of 25 1/2 come out of a width of 55, the kerf counted; three do not.
#[test]
fn pieces_are_laid_out_on_the_slabs_that_are_held() {
    let runs = |pieces: &str, slab: &str| counter(&format!("pieces: {{{pieces}}}, slab: {{{slab}}}"));
    let two = "left: 100\" x 25 1/2\", right: 96\" x 25 1/2\"";
    let slab = "size: 114\" x 55\", kerf: 1/8\", direction: kept";
    runs(two, &format!("{slab}, count: 1")).stays_silent();
    let three = format!("{two}, far: 40\" x 25 1/2\"");
    runs(&three, &format!("{slab}, count: 1"))
        .finds("the 3 pieces of `Counter` are laid out on 2, and 1 slab is held")
        .weighs("query");
    runs(&three, &format!("{slab}, count: 2")).stays_silent();
    let four = format!("{two}, far: 100\" x 25 1/2\", last: 60\" x 25 1/2\"");
    runs(&four, &format!("{slab}, count: 1"))
        .finds("the 4 pieces of `Counter` are more stone than there is, and 1 slab is held")
        .weighs("stop");
    runs(two, "size: 114\" x 51\", kerf: 1/8\", direction: kept, count: 1").finds_one();
}

/// Source: check values ST-11: no slab is 80 wide, and a stone with a direction is not turned.
#[test]
fn the_direction_of_the_stone_is_kept() {
    let across = |direction: &str| {
        counter(&format!(
            "pieces: {{bar: 30\" x 80\"}}, slab: {{size: 120\" x 72\", direction: {direction}, count: 1}}"
        ))
    };
    across("free").stays_silent();
    across("kept").finds_one().weighs("stop");
}

/// Source: check values ST-08: no seam over a dishwasher; one at a sink is reinforced.
#[test]
fn no_seam_over_a_dishwasher() {
    counter("seams: [{at: right of the sink, over: dishwasher}]")
        .finds("the seam of `Counter` right of the sink lies over a dishwasher")
        .weighs("query");
    counter("seams: [{at: right of the sink, over: cabinet}]").stays_silent();
    counter("seams: [{at: at the sink, over: sink}]").finds_one();
    counter("seams: [{at: at the sink, over: sink, reinforced: true}]").stays_silent();
    let planned = |from_left: &str| {
        counter(&format!("seams: [{{at: right of the sink, on: window side, from left: {from_left}}}]"))
            .room("outline: 12' x 10'\nruns: {window side: {wall: A, counter: {depth: 25\", height: 36\"}, parts: [{cabinet: sink base, width: 36\"}, {opening: dishwasher}, {cabinet: cups, width: 30\"}]}}")
            .opening("dishwasher", "{takes: dishwasher, width: 24\", height: 34 1/2\"}")
    };
    planned("48\"").finds("the seam of `Counter` right of the sink lies over `dishwasher` by the plan");
    planned("60\"").stays_silent();
    planned("72\"").stays_silent();
}

/// Source: trade reports F-61: seams and veins at the fabricator's discretion, and not where the client imagined.
#[test]
fn somebody_decides_where_seams_and_veins_come() {
    let open = |top: &str| {
        Trial::of("top/slab")
            .selection("selection: Counter\nkind: counter", &format!("top: {{material: stone, {top}}}"))
    };
    open("seams: [{at: left of the sink, over: cabinet}]")
        .finds("nobody says who decides where seams and veins of `Counter` come")
        .weighs("query");
    open("pieces: {left: 60\" x 25\", right: 50\" x 25\"}").finds_one();
    open("slab: {direction: kept}").finds_one();
    open("slab: {direction: kept}, layout: fabricator decides").stays_silent();
    open("pieces: {left: 60\" x 25\"}").stays_silent();
}

/// Source: trade reports F-103: two papers that disagree; arithmetic.
#[test]
fn the_pieces_reach_over_the_run_that_they_lie_on() {
    let counter = |pieces: &str| {
        Trial::of("top/slab")
            .room("outline: 16' x 14'\nopenings: {range: {takes: range, width: 30\", height: 36\", depth: 25\"}}\nruns:\n  wall:\n    wall: A\n    counter: {depth: 25 1/2\", height: 36\"}\n    parts: [{cabinet: one, width: 36\"}, {opening: range}, {cabinet: two, width: 30\"}, {filler: 3\"}]")
            .selection("selection: Counter\nkind: counter", &format!("top: {{material: wood, lies on: [wall], pieces: {{{pieces}}}}}"))
    };
    counter("left: 36\" x 25 1/2\", right: 30\" x 25 1/2\"")
        .finds("the pieces of `Counter` are 66\" (1676 mm) long together, 3\" (76 mm) less than the 69\" (1753 mm) of cabinets below")
        .weighs("stop");
    counter("left: 36\" x 24\", right: 33\" x 24\"").finds_one().weighs("stop");
    counter("left: 36\" x 25 1/2\", right: 33\" x 25 1/2\"").stays_silent();
    counter("left: 37\" x 25 1/2\", right: 34\" x 25 1/2\", splash: 70\" x 4\"").stays_silent();
}

#[test]
fn the_pieces_cover_the_island_that_they_lie_on() {
    let island = |pieces: &str| {
        Trial::of("top/slab")
            .room("outline: 16' x 14'\nislands: {island: {wall: A, at: 40\", away: 60\", size: 96\" x 42\", height: 36\"}}")
            .selection(
                "selection: Top\nkind: counter",
                &format!("top: {{material: wood, layout: signed drawing, lies on: [island], pieces: {{{pieces}}}}}"),
            )
    };
    island("island: 92\" x 42\"")
        .finds("the pieces of `Top` do not cover the island `island`, 96\" (2438 mm) by 42\" (1067 mm)")
        .weighs("stop");
    island("island: 96\" x 38\"").finds_one();
    island("island: 42\" x 96\"").stays_silent();
    island("left: 48\" x 42\", right: 48\" x 42\"").stays_silent();
    island("left: 48\" x 42\", right: 40\" x 42\"").finds_one();
}

/// An island of 3000 by 1200 mm and a bench of 2850 by 620 mm come to 5.37 square metres.
#[test]
fn pieces_cover_the_bench_and_the_island_that_a_counter_lies_on() {
    let kitchen = |top: &str| {
        Trial::of("top/slab")
            .metric()
            .room("outline: 6 m x 5 m\nruns: {back wall: {wall: A, counter: {depth: 620 mm, height: 900 mm}, parts: [{cabinet: drawers, width: 1800 mm}, {cabinet: bin, width: 1050 mm}]}}\nislands: {island: {size: 3000 mm x 1200 mm}}")
            .selection("selection: Stone\nkind: counter", &format!("top: {{layout: signed drawing, material: wood, {top}}}"))
    };
    let both = |island: &str| {
        format!(
            "lies on: [back wall, island], pieces: {{island: {island}, left: 1800 mm x 620 mm, right: 1050 mm x 620 mm}}"
        )
    };
    kitchen(&both("3000 mm x 1200 mm")).stays_silent();
    kitchen(&both("2800 mm x 1200 mm")).finds_one().weighs("stop");
    kitchen("lies on: [back wall, island], pieces: {island: 3000 mm x 1200 mm, left: 900 mm x 620 mm, right: 1050 mm x 620 mm}").finds_one();
    // What no counter lies on is asked, where all counters say on what they lie.
    kitchen("lies on: [back wall]").finds("no counter lies on `island`").weighs("query");
    kitchen("lies on: [island]").finds("no counter lies on `back wall`");
    kitchen("lies on: [back wall, island]").stays_silent();
    kitchen("").stays_silent();
}

/// Source: check values ST-08: a seam at a sink is reinforced, whether the seam says that it is there or the plan does.
#[test]
fn a_seam_in_a_cutout_is_told_by_the_plan_too() {
    let seam = |from_left: &str, more: &str| {
        counter(&format!("seams: [{{at: there, on: w, from left: {from_left}{more}}}]"))
            .room("outline: 14' x 10'\nruns: {w: {wall: A, depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{filler: 3\"}, {cabinet: s, width: 36\", holds: [sink]}, {cabinet: d, width: 36\"}, {cabinet: h, width: 36\", holds: [hob]}]}}")
            .opening("sink", "{takes: sink, width: 31 1/2\", depth: 19\"}")
            .opening("hob", "{takes: cooktop, width: 28 1/2\", depth: 19 3/4\"}")
    };
    for more in ["", ", over: cabinet"] {
        seam("21\"", more)
            .finds("the seam of `Counter` there runs through the cutout of `sink` by the plan, and nobody says that it is reinforced");
        seam("93\"", more).finds_one().says("runs through the cutout of `hob` by the plan");
    }
    seam("21\"", ", reinforced: true").stays_silent();
    seam("50\"", "").stays_silent();
    seam("93\"", ", over: cooktop").finds_one();
}

/// Source: common practice: a counter stands out past the fronts below it.
#[test]
fn a_counter_does_not_end_behind_its_fronts() {
    let run = |depth: &str| {
        Trial::of("top/slab")
            .room(&format!("runs: {{w: {{depth: 24 3/4\"{depth}, parts: [{{cabinet: drawers, width: 36\"}}]}}}}"))
    };
    run(", counter: {depth: 24\"}")
        .finds("the counter of the run `w` is 24\" (610 mm) deep, 3/4\" (19 mm) less than the fronts below it")
        .weighs("query")
        .points_at(&["rooms/kitchen/room.yaml:2:45"]);
    run(", counter: {depth: 24 3/4\"}").stays_silent();
    run("").stays_silent();
    let chosen = |depth: &str| {
        run("").selection("selection: Counter\nkind: counter", &format!("top: {{lies on: [w], depth: {depth}}}"))
    };
    chosen("23\"").finds_one();
    chosen("25 1/2\"").stays_silent();
}

/// Source: arithmetic: 1600 mm of cabinets at a cooker, and an island of 2700 by 1050 mm.
#[test]
fn on_runs_and_an_island_each_piece_covers_its_own() {
    let top = |pieces: &str| {
        Trial::of("top/slab")
            .metric()
            .room("outline: 6000 mm x 5000 mm\nruns: {cooking wall: {wall: A, starts: 500 mm, depth: 600 mm, counter: {depth: 640 mm, height: 910 mm}, parts: [{cabinet: one, width: 800 mm}, {opening: cooker}, {cabinet: other, width: 800 mm}]}}\nislands: {island: {wall: A, at: 1000 mm, away: 1750 mm, size: 2700 mm x 1050 mm, height: 910 mm}}")
            .opening("cooker", "{takes: range, width: 905 mm, height: 931 mm, depth: 640 mm}")
            .selection("selection: Benchtops\nkind: counter", &format!("top: {{material: stone, layout: signed drawing, slab: {{usable: 3160 mm x 1560 mm, direction: free}}, lies on: [cooking wall, island], pieces: {{{pieces}}}}}"))
    };
    let side = "left: 800 mm x 640 mm, right: 800 mm x 640 mm";
    for island in ["island: 2740 mm x 1370 mm", "island: 1050 mm x 2700 mm", "middle: 2740 mm x 1370 mm"] {
        top(&format!("{side}, {island}")).stays_silent();
        top(&format!("left: 800 mm x 640 mm, {island}")).finds_one().weighs("stop").says("800 mm");
        top(&format!("left: 800 mm x 640 mm, right: 300 mm x 640 mm, {island}")).finds_one().weighs("stop");
        top(&format!("left: 800 mm x 640 mm, right: 800 mm x 560 mm, {island}"))
            .finds_one()
            .says("the piece `right` of `Benchtops` is 560 mm")
            .weighs("query");
    }
    for island in [
        "island: 2500 mm x 1370 mm",
        "island: 2000 mm x 1370 mm",
        "island: 2740 mm x 900 mm",
        "middle: 2500 mm x 1370 mm",
    ] {
        top(&format!("{side}, {island}")).finds_one().weighs("stop").says("do not cover the island `island`");
    }
    // Two that meet over it are taken together.
    top(&format!("{side}, island: 1370 mm x 1370 mm, island end: 1370 mm x 1370 mm")).stays_silent();
    // What is less deep may be a ledge.
    top(&format!("{side}, ledge: 1600 mm x 400 mm, island: 2740 mm x 1370 mm")).stays_silent();
}

/// Source: common practice: a top stands out an inch or so at an open end.
#[test]
fn a_piece_is_no_longer_than_what_it_lies_on() {
    let top = |piece: &str, more: &str| {
        Trial::of("top/slab")
            .room(&format!("outline: 14' x 10'\nruns:\n  w: {{wall: A, starts: 30\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{cabinet: base, width: 60\", height: 34\"}}, {{tall: pantry, width: 24\", height: 84\"}}]}}{more}"))
            .selection("selection: Top\nkind: counter", &format!("top: {{material: wood, lies on: [w], pieces: {{{piece}}}}}"))
    };
    top("top: 84\" x 25 1/2\"", "").finds_one().says("24\" (610 mm) more than the 60\" (1524 mm)").weighs("query");
    top("top: 62\" x 25 1/2\"", "").stays_silent();
    top("top: 60\" x 25 1/2\", leg: 36\" x 25 1/2\"", "").stays_silent();
    // Around a corner it may reach into the other run.
    let corner = "\n  v: {wall: D, starts: 0\", depth: 30\", counter: {depth: 30\", height: 36\"}, parts: [{cabinet: side, width: 120\", height: 34\"}]}";
    top("top: 84\" x 25 1/2\"", corner)
        .selection("selection: Other\nkind: counter", "top: {material: wood, lies on: [v]}")
        .stays_silent();
}

/// Source: arithmetic: of two runs the one that the piece is named by.
#[test]
fn a_piece_is_no_longer_than_the_run_of_its_name() {
    let top = |far: &str| {
        Trial::of("top/slab")
            .room("outline: 14' x 12'\nruns:\n  near: {wall: A, starts: 30\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: base, width: 100\", height: 34\"}]}\n  far: {wall: C, starts: 30\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: other, width: 60\", height: 34\"}]}")
            .selection("selection: Top\nkind: counter", &format!("top: {{material: wood, lies on: [near, far], pieces: {{near: 100\" x 25 1/2\", far: {far} x 25 1/2\"}}}}"))
    };
    top("76\"").finds_one().says("the piece `far` of `Top` is 76\" (1930 mm) long, 16\" (406 mm) more").weighs("query");
    top("62\"").stays_silent();
}
