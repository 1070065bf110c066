//! A table for the office: any schedule, the orders, the money.

use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::Html;
use crate::views::shared::photo::Photo;
use crate::views::shared::sheet::{Fact, Notice, Sheet, on_sheet};
use crate::views::shared::state::State;
use serde::Serialize;

/// A schedule on a page of its own.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SchedulePage {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    /// Orders as bars over the months, and the like.
    pub drawings: Vec<Drawing>,
    pub tables: Vec<Table>,
    pub notices: Vec<Notice>,
}

/// A table with a name.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Table {
    pub name: String,
    /// How it is sorted, what the figures include.
    pub scope: Option<String>,
    /// The first names the row; it heads each row on a phone.
    pub columns: Vec<Column>,
    pub rows: Vec<Vec<Cell>>,
    /// As many cells as columns; empty when nothing is summed.
    pub totals: Vec<Cell>,
}

/// A column's heading.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Column {
    pub name: String,
    /// Figures stand at the right, digit under digit.
    pub figures: bool,
}

/// One cell.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Cell {
    pub text: Html,
    /// Relative to the folder's root.
    pub href: Option<String>,
    pub note: Option<Html>,
    /// Small, each leading to the large one.
    pub photos: Vec<SmallPhoto>,
    pub state: Option<State>,
    pub bar: Option<Bar>,
}

/// A photograph in a cell.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SmallPhoto {
    pub picture: Photo,
    /// The path of the large one.
    pub large: String,
}

/// A price drawn against its allowance; whole pixels, of 200 for the widest.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Bar {
    /// What lies within the allowance.
    pub within: u32,
    /// What is over it.
    pub over: u32,
    pub allowance: u32,
}

impl From<Html> for Cell {
    fn from(text: Html) -> Cell {
        Cell { text, ..Cell::default() }
    }
}

impl From<&str> for Cell {
    fn from(text: &str) -> Cell {
        Html::text(text).into()
    }
}

on_sheet!(SchedulePage);
