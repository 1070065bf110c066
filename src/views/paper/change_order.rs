//! The change order between two issues, as a sheet to sign: what is shown otherwise, and who signs for it.
//!
//! Every string is worded and formatted for the reader, as on a sign-off sheet.

use std::collections::BTreeMap;

use crate::assess::{ChangeOrder as Order, Changed, Fate, Moved, Sort};
use crate::book::{Book, Room as BookRoom, Selection};
use crate::digest::Digest;
use crate::ledger::{Issue, IssuedItem};
use crate::marks;
use crate::units::{Money, series};
use crate::views::client::sign::who_signs;
use crate::views::paper::changed_item::{ChangeLine, ChangedItem, change, difference, item, shift};
use crate::views::paper::parts;
use crate::views::paper::sign_off::{
    LabelledLine, PaperSize, ProjectTitle, SheetPart, SheetSigner, SheetTitle, approvers, paper_of, project_of,
};
use serde::Serialize;

/// A change order from one issue to a later one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChangeOrder {
    /// The language of the words, as a two-letter tag (`en`, `es`).
    pub language: String,
    /// The paper it is printed on.
    pub paper: PaperSize,
    /// Whether one side was never issued: nobody is to sign it then.
    pub draft: bool,
    /// Who and what the project is.
    pub project: ProjectTitle,
    /// Which sheet this is; its mark is that of the whole book as the later issue shows it.
    pub sheet: SheetTitle,
    /// The issues in words: `1 to 2`.
    pub issue: String,
    /// The number that stands in a revision's delta; empty for a book as it stands.
    pub delta: String,
    /// The date of the later one in words.
    pub date: String,
    /// What a signature means, in a sentence or two.
    pub statement: String,
    /// The sheet in short: from, to, how many items, who signs.
    pub facts: Vec<LabelledLine>,
    /// The rooms with something to tell, in the order of the later issue.
    pub rooms: Vec<ChangedRoom>,
    /// The sums before and after, the last one being what is signed for.
    pub totals: Vec<ChangeLine>,
    /// Those who sign, in the order of the book; nobody where nothing is shown otherwise.
    pub approvers: Vec<SheetSigner>,
    /// How many must sign, in words.
    pub rule: String,
    /// Which part of the change order this is, where it has so many items that it is set in parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<SheetPart>,
}

impl ChangeOrder {
    /// How many items stand on it.
    pub fn count(&self) -> usize {
        self.rooms.iter().map(|room| room.items.len()).sum()
    }
}

/// A room, and what changed in it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChangedRoom {
    /// The room's name.
    pub name: String,
    /// The items that are not the same.
    pub items: Vec<ChangedItem>,
}

/// The issues that are compared, the earlier one first; number 0 is the book as it stands.
type Issues<'a> = (&'a Issue, &'a Issue);

/// The change order between two issues of a book: one sheet, or its parts where it has very many items.
pub fn change_order(order: &Order, issues: Issues<'_>, book: &Book) -> Vec<ChangeOrder> {
    parts::of_change_order(whole(order, issues, book))
}

fn whole(order: &Order, (from, to): Issues<'_>, book: &Book) -> ChangeOrder {
    let draft = from.number == 0 || to.number == 0;
    let asks = order.asks() && !draft;
    let number = |issue: &Issue| if issue.number == 0 { "now".into() } else { issue.number.to_string() };
    ChangeOrder {
        language: book.project.language().to_string(),
        paper: paper_of(book),
        draft,
        project: project_of(book),
        sheet: SheetTitle {
            code: format!("C-{:02}", to.number),
            title: "Change order".into(),
            scope: format!("From {} to {}", edition(from), edition(to)),
            mark: mark_of(to),
        },
        issue: format!("{} to {}", number(from), number(to)),
        delta: if to.number == 0 { String::new() } else { number(to) },
        date: to.on.to_string(),
        statement: statement(from, asks, draft),
        facts: facts(order, (from, to), book, asks),
        rooms: rooms(order, (from, to), book),
        totals: totals(order),
        approvers: if asks { approvers(book) } else { vec![] },
        rule: if asks { who_signs(book) } else { "nobody needs to sign".into() },
        part: None,
    }
}

fn edition(issue: &Issue) -> String {
    if issue.number == 0 { "the book as it stands".into() } else { format!("issue {}", issue.number) }
}

/// The mark of the whole book as an issue shows it, as its sign-off sheet bears it.
fn mark_of(issue: &Issue) -> String {
    let in_order: BTreeMap<(&str, &str), Digest> =
        issue.items.iter().map(|item| ((item.room.as_str(), item.item.as_str()), item.mark)).collect();
    marks::shown(&marks::of_all(in_order.values()))
}

fn statement(from: &Issue, asks: bool, draft: bool) -> String {
    let rest = format!("What is not named here stays as {} shows it.", edition(from));
    match (draft, asks) {
        (true, _) => format!("{rest} This was not issued: nobody is to sign it yet."),
        (false, true) => {
            format!("Each signature is for these changes, and for the money and days they bring. {rest}")
        }
        (false, false) => format!("{rest} Nothing is shown otherwise than before, so that nobody needs to sign."),
    }
}

