//! What `issue` and `compare` say and leave behind.

use crate::project::{Project, Ran};

/// A small book; `lines` are more of its one selection.
fn small(lines: &str) -> Project {
    Project::new()
        .file(
            "book.yaml",
            "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\ntax: 10 %\n\
             approvers:\n  - {id: ada, name: Ada Marrowby}\n  - {id: sven, name: Sven Lint}\n",
        )
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/rug.yaml", &rug(lines))
        .photo("rooms/kitchen/photos/rug.jpg")
}

fn rug(lines: &str) -> String {
    format!(
        "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
         needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\n{lines}\n"
    )
}

const OAK: &str = "finish: oak\nprice: 100.00";
const ASH: &str = "finish: ash\nprice: 120.00";

/// Issues on the day that the clock shows: an issue that bears a day before the one on which it was made
/// is asked anew, and would never stand.
fn issue_now(project: &Project, what: &str) -> Ran {
    project.run(["issue", "--for", what])
}

/// The small book with nothing in it that a day could make late.
fn undated(lines: &str) -> String {
    rug(lines).replace("needed for: 2027-06-01\n", "")
}

fn issue(project: &Project, what: &str) -> Ran {
    project.run(["issue", "--for", what, "--today", "2027-01-15"])
}

#[test]
fn an_issue_freezes_the_book_and_changes_nothing_else() {
    let project = small(OAK);
    issue(&project, "approval")
        .exits(0)
        .says_exactly("issue 1 for approval, 15 Jan 2027: 1 item, $100.00 settled, $110.00 with tax\n");
    let record = project.root().join("record");
    let ledger = std::fs::read_to_string(record.join("ledger.jsonl")).unwrap();
    assert_eq!(ledger.lines().count(), 2);
    let issued: serde_json::Value =
        serde_json::from_slice(&std::fs::read(record.join("issues/0001.json")).unwrap()).unwrap();
    assert_eq!((&issued["number"], &issued["on"]), (&1.into(), &"2027-01-15".into()));
    assert_eq!(issued["items"][0]["price"], "100.00");
    assert!(!issued.to_string().contains("Ardwin"), "the supplier is the office's own");
    let others: Vec<_> =
        project.tree().files().filter(|path| !path.starts_with("record")).map(str::to_string).collect();
    let before: Vec<_> = small(OAK).tree().files().map(str::to_string).collect();
    assert_eq!(others.iter().filter(|path| !path.starts_with(".bookmatch")).count(), before.len());
    project.run(["review", "--today", "2027-01-15"]).does_not_say("approve/ledger");
}

#[test]
fn an_issue_says_what_changed_since_the_last_and_is_not_made_for_nothing() {
    let project = small(OAK).file("rooms/kitchen/rug.yaml", &undated(OAK));
    issue_now(&project, "approval").exits(0);
    issue_now(&project, "approval").exits(0).says("nothing changed since issue 1; it stands");
    let project = project.file("rooms/kitchen/rug.yaml", &undated(ASH));
    issue_now(&project, "approval")
        .exits(0)
        .says("issue 2 for approval")
        .says("since issue 1 of ")
        .says("      finish from oak to ash\n")
        .says("      in all $100.00 to $120.00, $20.00 more\n")
        .says("with tax: $110.00 to $132.00, $22.00 more")
        .says("to sign: Ada Marrowby and Sven Lint");
    project
        .run(["issue", "--for", "construction", "--unapproved", "agreed on site"])
        .exits(0)
        .says("issue 3 for construction")
        .says("nothing changed");
}

#[test]
fn a_change_order_tells_what_from_to_money_days_and_who_signs() {
    let project = small(OAK);
    issue(&project, "approval").exits(0);
    let project = project
        .file("rooms/kitchen/rug.yaml", &rug(ASH).replace("2 weeks", "3 weeks"))
        .file("rooms/kitchen/runner.yaml", &rug("finish: oak\nprice: 50.00").replace("Rug", "Runner"));
    project
        .run(["compare", "1", "now", "--today", "2027-01-20"])
        .exits(0)
        .says("change order from issue 1 for approval, 15 Jan 2027 to the book as of 20 Jan 2027")
        .says("lead time from 2 weeks to 3 weeks")
        .says(", 7 days sooner than ")
        .says("1 changed, 1 new")
        .says("before tax: $100.00 to $170.00, $70.00 more");
    let told = project.run(["compare", ".", "1", "now", "--format", "json", "--today", "2027-01-20"]).stdout_is_json();
    let rug = told["items"].as_array().unwrap().iter().find(|item| item["name"] == "Rug").unwrap().clone();
    assert_eq!((&rug["is"], &rug["difference"], &rug["days"]), (&"changed".into(), &"20.00".into(), &(-7).into()));
    assert_eq!(told["with_tax"]["difference"], "77.00");
    assert_eq!(told["sign"]["approvers"], serde_json::json!(["Ada Marrowby", "Sven Lint"]));
    project.run(["compare", "1", "7"]).exits(2).says("there is no issue 7; the last one is issue 1");
    small(OAK).run(["compare", "1", "now"]).exits(2).says("nothing was issued");
}

