//! The mistakes of a first evening: each is told once, where it was made, with how to write it.

use std::fs;

use serde_json::{Value, json};

use crate::project::{Project, Ran};

/// The book that `start` lays out, with one place changed.
struct Slip(Project);

impl Slip {
    fn new() -> Self {
        let project = Project::new();
        let root = project.root();
        project.run(["start".as_ref(), root.as_os_str(), "--today".as_ref(), "2027-01-15".as_ref()]).exits(0);
        Self(project)
    }

    #[track_caller]
    fn in_file(self, path: &str, words: &str, by: &str) -> Self {
        let text = fs::read_to_string(self.0.root().join(path)).expect("a file of the book");
        assert!(text.contains(words), "{path} does not say {words}");
        Self(self.0.file(path, &text.replacen(words, by, 1)))
    }

    fn renamed(self, from: &str, to: &str) -> Self {
        fs::rename(self.0.root().join(from), self.0.root().join(to)).expect("a name");
        self
    }

    fn review(&self) -> Ran {
        self.0.run(["review", "--today", "2027-01-15"])
    }

    fn findings(&self) -> Vec<Value> {
        let told = self.0.run(["review", "--today", "2027-01-15", "--format", "json"]);
        let report: Value = serde_json::from_str(&told.stdout).expect("JSON");
        report["findings"].as_array().expect("a list").clone()
    }

    /// One finding and no other: its message, its remedy, and its line.
    #[track_caller]
    fn tells_one(&self, message: &str, remedy: &str, line: u64) {
        let findings = self.findings();
        let [finding] = findings.as_slice() else { panic!("one finding is wanted: {findings:#?}") };
        assert_eq!(finding["message"], message);
        assert_eq!(finding["remedy"], remedy);
        assert_eq!(finding["line"], line, "{finding}");
    }
}

const BOOK: &str = "book.yaml";
const RANGE: &str = "rooms/kitchen/range.yaml";
const FIRM: &str = "{name: Your firm, trade";

#[test]
fn a_comma_in_braces_is_told_once_with_the_value_in_quotes() {
    Slip::new().in_file(BOOK, FIRM, "{name: Your firm, Inc., trade").tells_one(
        "a comma ends the value of `name` before `Inc.`",
        "put it in quotes: `name: \"Your firm, Inc.\"`",
        4,
    );
    Slip::new().in_file(RANGE, "120 V 15 A 5-15", "120 V, 15 A, 5-15").tells_one(
        "a comma ends the value of `power` before `15 A`",
        "put it in quotes: `power: \"120 V, 15 A, 5-15\"`",
        16,
    );
    // A number keeps its own comma close.
    Slip::new().in_file(RANGE, "120 V 15 A 5-15", "120 V, 1,800 W").tells_one(
        "a comma ends the value of `power` before `1`",
        "put it in quotes: `power: \"120 V, 1,800 W\"`",
        16,
    );
    Slip::new().in_file(BOOK, FIRM, "{name: “Your firm, Inc.”, trade").tells_one(
        "a comma ends the value of `name` before `Inc.”`",
        "put it in quotes with straight ones: `name: \"Your firm, Inc.\"`",
        4,
    );
    // What has a colon is a key that nobody knows, and a value in quotes is whole.
    Slip::new().in_file(BOOK, FIRM, "{name: Your firm, motto: none, trade").review().says("unknown key `motto`");
    let quoted = Slip::new().in_file(BOOK, FIRM, "{name: \"Your firm, Inc.\", trade");
    assert_eq!(quoted.findings(), [Value::Null; 0]);
}

#[test]
fn a_tab_is_told_at_its_own_line_and_nothing_else_is() {
    let by_tab = Slip::new().in_file(BOOK, "  cabinets set:", "\tcabinets set:");
    by_tab.tells_one("a tab stands where YAML needs spaces", "use spaces, two for each step in", 16);
}

