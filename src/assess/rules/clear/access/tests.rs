//! Tests of the access profile.

use super::floor::{counted, knee_depth};
use super::reach::{Barred, forward, side};
use crate::assess::rules::trial::Trial;
use crate::units::Length;

fn room(lines: &str) -> Trial {
    Trial::of("clear/access").book("access profile: 2010 ADA").room(lines)
}

fn access(fields: &str) -> Trial {
    room(&format!("access: {{{fields}}}"))
}

fn inches(inches: i64) -> Length {
    Length::from_inches(inches)
}

fn half(halves: i64) -> Length {
    Length::from_sixty_fourths(halves * 32)
}

#[test]
fn only_a_book_or_a_room_that_asks_for_it_is_held_to_the_profile() {
    let narrow = "access: {turning circle: 40\"}";
    Trial::of("clear/access").room(narrow).stays_silent();
    Trial::of("clear/access").room(narrow).room("access profile: 2010 ADA").finds_one();
    room(narrow).room("access profile: none").stays_silent();
}

/// Source: check values AD-06: a circle of 59 fails.
#[test]
fn a_chair_turns_in_a_circle_of_sixty_inches() {
    access("turning circle: 60\"").stays_silent();
    access("turning circle: 59\"")
        .finds("the turning circle is 59\" (1499 mm) across, 1\" (25.4 mm) less than the 60\" (1524 mm) that the access profile asks for")
        .weighs("stop");
}

/// Source: check values AD-05, KP-50: 30 by 48 passes, 30 by 47 fails.
#[test]
fn a_chair_stands_on_thirty_by_forty_eight() {
    access("clear floor: {range: 30\" x 48\"}").stays_silent();
    access("clear floor: {range: 48\" x 30\"}").stays_silent();
    access("clear floor: {range: 30\" x 47\"}").finds_one().weighs("stop");
}

/// Source: check values AD-01: of a space for feet 26 deep only 25 counts; 17 at least.
#[test]
fn of_the_space_for_feet_twenty_five_inches_count() {
    assert_eq!(counted(inches(26)), inches(25));
    assert_eq!(counted(inches(17)), inches(17));
    let basin = |depth: &str, toes: &str| {
        access(&format!("clear floor: {{basin: 30\" x {depth}}}, knee spaces: {{basin: {{toe depth: {toes}}}}}"))
    };
    basin("23\"", "26\"").stays_silent();
    basin("22\"", "26\"").finds_one();
    basin("48\"", "16\"").finds_one();
}

/// Source: check values AD-02, AD-03; top check value 19: 11 deep at 9 high, 9 at 21, 8 at 27.
#[test]
fn knees_need_less_depth_the_higher_it_is() {
    assert_eq!(knee_depth(inches(9)), Some(inches(11)));
    assert_eq!(knee_depth(inches(21)), Some(inches(9)));
    assert_eq!(knee_depth(inches(27)), Some(inches(8)));
    assert_eq!(knee_depth(inches(28)), None);
    let knees = |at: &str| access(&format!("knee spaces: {{basin: {{knees: [{at}]}}}}"));
    knees("{at: 9\", deep: 11\"}, {at: 27\", deep: 8\"}").stays_silent();
    knees("{at: 21\", deep: 8 7/8\"}").finds_one().weighs("stop");
}

/// Source: check values AD-04: a knee space 29 wide fails.
#[test]
fn a_knee_space_is_thirty_inches_wide() {
    access("knee spaces: {basin: {width: 29\"}}").finds_one().weighs("stop");
}

/// Source: check values KP-18: 27 high and 17 deep misses the guideline for access, 36 by 27 by 19.
#[test]
fn the_guideline_asks_for_more_at_a_table() {
    access("knee spaces: {table: {width: 36\", height: 27\", depth: 19\"}}").stays_silent();
    access("knee spaces: {table: {height: 27\", depth: 17\"}}").finds_one().weighs("query");
    access("knee spaces: {table: {width: 30\"}}").finds_one().weighs("query");
}

