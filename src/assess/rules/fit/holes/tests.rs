//! Tests of holes and the taps that go through them.

use crate::assess::rules::trial::Trial;

fn tap(drilled: &str) -> Trial {
    Trial::of("fit/holes").selection("selection: Counter\nkind: counter", &format!("drilled: [{drilled}]")).selection(
        "selection: Kitchen tap\nkind: tap",
        "holes: 1\nhole diameter: 1 3/8\" to 1 1/2\"\nrear travel: 1 3/4\"",
    )
}

/// Source: trade reports F-55 (a hole never drilled), F-57 (about 1" free behind the tap).
#[test]
fn a_missing_hole_a_wrong_one_and_a_lever_that_hits_the_splash_stop() {
    tap("{for: soap, diameter: 1 1/4\"}").finds("`Kitchen tap` takes 1 hole, and the list has 0").cautions();
    tap("{for: kitchen tap, diameter: 1 1/4\"}").finds_one().weighs("stop");
    tap("{for: kitchen tap, diameter: 1 3/8\", behind: 1\"}")
        .finds("the lever of `Kitchen tap` moves 1 3/4\" (44.4 mm) behind its hole, 3/4\" (19 mm) more than there is to what stands behind");
    tap("{for: kitchen tap, diameter: 1 3/8\", behind: 1 3/4\"}").stays_silent();
}

#[test]
fn a_counter_that_a_tap_stands_in_has_a_list_of_holes() {
    let counter = |counter: &str, mount: &str| {
        Trial::of("fit/holes")
            .selection("selection: Counter\nkind: counter", counter)
            .selection("selection: Sink\nkind: sink", &format!("mount: {mount}"))
            .selection("selection: Kitchen tap\nkind: tap", "holes: 1")
    };
    counter("", "undermount")
        .finds("`Kitchen tap` stands in a counter, and no list says where `Counter` is drilled for it")
        .weighs("query")
        .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
    counter("drilled: [{for: kitchen tap}]", "undermount").stays_silent();
    counter("", "drop-in").finds_one().weighs("query");
    counter("", "drop-in\nholes: 1").stays_silent();
    counter("", "undermount\nholes: 1").stays_silent();
    counter("", "in the counter\nholes: 0").finds_one();
}

/// The list of a basin is that of its own tap: what fills the tub stands elsewhere.
#[test]
fn a_tap_that_is_not_on_a_counter_or_basin_is_not_counted_against_its_holes() {
    let bath = |filler: &str, option: &str| {
        Trial::of("fit/holes")
            .selection("selection: Washbasin\nkind: basin", "drilled: [{for: basin mixer, diameter: 35 mm}]")
            .selection("selection: Basin mixer\nkind: tap", "holes: 1\nhole diameter: 34 mm to 36 mm")
            .selection("selection: Tub\nkind: bathtub", "")
            .selection(filler, option)
    };
    for (filler, option) in [
        ("selection: Kararmatur\nkind: bath filler", "holes: 2\nspread: 150 mm\nmount: on the rim of the tub"),
        ("selection: Kararmatur\nkind: bath filler", "holes: 2\nspread: 150 mm"),
        ("selection: Tub filler\nkind: tap", "holes: 2"),
        ("selection: Kararmatur\nkind: tap", "holes: 2\nmount: wall-mounted"),
        ("selection: Kararmatur\nkind: tap", "holes: 2\nmount: on the floor, free-standing"),
        ("selection: Wall spout\nkind: tap", "holes: 2"),
    ] {
        bath(filler, option).stays_silent();
    }
    // One that goes through a counter has its hole on a list.
    bath("selection: Second mixer\nkind: tap", "holes: 1").finds("`Second mixer` takes 1 hole, and the list has 0");
    // The holes of a tub's rim are those of what fills it.
    let rim = |holes: &str, mount: &str| {
        Trial::of("fit/holes")
            .selection("selection: Tub\nkind: bathtub", &format!("holes: {holes}"))
            .selection("selection: Filler\nkind: bath filler", &format!("holes: 4\nmount: {mount}"))
    };
    rim("2", "on the rim").finds("`Filler` takes 4 holes, and `Tub` has 2").weighs("stop");
    rim("4", "on the rim").stays_silent();
    rim("2", "from the wall").stays_silent();
}

