//! What rises beside a cooking surface, in every place and wording where a designer writes it.

use crate::assess::rules::trial::Trial;

fn range(sides: &str, more: &str) -> Trial {
    Trial::of("clear/beside-cooktop")
        .opening("hole", &format!("{{takes: range, width: 30\", counter height: 36\", {sides}}}"))
        .selection(
            "selection: Range\nkind: range\nplace: hole",
            &format!("size: {{width: 30\", height: 36\"}}\n{more}"),
        )
}

/// Source: a sheet's own figure; common practice where it gives none.
#[test]
fn what_burns_beside_is_asked_about_and_stops_where_the_sheet_says_so() {
    range("left: {what: pantry, gap: 4\", material: burns}", "")
        .finds("the pantry is 4\" (102 mm) from the left of the cooking surface of `Range` and rises above it, 2\" (51 mm) less than the usual 6\" (152 mm)")
        .weighs("query")
        .cautions();
    range("left: {what: pantry, gap: 6\"}", "").stays_silent();
    let sheet = "fit: {heat: {left: 10\", right: 2\"}}";
    range("left: {what: pantry, gap: 6\", material: burns}", sheet).finds_one().weighs("stop");
    range("right: {what: pantry, gap: 2\"}", sheet).stays_silent();
}

#[test]
fn what_does_not_burn_or_is_shielded_may_stand_near() {
    for side in ["left", "right"] {
        range(&format!("{side}: wall"), "").finds_one();
        range(&format!("{side}: {{what: wall, material: does not burn}}"), "").stays_silent();
        range(&format!("{side}: {{what: tall cabinet, material: shielded}}"), "").stays_silent();
        range(&format!("{side}: {{what: steel cabinet, top: 84\"}}"), "").finds_one();
    }
}

/// No word makes a thing low: its `top` does, counter that was measured beside it, or the plan.
#[test]
fn what_ends_at_the_counter_is_no_matter_once_a_figure_says_so() {
    for what in ["base cabinet", "drawers", "dishwasher", "counter", "low bench", "oak panel", "cupboard", "curtain"] {
        let found = range(&format!("left: {what}"), "").finds_one().weighs("query").cautions();
        assert!(found.findings()[0].remedy.text().contains("`top`"), "{what}");
        range(&format!("left: {{what: {what}, top: 36\"}}"), "").stays_silent();
        range(&format!("left: {{what: {what}, top: 54\"}}"), "").finds_one();
        range(&format!("left: {{what: {what}, material: does not burn}}"), "").stays_silent();
        range(&format!("left: {{what: {what}, gap: 6\"}}"), "").stays_silent();
    }
    // So much counter beside it says the same of what stands there.
    range("left: oils, landing: {left: 15\"}", "").stays_silent();
    range("left: oils, landing: {left: 3\"}", "").finds_one();
    range("left: {what: curtain, gap: 2\"}, landing: {left: 15\"}", "").finds_one();
    range("left: nothing", "").stays_silent();
}

/// Not known how high is a question, never a verdict: also where the sheet's own figure would stop.
#[test]
fn both_sides_are_one_question() {
    range("left: base cabinet, right: drawers", "")
        .finds("nobody says how high the base cabinet at the left (0\" (0 mm) away) and the drawers at the right (0\" (0 mm) away) of the cooking surface of `Range` stands; what rises above it and burns stays 6\" (152 mm) away")
        .remedies("add its `top` from the finished floor to the opening's `left` and `right`, or its `material` where it does not burn");
    range("left: base cabinet", "fit: {heat: {left: 2\"}}").finds_one().weighs("query");
}

#[test]
fn a_wall_cabinet_beside_counts_up_to_18_inches_or_as_far_as_the_sheet_says() {
    range("left: {what: wall cabinet, height: 54\"}", "").stays_silent();
    range("left: {what: wall cabinet, height: 53\"}", "").finds_one();
    range("left: {what: wall cabinet, height: 54\"}", "fit: {heat: {left: 6\", up to: 20\"}}").finds_one();
    range("left: {what: wall cabinet, height: 56\"}", "fit: {heat: {left: 6\", up to: 20\"}}").stays_silent();
}

