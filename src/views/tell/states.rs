//! States in words and shapes.

use crate::book::Selection;
use crate::finding::{Counts, Finding, Severity};
use crate::views::state::{Shape, State};

use super::Teller;
use super::figures::count;

impl Teller<'_> {
    /// How far the decision on a selection has come. Nothing is approved before an approval is on
    /// record, so every item waits: for a choice, or for signatures.
    pub fn decision(&self, selection: &Selection) -> State {
        let word = if selection.settled().is_some() { "Waiting for signatures" } else { "Waiting: choose one" };
        State::new(Shape::Waiting, word)
    }
}

/// A finding's weight.
pub fn severity(finding: &Finding) -> State {
    if finding.waived.is_some() {
        return State::new(Shape::Waived, "waived");
    }
    let shape = match finding.severity {
        Severity::Stop => Shape::Stop,
        Severity::Query => Shape::Query,
        Severity::Note => Shape::Note,
    };
    State::new(shape, finding.severity.word())
}

/// How many findings of each weight.
pub fn counts(counts: Counts) -> Vec<State> {
    let all = [
        (Shape::Stop, count(counts.stops, "stop", "stops")),
        (Shape::Query, count(counts.queries, "query", "queries")),
        (Shape::Note, count(counts.notes, "note", "notes")),
        (Shape::Waived, format!("{} waived", counts.waived)),
    ];
    let told = all.into_iter().filter(|(shape, _)| *shape != Shape::Waived || counts.waived > 0);
    told.map(|(shape, word)| State::new(shape, word)).collect()
}