/// Source: check values AD-07: forward 14.9 fails, 48 passes.
#[test]
fn with_nothing_in_between_one_reaches_from_fifteen_to_forty_eight() {
    let at = |height: &str| access(&format!("controls: {{switch: {{height: {height}}}}}"));
    at("48\"").stays_silent();
    at("15\"").stays_silent();
    at("14.9\"").finds_one().weighs("stop");
    at("49\"").finds_one();
}

/// Source: check values AD-08; top check value 19: forward over 20 deep up to 48, over 20.5 up to 44, over 25.5 not at all.
#[test]
fn forward_reach_is_less_over_something_deep() {
    assert_eq!(forward(Some(inches(20))), Ok(inches(48)));
    assert_eq!(forward(Some(half(41))), Ok(inches(44)));
    assert_eq!(forward(Some(inches(25))), Ok(inches(44)));
    assert_eq!(forward(Some(half(51))), Err(Barred::TooDeep(inches(25))));
    let hood = |fields: &str| access(&format!("controls: {{hood switch: {{reach: forward, {fields}}}}}"));
    hood("height: 44\", over depth: 25\"").stays_silent();
    hood("height: 46\", over depth: 25\"").finds_one();
    hood("height: 40\", over depth: 25 1/2\"")
        .finds("`hood switch` cannot be reached from a chair over something more than 25\" (635 mm) deep");
}

/// Source: check values AD-09, AD-10; top check value 19: over 10 deep up to 48, over 24 up to 46; over a counter 36 high not at all.
#[test]
fn side_reach_ends_at_a_counter_of_usual_height() {
    assert_eq!(side(Some(inches(10)), Some(inches(34))), Ok(inches(48)));
    assert_eq!(side(Some(inches(24)), Some(inches(34))), Ok(inches(46)));
    assert_eq!(side(Some(inches(24)), Some(inches(36))), Err(Barred::TooHigh(inches(34))));
    assert_eq!(side(Some(half(49)), None), Err(Barred::TooDeep(inches(24))));
    let outlet = |over: &str| access(&format!("controls: {{outlet: {{height: 46\", reach: side, {over}}}}}"));
    outlet("over depth: 24\", over height: 34\"").stays_silent();
    outlet("over depth: 24\", over height: 36\"").finds_one().weighs("stop");
}

/// Source: check values AD-17: a knob that must be twisted is asked about.
#[test]
fn a_knob_that_must_be_twisted_is_asked_about() {
    access("controls: {fan: {height: 40\", twists: true}}").finds_one().weighs("query");
    access("controls: {fan: {height: 40\", twists: false}}").stays_silent();
}

/// Source: check values AD-11: with two entries 39 fails.
/// Source: 2010 ADA Standards 309.4, of what is called so.
#[test]
fn a_tap_with_knobs_is_asked_about() {
    let tap = |model: &str| room("ceiling: 96\"").selection("selection: Faucet\nkind: tap", &format!("model: {model}"));
    for knobs in ["W-4 round knobs", "cross-handle mixer", "grifo con pomos", "Kreuzgriff-Armatur"] {
        tap(knobs).finds("`Faucet` must be gripped tightly, pinched or twisted, by what it is called").weighs("query");
    }
    tap("W-4 lever").stays_silent();
    tap("W-4").stays_silent();
    tap("levers in place of knobs").stays_silent();
    room("ceiling: 96\"").selection("selection: Pull\nkind: pull", "model: round knob").stays_silent();
}

#[test]
fn a_kitchen_with_two_entries_has_forty_inches_between_counters() {
    let aisle = |width: &str| room(&format!("access: {{kitchen: pass-through}}\nclearances: {{work aisle: {width}}}"));
    aisle("40\"").stays_silent();
    aisle("39\"").finds_one().weighs("stop");
}

/// Source: check values AD-12, KP-51: a U with 59 fails, and is free where nothing is cooked.
#[test]
fn in_a_u_one_must_turn() {
    let aisle = |width: &str| room(&format!("access: {{kitchen: U-shaped}}\nclearances: {{work aisle: {width}}}"));
    aisle("60\"").opening("hob", "{takes: cooktop}").stays_silent();
    aisle("59\"").opening("hob", "{takes: cooktop}").finds_one();
    aisle("59\"").stays_silent();
}