fn planned(parts: &str, more: &str) -> Trial {
    Trial::of("clear/beside-cooktop")
        .room(&format!(
            "outline: 144\" x 120\"\nceiling: 96\"\nruns:\n  base: {{wall: A, starts: 24\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: {parts}}}\n{more}"
        ))
        .opening("hole", "{takes: range, width: 30 1/4\", height: 36\", depth: 25\"}")
        .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 29 7/8\", height: 35 3/4\" to 36 1/2\"}")
}

#[test]
fn a_tall_unit_a_panel_and_a_wall_of_the_plan_are_seen() {
    let run = |beside: &str| format!("[{beside}, {{opening: hole}}, {{cabinet: pans, width: 30\"}}]");
    planned(&run("{tall: pantry, width: 30\", height: 84\"}"), "")
        .finds("`pantry` of the run `base` is 3/16\" (4.8 mm) from the left of the cooking surface of `Range` and rises above it, 5 13/16\" (148 mm) less than the usual 6\" (152 mm); nobody says whether it burns, and so it counts as burning");
    planned(&run("{panel: 3/4\", height: 84\"}"), "").finds_one();
    planned(&run("{panel: 3/4\", height: 84\", material: does not burn}"), "").stays_silent();
    planned(&run("{cabinet: pots, width: 30\"}"), "").stays_silent();
}

#[test]
fn a_wall_at_the_end_of_the_run_is_seen_through_a_filler() {
    let corner = |filler: &str, walls: &str| {
        Trial::of("clear/beside-cooktop")
            .room(&format!(
                "outline: 144\" x 120\"\n{walls}\nruns:\n  base: {{wall: A, depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{filler: {filler}}}, {{opening: hole}}, {{cabinet: pans, width: 30\"}}]}}"
            ))
            .opening("hole", "{takes: range, width: 30\", height: 36\", depth: 25\"}")
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    };
    corner("3\"", "").finds_one();
    corner("6\"", "").stays_silent();
    corner("3\"", "walls: {D: {material: does not burn}}").stays_silent();
    corner("3\"", "walls: {D: {is: half wall, height: 36\"}}").stays_silent();
}

#[test]
fn a_wall_cabinet_of_the_plan_beside_the_range_is_seen_where_it_hangs_low() {
    let uppers = |low: &str| {
        format!(
            "  uppers: {{wall: A, starts: 24\", above floor: {low}, depth: 12\", height: 30\", parts: [{{cabinet: plates, width: 30\"}}]}}\n"
        )
    };
    let base = "[{cabinet: pots, width: 30\"}, {opening: hole}, {cabinet: pans, width: 30\"}]";
    planned(base, &uppers("50\"")).finds_one();
    planned(base, &uppers("54\"")).stays_silent();
}

/// What the opening calls `base cabinet` is as high as the plan has it.
#[test]
fn the_plan_says_how_high_what_stands_beside_is() {
    let said = |left: &str| {
        planned(&format!("[{left}, {{opening: hole}}, {{cabinet: pans, width: 30\"}}]"), "")
            .opening("other", "{takes: dishwasher}")
    };
    let worded = |left: &str| {
        Trial::of("clear/beside-cooktop")
            .room(&format!(
                "outline: 144\" x 120\"\nruns:\n  base: {{wall: A, starts: 24\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{left}, {{opening: hole}}, {{cabinet: pans, width: 30\"}}]}}"
            ))
            .opening("hole", "{takes: range, width: 30\", height: 36\", depth: 25\", left: base cabinet, right: base cabinet}")
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    };
    said("{cabinet: pots, width: 30\"}").stays_silent();
    worded("{cabinet: pots, width: 30\"}").stays_silent();
    worded("{cabinet: pots, width: 30\", height: 60\"}").finds_one();
    worded("{tall: pots, width: 30\", height: 84\"}").finds_one();
}

