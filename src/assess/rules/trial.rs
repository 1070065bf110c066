//! A small book for testing one rule: only what the test is about is written.

use crate::assess::assess;
use crate::book::Book;
use crate::finding::{Code, Family, Finding};
use crate::language::{self, Language};
use crate::read::read;
use crate::source::Folder;
use crate::units::Date;

/// A book in the making, and the rule that is tested.
pub struct Trial {
    rule: &'static str,
    today: &'static str,
    book: String,
    room: String,
    openings: String,
    selections: Vec<String>,
    files: Vec<(String, Vec<u8>)>,
    any_yaml: bool,
    /// The files, once they were laid.
    laid: Vec<(String, Vec<u8>)>,
}

/// What the rule found.
pub struct Found {
    findings: Vec<Finding>,
    /// Where each points: `rooms/kitchen/room.yaml:3:6`.
    places: Vec<String>,
}

/// Wants words in every language for what clients and installers are told of: `findings` in each file of
/// `themes/standard/words/`, by the pattern of the sentence.
fn is_worded(finding: &Finding) {
    let told = super::of(finding.rule).is_some_and(|rule| !rule.tells.is_empty());
    if told || finding.rule.family() == Family::Fit {
        for language in language::tags().filter_map(Language::named) {
            let unworded = language.words().phrase(&finding.message).err();
            assert_eq!(unworded, None, "{language} has no words for a part of {}: {}", finding.rule, finding.message);
        }
    }
}

impl Trial {
    /// A trial of that rule, on 2027-01-15.
    pub fn of(rule: &'static str) -> Self {
        Self {
            rule,
            today: "2027-01-15",
            book: "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n".into(),
            room: "name: Kitchen\n".into(),
            openings: String::new(),
            selections: vec![],
            files: vec![],
            any_yaml: false,
            laid: vec![],
        }
    }

    /// Another day.
    pub fn today(mut self, today: &'static str) -> Self {
        self.today = today;
        self
    }

    /// A book in metric units, of the country whose advice is told.
    pub fn metric(mut self) -> Self {
        self.book = self.book.replace("units: imperial", "units: metric\ncountry: US");
        self
    }

    /// More lines for `book.yaml`.
    pub fn book(mut self, lines: &str) -> Self {
        self.book += &format!("{lines}\n");
        self
    }

    /// More lines for `room.yaml`, of a room of another name.
    pub fn room_called(mut self, name: &str, lines: &str) -> Self {
        self.room = self.room.replace("name: Kitchen\n", &format!("name: {name}\n"));
        self.room(lines)
    }

    /// More lines for the room's `room.yaml`.
    pub fn room(mut self, lines: &str) -> Self {
        self.room += &format!("{lines}\n");
        self
    }

    /// An opening of the room.
    pub fn opening(mut self, name: &str, fields: &str) -> Self {
        self.openings += &format!("  {name}: {fields}\n");
        self
    }

    /// A selection, its own lines and those of its option.
    pub fn selection(mut self, lines: &str, option: &str) -> Self {
        self.selections.push(format!("{lines}\n{option}\n"));
        self
    }

    /// Any other file.
    pub fn file(mut self, path: &str, bytes: impl Into<Vec<u8>>) -> Self {
        self.files.push((path.into(), bytes.into()));
        self
    }

    /// Lets the trial's own YAML be faulty.
    pub fn of_any_yaml(mut self) -> Self {
        self.any_yaml = true;
        self
    }

    fn folder(&mut self) -> Folder {
        let openings = std::mem::take(&mut self.openings);
        let openings = if openings.is_empty() { openings } else { format!("openings:\n{openings}") };
        let mut files = vec![
            ("book.yaml".to_string(), self.book.clone().into_bytes()),
            ("rooms/kitchen/room.yaml".to_string(), (self.room.clone() + &openings).into_bytes()),
        ];
        for (number, selection) in std::mem::take(&mut self.selections).into_iter().enumerate() {
            files.push((format!("rooms/kitchen/selection-{number}.yaml"), selection.into_bytes()));
        }
        files.extend(std::mem::take(&mut self.files));
        self.laid.clone_from(&files);
        Folder::in_memory(files)
    }

    /// The book itself, for tests of what rules share.
    pub fn read(mut self) -> Book {
        read(&self.folder()).unwrap().book
    }

