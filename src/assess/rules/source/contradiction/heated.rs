//! A floor with heating below it, against what was to be laid.

use crate::assess::rules::trial::Trial;

/// What makes the floor too thick is named, and pointed at.
#[test]
fn the_heating_that_does_not_lie_in_the_bed_is_named() {
    let floor = |bed: &str, mat: &str| {
        Trial::of("source/contradiction")
            .room("floor build-up: 12 mm")
            .selection("selection: Floor tile\nkind: tile", &format!("thickness: 9 mm{bed}"))
            .selection("selection: Mat\nkind: floor heating", &format!("thickness: {mat}"))
    };
    floor("", "4 mm")
        .finds("the thickness with the heating below it of `Floor tile` is ≈ 1/2\" (13 mm), more than the floor build-up of ≈ 1/2\" (12 mm) in the room")
        .points_at(&["rooms/kitchen/room.yaml:2:17"]);
    floor("\nlaid: {bed: 3 mm}", "4 mm").finds_one().says("the thickness with the heating in its bed of `Floor tile`");
    floor("", "3 mm").stays_silent();
    floor("\nlaid: {bed: 3 mm}", "3 mm").stays_silent();
}
