//! Heights of openings, by all that ends them.

use crate::assess::rules::trial::Trial;

fn trial(room: &str, opening: &str, option: &str) -> Trial {
    let trial = Trial::of("fit/height").room(room).opening("hole", &format!("{{takes: refrigerator, {opening}}}"));
    trial.selection("selection: It\nkind: refrigerator\nplace: hole", option)
}

/// A wall cabinet whose end covers an inch of the bay beside it clashes with what stands there, and is not over it;
/// one that hangs over it is.
#[test]
fn what_only_touches_the_edge_of_a_bay_does_not_end_its_height() {
    let bay = |starts: &str| {
        trial(
            &format!(
                "outline: 12' x 10'\nceiling: 96\"\nruns: {{base: {{wall: A, starts: 0\", depth: 24\", parts: [{{opening: hole}}]}}, uppers: {{wall: A, starts: {starts}, above floor: 54\", depth: 13\", parts: [{{cabinet: glasses, width: 30\", height: 30\", doors: 2}}]}}}}"
            ),
            "width: 30\", height: 72\", depth: 26\"",
            "size: {height: 70\"}",
        )
    };
    bay("29 3/4\"").stays_silent();
    bay("24\"").stays_silent();
    bay("6\"").finds_one().says("under `glasses`");
}

/// Source: trade reports F-17: a floor about 1 1/2" higher than the one under the unit traps it.
#[test]
fn a_floor_still_to_be_laid_is_taken_off() {
    let unit = "size: {height: 33 1/2\" to 34 1/2\"}";
    trial("floor build-up: 1 1/2\"", "height: 34 1/2\"", unit)
        .finds("the opening `hole` is 33\" (838 mm) high once 1 1/2\" (38.1 mm) of floor is laid, 1/2\" (12.7 mm) less than the 33 1/2\" (851 mm) needed");
    trial("floor build-up: 1\"", "height: 34 1/2\"", unit).stays_silent();
    trial("floor build-up: 1 1/2\"", "height: 34 1/2\", measured from: finished floor", unit).stays_silent();
    trial("floor build-up: 1 1/2\"", "height: 34 1/2\", sill: 4\"", unit).stays_silent();
}

/// What is let into a ceiling or hangs on a wall loses nothing to a floor, whatever its hole is called.
#[test]
fn a_hole_in_the_ceiling_loses_nothing_to_the_floor() {
    for kind in ["fan", "ceiling light", "recessed downlight", "wall light", "lit mirror"] {
        let hole = |high: &str| {
            Trial::of("fit/height")
                .room("floor build-up: 3/4\"")
                .opening("bay", &format!("{{takes: {kind}, width: 10 1/2\", height: {high}}}"))
                .selection(
                    &format!("selection: It\nkind: {kind}\nplace: bay"),
                    "fit: {opening: {height: at least 7 1/2\"}}",
                )
        };
        hole("8\"").stays_silent();
        hole("7\"").finds_one();
    }
}

/// A hole in a counter or in a cabinet's front moves with what it is cut into: no floor is taken off it.
#[test]
fn a_hole_in_a_counter_or_a_front_loses_nothing_to_the_floor() {
    for kind in ["cooktop", "sink", "wall oven", "microwave", "warming drawer"] {
        Trial::of("fit/height")
            .room("floor build-up: 3/4\"")
            .opening("hole", &format!("{{takes: {kind}, height: 4\"}}"))
            .selection(
                &format!("selection: It\nkind: {kind}\nplace: hole"),
                "fit: {opening: {height: at least 3 1/2\"}}",
            )
            .stays_silent();
    }
}

