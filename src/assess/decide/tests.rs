//! Tests of the last days to decide.

use super::*;
use crate::assess::rules::trial::Trial;

/// Cabinets ordered by 11 January 2027, and a refrigerator of three weeks that is needed in June.
fn kitchen(fridge: &str, cabinets: &str) -> Book {
    Trial::of("complete/undecided")
        .opening("tall", "{takes: refrigerator, width: 36\"}")
        .selection(
            &format!("selection: Refrigerator\nkind: refrigerator\nplace: tall\nneeded for: 2027-06-14\n{fridge}"),
            "",
        )
        .selection("selection: Cabinets\nkind: cabinet", cabinets)
        .read()
}

fn decide(book: &Book, name: &str) -> Option<(String, Option<String>)> {
    let dates = Dates::of(book, "2026-12-01".parse().unwrap());
    let (_, selection) = book.selections().find(|(_, selection)| selection.name.value == name).unwrap();
    dates.decision(selection).map(|due| (due.on.iso(), due.reason().map(|why| why.text().to_owned())))
}

const OPEN: &str = "options: [{id: a, lead time: 3 weeks}, {id: b, lead time: 2 weeks}]";
const CABINETS: &str = "needed for: 2027-04-05\nlead time: 10-12 weeks";

/// Source: trade practice, appliances before cabinets; 12 weeks before 5 April 2027 is 11 January.
#[test]
fn what_cabinets_are_built_around_is_decided_when_they_must_be_ordered() {
    let (on, reason) = decide(&kitchen(OPEN, CABINETS), "Refrigerator").unwrap();
    assert_eq!(on, "2027-01-11");
    assert_eq!(reason.unwrap(), "when Cabinets, built around it, must be ordered");
    let settled = decide(&kitchen("lead time: 3 weeks", CABINETS), "Refrigerator").unwrap();
    assert_eq!(settled.0, "2027-01-11", "a single proposal is signed by the same day");
    assert_eq!(decide(&kitchen(OPEN, CABINETS), "Cabinets").unwrap(), ("2027-01-11".into(), None));
    let later = "needed for: 2027-12-06\nlead time: 2 weeks";
    assert_eq!(decide(&kitchen(OPEN, later), "Refrigerator").unwrap(), ("2027-05-24".into(), None));
}

#[test]
fn what_was_ordered_around_it_says_so() {
    let placed = format!("{CABINETS}\norder: {{placed on: 2026-11-20}}");
    let (on, reason) = decide(&kitchen(OPEN, &placed), "Refrigerator").unwrap();
    assert_eq!(
        (on.as_str(), reason.unwrap().as_str()),
        ("2026-11-20", "when the order of Cabinets, built around it, was placed")
    );
}

#[test]
fn a_chain_is_followed_to_its_first_order_and_a_circle_ends() {
    let of = |name: &str, more: &str| format!("selection: {name}\nkind: rug\n{more}");
    let book = Trial::of("complete/undecided")
        .selection(&of("Valve", "needed for: 2027-09-01"), "lead time: 1 week")
        .selection(&of("Trim", "depends on: [Valve]"), "")
        .selection(&of("Niche", "depends on: [Trim]\nneeded for: 2027-03-01"), "lead time: 2 weeks")
        .read();
    let (on, reason) = decide(&book, "Valve").unwrap();
    assert_eq!(
        (on.as_str(), reason.unwrap().as_str()),
        ("2027-02-15", "when Trim, which depends on it, must be ordered")
    );
    let circle = Trial::of("complete/undecided")
        .selection(&of("One", "depends on: [Two]\nneeded for: 2027-03-01"), "lead time: 2 weeks")
        .selection(&of("Two", "depends on: [One]"), "")
        .read();
    assert_eq!(decide(&circle, "Two").unwrap().0, "2027-02-15");
}

#[test]
fn a_hold_point_before_the_last_order_decides() {
    let light = |points: &str| {
        let trial = Trial::of("complete/undecided").book(points);
        trial.selection(&format!("selection: Light\nkind: pendant\nneeded for: 2027-06-14\n{OPEN}"), "").read()
    };
    assert_eq!(decide(&light(""), "Light").unwrap(), ("2027-05-24".into(), None));
    let (on, reason) = decide(&light("hold points: {rough-in closed: 2027-03-01}"), "Light").unwrap();
    assert_eq!((on.as_str(), reason.unwrap().as_str()), ("2027-03-01", "the hold point rough-in closed"));
    assert_eq!(decide(&light("hold points: {rough-in closed: 2027-09-01}"), "Light").unwrap().0, "2027-05-24");
}

/// The order of cabinets elsewhere is no hold point of what stands free.
#[test]
fn a_machine_that_no_cabinet_is_built_around_is_not_due_with_them() {
    let washer = |room: &str| {
        let washer = format!("selection: Washer\nkind: washer\nplace: machine\nneeded for: 2027-06-14\n{OPEN}");
        Trial::of("complete/undecided")
            .selection("selection: Cabinets\nkind: cabinet", CABINETS)
            .file(&format!("rooms/{room}/room.yaml"), "name: Utility\nopenings: {machine: {takes: washer}}\n")
            .file(&format!("rooms/{room}/washer.yaml"), washer)
            .read()
    };
    assert_eq!(decide(&washer("utility"), "Washer").unwrap(), ("2027-05-24".into(), None));
}

/// 12 weeks before 5 April 2027 is Monday, 11 January: closed, the order goes out on the Friday before.
#[test]
fn the_last_day_to_order_is_a_day_that_is_worked() {
    let cabinets = |book: &str| {
        let trial = Trial::of("complete/undecided").book(book);
        let book = trial.selection("selection: Cabinets\nkind: cabinet", CABINETS).read();
        decide(&book, "Cabinets").unwrap().0
    };
    assert_eq!(cabinets(""), "2027-01-11");
    assert_eq!(cabinets("calendar: {closed: [2027-01-11]}"), "2027-01-08");
}
