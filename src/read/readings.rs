//! Readings of a tape that the record holds, in place of the book's own where they are newer.
//!
//! Anybody can hand readings in: they count once the designer has confirmed them, and no longer once they
//! are taken back. Those that say that they were made after they came in never count.

mod put;

use crate::book::{Book, Opening, Uncounted, WaitingReadings};
use crate::ledger::{self, Fact, Line, Moment, TOLERANCE, Vouched};
use crate::units::Date;

use put::put;

/// Puts every reading on record that counts into its opening, in the order in which they were made. One that
/// is older than the book's own measurement changes nothing and is told as that; one of an opening that the book no
/// longer has changes nothing.
pub fn apply(book: &mut Book) {
    let (mut counting, mut waiting) = sorted(&book.record.lines);
    counting.sort_by_key(|(measured, line)| (measured.on, measured.made, *line));
    for (fact, _) in counting {
        let mut older: Option<(Date, Vec<ledger::Read>)> = None;
        for room in &mut book.rooms {
            let to_lay = room.still_to_lay();
            for opening in &mut room.openings {
                let here = |read: &&ledger::Read| read.room == room.folder && read.opening == opening.name.value;
                let reads: Vec<&ledger::Read> = fact.readings.iter().filter(here).collect();
                match measured_after(opening, &fact) {
                    _ if reads.is_empty() => {}
                    None => put(opening, to_lay, &fact, &reads),
                    Some(day) => {
                        let (newest, all) = older.get_or_insert_with(|| (day, vec![]));
                        *newest = day.max(*newest);
                        all.extend(reads.into_iter().cloned());
                    }
                }
            }
        }
        waiting.extend(older.map(|(day, readings)| WaitingReadings {
            measured: ledger::Measured { readings, ..fact },
            because: Uncounted::Older(day),
        }));
    }
    book.record.waiting = waiting;
}

/// The readings that count, each with its line, and those that wait.
fn sorted(lines: &[Line]) -> (Vec<(ledger::Measured, u32)>, Vec<WaitingReadings>) {
    let vouched = Vouched::of(lines);
    let (mut counting, mut waiting) = (Vec::new(), Vec::new());
    for line in lines {
        let Some(measured) = measured(&line.fact).filter(|one| !vouched.is_back(&one.response)) else { continue };
        let came = is_ahead(measured, line.at).then(|| line.at.day()).flatten();
        if came.is_none() && vouched.is_confirmed(&measured.response) {
            counting.push((measured.clone(), line.number));
        } else {
            let because = came.map_or(Uncounted::Unconfirmed, Uncounted::Ahead);
            waiting.push(WaitingReadings { measured: measured.clone(), because });
        }
    }
    (counting, waiting)
}

/// Whether readings say that they were made after they came in. Older lines say a day alone, which may be
/// one more by the time zone.
fn is_ahead(measured: &ledger::Measured, at: Moment) -> bool {
    let day_after = |on: Date| at.day().is_some_and(|day| day.days_until(on) > 1);
    measured.made.map_or(day_after(measured.on), |made| made > at.plus_seconds(TOLERANCE) || day_after(measured.on))
}

fn measured(fact: &Fact) -> Option<&ledger::Measured> {
    if let Fact::Measured(measured) = fact { Some(measured) } else { None }
}

/// The day on which the opening was measured, where that is after those readings.
fn measured_after(opening: &Opening, fact: &ledger::Measured) -> Option<Date> {
    opening.measured.get()?.on.get().copied().filter(|on| *on > fact.on)
}

#[cfg(test)]
pub(super) mod tests {
    use crate::book::{Book, MeasuredFigures, MeasuredHow, Measurement, Uncounted};
    use crate::digest::Digest;
    use crate::ledger::{Chain, Confirmed, Fact, Line, Measured, Opened, Read, ReadingSpot, Side, TakenBack};
    use crate::source::Folder;
    use crate::units::Length;

    /// A book whose range was measured on a day, with a ledger of these facts, each a day after the one
    /// before, from 16 January on.
    fn book(measured_on: &str, facts: Vec<Fact>) -> Book {
        let room = format!(
            "name: Kitchen\nopenings:\n  range: {{takes: range, width: 30\", height: 36\", measured: {{on: {measured_on}, by: Teo Varrick}}}}\n"
        );
        book_of(&room, facts)
    }