#[test]
fn curly_quotes_are_told_where_they_stand() {
    Slip::new().in_file(BOOK, "title: A Small Beginning", "title: “A Small Beginning”").tells_one(
        "the curly quotes of `“A Small Beginning”` are part of what is said, and are shown",
        "write `\"A Small Beginning\"` with straight quotes; with both, `\"“A Small Beginning”\"`, they are shown",
        2,
    );
    Slip::new()
        .in_file(BOOK, "client: The", "“client”: The")
        .review()
        .says("write `client` without quotes: curly ones are letters of the key");
    // Quotes inside a text, and the signs of inches and feet, are what they always were.
    let fine =
        Slip::new().in_file(RANGE, "why: Sealed", "why: The “quiet” one. Sealed").in_file(RANGE, "26 3/4\"", "26 3/4”");
    assert_eq!(fine.findings(), [Value::Null; 0]);
}

#[test]
fn a_milestone_whose_date_is_wrong_stays_and_is_told_with_what_rests_on_it() {
    let line = |text: &str| format!("  demolition: {text}");
    let slip = Slip::new();
    let text = fs::read_to_string(slip.0.root().join(BOOK)).expect("a book");
    let written = text.lines().find(|line| line.starts_with("  demolition:")).expect("a milestone").to_owned();
    slip.in_file(BOOK, &written, &line("next spring")).tells_one(
        "`next spring` is not a date as year, month and day; `cabinets set` and 1 selection have no day until then",
        "write the year, month and day with hyphens, such as `2027-03-01`",
        15,
    );
    let empty = Slip::new().in_file(BOOK, &written, "  demolition:");
    assert_eq!(empty.findings().len(), 1, "{:#?}", empty.findings());
}

#[test]
fn names_with_capitals_are_told_once_each() {
    Slip::new().renamed("rooms", "Rooms").tells_one(
        "nothing is read from `Rooms`, whose name has capitals",
        "rename it to `rooms`: some disks tell capitals apart, and others don't",
        1,
    );
    let room = Slip::new().renamed("rooms/kitchen/room.yaml", "rooms/kitchen/Room.yaml");
    assert_eq!(room.findings().len(), 1, "{:#?}", room.findings());
    let range = Slip::new().renamed(RANGE, "rooms/kitchen/Range.YML");
    assert_eq!(range.findings().len(), 1, "{:#?}", range.findings());
    let book = Slip::new().renamed(BOOK, "Book.yaml");
    book.review().exits(2).says("the folder has `Book.yaml`: rename it to `book.yaml`, without capitals");
    // A room's own name, a selection's file and the folder of pictures may have them.
    let fine = Slip::new()
        .renamed("rooms/bath", "rooms/Bath")
        .renamed(RANGE, "rooms/kitchen/Range.yaml")
        .renamed("rooms/kitchen/photos", "rooms/kitchen/Photos");
    assert_eq!(fine.findings(), [Value::Null; 0]);
}

#[test]
fn names_that_other_systems_refuse_are_told_at_their_place() {
    let slip = Slip(Slip::new().0.photo("rooms/kitchen/photos/aux.jpg"));
    slip.review()
        .says("the name `aux.jpg` is the name of a device on some systems")
        .says("rooms/kitchen/photos/aux.jpg");
    let long = format!("rooms/kitchen/photos/{}.jpg", "a".repeat(230));
    Slip(Slip::new().0.photo(&long)).review().says("is longer than 200 bytes");
}

#[test]
fn what_is_still_to_come_is_an_ellipsis() {
    for said in ["TBC", "POA", "to follow", "tbd.", "?"] {
        Slip::new()
            .in_file(RANGE, "lead time: ", &format!("lead time: '{said}' # "))
            .review()
            .says("1 value is still open (`…`, `TBD` and the like):")
            .says("lead time");
    }
}

#[test]
fn an_unknown_key_is_answered_with_the_group_that_knows_it_or_with_its_kind() {
    let with = |key: &str| Slip::new().in_file(RANGE, "lead time: ", &format!("{key}\nlead time: ")).review();
    with("caution: hot").says("unknown key `caution`").says("write it under `fit`: `fit: {caution: …}`");
    with("provenance: old stock").says("`bookmatch explain range` lists what it may have");
}

#[test]
fn a_word_that_holds_two_of_those_that_are_known_is_none_of_them() {
    let hinge = |word: &str| Slip::new().in_file(RANGE, "lead time: ", &format!("hinge: {word}\nlead time: ")).review();
    for both in ["left and right", "left/right", "two doors"] {
        hinge(both).exits(0).does_not_say("source/");
    }
    hinge("left or right").says("is not among the words for this").does_not_say("did you mean `left`?");
}

