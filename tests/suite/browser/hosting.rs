//! Four stories through the program and its server, each a file to read: what came is looked at without a signal, a paper
//! that was superseded is scanned, words come late or contradict each other, and two people share a tablet.

use super::agreed::{book, free_port};
use super::drive;
use super::photographed::taken;
use super::receiving::approved;
use crate::project::Project;
use crate::trades::code;

fn tell(story: &str, project: &Project, port: u16, more: &[&str]) {
    let (root, site) = (project.root(), project.beside("site"));
    let [root, site] = [&root, &site].map(|path| path.to_str().unwrap());
    drive(story, &[&[env!("CARGO_BIN_EXE_bookmatch"), root, site, &port.to_string()], more].concat());
}

#[test]
fn what_came_is_looked_at_without_a_signal_and_handed_over_where_there_is_one() {
    let port = free_port();
    let project = approved(&format!("responses: {{post: \"http://127.0.0.1:{port}/responses\"}}\n"));
    let site = project.beside("site");
    project.run(["publish", "--draft", "--out", site.to_str().unwrap()]).exits(0);
    let [yard, _] = taken(&project);
    tell("delivered.mjs", &project, port, &[yard.to_str().unwrap()]);
}

#[test]
fn a_paper_that_was_superseded_says_so_when_its_code_is_scanned() {
    superseded("trades/kitchen/setter.html", ["rooms/kitchen/tile.yaml", "joint: 1/16\"", "joint: 1/8\""]);
}

#[test]
fn a_paper_at_an_opening_that_was_measured_anew_says_so_when_its_code_is_scanned() {
    superseded("openings/kitchen/range.html", ["rooms/kitchen/room.yaml", "width: 30\"", "width: 30 1/4\""]);
}

/// Scans the code of a sheet before and after something that it is built from is another.
fn superseded(sheet: &str, change: [&str; 3]) {
    let port = free_port();
    let project = code::book(&format!("published at: http://127.0.0.1:{port}\n"));
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let site = project.beside("site");
    project.run(["publish", "--today", "2027-01-15", "--out", site.to_str().unwrap()]).exits(0);
    let sheet = std::fs::read_to_string(site.join("installer").join(sheet)).unwrap();
    let scanned = code::code_on(&sheet).expect("a code on the sheet");
    tell("scanned.mjs", &project, port, &[&[scanned.as_str()], &change[..]].concat());
}

#[test]
fn a_word_that_comes_late_overtakes_nothing_and_two_that_contradict_each_other_are_asked_about() {
    let port = free_port();
    tell("late.mjs", &book(port), port, &[]);
}

#[test]
fn two_who_share_a_tablet_see_nothing_of_each_other() {
    let port = free_port();
    tell("tablet.mjs", &book(port), port, &[]);
}
