//! Kitchens: aisles, landings, ways, counter, seats.

use super::{ask, book, inches, thing};
use crate::book::{Book, End, IslandSide};
use crate::site::plan::{Met, Plan, StretchEnd};
use crate::units::Length;

/// A galley 10' x 8': the range across from the sink.
const GALLEY: &str = r#"
outline: 10' x 8'
ceiling: 96"
openings:
  range: {takes: range, width: 30", height: 36", depth: 25"}
  sink: {takes: sink, width: 33", depth: 20"}
  dishwasher: {takes: dishwasher, width: 24", height: 34 1/2", depth: 24"}
  fridge: {takes: refrigerator, width: 36", height: 70", depth: 28"}
runs:
  range wall:
    wall: A
    depth: 24"
    counter: {depth: 25 1/2", height: 36"}
    parts:
      - {cabinet: drawers, width: 30", drawers: 3}
      - {opening: range}
      - {cabinet: doors, width: 36", doors: 2}
      - {filler: 3"}
  shelf:
    wall: A
    above floor: 54"
    parts: [{cabinet: wall cabinet, width: 30", height: 30", doors: 2}]
  sink wall:
    wall: C
    depth: 24"
    counter: {depth: 25 1/2", height: 36"}
    parts:
      - {opening: fridge}
      - {cabinet: sink base, width: 36", doors: 2, holds: [sink]}
      - {opening: dishwasher}
      - {cabinet: drawers, width: 24", drawers: 3}
"#;

fn galley() -> Book {
    book(GALLEY, "")
}

/// 96" less two counters of 25 1/2", by hand.
#[test]
fn an_aisle_is_what_two_counters_leave_of_the_room() {
    ask(&galley(), |plan| {
        let aisles = plan.aisles();
        let narrow = aisles.iter().map(|aisle| aisle.wide).min().unwrap();
        assert_eq!(narrow, inches("42 1/2"), "before the refrigerator, 28\" deep");
        assert!(aisles.iter().all(super::super::Aisle::is_for_work));
        let dishwasher = thing(plan, "dishwasher");
        assert_eq!(plan.clear_before(dishwasher).unwrap().distance, inches("45"));
    });
}

/// Two rows at one wall that end at one line leave one aisle, not two.
#[test]
fn an_aisle_between_two_walls_is_one_however_many_rows_stand_there() {
    let second = "runs:\n  more: {wall: A, starts: 100\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: more, width: 18\", drawers: 2}]}\n";
    let more = GALLEY.replacen("runs:\n", second, 1);
    let count = |plan: &Plan<'_>| plan.aisles().len();
    let (mut one, mut two) = (0, 0);
    ask(&galley(), |plan| one = count(plan));
    ask(&book(&more, ""), |plan| two = count(plan));
    assert_eq!(one, two);
}

/// Wall C's left end, seen from inside, is at the right of the paper.
#[test]
fn landings_run_to_whatever_breaks_the_counter() {
    ask(&galley(), |plan| {
        let range = thing(plan, "range");
        let left = plan.landing(range, End::Left).unwrap();
        assert_eq!(left.counter, inches("30"));
        assert!(matches!(left.end, StretchEnd::Wall(_)));
        assert_eq!(plan.landing(range, End::Right).unwrap().counter, inches("39"));
        let sink = thing(plan, "sink");
        let left = plan.landing(sink, End::Left).unwrap();
        assert_eq!(left.counter, inches("1 1/2"), "what the base leaves to the refrigerator");
        assert!(matches!(left.end, StretchEnd::Thing(thing) if thing.name == "fridge"));
        assert_eq!(plan.landing(sink, End::Right).unwrap().counter, inches("49 1/2"));
    });
}

#[test]
fn counter_is_counted_in_stretches_with_what_hangs_over_them() {
    ask(&galley(), |plan| {
        let stretches: Vec<_> = plan.stretches().iter().map(|one| (one.length(), one.clear_above)).collect();
        let expected = [
            (inches("30"), Some(inches("18"))),
            (inches("39"), None),
            (inches("1 1/2"), None),
            (inches("49 1/2"), None),
        ];
        assert_eq!(stretches, expected);
    });
}

/// Middle of the range 45" from the left of wall A, of the sink 54" from the left of wall C, that is
/// 66" from the left of the paper: 21" apart along, 96" - 25" - 25 1/2" = 45 1/2" across.
#[test]
fn a_way_goes_straight_from_middle_to_middle() {
    ask(&galley(), |plan| {
        let way = plan.way(thing(plan, "range"), thing(plan, "sink"));
        let exact: i128 = (42 * 42 + 91 * 91) * 12_700_000_i128.pow(2);
        let grain = Length::from_nanometres(25);
        let length = i128::from(way.length.nanometres());
        assert!((length * length - exact).abs() <= 2 * length * i128::from(grain.nanometres()), "{}", way.length);
        assert!(way.crosses.is_empty());
    });
}

#[test]
fn what_stands_beside_a_thing_is_named_with_its_distance() {
    ask(&galley(), |plan| {
        let fridge = thing(plan, "fridge");
        let left = plan.beside(fridge, End::Left).unwrap();
        assert!(matches!(left.to, Met::Wall(1)), "wall B");
        assert_eq!(left.distance, Length::ZERO);
        let right = plan.beside(fridge, End::Right).unwrap();
        assert_eq!(right.to.thing().map(|thing| thing.name), Some("sink base"));
        assert_eq!(plan.to_side(fridge, End::Left).unwrap().distance, inches("18"));
    });
}

/// An island 8' x 3' 6" before the range wall of an L.
const ISLAND: &str = r#"
outline: 16' x 14'
ceiling: {low: 96", high: 124", rises along: width, low at: A}
openings:
  range: {takes: range, width: 30", height: 36", depth: 25"}
  sink: {takes: sink, width: 30", depth: 20"}
  fridge: {takes: refrigerator, width: 36", height: 70", depth: 28"}
runs:
  range wall:
    wall: A
    counter: {depth: 25 1/2", height: 36"}
    parts: [{cabinet: corner, width: 39"}, {cabinet: drawers, width: 30", drawers: 3}, {opening: range}, {cabinet: drawers, width: 30", drawers: 3}]
  left wall:
    wall: D
    from: right
    starts: 25 1/2"
    counter: {depth: 25 1/2", height: 36"}
    parts: [{filler: 3"}, {cabinet: doors, width: 30", doors: 2}, {opening: fridge}]
islands:
  island:
    wall: A
    at: 60"
    away: 67 1/2"
    size: 96" x 42"
    height: 36"
    wall side: {overhang: 1", parts: [{cabinet: drawers, width: 30", drawers: 3}, {cabinet: sink base, width: 36", doors: 2, holds: [sink]}]}
    room side: {overhang: 15", seats: 4}
lights:
  pendants: {over: island, count: 3}
"#;

#[test]
fn an_island_faces_the_range_wall_and_seats_people_behind() {
    let book = book(ISLAND, "");
    ask(&book, |plan| {
        let mut aisles: Vec<_> = plan.aisles().iter().map(|aisle| aisle.wide).collect();
        aisles.sort_unstable();
        assert_eq!(aisles[..2], [inches("32"), inches("42")], "before the refrigerator; along the range wall");
        let across = plan.clear_before(thing(plan, "range")).unwrap();
        assert_eq!(across.to.thing().map(|thing| thing.name), Some("island"));
        assert_eq!(across.distance, inches("42 1/2"), "it stands half an inch behind the counter");
        let island = &book.rooms[0].islands[0];
        let seats = plan.seats(island);
        assert_eq!(seats.len(), 1);
        assert_eq!((seats[0].1.edge, seats[0].1.overhang, seats[0].1.seats), (inches("96"), inches("15"), 4));
        let behind = plan.clear_behind(island, IslandSide::Room).unwrap();
        assert_eq!(behind.distance, inches("58 1/2"), "168 - 67 1/2 - 42");
    });
}

/// The sink's middle is 30" + 18" from the island's right end as its cook sees it, so 60" + 96" - 48" along wall A.
#[test]
fn what_stands_in_an_island_is_seen_from_its_own_side() {
    ask(&book(ISLAND, ""), |plan| {
        let sink = thing(plan, "sink");
        let middle = plan.middle_of_front(sink);
        assert_eq!((middle.x, middle.y), (inches("108"), inches("168") - inches("67 1/2")));
        assert_eq!(plan.landing(sink, End::Left).unwrap().counter, inches("33"));
    });
}

#[test]
fn counter_ends_at_an_inside_corner_and_goes_on_around_it() {
    ask(&book(ISLAND, ""), |plan| {
        let range = thing(plan, "range");
        let left = plan.landing(range, End::Left).unwrap();
        assert_eq!(left.counter, inches("69") - inches("25 1/2"));
        assert!(matches!(left.end, StretchEnd::Corner(_)));
        assert_eq!(left.around_corner, Some(inches("33")));
    });
}

#[test]
fn a_way_that_cuts_an_island_says_how_far() {
    ask(&book(ISLAND, ""), |plan| {
        let way = plan.way(thing(plan, "fridge"), thing(plan, "range"));
        assert!(way.crosses.is_empty(), "{:?}", way.crosses);
    });
}

/// Source: check values LT-07 (a slope's height follows the distance from its low side): 28" over 168".
#[test]
fn the_ceiling_rises_from_the_low_wall() {
    ask(&book(ISLAND, ""), |plan| {
        let places = &plan.hung[0].places;
        let along: Vec<_> = places.iter().map(|place| place.x).collect();
        assert_eq!(along, [inches("76"), inches("108"), inches("140")]);
        assert_eq!(plan.ceiling_at(places[0]), Some(inches("96") + inches("14.75")), "88 1/2\" from the low wall");
    });
}
