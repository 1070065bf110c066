//! What an issue for construction takes although it is not approved, and what of it is approved since.

use crate::ledger::{Issue, ItemName, Purpose};

/// What is built although not all have approved it who must.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// Why, where anything is.
    pub because: Option<String>,
    /// What, by number and name.
    pub things: Vec<String>,
    /// What the issue before took, and this one need not.
    pub approved_since: Vec<String>,
}

impl Taken {
    /// Of the later of two issues.
    pub fn between(from: &Issue, to: &Issue) -> Self {
        let named = |one: &ItemName| {
            let item = to.item(&one.room, &one.item).or_else(|| from.item(&one.room, &one.item));
            item.map_or_else(|| one.item.clone(), |item| format!("{} {}", item.tag, item.name))
        };
        let items = |issue: &Issue| issue.unapproved.as_ref().map_or_else(Vec::new, |taken| taken.items.clone());
        let (before, now) = (items(from), items(to));
        // Only an issue for construction asks what is approved.
        let asks = to.purpose == Purpose::Construction;
        let since = before.iter().filter(|one| asks && !now.contains(one));
        Self {
            because: to.unapproved.as_ref().map(|taken| taken.because.clone()),
            things: now.iter().map(named).collect(),
            approved_since: since.map(named).collect(),
        }
    }

    /// Of one issue alone.
    pub fn of(issue: &Issue) -> Self {
        Self { approved_since: vec![], ..Self::between(issue, issue) }
    }

    /// Whether nothing of it is to be told.
    pub fn is_nothing(&self) -> bool {
        self.because.is_none() && self.approved_since.is_empty()
    }
}