    /// The same with a room as given.
    pub fn book_of(room: &str, facts: Vec<Fact>) -> Book {
        let opened = Opened { book: "0123456789abcdef0123456789abcdef".into(), title: "Trial".into() };
        let mut chain = Chain::default();
        let mut ledger = Vec::new();
        for (day, fact) in (16..).zip([vec![Fact::Opened(opened)], facts].concat()) {
            let line = Line::next(&chain, format!("2027-01-{day}T09:00:00Z").parse().unwrap(), fact).unwrap();
            ledger.extend(line.bytes().unwrap());
            chain.lines.push(line);
        }
        let files: [(&str, Vec<u8>); 3] = [
            ("book.yaml", b"title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n".to_vec()),
            ("rooms/kitchen/room.yaml", room.as_bytes().to_vec()),
            ("record/ledger.jsonl", ledger),
        ];
        crate::read::read(&Folder::in_memory(files)).unwrap().book
    }

    /// Source: trade reports F-04, F-27: from one plumb line, min(right) − max(left).
    #[test]
    fn plumb_readings_and_diagonals_on_record_count_as_the_book_s_own_do() {
        let mut told = first("range");
        let one = told.readings[0].clone();
        let at =
            |what, at, length: &str| Read { what, at: Some(at), length: Length::parse(length).unwrap(), ..one.clone() };
        told.readings.extend([
            at(Side::PlumbLeft, ReadingSpot::Floor, "1\""),
            at(Side::PlumbRight, ReadingSpot::Floor, "31\""),
            at(Side::PlumbLeft, ReadingSpot::Top, "1 1/4\""),
            at(Side::PlumbRight, ReadingSpot::Top, "30 7/8\""),
            at(Side::PlumbLeft, ReadingSpot::Middle, "9\""),
            at(Side::Diagonal, ReadingSpot::Left, "46 7/8\""),
            at(Side::Diagonal, ReadingSpot::Right, "47\""),
        ]);
        let confirmed = confirmed(&told);
        let book = book("2027-01-11", vec![Fact::Measured(told), confirmed]);
        let opening = &book.rooms[0].openings[0];
        assert_eq!(opening.governing_width(), Some(Length::parse("29 5/8\"").unwrap()));
        assert_eq!(opening.diagonals.get().unwrap().1, Length::parse("47\"").unwrap());
    }

    fn read(opening: &str, on: &str, width: &str) -> Measured {
        let at = |spot, length: &str| Read {
            room: "kitchen".into(),
            opening: opening.into(),
            what: Side::Width,
            at: Some(spot),
            length: Length::parse(length).unwrap(),
            from: None,
        };
        Measured {
            response: Digest::of(format!("{opening} {on} {width}").as_bytes()),
            by: "Lorn Tazewick".into(),
            on: on.parse().unwrap(),
            made: None,
            readings: vec![at(ReadingSpot::Floor, "30\""), at(ReadingSpot::Top, width)],
        }
    }

    /// What was read on 15 January: 29 7/8" at the top.
    pub fn first(opening: &str) -> Measured {
        read(opening, "2027-01-15", "29 7/8\"")
    }

    pub fn confirmed(of: &Measured) -> Fact {
        let on = "2027-01-18".parse().unwrap();
        Fact::Confirmed(Confirmed { response: of.response, by: "Ines Tarrow".into(), on })
    }

    fn back(of: &Measured) -> Fact {
        let on = "2027-01-19".parse().unwrap();
        Fact::TakenBack(TakenBack { response: of.response, by: "Ines Tarrow".into(), note: None, on })
    }

    fn width(book: &Book) -> Length {
        book.rooms[0].openings[0].governing_width().unwrap()
    }

    fn inches(text: &str) -> Length {
        Length::parse(text).unwrap()
    }

    #[test]
    fn a_newer_reading_takes_the_place_of_the_book_s_once_it_is_confirmed_and_both_are_kept() {
        let one = first("range");
        let book = book("2027-01-11", vec![Fact::Measured(one.clone()), confirmed(&one)]);
        let opening = &book.rooms[0].openings[0];
        assert_eq!(width(&book), inches("29 7/8\""));
        assert_eq!(opening.height.get().unwrap().least().unwrap().value, inches("36\""));
        assert_eq!(opening.measured.get().unwrap().by.get().unwrap(), "Lorn Tazewick");
        let before = opening.as_written.as_ref().unwrap();
        assert_eq!(before.width.get().unwrap().least().unwrap().value, inches("30\""));
        assert!(book.record.waiting.is_empty());
    }

