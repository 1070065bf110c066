//! Views to files: the site, pictures, sheets, and the one writer.

pub mod bound;

mod markup;

mod stays;

pub mod theme;

pub mod site;

#[cfg(feature = "sheets")]
pub mod sheets;

pub mod output;

mod papers;

mod press;

use std::fmt;
use std::sync::atomic::AtomicBool;

use crate::pictures::Cache;
use crate::views::pages::{BookPages, Subject};

use output::{Content, Output, PathError, Spool};
use papers::Papering;
pub use press::{Job, SheetLook};
use theme::{Theme, ThemeError};

/// Why files could not be made; the folder that was published before stays as it is.
#[derive(Debug)]
pub enum PublishError {
    /// A template asks for something that a page does not say, or lacks a language.
    Theme(ThemeError),
    /// A file of the book's own theme can't be read, as the review says.
    UnreadTheme,
    /// Two files want the same place.
    Path(PathError),
    /// A sheet could not be set: its path, and why.
    Sheet(String, String),
    /// The user asked to stop before all was made.
    Stopped,
}

impl fmt::Display for PublishError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Theme(error) => error.fmt(f),
            Self::UnreadTheme => f.write_str(
                "the theme can't be read as a whole; mend it, or take `theme` out of `book.yaml`: nothing was published",
            ),
            Self::Path(error) => error.fmt(f),
            Self::Sheet(path, why) => write!(f, "the sheet `{path}` could not be set: {why}"),
            Self::Stopped => f.write_str("stopped before every file was made"),
        }
    }
}

impl std::error::Error for PublishError {}

impl From<ThemeError> for PublishError {
    fn from(error: ThemeError) -> Self {
        Self::Theme(error)
    }
}

impl From<PathError> for PublishError {
    fn from(error: PathError) -> Self {
        Self::Path(error)
    }
}

/// Where a published folder states what it was published from.
pub use crate::source::STATED;

/// A file to write: its path, and what it holds.
type File = (String, Content);

/// Pages and sheets as they were made last: those that still say the same are not made again.
#[derive(Debug, Default)]
pub struct RenderCache {
    pages: site::PageCache,
    papers: papers::PaperCache,
}

/// How sheets are set.
#[derive(Clone, Copy)]
pub struct Setting<'a> {
    /// Sheets that say something else now may stand as they were set last, and new ones be missing:
    /// setting takes longer than all the rest.
    pub later: bool,
    /// Once raised, the sheets are left as they are.
    pub interrupt: &'a AtomicBool,
}

/// Every file of the published folders.
pub struct Published {
    /// The files.
    pub output: Output,
    /// Sheets that are still to be set: only where they may come later.
    pub waiting: Option<Job>,
}

/// Makes every file of the published folders.
///
/// # Errors
/// When the theme, a path or a sheet is at fault, or `interrupt` is raised before the last sheet is set.
pub fn publish(
    subject: Subject<'_>,
    theme: &Theme,
    kept: &mut RenderCache,
    cache: &Cache,
    setting: Setting<'_>,
) -> Result<Published, PublishError> {
    // A preview shows again and again what it made; else it is written once, and lies aside until then.
    let spool = if setting.later { Spool::default() } else { Spool::aside() };
    let pages = BookPages::of(subject);
    // Before the pages: what setting needs is given back, and they take its place.
    let look = SheetLook { theme: theme.files().clone(), tongues: subject.book.project.tongues.clone() };
    let papering = Papering { pictures: subject.pictures, cache, spool: &spool, setting, look };
    let papers = papering.take(pages.papers(), &mut kept.papers)?;
    let mut output = Output::default();
    for (path, content) in site::render(&pages.pages(), pages.issued(), theme, &spool, &mut kept.pages)? {
        output.insert(path, content)?;
    }
    for (folder, files) in &pages.pictures() {
        for file in files {
            let content = Content::File { path: file.from.clone(), digest: file.digest, bytes: file.bytes };
            output.insert(format!("{folder}/{}", file.path), content)?;
        }
    }
    for (path, content) in papers.files {
        // The client signs them; the office keeps its own copies.
        output.insert(format!("office/{path}"), content.clone())?;
        output.insert(format!("client/{path}"), content)?;
    }
    Ok(Published { output, waiting: papers.waiting })
}
