//! The sheets to sign on paper, one a room and one for the whole book: prices, sums, marks, and who signs.
//!
//! Every string is worded and formatted for the reader: lengths, money and dates are text by now.

use crate::assess::Due;
use crate::book::{Book, Room as BookRoom};
use crate::language::say;
use crate::ledger::Purpose;
use crate::shown;
use crate::views::pages::PageBuilder;
use crate::views::paper::sign_off_item::{PictureRef, SignOffItem};
use crate::views::paper::{cautions, parts};
use crate::views::shared::revisions::{Revision, RevisionScope};
use crate::views::shared::sheet::Fact;
use crate::views::shared::signature::Signature;
use serde::Serialize;

/// The path of the sheet of all rooms.
pub const WHOLE_BOOK: &str = "sheets/whole-book.pdf";

/// One sign-off sheet, of a room or of the whole book.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOff {
    /// The language of the words, as a two-letter tag (`en`, `es`).
    pub language: String,
    /// The paper it is printed on.
    pub paper: PaperSize,
    /// Whether it is a draft, which nobody is to sign.
    pub draft: bool,
    /// Who and what the project is.
    pub project: ProjectTitle,
    /// Which sheet this is.
    pub sheet: SheetTitle,
    /// The issue in words: `3, for approval`, or `unissued`.
    pub issue: String,
    /// The date of the issue in words.
    pub date: String,
    /// What a signature means, in a sentence or two.
    pub statement: String,
    /// The sheet in short: how many items, the total, who signs.
    pub facts: Vec<LabelledLine>,
    /// The rooms in the order of the book; one only on a room's sheet.
    pub rooms: Vec<SignOffRoom>,
    /// The sums, the last one being what is signed for.
    pub totals: Vec<LabelledLine>,
    /// Money set aside and money chosen; empty where the book has no allowances.
    pub allowances: Vec<SignOffAllowance>,
    /// What can hurt, in full words, each once; items name it by its number, counted from 1.
    pub cautions: Vec<String>,
    /// Those who sign, in the order of the book.
    pub approvers: Vec<SheetSigner>,
    /// How many must sign, in words: `both must sign`, `any one may sign`.
    pub rule: String,
    /// The issues in which what is on it was new or changed, the newest first; a few at most.
    pub revisions: Vec<Revision>,
    /// Which part of the sheet this is, where it has so many items that it is set in parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<SheetPart>,
}

/// One file of a sheet that is set in parts; the last one has the sums and the signatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct SheetPart {
    /// Its number, from 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
}

impl SignOff {
    /// The pictures that it shows, in its order; one may be there more than once.
    pub fn pictures(&self) -> impl Iterator<Item = &PictureRef> {
        let items = self.rooms.iter().flat_map(|room| &room.items);
        items.flat_map(|item| {
            let options = item.choices.iter().chain(&item.others);
            item.picture.iter().chain(options.filter_map(|one| one.picture.as_ref()))
        })
    }

    /// How many items stand on it.
    pub fn count(&self) -> usize {
        self.rooms.iter().map(|room| room.items.len()).sum()
    }

