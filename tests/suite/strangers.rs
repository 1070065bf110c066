//! What strangers hand over: refused, or inert.

use bookmatch::ledger::{Attestation, Fact};
use bookmatch::record::{Key, Outcome, Refusal, Store};
use serde_json::{Value, json};

use crate::issued::{IssuedBook, mark, now, seal};

/// Takes in what is to be refused, and sees that nothing was recorded.
fn refused(book: &IssuedBook, bytes: &[u8]) -> String {
    let files = || walkdir::WalkDir::new(book.path()).into_iter().map(|entry| entry.unwrap().into_path());
    let before: Vec<_> = files().collect();
    let refusal = book.receiver().take_in(bytes, now()).unwrap_err();
    assert!(!matches!(refusal, Refusal::Failed(_)), "{refusal}");
    assert!(book.facts().is_empty() && files().collect::<Vec<_>>() == before);
    refusal.to_string()
}

#[test]
fn a_wrong_key_another_approvers_and_a_withdrawn_one_prove_nothing() {
    let book = IssuedBook::new();
    for key in [&Key::of([0; 32]), &book.keys[1]] {
        assert!(refused(&book, &seal(book.response(1), key)).contains("not made with the key of `odile`"));
    }
    let sealed = book.sealed(1);
    let receiver = book.receiver();
    receiver
        .store()
        .open()
        .unwrap()
        .withdraw("odile", now(), bookmatch::units::Date::new(2027, 1, 16).unwrap())
        .unwrap();
    assert!(refused(&book, &sealed).contains("not made with the key"));
}

#[test]
fn the_same_response_twice_is_one_fact_however_its_json_is_written() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    assert_eq!(receiver.take_in(&book.sealed(1), now()).unwrap(), Outcome::Recorded(vec![]));
    let other: Value = serde_json::from_slice(&book.sealed(1)).unwrap();
    let other = serde_json::to_vec_pretty(&other).unwrap();
    for bytes in [book.sealed(1), other] {
        assert_eq!(receiver.take_in(&bytes, now()).unwrap(), Outcome::Already);
        assert_eq!(book.receiver().take_in(&bytes, now()).unwrap(), Outcome::Already, "by another process too");
    }
    assert_eq!(book.facts().len(), 1);
}

#[test]
fn anything_altered_after_sealing_is_refused() {
    let book = IssuedBook::new();
    let sealed: Value = serde_json::from_slice(&book.sealed(1)).unwrap();
    for (place, value) in [
        ("/items/0/note", json!("and a free hood")),
        ("/items/0/decision", json!("rejected")),
        ("/signed/name", json!("Samir Ostrevy")),
        ("/signed/drawing", json!("")),
        ("/made", json!("2027-01-16T19:20:01Z")),
        ("/nonce", json!("f".repeat(32))),
        ("/who", json!("samir")),
    ] {
        let mut altered = sealed.clone();
        if let Some(field) = altered.pointer_mut(place) {
            *field = value;
        } else {
            altered["items"][0]["note"] = value;
        }
        refused(&book, altered.to_string().as_bytes());
    }
}

