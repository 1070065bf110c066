//! The sheet at an opening: verdict, drawing, sizes with the gap each side, services, way in.

use super::data::Data;
use super::drawing::Drawing;
use super::html::Html;
use super::sheet::{Fact, Notice, Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `openings/<room>-<opening>.html`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpeningPage {
    pub sheet: Sheet,
    /// Installer's sheet, room and item number, above the title.
    pub label: String,
    pub verdict: State,
    /// The rest of the verdict: gaps, what governs, how it gets in.
    pub sentence: Html,
    pub facts: Vec<Fact>,
    pub drawings: Vec<Drawing>,
    pub sizes: Vec<SizeRow>,
    /// Whose sheet and whose measurement the table stands on.
    pub sizes_from: Option<Html>,
    pub services: Vec<Fact>,
    pub services_from: Option<Html>,
    pub door: Vec<Fact>,
    /// Carton and weight.
    pub carton: Vec<Fact>,
    pub way_in: Vec<WayRow>,
    pub cautions: Vec<Notice>,
    /// What to write down, a line each.
    pub tape: Vec<TapeLine>,
    /// What is asked of the readings, for the page's scripts.
    pub asks: Data,
    /// What is needed at least, under the lines.
    pub tape_needs: Option<Html>,
}

/// One reading of the tape.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TapeLine {
    /// `Width at the floor`.
    pub name: String,
    /// `width`, `height` or `depth`.
    pub what: String,
    /// `floor`, `middle`, `top`, `left`, `right`; absent where one reading is enough.
    pub at: Option<String>,
}

/// One size: what is needed, what was measured, what is left over.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SizeRow {
    pub name: String,
    /// From what it is taken: `least of three`.
    pub note: Option<Html>,
    pub needs: SizeCell,
    pub measured: SizeCell,
    pub left: SizeCell,
    /// The gap on each side: `5/32 left, 5/32 right`.
    pub each_side: SizeCell,
    pub verdict: State,
}

/// A figure and its second line: the other unit, and where it was read.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SizeCell {
    pub figure: Html,
    pub note: Option<Html>,
}

/// A narrow point between the truck and the room.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayRow {
    pub name: String,
    pub clear: Html,
    pub carton: State,
    /// Out of its carton, doors off; absent when that is not known.
    pub bare: Option<State>,
}

on_sheet!(OpeningPage);