/// Source: check values AD-13: a surface 34.5 high fails, unless it can be set from 29 to 36.
#[test]
fn a_work_surface_is_wide_and_low_or_can_be_set() {
    access("work surface width: 30\", work surface height: 34\"").stays_silent();
    access("work surface height: 34 1/2\"").finds_one();
    access("work surface height: 34 1/2\", work surface adjusts: true").stays_silent();
    access("work surface width: 29\"").finds_one();
}

/// Source: check values AD-14, BP-11: a counter of 36 at the sink fails; a rim at 34.5 fails for access.
#[test]
fn a_rim_is_at_most_thirty_four_inches_high() {
    access("sink rim: 34\"").stays_silent();
    access("sink rim: 36\"").finds_one();
    room("clearances: {basin height: 34 1/2\"}").finds_one();
    room("clearances: {basin height: 34\"}").stays_silent();
}

/// Source: check values AD-15: a bowl of 8 over a knee space fails, 6 1/2 passes.
#[test]
fn a_bowl_over_knees_is_shallow() {
    access("sink bowl depth: 6 1/2\"").stays_silent();
    access("sink bowl depth: 8\"").finds_one().weighs("query");
}

/// Source: check values AD-16: 49 % of the shelves within reach fails.
/// Source: 2010 ADA Standards 308.2.1 (check values AD-07): 15" to 48", wherever the height stands.
#[test]
fn switches_of_the_plan_are_within_reach() {
    let set = |what: &str, height: &str, more: &str| {
        room(&format!("outline: 9' x 8'\n{what}: {{by the door: {{wall: A, centre: 30\", height: {height}}}}}\n{more}"))
    };
    set("switches", "54\"", "").finds_one().weighs("stop").says("`by the door` is 54\" (1372 mm) above the floor");
    set("switches", "48\"", "").stays_silent();
    set("switches", "44\"", "").stays_silent();
    set("outlets", "12\"", "").finds_one().weighs("query");
    set("outlets", "15\"", "").stays_silent();
    // Told under `controls` too, it is judged there once.
    set("switches", "54\"", "access: {controls: {by the door: {height: 54\"}}}").finds_one();
}

#[test]
fn half_of_the_shelves_are_within_reach() {
    access("shelves in reach: 50 %").stays_silent();
    access("shelves in reach: 49 %").finds_one().weighs("stop");
}

/// Source: check values AD-18: a centreline at 18.5 fails though the model code passes.
#[test]
fn a_toilet_stands_sixteen_to_eighteen_inches_from_the_wall() {
    let toilet = |at: &str| room(&format!("clearances: {{toilet to side: {at}}}"));
    toilet("16\"").stays_silent();
    toilet("18\"").stays_silent();
    toilet("18 1/2\"").finds_one().weighs("stop");
    toilet("15 1/2\"").finds_one();
}

/// Source: check values AD-19: 55 from the rear wall fails.
#[test]
fn floor_around_a_toilet() {
    access("toilet space from side wall: 60\", toilet space from rear wall: 56\"").stays_silent();
    access("toilet space from rear wall: 55\"").finds_one();
    access("toilet space from side wall: 59\"").finds_one();
}

/// Source: check values AD-20: a seat at 16.5 fails.
#[test]
fn a_seat_is_seventeen_to_nineteen_inches_high() {
    let seat = |height: &str| room("").selection("selection: Toilet\nkind: toilet", &format!("seat height: {height}"));
    seat("16 1/2\"").finds_one().weighs("stop");
    seat("17\"").stays_silent();
    seat("19\"").stays_silent();
    // Source: 2010 ADA Standards 610.3 (from memory), for a seat in a shower.
    let bench =
        |height: &str| room("").selection("selection: Bench\nkind: shower seat", &format!("seat height: {height}"));
    bench("20\"").finds_one().weighs("stop");
    bench("18\"").stays_silent();
}