fn in_bowl(bowl: &str, tap: &str) -> Trial {
    Trial::of("fit/holes")
        .selection("selection: Basin\nkind: basin", bowl)
        .selection("selection: Basin tap\nkind: tap", tap)
}

/// Source: common practice: three holes 4" or 8" apart, or one; a plate covers what is left over.
#[test]
fn the_holes_that_a_bowl_comes_with_are_those_of_its_tap() {
    in_bowl("holes: 1", "holes: 3\nspread: 8\"")
        .finds("`Basin tap` takes 3 holes, and `Basin` has 1")
        .weighs("stop")
        .points_at(&["rooms/kitchen/selection-1.yaml:3:8"]);
    in_bowl("holes: 3\nspread: 4\"", "holes: 3\nspread: 8\"")
        .finds("the holes of `Basin` are 4\" (102 mm) apart, and `Basin tap` takes them 8\" (203 mm) apart");
    in_bowl("holes: 3\nspread: 4 in centreset", "holes: 3\nspread: widespread 8\"").finds_one().weighs("stop");
    in_bowl("holes: 3\nspread: 8\"", "holes: 3\nspread: 6\" to 12\"").stays_silent();
    in_bowl("holes: 1\nhole diameter: 1 1/8\"", "holes: 1\nhole diameter: 1 3/8\" to 1 1/2\"").finds_one();
    in_bowl("holes: 3\nspread: 4\"", "holes: 1\nspread: single hole")
        .finds("2 holes stay open in `Basin` beside `Basin tap`")
        .weighs("query");
    in_bowl("holes: 3\nspread: 4\"", "holes: 1\naccessories: [{name: deck plate}]").stays_silent();
    in_bowl("holes: 1", "holes: 1").stays_silent();
}

/// Source: trade reports F-55 (a lever at the splash), F-57 (at a sill), section 6 (4" of counter before a bowl).
/// Arithmetic: 25 1/2" less 3/4", 4", 17" and 2 1/2" leave 1 1/4".
#[test]
fn where_no_list_says_what_is_behind_the_plan_tells() {
    let sink = |counter: &str, travel: &str, more: &str| {
        Trial::of("fit/holes")
            .room(&format!("runs: {{sink wall: {{counter: {{{counter}}}, parts: [{{cabinet: base, width: 36\", holds: [sink]}}]}}}}\n{more}"))
            .opening("sink", "{takes: sink}")
            .selection("selection: Sink\nkind: sink\nplace: sink", "mount: undermount\nsize: {depth: 19\"}")
            .selection("selection: Tap\nkind: tap", &format!("rear travel: {travel}"))
    };
    let deep = "depth: 25 1/2\", height: 36\"";
    let splash = format!("{deep}, splash: {{thickness: 3/4\"}}");
    sink(&splash, "1 1/2\"", "")
        .finds("the lever of `Tap` moves 1 1/2\" (38.1 mm) behind its hole, and the plan leaves about 1 1/4\" (31.8 mm) to the splash of `sink wall`")
        .weighs("query");
    sink(&splash, "1 1/4\"", "").stays_silent();
    sink(deep, "1 1/2\"", "").stays_silent();
    let tile = |behind: &str| {
        sink(deep, "1 3/4\"", "")
            .selection("selection: Splash tile\nkind: tile", &format!("thickness: 3/8\"\nlaid: {{{behind}}}"))
    };
    tile("behind: [sink wall]").finds_one();
    tile("area: 20 sq ft").stays_silent();
    let drilled = |hole: &str| {
        sink(&splash, "1 1/2\"", "")
            .selection("selection: Counter\nkind: counter", &format!("drilled: [{{for: tap{hole}}}]"))
    };
    drilled(", behind: 2\"").stays_silent();
    drilled(", to bowl: 2\"").stays_silent();
    drilled("").finds_one();
}

