//! Sets findings aside where the book waives them, and tells waivers that hold no longer. A caution stays.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::{Book, NeededFor, Waiver};
use crate::finding::{Finding, Severity, Waived};
use crate::source::{Span, Spanned};
use crate::units::Date;

use super::dates::Dates;
use super::rules;

/// A waiver, and what it reaches: the whole book, a room, an opening with what goes into it, or a selection
/// with its options. Things are told apart by where their names are written, since two may have one name.
struct Reach<'a> {
    waiver: &'a Waiver,
    room: Option<&'a str>,
    /// The opening or selection at which it stands.
    at: Option<&'a Spanned<String>>,
    /// What goes into that opening.
    inside: Vec<Span>,
}

impl Reach<'_> {
    fn covers(&self, finding: &Finding) -> bool {
        let room = self.room.is_none_or(|room| finding.room.as_deref() == Some(room));
        let of_it = |about: Span| self.at.is_some_and(|at| at.span == about) || self.inside.contains(&about);
        let about = self.at.is_none() || finding.about.is_some_and(of_it);
        // An option has a name only within its selection: said of a whole room, it is none's.
        let option = self.waiver.option.get();
        let option = option.is_none_or(|option| self.at.is_some() && finding.option.as_ref() == Some(option));
        self.waiver.rule.value == finding.rule && room && about && option
    }

    fn finding(&self, rule: &'static str, severity: Severity, span: Span, message: String) -> Finding {
        let finding = Finding::new(rule, severity, span, message);
        let finding = Finding { room: self.room.map(str::to_string), ..finding };
        match self.at {
            Some(at) => finding.item(at),
            None => finding,
        }
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
    let whole = |waiver, room| Reach { waiver, room, at: None, inside: vec![] };
    let mut all: Vec<Reach<'_>> = book.project.waivers.iter().map(|waiver| whole(waiver, None)).collect();
    for room in &book.rooms {
        let folder = Some(room.folder.as_str());
        all.extend(room.waivers.iter().map(|waiver| whole(waiver, folder)));
        for opening in room.openings.iter().filter(|opening| !opening.waivers.is_empty()) {
            // A waiver at an opening reaches what is said of the opening and of what goes into it.
            let inside = room.selections.iter().filter(|selection| selection.place.get() == Some(&opening.name.value));
            let inside: Vec<Span> = inside.map(|selection| selection.name.span).collect();
            let reach = |waiver| Reach { waiver, room: folder, at: Some(&opening.name), inside: inside.clone() };
            all.extend(opening.waivers.iter().map(reach));
        }
        for selection in &room.selections {
            let reach = |waiver| Reach { waiver, room: folder, at: Some(&selection.name), inside: vec![] };
            all.extend(selection.waivers.iter().map(reach));
        }
    }
    all
}

#[cfg(test)]
mod tests;
