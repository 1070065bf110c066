//! What counts: what was said last, one condition at a time, on the terms that were asked.

use super::*;
use crate::ledger::{Device, During, Measured, Named, Read, Side, Terms, WhoMust};
use crate::units::Length;

const RANGE: &str = "finish: brushed steel";

/// One thing that `ada` says of the range, when, and by which device.
struct Said {
    decision: Decision,
    made: &'static str,
    device: Option<(&'static str, u32)>,
    by: Attestation,
    note: Option<&'static str>,
}

fn said(decision: Decision, made: &'static str) -> Said {
    Said { decision, made, device: None, by: Attestation::PrivateLink, note: None }
}

fn day(text: &str) -> During {
    let at = |hour: &str| format!("{text}T{hour}Z").parse().unwrap();
    During { from: at("00:00:00"), until: at("23:59:59") }
}

impl Record {
    fn says_at(mut self, who: &str, said: Said) -> Self {
        let decided = Decided {
            response: Digest::of(format!("{who} {} {}", said.made, said.decision.words()).as_bytes()),
            issue: 1,
            who: who.into(),
            by: said.by,
            key: None,
            how: (said.by == Attestation::Hand).then(|| "on the telephone".into()),
            given: (said.by == Attestation::Hand).then(|| day(said.made.get(..10).unwrap())),
            made: said.made.parse().unwrap(),
            device: said.device.map(|(id, turn)| Device { id: id.into(), turn }),
            signed: None,
            items: vec![ItemDecision {
                room: "kitchen".into(),
                item: "range".into(),
                mark: self.mark("range"),
                decision: said.decision,
                option: None,
                note: said.note.map(str::to_owned),
            }],
            refused: vec![],
        };
        self.facts.push(Fact::Decided(decided));
        self
    }
}

/// A record in which `sven` approved the range, and whatever `ada` says, in both orders of arrival.
fn both_orders(one: &dyn Fn() -> Said, other: &dyn Fn() -> Said) -> [Record; 2] {
    let sven = || issued(BOTH, RANGE).by_link("sven", "range", Approved);
    [sven().says_at("ada", one()).says_at("ada", other()), sven().says_at("ada", other()).says_at("ada", one())]
}

fn standing(record: Record) -> String {
    let book = record.now("approve/conflict", RANGE).read();
    let approvals = crate::assess::approval::Approvals::of(&book);
    let (room, range) = book.selections().find(|(_, one)| one.id == "range").unwrap();
    let item = approvals.item(room, range).unwrap();
    assert_eq!(approvals.is_orderable(room, range), item.standing.word() == "approved");
    item.standing.word().into()
}

#[test]
fn a_rejection_that_was_made_later_stands_though_an_older_approval_comes_in_after_it() {
    for record in both_orders(&|| said(Approved, "2027-01-11T08:00:00Z"), &|| said(Rejected, "2027-01-12T08:00:00Z")) {
        assert_eq!(standing(record), "not agreed");
    }
    for record in both_orders(&|| said(Rejected, "2027-01-11T08:00:00Z"), &|| said(Approved, "2027-01-12T08:00:00Z")) {
        assert_eq!(standing(record), "approved");
    }
}

#[test]
fn one_device_knows_the_order_of_what_was_said_on_it_whatever_its_clock_says() {
    let on = |decision, made, turn| Said { device: Some(("a", turn)), ..said(decision, made) };
    for record in both_orders(&|| on(Approved, "2027-01-11T08:00:00Z", 1), &|| on(Rejected, "2027-01-11T08:00:30Z", 2))
    {
        record.now("approve/sent-back", RANGE).stays_silent();
    }
    for record in both_orders(&|| on(Rejected, "2027-01-11T18:00:00Z", 1), &|| on(Approved, "2027-01-11T08:00:30Z", 2))
    {
        assert_eq!(standing(record), "approved");
    }
    let [record, _] =
        both_orders(&|| on(Rejected, "2027-01-11T18:00:00Z", 1), &|| on(Approved, "2027-01-11T08:00:30Z", 2));
    let found = record.now("approve/moment", RANGE).run().counts(2);
    let told =
        "a response of Ada Marrowby to issue 1 says `2027-01-11T08:00:30Z`; the clock of its device ran backwards";
    assert!(found.findings().iter().any(|finding| finding.message.text() == told));
}

#[test]
fn what_nobody_can_know_the_order_of_is_asked_about_and_not_orderable() {
    let near = [|| said(Approved, "2027-01-11T08:00:00Z"), || said(Rejected, "2027-01-11T08:07:00Z")];
    let by_hand = |decision| Said { by: Attestation::Hand, ..said(decision, "2027-01-11T12:00:00Z") };
    let one_day: [&dyn Fn() -> Said; 2] = [&|| by_hand(Approved), &|| by_hand(Rejected)];
    let same_day: [&dyn Fn() -> Said; 2] = [&|| said(Approved, "2027-01-11T23:00:00Z"), &|| by_hand(Rejected)];
    let two = |decision, made, id, turn| Said { device: Some((id, turn)), ..said(decision, made) };
    let devices: [&dyn Fn() -> Said; 2] =
        [&|| two(Approved, "2027-01-11T08:01:00Z", "a", 7), &|| two(Rejected, "2027-01-11T08:00:00Z", "b", 1)];
    // Its clock is a day ahead of its receipt: it was made at some moment before that.
    let ahead: [&dyn Fn() -> Said; 2] =
        [&|| said(Approved, "2027-01-13T08:00:00Z"), &|| said(Rejected, "2027-01-11T08:00:00Z")];
    for [one, other] in [[&near[0] as &dyn Fn() -> Said, &near[1]], one_day, same_day, devices, ahead] {
        for record in both_orders(one, other) {
            assert_eq!(standing(record), "not agreed");
        }
    }
    let [record, _] = both_orders(&near[0], &near[1]);
    record
        .now("approve/conflict", RANGE)
        .finds("`Range`: Ada Marrowby said rejected and approved, and which was last is not known, Sven Lint said approved")
        .weighs("query");
    for record in both_orders(&|| by_hand(Approved), &|| said(Rejected, "2027-01-12T08:07:00Z")) {
        record.now("approve/moment", RANGE).stays_silent();
    }
}

#[test]
fn a_moment_ahead_of_its_receipt_or_before_its_issue_is_told() {
    let one = |made| issued(BOTH, RANGE).says_at("ada", said(Approved, made));
    let told = |made: &str, what: &str| format!("a response of Ada Marrowby to issue 1 says `{made}`, {what}");
    let ahead = told("2027-02-12T08:00:00Z", "and came in at `2027-01-12T19:05:00Z`");
    one("2027-02-12T08:00:00Z").now("approve/moment", RANGE).finds(&ahead).weighs("query");
    let before = told("2027-01-09T08:00:00Z", "which is before that issue was made");
    one("2027-01-09T08:00:00Z").now("approve/moment", RANGE).finds(&before);
    one("2027-01-12T19:09:00Z").now("approve/moment", RANGE).stays_silent();
}

fn noted(who: &str, made: &'static str, note: &'static str) -> (String, Said) {
    (who.into(), Said { note: Some(note), ..said(ApprovedAsNoted, made) })
}

fn met(record: Record, response: Option<Digest>) -> Record {
    let mark = record.mark("range");
    record.fact(Fact::Met(Met {
        room: "kitchen".into(),
        item: "range".into(),
        mark,
        response,
        by: "Ines Tarrow".into(),
        note: "seen".into(),
        on: "2027-01-12".parse().unwrap(),
    }))
}

#[test]
fn a_condition_that_is_met_closes_neither_another_person_s_nor_a_later_one() {
    let (ada, sven) =
        (noted("ada", "2027-01-11T08:00:00Z", "if quiet"), noted("sven", "2027-01-11T09:00:00Z", "if black"));
    let of = |record: &Record, at: usize| match record.facts.get(at) {
        Some(Fact::Decided(decided)) => decided.response,
        _ => panic!(),
    };
    let both = issued(BOTH, RANGE).says_at(&ada.0, ada.1).says_at(&sven.0, sven.1);
    let (first, second) = (of(&both, 0), of(&both, 1));
    let one = met(both, Some(first));
    let left = met(
        Record { facts: one.facts.clone(), issue: one.issue.clone(), approvers: one.approvers.clone(), ..one },
        None,
    );
    // An older line says no response: it closes what was stated last of that mark.
    left.now("approve/condition", RANGE).stays_silent();
    let one = Record { facts: one.facts, issue: one.issue, approvers: one.approvers, ..issued(BOTH, RANGE) };
    let found = one.now("approve/condition", RANGE).finds("`Range` is approved by Sven Lint as noted: \"if black\"");
    let digits: String = second.to_string().chars().take(8).collect();
    assert!(found.findings()[0].remedy.text().contains(&format!("--met kitchen/range --of {digits} ")));

    let later = noted("ada", "2027-01-12T08:00:00Z", "if matt");
    let first = noted("ada", "2027-01-11T08:00:00Z", "if quiet");
    let record = issued(BOTH, RANGE).by_link("sven", "range", Approved).says_at(&first.0, first.1);
    let response = of(&record, 1);
    met(record, Some(response))
        .says_at(&later.0, later.1)
        .now("approve/condition", RANGE)
        .finds("`Range` is approved by Ada Marrowby as noted: \"if matt\"");
}

#[test]
fn an_approval_that_names_no_option_where_several_stand_open_approves_nothing() {
    let both = |option| {
        let say = |record: Record, who: &str| {
            record.says(who, Attestation::PrivateLink, &[("range", Approved, option, None)])
        };
        say(say(issued(BOTH, CHOICE), "ada"), "sven")
    };
    let standing = |record: Record| {
        let book = record.now("approve/waiting", CHOICE).read();
        let approvals = crate::assess::approval::Approvals::of(&book);
        let (room, range) = book.selections().find(|(_, one)| one.id == "range").unwrap();
        approvals.item(room, range).unwrap().standing.word()
    };
    assert_eq!((standing(both(None)), standing(both(Some("steel")))), ("waiting", "approved"));
}

fn terms(record: Record, approval: WhoMust, names: [&str; 2]) -> Record {
    let named = |(id, name): (&str, &str)| Named { id: id.into(), name: name.into() };
    let approvers = ["ada", "sven"].into_iter().zip(names).map(named).collect();
    let issue = Issue { terms: Some(Terms { approval, approvers, tax_in_prices: false }), ..record.issue };
    Record { issue, ..record }
}

#[test]
fn terms_that_changed_after_the_issue_are_told_and_hold_what_was_approved() {
    let names = ["Ada Marrowby", "Sven Lint"];
    let all = || issued(BOTH, RANGE).by_link("ada", "range", Approved).by_link("sven", "range", Approved);
    terms(all(), WhoMust::All, names).now("approve/terms", RANGE).stays_silent();
    assert_eq!(standing(terms(all(), WhoMust::All, names)), "approved");
    let any = terms(Record { approvers: format!("{BOTH}\napproval: any"), ..all() }, WhoMust::All, names);
    any.now("approve/terms", RANGE).finds("who must approve changed since issue 1: `approval` from `all` to `any`");
    let one = |approvers: &str| terms(Record { approvers: approvers.into(), ..all() }, WhoMust::All, names);
    let alone = "approvers: [{id: ada, name: Ada Marrowby}]";
    one(alone).now("approve/terms", RANGE).finds("who must approve changed since issue 1: Sven Lint no longer decides");
    assert_eq!(standing(one(alone)), "approved, and held");
    let other = "approvers: [{id: ada, name: Ada Marrowby}, {id: sven, name: Teo Varrick}]";
    one(other)
        .now("approve/terms", RANGE)
        .finds("who must approve changed since issue 1: `sven` from Sven Lint to Teo Varrick");
    // Prices that are told otherwise are no other approver.
    terms(Record { approvers: format!("{BOTH}\nprices: with tax\ntax: 7 %"), ..all() }, WhoMust::All, names)
        .now("approve/terms", RANGE)
        .finds("what the prices are that are approved changed since issue 1: `prices` from `before tax` to `with tax`");
    let ordered =
        one(alone).now("approve/terms", &format!("{RANGE}\norder: {{placed on: 2027-01-14}}")).run().counts(2);
    assert!(ordered.findings().iter().any(|finding| finding.severity.word() == "stop"));
}

/// Whoever takes an owner's place has signed nothing.
#[test]
fn what_was_signed_under_another_name_is_not_the_word_of_who_bears_that_id_now() {
    let both = || issued(BOTH, RANGE).by_link("ada", "range", Approved).by_link("sven", "range", Approved);
    let now = |sven: &str| {
        let approvers = format!("approvers: [{{id: ada, name: Ada Marrowby}}, {{id: sven, name: {sven}}}]");
        terms(Record { approvers, ..both() }, WhoMust::All, ["Ada Marrowby", "Sven Lint"])
    };
    assert_eq!(standing(now("Teo Varrick")), "approved by some");
    assert_eq!(standing(now("Sven Lint")), "approved");
}

#[test]
fn an_issue_that_bears_an_earlier_day_than_its_own_is_told_and_holds_what_was_approved() {
    let all = || issued(BOTH, RANGE).by_link("ada", "range", Approved).by_link("sven", "range", Approved);
    let late = || Record { made: "2027-01-12T18:00:00Z", ..all() };
    let told = "issue 1 bears the day 10 Jan 2027, and was made on 12 Jan 2027";
    late().now("approve/moment", RANGE).finds(told).weighs("query");
    assert_eq!(standing(late()), "approved, and held");
    Record { made: "2027-01-11T03:00:00Z", ..all() }.now("approve/moment", RANGE).stays_silent();
    // One that bears a later day is told, and holds nothing: what was approved was on show.
    let early = || Record { made: "2027-01-08T18:00:00Z", at: "2027-01-12T19:05:00Z", ..all() };
    let told = "issue 1 bears the day 10 Jan 2027, which is ahead of 8 Jan 2027, the day it was made";
    early().now("approve/moment", RANGE).finds(told).weighs("query");
    assert_eq!(standing(early()), "approved");
    Record { made: "2027-01-09T12:00:00Z", ..all() }.now("approve/moment", RANGE).stays_silent();
}

#[test]
fn readings_that_nobody_confirmed_are_told_where_they_belong() {
    let measured = Measured {
        response: Digest::of(b"readings"),
        by: "Teo Varrick".into(),
        on: "2027-01-12".parse().unwrap(),
        made: None,
        readings: vec![Read {
            room: "kitchen".into(),
            opening: "range".into(),
            what: Side::Width,
            at: None,
            length: Length::from_millimetres(762),
            from: None,
        }],
    };
    let record = || issued(BOTH, RANGE).fact(Fact::Measured(measured.clone()));
    let digits: String = measured.response.to_string().chars().take(8).collect();
    let found = record()
        .now("approve/reading", RANGE)
        .finds("1 reading of `range` by Teo Varrick, 12 Jan 2027, wait to be confirmed")
        .weighs("query");
    assert!(found.findings()[0].remedy.text().contains(&format!("--confirm {digits}")));
    let confirmed = Confirmed { response: measured.response, by: "Ines".into(), on: "2027-01-12".parse().unwrap() };
    record().fact(Fact::Confirmed(confirmed)).now("approve/reading", RANGE).stays_silent();
}
