//! Rooms of every kind, for properties that must hold of all.

use std::fmt::Write as _;

use proptest::prelude::*;

/// A run: its wall, where it starts, whether from the left, and its parts.
pub type Run = (usize, i64, bool, Vec<(u8, i64)>);

/// A room in the making, in eighths of an inch.
#[derive(Clone, Debug)]
pub struct Room {
    pub corners: Vec<(i64, i64)>,
    pub runs: Vec<Run>,
    pub doors: Vec<(usize, i64, i64, bool)>,
    pub fixtures: Vec<(usize, i64, i64)>,
    pub island: Option<(usize, i64, i64, i64, i64)>,
}

/// How a room is laid on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Laid {
    /// As it was made.
    AsItIs,
    /// By a right angle.
    Turned,
    /// Turned by the angle of a triangle of 3, 4 and 5, whose sides are whole.
    Askew,
    /// Seen in a mirror.
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

    /// Its `room.yaml`, as it lies on the paper.
    pub fn yaml(&self, laid: Laid) -> String {
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
        char::from(b'A' + u8::try_from(wall % self.corners.len()).expect("few walls")).to_string()
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

pub fn rooms() -> impl Strategy<Value = Room> {
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
