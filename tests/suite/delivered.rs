//! What came in a delivery and that an issue came to hand, as they are handed over and taken in.

pub mod photographs;

use bookmatch::ledger::Fact;
use bookmatch::record::{Outcome, Refusal};
use serde_json::{Value, json};

use crate::issued::{IssuedBook, mark, now};

/// What `Teo Varrick` says of a range that came in another finish; `n` makes each another.
fn delivery(book: &IssuedBook, n: u32) -> Value {
    json!({
        "format": "bookmatch delivery 1", "book": book.id, "issue": 1, "by": "Teo Varrick",
        "delivery": {"from": "Oren", "note": "4711"}, "nonce": format!("{n:032x}"), "made": "2027-01-16T10:00:00Z",
        "items": [{
            "room": "kitchen", "item": "range", "option": "steel", "mark": mark("range", "black"),
            "lines": [{"of": "model", "came": "approved"}, {"of": "finish", "came": "different", "words": "grey"}],
            "kept": "set aside", "photos": [{"name": "IMG 4.jpg", "sha256": "ab".repeat(32)}],
        }],
    })
}

fn acknowledgement(book: &IssuedBook, by: &str, n: u32) -> Value {
    json!({
        "format": "bookmatch acknowledgement 1", "book": book.id, "issue": 1, "by": by,
        "nonce": format!("{n:032x}"), "made": "2027-01-16T10:00:00Z",
    })
}

fn take_in(book: &IssuedBook, says: &Value) -> Result<Outcome, Refusal> {
    book.receiver().take_in(says.to_string().as_bytes(), now())
}

fn received(book: &IssuedBook) -> Vec<Fact> {
    book.all_facts().into_iter().filter(|fact| matches!(fact, Fact::Received(_) | Fact::Acknowledged(_))).collect()
}

