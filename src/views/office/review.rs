//! The review for the office: every finding, and what was waived.

use crate::assess::concerns::Concerns;
use crate::assess::rules::Reader;
use crate::finding::{Counts, Finding, Hazard, SettleBy};
use crate::language::say;
use crate::source::Place;
use crate::units::series;
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::quoted;
use crate::views::shared::html::Html;
use crate::views::shared::sheet::{Fact, Sheet, on_sheet};
use crate::views::shared::state;
use crate::views::shared::state::State;
use serde::Serialize;

/// `review.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ReviewPage {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    /// `2 stops`, `5 queries`, `9 notes`, `1 waived`.
    pub counts: Vec<State>,
    pub groups: Vec<FindingGroup>,
    pub waivers: Vec<WaiverLine>,
    /// The cautions of what is waived, each once: they stand, waived or not.
    pub waiver_cautions: Vec<Caution>,
}

/// A caution that is said once for all the findings of a place.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Caution {
    /// Where it stands on the page.
    pub anchor: String,
    pub words: Html,
}

/// The findings of one room, or of the book as a whole.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct FindingGroup {
    pub name: String,
    /// `1 stop, 2 notes`.
    pub count: String,
    /// The cautions of its findings, each once.
    pub cautions: Vec<Caution>,
    pub findings: Vec<FindingLine>,
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FindingLine {
    pub severity: State,
    pub rule: String,
    /// The rule's place on the page of rules, relative to the folder's root.
    pub rule_href: Option<String>,
    pub item: Option<String>,
    /// `rooms/kitchen/range.yaml:12:9`.
    pub place: Option<String>,
    pub message: Html,
    pub remedy: Option<Html>,
    pub source: Option<String>,
    /// The moment by which it must be settled.
    pub by: Option<String>,
    /// Where its caution stands on the page.
    pub caution: Option<String>,
    /// Who reads of it besides the office.
    pub told: Vec<String>,
}

/// A rule that someone set aside for one place, and why.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct WaiverLine {
    pub rule: String,
    pub place: Option<String>,
    /// What it was about.
    pub message: Html,
    pub because: String,
    pub by: String,
    pub on: String,
    /// Where its caution stands on the page.
    pub caution: Option<String>,
    /// Who reads of it besides the office.
    pub told: Vec<String>,
}

on_sheet!(ReviewPage);

/// The cautions of a place's findings, each once, in the order in which they are met.
struct Cautions {
    place: String,
    hazards: Vec<Hazard>,
}

impl Cautions {
    fn of<'f>(place: &str, findings: impl Iterator<Item = &'f Finding>) -> Self {
        let mut hazards = Vec::new();
        for hazard in findings.filter_map(|finding| finding.caution) {
            if !hazards.contains(&hazard) {
                hazards.push(hazard);
            }
        }
        Self { place: place.into(), hazards }
    }

    fn anchor(&self, hazard: Hazard) -> Option<String> {
        let at = self.hazards.iter().position(|other| *other == hazard)?;
        Some(format!("caution-{}-{}", self.place, at + 1))
    }

    fn told(&self) -> Vec<Caution> {
        let told = self.hazards.iter().filter_map(|hazard| Some((self.anchor(*hazard)?, Html::text(hazard.caution()))));
        told.map(|(anchor, words)| Caution { anchor, words }).collect()
    }
}

