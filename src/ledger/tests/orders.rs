//! Which of several statements counts: never one that another was truly made after, in whatever order they came in.

use proptest::prelude::*;

use super::*;

/// What truly happened: when something was said, in seconds, on which device, and what that device's clock
/// was off by.
#[derive(Clone, Debug)]
struct True {
    second: i64,
    /// 0 is an old page, which says no device; 1 to 3 are devices; 4 is the designer's hand.
    device: usize,
    decision: Decision,
}

const ISSUED: &str = "2027-01-10T09:00:00Z";
const CAME: &str = "2027-02-10T09:00:00Z";

fn decisions() -> impl Strategy<Value = Decision> {
    prop_oneof![
        Just(Decision::Approved),
        Just(Decision::ApprovedAsNoted),
        Just(Decision::ReviseAndResubmit),
        Just(Decision::Rejected)
    ]
}

/// Up to six things that one person said within some hours, in their true order.
fn history() -> impl Strategy<Value = Vec<True>> {
    let one = (0..20_000i64, 0..5usize, decisions());
    proptest::collection::vec(one.prop_map(|(second, device, decision)| True { second, device, decision }), 1..7)
        .prop_map(|mut all| {
            all.sort_by_key(|one| one.second);
            all.dedup_by_key(|one| one.second);
            all
        })
}

/// The facts as they would be recorded, with clocks that are off by as much as is allowed, or by a jump of
/// hours on one device.
fn recorded(all: &[True], off: [i64; 4], jump: Option<usize>) -> Vec<Fact> {
    let mut turns = [0u32; 5];
    let facts = all.iter().enumerate().map(|(at, one)| {
        let issued: Moment = ISSUED.parse().unwrap();
        let said = issued.plus_seconds(3_600 + one.second);
        turns[one.device] += 1;
        let jumped = if jump == Some(at) && (1..4).contains(&one.device) { -7_200 } else { 0 };
        let made = if one.device == 4 { said } else { said.plus_seconds(off[one.device] + jumped) };
        let hour = During { from: said.plus_seconds(-1_800), until: said.plus_seconds(1_800) };
        let asked = ItemDecision {
            room: "kitchen".into(),
            item: "range".into(),
            mark: Digest::of(b"a mark"),
            decision: one.decision,
            option: None,
            note: Some("a note".into()),
        };
        Fact::Decided(Decided {
            response: Digest::of(format!("{at}").as_bytes()),
            issue: 1,
            who: "ada".into(),
            by: if one.device == 4 { Attestation::Hand } else { Attestation::PrivateLink },
            key: None,
            how: None,
            given: (one.device == 4).then_some(hour),
            made,
            device: (1..4)
                .contains(&one.device)
                .then(|| Device { id: one.device.to_string(), turn: turns[one.device] }),
            signed: None,
            items: vec![asked],
            refused: vec![],
        })
    });
    facts.collect()
}

fn ledger(facts: Vec<Fact>) -> Vec<Line> {
    dated(facts.into_iter().map(|fact| (CAME, fact)).collect())
}

/// A ledger whose lines were written at moments of their own.
fn dated(facts: Vec<(&str, Fact)>) -> Vec<Line> {
    let opened = Fact::Opened(Opened { book: "0".repeat(32), title: "Alder Court".into() });
    let on = "2027-01-10".parse().unwrap();
    let issued = Issued { number: 1, purpose: Purpose::Approval, on, sha256: Digest::of(b"an issue"), items: 1 };
    let mut chain = Chain::default();
    for (at, fact) in [(ISSUED, opened), (ISSUED, Fact::Issued(issued))].into_iter().chain(facts) {
        let line = Line::next(&chain, at.parse().unwrap(), fact).unwrap();
        chain.lines.push(line);
    }
    chain.lines
}

/// What counts, by its decision and its response.
fn counts(lines: &[Line]) -> Vec<(Decision, Digest)> {
    let statements = Statements::of(lines);
    statements.newest("kitchen", "range", "ada").iter().map(|one| (one.asked.decision, one.decided.response)).collect()
}

proptest! {
    #[test]
    fn all_orders_of_arrival_give_the_same_and_never_lose_what_was_said_last(
        (all, shuffled, off, jump) in history().prop_flat_map(|all| {
            let places: Vec<usize> = (0..all.len()).collect();
            let jump = proptest::option::of(0..all.len());
            (Just(all), Just(places).prop_shuffle(), [-300..=300i64, -300..=300, -300..=300, -300..=300], jump)
        })
    ) {
        let facts = recorded(&all, off, jump);
        let in_order = counts(&ledger(facts.clone()));
        let came = shuffled.iter().map(|at| facts[*at].clone()).collect();
        prop_assert_eq!(&counts(&ledger(came)), &in_order);
        // A device whose clock jumped unseen tells a wrong moment, and nothing can tell that.
        let unseen = jump.is_some_and(|at| {
            let device = all[at].device;
            let earlier = all[..at].iter().rev().find(|one| one.device == device);
            (1..4).contains(&device) && earlier.is_none_or(|one| one.second + 600 < all[at].second - 7_200 + 900)
        });
        if !unseen {
            let last = all.last().unwrap().decision;
            let told = in_order.iter().map(|(decision, _)| *decision).collect::<Vec<_>>();
            prop_assert!(told.contains(&last), "{:?} of {:?}", told, all);
        }
    }

    #[test]
    fn what_was_said_long_after_all_else_stands_alone(
        all in history(), off in [-300..=300i64, -300..=300, -300..=300, -300..=300], last in decisions(),
    ) {
        let second = all.last().unwrap().second + 7_200;
        let all = [all, vec![True { second, device: 1, decision: last }]].concat();
        let told = counts(&ledger(recorded(&all, off, None)));
        prop_assert_eq!(told.len(), 1);
        prop_assert_eq!(told[0].0, last);
    }
}