#[test]
fn a_response_without_its_proof_is_recorded_as_unsigned_and_its_proof_may_follow() {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let bare = book.response(1).to_string().into_bytes();
    assert_eq!(receiver.take_in(&bare, now()).unwrap(), Outcome::Unsigned(vec![]));
    assert_eq!(receiver.take_in(&bare, now()).unwrap(), Outcome::Already);
    assert_eq!(receiver.take_in(&book.sealed(1), now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(receiver.take_in(&bare, now()).unwrap(), Outcome::Already);
    let by: Vec<Attestation> =
        book.facts().iter().map(|fact| if let Fact::Decided(fact) = fact { fact.by } else { panic!() }).collect();
    assert_eq!(by, [Attestation::Unsigned, Attestation::PrivateLink]);
}

#[test]
fn what_is_too_large_too_deep_or_not_of_the_form_is_refused() {
    let book = IssuedBook::new();
    let with = |place: &str, value: Value| {
        let mut response = book.response(1);
        *response.pointer_mut(place).unwrap() = value;
        seal(response, &book.keys[0])
    };
    let extra = {
        let mut response = book.response(1);
        response["colour"] = json!("red");
        seal(response, &book.keys[0])
    };
    let deep = format!("{}{}", "[".repeat(9), "]".repeat(9));
    let item = json!({"room": "kitchen", "item": "range", "mark": mark("range", "black"), "decision": "approved"});
    let mut long = item.clone();
    long["note"] = json!("x".repeat(4_001));
    for (bytes, says) in [
        (vec![b' '; 256 * 1024 + 1], "larger than 256 KiB"),
        (deep.into_bytes(), "deep"),
        ("[".repeat(100_000).into_bytes(), "deep"),
        (b"{}".to_vec(), "format"),
        (b"\xff\xfe".to_vec(), "not a response"),
        (extra, "colour"),
        (with("/issue", json!(1.5)), "not a response"),
        (with("/issue", json!(7)), "no issue 7"),
        (with("/book", json!("0".repeat(32))), "another book"),
        (with("/who", json!("ivo")), "no approver"),
        (with("/items/0", long), "text of `note`"),
        (with("/items/0/decision", json!("yes")), "not a response"),
        (with("/items/0/decision", json!("approved as noted")), "no note"),
        (with("/items", json!([item, item])), "twice"),
        (with("/items", json!(vec![item.clone(); 2_001])), "2001"),
        (with("/items", json!([])), "nothing of any item"),
        (with("/signed/name", json!(" ")), "signed.name"),
        (with("/signed/drawing", json!("M1 1\"/><script>alert(1)</script>")), "signed.drawing"),
        (with("/made", json!("yesterday")), "not a response"),
    ] {
        let told = refused(&book, &bytes);
        assert!(told.contains(says), "{says}: {told}");
    }
}

#[test]
fn a_path_in_a_name_reaches_no_file() {
    let book = IssuedBook::new();
    for path in ["../../odile", "odile/../samir", "/etc/passwd", "..\\odile", "odile\u{0}"] {
        let mut response = book.response(1);
        response["who"] = json!(path);
        refused(&book, &seal(response, &book.keys[0]));
        for field in ["room", "item"] {
            let mut response = book.response(1);
            response["items"] =
                json!([{"room": "kitchen", "item": "range", "mark": mark("range", "black"), "decision": "approved"}]);
            response["items"][0][field] = json!(path);
            refused(&book, &seal(response, &book.keys[0]));
        }
    }
}

#[test]
fn script_in_a_note_is_kept_as_the_words_that_it_is_and_steers_no_terminal() {
    let book = IssuedBook::new();
    let mut response = book.response(1);
    let note = "</script><script>alert(1)</script>";
    response["items"][0]["note"] = json!(note);
    response["items"][1]["room"] = json!("<img onerror=x>");
    let outcome = book.receiver().take_in(&seal(response, &book.keys[0]), now()).unwrap();
    assert_eq!(outcome.refused().len(), 1);
    let Fact::Decided(fact) = &book.facts()[0] else { panic!() };
    assert_eq!(fact.items[0].note.as_deref(), Some(note));
    let mut response = book.response(2);
    response["items"][0]["note"] = json!("\u{1b}]0;owned\u{7}");
    let told = book.receiver().take_in(&seal(response, &book.keys[0]), now()).unwrap_err().to_string();
    assert!(!told.contains(char::is_control), "{told:?}");
    assert_eq!(bookmatch::record::plain("a\u{1b}[2Jb"), "a [2Jb");
}

#[test]
fn an_older_issue_is_answered_for_what_still_holds_and_says_what_does_not() {
    let book = IssuedBook::new();
    book.issue(2, &[("range", "black"), ("sink", "grey")]);
    let outcome = book.receiver().take_in(&book.sealed(1), now()).unwrap();
    let Outcome::Recorded(refused) = outcome else { panic!("{outcome:?}") };
    assert_eq!((refused.len(), refused[0].item.as_str()), (1, "sink"));
    book.issue(3, &[("range", "red"), ("sink", "grey")]);
    let told = book.receiver().take_in(&book.sealed(2), now()).unwrap_err().to_string();
    assert!(told.contains("nothing that it decides") && told.contains("kitchen/range"), "{told}");
}

#[test]
fn a_key_that_stands_twice_is_refused_wherever_it_stands() {
    let book = IssuedBook::new();
    let sealed = String::from_utf8(book.sealed(1)).unwrap();
    for (once, twice) in [
        ("\"issue\":1", "\"issue\":1,\"issue\":1"),
        ("\"decision\":\"approved\"", "\"decision\":\"rejected\",\"decision\":\"approved\""),
        ("\"name\":\"Odile", "\"name\":\"Samir\",\"name\":\"Odile"),
    ] {
        let told = refused(&book, sealed.replacen(once, twice, 1).as_bytes());
        assert!(told.contains("appears twice"), "{told}");
    }
}

#[test]
fn a_page_that_states_a_line_which_the_ledger_does_not_hold_is_told_with_the_line() {
    let book = IssuedBook::new();
    let issued = Store::of_book(book.path()).open().unwrap().chain().head().unwrap();
    let stating = |line: u32, sha256: String| {
        let mut response = book.response(1);
        response["ledger"] = json!({"line": line, "sha256": sha256});
        seal(response, &book.keys[0])
    };
    for (line, sha256) in [(issued.line, "0".repeat(64)), (issued.line + 1, issued.sha256.to_string())] {
        let told = refused(&book, &stating(line, sha256));
        assert!(told.contains(&format!("states line {line} of the ledger, which is not the one")), "{told}");
    }
    let outcome = book.receiver().take_in(&stating(issued.line, issued.sha256.to_string()), now());
    assert_eq!(outcome.unwrap(), Outcome::Recorded(vec![]));
}

#[test]
fn the_device_and_its_count_are_kept_and_older_pages_need_none() {
    let book = IssuedBook::new();
    let mut response = book.response(1);
    response["device"] = json!({"id": "a".repeat(32), "turn": 4});
    book.receiver().take_in(&seal(response, &book.keys[0]), now()).unwrap();
    assert!(matches!(&book.facts()[..], [Fact::Decided(fact)] if fact.device.as_ref().unwrap().turn == 4));
    book.receiver().take_in(&book.sealed(2), now()).unwrap();
    let mut odd = book.response(3);
    odd["device"] = json!({"id": "the tablet", "turn": 1});
    let told = book.receiver().take_in(&seal(odd, &book.keys[0]), now()).unwrap_err().to_string();
    assert!(told.contains("device.id"), "{told}");
}

#[test]
fn readings_are_taken_of_openings_that_there_are() {
    let book = IssuedBook::new();
    let readings = |opening: &str| {
        json!({
            "format": "bookmatch readings 1", "book": book.id, "issue": 1, "by": "Ivo Tarn",
            "nonce": "0".repeat(32), "made": "2027-01-16T09:00:00Z",
            "readings": [{"room": "kitchen", "opening": opening, "what": "width", "at": "top", "length": "762000000"}],
        })
        .to_string()
        .into_bytes()
    };
    assert!(refused(&book, &readings("oven")).contains("no opening `oven`"));
    let receiver = book.receiver();
    assert_eq!(receiver.take_in(&readings("range"), now()).unwrap(), Outcome::Waiting);
    assert_eq!(receiver.take_in(&readings("range"), now()).unwrap(), Outcome::Already);
    assert!(matches!(&book.facts()[..], [Fact::Measured(fact)] if fact.by == "Ivo Tarn"));
}