#[test]
fn a_hole_of_the_list_may_say_how_far_the_next_one_is() {
    let tap = |spread: &str| {
        Trial::of("fit/holes")
            .selection(
                "selection: Counter\nkind: counter",
                &format!("drilled: [{{for: tap, spread: {spread}}}, {{for: tap}}]"),
            )
            .selection("selection: Kitchen tap\nkind: tap", "holes: 2\nspread: 8\"")
    };
    tap("6\"").finds("the holes for `Kitchen tap` are 6\" (152 mm) apart, and it takes them 8\" (203 mm) apart");
    tap("8\"").stays_silent();
}

#[test]
fn a_basin_on_the_wall_has_a_hole_for_a_tap_that_stands_on_it_and_none_for_one_that_does_not() {
    let basin = |basin: &str, tap: &str| {
        Trial::of("fit/holes")
            .selection("selection: Basin\nkind: basin", &format!("mount: on the wall\n{basin}"))
            .selection("selection: Basin tap\nkind: basin tap", tap)
    };
    basin("holes: 0", "holes: 1")
        .finds("`Basin tap` takes 1 hole, and `Basin` has none")
        .weighs("stop")
        .points_at(&["rooms/kitchen/selection-1.yaml:3:8"]);
    basin("holes: 1", "holes: 1").stays_silent();
    basin("", "holes: 3\nspread: 8\"")
        .finds("`Basin tap` stands on `Basin`, and nobody says how many holes that has")
        .weighs("query")
        .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
    basin("holes: 1", "holes: 1\nmount: on the wall, behind the bowl")
        .finds("`Basin tap` comes out of the wall, and 1 hole stays open in `Basin`")
        .weighs("query")
        .points_at(&["rooms/kitchen/selection-0.yaml:4:8"]);
    basin("holes: 0", "holes: 1\nmount: on the wall").stays_silent();
    basin("holes: 1\naccessories: [{name: hole cover, price: 9.00}]", "holes: 1\nmount: on the wall").stays_silent();
}

/// A filler that stands on the rim, or on the deck around it, and a tub that is not drilled.
#[test]
fn a_tub_that_has_no_hole_takes_no_filler_on_its_rim() {
    let bath = |mount: &str, holes: &str| {
        Trial::of("fit/holes")
            .selection("selection: Tub\nkind: bathtub", &format!("holes: {holes}"))
            .selection("selection: Filler\nkind: bath filler", &format!("mount: {mount}\nholes: 3\nspread: 8\""))
    };
    for mount in ["on the rim", "deck", "tub deck"] {
        bath(mount, "0").finds("`Filler` takes 3 holes, and `Tub` has none").weighs("stop");
    }
    bath("on the wall", "0").stays_silent();
    bath("on the rim", "3").stays_silent();
}

/// Source: common practice: a hole of 1 3/8" for a tap, and as many as it takes.
#[test]
fn a_list_has_no_more_holes_for_a_tap_than_it_takes() {
    let top = |tap: &str, drilled: &str| {
        Trial::of("fit/holes")
            .selection("selection: Top\nkind: counter", &format!("drilled: [{drilled}]"))
            .selection("selection: Basin\nkind: basin", "mount: undermount")
            .selection("selection: Faucet\nkind: faucet", tap)
    };
    let three = "{for: faucet, diameter: 1 3/8\"}, {for: faucet, diameter: 1 3/8\"}, {for: faucet, diameter: 1 3/8\"}";
    top("holes: 1", three).finds("`Faucet` takes 1 hole, and the list has 3 for it").weighs("query");
    top("holes: 3", three).stays_silent();
    top("holes: 1", "{for: faucet, diameter: 1 3/8\"}, {for: soap dispenser, diameter: 1 1/4\"}").stays_silent();
    top("holes: 1\naccessories: [{name: cover plate}]", three).stays_silent();
    top("holes: 1", "{for: faucet, diameter: 1\"}").finds_one().weighs("query").says("1\" (25.4 mm) across");
    top("holes: 1", "{for: faucet, diameter: 35 mm}").stays_silent();
    top("holes: 1\nhole diameter: 1\"", "{for: faucet, diameter: 1\"}").stays_silent();
}

