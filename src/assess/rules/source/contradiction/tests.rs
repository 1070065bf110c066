//! Each figure in both places: where they differ, where they agree, and where the finding points.

use crate::assess::rules::trial::Trial;

fn of(room: &str, opening: &str) -> Trial {
    Trial::of("source/contradiction").room(room).opening("range", &format!("{{takes: range, {opening}}}"))
}

#[test]
fn what_a_counter_is_made_of_is_told_once() {
    let counter = |lines: &str| Trial::of("source/contradiction").selection("selection: Worktop\nkind: counter", lines);
    counter("material: granite\ntop: {material: quartz}")
        .finds("the material of `Worktop` is quartz at `Worktop`, and stone at `Worktop`")
        .weighs("query");
    counter("material: granite\ntop: {material: marble}").stays_silent();
    counter("material: granite\ntop: {overhang: 1\"}").stays_silent();
}

#[test]
fn a_counter_is_as_high_and_deep_at_the_opening_as_in_the_run() {
    let run = "runs: {range wall: {counter: {depth: 25 1/2\", height: 36\"}, parts: [{opening: range}]}}";
    of(run, "counter height: 37\"")
        .finds("the counter height of `range` is 37\" (940 mm) at the opening `range`, and 36\" (914 mm) in the run `range wall`")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:2:55"])
        .remedies("correct the one that is wrong, or leave it out; meanwhile 37\" (940 mm) counts");
    of(run, "counter height: 36\"").stays_silent();
    of(run, "counter height: 36 1/8\"").stays_silent();
    of(run, "counter depth: 24\"").finds_one();
    of(run, "counter depth: 25 1/2\"").stays_silent();
    let island =
        "islands: {island: {height: 36\", room side: {parts: [{cabinet: base, width: 36\", holds: [range]}]}}}";
    of(island, "counter height: 38\"").finds_one();
    of(island, "counter height: 36\"").stays_silent();
}

#[test]
fn an_opening_is_as_wide_and_deep_as_its_part_says_and_what_was_measured_counts() {
    let run = |part: &str| format!("runs: {{range wall: {{parts: [{{opening: range, {part}}}]}}}}");
    let measured = "measured: {on: 2027-01-11, by: site lead}";
    of(&run("width: 36\""), &format!("width: 30\", {measured}")).finds(
        "the width of `range` is 30\" (762 mm) at the opening `range`, and 36\" (914 mm) in the run `range wall`",
    );
    of(&run("width: 30\""), "width: [30 1/16\", 30\", 30 1/8\"]").stays_silent();
    of(&run("depth: 24\""), "depth: 26\"").finds_one();
    of(&run("depth: 26\""), "depth: 26\"").stays_silent();
}

#[test]
fn a_cabinet_is_one_width_and_no_larger_inside_than_outside() {
    let run = "runs: {wall: {depth: 24\", parts: [{cabinet: base, width: 33\", height: 34 1/2\", holds: [range]}]}}";
    of(run, "cabinet: {outside width: 36\"}").finds_one();
    of(run, "cabinet: {outside width: 33\"}").stays_silent();
    of(run, "cabinet: {inside width: 34 1/2\"}")
        .finds("the inside width of the cabinet of `range` is 34 1/2\" (876 mm), more than the 33\" (838 mm) outside at `base` in `wall`");
    of(run, "cabinet: {inside width: 28 1/2\"}").stays_silent();
    of(run, "cabinet: {inside depth: 26\"}").finds_one();
    of(run, "cabinet: {inside depth: 23 1/2\"}").stays_silent();
    of(run, "cabinet: {inside height: 36\"}").finds_one();
}

