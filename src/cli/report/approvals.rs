//! How far the approval of each item has come, for `status`.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::assess::approval::{ApprovalState, ApproverDecision};
use crate::pipeline::Review;
use crate::units::series;

use super::shown::add_line;

/// What stands of an issue.
#[derive(Serialize)]
pub struct Approvals<'a> {
    issue: u32,
    on: String,
    items: Vec<ItemReport<'a>>,
    /// What was issued, and is in the book no longer.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    withdrawn: Vec<Gone<'a>>,
}

#[derive(Serialize)]
struct Gone<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    /// The last issue that it stands in.
    issue: u32,
    approved_by: &'a [String],
    /// What it came to, plain.
    #[serde(skip_serializing_if = "Option::is_none")]
    price: Option<String>,
    /// Who approved it, and has not agreed that it is withdrawn.
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    waits_for: &'a [String],
    #[serde(skip)]
    sum: Option<String>,
}

#[derive(Serialize)]
struct ItemReport<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    standing: &'static str,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    waits_for: &'a [String],
    /// What each who answered said, as it counts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    said: Vec<Said<'a>>,
    orderable: bool,
    #[serde(skip)]
    is_approved: bool,
    /// Somebody must do something about it, besides those who are still to answer.
    #[serde(skip)]
    wants_somebody: bool,
}

/// What somebody decided of an item.
#[derive(Serialize)]
struct Said<'a> {
    by: &'a str,
    decision: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    option: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<&'a str>,
    /// What else they said, where nobody knows which of it was the last.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    also: Vec<&'static str>,
    /// Whether it is of the item as it is now.
    holds: bool,
    /// Whether it was given while others had to approve, who had not all done so.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    on_other_terms: bool,
}

impl<'a> Said<'a> {
    fn of(word: &'a ApproverDecision) -> Self {
        let (decision, option, note) = (word.decision.words(), word.option.as_deref(), word.note.as_deref());
        let also = word.rivals.iter().map(|(decision, _)| decision.words()).collect();
        Self { by: &word.name, decision, option, note, also, holds: word.holds, on_other_terms: word.on_other_terms }
    }

    /// In a line: who, what, which option, and the words.
    fn line(&self) -> String {
        let option = self.option.map_or(String::new(), |option| format!(", option `{option}`"));
        let note = self.note.map_or(String::new(), |note| format!(": \u{201c}{}\u{201d}", one_line(note)));
        let before = match (self.holds, self.on_other_terms) {
            (false, _) => ", of what it was before",
            (true, true) => ", before who must approve changed: to be asked again",
            (true, false) => "",
        };
        let also = match self.also.as_slice() {
            [] => String::new(),
            others => format!(" and {}, and which was last is not known", others.join(" and ")),
        };
        format!("{}, {}{option}{also}{before}{note}", self.by, self.decision)
    }
}

/// A note of several lines in one.
fn one_line(note: &str) -> String {
    note.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What stands; nothing while nothing was issued.
pub fn of(review: &Review) -> Option<Approvals<'_>> {
    let approvals = &review.assessment.approvals;
    let (issue, on) = approvals.issue?;
    let items = review.book.selections().filter_map(|(room, selection)| {
        let item = approvals.item(room, selection)?;
        Some(ItemReport {
            room: room.title(),
            item: &selection.name.value,
            tag: &selection.tag,
            standing: item.standing.word(),
            waits_for: item.still_to_answer(),
            said: item.words.iter().map(Said::of).collect(),
            is_approved: item.standing == ApprovalState::Approved,
            wants_somebody: !matches!(item.standing, ApprovalState::Approved | ApprovalState::Waiting),
            orderable: approvals.is_orderable(room, selection),
        })
    });
    let withdrawn = approvals.withdrawn.iter().map(|gone| Gone {
        room: review.book.room(&gone.room).map_or(gone.room.as_str(), |room| room.title()),
        item: &gone.name,
        tag: &gone.tag,
        issue: gone.issue,
        approved_by: &gone.approved_by,
        price: gone.price.map(|price| price.plain()),
        waits_for: &gone.waits_for,
        sum: gone.price.map(|price| price.to_string()),
    });
    Some(Approvals { issue, on: on.iso(), items: items.collect(), withdrawn: withdrawn.collect() })
}

impl Approvals<'_> {
    /// How many items are approved as they are now.
    pub fn approved(&self) -> usize {
        self.items.iter().filter(|item| item.is_approved).count()
    }

    /// Who is still to answer, and on what.
    fn waiting(&self) -> String {
        let mut waits: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for item in &self.items {
            for who in item.waits_for {
                waits.entry(who).or_default().push(item.tag);
            }
        }
        let line = |(who, tags): (&str, Vec<&str>)| format!("  {who} is still to answer on {}\n", tags.join(", "));
        waits.into_iter().map(line).collect()
    }

    /// As text: how many stand where, and those that somebody must do something about.
    pub fn text(&self) -> String {
        let mut text = format!("\napproval of issue {}, {}\n", self.issue, self.on);
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for item in &self.items {
            *counts.entry(item.standing).or_default() += 1;
        }
        for (standing, count) in counts {
            add_line!(text, "  {count:>4} {standing}");
        }
        // What somebody wrote is told whatever stands: an approval may hold a wish.
        let told = |item: &&ItemReport<'_>| {
            item.wants_somebody || item.said.iter().any(|said| said.note.is_some() || said.on_other_terms)
        };
        for item in self.items.iter().filter(told) {
            add_line!(text, "      {} {} ({}): {}", item.tag, item.item, item.room, item.standing);
            for said in &item.said {
                add_line!(text, "          {}", said.line());
            }
        }
        text += &self.waiting();
        for gone in &self.withdrawn {
            let had = match gone.approved_by {
                [] => String::new(),
                names => format!("; {} had approved it", series(names)),
            };
            let agree = match gone.waits_for {
                [] => String::new(),
                names => format!("; still to agree: {}", series(names)),
            };
            let sum = gone.sum.as_ref().map_or_else(String::new, |sum| format!("; it came to {sum}"));
            let Gone { tag, item, room, issue, .. } = gone;
            add_line!(
                text,
                "      {tag} {item} ({room}): withdrawn after issue {issue}, its number is not used again{sum}{had}{agree}"
            );
        }
        text
    }
}
