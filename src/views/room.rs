//! A room for the client: its board, its drawings, why it is so, and its selections.

use super::board::Board;
use super::drawing::Drawing;
use super::html::Html;
use super::photo::Photo;
use super::sheet::{Fact, Link, Notice, Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `rooms/<room>.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RoomPage {
    pub sheet: Sheet,
    /// Where in the house it is.
    pub place: Option<String>,
    pub lead: Option<Html>,
    pub facts: Vec<Fact>,
    pub board: Option<Board>,
    pub drawings: Vec<Drawing>,
    pub why: Option<Why>,
    pub photos: Vec<Photo>,
    pub items: Vec<ItemLine>,
    pub notices: Vec<Notice>,
    /// This room's sign-off sheet.
    pub paper: Option<Link>,
}

/// The designer's notes, as HTML made from Markdown.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Why {
    pub notes: Html,
    /// Who wrote it, and when.
    pub by: Option<String>,
}

/// A selection in a list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ItemLine {
    pub link: Link,
    pub photo: Option<Photo>,
    /// What it is, in a line.
    pub line: Html,
    pub state: State,
}

on_sheet!(RoomPage);