#[test]
fn what_is_above_is_where_the_plan_hangs_it() {
    let plan = |low: &str| {
        format!(
            "outline: 12' x 10'\nruns:\n  base: {{wall: A, starts: 30\", parts: [{{opening: range}}]}}\n  uppers: {{wall: A, starts: 20\", above floor: {low}, height: 30\", parts: [{{cabinet: wall cabinet, width: 60\"}}]}}"
        )
    };
    let opening = "width: 30\", height: 36\", depth: 24\", above: {what: wall cabinet, height: 66\"}";
    of(&plan("54\""), opening).finds("the lower edge of what is above `range` is 66\" (1676 mm) at the opening `range`, and 54\" (1372 mm) at `wall cabinet` in `uppers`");
    of(&plan("66\""), opening).stays_silent();
}

#[test]
fn a_level_room_has_one_ceiling() {
    of("ceiling: 96\"", "above: {what: ceiling, height: 92\"}").finds_one();
    of("ceiling: 96\"", "above: {what: ceiling, height: 95 1/2\"}").stays_silent();
    of("ceiling: {low: 90\", high: 120\", rises along: width}", "above: {what: ceiling, height: 92\"}").stays_silent();
}

#[test]
fn a_thickness_is_written_once_or_twice_alike() {
    let counter = |size: &str| {
        Trial::of("source/contradiction")
            .selection("selection: Counter\nkind: counter", &format!("thickness: 1 1/4\"\nsize: {{thickness: {size}}}"))
    };
    counter("3/4\"").finds_one();
    counter("1 1/4\"").stays_silent();
}

#[test]
fn a_fixture_hangs_as_high_as_its_opening() {
    let fixture = |sill: &str| {
        of(
            &format!(
                "outline: 12' x 10'\nfixtures: {{basin: {{wall: A, centre: 60\", opening: range, sill: {sill}}}}}"
            ),
            "width: 30\", sill: 12\"",
        )
    };
    fixture("14\"").finds_one();
    fixture("12\"").stays_silent();
}

/// Source: trade reports F-17 (a floor of 1 1/2" over the old one), F-71.
#[test]
fn a_floor_is_no_thicker_than_what_was_to_be_laid() {
    let floor = |thickness: &str| {
        Trial::of("source/contradiction")
            .room("floor build-up: 1/2\"")
            .selection("selection: Oak\nkind: floor", &format!("thickness: {thickness}"))
    };
    floor("3/4\"")
        .finds("the thickness of `Oak` is 3/4\" (19 mm), more than the floor build-up of 1/2\" (12.7 mm) in the room");
    floor("1/2\"").stays_silent();
    floor("3/8\"").stays_silent();
}

#[test]
fn a_floor_of_tile_counts_with_its_bed() {
    let floor = |name: &str, option: &str| {
        Trial::of("source/contradiction")
            .room("floor build-up: 1/2\"")
            .selection(&format!("selection: {name}\nkind: tile"), option)
    };
    floor("Floor tile", "thickness: 3/8\"\nlaid: {bed: 1/4\"}").finds(
        "the thickness with its bed of `Floor tile` is 5/8\" (15.9 mm), more than the floor build-up of 1/2\" (12.7 mm) in the room",
    );
    floor("Kitchen floor", "thickness: 5/8\"").finds_one();
    floor("Floor tile", "thickness: 3/8\"\nlaid: {bed: 1/8\"}").stays_silent();
    floor("Wall tile", "thickness: 5/8\"").stays_silent();
}

#[test]
fn tile_around_a_tub_is_no_thicker_than_what_comes_on_its_studs() {
    let alcove = |build_up: &str| {
        Trial::of("source/contradiction")
            .opening(
                "alcove",
                &format!("{{takes: bathtub, width: 62\", measured between: studs, wall build-up: {build_up}}}"),
            )
            .selection("selection: Wall tile\nkind: tile", "thickness: 3/8\"")
    };
    alcove("{left: 1/4\", right: 1/4\"}").finds(
        "the thickness of `Wall tile` is 3/8\" (9.5 mm), more than the wall build-up of 1/4\" (6.4 mm) at the opening `alcove`",
    );
    alcove("{left: 7/8\", right: 7/8\"}").stays_silent();
}

