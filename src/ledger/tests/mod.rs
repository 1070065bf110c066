//! A ledger as it is written, and what happens to it: edits, lost and moved lines, torn ends.

mod chains;
mod facts;
mod orders;

use super::*;
use crate::digest::Digest;

/// A moment of the ledgers below.
fn moment(second: u32) -> Moment {
    format!("2027-01-16T19:22:{second:02}Z").parse().unwrap()
}

/// One fact of each kind, the opening first, with letters that take several bytes.
fn facts() -> Vec<Fact> {
    [of_decisions(), of_goods()].concat()
}

/// What came, and what was sent.
fn of_goods() -> Vec<Fact> {
    let (on, mark) = ("2027-01-18".parse().unwrap(), Digest::of(b"a mark"));
    vec![
        Fact::Received(received(mark)),
        Fact::Sent(Sent { issue: 1, to: "Téo Varrick".into(), role: Some("site lead".into()), on }),
        Fact::Acknowledged(Acknowledged {
            response: Digest::of(b"an acknowledgement"),
            issue: 1,
            by: "Téo Varrick".into(),
            on,
            made: moment(4),
        }),
    ]
}

fn a_reading(room: &str, opening: &str) -> Read {
    let length = crate::units::Length::from_millimetres(762);
    let at = Some(ReadingSpot::Floor);
    Read { room: room.into(), opening: opening.into(), what: Side::Width, at, length, from: None }
}

fn of_decisions() -> Vec<Fact> {
    let on = "2027-01-18".parse().unwrap();
    let mark = Digest::of(b"a mark");
    let (room, item) = (String::from("kitchen"), String::from("range"));
    let asked = ItemDecision {
        room: room.clone(),
        item: item.clone(),
        mark,
        decision: Decision::ApprovedAsNoted,
        option: Some("steel".into()),
        note: Some("hinge on the left – “as drawn”".into()),
    };
    let refused = Refused { room: room.clone(), item: "hood".into(), why: "the mark is no longer issued".into() };
    let decided = Decided {
        response: Digest::of(b"a response"),
        issue: 1,
        who: "ada".into(),
        by: Attestation::PrivateLink,
        key: Some("0badcafe".into()),
        how: None,
        given: None,
        made: moment(1),
        device: Some(Device { id: "0".repeat(32), turn: 3 }),
        signed: Some(Signed { name: "Ada Ökonedo".into(), statement: "I have seen it.".into(), drawn: true }),
        items: vec![asked],
        refused: vec![refused],
    };
    let read = a_reading(&room, &item);
    let issued = Issued { number: 1, purpose: Purpose::Approval, on, sha256: Digest::of(b"an issue"), items: 45 };
    vec![
        Fact::Opened(Opened { book: "0123456789abcdef0123456789abcdef".into(), title: "Alder Court".into() }),
        Fact::Issued(issued),
        Fact::Invited(Invited { who: "ada".into(), key: "0badcafe".into(), on }),
        Fact::Decided(decided),
        Fact::Confirmed(Confirmed { response: Digest::of(b"a response"), by: "Ines Tarrow".into(), on }),
        Fact::Met(Met { room, item, mark, response: None, by: "Ines Tarrow".into(), note: "hinge moved".into(), on }),
        Fact::Measured(Measured {
            response: Digest::of(b"readings"),
            by: "Bo".into(),
            on,
            made: Some(moment(2)),
            readings: vec![read],
        }),
        Fact::TakenBack(TakenBack { response: Digest::of(b"readings"), by: "Ines Tarrow".into(), note: None, on }),
        Fact::NotTheirs(NotTheirs { response: Digest::of(b"a response"), by: "Ines Tarrow".into(), note: None, on }),
        Fact::Withdrawn(Withdrawn { who: "ada".into(), key: "0badcafe".into(), on }),
    ]
}

/// A range that came in another finish, and was set aside.
fn received(mark: Digest) -> Received {
    let line = |of, came, words: Option<&str>| LineReceived { of, came, words: words.map(str::to_owned) };
    let item = ItemReceived {
        room: "kitchen".into(),
        item: "range".into(),
        option: Some("steel".into()),
        mark,
        lines: vec![line(Looked::Model, Came::Approved, None), line(Looked::Finish, Came::Different, Some("“black”"))],
        kept: Some(Kept::SetAside),
        note: Some("box torn".into()),
        photos: vec![PhotoTaken {
            name: "IMG 4.jpg".into(),
            sha256: Some(Digest::of(b"a photograph")),
            bytes: Some(12),
        }],
    };
    Received {
        response: Digest::of(b"a delivery"),
        delivery: Delivery { from: "Oren & Daughters".into(), load: None, note: "4711".into() },
        by: "Bo".into(),
        on: "2027-01-18".parse().unwrap(),
        made: moment(3),
        device: Some(Device { id: "0".repeat(32), turn: 4 }),
        items: vec![item],
    }
}

/// The lines of a ledger of these facts, each with its line break.
fn lines_of(facts: Vec<Fact>) -> Vec<Vec<u8>> {
    let mut chain = Chain::default();
    for (second, fact) in (0..).zip(facts) {
        let line = Line::next(&chain, moment(second), fact).unwrap();
        chain.lines.push(line);
    }
    chain.lines.iter().map(|line| line.bytes().unwrap()).collect()
}

fn lines() -> Vec<Vec<u8>> {
    lines_of(facts())
}
