//! What the layout of a counter is drawn from.

use crate::language::Words;
use crate::units::{Length, System};

/// A counter of one run or island from above, its back up; or pieces of which nobody says where they lie.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CounterLayout {
    /// A name that no other drawing of the page has.
    pub id: String,
    /// What it is of.
    pub name: String,
    /// Whether a wall stands behind it.
    pub has_wall: bool,
    /// Whether its pieces lie anywhere: only their sizes are told.
    pub is_loose: bool,
    /// What is cut in one, from left to right.
    pub pieces: Vec<LayoutPiece>,
    /// What is let into it, or stands between its pieces.
    pub let_in: Vec<LetIn>,
    /// Where pieces meet.
    pub seams: Vec<Length>,
    /// The book's units.
    pub units: System,
    /// The language.
    pub words: Words,
}

/// A piece; lengths are from the left end of the wall or island, and from its back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayoutPiece {
    /// Its name in the book, where it is known which one it is.
    pub name: Option<String>,
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// From its back to its front edge.
    pub depth: Length,
}

/// Something that is let into a counter, or parts it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LetIn {
    /// What it is called.
    pub name: String,
    /// Its left side.
    pub from: Length,
    /// Its right side.
    pub to: Length,
    /// Its back, from that of the counter.
    pub back: Length,
    /// Its front, likewise.
    pub front: Length,
    /// Whether it stands between pieces rather than in one.
    pub parts_it: bool,
}

impl LetIn {
    /// Its middle, along the counter.
    pub fn middle(&self) -> Length {
        (self.from + self.to).half()
    }
}

impl CounterLayout {
    /// Its left and its right end.
    pub fn ends(&self) -> (Length, Length) {
        let left = self.pieces.iter().map(|piece| piece.from).min().unwrap_or(Length::ZERO);
        let right = self.pieces.iter().map(|piece| piece.to).max().unwrap_or(Length::ZERO);
        (left, right)
    }

    /// The deepest of its pieces.
    pub fn depth(&self) -> Length {
        self.pieces.iter().map(|piece| piece.depth).max().unwrap_or(Length::ZERO)
    }
}
