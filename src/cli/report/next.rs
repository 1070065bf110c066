//! What to do next: of all that was found, the three things that matter most.

use std::fmt::Write;

use crate::finding::{Family, Finding, SettleBy, Severity};
use crate::pipeline::Review;

use super::shown::line;

/// How many are told.
const MOST: usize = 3;
/// Most steps of one remedy.
const STEPS: usize = 4;

/// The three that matter most, each with its remedy: faults of the folder first, since nothing behind them is
/// known; then what stops the work, and then what is asked, by the next hold point. Empty where there is nothing.
pub fn next(review: &Review) -> String {
    let found = &review.assessment.findings;
    let open = || found.iter().filter(|finding| finding.waived.is_none() && finding.severity != Severity::Note);
    let mut all: Vec<&Finding> = open().collect();
    // Fewer findings say themselves what to do.
    if all.len() <= 1 {
        return String::new();
    }
    all.sort_by_key(|finding| {
        let by = finding.by.as_ref();
        let on = by.and_then(|by| by.on);
        (finding.rule.family() != Family::Source, finding.severity != Severity::Stop, on.is_none(), on)
    });
    let mut text = String::from("next\n");
    for (number, finding) in all.into_iter().take(MOST).enumerate() {
        let by = finding.by.as_ref().map(SettleBy::words).map_or(String::new(), |by| format!(", by {by}"));
        let place = line(&place(review, finding));
        let _ =
            writeln!(text, "  {}. {place}: {} [{}]{by}", number + 1, line(&begun(finding.remedy.text())), finding.rule);
    }
    text + "\n"
}

/// The first steps of a remedy that has many.
fn begun(remedy: &str) -> String {
    let steps: Vec<&str> = remedy.split("; ").collect();
    let first = steps.get(..STEPS).unwrap_or(&steps).join("; ");
    let more = steps.len().saturating_sub(STEPS);
    if more > 0 { format!("{first}; and {more} more") } else { first }
}

/// The room and the thing, or the file where it concerns none.
fn place<'a>(review: &'a Review, finding: &'a Finding) -> String {
    let room = finding.room.as_deref().map(|folder| review.book.room(folder).map_or(folder, |room| room.title()));
    let named: Vec<&str> = [room, finding.subject.name()].into_iter().flatten().collect();
    if named.is_empty() { review.files.path(&finding.place).to_string() } else { named.join(", ") }
}
