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
        .finds("the pantry is 4\" (101.6 mm) from the left of the cooking surface of `Range` and rises above it, 2\" (50.8 mm) less than the usual 6\" (152.4 mm)")
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

/// Words clear only what they put below the counter; what they leave open is asked about.
#[test]
fn what_ends_at_the_counter_is_no_matter() {
    for low in ["base cabinet", "drawers", "dishwasher", "counter", "low bench"] {
        range(&format!("left: {low}"), "").stays_silent();
    }
    for open in ["oak panel", "base cabinet under an oak shelf", "cupboard", "curtain"] {
        let found = range(&format!("left: {open}"), "").finds_one();
        assert!(found.findings()[0].remedy.contains("`top`"), "{open}");
        range(&format!("left: {{what: {open}, top: 36\"}}"), "").stays_silent();
    }
    // So much counter beside it says the same of what stands there.
    range("left: oils, landing: {left: 15\"}", "").stays_silent();
    range("left: oils, landing: {left: 3\"}", "").finds_one();
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
        .finds("`pantry` of the run `base` is 3/16\" (≈ 4.8 mm) from the left of the cooking surface of `Range` and rises above it, 5 13/16\" (≈ 147.6 mm) less than the usual 6\" (152.4 mm); nobody says whether it burns, and so it counts as burning");
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
