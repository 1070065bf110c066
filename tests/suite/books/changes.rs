//! Single changes to the whole books: which rule must speak, which must not, and where the finding points.
//!
//! One file a book in `tests/books/changes/`. `file PATH` begins a part; every other line is a change:
//!
//! ```text
//! file rooms/kitchen/room.yaml
//! takes: range > width: 30 1/8" -> width: 29 3/4" :: fit/width also fit/play
//! ```
//!
//! Left of `->` is what stands in the file, once; words before `>` are where to look from. Right of it is
//! what stands there afterwards: nothing, where the fact is taken away; `\n` is a new line. After `::`
//! stands the rule that must speak, or `none` for the same fact in other words, and then, each if it
//! matters: `also` rules that may speak besides, `at` a text on the line that the finding points at, where
//! that is not the line that was changed (several between ` or `), `missed` why the rule is silent, `alarm`
//! why another speaks.
//! Only a rule that speaks of more things, or more gravely, than before counts as speaking; any that is
//! not named is a false alarm.

use std::collections::BTreeMap;

use bookmatch::finding::Finding;
use bookmatch::source::{Files, Place};
use rayon::prelude::*;

use super::shelf::{Reviewed, Texts, Whole, place, review, shelf};

/// Changes that the table holds, at least.
const AT_LEAST: usize = 1100;

/// A line of the table.
pub struct Change {
    pub line: String,
    pub book: usize,
    pub file: String,
    find: String,
    from: String,
    put: String,
    pub rule: Option<String>,
    also: Vec<String>,
    at: Vec<String>,
    missed: bool,
    alarm: bool,
}

/// How a change came out.
#[derive(Default)]
struct Outcome {
    caught: usize,
    missed: usize,
    kept_silent: usize,
    alarms: usize,
    pointed: usize,
    faults: Vec<String>,
}

impl Change {
    /// The book's texts after the change, and the lines that it touched, counted from one.
    pub fn made(&self, texts: &Texts) -> Result<(Texts, std::ops::RangeInclusive<u32>), String> {
        let text = texts.get(&self.file).ok_or("there is no such file")?;
        let start = if self.from.is_empty() { 0 } else { text.find(&self.from).ok_or("nothing to look from")? };
        let rest = &text[start..];
        let at = start + rest.find(&self.find).ok_or("what is to be changed does not stand there")?;
        if self.from.is_empty() && rest.matches(&self.find).count() > 1 {
            return Err("what is to be changed stands there more than once: say where to look from".into());
        }
        let after = format!("{}{}{}", &text[..at], self.put, &text[at + self.find.len()..]);
        let line = |text: &str| u32::try_from(text.matches('\n').count() + 1).unwrap();
        let first = line(&text[..at]);
        let mut texts = texts.clone();
        texts.insert(self.file.clone(), after);
        Ok((texts, first..=first + line(&self.put) - 1))
    }

    fn outcome(&self, book: &Whole, before: &[Finding]) -> Outcome {
        let mut outcome = Outcome::default();
        let (texts, lines) = match self.made(&book.files) {
            Ok(made) => made,
            Err(fault) => {
                outcome.faults.push(fault);
                return outcome;
            }
        };
        let after = review(&texts);
        let new = appeared(before, &after.findings);
        self.speaks(&new, &after, &lines, &mut outcome);
        let named = |finding: &&Finding| {
            self.rule.as_deref() == Some(finding.rule.text())
                || self.also.iter().any(|rule| rule == finding.rule.text())
        };
        let others: Vec<&Finding> = new.iter().copied().filter(|finding| !named(finding)).collect();
        match (others.is_empty(), self.alarm) {
            (true, true) => outcome.faults.push("no other rule speaks now: take its `alarm` away".into()),
            (true, false) => outcome.kept_silent += usize::from(self.rule.is_none()),
            (false, true) => outcome.alarms += 1,
            (false, false) => outcome.faults.push(format!("speaks without being named:{}", listed(&others))),
        }
        outcome
    }

    fn speaks(&self, new: &[&Finding], after: &Reviewed, lines: &std::ops::RangeInclusive<u32>, out: &mut Outcome) {
        let Some(rule) = &self.rule else { return };
        let caught: Vec<&Finding> = new.iter().copied().filter(|finding| finding.rule.text() == rule).collect();
        match (caught.is_empty(), self.missed) {
            (true, true) => out.missed += 1,
            (true, false) => out.faults.push(format!("`{rule}` is silent")),
            (false, true) => out.faults.push(format!("`{rule}` speaks now: take its `missed` away")),
            (false, false) => {
                out.caught += 1;
                if caught.iter().any(|finding| self.points(finding, &after.files, lines)) {
                    out.pointed += 1;
                } else {
                    let lines = caught.iter().map(|finding| pointed(finding, &after.files).join(" / "));
                    out.faults.push(format!("`{rule}` points at {}", lines.collect::<Vec<_>>().join(", ")));
                }
            }
        }
    }

    fn points(&self, finding: &Finding, files: &Files, lines: &std::ops::RangeInclusive<u32>) -> bool {
        let changed = |place: &Place| {
            files.path(place) == self.file
                && *lines.start() <= files.end(place).line
                && files.start(place).line <= *lines.end()
        };
        let said = pointed(finding, files).iter().any(|line| self.at.iter().any(|at| line.contains(at.as_str())));
        said || places(finding).iter().any(changed)
    }
}

