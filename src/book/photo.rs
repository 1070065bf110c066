//! A picture that the book names.

use crate::digest::Digest;
use crate::source::Span;

/// A picture as a record names it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// Its path inside the book.
    pub path: String,
    /// What it shows, where the book says so.
    pub alt: Option<String>,
    /// A line under it, where the book gives one.
    pub caption: Option<String>,
    /// Where it is named.
    pub span: Span,
}

/// What a picture's file says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PhotoFile {
    /// Width in pixels, turned upright.
    pub width: u32,
    /// Height in pixels, turned upright.
    pub height: u32,
    /// The digest of its bytes; taken only when somebody asks for it, such as a book with a record.
    pub digest: Option<Digest>,
}