#[test]
fn the_floor_in_front_is_one_figure() {
    let toilet = |room: &str, opening: &str| {
        Trial::of("source/contradiction").room(room).opening("toilet", &format!("{{takes: toilet, {opening}}}"))
    };
    toilet("clearances: {in front of toilet: 30\"}", "in front: 16\"")
        .finds("the floor in front of `toilet` is 16\" (406 mm) at the opening `toilet`, and 30\" (762 mm) under `clearances`")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:2:34"]);
    toilet("clearances: {in front of toilet: 30\"}", "in front: 30\"").stays_silent();
    toilet("clearances: {in front of toilet: 30\"}", "in front: 28\", depth: 30\"")
        .selection("selection: Toilet\nkind: toilet\nplace: toilet", "size: {depth: 28\"}")
        .stays_silent();
    let placed = "wall: A, at: 10\", width: 30\", depth: 28\", ";
    let across = |wide: &str| format!("outline: 10' x {wide}");
    toilet(&across("8'"), &format!("{placed}in front: 76\"")).finds_one();
    toilet(&across("8'"), &format!("{placed}in front: 68\"")).stays_silent();
}

#[test]
fn the_floor_before_a_tub_is_where_one_gets_in() {
    let bath = |toilet: &str| {
        Trial::of("source/contradiction")
            .room("outline: 8' 6\" x 5' 1/4\"")
            .opening("tub", "{takes: bathtub, wall: B, at: 0\", width: 60 1/4\", depth: 30 1/2\", in front: 30\"}")
            .opening("toilet", toilet)
    };
    bath("{takes: toilet, wall: A, at: 35 1/2\", width: 36\", depth: 30\"}").stays_silent();
    // A pier as long as the tub itself.
    bath("{takes: toilet, wall: A, at: 35 1/2\", width: 30\", depth: 50\"}").finds(
        "the floor in front of `tub` is 30\" (762 mm) at the opening `tub`, and 6\" (152 mm) by the plan, to `toilet`",
    );
}

#[test]
fn what_the_plan_leaves_is_no_less_than_what_is_written() {
    let kitchen = |room: &str| {
        Trial::of("source/contradiction").room(&format!(
            "outline: 16' x 14'\nruns: {{wall: {{wall: A, starts: 40\", depth: 24\", counter: {{depth: 25\", height: 36\"}}, parts: [{{opening: hob}}, {{cabinet: a, width: 60\"}}]}}}}\nislands: {{island: {{wall: A, at: 20\", away: 61\", size: 96\" x 42\", height: 36\", wall side: {{parts: [{{cabinet: q, width: 90\"}}]}}}}}}\n{room}"
        )).opening("hob", "{takes: range, width: 30\", above: nothing}")
    };
    kitchen("clearances: {work aisle: 48\"}")
        .finds("the work aisle of `Kitchen` is 48\" (1219 mm) under `clearances`, and 36\" (914 mm) by the plan");
    kitchen("clearances: {work aisle: 36\"}").stays_silent();
    kitchen("clearances: {work aisle: 30\"}").stays_silent();
    let door = |clear: &str| {
        kitchen(&format!(
            "doors: {{yard: {{wall: C, at: 20\", width: 32\", height: 80\"}}}}\nclearances: {{doorways: {{yard: {clear}}}}}"
        ))
    };
    door("34\"").finds(
        "the clear width of `yard` is 34\" (864 mm), more than the width between its jambs of 32\" (813 mm) at the doorway `yard`",
    );
    door("30\"").stays_silent();
}

fn island(top: &str) -> Trial {
    Trial::of("source/contradiction")
        .room("islands: {island: {size: 96\" x 42\", height: 36\", room side: {overhang: 12\", seats: 3}}}")
        .selection("selection: Top\nkind: counter", &format!("thickness: 1 1/4\"\ntop: {{material: stone, {top}}}"))
}

