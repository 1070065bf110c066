//! Doors and drawers against one another, in plans.

use crate::assess::rules::trial::Trial;

fn galley(width: &str, shift: &str) -> Trial {
    Trial::of("fit/clash")
        .room(&format!(
            "outline: 12' x {width}\nruns:\n  left: {{wall: A, parts: [{{gap: 30\"}}, {{opening: range}}]}}\n  right: {{wall: C, from: right, parts: [{{gap: {shift}}}, {{opening: dishwasher}}]}}"
        ))
        .opening("range", "{takes: range, width: 30\", depth: 24\", height: 36\"}")
        .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
        .selection("selection: Range\nkind: range\nplace: range", "size: {width: 30\", depth: 24\"}\nfit: {door: {drops: 21\"}}")
        .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 26\"}}")
}

/// Source: check values KP-02 (no two appliance doors may foul each other: overlap of swept areas 0).
#[test]
fn two_doors_that_drop_towards_each_other_are_told() {
    galley("90\"", "33\"")
        .finds("the door of `dishwasher` and the door of `range` sweep the same floor: they reach 26\" (660 mm) and 21\" (533 mm)")
        .weighs("query");
    galley("95\"", "33\"").stays_silent();
    galley("90\"", "60\"").stays_silent();
}

/// Source: check values KP-02 (a dishwasher's door, 24" open, across the arc of an entry door).
#[test]
fn a_door_of_the_room_keeps_clear_of_an_appliance_s_door() {
    let room = |hinge: &str| {
        Trial::of("fit/clash")
            .room(&format!(
                "outline: 12' x 8'\ndoors: {{yard door: {{wall: B, at: 26\", width: 32\", height: 80\", hinge: {hinge}, swings: in}}}}\nruns: {{back: {{wall: A, from: right, starts: 12\", parts: [{{opening: dishwasher}}]}}}}"
            ))
            .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 24\"}}")
    };
    room("left").finds_one();
    room("right").finds_one();
    let far = Trial::of("fit/clash")
        .room("outline: 12' x 8'\ndoors: {yard door: {wall: B, at: 62\", width: 32\", height: 80\", hinge: right, swings: in}}\nruns: {back: {wall: A, from: right, starts: 12\", parts: [{opening: dishwasher}]}}")
        .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
        .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "fit: {door: {drops: 24\"}}");
    far.stays_silent();
}

#[test]
fn doors_one_above_the_other_pass() {
    let machine = |takes: &str, sill: &str| {
        format!("{{takes: {takes}, wall: A, at: 30\", sill: {sill}, width: 29\", height: 39\", depth: 30\"}}")
    };
    Trial::of("fit/clash")
        .room("outline: 9' x 7'")
        .opening("washer", &machine("washer", "0\""))
        .opening("dryer", &machine("dryer", "39\""))
        .selection("selection: Washer\nkind: washer\nplace: washer\nhinge: left", "fit: {door: {swings: 19\"}}")
        .selection("selection: Dryer\nkind: dryer\nplace: dryer\nhinge: left", "fit: {door: {swings: 19\"}}")
        .stays_silent();
}

/// Source: trade reports F-09 (two inches deeper, and the dishwasher around the corner no longer opens).
#[test]
fn a_deeper_refrigerator_around_the_corner_keeps_a_dishwasher_shut() {
    let corner = |depth: &str, handle: &str| {
        Trial::of("fit/clash")
            .room("outline: 12' x 10'\nruns:\n  back: {wall: A, from: right, starts: 32\", parts: [{opening: dishwasher}]}\n  side: {wall: B, starts: 30\", parts: [{opening: fridge}]}")
            .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
            .opening("fridge", "{takes: refrigerator, width: 36\", depth: 29\", height: 70\"}")
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 26\"}}")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", &format!("size: {{width: 35 3/4\", depth: {depth}, depth with handle: {handle}}}"))
    };
    corner("29\"", "31 1/2\"").stays_silent();
    corner("31\"", "33 1/2\"")
        .finds("the door of `dishwasher` reaches 26\" (660 mm) and strikes `fridge` after 6\" (152 mm), 20\" (508 mm) too soon");
}

