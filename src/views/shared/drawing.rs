//! A drawing as a page shows it: an SVG made elsewhere, with its name and its caption.

use crate::views::shared::html::Html;
use serde::Serialize;

/// A drawing with words around it.
///
/// The SVG has a title and a description of its own, its pictures are linked relative to the page
/// (`../pictures/…` on a page one folder down), and it carries no `style` attribute, so that it
/// stands under a strict content security policy.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Drawing {
    /// The view's name: `Elevation, east wall`.
    pub name: String,
    /// Scale and scope, in a line.
    pub scope: Option<String>,
    pub svg: Html,
    /// The same drawn again for a narrow screen, with fewer and larger figures.
    pub narrow: Option<Html>,
    pub caption: Option<Html>,
}
