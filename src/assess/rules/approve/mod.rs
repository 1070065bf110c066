//! What was approved, and whether it still stands.

pub mod came;
pub mod condition;
pub mod conflict;
pub mod delivery;
pub mod depends;
pub mod keys;
pub mod ledger;
pub mod moment;
pub mod one_of_two;
pub mod reading;
pub mod sent_back;
pub mod stale;
pub mod terms;
#[cfg(test)]
pub(in crate::assess::rules) mod tests;
pub mod unsigned;
pub mod unwritten;
pub mod waiting;

use crate::assess::Context;
use crate::book::{Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::ledger::Purpose;
use crate::source::Spanned;
use crate::units::{Date, Wrote};

/// So many names are listed; the rest are counted.
const LISTED: usize = 3;
/// The most of a note that a finding quotes, in characters.
const QUOTED: usize = 120;

/// "`Range`, `Sink`, `Tap` and 21 more".
fn people(names: &[String]) -> Phrase {
    Phrase::series(names.iter().map(|name| Wrote(name)))
}

fn listed(items: &[(&Room, &Selection)]) -> Phrase {
    Phrase::series_of_most(items.iter().map(|(_, selection)| Phrase::name(&selection.name.value)), LISTED)
}

/// The day on which it was ordered.
fn ordered_on(selection: &Selection) -> Option<&Spanned<Date>> {
    selection.settled()?.order.placed_on.spanned()
}

/// An order that was placed before its time: a stop, unless nobody could have been asked yet on that day.
fn ordered(context: &Context<'_>, (room, selection): (&Room, &Selection), why: impl Into<Phrase>) -> Option<Remark> {
    let placed = ordered_on(selection)?;
    let name = &selection.name.value;
    let issues = context.book.record.issues.values();
    let first = issues.filter(|issue| issue.purpose == Purpose::Approval).map(|issue| issue.on).min()?;
    let (severity, before) = match placed.value < first {
        true => (Severity::Query, phrase!(" before the first issue for approval, {first},", first)),
        false => (Severity::Stop, ",".into()),
    };
    let message = phrase!("`{name}` was ordered on {}{before} {why}", name, placed.value, before, why.into());
    let finding = Remark::new(severity, placed.span, message).room(&room.folder).selection(&selection.name);
    Some(finding.remedy("have it approved now, or hold the order while it can be held"))
}

fn remedy_to_ask() -> Phrase {
    "issue the book again, so that it is asked: `bookmatch issue`".into()
}

/// A note in one line, cut where it is long.
fn short(note: &str) -> String {
    let line = note.split_whitespace().collect::<Vec<_>>().join(" ");
    if line.chars().count() <= QUOTED {
        return line;
    }
    line.chars().take(QUOTED).collect::<String>() + "…"
}