#[test]
fn a_counter_stands_out_as_far_as_its_island_says() {
    island("lies on: [island], overhang: 15\"")
        .finds("the overhang of `Top` is 15\" (381 mm) at `Top`, and 12\" (305 mm) at the island `island`");
    island("lies on: [island], overhang: 6\"").finds_one();
    island("overhang: 6\"").finds_one();
    island("lies on: [island], overhang: 12\"").stays_silent();
    // It lies on something else besides, of which nothing is said.
    island("lies on: [island, bar], overhang: 15\"").stays_silent();
}

#[test]
fn a_counter_is_as_deep_as_what_it_lies_on() {
    island("lies on: [island], depth: 36\"").finds_one();
    island("lies on: [island], depth: 42\"").stays_silent();
    let run = |top: &str| {
        Trial::of("source/contradiction")
            .room("runs: {wall: {counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: a, width: 36\"}]}}")
            .selection("selection: Top\nkind: counter", &format!("top: {{lies on: [wall], depth: {top}}}"))
    };
    run("24 1/2\"").finds_one();
    run("25 1/2\"").stays_silent();
}

#[test]
fn a_counter_s_top_is_no_lower_than_cabinets_and_slab() {
    let run = |height: &str, room: &str| {
        Trial::of("source/contradiction")
            .room(&format!("{room}runs: {{wall: {{height: 34 1/2\", counter: {{height: {height}}}, parts: [{{cabinet: a, width: 36\"}}]}}}}"))
            .selection("selection: Top\nkind: counter", "thickness: 1 1/4\"")
    };
    run("35\"", "").finds("the counter height of `wall` is 35\" (889 mm), less than cabinets and counter together, 35 3/4\" (908 mm) at `Top`");
    run("36\"", "").stays_silent();
    run("35\"", "floor build-up: 3/4\"\n").stays_silent();
}

#[test]
fn lights_hang_where_the_plan_hangs_them() {
    let pendants = |lights: &str, hangs: &str| {
        Trial::of("source/contradiction")
            .room(&format!("ceiling: 96\"\nislands: {{island: {{size: 96\" x 42\", height: 36\"}}}}\nlights: {{over: {{selection: Pendants, over: island{lights}}}}}"))
            .selection(&format!("selection: Pendants\nkind: pendant\nhangs: {{over: island, {hangs}}}"), "")
    };
    pendants(", at: [16\", 40\", 80\"]", "at: [16\", 48\", 80\"]")
        .finds(
            "the centre of one of `Pendants` is 48\" (1219 mm) at `Pendants`, and 40\" (1016 mm) at the lights `over`",
        )
        .weighs("query");
    pendants(", at: [16\", 48\", 80\"]", "at: [16\", 48\", 80\"]").stays_silent();
    pendants(", count: 2", "at: [16\", 48\", 80\"]")
        .finds("the number of `Pendants` is 3 at `Pendants`, and 2 at the lights `over`");
    pendants(", count: 3", "length: 84\"").finds_one();
    pendants(", count: 3", "length: 96\"").stays_silent();
    pendants(", count: 3", "top: 42\"").finds_one();
    pendants(", count: 3", "top: 36\"").stays_silent();
}

