//! The review for the office: every finding, and what was waived.

use super::html::Html;
use super::sheet::{Fact, Sheet, on_sheet};
use super::state::State;
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
}

on_sheet!(ReviewPage);
