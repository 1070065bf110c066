//! What the change order says on paper: what is shown otherwise than before, and who signs for it.
//!
//! Every string is worded and formatted for the reader, as on a sign-off sheet.

use serde::Serialize;

use super::sign_off::{Approver, Line, Paper, Part, Project, Sheet};

/// A change order from one issue to a later one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChangeOrder {
    /// The language of the words, as a two-letter tag (`en`, `es`).
    pub language: String,
    /// The paper it is printed on.
    pub paper: Paper,
    /// Whether one side was never issued: nobody is to sign it then.
    pub draft: bool,
    /// Who and what the project is.
    pub project: Project,
    /// Which sheet this is; its mark is that of the whole book as the later issue shows it.
    pub sheet: Sheet,
    /// The issues in words: `1 to 2`.
    pub issue: String,
    /// The number that stands in a revision's delta; empty for a book as it stands.
    pub delta: String,
    /// The date of the later one in words.
    pub date: String,
    /// What a signature means, in a sentence or two.
    pub statement: String,
    /// The sheet in short: from, to, how many items, who signs.
    pub facts: Vec<Line>,
    /// The rooms with something to tell, in the order of the later issue.
    pub rooms: Vec<Room>,
    /// The sums before and after, the last one being what is signed for.
    pub totals: Vec<Change>,
    /// Those who sign, in the order of the book; nobody where nothing is shown otherwise.
    pub approvers: Vec<Approver>,
    /// How many must sign, in words.
    pub rule: String,
    /// Which part of the change order this is, where it has so many items that it is set in parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<Part>,
}

impl ChangeOrder {
    /// How many items stand on it.
    pub fn count(&self) -> usize {
        self.rooms.iter().map(|room| room.items.len()).sum()
    }
}

/// A room, and what changed in it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Room {
    /// The room's name.
    pub name: String,
    /// The items that are not the same.
    pub items: Vec<Item>,
}

/// An item that is not the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Item {
    /// The item's number on every sheet: `K-07`.
    pub tag: String,
    /// What it is: `Refrigerator`.
    pub name: String,
    /// What became of it: `changed`, `new`, `gone`.
    pub fate: String,
    /// What, from what, to what, and by how much.
    pub changes: Vec<Change>,
    /// What may hurt, and to whom to turn; nothing of what is gone.
    pub cautions: Vec<String>,
}

/// One thing that is no longer as it was. An empty side was not there, or is not there any more.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Change {
    /// What it is.
    pub what: String,
    /// What it was.
    pub from: String,
    /// What it is now.
    pub to: String,
    /// The difference in words: `$20.00 more`, `7 days sooner`.
    pub by: String,
}
