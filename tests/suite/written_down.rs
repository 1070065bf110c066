//! Decisions given by other means, confirmations, and conditions that are met.

use bookmatch::ledger::{Attestation, Decision, During, Fact};
use bookmatch::record::{ByHand, Closed, ItemName, Outcome, Refusal};

use crate::issued::{IssuedBook, now, seal};

fn on_paper() -> ByHand {
    ByHand {
        who: "samir".into(),
        items: vec![ItemName::Of("kitchen".into(), "range".into())],
        decision: Decision::Approved,
        option: None,
        note: None,
        how: "signed on paper, 2027-01-16".into(),
        given: None,
        scan: Some((b"a scan".to_vec(), "pdf".into())),
    }
}

#[test]
fn a_sheet_signed_on_paper_is_recorded_once_with_how_and_its_scan() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    assert_eq!(receiver.by_hand(&on_paper(), now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.by_hand(&on_paper(), now()).unwrap(), Outcome::Already);
    let facts = book.facts();
    let [Fact::Decided(fact)] = facts.as_slice() else { panic!("{facts:?}") };
    assert_eq!((fact.by, fact.how.as_deref()), (Attestation::Hand, Some("signed on paper, 2027-01-16")));
    assert_eq!(fact.items[0].mark.to_string(), crate::issued::mark("range", "black"));
    let scan = std::fs::read_dir(book.path().join("record/scans")).unwrap().next().unwrap().unwrap();
    assert_eq!(std::fs::read(scan.path()).unwrap(), b"a scan");
}

/// A paper of 16 January that is written down on the 18th answers the issue of the 15th, not that of the 17th.
#[test]
fn what_was_given_before_an_issue_answers_the_issue_before_it() {
    let book = IssuedBook::new();
    let at = |text: &str| text.parse().unwrap();
    book.issue_at(at("2027-01-18T08:00:00Z"), 2, &[("range", "cream"), ("sink", "white")]);
    let receiver = book.receiver();
    let given = |day: &str| {
        let (from, until) = (at(&format!("{day}T00:00:00Z")), at(&format!("{day}T23:59:59Z")));
        Some(During { from, until })
    };
    let of = |item: &str, day: &str| ByHand {
        items: vec![ItemName::Of("kitchen".into(), item.into())],
        given: given(day),
        ..on_paper()
    };
    let later = at("2027-01-18T09:00:00Z");
    let told = receiver.by_hand(&of("range", "2027-01-16"), later).unwrap_err().to_string();
    let expected = "when it was given issue 1 was the newest, and issue 2 shows `kitchen/range` otherwise; ask again";
    assert!(told.contains(expected), "{told}");
    assert!(book.facts().is_empty());
    for (item, day, issue, shown) in
        [("sink", "2027-01-16", 1, "white"), ("range", "2027-01-18", 2, "cream"), ("sink", "2027-01-10", 2, "white")]
    {
        assert_eq!(receiver.by_hand(&of(item, day), later).unwrap(), Outcome::Recorded(vec![]));
        let Some(Fact::Decided(fact)) = book.facts().pop() else { panic!("{item} {day}") };
        assert_eq!(fact.issue, issue, "{item} {day}");
        assert_eq!(fact.items[0].mark.to_string(), crate::issued::mark(item, shown), "{item} {day}");
    }
}

#[test]
fn nobody_else_and_nothing_that_was_not_issued_is_written_down() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let stranger = ByHand { who: "ivo".into(), ..on_paper() };
    assert!(matches!(receiver.by_hand(&stranger, now()), Err(Refusal::NoApprover(_))));
    let missing = ByHand { items: vec![ItemName::Of("kitchen".into(), "hood".into())], ..on_paper() };
    assert!(matches!(receiver.by_hand(&missing, now()), Err(Refusal::NoItem(..))));
    let option = ByHand { option: Some("gold".into()), ..on_paper() };
    assert!(receiver.by_hand(&option, now()).unwrap_err().to_string().contains("no such option"));
    assert!(book.facts().is_empty());
}

#[test]
fn an_unsigned_response_is_confirmed_by_the_first_digits_of_its_digest() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    receiver.take_in(book.response(1).to_string().as_bytes(), now()).unwrap();
    let Fact::Decided(fact) = &book.facts()[0] else { panic!() };
    let digits = fact.response.to_string();
    for few in ["", &digits[..7], "00000000000"] {
        assert!(matches!(receiver.confirm(few, "Dara Vell", now()), Err(Refusal::NoResponse(_))), "{few}");
    }
    assert_eq!(receiver.confirm(&digits[..8], "Dara Vell", now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.confirm(&digits, "Dara Vell", now()).unwrap(), Outcome::Already);
}

