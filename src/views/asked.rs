//! What a page of the client asks to be decided, as data for the scripts of the theme.

use super::state::State;
use serde::Serialize;
use std::collections::BTreeMap;

use crate::ledger::Head;

/// One issue: who is asked, what for, and where the answer goes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Asked {
    /// The book's id: 32 hex digits.
    pub book: String,
    /// Number of the issue.
    pub issue: u32,
    /// `approval` or `construction`.
    #[serde(rename = "for")]
    pub purpose: String,
    /// The line of the ledger that names the issue: by it a cut or exchanged ledger shows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ledger: Option<Head>,
    /// What the book is called.
    pub title: String,
    /// The address that a response is posted to.
    pub post: Option<String>,
    /// Where to write instead.
    pub email: Option<String>,
    pub approvers: Vec<AskedOf>,
    pub items: Vec<AskedItem>,
    pub allowances: Vec<AskedAllowance>,
    /// Three letters.
    pub currency: String,
    /// What stands before an amount: `$`, or the letters and a space.
    pub sign: String,
    /// Of the currency.
    pub decimals: u32,
}

/// Someone who is asked.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AskedOf {
    pub id: String,
    pub name: String,
}

/// One item that is asked about.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AskedItem {
    /// The room's folder.
    pub room: String,
    /// What the room is called.
    #[serde(rename = "room name")]
    pub room_name: String,
    /// The item's id, unique in its room.
    pub item: String,
    pub name: String,
    pub tag: String,
    /// Its page, in the client's folder.
    pub page: String,
    /// The whole mark: 64 hex digits.
    pub mark: String,
    /// False when it is no longer what was issued: it is asked about in the next issue.
    pub askable: bool,
    pub options: Vec<AskedOption>,
    /// The option that the book has settled on.
    pub chosen: Option<String>,
    /// The allowance that it draws on.
    pub allowance: Option<String>,
    /// Day by which it must be decided: `2027-01-26`.
    pub due: Option<String>,
    /// What waits for it.
    #[serde(rename = "holds up")]
    pub holds_up: Option<String>,
    /// What is on record.
    pub decided: Vec<AskedBefore>,
}

/// An option that may be crossed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AskedOption {
    pub id: String,
    pub name: String,
    /// Before tax, plain: `3180.00`.
    pub price: Option<String>,
    /// Whether it fits; absent where nothing is known.
    pub fit: Option<AskedFit>,
}

/// Whether an option fits, in plain words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AskedFit {
    /// The verdict and its shape.
    #[serde(flatten)]
    pub verdict: State,
    /// By how much, in a sentence.
    pub sentence: String,
}

/// A decision on record.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AskedBefore {
    pub who: String,
    /// One of the four review stamps, in lower case.
    pub decision: String,
    pub option: Option<String>,
    pub note: Option<String>,
    /// `holds` or `stale`.
    pub state: String,
}

/// An allowance, and what the book's own choices draw on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AskedAllowance {
    pub name: String,
    /// Plain: `14500.00`.
    pub allowed: String,
    /// Plain; absent while nothing is settled.
    pub settled: Option<String>,
}

/// What an opening's sheet asks of a tape.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TapeAsked {
    /// The book's id; absent while no issue was made.
    pub book: Option<String>,
    pub issue: Option<u32>,
    /// The line of the ledger that names the issue, as pages for signature state it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ledger: Option<Head>,
    pub title: String,
    pub post: Option<String>,
    pub email: Option<String>,
    /// In which a number without a unit counts at first: `imperial` or `metric`.
    pub units: String,
    /// The room's folder.
    pub room: String,
    /// The opening, as the book names it.
    pub opening: String,
    pub asks: Vec<TapeRange>,
    /// How far diagonals may differ and sides may lean, in whole nanometres.
    pub square: String,
}

/// What one size must be, in whole nanometres as text, and what the tape reads too much.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TapeRange {
    /// `width`, `height` or `depth`.
    pub what: String,
    pub least: Option<String>,
    pub most: Option<String>,
    /// The thing itself, where what is left beside it tells something.
    pub body: Option<String>,
    /// The play in all that it wants beside itself.
    pub play: Option<String>,
    /// How much more air its sheet wants at its left than at its right, where it wants more at one of them;
    /// below zero where it is the right.
    pub off: Option<String>,
    /// What is still to come on the faces that the tape reads between.
    pub less: Vec<TapeLess>,
    /// Why one reading decides nothing here: `studs`, what comes on them is not known; `stack`, it is
    /// shared with another thing.
    pub unsure: Option<String>,
    /// What hangs above leaves no more than this.
    pub above: Option<String>,
}

/// Something that is still to come where the tape is held.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TapeLess {
    /// `floor`, `left`, `right` or `back`.
    pub of: String,
    /// In whole nanometres.
    pub length: String,
}

/// What an issue froze, as far as pages need it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Issued {
    /// The book's id.
    pub book: String,
    /// The last issue's number.
    pub number: u32,
    /// `approval` or `construction`.
    pub purpose: String,
    /// The line of the ledger that names it.
    pub line: Option<Head>,
    /// The mark of each item, by room and item.
    pub marks: BTreeMap<(String, String), String>,
}
