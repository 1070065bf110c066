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
//! The wrong book must bring the finding. Its twin must bring none at all, but for those that ask for
//! what a small book leaves out (`LEFT_OUT`), and never one of the rule that the story is about.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use bookmatch::assess::{assess, rules};
use bookmatch::finding::Finding;
use bookmatch::read::read;
use bookmatch::source::Folder;
use bookmatch::units::Date;
use serde::Deserialize;

/// Stories that the product is held to catch, at least.
const AT_LEAST: usize = 63;

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

type Files = BTreeMap<String, String>;

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
    wrong: Files,
    #[serde(default)]
    right: Files,
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
        assess(&reading.book, reading.findings, Date::parse(&self.today).expect("a day")).findings
    }

    /// What is amiss with the story itself, the finding that it must bring, and its twin.
    fn faults(&self, name: &str) -> Vec<String> {
        let mut faults = Vec::new();
        let number = self.story.split([',', ' ']).next().unwrap_or_default().to_lowercase();
        if !name.starts_with(&format!("{number}-")) {
            faults.push(format!("the file's name does not begin with `{number}-`"));
        }
        if self.told.len() < 20 {
            faults.push("it does not say what happened".to_owned());
        }
        if rules::rule(&self.finds).is_none() {
            faults.push(format!("there is no rule `{}`", self.finds));
        }
        let wrong = self.findings(&self.wrong);
        if !wrong.iter().any(|finding| finding.rule == self.finds) {
            faults.push(format!("`{}` is silent: {}", self.finds, listed(&wrong)));
        }
        if wrong.iter().any(|finding| finding.rule.starts_with("source/") && finding.rule != self.finds) {
            faults.push(format!("the wrong book's own YAML is faulty: {}", listed(&wrong)));
        }
        let mut right = self.findings(&self.right);
        right.retain(|finding| finding.rule == self.finds || !LEFT_OUT.contains(&finding.rule));
        if !right.is_empty() {
            faults.push(format!("a false alarm on the twin: {}", listed(&right)));
        }
        faults
    }
}

fn listed(findings: &[Finding]) -> String {
    findings.iter().map(|finding| format!("\n    {}: {}", finding.rule, finding.message)).collect()
}

#[test]
fn every_story_is_caught_and_no_twin_brings_a_false_alarm() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/stories");
    let mut paths: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let mut rows = BTreeSet::new();
    let mut faulty = Vec::new();
    for path in &paths {
        let name = path.file_name().unwrap().to_string_lossy();
        let story: Story = match serde_yaml::from_str(&std::fs::read_to_string(path).unwrap()) {
            Ok(story) => story,
            Err(error) => panic!("{name}: {error}"),
        };
        let faults = story.faults(&name);
        rows.extend(story.story.split(", ").map(str::to_owned));
        faulty.extend(faults.iter().map(|fault| format!("{name}: {fault}")));
    }
    let alarms = faulty.iter().filter(|fault| fault.contains("false alarm")).count();
    println!("{} stories of {} rows told, {alarms} false alarms on their twins", paths.len(), rows.len());
    assert!(faulty.is_empty(), "\n{}", faulty.join("\n"));
    assert!(paths.len() >= AT_LEAST, "only {} stories", paths.len());
}
