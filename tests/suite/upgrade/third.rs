//! `slate-house` was issued and approved, and issued for construction, by the release that wrote contents of the
//! second version: before the layout of a counter was a part of what is signed, and the room around an opening of
//! what is built from.

use crate::project::Project;

fn house() -> Project {
    Project::copy_of("tests/suite/upgrade/slate-house")
}

#[test]
fn what_was_approved_under_the_second_version_stands_as_long_as_its_issue_is_the_newest() {
    house().run(["status", "--today", "2026-12-01"]).says("     3 approved\n").does_not_say("another sheet");
    let opening = house().run(["compare", "2", "now", "--today", "2026-12-01"]).exits(0);
    opening.does_not_say("to be built from another sheet").does_not_say("who asked");
}

/// The counter shows its layout now and is asked again; nothing else is.
#[test]
fn the_next_issue_asks_for_the_layout_of_the_counter_and_for_nothing_else() {
    let project = house();
    project
        .run(["issue", "--for", "approval", "--today", "2026-12-01"])
        .exits(0)
        .says("counter layout new: sink wall")
        .says("1 changed")
        .does_not_say("who asked");
    let told = project.run(["status", "--format", "json", "--today", "2026-12-01"]).stdout_is_json();
    let standing: Vec<(String, String)> = told["approvals"]["items"]
        .as_array()
        .unwrap()
        .iter()
        .map(|item| (item["item"].as_str().unwrap().into(), item["standing"].as_str().unwrap().into()))
        .collect();
    let of = |name: &str| standing.iter().find(|(item, _)| item == name).map(|(_, standing)| standing.as_str());
    assert_eq!(of("Counter"), Some("changed since signed"));
    assert_ne!(of("Rug"), Some("changed since signed"));
    assert_ne!(of("Trunk"), Some("changed since signed"));
}

/// A cabinet that grows moves the pieces of the counter that lie on it: what was signed is not what would be cut.
#[test]
fn a_row_that_changes_changes_what_is_signed_of_its_counter() {
    const ROOM: &str = "rooms/kitchen/room.yaml";
    let project = house();
    project.run(["issue", "--for", "approval", "--today", "2026-12-01"]).exits(0);
    let room = std::fs::read_to_string(project.root().join(ROOM)).unwrap();
    let project = project.file(ROOM, &room.replace("cabinet: bins, width: 600 mm", "cabinet: bins, width: 650 mm"));
    project
        .run(["compare", "3", "now", "--today", "2026-12-01"])
        .exits(0)
        .says("Counter, kitchen")
        .says("sink wall: piece 1: right end from 3000 mm");
}