fn facts(order: &Order, (from, to): Issues<'_>, book: &Book, asks: bool) -> Vec<LabelledLine> {
    let line = |label: &str, value: String| LabelledLine { label: label.into(), value };
    let named = |issue: &Issue| match issue.number {
        0 => format!("as of {}", issue.on),
        number => format!("{number}, for {}, {}", issue.purpose.word(), issue.on),
    };
    let mut facts = vec![line("From issue", named(from)), line("To issue", named(to)), line("Items", tally(order))];
    let money = order.settled.and_then(|sum| Some(difference(sum.by()?)));
    facts.extend(money.map(|words| line("Money", format!("{words}, before tax"))));
    facts.extend(days(order).map(|words| line("Days", words)));
    facts.push(line("Who signs", if asks { signers(book) } else { "nobody needs to".into() }));
    facts
}

/// Approvers by name, with how many of them must sign.
fn signers(book: &Book) -> String {
    let names: Vec<String> = book.project.approvers.iter().map(|approver| approver.name.clone()).collect();
    if names.len() < 2 { who_signs(book) } else { format!("{}; {}", series(&names), who_signs(book)) }
}

fn tally(order: &Order) -> String {
    let of = |fate: Fate| order.items.iter().filter(|item| item.fate == fate).count();
    let told = [(Fate::Changed, "changed"), (Fate::Added, "new"), (Fate::Gone, "gone"), (Fate::Dated, "of new dates")];
    let told: Vec<String> =
        told.into_iter().filter(|(fate, _)| of(*fate) > 0).map(|(fate, word)| format!("{} {word}", of(fate))).collect();
    if told.is_empty() { "none changed".into() } else { told.join(", ") }
}

/// By how much the last days to order move, the earliest and the latest.
pub(super) fn days(order: &Order) -> Option<String> {
    let moved: Vec<i64> = order.items.iter().filter_map(Changed::days).collect();
    let sooner = moved.iter().filter(|days| **days < 0).min();
    let later = moved.iter().filter(|days| **days > 0).max();
    let told: Vec<String> = [sooner, later].into_iter().flatten().map(|days| shift(*days)).collect();
    (!told.is_empty()).then(|| format!("orders up to {}", told.join(", and up to ")))
}

/// What the items came to before, what each sort of change brings, then the sums before and after, which are
/// theirs: base and changes add up to the new sum.
fn totals(order: &Order) -> Vec<ChangeLine> {
    let base = order.settled.filter(|_| !order.sums.is_empty());
    let base = base.map(|sum| change("Base, before tax", sum.from.to_string(), String::new()));
    let sorts = order.sums.iter().map(|(sort, sum)| ChangeLine {
        by: difference(*sum),
        ..change(sort_name(*sort), String::new(), String::new())
    });
    let sums = [("Items before tax", order.settled), ("Total with tax", order.with_tax)];
    base.into_iter().chain(sorts).chain(sums.into_iter().filter_map(|(name, sum)| Some(moved(name, sum?)))).collect()
}

/// What a change of money comes from, in words.
fn sort_name(sort: Sort) -> &'static str {
    match sort {
        Sort::Choice => "Choices made",
        Sort::Change => "Changes",
        Sort::New => "New items",
        Sort::Withdrawn => "Withdrawn",
    }
}

fn moved(what: &str, sum: Moved<Money>) -> ChangeLine {
    let by = sum.by().map_or_else(String::new, difference);
    ChangeLine { what: what.into(), from: sum.from.to_string(), to: sum.to.to_string(), by }
}

/// The rooms in the order in which their items stand in the change order.
fn rooms(order: &Order, issues: Issues<'_>, book: &Book) -> Vec<ChangedRoom> {
    let (mut rooms, mut at): (Vec<ChangedRoom>, BTreeMap<&str, usize>) = (Vec::new(), BTreeMap::new());
    let issued = (by_item(issues.0), by_item(issues.1));
    let here: BTreeMap<(&str, &str), (&BookRoom, &Selection)> =
        book.selections().map(|(room, one)| ((room.folder.as_str(), one.id.as_str()), (room, one))).collect();
    for changed in &order.items {
        let key = (changed.room.as_str(), changed.item.as_str());
        let number = *at.entry(&changed.room).or_insert_with(|| {
            let name = book.room(&changed.room).map_or(changed.room.as_str(), |room| room.title());
            rooms.push(ChangedRoom { name: name.into(), items: vec![] });
            rooms.len() - 1
        });
        let (was, is) = (issued.0.get(&key).copied(), issued.1.get(&key).copied());
        let item = item(changed, (was, is), here.get(&key).copied());
        rooms.get_mut(number).into_iter().for_each(|room| room.items.push(item.clone()));
    }
    rooms
}

/// The items of an issue by room and selection; of two the first.
fn by_item(issue: &Issue) -> BTreeMap<(&str, &str), &IssuedItem> {
    issue.items.iter().rev().map(|item| ((item.room.as_str(), item.item.as_str()), item)).collect()
}
