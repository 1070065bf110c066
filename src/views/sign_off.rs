//! What a sign-off sheet says: the items, their prices and marks, and who signs for them.
//!
//! Every string is worded and formatted for the reader: lengths, money and dates are text by now.
//! Lines of an item's description are [`Line`]s in the order in which they are read.

use serde::Serialize;

use super::sheet::Revision;
use super::signature::Signature;

/// One sign-off sheet, of a room or of the whole book.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOff {
    /// The language of the words, as a two-letter tag (`en`, `es`).
    pub language: String,
    /// The paper it is printed on.
    pub paper: Paper,
    /// Whether it is a draft, which nobody is to sign.
    pub draft: bool,
    /// Who and what the project is.
    pub project: Project,
    /// Which sheet this is.
    pub sheet: Sheet,
    /// The issue in words: `3, for approval`, or `unissued`.
    pub issue: String,
    /// The date of the issue in words.
    pub date: String,
    /// What a signature means, in a sentence or two.
    pub statement: String,
    /// The sheet in short: how many items, the total, who signs.
    pub facts: Vec<Line>,
    /// The rooms in the order of the book; one only on a room's sheet.
    pub rooms: Vec<Room>,
    /// The sums, the last one being what is signed for.
    pub totals: Vec<Line>,
    /// Money set aside and money chosen; empty where the book has no allowances.
    pub allowances: Vec<Allowance>,
    /// Those who sign, in the order of the book.
    pub approvers: Vec<Approver>,
    /// How many must sign, in words: `both must sign`, `any one may sign`.
    pub rule: String,
    /// The issues in which what is on it was new or changed, the newest first; a few at most.
    pub revisions: Vec<Revision>,
    /// Which part of the sheet this is, where it has so many items that it is set in parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<Part>,
}

/// One file of a sheet that is set in parts; the last one has the sums and the signatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Part {
    /// Its number, from 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
}

impl SignOff {
    /// The pictures that it shows, in its order; one may be there more than once.
    pub fn pictures(&self) -> impl Iterator<Item = &PictureRef> {
        let items = self.rooms.iter().flat_map(|room| &room.items);
        items.flat_map(|item| item.picture.iter().chain(item.choices.iter().filter_map(|one| one.picture.as_ref())))
    }

    /// How many items stand on it.
    pub fn count(&self) -> usize {
        self.rooms.iter().map(|room| room.items.len()).sum()
    }

    /// All of it but its rooms.
    #[must_use]
    pub fn without_rooms(&self) -> SignOff {
        let Self { language, paper, draft, project, sheet, issue, date, statement, .. } = self;
        let Self { facts, totals, allowances, approvers, rule, revisions, part, .. } = self;
        SignOff {
            language: language.clone(),
            paper: *paper,
            draft: *draft,
            project: project.clone(),
            sheet: sheet.clone(),
            issue: issue.clone(),
            date: date.clone(),
            statement: statement.clone(),
            facts: facts.clone(),
            rooms: vec![],
            totals: totals.clone(),
            allowances: allowances.clone(),
            approvers: approvers.clone(),
            rule: rule.clone(),
            revisions: revisions.clone(),
            part: *part,
        }
    }
}

/// A sheet of paper, upright.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8 1/2 × 11 in (ANSI A).
    UsLetter,
}

/// The project as a title block names it. An empty string leaves its line out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Project {
    /// The project's title.
    pub title: String,
    /// Its number at the firm.
    pub number: String,
    /// Whose house it is.
    pub client: String,
    /// The firm.
    pub firm: String,
    /// The designer.
    pub designer: String,
    /// Where the house stands.
    pub address: String,
}

/// The sheet as a title block names it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Sheet {
    /// The sheet's number: `S-00` for the book, `S-K` for a kitchen.
    pub code: String,
    /// What the sheet is: `What is being signed`.
    pub title: String,
    /// What it covers: a room's name, or the whole book.
    pub scope: String,
    /// The mark of all that is on it: eight hex digits in two fours.
    pub mark: String,
}

/// A label and what stands beside it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
    /// What it is.
    pub label: String,
    /// What it says.
    pub value: String,
}

