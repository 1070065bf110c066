//! Why nothing may be ordered on what was approved: the terms changed, or the issue bears a wrong day.

use std::collections::BTreeMap;

use crate::book::{Approval, Book, Prices};
use crate::finding::{Phrase, phrase};
use crate::ledger::{Fact, Issue, Issued, Line, Terms, WhoMust};
use crate::units::{Date, Wrote};

/// Why approvals of the newest issue are held.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HoldReason {
    /// The terms are not what they were when the issue was made: the issue, and each change in words.
    Terms(u32, Vec<TermsChange>),
    /// The issue bears an earlier day than the one on which it was made.
    MadeLater {
        /// The issue.
        issue: u32,
        /// The day that it bears.
        on: Date,
        /// The day by the clock.
        made: Date,
    },
    /// The issue bears an earlier day than one that was made before it.
    BeforeAnother {
        /// The issue.
        issue: u32,
        /// The day that it bears.
        on: Date,
        /// The issue before, and its day.
        other: (u32, Date),
    },
}

/// A change of the terms of an issue, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TermsChange {
    /// Of who must approve.
    Who(Phrase),
    /// Of what the prices are that they approve.
    Prices(Phrase),
}

impl TermsChange {
    /// In words.
    pub fn words(&self) -> &Phrase {
        match self {
            Self::Who(words) | Self::Prices(words) => words,
        }
    }
}

/// An issue that bears a later day than the one on which it was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ahead {
    /// The issue.
    pub issue: u32,
    /// The day that it bears.
    pub on: Date,
    /// The day by the clock.
    pub made: Date,
}

/// Whether an issue bears a later day than its own: what was approved in it holds, and its papers say a day on
/// which they were not made.
pub fn ahead(book: &Book, number: u32) -> Option<Ahead> {
    let (issued, made) = book.record.lines.iter().filter_map(issued).find(|(issued, _)| issued.number == number)?;
    let (on, made) = (issued.on, made?);
    (made.days_until(on) > 1).then_some(Ahead { issue: number, on, made })
}

/// Everything that holds the approvals of an issue.
pub fn of(book: &Book, issue: &Issue) -> Vec<HoldReason> {
    let changes = terms(book, issue);
    let changed = (!changes.is_empty()).then_some(HoldReason::Terms(issue.number, changes));
    changed.into_iter().chain(days(book, issue.number)).collect()
}

fn issued(line: &Line) -> Option<(&Issued, Option<Date>)> {
    if let Fact::Issued(issued) = &line.fact { Some((issued, line.at.day())) } else { None }
}

/// What is wrong with the day of an issue. A day more or less is the time zone's.
fn days(book: &Book, number: u32) -> Vec<HoldReason> {
    let mut found = Vec::new();
    let mut latest: Option<(u32, Date)> = None;
    for (issued, made) in book.record.lines.iter().filter_map(issued) {
        let (issue, on) = (issued.number, issued.on);
        if issue == number {
            let later = made.filter(|made| on.days_until(*made) > 1);
            found.extend(later.map(|made| HoldReason::MadeLater { issue, on, made }));
            let after = latest.filter(|(_, other)| on < *other);
            found.extend(after.map(|other| HoldReason::BeforeAnother { issue, on, other }));
        }
        if latest.is_none_or(|(_, day)| day < on) {
            latest = Some((issue, on));
        }
    }
    found
}

/// What changed of who must approve since an issue, in words; an older issue does not say who that was.
fn terms(book: &Book, issue: &Issue) -> Vec<TermsChange> {
    let approvers = &book.project.approvers;
    let now: BTreeMap<&str, &str> = approvers.iter().map(|one| (one.id.value.as_str(), one.name.as_str())).collect();
    let Some(terms) = &issue.terms else { return gone(book, &now).into_iter().map(TermsChange::Who).collect() };
    let then: BTreeMap<&str, &str> = terms.approvers.iter().map(|one| (one.id.as_str(), one.name.as_str())).collect();
    let (mut prices, mut told) = (None, Vec::new());
    let tax_in = book.project.prices == Prices::WithTax;
    if terms.tax_in_prices != tax_in {
        let then = if terms.tax_in_prices { Prices::WithTax } else { Prices::BeforeTax };
        prices = Some(phrase!("`prices` from `{}` to `{}`", then, book.project.prices));
    }
    let must = must(book);
    if must != terms.approval && now.len().max(then.len()) > 1 {
        told.push(phrase!("`approval` from `{}` to `{}`", word(terms.approval), word(must)));
    }
    for (id, name) in &then {
        match now.get(id) {
            None => told.push(phrase!("{name} no longer decides", Wrote(name))),
            Some(other) if other != name => {
                told.push(phrase!("`{id}` from {name} to {other}", id, Wrote(name), Wrote(other)))
            }
            Some(_) => {}
        }
    }
    told.extend(
        now.iter()
            .filter(|(id, _)| !then.contains_key(*id))
            .map(|(_, name)| phrase!("{name} decides too", Wrote(name))),
    );
    prices.into_iter().map(TermsChange::Prices).chain(told.into_iter().map(TermsChange::Who)).collect()
}

/// Those who decided and are no longer named.
fn gone(book: &Book, now: &BTreeMap<&str, &str>) -> Vec<Phrase> {
    let decided = book.record.facts().filter_map(|fact| match fact {
        Fact::Decided(decided) if decided.key.is_some() => Some(decided.who.as_str()),
        _ => None,
    });
    let gone: std::collections::BTreeSet<&str> = decided.filter(|who| !now.contains_key(who)).collect();
    gone.into_iter().map(|who| phrase!("`{who}` signed, and no longer decides", who)).collect()
}

fn must(book: &Book) -> WhoMust {
    match book.project.approval {
        Approval::All => WhoMust::All,
        Approval::Any => WhoMust::Any,
    }
}

const fn word(must: WhoMust) -> &'static str {
    match must {
        WhoMust::All => "all",
        WhoMust::Any => "any",
    }
}

/// Who decides by the book as it is now.
pub fn terms_of(book: &Book) -> Terms {
    let named = |one: &crate::book::Approver| crate::ledger::Named { id: one.id.value.clone(), name: one.name.clone() };
    Terms {
        approval: must(book),
        approvers: book.project.approvers.iter().map(named).collect(),
        tax_in_prices: book.project.prices == Prices::WithTax,
    }
}
