//! Why a sheet could not be set, and what to do.

use std::fmt;

/// Why a sheet could not be set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SheetError {
    /// A picture whose bytes are not those of a picture we can read.
    Picture {
        /// The key it was asked for by.
        key: String,
        /// What the decoder said.
        why: String,
    },
    /// More different pictures than one sheet may show; the number is the most it may.
    TooManyPictures(usize),
    /// The view could not be written as JSON.
    View(String),
    /// The template could not be set with this view.
    Template(String),
    /// The theme's template leaves out what no theme may: in a word, and the text.
    LeftOut(&'static str, String),
    /// The pages could not be written as PDF.
    Pdf(String),
}

impl fmt::Display for SheetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SheetError::Picture { key, why } => {
                write!(f, "the picture `{key}` cannot be put on a sheet ({why}); ")?;
                write!(f, "save it anew as JPEG or PNG")
            }
            SheetError::TooManyPictures(most) => {
                write!(f, "a sheet shows at most {most} pictures; publish the rooms one by one")
            }
            SheetError::View(why) => write!(f, "the sheet's content cannot be passed on ({why})"),
            SheetError::Template(why) => {
                write!(f, "the sheet cannot be set ({why}); check the theme's sheet template")
            }
            SheetError::LeftOut(what, text) => {
                write!(f, "the theme's templates leave out {what} that no theme may, `{text}`; put it back")
            }
            SheetError::Pdf(why) => {
                write!(f, "the sheet cannot be written as PDF ({why}); check the theme's template")
            }
        }
    }
}

impl std::error::Error for SheetError {}
