//! Everything to be signed, with marks, prices and totals.

use super::data::Data;
use super::html::Html;
use super::photo::Photo;
use super::sheet::{Fact, Link, Sheet, on_sheet};
use super::state::State;
use serde::Serialize;

/// `sign.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SignPage {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    /// Currency and what prices include, in a line.
    pub terms: String,
    /// Who signs, in the order of the columns and of the signature lines.
    pub signers: Vec<String>,
    /// Signatures that stand, and a place for each that is still wanted.
    pub lines: Vec<SignLine>,
    /// A room each.
    pub groups: Vec<SignGroup>,
    /// Subtotal, tax, total, allowances, over or under; the total is marked.
    pub totals: Vec<Total>,
    pub conditions: Vec<Condition>,
    /// The sheets as PDF: the whole book first, then a room each.
    pub papers: Vec<Link>,
    /// What is asked, for the page's scripts; absent while no issue was made.
    pub asked: Option<Data>,
}

/// A room's items.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SignGroup {
    pub room: Link,
    pub items: Vec<SignItem>,
}

/// One item to sign for.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SignItem {
    pub link: Link,
    pub photo: Option<Photo>,
    /// Maker, model, finish, size.
    pub description: Html,
    pub quantity: Option<String>,
    /// Whether each option that can be chosen fits.
    pub fits: Vec<FitLine>,
    /// By when it must be decided and why, while it waits.
    pub due: Option<String>,
    pub mark: Option<String>,
    /// One a signer, in their order.
    pub states: Vec<State>,
    pub price: Option<String>,
}

/// Whether an option fits, in plain words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FitLine {
    /// The option; absent where there is only one.
    pub option: Option<String>,
    /// `Fits`, `Does not fit`, and so on.
    pub verdict: State,
    /// By how much, in a sentence.
    pub sentence: Html,
}

/// A place for a signature, and what stands there.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SignLine {
    /// Who signs there.
    pub name: String,
    /// The drawing, or the name as typed; empty while nothing is signed.
    pub shown: Html,
    /// How it was given and of what.
    pub how: Option<String>,
    /// The day.
    pub date: String,
}

/// A line under the table.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Total {
    pub name: String,
    pub figure: String,
    /// The figure that is signed for.
    pub main: bool,
}

/// A condition that must be met before the item is ordered.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Condition {
    pub link: Link,
    pub state: State,
    pub sentence: Html,
}

on_sheet!(SignPage);