#[test]
fn a_door_hangs_on_one_side() {
    let part = |part: &str| {
        Trial::of("source/contradiction")
            .room(&format!("runs: {{wall: {{parts: [{part}]}}}}"))
            .opening("bay", "{takes: refrigerator, width: 36\"}")
            .selection("selection: Pantry\nkind: cabinet", "hinge: right")
            .selection("selection: Fridge\nkind: refrigerator\nplace: bay", "hinge: right")
    };
    part("{opening: bay, hinge: left}")
        .finds("the hinge side of `Fridge` is right at `Fridge`, and left at `bay` in `wall`")
        .weighs("stop");
    part("{opening: bay, hinge: right}").stays_silent();
    part("{cabinet: pantry, width: 18\", doors: 1, hinge: left}").finds_one();
    part("{cabinet: pantry, width: 18\", doors: 1, hinge: right}").stays_silent();
    let shower = |hinge: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 10' x 8'\nfixtures: {{shower: {{wall: A, centre: 40\", width: 36\", depth: 36\", selection: Glass, door: 26\", hinge: {hinge}}}}}"))
            .selection("selection: Glass\nkind: shower glass", "hinge: left")
    };
    shower("right").finds_one();
    shower("left").stays_silent();
}

#[test]
fn a_cabinet_is_as_wide_as_the_part_of_its_name() {
    let pantry = |width: &str, parts: &str| {
        Trial::of("source/contradiction")
            .room(&format!("runs: {{wall: {{parts: [{parts}]}}}}"))
            .selection("selection: Pantry\nkind: cabinet", &format!("size: {{width: {width}}}"))
    };
    let one = "{tall: pantry, width: 24\", height: 84\"}";
    pantry("30\"", one)
        .finds("the width of `Pantry` is 30\" (762 mm) at `Pantry`, and 24\" (610 mm) at `pantry` in `wall`");
    pantry("24\"", one).stays_silent();
    // Two of that name make one of 48".
    pantry("48\"", &format!("{one}, {one}")).stays_silent();
}

/// What a room offers on paper is what is ordered for it.
#[test]
fn bars_that_are_ordered_are_as_long_as_they_are_written_for_access() {
    let bath = |access: &str, bars: &[(&str, &str)]| {
        let trial = Trial::of("source/contradiction").room(&format!("access: {{{access}}}"));
        bars.iter().fold(trial, |trial, (name, length)| {
            trial.selection(&format!("selection: {name}\nkind: grab bar"), &format!("size: {{length: {length}}}"))
        })
    };
    bath("side grab bar: 42\"", &[("Side grab bar", "30\"")])
        .finds("the length of `Side grab bar` is 42\" (1067 mm) under `access`, and 30\" (762 mm) at `Side grab bar`")
        .weighs("stop");
    bath("side grab bar: 42\"", &[("Side grab bar", "42\"")]).stays_silent();
    bath("rear grab bar: 36\"", &[("Bar behind the toilet", "30\"")]).finds_one();
    let both = "side grab bar: 42\", rear grab bar: 36\"";
    bath(both, &[("Side grab bar", "42\""), ("Rear grab bar", "36\"")]).stays_silent();
    bath(both, &[("Side grab bar", "42\""), ("Rear grab bar", "24\"")]).finds_one();
    // Of bars that are called nothing in particular the longest may be the one.
    bath(both, &[("Grab bars", "42\"")]).stays_silent();
    bath(both, &[("Grab bars", "36\"")]).finds_one();
    bath(both, &[]).stays_silent();
    Trial::of("source/contradiction")
        .room("outline: 96\" x 72\"\naccess: {side grab bar: 42\"}\nfixtures: {side bar: {wall: A, centre: 40\", width: 30\", depth: 3\", takes: grab bar}}")
        .finds_one();
}

#[test]
fn a_shower_is_as_large_as_it_is_drawn() {
    let shower = |inside: &str, there: &str| {
        Trial::of("source/contradiction").room(&format!(
            "outline: 120\" x 96\"\nclearances: {{shower: {inside}}}\nfixtures: {{roll-in shower: {{wall: A, centre: 40\", {there}, takes: shower}}}}"
        ))
    };
    shower("60\" x 36\"", "width: 60\", depth: 26\"")
        .finds("the lesser inside of `roll-in shower` is 36\" (914 mm) under `clearances`, and 26\" (660 mm) at the fixture `roll-in shower`")
        .weighs("stop");
    shower("36\" x 60\"", "width: 60\", depth: 26\"").finds_one();
    shower("60\" x 36\"", "width: 60\", depth: 36\"").stays_silent();
    shower("60\" x 36\"", "width: 36\", depth: 60\"").stays_silent();
    shower("58\" x 36\"", "width: 60\", depth: 36\"").stays_silent();
    Trial::of("source/contradiction")
        .room("clearances: {shower: 60\" x 36\"}")
        .opening("wet", "{takes: shower, width: 60\", depth: 30\"}")
        .finds_one();
    let entry = |door: &str| {
        Trial::of("source/contradiction").room(&format!(
            "outline: 120\" x 96\"\naccess: {{shower entry: 36\"}}\nfixtures: {{shower: {{wall: A, centre: 40\", width: 60\", depth: 36\", door: {door}, takes: shower}}}}"
        ))
    };
    entry("28\"").finds_one();
    entry("36\"").stays_silent();
}

/// A door is tied to its doorway by `place`, by its name, or as the only one.
#[test]
fn a_door_is_as_its_doorway_has_it() {
    let room = |doors: &str, door: &str, option: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 3600 mm x 3000 mm\ndoors: {{{doors}}}"))
            .selection(&format!("selection: {door}\nkind: door"), option)
    };
    let two = "bedroom door: {wall: A, at: 200 mm, width: 760 mm, height: 1980 mm, leaf: 762 mm, hinge: right}, flat door: {wall: B, at: 200 mm, width: 840 mm, height: 1980 mm, hinge: right}";
    for (door, place) in [("Bedroom door", ""), ("White door", "place: bedroom door\n")] {
        room(two, door, &format!("{place}size: {{width: 838 mm}}")).finds_one().weighs("stop");
        room(two, door, &format!("{place}size: {{width: 762 mm, height: 1981 mm}}\nhinge: right")).stays_silent();
        room(two, door, &format!("{place}size: {{width: 762 mm}}\nhinge: left"))
            .finds(&format!("the hinge side of `{door}` is left at `{door}`, and right at the doorway `bedroom door`"));
        room(two, door, &format!("{place}size: {{height: 2100 mm}}")).finds_one();
    }
    room(two, "Flat door", "size: {width: 762 mm}").finds_one();
    room(two, "Flat door", "size: {width: 838 mm}\nhinge: either").stays_silent();
    // Nothing ties it, and nothing is compared.
    room(two, "Doors", "size: {width: 838 mm}").stays_silent();
    room("hall: {wall: A, at: 200 mm, width: 760 mm, leaf: 762 mm}", "Oak door", "size: {width: 838 mm}").finds_one();
}

