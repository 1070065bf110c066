//! Rooms of every kind: nothing panics, and a room turned or seen in a mirror answers the same.

use std::fmt::Write as _;

use proptest::prelude::*;

use crate::book::End;
use crate::plan::{Met, Plan, Plans};
use crate::read::read;
use crate::source::Folder;
use crate::units::Length;

/// A run: its wall, where it starts, whether from the left, and its parts.
type Run = (usize, i64, bool, Vec<(u8, i64)>);

/// A room in the making, in eighths of an inch.
#[derive(Clone, Debug)]
struct Room {
    corners: Vec<(i64, i64)>,
    runs: Vec<Run>,
    doors: Vec<(usize, i64, i64, bool)>,
    fixtures: Vec<(usize, i64, i64)>,
    island: Option<(usize, i64, i64, i64, i64)>,
}

/// How a room is laid on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Laid {
    AsItIs,
    Turned,
    /// Turned by the angle of a triangle of 3, 4 and 5, whose sides are whole.
    Askew,
    Mirrored,
}

fn eighths(length: i64) -> String {
    let sign = if length < 0 { "-" } else { "" };
    format!("{sign}{}.{:03}\"", length.abs() / 8, length.abs() % 8 * 125)
}

impl Room {
    fn wall_length(&self, wall: usize) -> i64 {
        let (a, b) = (self.corners[wall % self.corners.len()], self.corners[(wall + 1) % self.corners.len()]);
        (a.0 - b.0).abs() + (a.1 - b.1).abs()
    }

    fn yaml(&self, laid: Laid) -> String {
        let place = |(x, y): (i64, i64)| match laid {
            Laid::AsItIs => (x, y),
            Laid::Turned => (-y, x),
            Laid::Askew => ((4 * x - 3 * y) / 5, (3 * x + 4 * y) / 5),
            Laid::Mirrored => (-x, y),
        };
        let corners = self.corners.iter().map(|corner| place(*corner));
        let corners: Vec<_> = corners.map(|(x, y)| format!("[{}, {}]", eighths(x), eighths(y))).collect();
        let mut text = format!("name: Kitchen\nceiling: 96\"\noutline: [{}]\n", corners.join(", "));
        text += "openings:\n  range: {takes: range, width: 30\", height: 36\", depth: 25\"}\n";
        text += "  sink: {takes: sink, width: 30\", depth: 20\"}\n";
        let mirrored = laid == Laid::Mirrored;
        text + &self.runs_yaml(mirrored) + &self.doors_yaml(mirrored) + &self.fixtures_yaml(mirrored)
    }

    fn wall(&self, wall: usize) -> String {
        crate::plan::outline::letter(wall % self.corners.len()).to_string()
    }

    /// From the wall's left end, which a mirror makes its right one.
    fn at(&self, of: usize, at: i64, wide: i64, mirrored: bool) -> String {
        eighths(if mirrored { self.wall_length(of) - at - wide } else { at })
    }

    fn runs_yaml(&self, mirrored: bool) -> String {
        let mut text = String::from("runs:\n");
        for (number, (on, starts, from_left, parts)) in self.runs.iter().enumerate() {
            let (wall, from, starts) = (self.wall(*on), hand(*from_left, mirrored), eighths(*starts));
            let _ = write!(text, "  run {number}: {{wall: {wall}, from: {from}, starts: {starts}, ");
            text += "counter: {depth: 25.5\", height: 36\"}, handles: 1\", parts: [";
            for (at, (kind, width)) in parts.iter().enumerate() {
                let (width, hinge) = (eighths(*width), hand(true, mirrored));
                let name = format!("{number} {at}");
                let _ = match kind {
                    0 => write!(text, "{{cabinet: drawers {name}, width: {width}, drawers: 3}}, "),
                    1 => write!(text, "{{cabinet: door {name}, width: {width}, doors: 1, hinge: {hinge}}}, "),
                    2 => write!(text, "{{filler: {width}}}, "),
                    3 => write!(text, "{{gap: {width}}}, "),
                    4 if number == 0 && at == 0 => write!(text, "{{opening: range}}, "),
                    5 if number == 0 && at == 1 => write!(text, "{{cabinet: base, width: {width}, holds: [sink]}}, "),
                    _ => write!(text, "{{tall: pantry {name}, width: {width}, height: 84\"}}, "),
                };
            }
            text += "]}\n";
        }
        text
    }

    fn doors_yaml(&self, mirrored: bool) -> String {
        let mut text = String::from("doors:\n");
        for (number, (on, from, wide, hinge)) in self.doors.iter().enumerate() {
            let (wall, from) = (self.wall(*on), self.at(*on, *from, *wide, mirrored));
            let (wide, hinge) = (eighths(*wide), hand(*hinge, mirrored));
            let _ = writeln!(
                text,
                "  door {number}: {{wall: {wall}, at: {from}, width: {wide}, height: 80\", hinge: {hinge}, swings: in}}"
            );
        }
        text
    }

