//! What the sheet of an opening says of the way in is what the verdict is of, and what was read there counts from a floor
//! that is known.

use bookmatch::digest::Digest;
use bookmatch::ledger::{Chain, Confirmed, Fact, Line, Measured, Opened, Read, ReadFrom, Side};
use bookmatch::pipeline;
use bookmatch::source::Folder;
use bookmatch::units::{Date, Length};

use super::workshop::kitchen;
use crate::project::Project;

const FRIDGE: &str = "- {selection: Refrigerator, kind: refrigerator, tag: K-01, place: it, maker: Zel, model: Z, fit: {carton: 33\" x 72\" x 31\"}}\n";

fn room(door: &str) -> String {
    format!(
        "outline: 12' x 9'\ndoors: {{hall door: {{wall: D, at: 20\", width: {door}}}}}\nopenings: {{it: {{takes: refrigerator, width: 36\", height: 74\"}}}}\n"
    )
}

/// A carton of 31" goes through no doorway of 30", and with 5" through one of 36"; nobody wrote a way in.
#[test]
fn the_room_s_own_door_stands_there_where_it_is_the_narrow_point() {
    let narrow = kitchen(&room("30\""), FRIDGE).page("openings/kitchen/it.html");
    let row = narrow.row("Hall door");
    assert!(row.len() > 2 && row[1].contains("30″") && row[2].contains("1″"), "{row:?}\n{}", narrow.text());
    assert!(kitchen(&room("36\""), FRIDGE).page("openings/kitchen/it.html").row("Hall door").is_empty());
    // A way in that the room has of its own counts before its plan.
    let own = format!("{}way in: [{{name: yard door, width: 36\", height: 80\"}}]\n", room("30\""));
    let own = kitchen(&own, FRIDGE).page("openings/kitchen/it.html");
    assert!(own.row("Hall door").is_empty() && !own.row("Yard door").is_empty(), "{}", own.text());
}

/// What is in its mark is what is on it: another door is another sheet.
#[test]
fn the_door_is_in_the_mark_of_the_sheet_where_it_is_shown() {
    let mark = |door: &str| kitchen(&room(door), FRIDGE).page("openings/kitchen/it.html").mark();
    assert_ne!(mark("30\""), mark("29\""));
    assert_eq!(mark("36\""), mark("40\""));
}

/// Heights above a floor that is still to be laid on, by so much that nobody says: they are asked about, and the book's
/// older figures do not stand for them.
#[test]
fn heights_from_a_floor_that_nobody_knows_are_asked_about() {
    let found = |floor: &str, from: ReadFrom| {
        let room = format!(
            "name: Kitchen\noutline: 12' x 9'\n{floor}openings: {{oven: {{takes: wall oven, width: 30\", sill: 29\"}}}}\n"
        );
        let selections = "- {selection: Floor, kind: tile, on: floor, thickness: 3/8\"}\n";
        let project = Project::new()
            .file("book.yaml", "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\n")
            .file("rooms/kitchen/room.yaml", &room)
            .file("rooms/kitchen/chosen.yaml", selections)
            .file("record/ledger.jsonl", &ledger(from));
        let folder = Folder::open(&project.root()).expect("the book");
        let review = pipeline::review(&folder, Date::parse("2027-02-15").expect("a day")).expect("a book");
        let asks = review.assessment.findings.iter().filter(|one| one.rule.to_string() == "complete/datum");
        asks.map(|one| one.message.to_string()).collect::<Vec<_>>()
    };
    let asked = found("", ReadFrom::PresentFloor);
    assert_eq!(
        asked,
        [
            "heights at `oven` were read from the floor of that day, and nobody says what is still to be laid on it: they \
          are not known"
        ]
    );
    assert_eq!(found("", ReadFrom::FinishedFloor), Vec::<String>::new());
    assert_eq!(found("floor build-up: 3/4\"\n", ReadFrom::PresentFloor), Vec::<String>::new());
}

/// A ledger in which the oven's bottom was read and confirmed.
fn ledger(from: ReadFrom) -> String {
    let day = |day: &str| Date::parse(day).expect("a day");
    let read = Read {
        room: "kitchen".into(),
        opening: "oven".into(),
        what: Side::Sill,
        at: None,
        length: Length::parse("31\"").expect("a length"),
        from: Some(from),
    };
    let response = Digest::of(b"a reading");
    let facts = [
        Fact::Opened(Opened { book: "0123456789abcdef0123456789abcdef".into(), title: "Small".into() }),
        Fact::Measured(Measured {
            response,
            by: "Lorn".into(),
            on: day("2027-01-15"),
            made: None,
            readings: vec![read],
        }),
        Fact::Confirmed(Confirmed { response, by: "Ines".into(), on: day("2027-01-18") }),
    ];
    let (mut chain, mut text) = (Chain::default(), Vec::new());
    for (number, fact) in (16..).zip(facts) {
        let at = format!("2027-01-{number}T09:00:00Z").parse().expect("a moment");
        let line = Line::next(&chain, at, fact).expect("a line");
        text.extend(line.bytes().expect("its text"));
        chain.lines.push(line);
    }
    String::from_utf8(text).expect("UTF-8")
}
