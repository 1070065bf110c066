//! What is built although it was not approved, by the newest issue for construction, for `status`.

use serde::Serialize;

use crate::ledger::{ItemName, Purpose};
use crate::pipeline::Review;
use crate::units::series;

use super::shown::add_line;

/// What an issue took unapproved.
#[derive(Serialize)]
pub struct TakenReport {
    issue: u32,
    because: String,
    /// What is not approved yet, by number and name.
    things: Vec<String>,
    /// What is approved since: the sheets of that issue still say that it is not.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    approved_since: Vec<String>,
}

/// What the newest issue for construction took; nothing where it took nothing.
pub fn of(review: &Review) -> Option<TakenReport> {
    let issue = review.book.record.latest_for(Purpose::Construction)?;
    let taken = issue.unapproved.as_ref()?;
    let named = |one: &ItemName| {
        let item = issue.item(&one.room, &one.item);
        item.map_or_else(|| one.item.clone(), |item| format!("{} {}", item.tag, item.name))
    };
    let is_approved = |one: &&ItemName| {
        let room = review.book.room(&one.room);
        let thing = room.and_then(|room| Some((room, room.selections.iter().find(|it| it.id == one.item)?)));
        thing.is_some_and(|(room, selection)| review.assessment.approvals.is_orderable(room, selection))
    };
    let (since, open): (Vec<&ItemName>, Vec<&ItemName>) = taken.items.iter().partition(is_approved);
    Some(TakenReport {
        issue: issue.number,
        because: taken.because.clone(),
        things: open.into_iter().map(named).collect(),
        approved_since: since.into_iter().map(named).collect(),
    })
}

impl TakenReport {
    /// As text.
    pub fn text(&self) -> String {
        let Self { issue, because, things, approved_since } = self;
        let mut text = String::from("\n");
        if !things.is_empty() {
            let things = series(things);
            add_line!(text, "not approved, and built all the same by issue {issue} ({because}): {things}");
        }
        if !approved_since.is_empty() {
            let things = series(approved_since);
            add_line!(text, "approved since, and not so on the sheets of issue {issue}: {things}; issue it again");
        }
        text
    }
}
