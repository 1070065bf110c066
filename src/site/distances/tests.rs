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
