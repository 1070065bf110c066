//! Where a value stands: a file, and a stretch of its text.

use std::ops::Deref;

use crate::units::{Piece, Say};

/// A file of the book, by its number in [`super::Files`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub(super) u32);

/// A stretch of a file's text, in bytes, the end left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span {
    /// The file.
    pub file: FileId,
    /// First byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

/// A value and the text that it was read from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spanned<T> {
    /// The value.
    pub value: T,
    /// Where it is written.
    pub span: Span,
}

impl<T> Spanned<T> {
    /// Joins a value and its place.
    pub fn new(value: T, span: Span) -> Self {
        Self { value, span }
    }

    /// The same place, another value.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Spanned<U> {
        Spanned { value: change(self.value), span: self.span }
    }
}

impl<T> Deref for Spanned<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.value
    }
}

/// What a finding points at: a stretch of text, or a file as a whole (a photo, a folder).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// A stretch of a file that was read as text.
    Text(Span),
    /// A path inside the book, with `/` between its parts.
    Path(String),
}

impl From<Span> for Place {
    fn from(span: Span) -> Self {
        Place::Text(span)
    }
}

/// A line and a column, both counted from 1; columns count characters, as editors do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Position {
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
}

impl<T: crate::units::Told> crate::units::Told for Spanned<T> {}

impl<T: Say> Say for Spanned<T> {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        self.value.add_to(pieces);
    }
}
