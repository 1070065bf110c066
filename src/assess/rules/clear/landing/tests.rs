//! Tests of landings.

use crate::assess::rules::trial::{Found, Trial};

fn opening(takes: &str, landing: &str) -> Trial {
    Trial::of("clear/landing").opening("it", &format!("{{takes: {takes}, landing: {{{landing}}}}}"))
}

fn one(found: Found) {
    found.counts(1).weighs("query");
}

/// Source: check values KP-20: 24 + 18 passes, 24 + 17 fails, 30 + 12 fails.
#[test]
fn a_sink_has_twenty_four_inches_on_one_side_and_eighteen_on_the_other() {
    opening("sink", "left: 24\", right: 18\"").stays_silent();
    opening("sink", "left: 18\", right: 24\"").stays_silent();
    opening("sink", "left: 24\", right: 17\"")
        .finds("the counter at the right of the opening `it` is 17\" (432 mm) long, 1\" (25.4 mm) less than the 18\" (457 mm) advised")
        .weighs("query");
    one(opening("sink", "left: 30\", right: 12\"").run());
}

/// Source: check values KP-21: 3 to the corner and 21 around it pass, 3 and 20 fail.
#[test]
fn around_a_corner_the_return_counts() {
    opening("sink", "left: 24\", right: 3\", to corner: 3\", return: 21\"").stays_silent();
    one(opening("sink", "left: 24\", right: 3\", to corner: 3\", return: 20\"").run());
}

/// Source: check values KP-26: a second sink with 3 + 18 passes, with 0 + 24 fails.
#[test]
fn a_second_sink_needs_less() {
    opening("sink", "second sink: true, left: 3\", right: 18\"").stays_silent();
    one(opening("sink", "second sink: true, left: 0\", right: 24\"").run());
}

/// Source: check values KP-28; top check value 8: 12 + 15 passes, 12 + 14 fails.
#[test]
fn cooking_has_twelve_inches_and_fifteen() {
    for takes in ["cooktop", "range"] {
        opening(takes, "left: 12\", right: 15\"").stays_silent();
        one(opening(takes, "left: 12\", right: 14\"").run());
    }
}

/// Source: check values KP-29; top check value 8: on an island 8.5 behind fails.
#[test]
fn on_an_island_nine_inches_are_behind_it() {
    opening("cooktop", "behind: 9\"").stays_silent();
    opening("cooktop", "behind: 8 1/2\"")
        .finds("the counter behind the opening `it` is 8 1/2\" (216 mm) deep, 1/2\" (12.7 mm) less than the 9\" (229 mm) advised");
}

/// What can't be read is told where it stands; what follows from it waits until it is known.
#[test]
fn a_hinge_that_cannot_be_read_changes_nothing_here() {
    let fridge = |hinge: &str| {
        opening("refrigerator", "left: 6\", right: 12\"")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: it", &format!("hinge: {hinge}"))
            .of_any_yaml()
    };
    fridge("at the wall").stays_silent();
    fridge("left")
        .finds("no counter of 15\" (381 mm) stands near enough to the opening `it`: 12\" (305 mm) at the right");
    for left in ["L", "LH", "left hand", "left-hand side", "on the left"] {
        fridge(left).finds_one().says("12\" (305 mm) at the right");
    }
}

/// Source: check values KP-27: beside it 12, across 15 at 48 passes, at 49 fails.
#[test]
fn a_refrigerator_s_counter_is_at_its_handle_or_across() {
    let fridge = |hinge: &str, landing: &str| {
        opening("refrigerator", landing)
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: it", &format!("hinge: {hinge}"))
    };
    fridge("left", "right: 12\", across: 15\", across at: 48\"").stays_silent();
    fridge("left", "right: 12\", across: 15\", across at: 49\"")
        .finds("no counter of 15\" (381 mm) stands near enough to the opening `it`: 12\" (305 mm) at the right; 15\" (381 mm) across, 49\" (1245 mm) away")
        .weighs("query");
    fridge("left", "left: 15\", right: 12\"").finds_one();
    fridge("right", "left: 15\", right: 12\"").stays_silent();
    fridge("both", "left: 15\", right: 12\"").stays_silent();
    fridge("left", "right: 12\", above: 24\"").stays_silent();
    fridge("left", "left: 12\"").stays_silent();
}

