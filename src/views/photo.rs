//! A photograph as a page shows it.

use serde::Serialize;

/// A photograph with the sizes that it was made in.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Photo {
    /// Path from the folder's root, with forward slashes; a middle size.
    pub src: String,
    /// All sizes, smallest first.
    pub sizes: Vec<PhotoSize>,
    /// Pixels of `src`: a page reserves the space before the picture is there.
    pub width: u32,
    pub height: u32,
    /// What is to be seen, for those who cannot see it; empty when the words beside it say the same.
    pub alt: String,
    pub caption: Option<String>,
}

/// One file of a photograph.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct PhotoSize {
    pub path: String,
    /// Pixels across.
    pub width: u32,
}
