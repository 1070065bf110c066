//! What stands of responses that bear no key, by what was recorded after the person was asked.

use super::*;
use crate::ledger::NotTheirs;

const RANGE: &str = "finish: brushed steel";

fn response(record: &Record, at: usize) -> Digest {
    let Some(Fact::Decided(decided)) = record.facts.get(at) else { panic!("no decision is there") };
    decided.response
}

/// The designer asked, and it is not theirs.
fn not_theirs(record: Record) -> Record {
    let (response, on) = (response(&record, 0), "2027-01-13".parse().unwrap());
    record.fact(Fact::NotTheirs(NotTheirs { response, by: "Ines Tarrow".into(), note: None, on }))
}

fn confirmed(record: Record) -> Record {
    let (response, on) = (response(&record, 0), "2027-01-13".parse().unwrap());
    record.fact(Fact::Confirmed(Confirmed { response, by: "Ines Tarrow".into(), on }))
}

fn says(decision: Decision, note: Option<&str>) -> Record {
    issued(BOTH, RANGE).says("ada", Attestation::Unsigned, &[("range", decision, None, note)])
}

#[test]
fn what_is_not_theirs_is_left_out_and_of_the_two_the_later_counts() {
    let ada = || says(Rejected, None);
    ada().now("approve/unsigned", RANGE).finds_one();
    let aside = [|| not_theirs(says(Rejected, None)), || not_theirs(confirmed(says(Rejected, None)))];
    for put_aside in aside {
        assert_eq!(standing(put_aside()), "waiting");
        put_aside().now("approve/unsigned", RANGE).stays_silent();
    }
    assert_eq!(standing(confirmed(not_theirs(ada()))), "rejected");
    confirmed(not_theirs(ada())).now("approve/unsigned", RANGE).stays_silent();
}

/// What stands of the range.
fn standing(record: Record) -> &'static str {
    let book = record.now("approve/unsigned", RANGE).read();
    let (room, selection) = book.selections().find(|(_, selection)| selection.name.value == "Range").unwrap();
    crate::assess::approval::Approvals::of(&book).item(room, selection).unwrap().standing.word()
}

#[test]
fn many_responses_in_one_name_are_one_finding_that_says_how_many_wait() {
    let mut record = issued(BOTH, RANGE);
    for _ in 0..5 {
        record = record.says("ada", Attestation::Unsigned, &[("range", Approved, None, None)]);
    }
    record = record.says("sven", Attestation::Unsigned, &[("range", Approved, None, None)]);
    let digits = response(&record, 0).short(8);
    let found = record.now("approve/unsigned", RANGE).run().counts(2);
    assert_eq!(found.findings()[0].message.text(), "5 responses for Ada Marrowby bear no key");
    let remedy = found.findings()[0].remedy.text();
    assert!(remedy.contains(&digits) && remedy.contains("and 2 more on the office's first page"), "{remedy}");
    assert!(remedy.contains("--not-theirs"), "{remedy}");
}

#[test]
fn a_response_whose_proof_came_later_waits_for_nobody() {
    let mut record = says(Approved, None);
    let Some(Fact::Decided(bare)) = record.facts.first().cloned() else { panic!() };
    record = record.fact(Fact::Decided(Decided { by: Attestation::PrivateLink, ..bare }));
    record.now("approve/unsigned", RANGE).stays_silent();
}

/// "Any" of two approvers approved it; the other's name stands under a condition that a stranger may have written.
#[test]
fn a_condition_that_nobody_is_known_to_have_stated_is_none() {
    let any = format!("{BOTH}\napproval: any");
    let record = |by| {
        let sven = issued(&any, RANGE).says(
            "sven",
            Attestation::PrivateLink,
            &[("range", ApprovedAsNoted, None, Some("quiet"))],
        );
        sven.says("ada", by, &[("range", ApprovedAsNoted, None, Some("if the hood is free"))])
    };
    record(Attestation::Unsigned)
        .now("approve/condition", RANGE)
        .finds("`Range` is approved by Sven Lint as noted: \"quiet\"");
    record(Attestation::PrivateLink).now("approve/condition", RANGE).run().counts(2);
}

/// A line of an older ledger closes the condition that was stated last: by somebody who is known.
#[test]
fn what_a_stranger_states_keeps_no_condition_of_anybody_open() {
    let sven = issued(BOTH, RANGE)
        .by_link("ada", "range", Approved)
        .says("sven", Attestation::PrivateLink, &[("range", ApprovedAsNoted, None, Some("if it is quiet"))])
        .says("sven", Attestation::Unsigned, &[("range", ApprovedAsNoted, None, Some("if it is free"))]);
    let mark = sven.mark("range");
    let (room, item, on) = ("kitchen".into(), "range".into(), "2027-01-13".parse().unwrap());
    let met = Met { room, item, mark, response: None, by: "Ines Tarrow".into(), note: "heard".into(), on };
    sven.fact(Fact::Met(met)).now("approve/condition", RANGE).stays_silent();
}