/// Everything that a finding points at.
fn places(finding: &Finding) -> Vec<Place> {
    let also = finding.also.iter().map(|also| Place::from(also.span));
    std::iter::once(finding.place.clone()).chain(also).collect()
}

/// The lines that a finding points at, with their file.
fn pointed(finding: &Finding, files: &Files) -> Vec<String> {
    let line = |place: &Place| {
        let path = files.path(place);
        let number = files.start(place).line;
        let text = files.iter().find(|file| file.path == path).map_or("", |file| file.text.as_str());
        let line = text.lines().nth(number as usize - 1).unwrap_or_default();
        format!("{path}:{number}: {}", line.trim())
    };
    places(finding).iter().map(line).collect()
}

/// What a finding is about: rule, weight, room, item, option.
type About<'a> = (&'a str, &'a str, Option<&'a str>, Option<&'a str>, Option<&'a str>);

fn about(finding: &Finding) -> About<'_> {
    let (room, item, option) = (finding.room.as_deref(), finding.subject.name(), finding.subject.option());
    (finding.rule.text(), finding.severity.word(), room, item, option)
}

/// Findings of a rule about a thing about which it said less before.
fn appeared<'a>(before: &[Finding], after: &'a [Finding]) -> Vec<&'a Finding> {
    let mut count: BTreeMap<About<'_>, usize> = BTreeMap::new();
    for finding in before {
        *count.entry(about(finding)).or_default() += 1;
    }
    let mut new = Vec::new();
    for finding in after {
        match count.get_mut(&about(finding)).filter(|count| **count > 0) {
            Some(count) => *count -= 1,
            None => new.push(finding),
        }
    }
    new
}

fn listed(findings: &[&Finding]) -> String {
    let line =
        |finding: &&Finding| format!("\n    {} {}: {}", finding.severity.word(), finding.rule.text(), finding.message);
    findings.iter().map(line).collect()
}

/// The table, a line a change.
pub fn changes(books: &[Whole]) -> Vec<Change> {
    let read = |(number, book): (usize, &Whole)| {
        let path = place().join("changes").join(format!("{}.txt", book.name));
        let text = std::fs::read_to_string(path).unwrap_or_default();
        let mut file = String::new();
        let mut rows = Vec::new();
        for line in text.lines().filter(|line| !line.trim().is_empty() && !line.starts_with('#')) {
            match line.strip_prefix("file ") {
                Some(path) => path.clone_into(&mut file),
                None => rows.push(change(line, number, &file)),
            }
        }
        rows
    };
    books.iter().enumerate().flat_map(read).collect()
}

fn change(line: &str, book: usize, file: &str) -> Change {
    let (edit, says) = line.rsplit_once(" :: ").unwrap_or_else(|| panic!("no ` :: `: {line}"));
    let (find, put) = edit.split_once(" ->").unwrap_or_else(|| panic!("no ` ->`: {line}"));
    let (from, find) = find.split_once(" > ").unwrap_or(("", find));
    let mut parts: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    let mut part = "rule";
    for word in says.split(' ').filter(|word| !word.is_empty()) {
        match word {
            "also" | "at" | "missed" | "alarm" => part = word,
            _ => parts.entry(part).or_default().push(word),
        }
    }
    let words = |part: &str| parts.get(part).cloned().unwrap_or_default();
    let at = words("at").join(" ");
    Change {
        line: line.to_owned(),
        book,
        file: file.to_owned(),
        find: find.replace("\\n", "\n"),
        from: from.replace("\\n", "\n"),
        put: put.strip_prefix(' ').unwrap_or(put).replace("\\n", "\n"),
        rule: words("rule").first().filter(|rule| **rule != "none").map(|rule| (*rule).to_owned()),
        also: words("also").into_iter().map(str::to_owned).collect(),
        at: at.split(" or ").filter(|at| !at.is_empty()).map(str::to_owned).collect(),
        missed: !words("missed").is_empty(),
        alarm: !words("alarm").is_empty(),
    }
}

#[test]
fn every_single_change_brings_its_rule_at_its_place_and_no_other() {
    let books = shelf();
    let before: Vec<Reviewed> = books.par_iter().map(|book| review(&book.files)).collect();
    let changes = changes(&books);
    let outcomes: Vec<Outcome> =
        changes.par_iter().map(|one| one.outcome(&books[one.book], &before[one.book].findings)).collect();
    let sum = |of: fn(&Outcome) -> usize| outcomes.iter().map(of).sum::<usize>();
    println!(
        "{} single changes to {} books: {} caught, {} missed, {} in other words and silent, {} false alarms; \
         {} findings point at the change or at the place named",
        changes.len(),
        books.len(),
        sum(|one| one.caught),
        sum(|one| one.missed),
        sum(|one| one.kept_silent),
        sum(|one| one.alarms),
        sum(|one| one.pointed),
    );
    for change in changes.iter().filter(|change| change.missed || change.alarm) {
        println!("{} {}: {}", books[change.book].name, change.file, change.line);
    }
    let faults: Vec<String> = changes
        .iter()
        .zip(&outcomes)
        .flat_map(|(change, outcome)| {
            let whose = format!("{} {}: {}", books[change.book].name, change.file, change.line);
            outcome.faults.iter().map(move |fault| format!("{whose}\n  {fault}"))
        })
        .collect();
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
    assert!(changes.len() >= AT_LEAST, "only {} changes", changes.len());
}
