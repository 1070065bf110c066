//! What is let into a counter, against what stands and hangs around it.

use crate::assess::rules::trial::Trial;

/// A hob hangs in its counter: what is above it is the hood, and not the oven in the cabinet under it.
#[test]
fn what_is_above_a_hob_is_not_the_oven_below_it() {
    let hob = |above: &str| {
        Trial::of("source/contradiction")
            .metric()
            .room("outline: 4 m x 3 m\nruns: {base: {wall: A, starts: 500 mm, depth: 600 mm, counter: {depth: 620 mm, height: 920 mm}, parts: [{cabinet: oven unit, width: 600 mm, holds: [oven, hob]}]}}")
            .opening("oven", "{takes: wall oven, width: 560 mm, sill: 150 mm, height: 600 mm}")
            .opening("hood", "{takes: hood, wall: A, at: 500 mm, width: 600 mm, sill: 1570 mm, height: 500 mm, depth: 400 mm}")
            .opening("hob", &format!("{{takes: cooktop, width: 560 mm, depth: 490 mm, height: 60 mm, above: {{what: hood, height: {above}, material: does not burn}}}}"))
    };
    hob("1570 mm").stays_silent();
    hob("1450 mm").finds(
        "the lower edge of what is above `hob` is 1450 mm (≈ 57 1/16\") at the opening `hob`, and 1570 mm (≈ 61 13/16\") at the opening `hood`",
    );
}

/// An island that is set out from a thing's own wall stands before the thing.
#[test]
fn the_floor_in_front_ends_at_an_island_of_the_same_wall() {
    let range = |in_front: &str, wall: &str, away: &str| {
        Trial::of("source/contradiction")
            .room(&format!(
                "outline: 12' x 14'\nruns: {{a: {{wall: A, starts: 50\", depth: 24\", parts: [{{opening: range}}]}}}}\nislands: {{island: {{wall: {wall}, at: 30\", away: {away}, size: 80\" x 36\", height: 36\"}}}}"
            ))
            .opening("range", &format!("{{takes: range, width: 36\", depth: 24\", in front: {in_front}}}"))
    };
    range("52\"", "A", "68\"").finds_one().weighs("stop");
    range("44\"", "A", "68\"").stays_silent();
    range("52\"", "C", "64\"").finds_one();
}
