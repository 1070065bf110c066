//! In which issues a sheet that is built from was another one, which paper of it still says the same, and its mark.

use std::collections::HashMap;

use crate::assess::built;
use crate::book::{Book, Room};
use crate::digest::Digest;
use crate::language::say;
use crate::ledger::{Issue, IssuedSheet, Purpose};
use crate::shown::{self, SheetOf};
use crate::site::plan::Plans;
use crate::views::pages::PageBuilder;
use crate::views::shared::lines::field;
use crate::views::shared::revisions::{MOST, NAMED, Revision};
use crate::views::shared::sheet::{Sheet, purpose_key};

/// Which sheet it is: its room, and its opening or its trade.
type Named<T> = (T, T, T);

/// What each opening and each trade in a room is built from, now and in every issue that says it.
#[derive(Debug, Default)]
pub struct Sheets<'a> {
    now: HashMap<Named<String>, IssuedSheet>,
    issued: HashMap<Named<&'a str>, Vec<(&'a Issue, &'a IssuedSheet)>>,
}

impl<'a> Sheets<'a> {
    /// Those of a book and its record.
    pub fn of(book: &'a Book, plans: &Plans<'_>) -> Self {
        let owned = |sheet: &IssuedSheet| {
            let (room, opening, trade) = sheet.of();
            (room.to_string(), opening.to_string(), trade.to_string())
        };
        let now = built(book, plans).into_iter().map(|sheet| (owned(&sheet), sheet));
        let mut sheets = Self { now: now.collect(), ..Self::default() };
        for issue in book.record.issues.values() {
            for opening in issue.built.iter().flatten() {
                let of = sheets.issued.entry(opening.of()).or_default();
                of.push((issue, opening));
            }
        }
        sheets
    }

    fn now(&self, (room, opening, trade): Named<&str>) -> Option<&IssuedSheet> {
        self.now.get(&(room.to_string(), opening.to_string(), trade.to_string()))
    }
}

