//! A room turned, askew or in a mirror brings the same findings.

use bookmatch::units::Length;
use proptest::prelude::*;

use super::any_room::{Laid, rooms};
use super::{Book, example, found, text};

/// A small book around that room: things for its openings, two cooks, a door to swing.
fn book(room: &str) -> Book {
    let range = "selection: Range\nkind: range\nplace: range\nsize: {width: 29 7/8\", height: 36\", depth: 25\", depth with handle: 27\"}\nfit: {door: {drops: 20\"}, air: {right: 2\", left: 2\"}}\n";
    [
        ("book.yaml", "title: A\nclient: B\nunits: imperial\ncurrency: USD\n"),
        ("rooms/kitchen/room.yaml", room),
        ("rooms/kitchen/range.yaml", range),
    ]
    .map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec()))
    .to_vec()
}

/// Rule, weight and thing of each finding.
fn told(book: &Book) -> Vec<String> {
    let (findings, _) = found(book);
    let mut told: Vec<String> = findings
        .iter()
        .map(|finding| format!("{} {} {:?}", finding.rule, finding.severity.word(), finding.subject.name()))
        .collect();
    told.sort();
    told
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn any_room_turned_or_seen_in_a_mirror_brings_the_same_findings(room in rooms()) {
        let as_it_is = told(&book(&room.yaml(Laid::AsItIs)));
        for laid in [Laid::Turned, Laid::Askew, Laid::Mirrored] {
            let other = told(&book(&room.yaml(laid)));
            prop_assert_eq!(&other, &as_it_is, "{:?}\n{}\n{}", laid, room.yaml(Laid::AsItIs), room.yaml(laid));
        }
    }
}

/// Each room of the example is a rectangle; its corners are written out as that rectangle lies when turned.
#[test]
fn the_example_s_rooms_turned_bring_the_same_findings() {
    let as_it_is = told(&example());
    for quarters in 0..4 {
        let mut turned = example();
        let rooms = turned.iter_mut().filter(|(path, _)| path.ends_with("room.yaml"));
        let count = rooms.map(|(_, bytes)| *bytes = corners_of(&text(bytes), quarters).into_bytes()).count();
        assert_eq!(count, 4);
        assert_eq!(told(&turned), as_it_is, "turned by {quarters} quarters");
    }
}

/// The room's file with the rectangle of its outline as four corners, turned by quarters.
fn corners_of(room: &str, quarters: u32) -> String {
    let line = room.lines().find(|line| line.starts_with("outline:")).expect("an outline");
    let (long, wide) = line.trim_start_matches("outline:").split_once(" x ").expect("a rectangle");
    let nanometres = |length: &str| Length::parse(length).expect("a length").nanometres();
    let (long, wide) = (nanometres(long), nanometres(wide));
    let turned = |(x, y): (i64, i64)| (0..quarters).fold((x, y), |(x, y), _| (-y, x));
    let corners = [(0, wide), (long, wide), (long, 0), (0, 0)].map(turned);
    let millimetres = |length: i64| {
        let sign = if length < 0 { "-" } else { "" };
        format!("{sign}{}.{:06} mm", length.abs() / 1_000_000, length.abs() % 1_000_000)
    };
    let corners = corners.map(|(x, y)| format!("[{}, {}]", millimetres(x), millimetres(y)));
    room.replace(line, &format!("outline: [{}]", corners.join(", ")))
}