#[test]
fn an_unknown_kind_is_answered_with_the_kinds_that_share_its_words() {
    let kind = |by: &str| Slip::new().in_file("rooms/bath/choices.yaml", "kind: ceiling light", &format!("kind: {by}"));
    kind("bath lightt").review().says("`wall light`").says("`ceiling light`").says("`bookmatch explain kinds`");
    kind("celing light").review().says("did you mean `ceiling light`?");
    kind("zzz").review().says("`item` is for what has no kind of its own");
}

#[test]
fn a_decision_is_taken_in_any_case_and_an_item_by_its_number() {
    let project = Project::with_a_rug_issued();
    let answer = |item: &str, decision: &str| {
        project.run([
            "receive",
            "--by-hand",
            "ada",
            "--item",
            item,
            "--decision",
            decision,
            "--how",
            "by telephone, 2027-01-16",
        ])
    };
    answer("Z-99", "approved").exits(2).says("the newest issue has no `Z-99`");
    answer("rug", "approved").exits(2).says("`room/item`, or by its number on the drawings, such as `K-07`");
    answer("k-01", "Revise-and-resubmit").exits(0);
    answer("K-01", "Approved").exits(0);
    project.run(["status", "--format", "json"]).says("approved");
}

/// `…` is what the missing field is, in whatever way it is written, and an issue refuses it.
#[test]
fn three_points_stand_for_what_is_not_known_yet() {
    let told = |by: &str| {
        let slip = Slip::new().in_file(RANGE, "supplier: Corner Supply\n", by);
        let findings = slip.findings();
        findings
            .iter()
            .map(|one| (one["rule"].clone(), one["message"].clone(), one["remedy"].clone()))
            .collect::<Vec<_>>()
    };
    let missing = told("");
    assert!(!missing.is_empty());
    for open in ["…", "...", "\"…\"", " … "] {
        assert_eq!(told(&format!("supplier: {open}\n")), missing, "{open}");
    }
    let width = |by: &str| {
        let slip = Slip::new().in_file(RANGE, "size: {width: 29 7/8\", ", &format!("size: {{{by}"));
        let findings = slip.findings();
        findings.iter().map(|one| (one["message"].clone(), one["severity"].clone())).collect::<Vec<_>>()
    };
    for open in ["width: …, ", "width: '…\"', ", "width: … mm, ", "width: at least … in, "] {
        assert_eq!(width(open), width(""), "{open}");
    }
    let sheet = |by: &str| {
        let slip = Slip::new().in_file(RANGE, "  sheet: {name: 30-inch ranges, revision: A, date: 2026-01-15}\n", by);
        slip.findings().iter().map(|one| one["message"].clone()).collect::<Vec<_>>()
    };
    assert_eq!(sheet("  sheet: {name: …, revision: …, date: …}\n"), sheet(""), "a group of which nothing is said");
}

#[test]
fn what_is_open_and_not_needed_is_refused_by_issue_alone() {
    let slip = Slip::new().in_file(BOOK, "designer: Your name", "designer: …");
    assert_eq!(slip.findings(), [Value::Null; 0]);
    slip.review().exits(0).says("1 value is still open (`…`, `TBD` and the like):").says("book.yaml:5: designer");
    let place = json!([{"file": "book.yaml", "line": 5, "column": 11, "key": "designer"}]);
    let told = |command: &str| slip.0.run([command, "--format", "json", "--today", "2027-01-15"]).stdout_is_json();
    assert_eq!((&told("review")["open"], &told("status")["open"]), (&place, &place), "programs are told as well");
    slip.0.run(["status", "--today", "2027-01-15"]).says("1 value is still open").says("book.yaml:5: designer");
    let issue = |slip: &Slip| slip.0.run(["issue", "--for", "approval", "--today", "2027-01-15"]);
    issue(&slip).exits(1).says("not issued: write what is still open, or take its line out").says("book.yaml:5");
    let prose = Slip::new().in_file(BOOK, "designer: Your name", "designer: Your name, and so on …");
    issue(&prose).exits(0);
}