/// A room and its items.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Room {
    /// The room's name.
    pub name: String,
    /// One line below the name: the currency, what prices include.
    pub note: String,
    /// The items in the order of the book.
    pub items: Vec<Item>,
    /// What the items come to, before tax.
    pub subtotal: Option<Line>,
}

/// One item to be decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Item {
    /// The item's number on every sheet: `K-07`.
    pub tag: String,
    /// What it is: `Refrigerator`.
    pub name: String,
    /// The option chosen, if there were several.
    pub option: String,
    /// Maker and model.
    pub product: String,
    /// What the client is told of it, in a sentence or two.
    pub told: String,
    /// The full description.
    pub description: Vec<Line>,
    /// Whether it fits; nothing where nothing is known, or options are still open.
    pub fit: Option<Fit>,
    /// How many or how much, with its unit.
    pub quantity: String,
    /// The price of one.
    pub unit_price: String,
    /// The price of all of them; empty while nothing is chosen.
    pub price: String,
    /// The item's mark: eight hex digits in two fours.
    pub mark: String,
    /// How far its approval has come.
    pub state: State,
    /// Its photograph; none while options are open, each of which has its own.
    pub picture: Option<PictureRef>,
    /// Why it is so, in the designer's words.
    pub why: String,
    /// What may hurt, and to whom to turn.
    pub cautions: Vec<String>,
    /// The options still open; empty once one is chosen.
    pub choices: Vec<ProductOption>,
    /// What each approver decided, as it stands, in the order of the approvers.
    pub decided: Vec<Decided>,
}

/// What an approver decided of an item; empty while nothing stands.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct Decided {
    /// The box that is crossed.
    pub stamp: Option<Stamp>,
    /// The decision in words, when and how it was given.
    pub by: String,
    /// In the approver's words.
    pub note: String,
}

/// One of the four boxes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stamp {
    /// Approved.
    Approved,
    /// Approved as noted.
    Noted,
    /// Revise and resubmit.
    Revise,
    /// Rejected.
    Rejected,
}

/// How far an item's approval has come, as a shape and in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct State {
    /// The shape drawn before the words.
    pub shape: Shape,
    /// The state in words, with who and when where that is known.
    pub words: String,
}

/// The shape of a state. The four decisions are the trade's review stamps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shape {
    /// Nobody has decided, or not everybody.
    Waiting,
    /// Approved by all who must.
    Approved,
    /// Approved, with a note that stands.
    ApprovedAsNoted,
    /// Sent back, to be shown again.
    ReviseAndResubmit,
    /// Turned down.
    Rejected,
    /// Approved once, and changed since.
    Changed,
}

/// Whether a thing fits, in plain words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Fit {
    /// It does not go in: said louder.
    pub misfit: bool,
    /// `Fits`, `Does not fit`, and so on.
    pub verdict: String,
    /// By how much, in a sentence.
    pub sentence: String,
}

/// An option that may still be chosen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProductOption {
    /// The option's name.
    pub name: String,
    /// Maker, model and finish in a line.
    pub product: String,
    /// What the client is told of it, in a sentence or two.
    pub told: String,
    /// Its sizes in a line.
    pub sizes: String,
    /// What else there is to it, in a line.
    pub more: String,
    /// Whether it fits; nothing where nothing is known.
    pub fit: Option<Fit>,
    /// Its photograph.
    pub picture: Option<PictureRef>,
    /// What the item costs with it.
    pub price: String,
    /// It is what those who decided chose.
    pub crossed: bool,
}

/// A photograph that is fetched by its key when the sheet is set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PictureRef {
    /// The key that the picture is asked for by.
    pub key: String,
    /// What is to be seen on it, for those who do not see it.
    pub alt: String,
    /// Its width in pixels.
    pub width: u32,
    /// Its height in pixels.
    pub height: u32,
}

/// Money set aside for a kind of thing, and what was chosen for it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Allowance {
    /// What the money is set aside for.
    pub name: String,
    /// How much.
    pub allowed: String,
    /// What the choices come to.
    pub chosen: String,
    /// What is left or over, in words.
    pub rest: String,
}

/// Somebody who signs.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct Approver {
    /// The name in full.
    pub name: String,
    /// What was signed of this sheet and still holds.
    pub signatures: Vec<Signature>,
    /// Something of this sheet is still to be signed.
    pub open: bool,
}
