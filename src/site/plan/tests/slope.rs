//! What a drawing shows besides what stands in a room.

use super::{ask, book};
use crate::units::Length;

/// A ceiling from 1250 mm at wall C to 2750 mm over 2700 mm: 2000 mm at half of the way; a window of 900 mm along a
/// slope of 3 in 5.4 covers 786.7 mm, by Pythagoras.
#[test]
fn a_slope_its_windows_and_seats_have_their_place() {
    let mm = Length::from_millimetres;
    let attic = book(
        "outline: 3600 mm x 2700 mm\nceiling: {low: 1250 mm, high: 2750 mm, rises along: width, low at: C}\nwindows: {roof light: {in: roof, wall: C, at: 1200 mm, width: 780 mm, sill: 2000 mm, height: 900 mm}}\nislands: {bench: {wall: A, at: 500 mm, away: 900 mm, size: 1200 mm x 800 mm, room side: {overhang: 300 mm, seats: 2}}}\n",
        "",
    );
    ask(&attic, |plan| {
        let slope = plan.roof_slope().unwrap();
        let (from, to) = plan.ceiling_line(&slope, mm(2000)).unwrap();
        assert_eq!(from.distance(to), mm(3600));
        assert_eq!(from.distance(plan.corners[2]).min(from.distance(plan.corners[3])), mm(1350));
        assert_eq!(plan.ceiling_line(&slope, mm(3000)), None);
        let windows = plan.roof_windows();
        let (_, corners) = windows.first().unwrap();
        let sides = [corners[0].distance(corners[1]), corners[1].distance(corners[2])];
        assert_eq!(sides.map(|side| side.nanometres() / 100_000), [7_800, 7_867]);
        let seats = plan.seat_places(&attic.rooms[0].islands[0]);
        assert_eq!(seats.len(), 2);
        assert_eq!(seats[0].distance(seats[1]), mm(600));
    });
    let level = book("outline: 3600 mm x 2700 mm\nceiling: 2500 mm\n", "");
    ask(&level, |plan| assert!(plan.roof_slope().is_none() && plan.roof_windows().is_empty()));
}