/// Source: check values AD-21, AD-22: a bar from 12 to 54 passes; one of 35 behind the toilet fails.
#[test]
fn bars_are_long_enough_and_reach_far_enough() {
    access("side grab bar: 42\", side grab bar from rear wall: 12\"").stays_silent();
    access("side grab bar: 42\", side grab bar from rear wall: 10\"").finds_one();
    access("side grab bar: 41\", side grab bar from rear wall: 12\"").finds_one();
    access("rear grab bar: 36\"").stays_silent();
    access("rear grab bar: 35\"").finds_one().weighs("stop");
}

/// Source: check values BP-16: a bar at 37 fails.
#[test]
fn bars_are_thirty_three_to_thirty_six_inches_high() {
    access("grab bar height: 36\"").stays_silent();
    access("grab bar height: 37\"").finds_one().weighs("stop");
    access("grab bar height: 32\"").finds_one().weighs("stop");
    Trial::of("clear/access").room("access: {grab bar height: 37\"}").stays_silent();
}

/// Source: check values AD-23: 35.5 in a shower to move over in fails.
#[test]
fn a_transfer_shower_is_thirty_six_square() {
    let shower = |sides: &str| {
        room(&format!("access: {{shower type: transfer, shower entry: 36\"}}\nclearances: {{shower: {sides}}}"))
    };
    shower("36\" x 36\"").stays_silent();
    shower("35 1/2\" x 36\"").finds_one().weighs("stop");
    access("shower type: transfer, shower entry: 35\"").finds_one();
}

/// Source: check values AD-24: 30 by 59 to roll into fails.
#[test]
fn a_roll_in_shower_is_thirty_by_sixty() {
    let shower = |sides: &str| room(&format!("access: {{shower type: roll-in}}\nclearances: {{shower: {sides}}}"));
    shower("30\" x 60\"").stays_silent();
    shower("30\" x 59\"").finds_one();
}

/// Source: check values BP-17, BP-19: controls at 50 and a step of 5/8 fail, a step of 1/2 passes; that the 2010
/// standard has the same limits in 608.5 and 608.7 is from memory.
#[test]
fn a_shower_s_step_is_low_and_its_controls_near() {
    access("shower threshold: 1/2\", shower controls: 48\"").stays_silent();
    access("shower threshold: 5/8\"").finds_one().weighs("stop");
    access("shower controls: 50\"")
        .finds("the shower's control is 50\" (1270 mm) high, 2\" (51 mm) more than the 48\" (1219 mm) that the access profile asks for")
        .weighs("stop");
    access("shower controls: 37\"").finds_one().weighs("query");
}

/// Source: check values AD-25: a bar of 36 fails, a table of 30 passes.
#[test]
fn one_place_to_sit_is_low_enough_for_a_chair() {
    room("seating: {bar: {height: 36\"}}").finds_one();
    room("seating: {bar: {height: 36\"}, table: {height: 30\"}}").stays_silent();
}

/// Source: check values AD-26: a mirror whose glass begins at 41 fails.
#[test]
fn a_mirror_begins_at_forty_inches() {
    access("mirror: 40\"").stays_silent();
    access("mirror: 41\"").finds_one();
}

/// Source: check values KP-40: 36 and 42 pass.
#[test]
fn counters_offer_two_heights() {
    access("counter heights: [36\", 42\"]").stays_silent();
    access("counter heights: [38\", 42\"]").finds_one().weighs("query");
    access("counter heights: [36\"]").finds_one();
}

#[test]
fn one_fault_is_told_once() {
    let narrow = "cooks: 2\naccess: {kitchen: pass-through}\nclearances: {work aisle: 39\", toilet to side: 14\"}";
    Trial::of("clear/work-aisle").book("access profile: 2010 ADA").room(narrow).stays_silent();
    Trial::of("clear/toilet").book("access profile: 2010 ADA").room(narrow).stays_silent();
}