    fn fixtures_yaml(&self, mirrored: bool) -> String {
        let mut text = String::from("fixtures:\n");
        for (number, (on, centre, wide)) in self.fixtures.iter().enumerate() {
            let (wall, centre, wide, from) = (self.wall(*on), eighths(*centre), eighths(*wide), hand(true, mirrored));
            let _ = writeln!(
                text,
                "  fixture {number}: {{wall: {wall}, centre: {centre}, from: {from}, width: {wide}, depth: 20\", takes: toilet}}"
            );
        }
        if let Some((on, from, away, long, deep)) = self.island {
            let (wall, from) = (self.wall(on), self.at(on, from, long, mirrored));
            let (long, deep, away) = (eighths(long), eighths(deep), eighths(away));
            let _ = writeln!(
                text,
                "islands:\n  island: {{wall: {wall}, at: {from}, away: {away}, size: {long} x {deep}, height: 36\", room side: {{overhang: 12\", seats: 3}}}}"
            );
        }
        text
    }
}

/// The side that a thing is on, as a mirror shows it.
fn hand(left: bool, mirrored: bool) -> &'static str {
    if left == mirrored { "right" } else { "left" }
}

/// Everything that a plan answers, as words; left and right exchanged for a mirrored one.
fn answers(room: &str, mirrored: bool) -> Result<Vec<String>, String> {
    let files = [
        ("book.yaml".to_string(), b"title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n".to_vec()),
        ("rooms/kitchen/room.yaml".to_string(), room.as_bytes().to_vec()),
    ];
    let reading = read(&Folder::in_memory(files)).map_err(|error| error.to_string())?;
    if let Some(fault) = reading.findings.iter().find(|finding| finding.rule.starts_with("source/")) {
        return Err(format!("{}\n{room}", fault.message));
    }
    let plans = Plans::of(&reading.book);
    let plan = plans.room(&reading.book.rooms[0]).ok_or("no plan")?;
    let (left, right) = if mirrored { (End::Right, End::Left) } else { (End::Left, End::Right) };
    let mut told = Vec::new();
    let faults = plan.faults.iter().map(|fault| match &fault.wrong {
        crate::plan::Wrong::Overlaps { other, by } => {
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

fn lengths(from: i64, to: i64) -> impl Strategy<Value = i64> {
    (from * 8)..=(to * 8)
}

/// Rectangles and L-shaped rooms, their corners on multiples of 5" so that they can be laid askew.
fn outlines() -> impl Strategy<Value = Vec<(i64, i64)>> {
    (10..60_i64, 10..60_i64, 2..8_i64, 2..8_i64, any::<bool>(), any::<bool>()).prop_map(
        |(long, wide, a, b, bent, back)| {
            let (long, wide) = (long * 40, wide * 40);
            let (in_long, in_wide) = (long * a / 10 / 40 * 40, wide * b / 10 / 40 * 40);
            let mut corners = match bent && in_long > 0 && in_wide > 0 {
                true => vec![(0, wide), (in_long, wide), (in_long, in_wide), (long, in_wide), (long, 0), (0, 0)],
                false => vec![(0, wide), (long, wide), (long, 0), (0, 0)],
            };
            if back {
                corners.reverse();
            }
            corners
        },
    )
}

fn rooms() -> impl Strategy<Value = Room> {
    let parts = prop::collection::vec((0..7_u8, lengths(1, 40)), 0..6);
    let runs = prop::collection::vec((0..6_usize, lengths(0, 60), any::<bool>(), parts), 0..4);
    let doors = prop::collection::vec((0..6_usize, lengths(0, 90), lengths(20, 40), any::<bool>()), 0..3);
    let fixtures =
        prop::collection::vec((0..6_usize, lengths(10, 80), lengths(10, 40).prop_map(|wide| wide / 2 * 2)), 0..3);
    let island = prop::option::of((0..4_usize, lengths(20, 80), lengths(20, 80), lengths(30, 90), lengths(20, 50)));
    (outlines(), runs, doors, fixtures, island).prop_map(|(corners, runs, doors, fixtures, island)| {
        let walls = corners.len();
        let mut room = Room { corners, runs, doors, fixtures, island };
        room.runs.iter_mut().for_each(|run| run.0 %= walls);
        room.fixtures.iter_mut().for_each(|fixture| fixture.0 %= walls);
        // What would reach past a wall's left end in a mirror cannot be written there.
        room.doors.retain(|door| door.0 < walls && door.1 + door.2 <= room_wall(&room.corners, door.0));
        room.island = room.island.filter(|island| island.1 + island.3 <= room_wall(&room.corners, island.0));
        room
    })
}

fn room_wall(corners: &[(i64, i64)], wall: usize) -> i64 {
    let (a, b) = (corners[wall % corners.len()], corners[(wall + 1) % corners.len()]);
    (a.0 - b.0).abs() + (a.1 - b.1).abs()
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
