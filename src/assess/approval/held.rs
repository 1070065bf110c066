//! Why nothing may be ordered on what was approved: the terms changed, or the issue bears a wrong day.

use std::collections::BTreeMap;

use crate::book::{Approval, Book, Prices};
use crate::finding::{Phrase, phrase};
use crate::ledger::{Fact, Issue, Issued, Line, Terms, WhoMust};
use crate::units::{Date, Wrote, is_same_name};

/// Why approvals of the newest issue are held.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HoldReason {
    /// The terms are not what they were when the issue was made: the issue, and each change.
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

/// A change of the terms of an issue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TermsChange {
    /// What the prices are that are approved: what they were, and are.
    Prices(Prices, Prices),
    /// How many of those who decide must approve: what was, and is.
    Rule(WhoMust, WhoMust),
    /// Somebody no longer decides, by name.
    NoLonger(String),
    /// Somebody else decides under an id: the id, who did, and who does.
    Another(String, String, String),
    /// Somebody decides too, by name.
    Too(String),
    /// Somebody signed under an id, of whom older issues tell no name, and no longer decides.
    Signed(String),
}

impl TermsChange {
    /// In words.
    pub fn words(&self) -> Phrase {
        match self {
            Self::Prices(then, now) => phrase!("`prices` from `{}` to `{}`", *then, *now),
            Self::Rule(then, now) => phrase!("`approval` from `{}` to `{}`", word(*then), word(*now)),
            Self::NoLonger(name) => phrase!("{name} no longer decides", Wrote(name)),
            Self::Another(id, then, now) => phrase!("`{id}` from {name} to {other}", id, Wrote(then), Wrote(now)),
            Self::Too(name) => phrase!("{name} decides too", Wrote(name)),
            Self::Signed(who) => phrase!("`{who}` signed, and no longer decides", who),
        }
    }

    /// Whether it is of who must approve, and not of what.
    pub fn is_of_who(&self) -> bool {
        !matches!(self, Self::Prices(..))
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
    // What can't be read has not been changed.
    let changes = if book.project_unread { vec![] } else { terms(book, issue) };
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

/// What changed of who must approve since an issue; an older issue does not say who that was.
fn terms(book: &Book, issue: &Issue) -> Vec<TermsChange> {
    match &issue.terms {
        Some(then) => between(then, &terms_of(book)),
        None => gone(book),
    }
}

/// What changed of who must approve, and of what the prices are, from some terms to later ones.
pub fn between(then: &Terms, now: &Terms) -> Vec<TermsChange> {
    let prices = |terms: &Terms| if terms.tax_in_prices { Prices::WithTax } else { Prices::BeforeTax };
    let mut told = Vec::new();
    if then.tax_in_prices != now.tax_in_prices {
        told.push(TermsChange::Prices(prices(then), prices(now)));
    }
    if then.approval != now.approval && now.approvers.len().max(then.approvers.len()) > 1 {
        told.push(TermsChange::Rule(then.approval, now.approval));
    }
    let of = |terms: &'_ Terms| -> BTreeMap<String, String> {
        terms.approvers.iter().map(|one| (one.id.clone(), one.name.clone())).collect()
    };
    let (was, is) = (of(then), of(now));
    for (id, name) in &was {
        match is.get(id) {
            None => told.push(TermsChange::NoLonger(name.clone())),
            Some(other) if !is_same_name(other, name) => {
                told.push(TermsChange::Another(id.clone(), name.clone(), other.clone()));
            }
            Some(_) => {}
        }
    }
    told.extend(is.iter().filter(|(id, _)| !was.contains_key(*id)).map(|(_, name)| TermsChange::Too(name.clone())));
    told
}

/// Whether the same people must approve, and as many of them.
pub fn is_same_who(one: &Terms, other: &Terms) -> bool {
    !between(one, other).iter().any(TermsChange::is_of_who)
}

/// Those who decided and are no longer named.
fn gone(book: &Book) -> Vec<TermsChange> {
    let now: std::collections::BTreeSet<&str> =
        book.project.approvers.iter().map(|one| one.id.value.as_str()).collect();
    let decided = book.record.facts().filter_map(|fact| match fact {
        Fact::Decided(decided) if decided.key.is_some() => Some(decided.who.as_str()),
        _ => None,
    });
    let gone: std::collections::BTreeSet<&str> = decided.filter(|who| !now.contains(who)).collect();
    gone.into_iter().map(|who| TermsChange::Signed(who.to_owned())).collect()
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
