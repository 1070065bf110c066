//! Readings of a tape that the record holds, in place of the book's own where they are newer.

use crate::book::{AsWritten, Book, Measured, Opening, Plumb, Readings, Slot};
use crate::ledger::{self, Fact, Side};
use crate::source::{Span, Spanned};
use crate::units::Length;

/// Puts every reading on record into its opening, in the record's order. One that is older than the
/// book's own measurement, or of an opening that the book no longer has, changes nothing.
pub fn apply(book: &mut Book) {
    let measured: Vec<ledger::Measured> = book.record.facts().filter_map(measured).cloned().collect();
    for fact in measured {
        for room in &mut book.rooms {
            for opening in &mut room.openings {
                let here = |read: &&ledger::Read| read.room == room.folder && read.opening == opening.name.value;
                let reads: Vec<&ledger::Read> = fact.readings.iter().filter(here).collect();
                if !reads.is_empty() && !is_newer(opening, &fact) {
                    set(opening, &fact, &reads);
                }
            }
        }
    }
}

fn measured(fact: &Fact) -> Option<&ledger::Measured> {
    if let Fact::Measured(measured) = fact { Some(measured) } else { None }
}

/// Whether the opening was measured after that.
fn is_newer(opening: &Opening, fact: &ledger::Measured) -> bool {
    opening.measured.get().and_then(|measured| measured.on.get()).is_some_and(|on| *on > fact.on)
}

fn set(opening: &mut Opening, fact: &ledger::Measured, reads: &[&ledger::Read]) {
    let span = opening.span;
    if opening.as_written.is_none() {
        opening.as_written = Some(AsWritten {
            width: opening.width.clone(),
            height: opening.height.clone(),
            depth: opening.depth.clone(),
            diagonals: opening.diagonals.clone(),
            plumb: opening.plumb.clone(),
            measured: opening.measured.clone(),
        });
    }
    for (side, slot) in
        [(Side::Width, &mut opening.width), (Side::Height, &mut opening.height), (Side::Depth, &mut opening.depth)]
    {
        let lengths = reads.iter().filter(|read| read.what == side).map(|read| given(read.length, span));
        let lengths: Vec<_> = lengths.collect();
        if !lengths.is_empty() {
            *slot = Slot::Given(given(Readings(lengths), span));
        }
    }
    if let [one, other] = lengths(reads, Side::Diagonal)[..] {
        opening.diagonals = Slot::Given(given((one, other), span));
    }
    if let Some(plumb) = plumb(reads) {
        opening.plumb = Slot::Given(given(plumb, span));
    }
    let who = Measured {
        on: Slot::Given(given(fact.on, span)),
        by: Slot::Given(given(fact.by.clone(), span)),
        with: Slot::Absent,
    };
    opening.measured = Slot::Given(given(who, span));
}

fn lengths(reads: &[&ledger::Read], side: Side) -> Vec<Length> {
    reads.iter().filter(|read| read.what == side).map(|read| read.length).collect()
}

/// Both distances from the plumb line, at each height where both were read.
fn plumb(reads: &[&ledger::Read]) -> Option<Plumb> {
    let of = |side| reads.iter().filter(move |read| read.what == side);
    let beside =
        |left: &&ledger::Read| of(Side::PlumbRight).find(|right| right.at == left.at).map(|right| right.length);
    let both = of(Side::PlumbLeft).filter_map(|left| Some((left.length, beside(left)?)));
    let (left, right): (Vec<Length>, Vec<Length>) = both.unzip();
    (!left.is_empty()).then_some(Plumb { left, right })
}

fn given<T>(value: T, span: Span) -> Spanned<T> {
    Spanned { value, span }
}

#[cfg(test)]
mod tests {
    use crate::book::Book;
    use crate::digest::Digest;
    use crate::ledger::{Chain, Fact, Line, Measured, Opened, Read, Side, Spot};
    use crate::source::Folder;
    use crate::units::Length;

