//! Sets findings aside where the book waives them, and tells waivers that hold no longer. A caution stays.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::{Book, NeededFor, Waiver};
use crate::finding::{Finding, Severity, Waived};
use crate::source::Span;
use crate::units::Date;

use super::dates::Dates;
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

    fn finding(&self, rule: &'static str, severity: Severity, span: Span, message: String) -> Finding {
        let finding = Finding::new(rule, severity, span, message);
        Finding { room: self.room.map(str::to_string), item: self.item.map(str::to_string), ..finding }
    }
}

/// Marks what the book waives; tells waivers of rules that do not exist, waivers whose day is past,
/// and waivers that set nothing aside.
pub fn apply(book: &Book, dates: &Dates, findings: &mut Vec<Finding>) {
    let reaches = reaches(book);
    // How many findings each waiver meets where it stands, by the place where it is written.
    let mut met: BTreeMap<Span, usize> = BTreeMap::new();
    for finding in findings.iter_mut().filter(|finding| rules::can_be_waived(finding.rule)) {
        // A file that can't be understood, or is not as it was written, can't be waived: it can't be trusted.
        let here: Vec<&Waiver> =
            reaches.iter().filter(|reach| reach.covers(finding)).map(|reach| reach.waiver).collect();
        for waiver in &here {
            *met.entry(waiver.span).or_default() += 1;
        }
        finding.waived = here.into_iter().find(|waiver| !is_past(waiver, dates)).map(waived);
    }
    let mut told = BTreeSet::new();
    for reach in reaches.iter().filter(|reach| told.insert(reach.waiver.span)) {
        let count = met.get(&reach.waiver.span).copied().unwrap_or_default();
        findings.extend(unknown(reach).or_else(|| of_no_use(book, reach, count)).or_else(|| expired(reach, dates)));
    }
}

fn waived(waiver: &Waiver) -> Waived {
    let until = waiver.until.get().map(|until| match until {
        NeededFor::Day(day) => day.iso(),
        NeededFor::Milestone(name) => name.clone(),
    });
    Waived { because: waiver.because.clone(), by: waiver.by.clone(), on: waiver.on.iso(), until }
}

/// The last day on which a waiver holds, if it has one.
fn last_day(waiver: &Waiver, dates: &Dates) -> Option<Date> {
    dates.day(waiver.until.get()?)
}

fn is_past(waiver: &Waiver, dates: &Dates) -> bool {
    last_day(waiver, dates).is_some_and(|last| last < dates.today())
}

fn unknown(reach: &Reach<'_>) -> Option<Finding> {
    let rule = &reach.waiver.rule;
    if rules::rule(&rule.value).is_some() {
        return None;
    }
    let message = format!("there is no rule called `{}`", rule.value);
    let finding = reach.finding("source/unknown-name", Severity::Stop, rule.span, message);
    Some(finding.remedy("name a rule by its code, such as `fit/play`; `bookmatch explain` lists them"))
}

/// A waiver that meets nothing where it stands. What could not be read whole proves nothing.
fn of_no_use(book: &Book, reach: &Reach<'_>, met: usize) -> Option<Finding> {
    let read = reach.room.map_or(book.unread.is_empty(), |room| !book.unread.contains(room));
    if met > 0 || !read {
        return None;
    }
    let Waiver { rule, by, on, .. } = reach.waiver;
    let message = format!("the waiver of `{}` by {by} ({on}) sets nothing aside any more", rule.value);
    let finding = reach.finding("waive/orphan", Severity::Query, reach.waiver.span, message);
    Some(finding.remedy("take it out of the book; if it stands at the wrong place, move it to where the finding is"))
}

fn expired(reach: &Reach<'_>, dates: &Dates) -> Option<Finding> {
    let waiver = reach.waiver;
    let last = last_day(waiver, dates).filter(|_| is_past(waiver, dates))?;
    let milestone = match waiver.until.get() {
        Some(NeededFor::Milestone(name)) => format!("{name}, "),
        _ => String::new(),
    };
    let message = format!("the waiver of `{}` by {} held until {milestone}{last}", waiver.rule.value, waiver.by);
    let finding = reach.finding("waive/expired", Severity::Query, waiver.span, message);
    Some(finding.remedy("mend what it set aside, or have it waived anew, with a reason, a name and a day"))
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
