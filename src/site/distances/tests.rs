//! What the plan answers where nobody measured, and that a measured figure counts before it.

use crate::assess::rules::trial::Trial;

/// A galley between two runs, its walls so far apart.
fn galley(rule: &'static str, wide: &str, more: &str) -> Trial {
    let run = |name: &str, wall: &str| {
        format!(
            "  {name}: {{wall: {wall}, counter: {{depth: 25\", height: 36\"}}, parts: [{{cabinet: {name} base, width: 48\", depth: 24\"}}, {{opening: {name}}}]}}"
        )
    };
    Trial::of(rule)
        .room(&format!("outline: 10' x {wide}\ncooks: 1\n{more}"))
        .room(&format!("runs:\n{}\n{}", run("range", "A"), run("sink", "C")))
        .opening("range", "{takes: range, width: 30\", depth: 25\"}")
        .opening("sink", "{takes: sink, width: 30\", depth: 25\"}")
}

/// Source: check values KP-09: 42 between two runs of 25 in passes at 92, 41 at 91 does not.
#[test]
fn an_aisle_follows_from_the_plan() {
    galley("clear/work-aisle", "91\"", "").finds_one();
    galley("clear/work-aisle", "92\"", "").stays_silent();
}

#[test]
fn what_was_measured_counts_before_the_plan() {
    galley("clear/work-aisle", "92\"", "clearances: {work aisle: 40\"}").finds_one();
    galley("clear/work-aisle", "91\"", "clearances: {work aisle: 42\"}").stays_silent();
}

/// Source: check values BP-21, BP-22: 16 from the wall passes the code and misses the advice; 18 meets both.
#[test]
fn a_toilet_s_distance_to_the_wall_follows_from_its_centreline() {
    let toilet = |centre: &str| {
        Trial::of("clear/toilet").room(&format!(
            "outline: 8' x 6'\nfixtures: {{toilet: {{wall: A, centre: {centre}, width: 20\", depth: 28\", takes: toilet}}}}"
        ))
    };
    toilet("16\"").finds_one().weighs("note");
    toilet("18\"").stays_silent();
}

/// A bath of 11' by 7' 6" whose ceiling rises from wall C, with a tub at wall B whose foot is near it.
fn attic(rule: &'static str, low: &str, written: &str) -> Trial {
    Trial::of(rule).room(&format!(
        "outline: 11' x 7' 6\"\nceiling: {{low: {low}, high: 8', rises along: width, low at: C}}\nfixtures: {{bath: {{wall: B, centre: 30\", width: 60\", depth: 32\", takes: bathtub}}}}\nclearances: {{{written}}}"
    ))
}

#[test]
fn a_headroom_is_no_more_than_the_ceiling_leaves() {
    attic("source/contradiction", "60\"", "headroom at tub: 99\"")
        .finds_one()
        .says("the headroom at the tub of")
        .says("under `clearances`")
        .weighs("query");
    // The lesser counts, whoever says it.
    let level = |ceiling: &str, written: &str| {
        let room = format!("ceiling: {ceiling}\nclearances: {{headroom at tub: {written}}}");
        Trial::of("clear/headroom").room(&room).of_any_yaml()
    };
    level("78\"", "84\"").finds_one();
    level("84\"", "79\"").finds_one();
    for written in ["80\"", "82\"", "84\""] {
        let at = format!("headroom at tub: {written}");
        // Somewhere under a slope it was measured.
        attic("source/contradiction", "60\"", &at).stays_silent();
        attic("clear/headroom", "60\"", &at).stays_silent();
    }
}

#[test]
fn nothing_is_higher_than_a_room_s_ceiling_wherever_it_stands() {
    let level = |rule, written: &str| Trial::of(rule).room(&format!("ceiling: 2200 mm\nclearances: {{{written}}}"));
    for at in ["shower", "toilet", "basin", "tub"] {
        level("source/contradiction", &format!("headroom at {at}: 2400 mm")).finds_one().weighs("query");
        level("source/contradiction", &format!("headroom at {at}: 2200 mm")).stays_silent();
    }
    for (higher, as_high) in [
        ("shower head: 2250 mm", "shower head: 2100 mm"),
        ("shower head: 2210 mm", "shower head: 2200 mm"),
        ("shower wall covering: 2300 mm", "shower wall covering: 2220 mm"),
    ] {
        level("source/contradiction", higher).finds_one().says("more than the ceiling over it").weighs("query");
        level("source/contradiction", as_high).stays_silent();
    }
    Trial::of("source/contradiction").room("clearances: {shower head: 2250 mm}").stays_silent();
}

/// One stands under its head, which hangs where the ceiling is high.
#[test]
fn in_a_shower_under_a_slope_its_highest_place_is_asked() {
    let shower = |wall: &str, written: &str| {
        Trial::of("source/contradiction").room(&format!(
            "outline: 3600 mm x 2700 mm\nceiling: {{low: 1250 mm, high: 2750 mm, rises along: width, low at: C}}\nfixtures: {{place: {{wall: {wall}, centre: 1800 mm, width: 900 mm, depth: 900 mm, takes: shower}}}}\nclearances: {{{written}}}"
        ))
    };
    shower("C", "headroom at shower: 2100 mm").finds_one();
    shower("C", "shower head: 2000 mm").finds_one();
    shower("C", "headroom at shower: 1750 mm").stays_silent();
    shower("A", "headroom at shower: 2700 mm, shower head: 2100 mm").stays_silent();
}