#[test]
fn nothing_is_issued_while_findings_stop_the_work_or_the_record_is_faulty() {
    let project = small("finish: oak\nprice: cheap");
    issue(&project, "approval").exits(1).says("not issued: mend or waive what stops the work");
    assert!(!project.root().join("record").exists());
    let project = project.file("rooms/kitchen/rug.yaml", &rug(OAK));
    issue(&project, "approval").exits(0);
    let ledger = project.root().join("record/ledger.jsonl");
    let edited = std::fs::read_to_string(&ledger).unwrap().replace("Small", "Large");
    let project = project.file("record/ledger.jsonl", &edited).file("rooms/kitchen/rug.yaml", &rug(ASH));
    issue(&project, "approval").exits(1).says("line 1 of the ledger is not as it was written");
    project.run(["compare", "1", "now"]).exits(1).says("not compared");
    assert_eq!(std::fs::read_to_string(&ledger).unwrap(), edited);
}

#[test]
fn a_ledger_that_is_gone_emptied_or_older_stops_every_command_and_nothing_is_written_over() {
    let project = small(&format!("{OAK}\n"));
    issue(&project, "approval").exits(0);
    let older = std::fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap();
    project.run(["invite", "--address", "https://book.example/client"]).exits(0);
    let response = project.beside("response.json");
    std::fs::write(&response, "{}").unwrap();
    let out = project.beside("site");
    let record = || {
        let files = walkdir::WalkDir::new(project.root().join("record")).sort_by_file_name().into_iter();
        let files = files.map(Result::unwrap).filter(|entry| entry.file_type().is_file());
        files.map(|file| (file.path().to_owned(), std::fs::read(file.path()).unwrap())).collect::<Vec<_>>()
    };
    let ledger = project.root().join("record/ledger.jsonl");
    let gone = "the ledger is gone or empty, beside 1 issue and 2 keys";
    let lost = "lines 3 to 4 of the ledger are lost: they were recorded, and are cut off";
    for (text, told) in [(None, gone), (Some(""), gone), (Some(older.as_str()), lost)] {
        match text {
            None => std::fs::remove_file(&ledger).unwrap(),
            Some(text) => std::fs::write(&ledger, text).unwrap(),
        }
        let before = record();
        let today = ["--today", "2027-01-15"];
        let run = |arguments: &[&str]| project.run([arguments, &today].concat());
        run(&["review"]).exits(1).says(told);
        run(&["status"]).exits(1).says(told);
        run(&["publish", "--out", out.to_str().unwrap()]).exits(1).says(told);
        run(&["publish", "--draft", "--out", out.to_str().unwrap()]).exits(1).says("not even as a draft");
        assert!(!out.exists());
        run(&["issue", "--for", "approval"]).exits(1).says(told);
        run(&["invite", "--renew", "ada", "--address", "https://book.example/client"]).exits(2).says(told);
        project.run(["receive", "--confirm", "00000000", "--by", "Ines Tarrow"]).exits(2).says(told);
        project.run(["host", "--address", "127.0.0.1:0"]).exits(2).says(told);
        assert_eq!(record(), before, "nothing is written over, nothing is begun");
    }
}

#[test]
fn an_issue_states_who_decides_and_the_line_before_it_and_is_made_again_when_that_changed() {
    let project = small(OAK).file("rooms/kitchen/rug.yaml", &undated(OAK));
    issue_now(&project, "approval").exits(0);
    let file = |number: u32| -> serde_json::Value {
        let path = project.root().join(format!("record/issues/000{number}.json"));
        serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap()
    };
    let (first, ledger) = (file(1), std::fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap());
    let line: serde_json::Value = serde_json::from_str(ledger.lines().next().unwrap()).unwrap();
    assert_eq!(first["after"], serde_json::json!({"line": 1, "sha256": line["sha256"]}));
    assert_eq!(first["terms"]["approval"], "all");
    assert_eq!(first["terms"]["approvers"][1], serde_json::json!({"id": "sven", "name": "Sven Lint"}));
    let text = std::fs::read_to_string(project.root().join("book.yaml")).unwrap();
    let project = project.file("book.yaml", &(text + "approval: any\n"));
    let told = "who must approve changed since issue 1: `approval` from `all` to `any`";
    project.run(["review"]).says(told);
    issue_now(&project, "approval").exits(0).says("issue 2 for approval");
    project.run(["review"]).does_not_say("who must approve changed");
    issue_now(&project, "approval").exits(0).says("nothing changed since issue 2; it stands");
}

