//! Sets findings aside where the book waives them, and tells waivers that hold no longer. A caution stays.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::{Book, NeededFor, Room, Waiver};
use crate::finding::{Code, Finding, Id, Phrase, Remark, Severity, Subject, Waived, WaivedUntil, phrase};
use crate::source::Span;
use crate::units::{Date, Wrote};

use super::dates::Dates;
use super::rules;

/// A waiver, and what it reaches: the whole book, a room, an opening with what goes into it, or a selection
/// with its options. Things are told apart by where their names are written, since two may have one name.
struct Reach<'a> {
    waiver: &'a Waiver,
    room: Option<&'a str>,
    /// The opening or selection at which it stands.
    at: Subject,
    /// What goes into that opening.
    inside: Vec<Id>,
}

/// What a waiver stands at.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Scope {
    Book,
    Room(String),
    Thing(Id),
}

/// A rule, where it is waived, and for which option alone.
type Key = (String, Scope, Option<String>);

/// The waivers of one key: they reach the same findings, so that they are counted once.
#[derive(Default)]
struct Group<'a> {
    /// The first of them that still holds, and its place among all.
    holds: Option<(usize, &'a Waiver)>,
    /// How many findings they reach.
    met: usize,
}

impl Reach<'_> {
    /// Where it is looked for. An option has a name only within its selection: said of a whole room, it is
    /// none's, and reaches nothing.
    fn keys(&self) -> Vec<Key> {
        let key = |scope| (self.waiver.rule.value.clone(), scope, self.waiver.option.get().cloned());
        match (self.at.id(), self.room) {
            (Some(at), _) => {
                std::iter::once(at).chain(self.inside.iter().copied()).map(|of| key(Scope::Thing(of))).collect()
            }
            (None, _) if self.waiver.option.get().is_some() => vec![],
            (None, Some(room)) => vec![key(Scope::Room(room.to_string()))],
            (None, None) => vec![key(Scope::Book)],
        }
    }

    fn remark(&self, severity: Severity, span: Span, message: Phrase) -> Remark {
        let remark = Remark::new(severity, span, message).in_room(self.room.map(str::to_string));
        Remark { subject: self.at.clone(), ..remark }
    }
}

/// Marks what the book waives; tells waivers of rules that do not exist, waivers whose day is past,
/// and waivers that set nothing aside.
pub fn apply(book: &Book, dates: &Dates, findings: &mut Vec<Finding>) {
    let reaches = reaches(book);
    if reaches.is_empty() {
        return;
    }
    let mut groups: BTreeMap<Key, Group<'_>> = BTreeMap::new();
    for (number, reach) in reaches.iter().enumerate() {
        for key in reach.keys() {
            let group = groups.entry(key).or_default();
            if group.holds.is_none() && !is_past(reach.waiver, dates) {
                group.holds = Some((number, reach.waiver));
            }
        }
    }
    // A file that can't be understood, or is not as it was written, can't be waived: it can't be trusted.
    for finding in findings.iter_mut().filter(|finding| rules::can_be_waived(finding.rule)) {
        let holds = reached(finding, &mut groups);
        finding.waived = holds.map(|(_, waiver)| Box::new(waived(waiver)));
    }
    let mut told = BTreeSet::new();
    for reach in reaches.iter().filter(|reach| told.insert(reach.waiver.span)) {
        // A waiver of an opening stands there and at what goes into it.
        let of_waiver = reaches_of(&groups, reach);
        findings.extend(unknown(reach).or_else(|| of_no_use(book, reach, of_waiver)).or_else(|| expired(reach, dates)));
    }
}

/// Counts a finding with the waivers that reach it, and gives the first of them that still holds.
fn reached<'a>(finding: &Finding, groups: &mut BTreeMap<Key, Group<'a>>) -> Option<(usize, &'a Waiver)> {
    let thing = finding.subject.id().map(Scope::Thing);
    let room = finding.room.clone().map(Scope::Room);
    let of_option = thing.clone().zip(finding.subject.option().map(str::to_string));
    let of_option = of_option.map(|(scope, option)| (finding.rule.text().to_string(), scope, Some(option)));
    let scopes = [Some(Scope::Book), room, thing].into_iter().flatten();
    let plain = scopes.map(|scope| (finding.rule.text().to_string(), scope, None));
    let mut first: Option<(usize, &Waiver)> = None;
    for key in plain.chain(of_option) {
        let Some(group) = groups.get_mut(&key) else { continue };
        group.met += 1;
        first = [first, group.holds].into_iter().flatten().min_by_key(|(number, _)| *number);
    }
    first
}