    fn book(measured_on: &str, read: Measured) -> Book {
        let opened = Opened { book: "0123456789abcdef0123456789abcdef".into(), title: "Trial".into() };
        let mut chain = Chain::default();
        let mut ledger = Vec::new();
        for fact in [Fact::Opened(opened), Fact::Measured(read)] {
            let line = Line::next(&chain, "2027-01-18T09:00:00Z".parse().unwrap(), fact).unwrap();
            ledger.extend(line.bytes().unwrap());
            chain.lines.push(line);
        }
        let room = format!(
            "name: Kitchen\nopenings:\n  range: {{takes: range, width: 30\", height: 36\", measured: {{on: {measured_on}, by: Teo Varrick}}}}\n"
        );
        let files: [(&str, Vec<u8>); 3] = [
            ("book.yaml", b"title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n".to_vec()),
            ("rooms/kitchen/room.yaml", room.into_bytes()),
            ("record/ledger.jsonl", ledger),
        ];
        crate::read::read(&Folder::in_memory(files)).unwrap().book
    }

    /// Source: trade reports F-04, F-27: from one plumb line, min(right) − max(left).
    #[test]
    fn plumb_readings_and_diagonals_on_record_count_as_the_book_s_own_do() {
        let mut told = read("range");
        let one = told.readings[0].clone();
        let at =
            |what, at, length: &str| Read { what, at: Some(at), length: Length::parse(length).unwrap(), ..one.clone() };
        told.readings.extend([
            at(Side::PlumbLeft, Spot::Floor, "1\""),
            at(Side::PlumbRight, Spot::Floor, "31\""),
            at(Side::PlumbLeft, Spot::Top, "1 1/4\""),
            at(Side::PlumbRight, Spot::Top, "30 7/8\""),
            at(Side::PlumbLeft, Spot::Middle, "9\""),
            at(Side::Diagonal, Spot::Left, "46 7/8\""),
            at(Side::Diagonal, Spot::Right, "47\""),
        ]);
        let book = book("2027-01-11", told);
        let opening = &book.rooms[0].openings[0];
        assert_eq!(opening.governing_width(), Some(Length::parse("29 5/8\"").unwrap()));
        assert_eq!(opening.diagonals.get().unwrap().1, Length::parse("47\"").unwrap());
    }

    fn read(opening: &str) -> Measured {
        let at = |spot, length: &str| Read {
            room: "kitchen".into(),
            opening: opening.into(),
            what: Side::Width,
            at: Some(spot),
            length: Length::parse(length).unwrap(),
        };
        Measured {
            response: Digest::of(b"a response"),
            by: "Lorn Tazewick".into(),
            on: "2027-01-18".parse().unwrap(),
            readings: vec![at(Spot::Floor, "30\""), at(Spot::Top, "29 7/8\"")],
        }
    }

    #[test]
    fn a_newer_reading_takes_the_place_of_the_book_s_and_both_are_kept() {
        let book = book("2027-01-11", read("range"));
        let opening = &book.rooms[0].openings[0];
        assert_eq!(opening.governing_width(), Some(Length::parse("29 7/8\"").unwrap()));
        assert_eq!(opening.height.get().unwrap().least().unwrap().value, Length::parse("36\"").unwrap());
        assert_eq!(opening.measured.get().unwrap().by.get().unwrap(), "Lorn Tazewick");
        let before = opening.as_written.as_ref().unwrap();
        assert_eq!(before.width.get().unwrap().least().unwrap().value, Length::parse("30\"").unwrap());
    }

    #[test]
    fn an_older_reading_and_one_of_another_opening_change_nothing() {
        for book in [book("2027-01-19", read("range")), book("2027-01-11", read("hood"))] {
            let opening = &book.rooms[0].openings[0];
            assert_eq!(opening.governing_width(), Some(Length::parse("30\"").unwrap()));
            assert!(opening.as_written.is_none());
        }
    }
}
