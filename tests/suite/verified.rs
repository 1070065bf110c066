//! A whole record verified by another program, from what the handbook says of its formats alone.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use bookmatch::digest::Digest;
use bookmatch::ledger::Decision;
use bookmatch::record::{ByHand, ItemName, Outcome, Store};
use serde_json::{Value, json};

use crate::issued::{IssuedBook, mark, now, seal};
use crate::project::Project;
use crate::project::picture::jpeg;

/// What the other program says of a record, and whether it is as it should be.
fn verified(record: &Path) -> (bool, String) {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/model/record.py");
    let ran = Command::new("python3").arg(script).arg(record).output().expect("python3 can be run");
    let said = [ran.stdout, ran.stderr].concat();
    (ran.status.success(), String::from_utf8_lossy(&said).into_owned())
}

fn handed(book: &IssuedBook, format: &str, more: Value) -> Vec<u8> {
    let mut says = json!({
        "format": format, "book": book.id, "issue": 1, "by": "Teo Varrick", "nonce": "0".repeat(32),
        "made": "2027-01-16T10:00:00Z",
    });
    says.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    says.to_string().into_bytes()
}

/// A record with every sort of thing in it.
fn whole() -> IssuedBook {
    let book = IssuedBook::new();
    let receiver = book.receiver();
    let take_in = |bytes: &[u8]| receiver.take_in(bytes, now()).unwrap();
    take_in(&book.sealed(1));
    take_in(book.response(2).to_string().as_bytes());
    assert_eq!(take_in(&seal(book.response(2), &book.keys[0])), Outcome::Recorded(vec![]), "with its proof");
    take_in(book.response(3).to_string().as_bytes());
    let read = json!({"room": "kitchen", "opening": "range", "what": "width", "at": "top", "length": "762000000"});
    take_in(&handed(&book, "bookmatch readings 1", json!({"readings": [read]})));
    let photograph = jpeg("box", 96, 64);
    let item = json!({
        "room": "kitchen", "item": "range", "mark": mark("range", "black"),
        "lines": [{"of": "finish", "came": "different", "words": "grey"}], "kept": "taken",
        "photos": [{"name": "IMG 4.jpg", "sha256": Digest::of(&photograph).to_string(), "bytes": photograph.len()}],
    });
    let photographs = json!({Digest::of(&photograph).to_string(): STANDARD.encode(&photograph)});
    let delivery = json!({"delivery": {"from": "Oren", "note": "4711"}, "items": [item], "photographs": photographs});
    take_in(&handed(&book, "bookmatch delivery 1", delivery));
    take_in(&handed(&book, "bookmatch acknowledgement 1", json!({})));
    let by_hand = ByHand {
        who: "samir".into(),
        items: vec![ItemName::Of("kitchen".into(), "range".into())],
        decision: Decision::Approved,
        option: None,
        note: None,
        how: "signed on paper, 2027-01-16".into(),
        given: None,
        scan: Some((b"a scan".to_vec(), "pdf".into())),
    };
    receiver.by_hand(&by_hand, now()).unwrap();
    // A key that is renewed takes the proof of what it sealed with it.
    let store = Store::of_book(book.path());
    store.open().unwrap().invite("samir", now(), now().day().unwrap()).unwrap();
    let samir = json!({"who": "samir", "signed": {"name": "Samir", "statement": "I have seen it.", "drawing": ""}});
    let mut response = book.response(4);
    response.as_object_mut().unwrap().extend(samir.as_object().unwrap().clone());
    assert!(receiver.take_in(&seal(response, &book.keys[1]), now()).is_err(), "the old key");
    book.issue(2, &[("range", "black"), ("sink", "white")]);
    book
}

/// Source: the pages `explain ledger` and `explain mark`; Python's `json`, `hashlib` and `hmac`.
#[test]
fn every_part_of_a_record_is_verified_by_another_program() {
    let book = whole();
    let (holds, said) = verified(&book.path().join("record"));
    assert!(holds, "{said}");
    for part in ["issues: 2", "marks: 4", "responses: 8", "photographs: 1", "seals: 2"] {
        assert!(said.lines().any(|line| line == part), "{part}: {said}");
    }
    // One whose key was renewed since.
    Store::of_book(book.path()).open().unwrap().invite("odile", now(), now().day().unwrap()).unwrap();
    let (holds, said) = verified(&book.path().join("record"));
    assert!(holds && said.contains("seals of keys that are gone: 2"), "{said}");
}

#[test]
fn the_example_s_record_is_verified_whole() {
    let project = Project::copy_of("example-project");
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let (holds, said) = verified(&project.root().join("record"));
    assert!(holds && said.contains("issues: 1\n") && !said.contains("marks: 0\n"), "{said}");
}

/// Every key of an object, and of those in it.
fn keys_of(value: &Value, keys: &mut BTreeSet<String>) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(key, value)| {
            keys.insert(key.clone());
            keys_of(value, keys);
        }),
        Value::Array(values) => values.iter().for_each(|value| keys_of(value, keys)),
        _ => {}
    }
}

