//! `alder-house` was approved, issued for construction with a setter's sheet, sent, acknowledged and received by the
//! release that did not yet say of a delivery on which device it was looked at.

use bookmatch::ledger::{Chain, Fact};
use serde_json::json;

use crate::project::Project;

const TODAY: [&str; 2] = ["--today", "2026-12-01"];

fn house() -> Project {
    Project::copy_of("tests/suite/upgrade/alder-house")
}

fn chain(project: &Project) -> Chain {
    Chain::read(&std::fs::read(project.root().join("record/ledger.jsonl")).unwrap())
}

#[test]
fn what_was_approved_sent_and_received_stands() {
    let project = house();
    assert!(chain(&project).is_sound());
    project
        .run([&["status"], &TODAY[..]].concat())
        .exits(0)
        .says("1 of 1 selections are settled, 1 approved")
        .says("Teo Varrick, setter: sent issue 2 for construction, 2026-11-29; acknowledged issue 2, 2026-11-29")
        .says("damaged (finish: chipped corners), set aside; 4712, Noor Tembley")
        .does_not_say("another sheet")
        .does_not_say("still to answer");
    project.run([&["review"], &TODAY[..]].concat()).exits(0).does_not_say("approve/ledger");
}

/// Its marks and those of its sheets are what they were: nothing is asked anew.
#[test]
fn neither_what_is_signed_nor_what_is_built_from_is_asked_anew() {
    for purpose in ["approval", "construction"] {
        let project = house();
        let standing = project.run([&["issue", "--for", purpose], &TODAY[..]].concat()).exits(0);
        standing.says("nothing changed since issue").does_not_say("who asked").does_not_say("still holds");
        let told = project.run([&["status"], &TODAY[..]].concat()).exits(0);
        told.says("1 approved").does_not_say("another sheet");
    }
    let project = house();
    let room = std::fs::read_to_string(project.root().join("rooms/kitchen/tile.yaml")).unwrap();
    let project = project.file("rooms/kitchen/tile.yaml", &room.replace("joint: 1/16\"", "joint: 1/8\""));
    let told = project.run([&["status"], &TODAY[..]].concat());
    told.says("changed since signed").says("to be built from another sheet than was issued for construction");
}

/// What is handed over now says its device, beside lines that say none; so does what an older page hands over.
#[test]
fn what_comes_now_stands_beside_what_came_then() {
    let project = house();
    let issue = std::fs::read(project.root().join("record/issues/0002.json")).unwrap();
    let issue: serde_json::Value = serde_json::from_slice(&issue).unwrap();
    let item = &issue["items"][0];
    let says = |note: &str, device: Option<u32>| {
        let mut says = json!({
            "format": "bookmatch delivery 1", "book": issue["book"], "issue": 2, "by": "Noor Tembley",
            "delivery": {"from": "Kilnessy", "note": note}, "nonce": "7".repeat(32), "made": "2026-11-30T09:00:00Z",
            "items": [{"room": item["room"], "item": item["item"], "mark": item["mark"],
                       "lines": [{"of": "model", "came": "approved"}]}],
        });
        if let Some(turn) = device {
            says["device"] = json!({"id": "b".repeat(32), "turn": turn});
        }
        let file = project.beside(&format!("{note}.json"));
        std::fs::write(&file, says.to_string()).unwrap();
        bookmatch::record::Receiver::new(&project.root(), Default::default(), Default::default())
            .take_in(&std::fs::read(file).unwrap(), "2026-11-30T09:01:00Z".parse().unwrap())
            .unwrap()
    };
    says("5001", Some(1));
    says("5002", None);
    let chain = chain(&project);
    assert!(chain.is_sound(), "{:?}", chain.faults);
    let devices = chain.lines.iter().filter_map(|line| match &line.fact {
        Fact::Received(received) => Some(received.device.is_some()),
        _ => None,
    });
    assert_eq!(devices.collect::<Vec<_>>(), [false, false, true, false]);
}
