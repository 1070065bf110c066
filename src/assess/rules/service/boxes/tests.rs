//! Switches and outlets where they can't be, each with a twin that can.

use crate::assess::rules::trial::Trial;

/// A room of 11' by 7' 6" under a ceiling that rises from wall C.
fn room(more: &str) -> Trial {
    Trial::of("service/boxes").room(&format!(
        "outline: 11' x 7' 6\"\nceiling: {{low: 6' 3\", high: 8', rises along: width, low at: C}}\n{more}"
    ))
}

fn each(place: &str) -> [String; 2] {
    ["switches", "outlets"].map(|what| format!("{what}: {{box: {{{place}}}}}"))
}

const DOOR: &str =
    "doors: {hall door: {wall: D, at: 28\", width: 34\", height: 80\", hinge: left, swings: in, casing: 2 1/2\"}}\n";
const TUB: &str = "fixtures: {tub: {takes: bathtub, wall: B, centre: 30\", width: 60\", depth: 32\", height: 18\"}}\n";
const WINDOW: &str = "windows: {yard: {wall: A, at: 40\", width: 30\", sill: 36\", height: 40\"}}\n";

#[test]
fn none_is_in_a_tub_or_a_shower() {
    for place in [
        "wall: B, centre: 30\", height: 46\"",
        "wall: B, centre: 12\", height: 60\"",
        "wall: A, centre: 120\", height: 46\"",
    ] {
        for set in each(place) {
            room(&format!("{TUB}{set}"))
                .finds_one()
                .says("`box` is set in the wall of `tub`, within reach of whoever is in it")
                .weighs("stop")
                .cautions();
        }
    }
    for place in [
        "wall: B, centre: 70\", height: 46\"",
        "wall: A, centre: 80\", height: 46\"",
        "wall: A, centre: 120\", height: 93\"",
    ] {
        for set in each(place) {
            room(&format!("{TUB}{set}")).stays_silent();
        }
    }
    let shower = "fixtures: {shower: {takes: shower, wall: B, centre: 20\", width: 36\", depth: 36\"}}\n";
    room(&format!("{shower}outlets: {{box: {{wall: B, centre: 20\", height: 40\"}}}}")).finds_one();
    // One that is set out as a fixture is one too.
    room("fixtures: {tub: {takes: bathtub, wall: B, centre: 30\", width: 60\", depth: 32\", height: 18\"}, shaver: {takes: outlet, wall: B, centre: 30\", sill: 46\"}}")
        .finds_one();
}

#[test]
fn none_is_in_a_door_a_window_or_the_trim_around_it() {
    for set in each("wall: D, centre: 45\", height: 16\"") {
        room(&format!("{DOOR}{set}")).finds_one().says("`box` is set in the wall where `hall door` is").weighs("stop");
    }
    for set in each("wall: D, centre: 64\", height: 16\"") {
        room(&format!("{DOOR}{set}")).finds_one().says("in the casing of `hall door`").weighs("query");
    }
    for place in ["wall: D, centre: 70\", height: 16\"", "wall: D, centre: 45\", height: 84\""] {
        for set in each(place) {
            room(&format!("{DOOR}{set}")).stays_silent();
        }
    }
    room(&format!("{WINDOW}switches: {{box: {{wall: A, centre: 55\", height: 46\"}}}}")).finds_one().weighs("stop");
    room(&format!("{WINDOW}outlets: {{box: {{wall: A, centre: 55\", height: 16\"}}}}")).stays_silent();
}

#[test]
fn none_is_above_the_ceiling() {
    for set in each("wall: C, centre: 40\", height: 78\"") {
        room(&set).finds_one().says("`box` is set 6'-6\" (1981 mm) high, where the ceiling is 6'-3\"").weighs("stop");
    }
    for set in each("wall: A, centre: 40\", height: 78\"") {
        room(&set).stays_silent();
    }
}

/// An outlet may well be behind what is plugged in there.
#[test]
fn a_switch_is_behind_nothing() {
    let row = |parts: &str, set: &str| {
        room(&format!(
            "runs: {{a: {{wall: A, depth: 24\", counter: {{depth: 25\", height: 36\"}}, parts: [{parts}]}}}}\n{set}"
        ))
        .opening("cold", "{takes: refrigerator, width: 36\", height: 70\"}")
    };
    let tall = "{tall: pantry, width: 36\", height: 90\"}";
    let cold = "{opening: cold, width: 36\"}";
    let base = "{cabinet: base, width: 36\", height: 34\"}";
    for set in each("wall: A, centre: 18\", height: 46\"") {
        row(tall, &set).finds_one().says("`box` is set behind `pantry`, and can't be reached").weighs("query");
        row(base, &set).stays_silent();
    }
    let [switch, outlet] = each("wall: A, centre: 18\", height: 46\"");
    row(cold, &switch).finds_one();
    row(cold, &outlet).stays_silent();
}

#[test]
fn none_is_in_an_upstand() {
    let row = |splash: &str, height: &str| {
        room(&format!(
            "runs: {{a: {{wall: A, depth: 24\", counter: {{depth: 25\", height: 36\"}}, parts: [{{cabinet: base, width: 36\", height: 34\"}}]}}}}\noutlets: {{box: {{wall: A, centre: 18\", height: {height}}}}}"
        ))
        .selection("selection: Top\nkind: counter", &format!("top: {{lies on: [a], splash: {{thickness: 3/4\", height: {splash}}}}}"))
    };
    row("4\"", "38\"").finds_one().says("in the upstand behind the counter of `a`").weighs("query");
    row("4\"", "44\"").stays_silent();
    row("18\"", "44\"").stays_silent();
    row("4\"", "20\"").stays_silent();
}

#[test]
fn two_are_not_in_one_place() {
    let two = |second: &str| {
        room(&format!("outlets: {{one: {{wall: A, centre: 30\", height: 44\"}}, other: {{wall: A, {second}}}}}"))
    };
    two("centre: 30\", height: 44\"").finds_one().says("`other` and `one` are set in one place").weighs("query");
    two("centre: 31\", height: 44 1/2\"").finds_one();
    two("centre: 30\", height: 16\"").stays_silent();
    two("centre: 33\", height: 44\"").stays_silent();
    room("outlets: {one: {wall: A, centre: 30\", height: 44\"}}\nswitches: {other: {wall: A, centre: 30\", height: 44\"}}")
        .finds_one();
}

#[test]
fn a_switch_is_at_the_jamb_that_the_door_opens_from() {
    let switch = |what: &str, place: &str, swings: &str| {
        room(&format!("{}{what}: {{box: {{{place}, height: 46\"}}}}", DOOR.replace("swings: in", swings)))
    };
    for place in ["beside: hall door, centre: 6\"", "wall: D, centre: 22\""] {
        switch("switches", place, "swings: in").finds_one().says("is set on the side that `hall door` hangs on");
        switch("switches", place, "swings: out").stays_silent();
        switch("switches", place, "slides: true").stays_silent();
        switch("outlets", place, "swings: in").stays_silent();
    }
    switch("switches", "beside: hall door, from: right, centre: 6\"", "swings: in").stays_silent();
    switch("switches", "beside: hall door, centre: 20\"", "swings: in").stays_silent();
}