#[test]
fn a_blind_covers_its_window() {
    let room = |blind: &str, option: &str| {
        Trial::of("source/contradiction")
            .room("outline: 3600 mm x 3000 mm\nwindows: {yard: {wall: A, at: 600 mm, width: 1200 mm, sill: 900 mm, height: 1200 mm}, side: {wall: B, at: 600 mm, width: 600 mm, sill: 900 mm, height: 1200 mm}}")
            .selection(&format!("selection: {blind}\nkind: window covering"), option)
    };
    room("Blind", "place: yard\nsize: {width: 900 mm}")
        .finds("the width of `Blind` is ≈ 35 7/16\" (900 mm), less than the width of its window, ≈ 47 1/4\" (1200 mm) at the window `yard`")
        .weighs("stop");
    room("Yard", "size: {width: 900 mm}").finds_one();
    room("Blind", "place: side\nsize: {width: 600 mm}").stays_silent();
    room("Blind", "place: yard\nsize: {width: 1190 mm}").stays_silent();
    room("Curtains", "place: yard\nsize: {width: 700 mm}\nquantity: 2").stays_silent();
    room("Curtains", "place: yard\nsize: {width: 1600 mm}").stays_silent();
    room("Blinds", "size: {width: 900 mm}").stays_silent();
}