    #[test]
    fn a_reading_that_nobody_confirmed_waits_and_one_that_was_taken_back_is_gone() {
        let one = first("range");
        let waits = book("2027-01-11", vec![Fact::Measured(one.clone())]);
        assert_eq!((width(&waits), waits.record.waiting.len()), (inches("30\""), 1));
        for facts in [
            vec![Fact::Measured(one.clone()), back(&one)],
            vec![Fact::Measured(one.clone()), confirmed(&one), back(&one)],
        ] {
            let gone = book("2027-01-11", facts);
            assert_eq!((width(&gone), gone.record.waiting.len()), (inches("30\""), 0));
        }
    }

    #[test]
    fn a_reading_from_a_day_to_come_never_counts_and_silences_no_right_one() {
        let (far, right) = (read("range", "2099-01-01", "20\""), first("range"));
        let facts =
            vec![Fact::Measured(far.clone()), confirmed(&far), Fact::Measured(right.clone()), confirmed(&right)];
        let book = book("2027-01-11", facts);
        assert_eq!(width(&book), inches("29 7/8\""));
        assert_eq!(book.record.waiting[0].because, Uncounted::Ahead("2027-01-17".parse().unwrap()));
    }

    #[test]
    fn of_two_readings_the_one_that_was_made_last_counts_whichever_came_last() {
        let (old, new) = (read("range", "2027-01-13", "29 1/2\""), read("range", "2027-01-15", "29 7/8\""));
        for (one, other) in [(&old, &new), (&new, &old)] {
            let facts =
                vec![Fact::Measured(one.clone()), Fact::Measured(other.clone()), confirmed(one), confirmed(other)];
            assert_eq!(width(&book("2027-01-11", facts)), inches("29 7/8\""));
        }
    }

    #[test]
    fn an_older_reading_and_one_of_another_opening_change_nothing_and_the_older_one_is_told() {
        let older = Uncounted::Older("2027-01-19".parse().unwrap());
        for (measured_on, opening, told) in [("2027-01-19", "range", vec![older]), ("2027-01-11", "hood", vec![])] {
            let one = first(opening);
            let book = book(measured_on, vec![Fact::Measured(one.clone()), confirmed(&one)]);
            assert_eq!(width(&book), inches("30\""));
            assert!(book.rooms[0].openings[0].as_written.is_none());
            assert_eq!(book.record.waiting.iter().map(|waits| waits.because).collect::<Vec<_>>(), told);
        }
    }

    /// Each figure is known by who read it last; what nobody read again stays with whom the book names.
    #[test]
    fn every_figure_has_who_read_it_and_the_day() {
        let by = |who: &'static str, on: &str| MeasuredHow::By {
            who: Some(who),
            on: Some(on.parse().unwrap()),
            again: None,
        };
        let of = |of, how| Measurement { of, how };
        let one = first("range");
        let mut other = read("range", "2027-01-16", "29\"");
        other.by = "Noor Tembley".into();
        for read in &mut other.readings {
            read.what = Side::Height;
        }
        let alone = book("2027-01-11", vec![Fact::Measured(one.clone()), confirmed(&one)]);
        let width = MeasuredFigures::These(vec![Side::Width]);
        let teo = || of(MeasuredFigures::Rest, by("Teo Varrick", "2027-01-11"));
        let lorn = || by("Lorn Tazewick", "2027-01-15");
        assert_eq!(alone.rooms[0].openings[0].measurements(), [of(width.clone(), lorn()), teo()]);
        let facts =
            vec![Fact::Measured(one.clone()), confirmed(&one), Fact::Measured(other.clone()), confirmed(&other)];
        let both = book("2027-01-11", facts);
        let height = of(MeasuredFigures::These(vec![Side::Height]), by("Noor Tembley", "2027-01-16"));
        assert_eq!(
            both.rooms[0].openings[0].measurements(),
            [height, of(width, lorn())],
            "nothing of the book's is left"
        );
        let room = "name: Kitchen\nopenings:\n  range: {takes: range, width: 30\", height: 36\"}\n";
        let planned = book_of(room, vec![Fact::Measured(one.clone()), confirmed(&one)]);
        let opening = &planned.rooms[0].openings[0];
        assert_eq!(opening.measurements()[1], of(MeasuredFigures::Rest, MeasuredHow::Planned));
        assert!(opening.is_as_planned(), "its height is as planned");
    }
}
