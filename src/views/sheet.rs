//! What every page has in common: its title block, where it is, and the sheets it joins.

use super::html::Html;
use serde::Serialize;

/// One sheet of the book: the frame that every page is set in.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Sheet {
    /// Where the page stands in its folder, with forward slashes: `rooms/kitchen.html`.
    pub path: String,
    /// The sheet number, such as `K-07`.
    pub number: String,
    pub name: String,
    /// From the cover down to this page; the last crumb is the page itself and has no link.
    pub trail: Vec<Crumb>,
    pub project: Project,
    /// How the scale of the drawings on it is told; absent when there are none.
    pub scale: Option<String>,
    /// Eight hex digits in two fours; absent where nothing is signed.
    pub mark: Option<String>,
    pub revisions: Vec<Revision>,
    /// The sheet before this one, with a folder-relative link.
    pub from: Option<Link>,
    /// The sheet after this one.
    pub onward: Option<Link>,
}

/// The part of the title block that is the same on every sheet.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Project {
    pub title: String,
    pub number: Option<String>,
    pub client: Option<String>,
    pub firm: Option<String>,
    /// What the firm does, in a line.
    pub firm_line: Option<String>,
    /// `3, for approval`, or `draft, not issued`.
    pub issue: String,
    pub date: String,
    /// Marks every page, on the screen and on paper, as a draft.
    pub draft: bool,
    /// The newest issue when the page was made; absent while none was.
    pub issued: Option<IssuedAs>,
}

/// A book and one of its issues, by which a page can know that a newer one stands.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct IssuedAs {
    /// The book's id: 32 hex digits.
    pub book: String,
    /// The issue's number.
    pub issue: u32,
    /// Its day: `2027-01-15`.
    pub on: String,
}

/// One step of the way to a page.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Crumb {
    pub name: String,
    /// Relative to the folder's root; absent for the page itself.
    pub href: Option<String>,
}

/// A link to another sheet of the same folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Link {
    /// Relative to the folder's root.
    pub href: String,
    pub name: String,
    /// The sheet number, where it has one.
    pub number: Option<String>,
}

/// A line of the title block's list of revisions.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Revision {
    /// The issue in which it was changed.
    pub number: String,
    pub date: String,
    pub what: String,
}

/// A named value, as in the ruled list beside a title.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Fact {
    pub name: String,
    pub value: Html,
}

/// A caution, or another thing to know, in a hatched bar.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Notice {
    pub title: String,
    pub lines: Vec<Html>,
}

/// Has a sheet: every page's view.
pub trait OnSheet: Serialize {
    /// The sheet that the page is set on.
    fn sheet(&self) -> &Sheet;
}

/// Gives each view struct named its sheet.
macro_rules! on_sheet {
    ($($view:ty),+) => {
        $(impl $crate::views::sheet::OnSheet for $view {
            fn sheet(&self) -> &$crate::views::sheet::Sheet {
                &self.sheet
            }
        })+
    };
}
pub(crate) use on_sheet;