#[test]
fn of_a_bowl_that_may_be_drilled_it_is_asked_how() {
    let sink = |bowl: &str, tap: &str| {
        Trial::of("fit/holes")
            .selection("selection: Prep sink\nkind: sink", bowl)
            .selection("selection: Prep tap\nkind: tap", tap)
    };
    for mount in ["top-mount", "drop-in", "inset"] {
        sink(&format!("mount: {mount}"), "holes: 1")
            .finds("`Prep tap` stands on `Prep sink`, and nobody says how many holes that has")
            .weighs("query");
        sink(&format!("mount: {mount}\nholes: 1"), "holes: 1").stays_silent();
        sink(&format!("mount: {mount}\nholes: 0"), "holes: 1").stays_silent();
        sink(&format!("mount: {mount}"), "holes: 1\nmount: wall").stays_silent();
    }
    let basin = |bowl: &str| {
        Trial::of("fit/holes")
            .selection("selection: Basin\nkind: basin", &format!("mount: pedestal\n{bowl}"))
            .selection("selection: Faucet\nkind: faucet", "holes: 3\nspread: 8\"")
    };
    basin("holes: 3")
        .finds("`Faucet` takes its holes 8\" (203 mm) apart, and nobody says how far apart those of `Basin` are")
        .weighs("query");
    basin("holes: 3\nspread: 8\"").stays_silent();
}

#[test]
fn for_a_tap_in_the_wall_no_hole_is_drilled_in_the_deck() {
    let top = |mount: &str, hole: &str| {
        Trial::of("fit/holes")
            .selection(
                "selection: Top\nkind: counter",
                &format!("drilled: [{{for: lavatory faucet, diameter: 1 3/8\"{hole}}}]"),
            )
            .selection("selection: Basin\nkind: basin", "mount: undermount")
            .selection("selection: Lavatory faucet\nkind: faucet", &format!("holes: 1\nmount: {mount}"))
    };
    for mount in ["wall", "on the wall", "wall mounted", "a la pared", "mural, empotrado", "Wandmontage"] {
        top(mount, ", behind: 2 3/4\", to bowl: 2\"")
            .finds("`Lavatory faucet` comes out of the wall, and the list has 1 for it")
            .weighs("query");
        // Stone that is drilled on the wall itself has nothing behind it.
        top(mount, "").stays_silent();
    }
    top("on the counter", ", behind: 2 3/4\", to bowl: 2\"").stays_silent();
}

/// Source: common practice: a flange covers a little more than the hole that its sheet names.
#[test]
fn a_hole_a_bit_wider_than_a_single_figure_is_asked_about_once() {
    let drilled = |asked: &str, across: &str, holes: usize| {
        let hole = format!("{{for: faucet, diameter: {across}}}");
        let list = vec![hole; holes].join(", ");
        Trial::of("fit/holes")
            .selection("selection: Top\nkind: counter", &format!("drilled: [{list}]"))
            .selection("selection: Basin\nkind: basin", "mount: undermount")
            .selection("selection: Faucet\nkind: tap", &format!("holes: {holes}\nhole diameter: {asked}"))
    };
    drilled("1 1/4\"", "1 3/8\"", 3)
        .finds("the hole for `Faucet` is 1 3/8\" (34.9 mm) across, 1/8\" (3.2 mm) more than the 1 1/4\" (31.8 mm) of its sheet")
        .weighs("query");
    drilled("1 3/8\"", "1 1/4\"", 3).finds_one().weighs("stop");
    drilled("1 1/4\" to 1 3/8\"", "1 1/2\"", 3).finds_one().weighs("stop");
    drilled("1 1/4\"", "2\"", 1).finds_one().weighs("stop");
    for (asked, across) in [("35 mm", "1 3/8\""), ("1 3/8\"", "35 mm"), ("1 1/4\" to 1 3/8\"", "35 mm")] {
        drilled(asked, across, 1).stays_silent();
    }
    // Inches of a list and millimetres of a sheet.
    Trial::of("fit/holes")
        .selection(
            "selection: Top\nkind: counter",
            "drilled: [{for: faucet, diameter: 35 mm, spread: 7\"}, {for: faucet, diameter: 35 mm}]",
        )
        .selection("selection: Basin\nkind: basin", "mount: undermount")
        .selection("selection: Faucet\nkind: tap", "holes: 2\nspread: 180 mm")
        .stays_silent();
}
