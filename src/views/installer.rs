//! The installer's first page: every opening, room by room, verdict first.

use super::drawing::Drawing;
use super::html::Html;
use super::sheet::{Fact, Link, Notice, Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `index.html` of the installer's folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct InstallerIndex {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    pub rooms: Vec<OpeningGroup>,
    pub notices: Vec<Notice>,
}

/// A room's openings.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OpeningGroup {
    pub room: String,
    /// Ceiling, floor still to be laid, who measured.
    pub line: Option<Html>,
    pub openings: Vec<OpeningLine>,
    /// The room's plan, with the openings by their numbers.
    pub drawings: Vec<Drawing>,
    /// What was found of the room as a whole.
    pub found: Vec<Html>,
}

/// An opening in the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpeningLine {
    pub link: Link,
    pub verdict: State,
    /// The thing that goes in.
    pub thing: String,
    /// The governing size of the opening.
    pub size: Html,
    /// The tightest gap, or what is missing, in a phrase.
    pub gap: Option<Html>,
}

on_sheet!(InstallerIndex);