#[test]
fn the_page_of_the_ledger_tells_every_field_that_stands_in_a_record() {
    let (book, mut keys) = (whole(), BTreeSet::new());
    let record = book.path().join("record");
    for line in fs::read_to_string(record.join("ledger.jsonl")).unwrap().lines() {
        let line: Value = serde_json::from_str(line).unwrap();
        keys.insert(line["fact"]["is"].as_str().unwrap().to_string());
        keys_of(&line, &mut keys);
    }
    for file in walkdir::WalkDir::new(record.join("responses")).into_iter().map(|one| one.unwrap().into_path()) {
        if file.is_file() {
            let handed: Value = serde_json::from_slice(&fs::read(file).unwrap()).unwrap();
            keys.insert(handed["format"].as_str().unwrap().to_string());
            keys_of(&handed, &mut keys);
        }
    }
    let mut issue: Value = serde_json::from_slice(&fs::read(record.join("issues/0001.json")).unwrap()).unwrap();
    issue["items"].as_array_mut().unwrap().iter_mut().for_each(|item| item["content"] = Value::Null);
    keys_of(&issue, &mut keys);
    let page = bookmatch::explain::explain("ledger", bookmatch::units::System::Metric).unwrap();
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(keys.len() > 40, "{keys:?}");
    for key in keys {
        assert!(page.contains(&format!("`{key}`")), "`{key}` is not on the page:\n{page}");
    }
}

/// The first file of a folder of the record that is no proof: names are digests, so any may come first.
fn first(record: &Path, folder: &str) -> PathBuf {
    let paths = fs::read_dir(record.join(folder)).unwrap().map(|one| one.unwrap().path());
    let names: BTreeSet<PathBuf> = paths.filter(|path| !path.to_string_lossy().ends_with("-sealed.json")).collect();
    names.into_iter().next().unwrap()
}

fn rewrite(path: &Path, from: &str, to: &str) {
    let text = fs::read_to_string(path).unwrap();
    assert!(text.contains(from), "{from} is not in {text}");
    fs::write(path, text.replacen(from, to, 1)).unwrap();
}

/// Wants a copy of a record in which something was changed to be told as wrong, in these words.
fn told_of(record: &Path, change: &dyn Fn(&Path), words: &str) {
    let copy = tempfile::tempdir().unwrap();
    for entry in walkdir::WalkDir::new(record) {
        let entry = entry.unwrap();
        let to = copy.path().join(entry.path().strip_prefix(record).unwrap());
        if entry.file_type().is_dir() {
            fs::create_dir_all(to).unwrap();
        } else {
            fs::copy(entry.path(), to).unwrap();
        }
    }
    change(copy.path());
    let (holds, said) = verified(copy.path());
    assert!(!holds && said.starts_with("wrong: ") && said.contains(words), "{words}: {said}");
}

/// Another seal on the response that came again with its proof.
fn exchange_a_seal(record: &Path) {
    let names = walkdir::WalkDir::new(record.join("responses")).into_iter().map(|one| one.unwrap().into_path());
    let sealed = names.into_iter().find(|path| path.to_string_lossy().ends_with("-sealed.json")).unwrap();
    let text = fs::read_to_string(&sealed).unwrap();
    let mac = &text[text.find("\"mac\":\"").unwrap()..][..71];
    rewrite(&sealed, mac, &format!("\"mac\":\"{}", "0".repeat(64)));
}

fn cut_the_last_line(record: &Path) {
    let ledger = fs::read_to_string(record.join("ledger.jsonl")).unwrap();
    let end = ledger.trim_end().rfind('\n').unwrap() + 1;
    fs::write(record.join("ledger.jsonl"), &ledger[..end]).unwrap();
}

#[test]
fn whatever_is_changed_of_a_record_is_seen_by_another_program() {
    let book = whole();
    let record = book.path().join("record");
    let changed = |change: &dyn Fn(&Path), words: &str| told_of(&record, change, words);
    let response = |record: &Path| first(record, "responses");
    let [stranger, picture] =
        ["responses/{}.json", "photographs/{}.jpg"].map(|path| path.replace("{}", &"ab".repeat(32)));
    let (at, later) = ("\"at\":\"2027-01-16T19:22:03Z\"", "\"at\":\"2027-01-16T19:22:04Z\"");
    changed(&|at| rewrite(&response(at), "\"nonce\":\"", "\"nonce\":\"f"), "has another digest");
    changed(&|at| fs::remove_file(response(at)).unwrap(), "responses");
    changed(&|at| fs::write(at.join(&stranger), "{}").unwrap(), "is named by no line");
    changed(&|at| rewrite(&at.join("issues/0001.json"), "white", "grey!"), "has another digest");
    changed(&|at| fs::write(first(at, "scans"), "another").unwrap(), "scan");
    changed(&|at| fs::write(first(at, "photographs"), "another").unwrap(), "photographs");
    changed(&|at| fs::remove_file(first(at, "photographs")).unwrap(), "photographs");
    changed(&|at| fs::write(at.join(&picture), "").unwrap(), "is named by no line");
    changed(&|record| rewrite(&record.join("ledger.jsonl"), at, later), "digest");
    changed(&cut_the_last_line, "the head is of another ledger, or lines are lost");
    changed(&exchange_a_seal, "bears another seal");
    let ledger = fs::read(record.join("ledger.jsonl")).unwrap();
    for place in (0..ledger.len()).step_by(ledger.len() / 40) {
        let flipped = |at: &Path| {
            let mut bytes = ledger.clone();
            bytes[place] ^= 1;
            fs::write(at.join("ledger.jsonl"), bytes).unwrap();
        };
        changed(&flipped, "");
    }
}
