//! Whatever happens to a ledger is found, and by its line.

use super::*;

/// The faults of some lines: line of the file, kind.
fn faults(lines: &[Vec<u8>]) -> Vec<(u32, FaultKind)> {
    Chain::read(&lines.concat()).faults.into_iter().map(|fault| (fault.at, fault.kind)).collect()
}

#[test]
fn a_changed_byte_anywhere_is_found_by_its_line() {
    finds_each_byte(&lines_of(of_decisions().into_iter().take(4).collect()));
}

/// With what was confirmed and taken back of them.
#[test]
fn a_changed_byte_of_a_delivery_or_of_what_was_sent_is_found_by_its_line() {
    let of_them =
        |fact: &Fact| matches!(fact, Fact::Opened(_) | Fact::Issued(_) | Fact::Confirmed(_) | Fact::TakenBack(_));
    finds_each_byte(&lines_of(of_decisions().into_iter().filter(of_them).chain(of_goods()).collect()));
}

fn finds_each_byte(lines: &[Vec<u8>]) {
    let whole = lines.concat();
    let (mut line, mut told) = (1, 0);
    for at in 0..whole.len() {
        let flips = (0..8).map(|bit| whole[at] ^ (1 << bit));
        for byte in flips.chain(*b"\n\0\" {}0").filter(|byte| *byte != whole[at]) {
            let mut bytes = whole.clone();
            bytes[at] = byte;
            let chain = Chain::read(&bytes);
            let found = chain.faults.first().map(|fault| fault.at);
            if at == whole.len() - 1 && byte == 0 {
                assert_eq!((found, chain.tail), (None, LedgerEnd::NoBreak));
            } else {
                assert_eq!(found, Some(line), "byte {at} is {byte}");
                assert_eq!(chain.faults[0].kind, FaultKind::Edited);
                told += 1;
            }
        }
        line += u32::from(whole[at] == b'\n');
    }
    println!("{} bytes in {} lines: {told} changes, each told by its line", whole.len(), lines.len());
}

#[test]
fn a_byte_that_is_lost_or_added_anywhere_is_found_by_its_line() {
    let lines = lines_of(facts().into_iter().take(3).collect());
    let whole = lines.concat();
    let mut line = 1;
    for at in 0..whole.len() {
        let (mut less, mut more) = (whole.clone(), whole.clone());
        less.remove(at);
        more.insert(at, b' ');
        let chain = Chain::read(&less);
        if at == whole.len() - 1 {
            assert_eq!((chain.faults.len(), chain.tail), (0, LedgerEnd::NoBreak));
        } else {
            assert_eq!(chain.faults[0].at, line, "without byte {at}");
        }
        assert_eq!(Chain::read(&more).faults[0].at, line, "with a space at {at}");
        line += u32::from(whole[at] == b'\n');
    }
}

#[test]
fn a_dropped_line_is_found_with_its_number() {
    let last = lines().len() - 1;
    for at in 0..last {
        let mut fewer = lines();
        fewer.remove(at);
        let number = at as u32 + 1;
        assert_eq!(faults(&fewer), [(number, FaultKind::Missing(number, number))]);
    }
    let mut fewer = lines();
    fewer.drain(2..5);
    assert_eq!(faults(&fewer), [(3, FaultKind::Missing(3, 5))]);
}

#[test]
fn two_lines_that_changed_places_are_found_with_their_numbers() {
    let count = lines().len();
    for (one, other) in (0..count).flat_map(|one| (one + 1..count).map(move |other| (one, other))) {
        let mut swapped = lines();
        swapped.swap(one, other);
        let found = faults(&swapped);
        let moved = |number: usize| {
            found.iter().any(|(_, kind)| matches!(kind, FaultKind::Moved(moved, _) if *moved as usize == number + 1))
        };
        assert!(moved(one), "{one} and {other}: {found:?}");
        assert!(found.iter().all(|(_, kind)| matches!(kind, FaultKind::Moved(..))), "{found:?}");
    }
}

#[test]
fn a_line_that_stands_twice_is_found_with_its_number() {
    let mut more = lines();
    more.insert(3, more[2].clone());
    assert_eq!(faults(&more), [(4, FaultKind::Twice(3))]);
}

#[test]
fn a_line_with_a_digest_made_anew_does_not_fit_the_next() {
    let mut changed = facts();
    changed[2] = Fact::Invited(Invited { who: "eve".into(), ..invited(&changed[2]) });
    let mut lines = lines();
    lines[2] = lines_of(changed).swap_remove(2);
    assert_eq!(faults(&lines), [(4, FaultKind::Unlinked(4))]);
}

fn invited(fact: &Fact) -> Invited {
    match fact {
        Fact::Invited(invited) => invited.clone(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_ledger_that_begins_with_something_else_or_is_opened_again_is_found() {
    let headless = lines_of(facts().into_iter().skip(1).take(2).collect());
    assert_eq!(faults(&headless), [(1, FaultKind::NotOpening)]);
    let again = lines_of(vec![facts()[0].clone(), facts()[0].clone()]);
    assert_eq!(faults(&again), [(2, FaultKind::NotOpening)]);
}

#[test]
fn a_torn_last_line_is_told_apart_from_an_edited_one_and_the_rest_stands() {
    let lines = lines();
    let (last, rest) = lines.split_last().unwrap();
    let rest = rest.concat();
    for cut in 1..last.len() - 1 {
        for padding in [0, 5] {
            let torn = [&rest[..], &last[..cut], &vec![0; padding]].concat();
            let chain = Chain::read(&torn);
            assert_eq!((chain.faults.len(), chain.tail, chain.whole), (0, LedgerEnd::Torn, rest.len()), "at {cut}");
            assert_eq!(chain.lines.len(), lines.len() - 1);
        }
    }
    let unbroken = [&rest[..], &last[..last.len() - 1]].concat();
    let chain = Chain::read(&unbroken);
    assert_eq!((chain.tail, chain.lines.len(), chain.whole), (LedgerEnd::NoBreak, lines.len(), unbroken.len()));
}

#[test]
fn an_empty_ledger_and_one_torn_in_its_first_line_hold_nothing() {
    assert_eq!(Chain::read(b"").tail, LedgerEnd::Whole);
    assert_eq!(Chain::read(b"\0\0\0").tail, LedgerEnd::Torn);
    let chain = Chain::read(&lines()[0][..40]);
    assert_eq!((chain.tail, chain.whole, chain.lines.len(), chain.is_sound()), (LedgerEnd::Torn, 0, 0, true));
}

#[test]
fn the_order_of_lines_counts_and_the_clock_does_not() {
    let mut chain = Chain::default();
    for (second, fact) in [59, 3, 31].into_iter().zip(facts()) {
        let line = Line::next(&chain, moment(second), fact).unwrap();
        chain.lines.push(line);
    }
    let bytes: Vec<u8> = chain.lines.iter().flat_map(|line| line.bytes().unwrap()).collect();
    let read = Chain::read(&bytes);
    assert!(read.is_sound());
    assert_eq!(read.lines, chain.lines);
}
