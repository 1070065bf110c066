//! What is chosen against what the plan sets out.

use crate::assess::rules::trial::Trial;

/// What is larger than the plan sets it out must have its place, and is told; smaller leaves what is kept for it.
#[test]
fn what_is_chosen_is_no_larger_than_its_fixture() {
    let tub = |plan: &str, size: &str| {
        Trial::of("source/contradiction")
            .room(&format!("outline: 9' x 7'\nfixtures: {{tub: {{wall: A, centre: 40\", {plan}, selection: Tub}}}}"))
            .selection("selection: Tub\nkind: bathtub", &format!("size: {{{size}}}"))
    };
    tub("width: 60\", depth: 30\"", "width: 66\", depth: 30\"")
        .finds("the width of `tub` is 66\" (1676 mm) at `Tub`, and 60\" (1524 mm) at the fixture `tub`")
        .weighs("stop")
        .points_at(&["rooms/kitchen/room.yaml:3:47"]);
    tub("width: 60\", depth: 30\"", "width: 54\", depth: 30\"").stays_silent();
    tub("width: 60\", depth: 30\"", "width: 60 1/8\", depth: 30\"").stays_silent();
    tub("width: 60\", depth: 30\"", "width: 60\", depth: 32\"").finds_one();
    // Its end stands to the wall.
    tub("width: 30\", depth: 60\"", "width: 60\", depth: 30\"").stays_silent();
    tub("width: 30\", depth: 60\"", "width: 66\", depth: 30\"").finds_one();
}