/// How many findings a waiver reaches.
fn reaches_of(groups: &BTreeMap<Key, Group<'_>>, reach: &Reach<'_>) -> usize {
    reach.keys().iter().filter_map(|key| groups.get(key)).map(|group| group.met).sum()
}

fn waived(waiver: &Waiver) -> Waived {
    let until = waiver.until.get().map(|until| match until {
        NeededFor::Day(day) => WaivedUntil::Day(*day),
        NeededFor::Milestone(name) => WaivedUntil::Milestone(name.clone()),
    });
    Waived { because: waiver.because.clone(), by: waiver.by.clone(), on: waiver.on, until }
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
    let message = phrase!("there is no rule called `{}`", rule.value);
    let remark = reach.remark(Severity::Stop, rule.span, message);
    Some(
        remark
            .remedy("name a rule by its code, such as `fit/play`; `bookmatch explain` lists them")
            .of(Code::UNKNOWN_NAME),
    )
}

/// A waiver that meets nothing where it stands. What could not be read whole proves nothing.
fn of_no_use(book: &Book, reach: &Reach<'_>, met: usize) -> Option<Finding> {
    let read = reach.room.map_or(book.unread.is_empty(), |room| !book.unread.contains(room));
    let is_there = |room: &Room| reach.room.is_none_or(|folder| *folder == *room.folder);
    let partly = book.rooms.iter().any(|room| (room.partly_unread || is_not_reckoned(room)) && is_there(room));
    if met > 0 || !read || partly {
        return None;
    }
    let Waiver { rule, by, on, .. } = reach.waiver;
    let by = Wrote(by);
    let message = phrase!("the waiver of `{}` by {by} ({on}) sets nothing aside any more", rule.value, by, on);
    let remark = reach.remark(Severity::Query, reach.waiver.span, message);
    let remedy = "take it out of the book; if it stands at the wrong place, move it to where the finding is";
    Some(remark.remedy(remedy).of(Code::WAIVER_ORPHAN))
}

/// Whether a width of the room was measured from what nobody says the rest of: what stands beside has no place meanwhile.
fn is_not_reckoned(room: &Room) -> bool {
    room.openings.iter().any(|opening| !opening.width.is_absent() && opening.governing_width().is_none())
}

fn expired(reach: &Reach<'_>, dates: &Dates) -> Option<Finding> {
    let waiver = reach.waiver;
    let last = last_day(waiver, dates).filter(|_| is_past(waiver, dates))?;
    let milestone = match waiver.until.get() {
        Some(NeededFor::Milestone(name)) => phrase!("{name}, ", Wrote(name)),
        _ => Phrase::default(),
    };
    let message = phrase!(
        "the waiver of `{}` by {} held until {milestone}{last}",
        waiver.rule.value,
        Wrote(&waiver.by),
        milestone,
        last
    );
    let remark = reach.remark(Severity::Query, waiver.span, message);
    let remedy = "mend what it set aside, or have it waived anew, with a reason, a name and a day";
    Some(remark.remedy(remedy).of(Code::WAIVER_EXPIRED))
}

fn reaches(book: &Book) -> Vec<Reach<'_>> {
    let whole = |waiver, room| Reach { waiver, room, at: Subject::Whole, inside: vec![] };
    let mut all: Vec<Reach<'_>> = book.project.waivers.iter().map(|waiver| whole(waiver, None)).collect();
    for room in &book.rooms {
        let folder = Some(room.folder.as_str());
        all.extend(room.waivers.iter().map(|waiver| whole(waiver, folder)));
        let mut placed: BTreeMap<&str, Vec<Id>> = BTreeMap::new();
        for selection in &room.selections {
            if let Some(place) = selection.place.get() {
                placed.entry(place).or_default().push(Id::of(&selection.name));
            }
        }
        for opening in room.openings.iter().filter(|opening| !opening.waivers.is_empty()) {
            // A waiver at an opening reaches what is said of the opening and of what goes into it.
            let inside = placed.get(opening.name.as_str()).cloned().unwrap_or_default();
            let reach = |waiver| Reach {
                waiver,
                room: folder,
                at: Subject::Opening(opening.name.clone()),
                inside: inside.clone(),
            };
            all.extend(opening.waivers.iter().map(reach));
        }
        for selection in &room.selections {
            let reach =
                |waiver| Reach { waiver, room: folder, at: Subject::Selection(selection.name.clone()), inside: vec![] };
            all.extend(selection.waivers.iter().map(reach));
        }
    }
    all
}

#[cfg(test)]
mod tests;
