//! What went wrong on real jobs, each as a small book and the finding that would have told it in time.
//!
//! One file a story in `tests/stories/`:
//!
//! ```yaml
//! story: F-05                 # the row of the trade reports; others with `, ` between
//! told: the sides of the opening lean, and a 32.8" refrigerator does not go in
//! finds: fit/width            # the rule that must speak of the wrong book
//! today: 2027-01-15           # if it matters
//! same:                       # files of both books; `book.yaml` and the kitchen's `room.yaml` may be left out
//!   rooms/kitchen/fridge.yaml: |
//!     selection: Refrigerator
//!     kind: refrigerator
//!     place: fridge
//!     size: {width: 32.8"}
//! wrong:                      # files as they were
//!   rooms/kitchen/room.yaml: |
//!     name: Kitchen
//!     openings:
//!       fridge: {takes: refrigerator, width: [33 1/2", 33 1/4", 32 3/4"]}
//! right:                      # the clean twin
//!   rooms/kitchen/room.yaml: |
//!     …
//! ```
//!
//! `wrong` and `right` may each be a list: one book for each natural wording of the fact, or place of it.
//!
//! Every wrong book must bring the finding. No twin may bring any at all, but for those that ask for
//! what a small book leaves out (`LEFT_OUT`), and never one of the rule that the story is about. A way
//! that is known not to be caught says so with `missed: why` among its files, and a twin that is known
//! to bring a false alarm with `alarm: why`: both are counted and printed, and fail once they are mended,
//! so that the mark goes.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use bookmatch::assess::{assess, rules};
use bookmatch::book::Book;
use bookmatch::finding::{Finding, Id};
use bookmatch::read::read;
use bookmatch::source::Folder;
use bookmatch::units::Date;
use serde::Deserialize;

/// Stories that the product is held to catch, at least.
const AT_LEAST: usize = 130;
/// Ways to tell them that it is held to catch, at least.
const WAYS_AT_LEAST: usize = 460;

/// Rules that ask for what a small book leaves out.
const LEFT_OUT: &[&str] = &[
    "complete/field",
    "complete/cut-sheet",
    "complete/measured",
    "complete/opening",
    "complete/photo",
    "complete/site",
    "fit/way-in",
];

const BOOK: &str = "title: Story\nclient: Nobody\nunits: imperial\ncurrency: USD\n";
const ROOM: &str = "name: Kitchen\n";

pub type Files = BTreeMap<String, String>;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Story {
    story: String,
    told: String,
    finds: String,
    #[serde(default = "usual_day")]
    today: String,
    #[serde(default)]
    same: Files,
    #[serde(default)]
    wrong: Ways,
    #[serde(default)]
    right: Ways,
}

/// One book, or one for each way to write the fact.
#[derive(Deserialize)]
#[serde(untagged)]
pub enum Ways {
    One(Files),
    Several(Vec<Files>),
}

impl Default for Ways {
    fn default() -> Self {
        Self::One(Files::new())
    }
}

impl Ways {
    /// Each way's files, and why it is known to fail, by the key that says so.
    pub fn each(&self, mark: &str) -> Vec<(Files, Option<String>)> {
        let books = match self {
            Self::One(files) => std::slice::from_ref(files),
            Self::Several(books) => books,
        };
        let apart = |files: &Files| {
            let mut files = files.clone();
            let why = files.remove(mark);
            (files, why)
        };
        books.iter().map(apart).collect()
    }
}

/// How the ways of a story came out.
#[derive(Default)]
struct Tally {
    caught: usize,
    missed: Vec<String>,
    silent: usize,
    alarms: Vec<String>,
    faults: Vec<String>,
}

fn usual_day() -> String {
    "2027-01-15".into()
}

impl Story {
    fn findings(&self, own: &Files) -> Vec<Finding> {
        let mut files = Files::from([
            ("book.yaml".to_owned(), BOOK.to_owned()),
            ("rooms/kitchen/room.yaml".to_owned(), ROOM.to_owned()),
        ]);
        files.extend(self.same.clone());
        files.extend(own.clone());
        let reading = read(&Folder::in_memory(files)).expect("a book");
        let findings = assess(&reading.book, reading.findings, Date::parse(&self.today).expect("a day")).findings;
        assert_eq!(undeclared(&reading.book, &findings), [""; 0]);
        findings
    }

