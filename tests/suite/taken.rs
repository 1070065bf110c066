//! What came otherwise than it was approved, and who supplies it: told alike wherever it is told.

use std::fs;

use serde_json::{Value, json};

use crate::project::{Project, Ran};

const ORDER: &str = "order: {placed on: 2027-01-10}\n";
const TODAY: [&str; 2] = ["--today", "2027-01-15"];

fn run(project: &Project, arguments: &[&str]) -> Ran {
    project.run([arguments, &TODAY].concat())
}

/// A rug that is ordered, and approved in issue 1.
fn approved() -> Project {
    let project = Project::with_a_rug();
    let rug = rug(&project);
    let project = project.file("rooms/kitchen/rug.yaml", &format!("{rug}{ORDER}"));
    run(&project, &["issue", "--for", "approval"]).exits(0);
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--item", "kitchen/rug", "--decision", "approved", "--how", "by letter", "--given", &given];
    project.run(["receive", "--by-hand", "ada"].into_iter().chain(how)).exits(0);
    project
}

fn rug(project: &Project) -> String {
    fs::read_to_string(project.root().join("rooms/kitchen/rug.yaml")).unwrap()
}

/// A delivery of the rug, handed in and confirmed.
fn delivered(project: &Project, from: &str, lines: &Value, kept: Option<&str>) {
    let issue = fs::read_to_string(project.root().join("record/issues/0001.json")).unwrap();
    let issue: Value = serde_json::from_str(&issue).unwrap();
    let made: String = jiff::Timestamp::now().to_string().chars().take(19).chain(['Z']).collect();
    let mut item = json!({"room": "kitchen", "item": "rug", "mark": issue["items"][0]["mark"], "lines": lines});
    if let Some(kept) = kept {
        item["kept"] = kept.into();
    }
    let says = json!({
        "format": "bookmatch delivery 1", "book": issue["book"], "issue": 1, "by": "Teo Varrick",
        "delivery": {"from": from, "note": "4711"}, "nonce": "0".repeat(32), "made": made, "items": [item],
    });
    let file = project.beside("delivery.json");
    fs::write(&file, says.to_string()).unwrap();
    project.run(["receive", file.to_str().unwrap()]).exits(0);
    let told = run(project, &["status", "--format", "json"]).stdout_is_json();
    let digits = told["deliveries"]["waiting"][0]["digits"].as_str().expect("it waits to be confirmed").to_owned();
    project.run(["receive", "--confirm", &digits, "--by", "Ines"]).exits(0);
}

fn all_as_approved() -> Value {
    ["model", "finish", "size", "number", "rest"].map(|of| json!({"of": of, "came": "approved"})).to_vec().into()
}

#[test]
fn what_came_otherwise_and_was_taken_has_one_name_everywhere_and_is_asked_anew() {
    let project = approved();
    let finish = json!([{"of": "model", "came": "approved"}, {"of": "finish", "came": "different", "words": "black"}]);
    delivered(&project, "Ardwin", &finish, Some("taken"));
    run(&project, &["status"]).says("came otherwise than approved; still to sign: Ada Marrowby");
    run(&project, &["status", "--remind", "ada"])
        .exits(0)
        .says("K-01 Rug, Kitchen: it came otherwise than you approved, and was taken");
    let site = project.beside("site");
    run(&project, &["publish", "--draft", "--out", site.to_str().unwrap()]);
    for page in ["client/index.html", "client/items/kitchen/rug.html", "client/rooms/kitchen.html", "client/sign.html"]
    {
        let text = fs::read_to_string(site.join(page)).unwrap();
        assert!(!text.contains("Approved, and held") && !text.contains("Nothing is waiting for you"), "{page}");
        assert!(text.contains("Came otherwise than approved"), "{page}");
    }
    let sign = fs::read_to_string(site.join("client/sign.html")).unwrap();
    assert!(!sign.contains("</svg>Approved<") && !sign.contains("Decide by"), "{sign}");
}

/// The rate of a held approval is another matter, and keeps its own name.
#[test]
fn what_came_as_approved_is_told_as_that() {
    let project = approved();
    delivered(&project, "Ardwin", &all_as_approved(), None);
    run(&project, &["status"]).says("K-01 Rug (Kitchen): as approved; 4711");
    run(&project, &["status", "--remind", "ada"]).exits(2).says("nothing waits for Ada Marrowby");
    run(&project, &["review"]).does_not_say("order/supplier").does_not_say("nobody looked at");
}

/// A line alone that says `as approved` says it of that line alone.
#[test]
fn what_nobody_looked_at_is_not_told_as_received_as_approved() {
    let project = approved();
    delivered(&project, "Ardwin", &json!([{"of": "model", "came": "approved"}]), None);
    let told = "nobody looked at its finish, size and number";
    run(&project, &["review"]).says(told);
    run(&project, &["status"]).says(told).does_not_say("(Kitchen): as approved;");
}

/// From whom a thing is ordered decides on whose page it is received, and on cost and days.
#[test]
fn another_supplier_is_told_where_it_is_ordered_and_where_it_comes_from_another() {
    let project = approved();
    run(&project, &["review"]).does_not_say("order/supplier");
    let issue = fs::read_to_string(project.root().join("record/issues/0001.json")).unwrap();
    assert!(!issue.contains("Ardwin"), "who supplies it is the office's own");
    let text = rug(&project).replace("supplier: Ardwin", "supplier: Wickmar Rugs");
    let project = project.file("rooms/kitchen/rug.yaml", &text);
    run(&project, &["review"])
        .says("`Rug` is ordered, and comes from Wickmar Rugs now, which issue 1 has from another supplier");
    let told = "K-01  Rug, kitchen (supplier alone)\n      it comes from another supplier";
    run(&project, &["compare", "1", "now"]).says(told).does_not_say("to sign");
    run(&project, &["status"]).says("1 approved");
    run(&project, &["issue", "--for", "approval"]).exits(0).says(told);
    run(&project, &["review"]).does_not_say("from another supplier");
    delivered(&project, "Ardwin", &all_as_approved(), None);
    run(&project, &["review"]).says("`Rug` came from Ardwin (4711), and the book has it from Wickmar Rugs");
}
