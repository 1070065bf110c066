//! A selection for the client: its options side by side, what was found, and who has to sign.

use super::cover::Stamp;
use super::data::Data;
use super::html::Html;
use super::photo::Photo;
use super::sheet::{Fact, Link, Notice, Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `items/<room>-<item>.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ItemPage {
    pub sheet: Sheet,
    /// Room and number, above the title.
    pub label: String,
    pub lead: Option<Html>,
    pub state: Option<State>,
    pub facts: Vec<Fact>,
    /// What changed since the last issue, from what to what.
    pub changes: Vec<Change>,
    /// One option: it is shown; two or more: the client chooses.
    pub options: Vec<OptionCard>,
    pub why: Option<Html>,
    pub cautions: Vec<Notice>,
    pub signers: Vec<Signer>,
    /// Where to sign: the room's sign-off sheet.
    pub paper: Option<Link>,
    /// What is asked of it, for the page's scripts; absent while no issue was made.
    pub asked: Option<Data>,
}

/// Something that is not as it was in an earlier issue.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Change {
    /// The issue that changed it.
    pub issue: String,
    pub what: String,
    pub was: Html,
    pub now: Html,
    pub because: Option<Html>,
}

/// One thing that could be chosen.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OptionCard {
    /// By which the page's scripts know it.
    pub id: String,
    /// A, B, C; absent when there is only one.
    pub letter: Option<String>,
    pub name: String,
    /// What kind of thing it is, in a line.
    pub line: Option<String>,
    /// It is the one chosen.
    pub chosen: bool,
    pub photo: Option<Photo>,
    pub price: Option<Html>,
    /// Against the allowance: `$2,240.00 over the allowance of $3,400.00`.
    pub against: Option<Html>,
    /// Finish, sizes, lead time, order by. Every option of a page has the same names in the same
    /// order, so that they stand row for row; an absent value is a dash.
    pub rows: Vec<Fact>,
    pub fit: Option<Fit>,
}

/// What the fit check found of one option.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fit {
    /// `Fits`, `Does not fit`, and so on.
    pub verdict: State,
    /// The gaps and what sticks out, in a sentence.
    pub sentence: Html,
    /// A small plan or front, if there is one.
    pub drawing: Option<Html>,
}

/// Someone who has to agree.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Signer {
    pub name: String,
    pub state: State,
    pub stamp: Option<Stamp>,
    /// What they wrote, or by when they are asked.
    pub says: Option<Html>,
}

on_sheet!(ItemPage);
