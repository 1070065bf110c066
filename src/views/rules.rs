//! What the review checks: each rule's own page of text, for the office.

use super::html::Html;
use super::sheet::{Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `rules.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RulesPage {
    pub sheet: Sheet,
    pub lead: Html,
    pub families: Vec<RuleFamily>,
}

/// Rules that belong together.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RuleFamily {
    pub name: String,
    pub scope: Option<String>,
    pub rules: Vec<RuleText>,
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RuleText {
    /// `fit/width`.
    pub code: String,
    /// The code as a fragment that a link may name: `fit-width`.
    pub anchor: String,
    pub severity: State,
    pub summary: Html,
    /// The rule's documentation, as HTML made from Markdown.
    pub text: Html,
    pub source: Option<String>,
    pub caution: Option<Html>,
}

on_sheet!(RulesPage);
