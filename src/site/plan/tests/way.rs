//! The widest way to a place, and the greatest circle of floor.

use super::{ask, book, inches};
use crate::units::Length;

/// Arithmetic: a room of 10' by 8' whose island leaves 30" to the row and 26" at its ends.
#[test]
fn the_widest_way_is_as_wide_as_its_narrowest_gap() {
    let room = "outline: 10' x 8'\ndoors: {hall: {wall: C, at: 42\", width: 36\"}}\nruns: {back: {wall: A, depth: 24\", parts: [{cabinet: a, width: 44\"}, {opening: cold}, {cabinet: b, width: 40\"}]}}\nislands: {island: {wall: A, at: 26\", away: 54\", size: 68\" x 12\"}}\nopenings: {cold: {takes: refrigerator, width: 36\"}}";
    let narrow = |needs: &str| {
        ask(&book(room, ""), |plan| {
            let cold = plan.things.iter().find(|thing| thing.opening.is_some()).unwrap();
            plan.narrow_on_the_way(cold, inches(needs)).map(|found| found.wide)
        })
    };
    assert_eq!(narrow("26"), None);
    assert_eq!(narrow("27"), Some(inches("26")));
}

/// Source: geometry: between a wall and a row across from it, and in a corner that a square stands in, whose corner is
/// `r√2` from the middle of a circle that touches it.
#[test]
fn the_greatest_circle_touches_what_is_nearest() {
    let of = |room: &str| ask(&book(room, ""), |plan| plan.greatest_circle(inches("60"), &|_| false)).unwrap();
    assert_eq!(of("outline: 10' x 5'"), inches("60"));
    assert_eq!(of("outline: 10' x 59\""), inches("59"));
    let row = "runs: {r: {wall: A, depth: 21\", parts: [{cabinet: r, width: 120\"}]}}";
    assert_eq!(of(&format!("outline: 10' x 80\"\n{row}")), inches("59"));
    assert_eq!(of(&format!("outline: 10' x 81\"\n{row}")), inches("60"));
    // 70" square with 20" square in one corner: r and r/√2 are 50" together, so that 2r is 58.58".
    let corner = "runs: {r: {wall: A, depth: 20\", parts: [{cabinet: r, width: 20\"}]}}";
    assert_eq!(of(&format!("outline: 70\" x 70\"\n{corner}")), Length::from_sixty_fourths(58 * 64 + 32));
}