#[test]
fn an_issue_that_was_made_on_another_ledger_is_told() {
    let project = small(OAK);
    issue(&project, "approval").exits(0);
    // A ledger that somebody wrote anew, line by line, with the same issue.
    let path = project.root().join("record/ledger.jsonl");
    let old = bookmatch::ledger::Chain::read(&std::fs::read(&path).unwrap());
    let mut chain = bookmatch::ledger::Chain::default();
    let mut bytes = Vec::new();
    for line in &old.lines {
        let at = "2027-01-15T09:00:00Z".parse().unwrap();
        let line = bookmatch::ledger::Line::next(&chain, at, line.fact.clone()).unwrap();
        bytes.extend(line.bytes().unwrap());
        chain.lines.push(line);
    }
    std::fs::write(&path, bytes).unwrap();
    let review = ["review", "--today", "2027-01-15"];
    project.run(review).exits(1).says("line 2 of the ledger is not the one that was recorded");
    std::fs::remove_file(project.root().join("record/head.json")).unwrap();
    project
        .run(review)
        .exits(1)
        .says("issue 1 was made on another line 1 of the ledger than the one that stands there");
}

#[test]
fn an_issue_that_bears_a_day_before_the_last_one_is_told() {
    let project = small(OAK);
    issue(&project, "approval").exits(0);
    let project = project.file("rooms/kitchen/rug.yaml", &rug(ASH));
    project.run(["issue", "--for", "approval", "--today", "2027-01-12"]).exits(0).says("issue 2");
    let told = "issue 2 bears the day 12 Jan 2027, which is before 15 Jan 2027, the day of issue 1";
    project.run(["review", "--today", "2027-01-15"]).says(told);
}

#[test]
fn a_torn_last_line_is_mended_by_the_next_issue() {
    let project = small(OAK);
    issue(&project, "approval").exits(0);
    let ledger = std::fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap();
    let project = project
        .file("record/ledger.jsonl", &(ledger.clone() + &ledger[..50]))
        .file("rooms/kitchen/rug.yaml", &rug(ASH));
    project.run(["review", "--today", "2027-01-15"]).says("was not written to its end");
    issue(&project, "approval").exits(0).says("issue 2 for approval");
    let mended = std::fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap();
    assert!(mended.starts_with(&ledger) && mended.lines().count() == 3, "{mended}");
    project.run(["review", "--today", "2027-01-15"]).does_not_say("approve/ledger");
}

/// A second rug that stands before the first in the folder takes no number that was issued.
#[test]
fn a_tag_stays_as_it_was_issued_whatever_is_added_later() {
    let project = small(OAK);
    issue(&project, "approval").exits(0);
    let second = rug(ASH).replace("Rug", "Carpet");
    let project = project.file("rooms/kitchen/carpet.yaml", &second);
    let told = project.run(["compare", "1", "now", "--format", "json", "--today", "2027-01-20"]).stdout_is_json();
    let items = told["items"].as_array().unwrap();
    assert_eq!((items.len(), &items[0]["name"], &items[0]["tag"]), (1, &"Carpet".into(), &"K-02".into()));
    project.run(["review", "--today", "2027-01-20"]).does_not_say("source/tag");
    let written = |name: &str, tag: &str| second.replace("Carpet", &format!("{name}\ntag: {tag}"));
    let project = project.file("rooms/kitchen/carpet.yaml", &written("Carpet", "K-01"));
    project
        .run(["review", "--today", "2027-01-20"])
        .says("the tag `K-01` was issued for `Rug`, and `Carpet` bears it now");
    let project = project
        .file("rooms/kitchen/carpet.yaml", &written("Carpet", "K-03"))
        .file("rooms/kitchen/rug.yaml", &rug(OAK).replace("Rug", "Rug\ntag: K-02"));
    project.run(["review", "--today", "2027-01-20"]).says("`Rug` was issued as `K-01`, and its tag is `K-02` now");
    // What is gone keeps its number.
    let project = project.file("rooms/kitchen/rug.yaml", &rug(OAK).replace("Rug", "Mat"));
    let project = project.file("rooms/kitchen/carpet.yaml", &written("Carpet", "K-03"));
    let told = project.run(["compare", "1", "now", "--format", "json", "--today", "2027-01-20"]).stdout_is_json();
    let mat = told["items"].as_array().unwrap().iter().find(|item| item["name"] == "Mat").unwrap().clone();
    assert_eq!(mat["tag"], "K-02");
}

/// What moves to another room, and what stands in a folder that was renamed, bears no number of what is withdrawn.
#[test]
fn a_tag_is_not_taken_along_to_another_room() {
    let moved = |tag: &str| {
        let project = small(OAK);
        issue(&project, "approval").exits(0);
        std::fs::rename(project.root().join("rooms/kitchen"), project.root().join("rooms/scullery")).unwrap();
        project.file("rooms/scullery/rug.yaml", &rug(OAK).replace("Rug", &format!("Rug{tag}")))
    };
    moved("\ntag: K-01")
        .run(["review", "--today", "2027-01-20"])
        .says("the tag `K-01` was issued for `Rug`, and `Rug` bears it now")
        .says("a folder that was renamed gets its name back");
    // What bears no number of its own gets one that is free.
    let numbered = moved("");
    numbered.run(["review", "--today", "2027-01-20"]).does_not_say("source/tag");
    numbered.run(["status", "--today", "2027-01-20"]).says("K-02 Rug").says("K-01 Rug");
}