/// Source: check values KP-02. An island 8' x 3' whose counter's edge is 44" before the wall, set out from
/// each of the four: what opens towards it from wall A meets it all the same.
#[test]
fn an_island_is_met_from_whichever_wall_it_is_set_out() {
    let room = |island: &str| {
        Trial::of("fit/clash")
            .room(&format!(
                "outline: 16' x 12'\nruns: {{back: {{wall: A, parts: [{{gap: 60\"}}, {{opening: dishwasher}}]}}}}\nislands: {{island: {{{island}, height: 36\"}}}}"
            ))
            .opening("dishwasher", "{takes: dishwasher, width: 24\", depth: 24\", height: 34 1/2\"}")
            .selection("selection: Dishwasher\nkind: dishwasher\nplace: dishwasher", "size: {width: 24\", depth: 24\"}\nfit: {door: {drops: 26\"}}")
    };
    for (near, far) in [
        ("wall: A, at: 48\", away: 44\", size: 96\" x 36\"", "wall: A, at: 48\", away: 50\", size: 96\" x 36\""),
        ("wall: C, at: 48\", away: 64\", size: 96\" x 36\"", "wall: C, at: 48\", away: 58\", size: 96\" x 36\""),
        ("wall: D, at: 64\", away: 48\", size: 36\" x 96\"", "wall: D, at: 58\", away: 48\", size: 36\" x 96\""),
        (
            "wall: B, at: 44\", away: 48\", size: 96\" x 36\", turned: true",
            "wall: B, at: 50\", away: 48\", size: 96\" x 36\", turned: true",
        ),
    ] {
        room(near).finds("the door of `dishwasher` reaches 26\" (660 mm) and strikes `island` after 20\" (508 mm), 6\" (152 mm) too soon");
        room(far).stays_silent();
    }
}

/// Source: check values HW-06 (a drawer beside a refrigerator's handle around the corner).
#[test]
fn a_drawer_strikes_the_handle_around_the_corner() {
    let corner = |filler: &str| {
        Trial::of("fit/clash")
            .room(&format!("outline: 12' x 10'\nruns:\n  back: {{wall: A, from: right, starts: 27\", parts: [{{filler: {filler}}}, {{cabinet: drawers, width: 24\", drawers: 3}}]}}\n  side: {{wall: B, starts: 30\", parts: [{{opening: fridge}}]}}"))
            .opening("fridge", "{takes: refrigerator, width: 36\", depth: 27\", height: 70\"}")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", "size: {width: 35 3/4\", depth: 27\", depth with handle: 30 1/4\"}")
    };
    corner("3\"").finds_one();
    corner("3 3/8\"").stays_silent();
}

/// A cabinet that is told narrower than what it holds is told as such: what it holds opens no further to its sides.
#[test]
fn a_width_that_is_contradicted_makes_no_clash_of_the_neighbours() {
    let towers = |width: &str| {
        Trial::of("fit/clash")
            .of_any_yaml()
            .room(&format!(
                "outline: 16' x 10'\nruns: {{towers: {{wall: A, starts: 20\", depth: 24\", parts: [{{tall: cold, width: 24\", height: 84\", doors: 1, hinge: left, holds: [cold]}}, {{tall: hot, width: {width}, height: 84\", holds: [oven]}}]}}}}"
            ))
            .opening("cold", "{takes: refrigerator, width: 22\", height: 70\", depth: 22\", sill: 4\"}")
            .opening("oven", "{takes: wall oven, width: 22\", height: 23\", depth: 22\", sill: 30\"}")
            .selection("selection: Cold\nkind: panel refrigerator\nplace: cold\nhinge: left", "size: {width: 22\", depth: 21\"}\nfit: {door: {swings: 24\"}}")
            .selection("selection: Oven\nkind: wall oven\nplace: oven", "size: {width: 23\", depth: 21\"}\nfit: {door: {drops: 18\"}}")
    };
    towers("24\"").stays_silent();
    towers("15\"").stays_silent();
}
