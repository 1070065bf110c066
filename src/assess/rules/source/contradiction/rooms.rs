//! What is written of a room's floor and what its plan leaves.

use crate::assess::rules::trial::Trial;

const TOILET: &str = "toilet: {wall: A, centre: 18\", width: 15\", depth: 28\", takes: toilet}";

fn bath(size: &str, fixtures: &str, more: &str) -> Trial {
    let fixtures = format!("fixtures: {{{TOILET}{fixtures}}}");
    Trial::of("source/contradiction").room(&format!("outline: {size}\n{fixtures}\n{more}"))
}

#[test]
fn floor_before_a_fixture_is_no_more_than_the_plan_leaves() {
    bath("5' x 5'", "", "clearances: {in front of toilet: 35\"}")
        .finds("the floor in front of the toilet of `Kitchen` is 35\" (889 mm) under `clearances`, and 32\" (813 mm) by the plan")
        .weighs("query")
        .points_at(&["rooms/kitchen/room.yaml:3:12"]);
    bath("5' x 5'", "", "clearances: {in front of toilet: 32\"}").stays_silent();
    bath("5' x 5'", "", "clearances: {in front of toilet: 24\"}").stays_silent();
    // A place that is kept larger than what is chosen for it leaves more.
    let kept = |more: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 5' x 5'\nfixtures: {{toilet: {{wall: A, centre: 18\", width: 20\", depth: 30\", takes: toilet, selection: Toilet}}}}\nclearances: {{in front of toilet: {more}}}"))
            .selection("selection: Toilet\nkind: toilet", "size: {width: 15\", depth: 26\", height: 30\"}")
    };
    kept("34\"").stays_silent();
    kept("38\"").finds_one();
    let basin = ", basin: {wall: B, centre: 60\", width: 20\", depth: 20\", takes: basin}";
    bath("5' x 8'", basin, "clearances: {in front of basin: 45\"}").finds_one();
    bath("5' x 8'", basin, "clearances: {in front of basin: 40\"}").stays_silent();
}

#[test]
fn floor_for_a_chair_is_no_more_than_the_plan_leaves() {
    bath("7' x 7'", "", "access: {turning circle: 90\"}").finds_one().weighs("query");
    bath("12' x 12'", "", "access: {turning circle: 90\"}").stays_silent();
    bath("7' x 7'", "", "access: {toilet space from side wall: 120\"}").finds_one();
    bath("7' x 7'", "", "access: {toilet space from rear wall: 120\"}").finds_one();
    let basin = ", basin: {wall: A, centre: 52\", width: 20\", depth: 18\", takes: basin}";
    bath("9' x 8'", basin, "access: {toilet space from side wall: 60\"}")
        .finds("the toilet's space from the wall at its side of `Kitchen` is 60\" (1524 mm) under `access`, and 42\" (1067 mm) by the plan");
    bath("9' x 8'", basin, "access: {toilet space from side wall: 42\"}").stays_silent();
    // A toilet farther from its wall than is written; nearer than it is planned is nobody's contradiction otherwise.
    let side = |profile: &str| {
        bath("9' x 8'", "", "clearances: {toilet to side: 15 1/2\"}").book(&format!("access profile: {profile}"))
    };
    side("2010 ADA").finds_one().weighs("query");
    side("none").stays_silent();
}

#[test]
fn a_step_is_as_high_as_the_tray_that_is_ordered() {
    let tray = |step: &str, mount: &str| {
        Trial::of("source/contradiction").room(&format!("access: {{shower threshold: {step}}}")).selection(
            "selection: Tray\nkind: shower tray",
            &format!("size: {{width: 36\", depth: 60\", height: 3 1/2\"}}{mount}"),
        )
    };
    tray("0\"", "")
        .finds("the step at its entry of `Tray` is 0\" (0 mm) under `access`, and 3 1/2\" (89 mm) at `Tray`")
        .weighs("query");
    tray("3 1/2\"", "").stays_silent();
    tray("0\"", "\nmount: let into the floor").stays_silent();
}

#[test]
fn an_opening_is_no_deeper_than_its_room() {
    let closet = |size: &str, door: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: {size}{door}"))
            .opening("washer", "{takes: washer, wall: A, at: 2\", width: 28\", depth: 36\"}")
    };
    closet("60\" x 32\"", "")
        .finds("the depth of `washer` is 36\" (914 mm) at the opening `washer`, and 32\" (813 mm) by the plan")
        .weighs("query");
    closet("60\" x 36\"", "").stays_silent();
    closet("60\" x 32\"", "\ndoors: {way: {wall: C, at: 10\", width: 48\"}}").stays_silent();
}

/// What stands in a closet has its floor before the closet's door.
#[test]
fn floor_before_a_closet_is_past_its_door() {
    let closet = |front: &str, deep: &str, door: &str| {
        Trial::of("source/contradiction").room(&format!("outline: 60\" x {deep}{door}")).opening(
            "washer",
            &format!("{{takes: washer, wall: A, at: 2\", width: 28\", depth: 30\", in front: {front}}}"),
        )
    };
    let door = "\ndoors: {way: {wall: C, at: 10\", width: 48\"}}";
    closet("48\"", "36\"", door).stays_silent();
    closet("48\"", "36\"", "").finds_one();
    closet("66\"", "84\"", door).finds_one();
}

/// A doorway's own leaf, and what is said to be clear of it.
#[test]
fn a_leaf_closes_its_doorway_and_no_more_is_clear() {
    let door = |door: &str, more: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 9' x 8'\ndoors: {{in: {{wall: A, at: 20\", {door}}}}}\n{more}"))
    };
    let hung = "hinge: left, swings: out";
    door(&format!("width: 32\", leaf: 36\", {hung}"), "")
        .finds("the leaf of `in` is 36\" (914 mm), more than the width between its jambs of 32\" (813 mm) at the doorway `in`")
        .weighs("stop");
    door(&format!("width: 32\", leaf: 24\", {hung}"), "").finds_one().weighs("query");
    door("width: 60\", leaf: 30\", hinge: both", "").stays_silent();
    door("width: 32\", leaf: 36\", slides: true", "").stays_silent();
    door(&format!("width: 32\", leaf: 31 3/4\", {hung}"), "").stays_silent();
    door(&format!("width: 34\", leaf: 32 1/2\", {hung}"), "clearances: {doorways: {in: 34\"}}").finds_one();
    door(&format!("width: 34\", leaf: 33 3/4\", {hung}"), "clearances: {doorways: {in: 32\"}}").stays_silent();
}