    /// All of it but its rooms.
    #[must_use]
    pub fn without_rooms(&self) -> SignOff {
        let Self { language, paper, draft, project, sheet, issue, date, statement, .. } = self;
        let Self { facts, totals, allowances, cautions, approvers, rule, revisions, part, .. } = self;
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
            cautions: cautions.clone(),
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
pub enum PaperSize {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8 1/2 × 11 in (ANSI A).
    UsLetter,
}

/// The project as a title block names it. An empty string leaves its line out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProjectTitle {
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
pub struct SheetTitle {
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
pub struct LabelledLine {
    /// What it is.
    pub label: String,
    /// What it says.
    pub value: String,
}

/// A room and its items.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOffRoom {
    /// The room's name.
    pub name: String,
    /// One line below the name: the currency, what prices include.
    pub note: String,
    /// The items in the order of the book.
    pub items: Vec<SignOffItem>,
    /// What the items come to, before tax.
    pub subtotal: Option<LabelledLine>,
}

/// Money set aside for a kind of thing, and what was chosen for it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOffAllowance {
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
pub struct SheetSigner {
    /// The name in full.
    pub name: String,
    /// What was signed of this sheet and still holds.
    pub signatures: Vec<Signature>,
    /// Something of this sheet is still to be signed.
    pub open: bool,
}

impl PageBuilder<'_> {
    /// Every sheet to sign, with its path.
    pub fn papers(&self) -> Vec<(String, SignOff)> {
        let book = self.subject.book;
        let amounts = &self.subject.assessment.amounts;
        let whole = SheetTitle {
            code: "S-00".into(),
            title: say!(self.words, "pages.sign"),
            scope: say!(self.words, "paper_says.whole_book"),
            mark: shown::in_short(&shown::of_all(self.marks.values())),
        };
        let all: Vec<&BookRoom> = book.rooms.iter().collect();
        let whole = self.paper(whole, &all, amounts.book, true);
        let mut papers = parts::of(WHOLE_BOOK.to_owned(), whole);
        for room in &book.rooms {
            let sheet = SheetTitle {
                code: format!("S-{}", room.letter),
                title: say!(self.words, "pages.sign"),
                scope: room.title().into(),
                mark: self.room_mark(room),
            };
            let due = amounts.rooms.get(&room.folder).copied().unwrap_or_default();
            papers.extend(parts::of(self.chrome.paper_path(room), self.paper(sheet, &[room], due, false)));
        }
        papers.into_iter().map(|(path, paper)| (path, cautions::numbered(self.words, paper))).collect()
    }

    fn paper(&self, sheet: SheetTitle, rooms: &[&BookRoom], due: Due, whole: bool) -> SignOff {
        let chrome = self.chrome.project();
        let items: usize = rooms.iter().map(|room| room.selections.len()).sum();
        let open =
            rooms.iter().flat_map(|room| &room.selections).filter(|selection| selection.settled().is_none()).count();
        let mut facts = vec![self.line("sign.items", say!(self.words, "units.items", n = items))];
        if open > 0 {
            facts.push(self.line("paper_says.still_to_choose", say!(self.words, "units.items", n = open)));
        }
        facts.extend(self.still_open(due).map(|open| line(&open.name, open.figure)));
        facts.push(self.line("sign_says.who", self.who_signs()));
        let of_room = rooms.first().copied().filter(|_| !whole);
        facts.extend(self.withdrawn_to_agree(of_room).into_iter().map(|told| self.line("changes.withdrawn", told)));
        facts.extend(self.in_ledger().map(|stated| self.line("paper_says.on_record", stated)));
        SignOff {
            language: self.words.tag().to_owned(),
            paper: paper_of(self.subject.book),
            draft: self.subject.draft,
            project: project_of(self.subject.book),
            sheet,
            issue: chrome.issue.clone(),
            date: chrome.date.clone(),
            statement: self.statement(open),
            facts,
            rooms: rooms.iter().map(|room| self.paper_room(room)).collect(),
            totals: self
                .sums(due.settled, rooms)
                .into_iter()
                .map(|sum| line(&sum.name, self.words.amount(sum.amount)))
                .collect(),
            allowances: if whole { self.paper_allowances() } else { vec![] },
            cautions: vec![],
            approvers: self.who_signed(rooms),
            rule: self.who_signs(),
            revisions: self.revisions(RevisionScope::Rooms(&rooms.iter().map(|room| room.folder.as_str()).collect())),
            part: None,
        }
    }

    fn line(&self, key: &str, value: String) -> LabelledLine {
        line(&say!(self.words, key), value)
    }

    /// The line of the ledger that names the issue, by its number and the first digits of its digest: by a
    /// sheet that states it a cut or exchanged ledger shows.
    fn in_ledger(&self) -> Option<String> {
        let record = &self.subject.book.record;
        let head = record.heads.get(&record.latest_for(Purpose::Approval)?.number)?;
        let digits: String = head.sha256.to_string().chars().take(16).collect();
        Some(say!(self.words, "paper_says.ledger", line = head.line, digits = digits))
    }

    fn paper_allowances(&self) -> Vec<SignOffAllowance> {
        let allowances = self.subject.assessment.amounts.allowances.iter();
        allowances
            .map(|(name, allowance)| SignOffAllowance {
                name: crate::views::shared::lines::capital(name),
                allowed: self.words.amount(allowance.allowed),
                chosen: allowance.due.settled.map_or_else(|| "–".into(), |settled| self.words.amount(settled)),
                rest: crate::views::client::sign::rest(self.words, allowance),
            })
            .collect()
    }

    fn paper_room(&self, room: &BookRoom) -> SignOffRoom {
        let settled = self.subject.assessment.amounts.rooms.get(&room.folder).and_then(|due| due.settled);
        SignOffRoom {
            name: room.title().into(),
            note: self.terms(),
            items: room.selections.iter().map(|selection| self.paper_item(room, selection)).collect(),
            subtotal: settled.map(|settled| {
                line(
                    &say!(
                        self.words,
                        super::change_order::taxed_key(self.subject.book.project.prices),
                        what = room.title()
                    ),
                    self.words.amount(settled),
                )
            }),
        }
    }
}

/// The paper that a book is printed on, by its units.
pub fn paper_of(book: &Book) -> PaperSize {
    if !book.project.units.is_metric() { PaperSize::UsLetter } else { PaperSize::A4 }
}

/// The project as a title block on paper names it.
pub fn project_of(book: &Book) -> ProjectTitle {
    let project = &book.project;
    ProjectTitle {
        title: project.title.text().into(),
        number: project.number.text().into(),
        client: project.client.text().into(),
        firm: project.firm.name.text().into(),
        designer: project.designer.text().into(),
        address: project.address.text().into(),
    }
}

/// Those who sign, with nothing signed yet.
pub fn approvers(book: &Book) -> Vec<SheetSigner> {
    let nothing = |name: &String| SheetSigner { name: name.clone(), signatures: vec![], open: true };
    book.project.approvers.iter().map(|approver| nothing(&approver.name)).collect()
}

fn line(label: &str, value: impl Into<String>) -> LabelledLine {
    LabelledLine { label: label.into(), value: value.into() }
}

/// A fact without its markup; paper sets its own fractions.
pub(super) fn plain(fact: &Fact) -> LabelledLine {
    line(&fact.name, fact.value.on_paper())
}