#[test]
fn what_was_recorded_before_an_issue_was_said_before_any_answer_to_it() {
    let by_hand = |issue: u32, decision, at: usize| {
        let fact = recorded(&[True { second: 0, device: 4, decision }], [0; 4], None).remove(0);
        let Fact::Decided(decided) = fact else { panic!() };
        let response = Digest::of(format!("{at}").as_bytes());
        let day = "2027-01-10".parse().unwrap();
        Fact::Decided(Decided { issue, response, given: During::day(day), ..decided })
    };
    let facts = vec![by_hand(1, Decision::Rejected, 0), second_issue(), by_hand(2, Decision::Approved, 1)];
    let told = counts(&ledger(facts));
    assert_eq!(told.iter().map(|(decision, _)| *decision).collect::<Vec<_>>(), [Decision::Approved]);
}

fn second_issue() -> Fact {
    let on = "2027-01-10".parse().unwrap();
    Fact::Issued(Issued { number: 2, purpose: Purpose::Approval, on, sha256: Digest::of(b"another"), items: 1 })
}

/// What `ada` says of the range, by the clock of device `1` and the how-manieth there.
fn says(decision: Decision, made: &str, turn: u32) -> Decided {
    let fact = recorded(&[True { second: 0, device: 1, decision }], [0; 4], None).remove(0);
    let Fact::Decided(decided) = fact else { panic!() };
    let device = Some(Device { id: "1".into(), turn });
    Decided { response: Digest::of(made.as_bytes()), made: made.parse().unwrap(), device, ..decided }
}

/// Its clock runs a day ahead: what it says is shown to be wrong by when it came in first, whenever its proof came.
#[test]
fn a_response_that_comes_again_with_its_proof_was_recorded_when_it_came_first() {
    let sealed = Decided { device: None, ..says(Decision::Approved, "2027-01-11T10:00:00Z", 1) };
    let bare = Decided { by: Attestation::Unsigned, ..sealed.clone() };
    let later = Decided { device: None, ..says(Decision::Rejected, "2027-01-10T14:00:00Z", 1) };
    let came = |last: Vec<(&'static str, Fact)>| {
        let facts = [("2027-01-10T10:00:00Z", bare.clone()), ("2027-01-10T14:00:00Z", later.clone())];
        let facts = facts.into_iter().map(|(at, decided)| (at, Fact::Decided(decided)));
        counts(&dated(facts.chain(last).collect()))
    };
    let proof = ("2027-01-12T09:00:00Z", Fact::Decided(sealed.clone()));
    assert_eq!(came(vec![proof.clone()]), [(Decision::Rejected, later.response)]);
    // What came in before an issue was said before any answer to it.
    let answer = Decided { issue: 2, device: None, ..says(Decision::Rejected, "2027-01-11T10:01:00Z", 1) };
    let response = answer.response;
    let facts = [("2027-01-11T09:59:00Z", Fact::Decided(bare.clone())), ("2027-01-11T10:00:30Z", second_issue())];
    let facts = facts.into_iter().chain([("2027-01-11T10:02:00Z", Fact::Decided(answer)), proof]);
    assert_eq!(counts(&dated(facts.collect())), [(Decision::Rejected, response)]);
}

/// The second time the program took less of it, since something else was issued meanwhile.
#[test]
fn all_that_was_ever_taken_of_a_proved_response_is_known_to_be_theirs() {
    let sealed = says(Decision::Approved, "2027-01-10T10:00:00Z", 1);
    let bare = Decided { by: Attestation::Unsigned, ..sealed.clone() };
    let of_another = sealed.items.iter().map(|asked| ItemDecision { item: "rug".into(), ..asked.clone() }).collect();
    let sealed = Decided { items: of_another, ..sealed };
    let lines = ledger(vec![Fact::Decided(bare), Fact::Decided(sealed)]);
    let statements = Statements::of(&lines);
    let [range] = statements.newest("kitchen", "range", "ada").try_into().unwrap();
    assert!(statements.is_known(range.decided));
}

/// A device that counted anew, against an issue: neither of the two is out, and a third does not stand alone.
#[test]
fn signs_that_contradict_each_other_tell_nothing() {
    let before = says(Decision::Approved, "2027-01-10T10:00:00Z", 2);
    let after = Decided { issue: 2, ..says(Decision::Rejected, "2027-01-10T12:00:00Z", 1) };
    let by_hand = Decided {
        issue: 2,
        by: Attestation::Hand,
        how: Some("on the telephone".into()),
        device: None,
        ..says(Decision::Approved, "2027-01-10T13:00:00Z", 1)
    };
    let facts = vec![
        ("2027-01-10T10:00:00Z", Fact::Decided(before)),
        ("2027-01-10T11:00:00Z", second_issue()),
        ("2027-01-10T12:00:00Z", Fact::Decided(after)),
        ("2027-01-10T13:00:00Z", Fact::Decided(by_hand)),
    ];
    let told = counts(&dated(facts));
    let told: Vec<Decision> = told.into_iter().map(|(decision, _)| decision).collect();
    assert_eq!(told, [Decision::Rejected, Decision::Approved]);
}

#[test]
fn a_day_is_known_from_words_that_name_one_alone() {
    assert_eq!(day_in("signed on paper, 2027-01-16"), Some("2027-01-16".parse().unwrap()));
    for words in ["by telephone", "2027-01-16, then 2027-01-18", "on 16 January", "2027-13-40"] {
        assert_eq!(day_in(words), None, "{words}");
    }
}