impl PageBuilder<'_> {
    /// A sheet that is built from, with its revisions and with what of its paper still stands.
    pub fn built_from(&self, sheet: Sheet, of: (&str, &str, &str)) -> Sheet {
        Sheet { revisions: self.sheet_revisions(of), marks_before: self.sheet_marks_before(of), ..sheet }
    }

    /// The issues in which what an opening is built from was new or changed, the newest first; before them that it
    /// is another one now than was issued last for construction.
    pub fn sheet_revisions(&self, sheet: (&str, &str, &str)) -> Vec<Revision> {
        let (mut before, mut told): (Option<&IssuedSheet>, Vec<Revision>) = (None, Vec::new());
        let issued = self.sheets.issued.get(&sheet).map_or(&[][..], Vec::as_slice);
        for (issue, is) in issued {
            if let Some(what) = self.sheet_change(before, is) {
                let purpose = say!(self.words, purpose_key(issue.purpose));
                let what = say!(self.words, "revised.line", purpose = purpose, what = what);
                told.push(Revision { number: issue.number.to_string(), date: self.words.day(issue.on), what });
            }
            before = Some(is);
        }
        let built_from = issued.iter().rev().find(|(issue, _)| issue.purpose == Purpose::Construction);
        let is_known = !self.subject.book.is_unsure_of(sheet.0);
        let otherwise = built_from.filter(|_| is_known).and_then(|(issue, was)| {
            let what = self.sheet_change(Some(was), self.sheets.now(sheet)?)?;
            Some(say!(self.words, "revised.since", issue = issue.number.to_string(), what = what))
        });
        let next = self.subject.book.record.issues.keys().next_back().copied().unwrap_or(0).saturating_add(1);
        told.extend(otherwise.map(|what| Revision { number: next.to_string(), date: String::new(), what }));
        told.into_iter().rev().take(MOST).collect()
    }

    /// The mark of a sheet, in short.
    pub fn sheet_mark(&self, sheet: (&str, &str, &str)) -> Option<String> {
        self.sheets.now(sheet).map(|now| shown::in_short(&now.mark))
    }

    /// The marks under which a sheet was issued and is the same now, in short: a newer release writes another one.
    pub fn sheet_marks_before(&self, sheet: (&str, &str, &str)) -> Vec<String> {
        let Some(now) = self.sheets.now(sheet) else { return vec![] };
        let issued = self.sheets.issued.get(&sheet).into_iter().flatten();
        let same = issued.filter(|(_, was)| was.mark != now.mark && shown::is_built_as(was, now));
        same.map(|(_, was)| shown::in_short(&was.mark)).collect()
    }

    /// The plans of all rooms, by which the installer's first page is made.
    fn plans_now(&self) -> Vec<(&Room, &IssuedSheet)> {
        let rooms = self.subject.book.rooms.iter();
        rooms.filter_map(|room| Some((room, self.sheets.now((&room.folder, "", SheetOf::PLAN))?))).collect()
    }

    /// The mark of all plans together, in short; of one its own. None where no room has one.
    pub fn plans_mark(&self) -> Option<String> {
        mark_of_plans(&self.plans_now().into_iter().map(|(_, now)| now.mark).collect::<Vec<_>>())
    }

    /// The marks of all plans together as issues had them that show each as it is now, in short.
    pub fn plans_marks_before(&self) -> Vec<String> {
        let plans = self.plans_now();
        let as_in = |issue: &Issue| {
            let was = plans.iter().map(|(room, now)| {
                let all = self.sheets.issued.get(&(room.folder.as_str(), "", SheetOf::PLAN))?;
                let was = all.iter().find(|(of, _)| of.number == issue.number).map(|(_, was)| *was)?;
                shown::is_built_as(was, now).then_some(was.mark)
            });
            mark_of_plans(&was.collect::<Option<Vec<Digest>>>()?)
        };
        let (now, issues) = (self.plans_mark(), self.subject.book.record.issues.values());
        issues.filter_map(as_in).filter(|mark| Some(mark) != now.as_ref()).collect()
    }

    /// The revisions of all plans, the newest first, each with its room where there are several.
    pub fn plans_revisions(&self) -> Vec<Revision> {
        let plans = self.plans_now();
        let of = |(room, _): &(&Room, &IssuedSheet)| {
            let revisions = self.sheet_revisions((&room.folder, "", SheetOf::PLAN)).into_iter();
            let named = |one: Revision| match plans.len() {
                1 => one,
                _ => Revision { what: format!("{}: {}", room.title(), one.what), ..one },
            };
            revisions.map(named).collect::<Vec<_>>()
        };
        let mut all: Vec<Revision> = plans.iter().flat_map(of).collect();
        all.sort_by_key(|one| std::cmp::Reverse(one.number.parse::<u32>().unwrap_or(0)));
        all.truncate(MOST);
        all
    }

    /// What of a sheet is another one, in a few words; none where it is the same.
    fn sheet_change(&self, was: Option<&IssuedSheet>, is: &IssuedSheet) -> Option<String> {
        let Some(was) = was else { return Some(say!(self.words, "revised.new")) };
        if shown::is_built_as(was, is) {
            return None;
        }
        let mut named: Vec<String> = Vec::new();
        for key in shown::built_fields(&was.content, &is.content) {
            let name = field(self.words, &key).to_lowercase();
            if !named.contains(&name) {
                named.push(name);
            }
        }
        Some(say!(self.words, "revised.changed", what = self.words.series_of_most(&named, NAMED + 1)))
    }
}

/// The mark of several plans together, in short; of one its own.
fn mark_of_plans(marks: &[Digest]) -> Option<String> {
    match marks {
        [] => None,
        [one] => Some(shown::in_short(one)),
        several => Some(shown::in_short(&shown::of_all(several.iter()))),
    }
}
