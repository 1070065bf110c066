//! A change order says of each change who asked for it and why: as the book says, as was answered when it was issued,
//! or that nobody says.

use std::io::Write;
use std::process::{Command, Stdio};

use crate::project::Project;

const RUG: &str = "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
    needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\n";
const FILE: &str = "rooms/kitchen/rug.yaml";

/// The book with the rug as given.
fn with(project: Project, finish: &str, asked: &str) -> Project {
    project.file(FILE, &format!("{RUG}finish: {finish}\nprice: 100.00\n{asked}"))
}

fn issue(project: &Project) -> crate::project::Ran {
    project.run(["issue", "--for", "approval", "--today", "2027-01-16"])
}

#[test]
fn who_asked_is_told_from_the_book_and_an_answer_counts_for_one_change() {
    let ash = "asked: {by: Ada Marrowby, because: oak is too dark}\n";
    let project = with(Project::with_a_rug_issued(), "ash", ash);
    issue(&project).exits(0).says("finish from oak to ash").says("asked for by Ada Marrowby: oak is too dark");
    project.run(["compare", "1", "2", "--today", "2027-01-16"]).says("asked for by Ada Marrowby: oak is too dark");
    // The answer that was written for the change before is none for the next.
    let project = with(project, "elm", ash);
    issue(&project).exits(0).says("finish from ash to elm").says("nobody says who asked for it, and why");
    let project = with(project, "fir", "asked: {by: Sven Marrowby}\n");
    issue(&project).exits(0).says("asked for by Sven Marrowby; nobody says why");
    let all = project.run(["compare", "1", "4", "--today", "2027-01-16"]);
    all.says("asked for by Ada Marrowby: oak is too dark").says("asked for by Sven Marrowby; nobody says why");
    let told = project.run(["compare", "1", "4", "--format", "json", "--today", "2027-01-16"]).stdout_is_json();
    assert_eq!(told["items"][0]["asked"][0]["because"], "oak is too dark");
}

/// Who asked is no part of what is shown and signed.
#[test]
fn who_asked_changes_no_mark() {
    let project = Project::with_a_rug_issued();
    let rug = std::fs::read_to_string(project.root().join(FILE)).expect("the rug");
    let project = project.file(FILE, &format!("{rug}asked: {{by: Ada Marrowby, because: oak is too dark}}\n"));
    issue(&project).exits(0).says("nothing changed since issue 1");
}

/// `script`, of Debian's bsdutils, stands for the terminal.
#[test]
fn what_the_book_does_not_say_is_asked_at_the_terminal() {
    let project = with(Project::with_a_rug_issued(), "ash", "");
    let command = format!(
        "'{}' issue '{}' --for approval --today 2027-01-16",
        env!("CARGO_BIN_EXE_bookmatch"),
        project.root().display()
    );
    let mut script = Command::new("script")
        .args(["-qec", &command, "/dev/null"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("a terminal");
    let mut keys = script.stdin.take().expect("its keys");
    keys.write_all(b"Ada Marrowby\noak is too dark\n").expect("typed");
    keys.flush().expect("typed");
    let said = script.wait_with_output().expect("what it said");
    drop(keys);
    let said = String::from_utf8_lossy(&said.stdout).into_owned();
    assert!(said.contains("K-01  Rug: who asked for this change?"), "{said}");
    assert!(said.contains("asked for by Ada Marrowby: oak is too dark"), "{said}");
    project.run(["compare", "1", "2", "--today", "2027-01-16"]).says("asked for by Ada Marrowby: oak is too dark");
}

/// A first choice is the client's own.
#[test]
fn nobody_is_asked_who_asked_for_a_first_choice() {
    let options = "options: [{id: oak, finish: oak, price: 100.00}, {id: ash, finish: ash, price: 120.00}]\n";
    let project = Project::with_a_rug_issued().file(FILE, &format!("{RUG}{options}"));
    issue(&project).exits(0);
    let project = project.file(FILE, &format!("{RUG}chosen: ash\n{options}"));
    issue(&project).exits(0).says("chosen").does_not_say("who asked");
}