#[test]
fn what_is_not_theirs_is_put_aside_by_its_digits_and_the_later_word_counts() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    for n in 1..=3 {
        receiver.take_in(book.response(n).to_string().as_bytes(), now()).unwrap();
    }
    let facts = book.facts();
    let digits = facts.iter().map(|fact| match fact {
        Fact::Decided(decided) => decided.response.to_string()[..8].to_owned(),
        other => panic!("{other:?}"),
    });
    let digits: Vec<String> = digits.collect();
    let aside = |named: &[String]| receiver.not_theirs(named, "Dara Vell", Some("never saw it"), now());
    // All or none: one that nobody knows leaves the others as they are.
    let unknown = [digits[0].clone(), "00000000".into()];
    assert!(matches!(aside(&unknown), Err(Refusal::NoResponse(named)) if named == "00000000"));
    assert_eq!(book.all_facts().iter().filter(|fact| matches!(fact, Fact::NotTheirs(_))).count(), 0);
    assert_eq!(aside(&digits[..2]).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(aside(&digits[..1]).unwrap(), Outcome::Already);
    assert_eq!(receiver.confirm(&digits[0], "Dara Vell", now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(aside(&digits[..1]).unwrap(), Outcome::Recorded(vec![]), "the person took it back");
    // Readings are taken back instead.
    receiver.take_in(&readings(&book, "Bo", "2027-01-16T10:00:00Z"), now()).unwrap();
    let Some(Fact::Measured(read)) = book.facts().pop() else { panic!() };
    assert!(matches!(aside(&[read.response.to_string()]), Err(Refusal::NoResponse(_))));
}

#[test]
fn the_same_decision_by_hand_after_a_confirmed_rejection_is_a_new_fact() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let mut rejects = book.response(1);
    rejects["who"] = "samir".into();
    rejects["items"][0]["decision"] = "rejected".into();
    receiver.take_in(rejects.to_string().as_bytes(), now()).unwrap();
    let approves = ByHand { scan: None, ..on_paper() };
    assert_eq!(receiver.by_hand(&approves, now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.by_hand(&approves, now()).unwrap(), Outcome::Already, "a stranger's word is none");
    let Fact::Decided(rejected) = &book.facts()[0] else { panic!() };
    receiver.confirm(&rejected.response.to_string(), "Dara Vell", now()).unwrap();
    assert_eq!(receiver.by_hand(&approves, now()).unwrap(), Outcome::Recorded(vec![]));
}

/// What says that a condition of the range is met.
fn closed<'a>(digits: Option<&'a str>, note: &'a str) -> Closed<'a> {
    static RANGE: std::sync::LazyLock<ItemName> =
        std::sync::LazyLock::new(|| ItemName::Of("kitchen".into(), "range".into()));
    Closed { item: &RANGE, digits, by: "Dara Vell", note }
}

#[test]
fn a_condition_is_met_only_where_there_is_one() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    assert!(matches!(receiver.met(&closed(None, "done"), now()), Err(Refusal::NoCondition(..))));
    let mut response = book.response(1);
    response["items"][0]["decision"] = "approved as noted".into();
    response["items"][0]["note"] = "if the knobs are black".into();
    receiver.take_in(&seal(response, &book.keys[0]), now()).unwrap();
    let met = closed(None, "black knobs ordered");
    assert_eq!(receiver.met(&met, now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.met(&met, now()).unwrap(), Outcome::Already);
}

#[test]
fn of_several_conditions_the_one_that_is_named_is_closed_and_no_other() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    for (who, key, note) in [("odile", 0, "if the knobs are black"), ("samir", 1, "if it is quiet")] {
        let mut response = book.response(1);
        response["who"] = who.into();
        response["items"][0]["decision"] = "approved as noted".into();
        response["items"][0]["note"] = note.into();
        receiver.take_in(&seal(response, &book.keys[key]), now()).unwrap();
    }
    let facts = book.facts();
    let digits = facts.iter().map(|fact| match fact {
        Fact::Decided(decided) => decided.response.to_string()[..8].to_owned(),
        other => panic!("{other:?}"),
    });
    let [odile, samir] = digits.collect::<Vec<_>>().try_into().unwrap();
    let told = receiver.met(&closed(None, "done"), now()).unwrap_err().to_string();
    assert!(told.contains(&format!("odile {odile}: if the knobs are black")) && told.contains(&samir), "{told}");
    let one = closed(Some(&samir), "done");
    assert_eq!(receiver.met(&one, now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.met(&one, now()).unwrap(), Outcome::Already);
    // The other is open still, and the same words close it by its own name.
    let other = closed(Some(&odile), "done");
    assert_eq!(receiver.met(&other, now()).unwrap(), Outcome::Recorded(vec![]));
    let met: Vec<_> = book
        .all_facts()
        .into_iter()
        .filter_map(|fact| match fact {
            Fact::Met(met) => met.response.map(|response| response.to_string()[..8].to_owned()),
            _ => None,
        })
        .collect();
    assert_eq!(met, [samir, odile]);
}

#[test]
fn the_same_rejection_after_an_approval_is_a_new_fact() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let says = |decision| ByHand { decision, scan: None, how: "on the telephone, 2027-01-16".into(), ..on_paper() };
    for (decision, outcome) in [
        (Decision::Rejected, Outcome::Recorded(vec![])),
        (Decision::Rejected, Outcome::Already),
        (Decision::Approved, Outcome::Recorded(vec![])),
        (Decision::Rejected, Outcome::Recorded(vec![])),
        (Decision::Rejected, Outcome::Already),
        (Decision::Approved, Outcome::Recorded(vec![])),
        (Decision::Rejected, Outcome::Recorded(vec![])),
    ] {
        assert_eq!(receiver.by_hand(&says(decision), now()).unwrap(), outcome);
    }
    let facts = book.facts();
    let responses: std::collections::BTreeSet<_> = facts
        .iter()
        .map(|fact| match fact {
            Fact::Decided(decided) => decided.response,
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!((facts.len(), responses.len()), (5, 5), "each has a name of its own");
}

#[test]
fn an_approval_names_an_option_where_several_stand_open() {
    let book = IssuedBook::of_options(&["steel", "brass"]);
    let receiver = book.receiver();
    let told = receiver.by_hand(&on_paper(), now()).unwrap_err().to_string();
    assert!(told.contains("several options stand open, and it names none"), "{told}");
    let told = receiver.take_in(&book.sealed(1), now()).unwrap_err().to_string();
    assert!(told.contains("kitchen/range: several options stand open"), "{told}");
    assert!(book.facts().is_empty());
    let named = ByHand { option: Some("brass".into()), ..on_paper() };
    assert_eq!(receiver.by_hand(&named, now()).unwrap(), Outcome::Recorded(vec![]));
    let rejected = ByHand { decision: Decision::Rejected, ..on_paper() };
    assert_eq!(receiver.by_hand(&rejected, now()).unwrap(), Outcome::Recorded(vec![]), "a rejection needs none");
}

/// Readings of the range, made by somebody at some moment.
fn readings(book: &IssuedBook, by: &str, made: &str) -> Vec<u8> {
    let value = serde_json::json!({
        "format": "bookmatch readings 1", "book": book.id, "issue": 1, "by": by, "nonce": "0".repeat(32), "made": made,
        "readings": [{"room": "kitchen", "opening": "range", "what": "width", "at": "top", "length": "762000000"}],
    });
    value.to_string().into_bytes()
}

#[test]
fn readings_are_confirmed_and_taken_back_by_their_digits_or_by_who_measured() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    for (by, made) in
        [("Ivo Tarn", "2027-01-16T09:00:00Z"), ("Bo", "2027-01-16T10:00:00Z"), ("Bo", "2027-01-16T11:00:00Z")]
    {
        assert_eq!(receiver.take_in(&readings(&book, by, made), now()).unwrap(), Outcome::Waiting);
    }
    let facts = book.facts();
    let Fact::Measured(first) = &facts[0] else { panic!() };
    let digits = first.response.to_string()[..8].to_owned();
    assert_eq!(receiver.confirm(&digits, "Dara Vell", now()).unwrap(), Outcome::Recorded(vec![]));
    let back = |named: &str| receiver.take_back(named, "Dara Vell", Some("the wrong niche"), now());
    for several in ["Bo", "nobody", &digits[..7]] {
        assert!(matches!(back(several), Err(Refusal::Readings(..))), "{several}");
    }
    assert!(back("Bo").unwrap_err().to_string().contains("several are of `Bo`"));
    assert_eq!(back("Ivo Tarn").unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(back(&digits).unwrap(), Outcome::Already);
    let Fact::Measured(second) = &facts[1] else { panic!() };
    assert_eq!(back(&second.response.to_string()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(back("Bo").unwrap(), Outcome::Recorded(vec![]), "one alone is left");
}

#[test]
fn readings_made_on_a_page_of_another_ledger_are_refused() {
    let book = IssuedBook::new();
    let mut other: serde_json::Value = serde_json::from_slice(&readings(&book, "Bo", "2027-01-16T10:00:00Z")).unwrap();
    other["ledger"] = serde_json::json!({"line": 4, "sha256": "0".repeat(64)});
    let refused = book.receiver().take_in(other.to_string().as_bytes(), now()).unwrap_err();
    assert!(matches!(refused, Refusal::OtherLedger(4)), "{refused}");
    let ledger = bookmatch::ledger::Chain::read(&std::fs::read(book.path().join("record/ledger.jsonl")).unwrap());
    other["ledger"] = serde_json::to_value(ledger.head().unwrap()).unwrap();
    assert_eq!(book.receiver().take_in(other.to_string().as_bytes(), now()).unwrap(), Outcome::Waiting);
}

#[test]
fn readings_from_a_moment_to_come_are_refused() {
    let book = IssuedBook::new();
    for made in ["2099-01-01T09:00:00Z", "2027-01-16T19:28:00Z"] {
        let refused = book.receiver().take_in(&readings(&book, "Bo", made), now()).unwrap_err();
        assert!(matches!(refused, Refusal::Ahead(_)), "{refused}");
    }
    assert_eq!(
        book.receiver().take_in(&readings(&book, "Bo", "2027-01-16T19:26:00Z"), now()).unwrap(),
        Outcome::Waiting
    );
}