#[test]
fn a_delivery_is_recorded_with_its_identity_once_and_waits_to_be_confirmed() {
    let book = IssuedBook::new();
    assert_eq!(take_in(&book, &delivery(&book, 1)).unwrap(), Outcome::Waiting);
    assert_eq!(take_in(&book, &delivery(&book, 1)).unwrap(), Outcome::Already);
    assert_eq!(take_in(&book, &delivery(&book, 2)).unwrap(), Outcome::Already, "the same words of the same delivery");
    let [Fact::Received(fact)] = &received(&book)[..] else { panic!() };
    assert_eq!((fact.delivery.from.as_str(), fact.delivery.note.as_str()), ("Oren", "4711"));
    assert_eq!(fact.items[0].photos[0].name, "IMG 4.jpg");
    let file = book.path().join(format!("record/responses/{}.json", fact.response));
    assert!(file.is_file(), "it is kept as it came");
    let receiver = book.receiver();
    let digits = fact.response.to_string()[..8].to_owned();
    assert_eq!(receiver.confirm(&digits, "Dara Vell", now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.take_back("Teo Varrick", "Dara Vell", None, now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(take_in(&book, &delivery(&book, 2)).unwrap(), Outcome::Waiting, "said anew after it was taken back");
}

#[test]
fn the_device_and_its_count_are_kept_and_older_pages_need_none() {
    let book = IssuedBook::new();
    let mut says = delivery(&book, 1);
    says["device"] = json!({"id": "a".repeat(32), "turn": 3});
    assert_eq!(take_in(&book, &says).unwrap(), Outcome::Waiting);
    let [Fact::Received(fact)] = &received(&book)[..] else { panic!() };
    assert_eq!(fact.device.as_ref().map(|device| device.turn), Some(3));
    let mut odd = delivery(&book, 2);
    odd["delivery"]["note"] = json!("4712");
    odd["device"] = json!({"id": "the tablet", "turn": 1});
    assert!(take_in(&book, &odd).unwrap_err().to_string().contains("device.id"));
}

#[test]
fn what_is_said_otherwise_of_the_same_delivery_is_another_fact() {
    let book = IssuedBook::new();
    take_in(&book, &delivery(&book, 1)).unwrap();
    let mut other = delivery(&book, 2);
    other["items"][0]["lines"][1] = json!({"of": "finish", "came": "approved"});
    other["items"][0].as_object_mut().unwrap().remove("kept");
    assert_eq!(take_in(&book, &other).unwrap(), Outcome::Waiting);
    assert_eq!(received(&book).len(), 2, "nothing takes the place of what was said before");
}

#[test]
fn what_is_no_whole_answer_or_of_no_issue_is_refused_and_leaves_nothing_behind() {
    let book = IssuedBook::new();
    let refused = |change: &dyn Fn(&mut Value), words: &str| {
        let mut says = delivery(&book, 1);
        change(&mut says);
        let why = take_in(&book, &says).unwrap_err().to_string();
        assert!(why.contains(words), "{why}");
    };
    let item = |says: &mut Value, key: &str, value: Value| says["items"][0][key] = value;
    refused(&|says| item(says, "kept", Value::Null), "what became of it");
    refused(&|says| item(says, "lines", json!([{"of": "finish", "came": "different"}])), "what became of it");
    refused(&|says| item(says, "lines", json!([])), "of any item");
    refused(&|says| item(says, "lines", json!([{"of": "scent", "came": "approved"}])), "not a response");
    refused(&|says| item(says, "mark", json!(mark("range", "pink"))), "no issue of this book shows `kitchen/range`");
    refused(&|says| item(says, "item", json!("hood")), "no issue of this book shows `kitchen/hood`");
    refused(&|says| item(says, "photos", json!([{"name": "a\u{7}b"}])), "photos.name");
    refused(&|says| says["issue"] = json!(7), "no issue 7");
    refused(&|says| says["made"] = json!("2099-01-01T09:00:00Z"), "still to come");
    refused(&|says| says["delivery"]["note"] = json!(" "), "delivery.note");
    refused(&|says| says["ledger"] = json!({"line": 4, "sha256": "0".repeat(64)}), "line 4 of the ledger");
    refused(&|says| says["book"] = json!("0".repeat(32)), "of another book");
    let twice = |says: &mut Value| {
        let one = says["items"][0].clone();
        says["items"].as_array_mut().unwrap().push(one);
    };
    refused(&twice, "twice");
    assert!(received(&book).is_empty());
}

#[test]
fn an_acknowledgement_of_one_person_and_issue_is_one_fact() {
    let book = IssuedBook::new();
    assert_eq!(take_in(&book, &acknowledgement(&book, "Teo Varrick", 1)).unwrap(), Outcome::Waiting);
    assert_eq!(take_in(&book, &acknowledgement(&book, "Teo Varrick", 2)).unwrap(), Outcome::Already);
    assert_eq!(take_in(&book, &acknowledgement(&book, "Lorn Tazewick", 3)).unwrap(), Outcome::Waiting);
    assert_eq!(received(&book).len(), 2);
    let mut other = acknowledgement(&book, "Teo Varrick", 4);
    other["issue"] = json!(2);
    assert!(matches!(take_in(&book, &other), Err(Refusal::NoIssue(2))));
}

/// Strangers can hand both in: so many wait and no more are taken.
#[test]
fn a_flood_of_deliveries_is_no_more_than_waits() {
    let book = IssuedBook::new();
    let of = |n: u32| {
        let mut says = delivery(&book, n);
        says["delivery"]["note"] = json!(n.to_string());
        says
    };
    for n in 0..20 {
        assert_eq!(take_in(&book, &of(n)).unwrap(), Outcome::Waiting);
    }
    let full = take_in(&book, &of(20)).unwrap_err();
    assert!(matches!(full, Refusal::Full(_)) && full.to_string().starts_with("20 deliveries of `Teo Varrick` wait"));
    assert_eq!(take_in(&book, &acknowledgement(&book, "Teo Varrick", 1)).unwrap(), Outcome::Waiting);
}
