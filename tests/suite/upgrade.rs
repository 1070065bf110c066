//! A record that an earlier release wrote: what was approved then stands, and what it did not hold is asked.
//!
//! `reed-house` was issued and approved by the release that wrote contents of the first version.

mod built;
mod mended;
mod received;
mod third;

use crate::project::{Project, Ran};

const TODAY: [&str; 2] = ["--today", "2026-12-01"];
const COUNTER: &str = "rooms/kitchen/counter.yaml";
const RUG: &str = "rooms/kitchen/rug.yaml";

fn house() -> Project {
    Project::copy_of("tests/suite/upgrade/reed-house")
}

fn read(project: &Project, path: &str) -> String {
    std::fs::read_to_string(project.root().join(path)).unwrap()
}

/// The counter with something else of it.
fn with(project: Project, old: &str, new: &str) -> Project {
    let text = read(&project, COUNTER);
    assert!(text.contains(old), "{old}");
    project.file(COUNTER, &text.replace(old, new))
}

fn issue(project: &Project, purpose: &str) -> Ran {
    project.run(["issue", "--for", purpose, TODAY[0], TODAY[1]])
}

fn status(project: &Project) -> Ran {
    project.run([&["status"], &TODAY[..]].concat())
}

#[test]
fn what_was_approved_under_the_first_version_stands_as_long_as_its_issue_is_the_newest() {
    let project = house();
    status(&project).exits(0).says("2 approved");
    // The first version held nothing of seams: by it nothing changed.
    let project = with(house(), "left of the sink", "right of the sink");
    status(&project).exits(0).says("2 approved");
    let project = with(house(), "finish: honed", "finish: polished");
    status(&project).says("changed since signed").says("finish from honed to polished");
}

/// The counter shows more than was signed and is asked again; the rug shows what it did, and is not.
#[test]
fn the_next_issue_asks_for_what_the_first_version_did_not_hold_and_for_nothing_else() {
    let project = house();
    issue(&project, "approval").exits(0).says("Counter").says("seams").does_not_say("Rug");
    status(&project).exits(0).says("1 approved").says("Ada Marrowby is still to answer on K-01");
    let issued = read(&project, "record/issues/0002.json");
    let issued: serde_json::Value = serde_json::from_str(&issued).unwrap();
    let rug = &issued["items"][1];
    assert_eq!(rug["content"]["shown"], "3");
    let first: serde_json::Value = serde_json::from_str(&read(&project, "record/issues/0001.json")).unwrap();
    assert_eq!(rug["also"][0], first["items"][1]["mark"]);
    assert_eq!(issued["items"][0].get("also"), None, "its counter shows more");
    issue(&project, "approval").exits(0).says("nothing changed since issue 2");
}

/// What came to light in use: a seam, a slab and an overhang were changed after both had signed, and nothing said so.
#[test]
fn a_seam_a_slab_and_an_overhang_that_change_after_signing_are_told() {
    let changes = [
        ("left of the sink", "right of the sink", "seams from"),
        ("count: 1", "count: 2", "slab from"),
        ("overhang: 20 mm", "overhang: 45 mm", "overhang from"),
        ("right: 1200 x 650 mm", "right: 1100 x 650 mm", "pieces from"),
        ("layout: signed drawing", "layout: fabricator decides", "layout from"),
        ("material: stone", "material: quartz", "material from"),
    ];
    for (old, new, told) in changes {
        let project = house();
        issue(&project, "approval").exits(0);
        let by_hand = ["receive", "--by-hand", "ada", "--item", "K-01", "--decision", "approved"];
        let how = ["--how", "in the office", "--given", "2026-12-01"];
        project.run([&by_hand[..], &how].concat()).exits(0);
        status(&project).says("2 approved");
        let project = with(project, old, new);
        status(&project).says("changed since signed").says(told);
    }
}

/// What a stamp says was approved is what the page said then, whatever the option of that id has become.
#[test]
fn a_stamp_says_which_option_was_signed_by_the_name_that_it_had() {
    let stamped = |edit: &[(&str, &str)]| {
        let project = house();
        let rug = read(&project, RUG);
        let edited = edit.iter().fold(rug.clone(), |text, (old, new)| text.replace(old, new));
        assert!(edit.is_empty() || edited != rug);
        let project = project.file(RUG, &edited);
        let out = project.beside("site");
        let arguments = ["publish", "--draft", TODAY[0], TODAY[1], "--out", out.to_str().unwrap()];
        project.run(arguments).says("client/index.html");
        std::fs::read_to_string(out.join("client/items/kitchen/rug.html")).unwrap()
    };
    let swapped = [("id: moss", "id: other"), ("id: reed", "id: moss"), ("id: other", "id: reed")];
    let renamed = [("name: Reed", "name: Rush")];
    let gone = [("id: reed", "id: rush")];
    for edit in [&[][..], &renamed, &swapped, &gone] {
        let page = stamped(edit);
        assert!(page.contains("<span>option Reed</span>"), "{edit:?}: {page}");
        assert!(!page.contains("option Rush") && !page.contains("option Moss"), "{edit:?}");
    }
}
