//! Each figure in both places: where they differ, where they agree, and where the finding points.

use crate::assess::rules::trial::Trial;

fn of(room: &str, opening: &str) -> Trial {
    Trial::of("source/contradiction").room(room).opening("range", &format!("{{takes: range, {opening}}}"))
}

#[test]
fn a_counter_is_as_high_and_deep_at_the_opening_as_in_the_run() {
    let run = "runs: {range wall: {counter: {depth: 25 1/2\", height: 36\"}, parts: [{opening: range}]}}";
    of(run, "counter height: 37\"")
        .finds("the counter height of `range` is 3'-1\" (939.8 mm) at the opening `range`, and 3'-0\" (914.4 mm) in the run `range wall`")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:2:55"])
        .remedies("correct the one that is wrong, or leave it out; meanwhile 3'-1\" (939.8 mm) counts");
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
        "the width of `range` is 30\" (762 mm) at the opening `range`, and 3'-0\" (914.4 mm) in the run `range wall`",
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
        .finds("the inside width of the cabinet of `range` is 34 1/2\" (876.3 mm), more than the 33\" (838.2 mm) outside at `base` in `wall`");
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
    of(&plan("54\""), opening).finds("the lower edge of what is above of `range` is 5'-6\" (1676.4 mm) at the opening `range`, and 4'-6\" (1371.6 mm) at `wall cabinet` in `uppers`");
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
    floor("3/4\"").finds(
        "the thickness of `Oak` is 3/4\" (≈ 19 mm), more than the floor build-up of 1/2\" (12.7 mm) in the room",
    );
    floor("1/2\"").stays_silent();
    floor("3/8\"").stays_silent();
}
