//! `fir-house` was issued and approved, and issued for construction, by the release before counters ended at a filler
//! behind the panel of something tall, and before a bowl with a front of its own stood at the face of its cabinet.
//!
//! What is signed of a counter is how its pieces lie: one that is cut otherwise than was signed is asked for again, with
//! what of it is otherwise.

use crate::project::Project;

fn house() -> Project {
    Project::copy_of("tests/suite/upgrade/fir-house")
}

/// 50 mm of stone behind the panel of the larder were signed, and are not cut: the counter is asked for, and nothing else.
#[test]
fn a_piece_that_was_signed_and_is_not_cut_is_told_and_asked_for() {
    house()
        .run(["status", "--today", "2026-12-01"])
        .says("     1 approved\n")
        .says("     1 changed since signed\n")
        .says("K-01 Counter (Kitchen): changed since signed")
        .does_not_say("K-02 Sink (Kitchen): changed");
    house()
        .run(["issue", "--for", "approval", "--today", "2026-12-01"])
        .exits(0)
        .says("sink wall: option gone, which was piece 2")
        .says("1 changed");
}

/// What is let in is signed as ever: where the bowl stands by its front changes the sheets that are built from alone.
#[test]
fn a_bowl_at_the_face_of_its_cabinet_is_another_sheet_and_nothing_that_is_signed() {
    let compared = house().run(["compare", "2", "now", "--today", "2026-12-01"]).exits(0);
    compared
        .says("Sink: back from 60 mm (≈ 2 3/8\") to 120 mm (≈ 4 3/4\")")
        .says("runs: sink wall: along front from 2490 mm")
        .does_not_say("K-02")
        .does_not_say("let in");
}

/// What is cut as it was signed is written as it was.
#[test]
fn all_else_that_was_signed_of_the_counter_is_written_as_it_was() {
    let project = house();
    let signed = std::fs::read_to_string(project.root().join("record/issues/0001.json")).unwrap();
    let signed: serde_json::Value = serde_json::from_str(&signed).unwrap();
    project.run(["issue", "--for", "approval", "--today", "2026-12-01"]).exits(0);
    let now = std::fs::read_to_string(project.root().join("record/issues/0003.json")).unwrap();
    let now: serde_json::Value = serde_json::from_str(&now).unwrap();
    let counter = |issue: &serde_json::Value| issue["items"][0]["content"]["counter layout"][0].clone();
    assert_eq!(counter(&signed)["let in"], counter(&now)["let in"]);
    assert_eq!(counter(&signed)["pieces"][0], counter(&now)["pieces"][0]);
    assert_eq!(counter(&now)["pieces"].as_array().unwrap().len(), 1);
    assert_eq!(signed["items"][1]["mark"], now["items"][1]["mark"], "the sink");
}
