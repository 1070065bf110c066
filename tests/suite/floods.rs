//! A flood of what anybody can send: so much waits, and no more is taken.

use bookmatch::ledger::Fact;
use bookmatch::record::{Full, MOST_BYTES, MOST_IN_A_NAME, MOST_IN_ALL, Outcome, Receiver, Refusal, Waits};
use serde_json::{Value, json};

use crate::issued::{IssuedBook, now, seal};
use crate::project::Project;

/// A receiver of a book with so many more approvers that nobody invited.
fn receiver(book: &IssuedBook) -> Receiver {
    let approvers = ["odile", "samir", "cleo", "dov", "edda"].map(String::from).into();
    Receiver::new(book.path(), approvers, [("kitchen".to_owned(), "range".to_owned())].into())
}

fn unsigned(book: &IssuedBook, who: &str, n: usize) -> Value {
    let mut response = book.response(u32::try_from(n).unwrap());
    response["who"] = who.into();
    response
}

fn take(receiver: &Receiver, response: &Value) -> Result<Outcome, Refusal> {
    receiver.take_in(response.to_string().as_bytes(), now())
}

#[test]
fn in_one_name_so_many_wait_and_what_is_sealed_is_always_taken() {
    let book = IssuedBook::new();
    let receiver = receiver(&book);
    for n in 0..MOST_IN_A_NAME {
        assert_eq!(take(&receiver, &unsigned(&book, "odile", n)).unwrap(), Outcome::Unsigned(vec![]));
    }
    let length = || std::fs::metadata(book.path().join("record/ledger.jsonl")).unwrap().len();
    let before = length();
    let refused = take(&receiver, &unsigned(&book, "odile", MOST_IN_A_NAME)).unwrap_err();
    let full = Full::InAName(Waits::Responses, "odile".into());
    assert!(matches!(&refused, Refusal::Full(told) if *told == full), "{refused}");
    assert!(refused.to_string().contains("20 responses that bear no key of `odile` wait to be confirmed"), "{refused}");
    assert_eq!(length(), before, "nothing is written");
    assert_eq!(take(&receiver, &unsigned(&book, "odile", 0)).unwrap(), Outcome::Already);
    assert_eq!(receiver.take_in(&book.sealed(99), now()).unwrap(), Outcome::Recorded(vec![]));
    assert_eq!(take(&receiver, &unsigned(&book, "samir", 0)).unwrap(), Outcome::Unsigned(vec![]), "another name");
    // What is put aside, confirmed, or came again with its proof, waits no longer.
    let of = |at: usize| match &book.facts()[at] {
        Fact::Decided(decided) => decided.response.to_string(),
        other => panic!("{other:?}"),
    };
    receiver.not_theirs(&[of(0)], "Dara Vell", None, now()).unwrap();
    receiver.confirm(&of(1), "Dara Vell", now()).unwrap();
    receiver.take_in(&seal(unsigned(&book, "odile", 2), &book.keys[0]), now()).unwrap();
    for n in 0..3 {
        take(&receiver, &unsigned(&book, "odile", 200 + n)).unwrap();
    }
    assert!(matches!(take(&receiver, &unsigned(&book, "odile", 300)), Err(Refusal::Full(_))));
}

#[test]
fn in_all_names_so_many_wait_and_so_many_bytes() {
    let book = IssuedBook::new();
    let many = receiver(&book);
    for n in 0..MOST_IN_ALL {
        let who = ["odile", "samir", "cleo", "dov"][n % 4];
        take(&many, &unsigned(&book, who, n)).unwrap();
    }
    let refused = take(&many, &unsigned(&book, "edda", 0)).unwrap_err();
    assert!(matches!(refused, Refusal::Full(Full::InAll(Waits::Responses))), "{refused}");
    let book = IssuedBook::new();
    let many = receiver(&book);
    // Decisions that are not taken swell a response too.
    let large = |n: usize| {
        let mut response = unsigned(&book, ["odile", "samir"][n % 2], n);
        let mark = response["items"][0]["mark"].clone();
        for item in 0..14 {
            let note = "\u{1f4d0}".repeat(4_000);
            let one = json!({"room": "kitchen", "item": format!("x{item}"), "mark": mark, "decision": "approved", "note": note});
            response["items"].as_array_mut().unwrap().push(one);
        }
        response
    };
    let size = large(0).to_string().len() as u64;
    let fit = usize::try_from(MOST_BYTES / size).unwrap();
    assert!(fit < 2 * MOST_IN_A_NAME, "the size is what decides here");
    for n in 0..fit {
        take(&many, &large(n)).unwrap();
    }
    let refused = take(&many, &large(fit)).unwrap_err();
    assert!(matches!(refused, Refusal::Full(Full::Bytes(Waits::Responses))), "{refused}");
}

