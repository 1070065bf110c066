//! A record that is lost whole, or exchanged with all that lies in it: what was published or answered shows it.

use std::path::Path;

use bookmatch::ledger::{Chain, Fact, Line};
use serde_json::{Value, json};

use crate::project::{Project, Ran};

fn run(project: &Project, arguments: &[&str]) -> Ran {
    project.run([arguments, &["--today", "2027-01-15"]].concat())
}

fn publish(project: &Project, out: &Path, draft: &[&str]) -> Ran {
    run(project, &[&["publish", "--out", out.to_str().unwrap()], draft].concat())
}

#[test]
fn a_record_that_is_gone_whole_shows_by_what_was_published_and_nothing_is_begun_anew() {
    let project = Project::with_a_rug_issued();
    let site = project.root().join("site");
    publish(&project, &site, &[]).exits(0);
    let record = project.root().join("record");
    std::fs::remove_dir_all(&record).unwrap();
    let told = "`site` was published over another line 2 of the ledger than the one that stands there";
    run(&project, &["review"]).exits(1).says(told);
    run(&project, &["status"]).exits(1).says(told);
    run(&project, &["issue", "--for", "approval"]).exits(1).says(told);
    run(&project, &["invite", "--address", "https://book.example/client"]).exits(2).says(told);
    for draft in [&[][..], &["--draft"]] {
        publish(&project, &site, draft).exits(1).says(told);
    }
    assert!(!record.join("ledger.jsonl").exists());
    // Begun anew on purpose.
    std::fs::rename(&site, project.beside("old")).unwrap();
    run(&project, &["review"]).exits(0);
    run(&project, &["issue", "--for", "approval"]).exits(0);
}

#[test]
fn what_lies_elsewhere_is_neither_published_over_nor_served_from_another_ledger() {
    let project = Project::with_a_rug_issued();
    let site = project.beside("site");
    publish(&project, &site, &[]).exits(0);
    let page = || std::fs::read(site.join("client/index.html")).unwrap();
    let before = page();
    let record = project.root().join("record");
    std::fs::rename(&record, project.beside("record")).unwrap();
    let told = "was published over another line 2 of the ledger";
    for draft in [&[][..], &["--draft"]] {
        publish(&project, &site, draft).exits(1).says(told);
    }
    run(&project, &["issue", "--for", "approval"]).exits(0);
    let served = ["host", "--site", site.to_str().unwrap(), "--address", "127.0.0.1:0"];
    project.run(served).exits(2).says(told);
    assert_eq!(page(), before);
    std::fs::remove_dir_all(&record).unwrap();
    std::fs::rename(project.beside("record"), &record).unwrap();
    publish(&project, &site, &[]).exits(0);
}

/// Lines written anew, with their digests, their head, and the file of the issue that named the old ones.
#[test]
fn a_ledger_that_was_rewritten_with_all_its_heads_shows_by_what_was_answered() {
    let project = Project::with_a_rug_issued();
    let path = project.root().join("record/ledger.jsonl");
    let issue = std::fs::read(project.root().join("record/issues/0001.json")).unwrap();
    let issue: Value = serde_json::from_slice(&issue).unwrap();
    let head = Chain::read(&std::fs::read(&path).unwrap()).head().unwrap();
    let response = json!({
        "format": "bookmatch response 1", "book": issue["book"], "issue": 1, "who": "ada", "nonce": "0".repeat(32),
        "made": "2027-01-15T10:00:00Z", "ledger": head,
        "items": [{"room": "kitchen", "item": "rug", "mark": issue["items"][0]["mark"], "decision": "rejected"}],
        "signed": {"name": "Ada Marrowby", "statement": "I have seen it.", "drawing": ""},
    });
    let file = project.beside("response.json");
    std::fs::write(&file, response.to_string()).unwrap();
    project.run(["receive", file.to_str().unwrap()]).exits(0);
    run(&project, &["review"]).does_not_say("approve/ledger");
    let mut chain = Chain::default();
    let mut bytes = Vec::new();
    for mut line in Chain::read(&std::fs::read(&path).unwrap()).lines {
        if let Fact::Opened(opened) = &mut line.fact {
            opened.title = "Another".into();
        }
        let line = Line::next(&chain, line.at, line.fact).unwrap();
        bytes.extend(line.bytes().unwrap());
        chain.lines.push(line);
    }
    std::fs::write(&path, bytes).unwrap();
    let head = serde_json::to_vec(&chain.head().unwrap()).unwrap();
    std::fs::write(project.root().join("record/head.json"), head).unwrap();
    run(&project, &["review"])
        .exits(1)
        .says("a response of `ada` was made on another line 2 of the ledger than the one that stands there");
}
