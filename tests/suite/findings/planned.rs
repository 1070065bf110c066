//! Plans of rooms of every kind: nothing panics, and a room turned or seen in a mirror answers the same.

use bookmatch::book::End;
use bookmatch::read::read;
use bookmatch::site::plan::{Met, Plan, Plans, Wrong};
use bookmatch::source::Folder;
use bookmatch::units::Length;
use proptest::prelude::*;

use super::any_room::{Laid, Room, rooms};

/// Everything that a plan answers, as words; left and right exchanged for a mirrored one.
fn answers(room: &str, mirrored: bool) -> Result<Vec<String>, String> {
    let files = [
        ("book.yaml".to_string(), b"title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n".to_vec()),
        ("rooms/kitchen/room.yaml".to_string(), room.as_bytes().to_vec()),
    ];
    let reading = read(&Folder::in_memory(files)).map_err(|error| error.to_string())?;
    if let Some(fault) = reading.findings.iter().find(|finding| finding.rule.text().starts_with("source/")) {
        return Err(format!("{}\n{room}", fault.message));
    }
    let plans = Plans::of(&reading.book);
    let plan = plans.room(&reading.book.rooms[0]).ok_or("no plan")?;
    let (left, right) = if mirrored { (End::Right, End::Left) } else { (End::Left, End::Right) };
    let mut told = Vec::new();
    let faults = plan.faults.iter().map(|fault| match &fault.wrong {
        Wrong::Overlaps { other, by } => {
            let mut pair = [fault.item.clone().unwrap_or_default(), other.clone()];
            pair.sort();
            format!("{pair:?} {by:?}")
        }
        wrong => format!("{wrong:?} {:?}", fault.item),
    });
    told.extend(faults);
    let met = |met: Met<'_, '_>| match met {
        Met::Thing(thing) => thing.name.to_string(),
        Met::Wall(_) => "wall".to_string(),
    };
    for thing in &plan.things {
        let before = plan.clear_before(thing).map(|clear| clear.distance);
        let beside = [left, right].map(|side| plan.beside(thing, side).map(|beside| (beside.distance, met(beside.to))));
        let landing =
            [left, right].map(|side| plan.landing(thing, side).map(|landing| (landing.counter, landing.around_corner)));
        told.push(format!("{}: {before:?} {beside:?} {landing:?}", thing.name));
    }
    told.extend(plan.aisles().iter().map(|aisle| format!("aisle {:?}", aisle.wide)));
    told.extend(
        plan.stretches().iter().map(|one| format!("{} {:?} {:?}", one.row.of.name(), one.length(), one.clear_above)),
    );
    told.extend(clashes(plan));
    told.sort();
    Ok(told)
}

/// Which things the sweeps of others meet.
fn clashes(plan: &Plan<'_>) -> Vec<String> {
    let doors = plan.holes.iter().flat_map(|hole| plan.door_sweeps(hole).into_iter().map(|sweep| (hole.name(), sweep)));
    let things =
        plan.things.iter().flat_map(|thing| plan.sweeps(thing, None).into_iter().map(|sweep| (thing.name, sweep)));
    let sweeps: Vec<_> = doors.chain(things).collect();
    let mut met = Vec::new();
    for (name, sweep) in &sweeps {
        let struck = plan.things.iter().filter(|other| other.name != *name && sweep.shape.overlaps(&other.footprint()));
        met.extend(struck.map(|other| format!("{name} strikes {}", other.name)));
    }
    met
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn a_room_turned_or_seen_in_a_mirror_answers_the_same(room in rooms()) {
        let as_it_is = answers(&room.yaml(Laid::AsItIs), false);
        prop_assert!(as_it_is.is_ok(), "{:?}", as_it_is);
        for laid in [Laid::Turned, Laid::Askew, Laid::Mirrored] {
            let other = answers(&room.yaml(laid), laid == Laid::Mirrored);
            prop_assert_eq!(&other, &as_it_is, "{:?}\n{}\n{}", laid, room.yaml(Laid::AsItIs), room.yaml(laid));
        }
    }

    #[test]
    fn no_outline_and_no_run_is_too_odd_to_be_answered(
        corners in prop::collection::vec((-400..400_i64, -400..400_i64), 0..9),
        room in rooms(),
    ) {
        let odd = Room { corners: if corners.is_empty() { vec![(0, 0)] } else { corners }, doors: vec![], island: None, ..room };
        let text = odd.yaml(Laid::AsItIs);
        let _ = answers(&text, false);
    }
}

/// What met a row's counter over its sink went on with one part of it, and in a mirror with the other.
#[test]
fn a_counter_that_a_sink_parts_goes_on_the_same_from_both_ends() {
    let room = Room {
        corners: vec![(0, 400), (440, 400), (440, 0), (0, 0)],
        runs: vec![(0, 14, true, vec![(0, 152), (5, 241)]), (0, 94, false, vec![(3, 155), (0, 51), (6, 8)])],
        doors: vec![],
        fixtures: vec![],
        island: None,
    };
    assert_eq!(answers(&room.yaml(Laid::Mirrored), true), answers(&room.yaml(Laid::AsItIs), false));
}

/// The longest length that a book may hold, and nothing at all.
#[test]
fn the_longest_and_the_shortest_lengths_are_answered_too() {
    let far = Length::LONGEST.to_string();
    for size in ["0\"", "1/64\"", far.as_str()] {
        let room = format!(
            "name: Kitchen\noutline: [[0\", 0\"], [{far}, 0\"], [{far}, {far}], [0\", {far}]]\nruns:\n  run: {{wall: A, starts: {size}, counter: {{depth: {size}, height: {size}}}, parts: [{{cabinet: one, width: {size}, drawers: 1, doors: 4000000000}}, {{tall: two, width: {far}}}]}}\nislands: {{island: {{wall: B, at: {size}, away: {size}, size: 1\" x 1\", room side: {{overhang: {far}}}}}}}\n"
        );
        assert!(answers(&room, false).is_ok());
    }
}
