//! How far the approval of each item has come, for `status`.

use std::collections::BTreeMap;
use std::fmt::Write;

use serde::Serialize;

use crate::pipeline::Review;
use crate::units::series;

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
    approved_by: &'a [String],
}

#[derive(Serialize)]
struct ItemReport<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    standing: &'static str,
    #[serde(skip_serializing_if = "<[_]>::is_empty")]
    waits_for: &'a [String],
    orderable: bool,
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
            waits_for: &item.waits_for,
            orderable: approvals.is_orderable(room, selection),
        })
    });
    let withdrawn = approvals.withdrawn.iter().map(|gone| Gone {
        room: review.book.room(&gone.room).map_or(gone.room.as_str(), |room| room.title()),
        item: &gone.name,
        tag: &gone.tag,
        approved_by: &gone.approved_by,
    });
    Some(Approvals { issue, on: on.iso(), items: items.collect(), withdrawn: withdrawn.collect() })
}

impl Approvals<'_> {
    /// As text: how many stand where, and those that somebody must do something about.
    pub fn text(&self) -> String {
        let mut text = format!("\napproval of issue {}, {}\n", self.issue, self.on);
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        for item in &self.items {
            *counts.entry(item.standing).or_default() += 1;
        }
        for (standing, count) in counts {
            let _ = writeln!(text, "  {count:>4} {standing}");
        }
        let told = |item: &&ItemReport<'_>| !matches!(item.standing, "approved" | "waiting");
        for item in self.items.iter().filter(told) {
            let _ = writeln!(text, "      {} {} ({}): {}", item.tag, item.item, item.room, item.standing);
        }
        for gone in &self.withdrawn {
            let had = match gone.approved_by {
                [] => String::new(),
                names => format!("; {} had approved it", series(names)),
            };
            let _ = writeln!(text, "      {} {} ({}): withdrawn{had}", gone.tag, gone.item, gone.room);
        }
        text
    }
}