    /// Runs the review, and keeps what the tested rule found.
    pub fn run(mut self) -> Found {
        let folder = self.folder();
        let today = Date::parse(self.today).unwrap();
        self.speaks_metric_too(today);
        let reading = read(&folder).unwrap();
        let assessment = assess(&reading.book, reading.findings, today);
        let faults = |finding: &&Finding| {
            !self.any_yaml && finding.rule.family() == Family::Source && !self.rule.starts_with("source/")
        };
        let fault = assessment.findings.iter().find(faults);
        assert!(fault.is_none(), "the trial's own YAML is faulty: {fault:?}");
        let failed = assessment.findings.iter().find(|finding| finding.rule == Code::UNCHECKED);
        assert!(failed.is_none(), "a check failed: {failed:?}");
        let refused = assessment.findings.iter().find_map(|finding| super::remedies::fault(&reading.book, finding));
        assert!(refused.is_none(), "{}", refused.unwrap_or_default());
        assessment.findings.iter().for_each(is_worded);
        let findings: Vec<Finding> =
            assessment.findings.into_iter().filter(|finding| finding.rule.text() == self.rule).collect();
        let place = |finding: &Finding| {
            let start = reading.files.start(&finding.place);
            format!("{}:{}:{}", reading.files.path(&finding.place), start.line, start.column)
        };
        Found { places: findings.iter().map(place).collect(), findings }
    }

    /// Wants one finding that says what to write instead, and nothing more of it once that is written.
    pub fn mends(mut self) {
        let folder = self.folder();
        let today = Date::parse(self.today).unwrap();
        let found = |folder: &Folder| {
            let reading = read(folder).unwrap();
            let found = assess(&reading.book, reading.findings, today).findings;
            let own = |finding: &Finding| finding.rule.text() == self.rule || finding.rule.family() == Family::Source;
            (found.into_iter().filter(own).collect::<Vec<_>>(), reading.files)
        };
        let (told, files) = found(&folder);
        let [finding] = told.as_slice() else { panic!("{told:?}") };
        let fix = finding.fix.as_ref().unwrap_or_else(|| panic!("no certain mend: {finding:?}"));
        let file = files.get(fix.span.file).unwrap();
        let (before, after) = (&file.text[..fix.span.start as usize], &file.text[fix.span.end as usize..]);
        let mended = format!("{before}{}{after}", fix.with).into_bytes();
        let others = self.laid.iter().filter(|(path, _)| *path != file.path).cloned();
        let (told, _) = found(&Folder::in_memory(others.chain([(file.path.clone(), mended)])));
        assert!(told.is_empty(), "{told:?}");
    }

    /// Wants findings of which none says for certain what to write instead.
    pub fn mends_nothing(self) {
        let found = self.run();
        assert!(!found.findings.is_empty() && found.findings.iter().all(|finding| finding.fix.is_none()));
    }

    /// The same book in metric units: whatever is found of it says millimetres first.
    fn speaks_metric_too(&self, today: Date) {
        let book = self.book.replace("units: imperial", "units: metric");
        let others = self.laid.iter().filter(|(path, _)| path != "book.yaml").cloned();
        let files = others.chain([("book.yaml".to_string(), book.into_bytes())]);
        let Ok(reading) = read(&Folder::in_memory(files)) else { return };
        for finding in assess(&reading.book, reading.findings, today).findings {
            let fault = super::remedies::speaks_inches(&reading.book, &finding);
            assert!(fault.is_none(), "{}", fault.unwrap_or_default());
            is_worded(&finding);
        }
    }

    /// Runs, and wants exactly this one message.
    pub fn finds(self, message: &str) -> Found {
        let found = self.run();
        let messages: Vec<_> = found.findings.iter().map(|finding| finding.message.text()).collect();
        assert_eq!(messages, [message]);
        found
    }

    /// Runs, and wants exactly one finding.
    pub fn finds_one(self) -> Found {
        let found = self.run();
        assert_eq!(found.findings.len(), 1, "{:#?}", found.findings);
        found
    }

    /// Runs, and wants no finding.
    pub fn stays_silent(self) {
        let found = self.run();
        assert!(found.findings.is_empty(), "{:#?}", found.findings);
    }
}

impl Found {
    /// What was found.
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// Wants every finding to weigh so much.
    pub fn weighs(self, severity: &str) -> Self {
        assert!(self.findings.iter().all(|finding| finding.severity.word() == severity), "{:#?}", self.findings);
        self
    }

    /// Wants the findings to point there, each at its line and column.
    pub fn points_at(self, places: &[&str]) -> Self {
        assert_eq!(self.places, places);
        self
    }

    /// Wants every message to hold these words.
    pub fn says(self, words: &str) -> Self {
        assert!(self.findings.iter().all(|finding| finding.message.text().contains(words)), "{:#?}", self.findings);
        self
    }

    /// Wants every finding to carry a caution.
    pub fn cautions(self) -> Self {
        assert!(self.findings.iter().all(|finding| finding.caution.is_some()), "{:#?}", self.findings);
        self
    }

    /// Wants the remedy of the one finding.
    pub fn remedies(self, remedy: &str) -> Self {
        let remedies: Vec<_> = self.findings.iter().map(|finding| finding.remedy.text()).collect();
        assert_eq!(remedies, [remedy]);
        self
    }

    /// Wants so many findings.
    pub fn counts(self, count: usize) -> Self {
        assert_eq!(self.findings.len(), count, "{:#?}", self.findings);
        self
    }
}

/// A picture of one pixel.
pub fn png() -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    image::RgbImage::new(1, 1).write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    bytes.into_inner()
}
