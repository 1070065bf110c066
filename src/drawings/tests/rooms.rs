//! Invented rooms from above, for the tests and for the eye.

use super::fault_of_lettering;
use super::gallery::len;
use super::read_back::named;
use crate::drawings::room::{Aisle, Form, Hole, Light, PlanPoint, RoomPlan, Slope, Thing, Wall};
use crate::drawings::scale::{Scale, units};
use crate::drawings::{Paper, room_plan};
use crate::language::Words;
use crate::units::System;
use crate::units::length::Length;
use proptest::prelude::*;
use roxmltree::Document;

fn at(x: i64, y: i64) -> PlanPoint {
    PlanPoint { x: Length::from_inches(x), y: Length::from_inches(y) }
}

fn box_of(x: i64, y: i64, wide: i64, deep: i64) -> [PlanPoint; 4] {
    [at(x, y), at(x + wide, y), at(x + wide, y - deep), at(x, y - deep)]
}

fn wall(letter: &str, from: (i64, i64), to: (i64, i64)) -> Wall {
    let (dx, dy) = ((to.0 - from.0).signum(), (to.1 - from.1).signum());
    let behind = |(x, y): (i64, i64)| at(x - 4 * dy, y + 4 * dx);
    Wall {
        letter: letter.into(),
        face: (at(from.0, from.1), at(to.0, to.1)),
        body: vec![behind(from), behind(to), at(to.0, to.1), at(from.0, from.1)],
        length: Length::from_inches((to.0 - from.0).abs() + (to.1 - from.1).abs()),
        is_open: false,
    }
}

fn thing(name: &str, tag: Option<&str>, corners: [PlanPoint; 4], form: Form) -> Thing {
    Thing { name: name.into(), tag: tag.map(Into::into), corners: corners.to_vec(), form }
}

fn room(id: &str, corners: &[(i64, i64)], things: Vec<Thing>) -> RoomPlan {
    let ends = corners.iter().zip(corners.iter().cycle().skip(1));
    let walls = ends.zip(["A", "B", "C", "D", "E", "F"]).map(|((from, to), letter)| wall(letter, *from, *to));
    RoomPlan {
        id: id.into(),
        name: "Scullery".into(),
        walls: walls.collect(),
        holes: vec![],
        things,
        counter_edges: vec![],
        aisles: vec![],
        seats: vec![],
        lights: vec![],
        slope: None,
        units: System::Imperial,
        words: Words::default(),
    }
}

/// Every room of the gallery.
pub fn rooms() -> Vec<RoomPlan> {
    let mut galley = room(
        "galley",
        &[(0, 93), (182, 93), (182, 0), (0, 0)],
        vec![
            thing("pots", None, box_of(34, 93, 36, 24), Form::Below),
            thing("range", Some("K-04"), box_of(100, 93, 30, 25), Form::Chosen),
            thing("hood", Some("K-05"), box_of(100, 93, 30, 20), Form::Above),
            thing("larder", None, box_of(150, 93, 24, 24), Form::Tall),
        ],
    );
    galley.holes = vec![Hole {
        corners: box_of(40, 0, 30, 4),
        is_window: false,
        sweeps: vec![vec![at(40, 0), at(70, 0), at(61, 21), at(40, 30)]],
    }];
    galley.counter_edges = vec![(at(34, 67), at(100, 67))];
    galley.aisles = vec![Aisle { ends: (at(115, 68), at(115, 27)), wide: len("41\"") }];
    let mut attic = room("attic", &[(0, 108), (144, 108), (144, 0), (0, 0)], vec![]);
    attic.seats = vec![at(40, 60), at(64, 60)];
    attic.lights = vec![Light { at: at(90, 70), radius: len("6\""), name: "lantern".into(), tag: Some("B-02".into()) }];
    attic.slope = Some(Slope {
        wall: "C".into(),
        low: (len("50\""), at(72, 0)),
        high: (len("108\""), at(72, 108)),
        stands: Some((len("80\""), at(0, 56), at(144, 56))),
    });
    let bent = [(0, 144), (96, 144), (96, 84), (180, 84), (180, 0), (0, 0)];
    vec![galley, attic, room("bent", &bent, vec![]), room("open", &bent[..3], vec![])]
}

#[test]
fn a_thing_lies_on_the_drawing_where_it_stands_in_the_room_to_scale() {
    let galley = rooms().remove(0);
    let svg = room_plan(&galley, Paper::Desk);
    let document = Document::parse(&svg).expect("XML");
    let scale = Scale::of_a_room(Paper::Desk, System::Imperial, Length::from_inches(182), Length::from_inches(93));
    let place = |x: i64, y: i64| {
        format!("{} {}", units(scale.of(Length::from_inches(x))), units(scale.of(Length::from_inches(93 - y))))
    };
    let drawn: Vec<&str> = named(&document, "thing").into_iter().filter_map(|node| node.attribute("d")).collect();
    let pots = format!("M{}L{}L{}L{}Z", place(34, 93), place(70, 93), place(70, 69), place(34, 69));
    assert!(drawn.contains(&pots.as_str()), "{pots} in {drawn:?}");
    assert_eq!(drawn.len(), 4);
}

#[test]
fn a_slope_seats_and_lights_are_drawn_and_told() {
    for paper in [Paper::Desk, Paper::Phone] {
        let svg = room_plan(&rooms().remove(1), paper);
        assert_eq!(svg.matches("<circle").count(), 3 + usize::from(svg.contains("B-02")) - 1, "{svg}");
        for told in ["lantern", "2 seats", "The ceiling rises from 4 feet 2 inches at wall C to 9 feet"] {
            assert!(svg.contains(told), "{told}");
        }
        assert_eq!(fault_of_lettering(&svg), None);
        assert!(svg.contains("ceiling"));
    }
}

#[test]
fn the_description_tells_walls_things_and_aisles() {
    let svg = room_plan(&rooms().remove(0), Paper::Phone);
    for told in ["A is 15 feet 2 inches long", "pots, range, hood, larder", "41 inches are clear"] {
        assert!(svg.contains(told), "{told}");
    }
}

proptest! {
    #[test]
    fn no_label_of_any_room_lies_on_another_or_leaves_the_drawing(
        (long, wide) in (30..600_i64, 30..600_i64),
        things in prop::collection::vec((0..600_i64, 0..600_i64, 1..90_i64, 1..40_i64, any::<bool>()), 0..14),
        aisles in prop::collection::vec((0..600_i64, 0..300_i64, 1..90_i64), 0..4),
    ) {
        let things = things.into_iter().enumerate().map(|(number, (x, y, w, d, tagged))| {
            let tag = format!("K-{number:02}");
            thing("a cabinet with plates", tagged.then_some(tag.as_str()), box_of(x, y, w, d), Form::Below)
        });
        let mut what = room("any", &[(0, wide), (long, wide), (long, 0), (0, 0)], things.collect());
        what.aisles = aisles
            .into_iter()
            .map(|(x, y, wide)| Aisle { ends: (at(x, y + wide), at(x, y)), wide: Length::from_inches(wide) })
            .collect();
        for paper in [Paper::Desk, Paper::Phone] {
            prop_assert_eq!(fault_of_lettering(&room_plan(&what, paper)), None);
        }
    }
}