/// Source: 2010 ADA Standards 603.3, 604.5.1, 606.3, 608.7 (from memory), by what is ordered and where it goes.
#[test]
fn what_is_ordered_counts_where_nothing_is_written_under_access() {
    let room = |lines: &str| Trial::of("clear/access").book("access profile: 2010 ADA").room(lines);
    let mirror = |sill: &str| room("").opening("mirror", &format!("{{takes: mirror cabinet, sill: {sill}}}"));
    mirror("46\"").finds_one().weighs("stop");
    mirror("38\"").stays_silent();
    let bar = |long: &str| {
        room("")
            .selection("selection: Toilet\nkind: toilet", "seat height: 17\"")
            .selection("selection: Grab bar beside the toilet\nkind: grab bar", &format!("size: {{length: {long}}}"))
    };
    bar("24\"").finds_one().weighs("stop").points_at(&["rooms/kitchen/selection-1.yaml:3:16"]);
    bar("42\"").stays_silent();
    let tray = |high: &str| {
        room("access: {shower type: roll-in}").selection(
            "selection: Tray\nkind: shower tray",
            &format!("size: {{width: 60\", depth: 36\", height: {high}}}"),
        )
    };
    tray("3\"").finds_one().weighs("stop");
    tray("1/2\"").stays_silent();
    let vessel = |high: &str| {
        room(&format!("runs: {{v: {{counter: {{depth: 22\", height: {high}}}, parts: [{{cabinet: v, width: 36\", holds: [basin]}}]}}}}"))
            .opening("basin", "{takes: basin}")
            .selection("selection: Basin\nkind: basin\nplace: basin", "mount: vessel\nsize: {height: 5\"}")
    };
    vessel("34\"").finds_one().weighs("stop");
    vessel("29\"").stays_silent();
}

/// Source: 2010 ADA Standards 304.3.1 and 604.3.1 (check values AD-06, AD-19): by the plan. A toilet 18" from the wall at its side,
/// and a basin from 42" to 62".
#[test]
fn the_plan_tells_what_stands_in_the_floor_around_a_toilet() {
    let bath = |outline: &str, basin: &str, more: &str| {
        room(&format!(
            "outline: {outline}\nfixtures:\n  toilet: {{wall: A, centre: 18\", width: 15\", depth: 28\", takes: toilet}}\n  basin: {{{basin}, width: 20\", depth: 18\", takes: basin}}\n{more}"
        ))
    };
    bath("9' x 8'", "wall: A, centre: 52\"", "")
        .finds("the toilet's space is 42\" (1067 mm) from the wall at its side by the plan, 18\" (457 mm) less than the 60\" (1524 mm) that the access profile asks for")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:4:3"]);
    bath("9' x 8'", "wall: A, centre: 70\"", "").stays_silent();
    bath("9' x 8'", "wall: C, centre: 90\"", "").stays_silent();
    // Across from the toilet, and 50" from the wall behind it.
    bath("9' x 68\"", "wall: C, centre: 90\"", "")
        .finds_one()
        .says("the toilet's space is 50\" (1270 mm) from the wall behind it");
    // A bar beside it is no obstruction.
    bath(
        "9' x 8'",
        "wall: A, centre: 70\"",
        "  bar: {wall: A, centre: 40\", width: 36\", depth: 3\", sill: 33\", takes: grab bar}",
    )
    .stays_silent();
    // What is measured counts before the plan, as far as both can be.
    bath("9' x 8'", "wall: A, centre: 52\"", "access: {toilet space from side wall: 43\"}")
        .finds_one()
        .says("the toilet's space is 43\" (1092 mm) from the wall at its side");
}

/// Source: 2010 ADA Standards 304.3.1 (check values AD-06), by the plan.
#[test]
fn the_plan_tells_whether_a_chair_turns() {
    let bath = |outline: &str| {
        room(&format!(
            "outline: {outline}\nfixtures: {{toilet: {{wall: A, centre: 18\", width: 15\", depth: 28\", takes: toilet}}}}\naccess: {{toilet space from side wall: 60\", toilet space from rear wall: 56\"}}"
        ))
    };
    bath("8' x 59\"")
        .finds("the turning circle is 59\" (1499 mm) across by the plan, 1\" (25.4 mm) less than the 60\" (1524 mm) that the access profile asks for")
        .points_at(&["rooms/kitchen/room.yaml:2:10"]);
    bath("8' x 60\"").stays_silent();
}