/// Readings prove nothing either: they have limits of their own, so that a flood of one holds up none of the other.
#[test]
fn readings_that_wait_are_bounded_too() {
    let book = IssuedBook::new();
    let receiver = receiver(&book);
    let readings = |by: String, n: usize| {
        let read = json!({"room": "kitchen", "opening": "range", "what": "width", "at": "top", "length": "762000000"});
        json!({
            "format": "bookmatch readings 1", "book": book.id, "issue": 1, "by": by, "nonce": format!("{n:032x}"),
            "made": "2027-01-16T10:00:00Z", "readings": [read],
        })
    };
    for n in 0..MOST_IN_A_NAME {
        assert_eq!(take(&receiver, &readings("Bo".into(), n)).unwrap(), Outcome::Waiting);
    }
    let refused = take(&receiver, &readings("Bo".into(), 500)).unwrap_err();
    assert!(matches!(&refused, Refusal::Full(Full::InAName(Waits::Readings, who)) if who == "Bo"), "{refused}");
    for n in MOST_IN_A_NAME..MOST_IN_ALL {
        take(&receiver, &readings(format!("Bo {n}"), n)).unwrap();
    }
    let refused = take(&receiver, &readings("Cy".into(), 501)).unwrap_err();
    assert!(matches!(refused, Refusal::Full(Full::InAll(Waits::Readings))), "{refused}");
    assert_eq!(take(&receiver, &unsigned(&book, "odile", 0)).unwrap(), Outcome::Unsigned(vec![]));
    let Fact::Measured(first) = &book.facts()[0] else { panic!() };
    receiver.take_back(&first.response.to_string(), "Dara Vell", None, now()).unwrap();
    assert_eq!(take(&receiver, &readings("Cy".into(), 502)).unwrap(), Outcome::Waiting);
}

#[test]
fn a_flood_that_came_as_files_is_one_finding_and_one_row_and_is_put_aside_by_one_command() {
    let project = Project::with_a_rug_issued();
    let issue = std::fs::read(project.root().join("record/issues/0001.json")).unwrap();
    let issue: Value = serde_json::from_slice(&issue).unwrap();
    let mut command = vec!["receive".to_owned()];
    for n in 0..=MOST_IN_A_NAME {
        let response = json!({
            "format": "bookmatch response 1", "book": issue["book"], "issue": 1, "who": "ada",
            "nonce": format!("{n:032x}"), "made": "2027-01-15T10:00:00Z",
            "items": [{"room": "kitchen", "item": "rug", "mark": issue["items"][0]["mark"], "decision": "rejected"}],
            "signed": {"name": "Ada Marrowby", "statement": "I have seen it.", "drawing": ""},
        });
        let file = project.beside(&format!("{n}.json"));
        std::fs::write(&file, response.to_string()).unwrap();
        command.push(file.to_str().unwrap().to_owned());
    }
    let told = "not recorded: 20 responses that bear no key of `ada` wait to be confirmed";
    project.run(command.iter().map(String::as_str)).exits(1).says(told);
    let today = ["--today", "2027-01-15"];
    let review = || project.run(["review"].into_iter().chain(today));
    let ran = review().says("20 responses for Ada Marrowby bear no key");
    assert_eq!(ran.stdout.matches("query[approve/unsigned]").count(), 1, "{}", ran.stdout);
    let out = project.beside("site");
    project.run(["publish", "--draft", "--out", out.to_str().unwrap()].into_iter().chain(today));
    let page = std::fs::read_to_string(out.join("office/index.html")).unwrap();
    assert_eq!(page.matches("20 unsigned: to be confirmed").count(), 1);
    let ledger = std::fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap();
    let digits: Vec<String> = ledger
        .lines()
        .filter_map(|line| {
            Some(serde_json::from_str::<Value>(line).ok()?["fact"]["response"].as_str()?[..8].to_owned())
        })
        .collect();
    assert!(digits.iter().all(|one| page.contains(one)), "each is named, to be confirmed or put aside");
    let aside = ["receive", "--by", "Ines Tarrow", "--not-theirs"].into_iter().chain(digits.iter().map(String::as_str));
    project.run(aside).exits(0).says("recorded");
    review().does_not_say("approve/unsigned");
    project.run(["receive", "--not-theirs", &digits[0]]).exits(2).says("--by");
}
