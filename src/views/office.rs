//! The office's first page: what stands in the way, and the sheets.

use super::html::Html;
use super::schedule::Table;
use super::sheet::{Fact, Link, Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `index.html` of the office's folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OfficeIndex {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    /// Findings counted: `2 stops`, `5 queries`, `9 notes`.
    pub counts: Vec<State>,
    pub hold_points: Vec<HoldPoint>,
    pub sheets: Vec<Link>,
    pub papers: Vec<Link>,
    /// Orders that are next, and the like.
    pub tables: Vec<Table>,
}

/// A moment after which a mistake is dear, and what still stands in its way.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct HoldPoint {
    pub name: String,
    /// Day of the month, in figures.
    pub day: String,
    /// `Mar 2027`.
    pub month: String,
    pub in_the_way: Vec<Obstacle>,
}

/// Something that must be settled before a hold point.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Obstacle {
    pub state: State,
    pub what: Html,
    /// Relative to the folder's root.
    pub href: Option<String>,
}

on_sheet!(OfficeIndex);
