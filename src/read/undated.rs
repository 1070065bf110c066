//! Milestones whose day could not be read: what rests on them is told with that fault, and nowhere else.

use std::collections::BTreeSet;

use crate::book::{Book, NeededFor, When};
use crate::finding::{Finding, Phrase, phrase};
use crate::source::{Place, Span};

/// Adds to the fault of each such milestone what has no day meanwhile.
pub fn tell(book: &Book, findings: &mut [Finding]) {
    for milestone in &book.project.milestones {
        let When::Faulty(at) = milestone.when else { continue };
        let later = resting(book, &milestone.name);
        let all: BTreeSet<&str> = later.iter().copied().chain([milestone.name.as_str()]).collect();
        let is_for = |on: &NeededFor| matches!(on, NeededFor::Milestone(name) if all.contains(name.as_str()));
        let things = book.selections().filter(|(_, selection)| selection.needed_for.get().is_some_and(is_for)).count();
        let mut rests: Vec<Phrase> = later.iter().map(|name| phrase!("`{name}`", name)).collect();
        if things > 0 {
            rests.push(if things == 1 { phrase!("1 selection") } else { phrase!("{things} selections", things) });
        }
        if let (false, Some(fault)) = (rests.is_empty(), findings.iter_mut().find(|finding| is_within(finding, at))) {
            let have = if rests.len() == 1 && things <= 1 { "has" } else { "have" };
            let last = (rests.len() > 1).then(|| rests.pop()).flatten();
            let named = Phrase::joined(rests, ", ");
            let named = last.map_or_else(|| named.clone(), |last| named.clone().then(" and ").then(last));
            let rest = phrase!("; {} {have} no day until then", named, have);
            fault.remark.message = std::mem::take(&mut fault.remark.message).then(rest);
        }
    }
}

fn is_within(finding: &Finding, span: Span) -> bool {
    matches!(finding.place, Place::Text(at) if at.file == span.file && at.start >= span.start && at.end <= span.end)
}

/// The milestones that come after that one, near and far, in the book's order.
fn resting<'b>(book: &'b Book, name: &'b str) -> Vec<&'b str> {
    let mut found = BTreeSet::from([name]);
    loop {
        let before = found.len();
        for milestone in &book.project.milestones {
            if let When::After(later) = &milestone.when
                && later.milestones.iter().any(|before| found.contains(before.value.as_str()))
            {
                found.insert(&milestone.name);
            }
        }
        if found.len() == before {
            break;
        }
    }
    let names = book.project.milestones.iter().map(|milestone| milestone.name.as_str());
    names.filter(|other| *other != name && found.contains(other)).collect()
}