impl PageBuilder<'_> {
    /// `review.html`.
    pub fn review(&self) -> ReviewPage {
        let (place, from, onward) = self.office_place("Q-09");
        let counts = self.subject.assessment.counts;
        let concerns = Concerns::of(self.subject.book);
        let lead = match counts.stops + counts.queries + counts.notes {
            0 => "The review found nothing.".to_string(),
            _ if counts.stops == 0 => "Nothing stops the work.".into(),
            _ => "What stops the work must be mended or waived before the book is issued.".into(),
        };
        ReviewPage {
            sheet: self.chrome.sheet(place, None, from, onward),
            lead: Html::text(&lead),
            facts: vec![],
            counts: state::counts(self.words, counts),
            groups: self.finding_groups(&concerns),
            waivers: self.waiver_lines(&concerns),
            waiver_cautions: Cautions::of(
                "waived",
                self.subject.assessment.findings.iter().filter(|one| one.waived.is_some()),
            )
            .told(),
        }
    }

    fn finding_groups(&self, concerns: &Concerns<'_>) -> Vec<FindingGroup> {
        let rooms = self.subject.book.rooms.iter().map(|room| (Some(room.folder.as_str()), room.title().to_string()));
        let groups = std::iter::once((None, "The book as a whole".to_string())).chain(rooms);
        groups
            .enumerate()
            .map(|(at, (folder, name))| self.finding_group(at, folder, name, concerns))
            .filter(|group| !group.findings.is_empty())
            .collect()
    }

    fn finding_group(&self, at: usize, folder: Option<&str>, name: String, concerns: &Concerns<'_>) -> FindingGroup {
        let mut findings = self.found.of_room(folder);
        findings.retain(|finding| finding.waived.is_none());
        let told: Vec<Finding> = findings.iter().map(|finding| (*finding).clone()).collect();
        let counts = Counts::of(&told);
        let words = state::counts(self.words, counts)
            .into_iter()
            .map(|state| state.word)
            .filter(|word| !word.starts_with("0 "));
        let count = series(&words.collect::<Vec<_>>());
        let cautions = Cautions::of(&at.to_string(), findings.iter().copied());
        let lines = findings.iter().map(|finding| self.finding_line(finding, &cautions, concerns)).collect();
        FindingGroup { name, count, cautions: cautions.told(), findings: lines }
    }

    fn finding_line(&self, finding: &Finding, cautions: &Cautions, concerns: &Concerns<'_>) -> FindingLine {
        FindingLine {
            severity: state::severity(self.words, finding),
            rule: finding.rule.text().into(),
            rule_href: Some(format!("rules.html#{}", finding.rule.anchor())),
            item: finding.subject.name().map(str::to_string),
            place: Some(self.place_words(&finding.place)),
            message: quoted(&finding.message),
            remedy: Some(quoted(&finding.remedy)).filter(|remedy| !remedy.is_empty()),
            source: Some(finding.source.clone()).filter(|source| !source.is_empty()),
            by: finding.by.as_ref().map(SettleBy::words),
            caution: finding.caution.and_then(|hazard| cautions.anchor(hazard)),
            told: self.told_to(finding, concerns),
        }
    }

    fn told_to(&self, finding: &Finding, concerns: &Concerns<'_>) -> Vec<String> {
        let told = |reader| match reader {
            Reader::Client => say!(self.words, "review.told_to.client"),
            Reader::Installer => say!(self.words, "review.told_to.installer"),
        };
        concerns.readers(finding).into_iter().map(told).collect()
    }

    fn place_words(&self, place: &Place) -> String {
        let files = self.subject.files;
        let start = files.start(place);
        match place {
            Place::Path(path) => path.clone(),
            Place::Text(_) => format!("{}:{}:{}", files.path(place), start.line, start.column),
        }
    }

    fn waiver_lines(&self, concerns: &Concerns<'_>) -> Vec<WaiverLine> {
        let waived = || self.subject.assessment.findings.iter().filter(|finding| finding.waived.is_some());
        let cautions = Cautions::of("waived", waived());
        waived()
            .filter_map(|finding| {
                let waived = finding.waived.as_ref()?;
                Some(WaiverLine {
                    rule: finding.rule.text().into(),
                    place: Some(self.place_words(&finding.place)),
                    message: quoted(&finding.message),
                    because: waived.because.clone(),
                    by: waived.by.clone(),
                    on: waived
                        .until
                        .as_ref()
                        .map_or_else(|| waived.on.iso(), |until| format!("{}, until {until}", waived.on.iso())),
                    caution: finding.caution.and_then(|hazard| cautions.anchor(hazard)),
                    told: self.told_to(finding, concerns),
                })
            })
            .collect()
    }
}
