//! Decisions given by other means, confirmations, and conditions that are met.

use bookmatch::ledger::{By, Decision, Fact};
use bookmatch::record::{ByHand, Outcome, Refusal};

use crate::issued::{IssuedBook, now, seal};

fn on_paper() -> ByHand {
    ByHand {
        who: "samir".into(),
        items: vec![("kitchen".into(), "range".into())],
        decision: Decision::Approved,
        option: None,
        note: None,
        how: "signed on paper, 2027-01-16".into(),
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
    assert_eq!((fact.by, fact.how.as_deref()), (By::Hand, Some("signed on paper, 2027-01-16")));
    assert_eq!(fact.items[0].mark.to_string(), crate::issued::mark("range", "black"));
    let scan = std::fs::read_dir(book.path().join("record/scans")).unwrap().next().unwrap().unwrap();
    assert_eq!(std::fs::read(scan.path()).unwrap(), b"a scan");
}

#[test]
fn nobody_else_and_nothing_that_was_not_issued_is_written_down() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let stranger = ByHand { who: "ivo".into(), ..on_paper() };
    assert!(matches!(receiver.by_hand(&stranger, now()), Err(Refusal::NoApprover(_))));
    let missing = ByHand { items: vec![("kitchen".into(), "hood".into())], ..on_paper() };
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
fn a_condition_is_met_only_where_there_is_one() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let range = ("kitchen".to_owned(), "range".to_owned());
    assert!(matches!(receiver.met(&range, "Dara Vell", "done", now()), Err(Refusal::NoCondition(..))));
    let mut response = book.response(1);
    response["items"][0]["decision"] = "approved as noted".into();
    response["items"][0]["note"] = "if the knobs are black".into();
    receiver.take_in(&seal(response, &book.keys[0]), now()).unwrap();
    assert_eq!(receiver.met(&range, "Dara Vell", "black knobs ordered", now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.met(&range, "Dara Vell", "black knobs ordered", now()).unwrap(), Outcome::Already);
}
