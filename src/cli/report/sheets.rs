//! The sheets of openings and trades that no longer stand, and what of each is another, for people and for programs.

use serde::Serialize;

use crate::assess::{BuiltOtherwise, Fate};
use crate::shown::Change;

use super::shown::add_line;

/// A sheet that is another one.
#[derive(Serialize)]
pub(super) struct SheetReport<'a> {
    room: &'a str,
    /// None of a trade's sheet, or of a plan.
    opening: Option<&'a str>,
    /// `plan` of the plan of a room; none of an opening's sheet.
    trade: Option<&'static str>,
    is: &'static str,
    changes: Vec<ChangeReport>,
}

/// What is no longer as it was.
#[derive(Serialize)]
pub(super) struct ChangeReport {
    what: String,
    from: Option<String>,
    to: Option<String>,
}

impl ChangeReport {
    pub(super) fn of(change: &Change) -> Self {
        let said = |value: &Option<crate::shown::ChangedValue>| value.as_ref().map(|said| said.phrase().to_string());
        Self { what: change.named(), from: said(&change.from), to: said(&change.to) }
    }
}

/// For programs.
pub(super) fn told(all: &[BuiltOtherwise]) -> Vec<SheetReport<'_>> {
    let sheets = all.iter().map(|one| SheetReport {
        room: &one.room,
        opening: one.of.word().is_none().then_some(one.of.name()),
        trade: one.of.word(),
        is: fate_word(one.fate),
        changes: one.changes.iter().map(ChangeReport::of).collect(),
    });
    sheets.collect()
}

/// For people, under a heading; nothing where all stand.
pub(super) fn text(heading: &str, all: &[BuiltOtherwise]) -> String {
    let mut text = String::new();
    if !all.is_empty() {
        text.push('\n');
        add_line!(text, "{heading}");
    }
    for opening in all {
        let of = opening.of.name();
        add_line!(text, "  {of}, {}{}", opening.room, fate(opening.fate));
        for change in &opening.changes {
            add_line!(text, "      {}", change.words());
        }
    }
    text
}

pub(super) fn fate_word(fate: Fate) -> &'static str {
    match fate {
        Fate::Added => "new",
        Fate::Gone => "gone",
        Fate::Changed => "changed",
        Fate::Dated => "dated",
        Fate::Supplied => "supplied",
    }
}

pub(super) fn fate(fate: Fate) -> &'static str {
    match fate {
        Fate::Added => " (new)",
        Fate::Gone => " (gone)",
        Fate::Changed => "",
        Fate::Dated => " (dates alone)",
        Fate::Supplied => " (supplier alone)",
    }
}