/// What hangs, and what is built into a cabinet, stays where it is when a floor is laid below it.
#[test]
fn what_hangs_or_stands_in_a_cabinet_loses_nothing_to_the_floor() {
    let thing = |kind: &str, room: &str, opening: &str| {
        Trial::of("fit/height")
            .room(&format!("floor build-up: 15 mm\n{room}"))
            .opening("hole", &format!("{{takes: {kind}, height: 600 mm{opening}}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: hole"), "size: {height: 600 mm}")
    };
    for kind in ["hood", "mirror cabinet", "basin"] {
        thing(kind, "", "").stays_silent();
    }
    let tower = "runs: {wall: {parts: [{tall: larder, width: 600 mm, holds: [hole]}]}}";
    thing("panel refrigerator", tower, "").stays_silent();
    thing("panel refrigerator", "", ", cabinet: {inside width: 564 mm}").stays_silent();
    // Between two panels it stands on the floor.
    thing("panel refrigerator", "", "").finds_one().weighs("stop");
    thing("refrigerator", tower, "").finds_one();
    thing("dishwasher", "", "").finds_one();
}

/// Of what nobody knows, nobody says that it does not fit; its kind is told as one that is not known.
#[test]
fn a_thing_or_an_opening_of_no_known_kind_is_not_measured() {
    let thing = |takes: &str, kind: &str| {
        Trial::of("fit/height")
            .room("floor build-up: 20 mm")
            .opening("hole", &format!("{{takes: {takes}, height: 255 mm}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: hole"), "size: {height: 255 mm}")
            .of_any_yaml()
    };
    thing("wobbling trough", "wobbling trough").stays_silent();
    thing("wobbling trough", "dishwasher").stays_silent();
    thing("dishwasher", "wobbling trough").stays_silent();
    thing("dishwasher", "dishwasher").finds_one();
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

#[test]
fn a_hood_over_a_range_is_no_stack_and_each_has_its_own_height() {
    let hood = |high: &str| {
        Trial::of("fit/height")
            .opening("range", "{takes: range, height: 36\", above: {what: hood, height: 66\"}}")
            .opening("hood", &format!("{{takes: hood, sill: 66\", height: {high}}}"))
            .selection("selection: Hood\nkind: hood\nplace: hood", "size: {height: 30\"}")
    };
    hood("29 1/2\"").finds_one().weighs("stop");
    hood("30\"").stays_silent();
}

/// Source: trade reports F-13, F-17: a washer and a dryer of 38 3/4" on it take 77 1/2", and a kit of
/// 1/4"; from the present floor 78 1/2" are left, 3/4" of floor to come: exactly enough.
#[test]
fn two_that_are_stacked_stand_on_one_floor() {
    let stack = |floor: &str, upper: &str, lower: &str| {
        Trial::of("fit/height")
            .room(&format!("floor build-up: {floor}"))
            .opening("washer", &format!("{{takes: washer, {lower}}}"))
            .opening("dryer", &format!("{{takes: dryer, sill: 39\", {upper}}}"))
            .selection(
                "selection: Washer\nkind: washer\nplace: washer",
                "size: {height: 38 3/4\" to 39\"}\nfit: {joining kit: 1/4\"}",
            )
            .selection("selection: Dryer\nkind: dryer\nplace: dryer", "size: {height: 38 3/4\" to 39\"}")
    };
    for (upper, lower) in [
        ("height: 39 1/2\", pair: washer", "height: 39\""),
        ("height: 39 1/2\"", "height: 39\", pair: dryer"),
        ("height: 39 1/2\"", "height: 39\", above: dryer"),
        ("pair: washer", "height: 78 1/2\""),
        ("pair: washer, above: {what: wall cabinet, height: 77 3/4\"}", "height: 39\""),
    ] {
        stack("3/4\"", upper, lower).stays_silent();
    }
    for (upper, lower) in [
        ("height: 39 1/2\", pair: washer", "height: 39\""),
        ("height: 39 1/2\"", "height: 39\", above: dryer"),
        ("pair: washer", "height: 78 1/2\""),
    ] {
        stack("1\"", upper, lower)
            .finds("the opening `washer` is 38 1/2\" (978 mm) high under `dryer` once 1\" (25.4 mm) of floor is laid, 1/4\" (6.4 mm) less than the 38 3/4\" (984 mm) needed")
            .weighs("stop");
    }
    stack("1\"", "height: 39 1/2\", pair: washer, measured from: finished floor", "height: 39\"").stays_silent();
    stack("1\"", "height: 39 1/2\", pair: washer", "height: 39\", measured from: finished floor").stays_silent();
}

/// What was measured under the upper one is what the lower one has, whatever stands on it; so is a shelf between them.
#[test]
fn what_ends_below_the_upper_of_two_is_what_the_lower_one_has() {
    let stack = |lower: &str| {
        Trial::of("fit/height")
            .opening("washer", &format!("{{takes: washer, pair: dryer, {lower}}}"))
            .opening("dryer", "{takes: dryer, sill: 39\", height: 40\"}")
            .selection("selection: Washer\nkind: washer\nplace: washer", "size: {height: 38 3/4\"}")
            .selection("selection: Dryer\nkind: dryer\nplace: dryer", "size: {height: 39\"}")
    };
    stack("height: 39\"").stays_silent();
    stack("height: 80\"").stays_silent();
    stack("height: [39\", 38\", 39\"]").finds_one().weighs("stop");
    stack("height: 30\"").finds_one();
    stack("height: 39\", above: {what: shelf, height: 36\"}").finds_one();
    stack("height: 39\", above: {what: dryer, height: 39\"}").stays_silent();
}

/// A neighbour bounds the height from above; how high the opening is meant to be it does not say.
#[test]
fn what_hangs_high_above_makes_no_opening_too_high() {
    let sheet = "fit: {opening: {height: 83 1/2\" to 84 1/2\"}}";
    trial("", "above: {what: soffit, height: 90\"}", sheet).stays_silent();
}

/// Source: trade reports F-01: what hangs over it decides, and a wall cabinet is drawn in the plan.
#[test]
fn what_the_plan_has_hang_over_it_ends_its_height() {
    let under = |above_floor: &str, starts: &str, more: &str| {
        let runs = format!(
            "outline: 12' x 10'\nruns:\n  cold wall: {{wall: A, depth: 24\", parts: [{{opening: hole}}]}}\n  uppers: {{wall: A, starts: {starts}, above floor: {above_floor}, depth: 12\", parts: [{{cabinet: trays, width: 36\", height: 15\"}}]}}"
        );
        trial(&runs, &format!("width: 36\", depth: 29\"{more}"), "size: {height: 69\"}\nfit: {air: {top: 1\"}}")
    };
    under("69 1/2\"", "0\"", "")
        .finds("the opening `hole` is 69 1/2\" (1765 mm) high under `trays`, 1/2\" (12.7 mm) less than the 70\" (1778 mm) needed")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:5:75"]);
    under("70\"", "0\"", "").stays_silent();
    under("69 1/2\"", "0\"", ", height: 72\"").finds_one();
    under("69 1/2\"", "40\"", "").stays_silent();
}

/// Source: arithmetic: a top of 36" with a slab of 2" leaves 34" for a dishwasher of 34 1/4".
#[test]
fn the_slab_of_the_counter_ends_what_stands_under_it() {
    let dish = |room: &str, thickness: &str| {
        Trial::of("fit/height")
            .room(room)
            .opening("dish", "{takes: dishwasher, width: 24\", height: 34 1/2\", depth: 24\"}")
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dish", "size: {height: 34 1/4\" to 35\"}")
            .selection("selection: Worktop\nkind: counter", &format!("thickness: {thickness}"))
    };
    let parts = "counter: {depth: 25\", height: 36\"}, parts: [{opening: dish}]";
    let unplaced = format!("runs: {{wet side: {{{parts}}}}}");
    let placed = format!("outline: 12' x 10'\nruns: {{wet side: {{wall: A, {parts}}}}}");
    for room in [unplaced, placed] {
        dish(&room, "2\"").finds("the opening `dish` is 34\" (864 mm) high under `Worktop`, 1/4\" (6.4 mm) less than the 34 1/4\" (870 mm) needed");
        dish(&room, "1 1/2\"").stays_silent();
    }
}

/// Source: arithmetic; the maker's sheet of a slide-in range: its top is set no higher than 36 5/8".
#[test]
fn a_range_is_as_high_as_the_counter_beside_it() {
    let range = |run: &str, opening: &str| {
        Trial::of("fit/height")
            .room(&format!("runs: {{w: {{counter: {{depth: 25 1/2\"{run}}}, parts: [{{opening: range}}]}}}}"))
            .opening("range", &format!("{{takes: range, width: 30\"{opening}}}"))
            .selection(
                "selection: Range\nkind: range\nplace: range",
                "size: {height: 35 5/8\" to 36 5/8\"}\nfit: {opening: {height: 35 5/8\" to 36 5/8\"}}",
            )
    };
    range(", height: 37 1/4\"", "")
        .finds("the opening `range` is 37 1/4\" (946 mm) high, 5/8\" (15.9 mm) more than the maker's sheet allows")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:2:46"]);
    range("", ", counter height: 37 1/4\"").finds_one();
    range("", ", height: 37 1/4\"").finds_one();
    range(", height: 35\"", "").finds_one();
    range(", height: 36\"", "").stays_silent();
    // Its own height counts first.
    range(", height: 37 1/4\"", ", height: 36\"").stays_silent();
}

/// Source: arithmetic: 38" less a slab of 1 1/4" is 36 3/4", where the sheet allows 35".
#[test]
fn a_bay_under_a_slab_can_be_too_high() {
    let bay = |height: &str, opening: &str, thick: &str| {
        Trial::of("fit/height")
            .room(&format!("outline: 12' x 10'\nruns: {{w: {{wall: A, depth: 24\", counter: {{depth: 25 1/2\", height: {height}}}, parts: [{{opening: dw}}]}}}}"))
            .opening("dw", &format!("{{takes: dishwasher, width: 24\"{opening}}}"))
            .selection("selection: Counter\nkind: counter", thick)
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dw", "fit: {opening: {height: 34\" to 35\"}}")
    };
    let slab = "thickness: 1 1/4\"";
    bay("38\"", "", slab)
        .finds("the opening `dw` is 36 3/4\" (933 mm) high under `Counter`, 1 3/4\" (44.4 mm) more than the maker's sheet allows")
        .weighs("stop");
    bay("36\"", "", slab).stays_silent();
    bay("38\"", ", height: 35\"", slab).stays_silent();
    bay("38\"", "", "finish: oak").stays_silent();
}

/// Source: arithmetic: under a counter of 36" there is no room for a washer of 38 1/2".
#[test]
fn what_stands_under_a_counter_is_no_higher() {
    let under = |kind: &str, opening: &str, counter: &str| {
        Trial::of("fit/height")
            .opening("it", &format!("{{takes: {kind}, width: 28\"{opening}}}"))
            .selection("selection: Counter\nkind: counter", counter)
            .selection(&format!("selection: It\nkind: {kind}\nplace: it"), "size: {height: 35 1/4\"}")
    };
    let slab = "thickness: 1 1/4\"";
    under("washer", ", counter height: 36\", above: counter", slab)
        .finds("the opening `it` is 34 3/4\" (883 mm) high under `Counter`, 1/2\" (12.7 mm) less than the 35 1/4\" (895 mm) needed");
    under("washer", ", counter height: 35\", above: worktop", "finish: oak").finds_one();
    under("washer", ", counter height: 36\", above: worktop", "finish: oak").stays_silent();
    under("dishwasher", ", counter height: 36\"", slab).finds_one();
    // A washer beside a counter stands under nothing.
    under("washer", ", counter height: 36\"", slab).stays_silent();
}

/// Source: arithmetic: from a plinth of 15" to a cabinet at 52" there are 37".
#[test]
fn what_stands_at_its_wall_is_as_deep_as_what_is_chosen_for_it() {
    let washer = |depth: &str| {
        Trial::of("fit/height")
            .room(&format!("outline: 8' x 6'\nruns: {{uppers: {{wall: A, starts: 2\", above floor: 52\", depth: {depth}, height: 30\", parts: [{{cabinet: soap, width: 60\"}}]}}}}"))
            .opening("washer", "{takes: washer, wall: A, at: 6\", width: 28\", sill: 15\"}")
            .selection("selection: Washer\nkind: washer\nplace: washer", "size: {width: 27\", height: 38 1/2\", depth: 31\"}")
    };
    washer("14\"").finds_one().says("is 37\" (940 mm) high under `soap`, 1 1/2\"");
    washer("24\"").finds_one();
}

/// Source: arithmetic: a dryer that is set out at 37" leaves 2" less than a washer of 39" needs.
#[test]
fn an_upper_one_that_begins_inside_the_lower_one_ends_it() {
    let dryer = |sill: &str, bay: &str| {
        Trial::of("fit/height")
            .opening("washer", &format!("{{takes: washer, width: 28\", height: {bay}, pair: dryer}}"))
            .opening("dryer", &format!("{{takes: dryer, width: 28\", sill: {sill}, height: 44\"}}"))
            .selection("selection: Washer\nkind: washer\nplace: washer", "size: {height: 39\"}")
            .selection("selection: Dryer\nkind: dryer\nplace: dryer", "size: {height: 39\"}")
    };
    dryer("37\"", "39 1/2\"")
        .finds(
            "the opening `washer` is 37\" (940 mm) high under `dryer`, 2\" (51 mm) less than the 39\" (991 mm) needed",
        )
        .points_at(&["rooms/kitchen/room.yaml:4:43"]);
    dryer("30\"", "39 1/2\"").finds_one().says("9\" (229 mm) less");
    dryer("39 1/2\"", "39 1/2\"").stays_silent();
    // A lower one's height may be that of the whole bay.
    dryer("39\"", "83\"").stays_silent();
    dryer("39\"", "77\"").finds_one();
}

/// A sill hides no counter: what begins 6" above the floor has 6" less under it.
#[test]
fn a_sill_does_not_hide_the_counter_above() {
    let washer = |opening: &str| {
        Trial::of("fit/height")
            .room("outline: 10' x 10'\nruns: {a: {wall: A, starts: 0\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{opening: dw}, {cabinet: b, width: 30\"}]}}")
            .opening("dw", &format!("{{takes: dishwasher, width: 24\"{opening}}}"))
            .selection("selection: It\nkind: dishwasher\nplace: dw", "size: {width: 23 5/8\", height: 33 7/8\" to 35\"}")
            .selection("selection: Counter\nkind: counter", "thickness: 1 1/2\"")
    };
    for opening in [", sill: 6\"", ", sill: 6\", height: 34 1/2\"", ", sill: 1\""] {
        washer(opening).finds_one().weighs("stop");
    }
    washer("").stays_silent();
    washer(", sill: 0\"").stays_silent();
}

/// Source: arithmetic: 38 1/2" on 15 1/2" are 54".
#[test]
fn what_is_set_up_on_a_pedestal_is_as_high_as_both() {
    let washer = |with: &str| {
        Trial::of("fit/height").opening("bay", "{takes: washer, height: 44\"}").selection(
            "selection: Washer\nkind: washer\nplace: bay",
            &format!("size: {{height: 38 1/2\"}}\naccessories: [{{name: '{with}'}}]"),
        )
    };
    washer("pedestal, 15 1/2\" high").finds_one().weighs("stop").says("10\"");
    washer("15 1/2 in. pedestal").finds_one();
    washer("pedestal, 5\" high").stays_silent();
    washer("hose, 15 1/2\" long").stays_silent();
}
