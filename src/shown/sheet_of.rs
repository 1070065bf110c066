//! Which sheet it is that is built from: an opening's, a trade's in a room, or the plan of a room.

use crate::ledger::IssuedSheet;

use super::trades::Builders;

/// Of what a sheet is, in its room.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SheetOf {
    /// An opening, by its name.
    Opening(String),
    /// What a trade builds.
    Trade(Builders),
    /// The room itself, seen from above.
    Plan,
}

impl SheetOf {
    /// The word that stands in the place of a trade's for the plan of a room.
    pub const PLAN: &str = "plan";

    /// Of what an issued sheet is. A trade that this release does not know was told when the record was read.
    pub fn of(sheet: &IssuedSheet) -> Self {
        match sheet.trade.as_deref() {
            Some(Self::PLAN) => Self::Plan,
            Some(word) => Builders::called(word).map_or_else(|| Self::Opening(word.into()), Self::Trade),
            None => Self::Opening(sheet.opening.clone()),
        }
    }

    /// The names of its opening and of its trade, as an issue holds them.
    pub(super) fn names(self) -> (String, Option<String>) {
        match self {
            Self::Opening(name) => (name, None),
            Self::Trade(trade) => (String::new(), Some(trade.word().into())),
            Self::Plan => (String::new(), Some(Self::PLAN.into())),
        }
    }

    /// The word of what is no opening: of a trade, or of a plan.
    pub fn word(&self) -> Option<&'static str> {
        match self {
            Self::Opening(_) => None,
            Self::Trade(trade) => Some(trade.word()),
            Self::Plan => Some(Self::PLAN),
        }
    }

    /// What it is called in its room, in the words of the record.
    pub fn name(&self) -> &str {
        if let Self::Opening(name) = self { name } else { self.word().unwrap_or_default() }
    }
}
