//! Sets findings aside where the book waives them. A caution stays.

use std::collections::BTreeSet;

use crate::book::{Book, Waiver};
use crate::finding::{Finding, Severity, Waived};

use super::rules;

/// A waiver, and what it reaches: the whole book, a room, or one item of a room.
struct Reach<'a> {
    waiver: &'a Waiver,
    room: Option<&'a str>,
    item: Option<&'a str>,
}

impl Reach<'_> {
    fn covers(&self, finding: &Finding) -> bool {
        let room = self.room.is_none_or(|room| finding.room.as_deref() == Some(room));
        let item = self.item.is_none_or(|item| finding.item.as_deref() == Some(item));
        self.waiver.rule.value == finding.rule && room && item
    }
}

/// Marks what the book waives, and tells waivers of rules that do not exist.
pub fn apply(book: &Book, findings: &mut Vec<Finding>) {
    let reaches = reaches(book);
    for finding in findings.iter_mut() {
        // A file that can't be understood can't be waived: nothing in it can be trusted.
        let may_be = !finding.rule.starts_with("source/");
        if let Some(reach) = reaches.iter().find(|reach| may_be && reach.covers(finding)) {
            let Waiver { because, by, on, .. } = reach.waiver;
            finding.waived = Some(Waived { because: because.clone(), by: by.clone(), on: on.iso() });
        }
    }
    let mut told = BTreeSet::new();
    for reach in reaches {
        let rule = &reach.waiver.rule;
        if rules::rule(&rule.value).is_none() && told.insert(rule.span) {
            let message = format!("there is no rule called `{}`", rule.value);
            let finding = Finding::new("source/unknown-name", Severity::Stop, rule.span, message)
                .remedy("name a rule by its code, such as `fit/play`; `bookmatch explain` lists them");
            findings.push(Finding {
                room: reach.room.map(str::to_string),
                item: reach.item.map(str::to_string),
                ..finding
            });
        }
    }
}

fn reaches(book: &Book) -> Vec<Reach<'_>> {
    let mut all: Vec<Reach<'_>> =
        book.project.waivers.iter().map(|waiver| Reach { waiver, room: None, item: None }).collect();
    for room in &book.rooms {
        let folder = Some(room.folder.as_str());
        all.extend(room.waivers.iter().map(|waiver| Reach { waiver, room: folder, item: None }));
        for opening in &room.openings {
            // A waiver at an opening reaches what is said of the opening and of what goes into it.
            let inside = room.selections.iter().filter(|selection| selection.place.get() == Some(&opening.name.value));
            let items = std::iter::once(opening.name.as_str()).chain(inside.map(|selection| selection.name.as_str()));
            for item in items {
                all.extend(opening.waivers.iter().map(|waiver| Reach { waiver, room: folder, item: Some(item) }));
            }
        }
        for selection in &room.selections {
            let item = Some(selection.name.as_str());
            all.extend(selection.waivers.iter().map(|waiver| Reach { waiver, room: folder, item }));
        }
    }
    all
}