/// A casing of wood burns: its width at the same wall, its thickness at the wall beside.
#[test]
fn casings_of_doors_and_windows_count_by_their_width_and_thickness() {
    let at = |wall: &str, fields: &str, walls: &str| {
        Trial::of("clear/beside-cooktop")
            .room(&format!("outline: 144\" x 120\"\n{walls}\n{wall}: {{yard: {{{fields}}}}}"))
            .opening("hole", "{takes: range, wall: A, at: 40\", width: 30\", depth: 25\", counter height: 36\"}")
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    };
    // The range ends at 70", the door begins at 79".
    let door = |more: &str| at("doors", &format!("wall: A, at: 79\", width: 32\", height: 80\"{more}"), "");
    door(", casing: 3 1/2\"")
        .finds("the casing of the door `yard` is 5 1/2\" (140 mm) from the right of the cooking surface of `Range` and rises above it, 1/2\" (12.7 mm) less than the usual 6\" (152 mm); nobody says whether it burns, and so it counts as burning")
        .cautions();
    door("").finds_one();
    door(", casing: 3\"").stays_silent();
    door(", casing: 3 1/2\", material: does not burn").stays_silent();
    let window = |sill: &str, more: &str| {
        at("windows", &format!("wall: A, at: 74\", width: 24\", sill: {sill}, height: 30\"{more}"), "")
    };
    window("42\"", "").finds_one();
    window("42\"", ", material: does not burn").stays_silent();
    // It begins more than 18" above the cooking surface.
    window("58\"", "").stays_silent();
    window("56\"", ", casing: 2 1/2\"").finds_one();
    // At the wall beside, 6 1/2" away: the wall itself is far enough, a casing of 3/4" is not.
    let beside = |thick: &str| {
        Trial::of("clear/beside-cooktop")
            .room(&format!("outline: 144\" x 120\"\ndoors: {{hall: {{wall: B, at: 10\", width: 30\", height: 80\", casing: 3\"{thick}}}}}"))
            .opening("hole", "{takes: range, wall: A, at: 107 1/2\", width: 30\", depth: 25\", counter height: 36\"}")
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    };
    beside("").finds_one();
    beside(", casing thickness: 1/2\"").stays_silent();
    beside(", casing thickness: 5/8\"").finds_one();
}

/// A word that says neither tall nor low is not low because the counter beside is.
#[test]
fn what_is_called_by_no_known_word_is_asked_about_beside_a_cabinet_of_the_plan_too() {
    let range = |left: &str| {
        Trial::of("clear/beside-cooktop")
            .room(
                "outline: 144\" x 120\"\nruns:\n  base: {wall: A, starts: 24\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: pots, width: 36\"}, {opening: hole}, {cabinet: oil pull-out, width: 9\"}]}",
            )
            .opening(
                "hole",
                &format!("{{takes: range, width: 30\", height: 36\", depth: 25\", landing: {{left: 36\"}}, left: {left}}}"),
            )
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    };
    for unknown in
        ["{what: window with curtain, gap: 2\"}", "bookcase", "{what: side panel, gap: 1\"}", "Gardine", "shelf"]
    {
        range(unknown).finds_one().weighs("query").cautions();
    }
    for low in
        ["pots", "base cabinet", "drawers", "counter", "cabinet", "filler", "Unterschrank", "cajones", "pull-out"]
    {
        range(low).stays_silent();
    }
    for said in
        ["{what: bookcase, top: 36\"}", "{what: side panel, material: does not burn}", "{what: curtain, gap: 8\"}"]
    {
        range(said).stays_silent();
    }
}

/// Source: arithmetic: a glass of 830 mm lies 15 mm over the unit at each side of its own, of 800 mm.
#[test]
fn what_a_wide_cooktop_lies_over_is_beside_it() {
    let hob = |right: &str, beside: &str| {
        Trial::of("clear/beside-cooktop")
            .metric()
            .opening("hob", &format!("{{takes: cooktop, width: 780 mm, depth: 492 mm, counter height: 920 mm, right: {right}}}"))
            .room(&format!(
                "outline: 4200 mm x 3100 mm\nruns: {{wall: {{wall: A, starts: 600 mm, depth: 600 mm, counter: {{depth: 620 mm, height: 920 mm}}, parts: [{{cabinet: pots, width: 600 mm}}, {{cabinet: hob unit, width: 800 mm, holds: [hob]}}, {{{beside}}}]}}}}"
            ))
            .selection("selection: Hob\nkind: cooktop\nplace: hob", "size: {width: 830 mm, depth: 520 mm}")
    };
    let low = "cabinet: drawers, width: 600 mm, drawers: 3";
    for called in ["worktop", "base cabinet", "drawers", "Arbeitsplatte", "mueble bajo", "Unterschrank"] {
        hob(called, low).stays_silent();
    }
    hob("curtain", low).finds_one().weighs("query").cautions();
    hob("worktop", "tall: larder, width: 600 mm, height: 2180 mm").run().says("0 mm");
}