/// Counter as long as one needs, and another needs it as well: what is told says why it is too short.
#[test]
fn counter_that_another_needs_too_is_told_as_shared() {
    let between = |length: &str, other: &str| {
        Trial::of("clear/landing")
            .opening("it", &format!("{{takes: refrigerator, landing: {{left: {length}}}}}"))
            .opening("other", &format!("{{takes: refrigerator, landing: {{above: 24\", {other}}}}}"))
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: it", "hinge: right")
    };
    between("{counter: 15\", to: other}", "right: {counter: 15\", to: it}")
        .finds("no counter of 15\" (381 mm) stands near enough to the opening `it`: 15\" (381 mm) at the left, which `other` needs too");
    between("15\"", "right: 15\"").stays_silent();
}

/// Source: check values KP-35: 14 fails.
#[test]
fn a_microwave_has_fifteen_inches_near_it() {
    one(opening("microwave", "left: 14\", right: 14\"").run());
    opening("microwave", "left: 14\", right: 14\", above: 15\"").stays_silent();
}

/// Source: check values KP-36: 15 across at 48 passes where nobody walks between.
#[test]
fn an_oven_s_counter_may_be_across_where_nobody_walks() {
    let beside = "left: 0\", right: 12\"";
    opening("wall oven", &format!("{beside}, across: 15\", across at: 48\"")).stays_silent();
    one(opening("wall oven", &format!("{beside}, across: 15\", across at: 48\", across a walkway: true")).run());
    opening("wall oven", "left: 15\", right: 0\"").stays_silent();
}

/// Two openings with one counter between them.
fn between(one: &str, other: &str, one_side: &str, length: &str) -> Trial {
    Trial::of("clear/landing")
        .opening(
            "one",
            &format!("{{takes: {one}, landing: {{left: {one_side}, right: {{counter: {length}, to: other}}}}}}"),
        )
        .opening("other", &format!("{{takes: {other}}}"))
}

/// Source: check values KP-37; top check value 4: 24 and 15 share 36, 15 and 15 share 27, 36 and 15 share 48.
#[test]
fn two_that_share_a_counter_need_the_longer_and_a_foot_more() {
    between("sink", "refrigerator", "18\"", "36\"").stays_silent();
    between("sink", "refrigerator", "18\"", "35\"")
        .finds("the counter at the right of the opening `one` is 35\" (889 mm) long, 1\" (25.4 mm) less than the 36\" (914 mm) advised for it and `other` together");
    between("wall oven", "refrigerator", "0\"", "27\"").stays_silent();
    between("wall oven", "refrigerator", "0\"", "26\"").finds_one();
    let prepared =
        |length: &str| opening("cooktop", &format!("left: 12\", right: {{counter: {length}, preparation: true}}"));
    prepared("48\"").stays_silent();
    prepared("47\"").finds_one();
}

#[test]
fn a_counter_that_both_ends_describe_is_told_once() {
    Trial::of("clear/landing")
        .opening("sink", "{takes: sink, landing: {left: 24\", right: {counter: 20\", to: range}}}")
        .opening("range", "{takes: range, landing: {left: {counter: 20\", to: sink}, right: 15\"}}")
        .finds_one();
}

#[test]
fn a_side_that_nobody_wrote_down_is_not_judged() {
    opening("cooktop", "left: 12\"").stays_silent();
    one(opening("cooktop", "left: 11\"").run());
}

/// The guidelines are those of kitchens: nobody sets down pots beside the sink of a laundry.
#[test]
fn a_laundry_s_sink_is_no_kitchen_s() {
    let sink = || opening("sink", "left: 6\", right: 6\"");
    sink().finds_one();
    sink().opening("washer", "{takes: washer}").stays_silent();
    sink().opening("washer", "{takes: washer}").opening("hob", "{takes: cooktop}").finds_one();
    let called = |name: &str| sink().selection(&format!("selection: {name}\nkind: sink\nplace: it"), "");
    called("Laundry sink").stays_silent();
    called("Boot room sink").stays_silent();
    called("Prep sink").finds_one();
}