    /// What is amiss with the story itself, what its ways bring, and its twins.
    fn tally(&self, name: &str) -> Tally {
        let mut tally = Tally::default();
        let number = self.story.split([',', ' ']).next().unwrap_or_default().to_lowercase();
        if !name.starts_with(&format!("{number}-")) {
            tally.faults.push(format!("the file's name does not begin with `{number}-`"));
        }
        if self.told.len() < 20 {
            tally.faults.push("it does not say what happened".to_owned());
        }
        if rules::rule(&self.finds).is_none() {
            tally.faults.push(format!("there is no rule `{}`", self.finds));
        }
        for (nth, (files, why)) in self.wrong.each("missed").into_iter().enumerate() {
            self.wrong_way(nth + 1, &files, why, &mut tally);
        }
        for (nth, (files, why)) in self.right.each("alarm").into_iter().enumerate() {
            self.twin(nth + 1, &files, why, &mut tally);
        }
        tally
    }

    fn wrong_way(&self, nth: usize, files: &Files, why: Option<String>, tally: &mut Tally) {
        let found = self.findings(files);
        let caught = found.iter().any(|finding| finding.rule.text() == self.finds);
        match (caught, why) {
            (true, None) => tally.caught += 1,
            (true, Some(_)) => tally.faults.push(format!("way {nth} is caught now: take its `missed` away")),
            (false, Some(why)) => tally.missed.push(format!("way {nth}: {why}")),
            (false, None) => {
                tally.faults.push(format!("way {nth}: `{}` is silent: {}", self.finds, listed(&found)));
            }
        }
        if found.iter().any(|finding| finding.rule.text().starts_with("source/") && finding.rule.text() != self.finds) {
            tally.faults.push(format!("way {nth}: the wrong book's own YAML is faulty: {}", listed(&found)));
        }
    }

    fn twin(&self, nth: usize, files: &Files, why: Option<String>, tally: &mut Tally) {
        let mut found = self.findings(files);
        found.retain(|finding| finding.rule.text() == self.finds || !LEFT_OUT.contains(&finding.rule.text()));
        match (found.is_empty(), why) {
            (true, None) => tally.silent += 1,
            (true, Some(_)) => tally.faults.push(format!("twin {nth} is silent now: take its `alarm` away")),
            (false, Some(why)) => tally.alarms.push(format!("twin {nth}: {why}")),
            (false, None) => tally.faults.push(format!("a false alarm on twin {nth}: {}", listed(&found))),
        }
    }
}

/// Findings about things of a kind that their rule does not say it judges: `explain KIND` would not name it.
pub fn undeclared(book: &Book, findings: &[Finding]) -> Vec<String> {
    let mut kinds = BTreeMap::new();
    for (_, selection) in book.selections() {
        kinds.extend(selection.kind.get().map(|kind| (Id::of(&selection.name), *kind)));
    }
    let told = findings.iter().filter_map(|finding| {
        let kind = *kinds.get(&finding.subject.id()?)?;
        let rule = rules::of(finding.rule)?;
        // Of files, of the record and of waivers `explain KIND` says nothing.
        let of_files = ["source/", "approve/", "waive/"].iter().any(|family| rule.code.text().starts_with(family));
        (!of_files && !(rule.judges)(kind)).then(|| format!("{} judges {kind}", rule.code))
    });
    told.collect()
}

fn listed(findings: &[Finding]) -> String {
    findings.iter().map(|finding| format!("\n    {}: {}", finding.rule.text(), finding.message)).collect()
}

#[test]
fn every_story_is_caught_and_no_twin_brings_a_false_alarm() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/stories");
    let mut paths: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let (mut rows, mut all) = (BTreeSet::new(), Tally::default());
    for path in &paths {
        let name = path.file_name().unwrap().to_string_lossy();
        let story: Story = match serde_yaml::from_str(&std::fs::read_to_string(path).unwrap()) {
            Ok(story) => story,
            Err(error) => panic!("{name}: {error}"),
        };
        let tally = story.tally(&name);
        rows.extend(story.story.split(", ").map(str::to_owned));
        let named = |lines: Vec<String>| lines.into_iter().map(|line| format!("{name}: {line}")).collect::<Vec<_>>();
        all.caught += tally.caught;
        all.silent += tally.silent;
        all.missed.extend(named(tally.missed));
        all.alarms.extend(named(tally.alarms));
        all.faults.extend(named(tally.faults));
    }
    let Tally { caught, missed, silent, alarms, faults } = all;
    println!(
        "{} stories of {} rows: {caught} ways caught, {} missed; {silent} twins silent, {} false alarms",
        paths.len(),
        rows.len(),
        missed.len(),
        alarms.len()
    );
    missed.iter().for_each(|line| println!("missed: {line}"));
    alarms.iter().for_each(|line| println!("false alarm: {line}"));
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
    assert!(paths.len() >= AT_LEAST, "only {} stories", paths.len());
    assert!(caught >= WAYS_AT_LEAST, "only {caught} ways are caught");
}
