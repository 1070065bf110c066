//! The change order between two issues, as a sheet to sign: what is shown otherwise, and who signs for it.
//!
//! Every string is worded and formatted for the reader, as on a sign-off sheet.

use std::collections::BTreeMap;

use crate::assess::approval::{TermsChange, Withdrawn};
use crate::assess::transmittals::{self, Holder};
use crate::assess::{
    Asked, BuiltOtherwise, ChangeOrder as Order, Changed, Fate, Look, Moved, Reason, Reopened, Signing, Sort,
};
use crate::book::{Book, Prices, Room as BookRoom, Selection};
use crate::digest::Digest;
use crate::language::{Words, say};
use crate::ledger::{Issue, IssuedItem, WhoMust};
use crate::shown::{self, SheetOf};
use crate::units::Money;
use crate::views::client::sign::who_signs;
use crate::views::paper::changed_item::{ChangeLine, ChangedItem, change, difference, fate_key, item, shift};
use crate::views::paper::changed_term::term;
use crate::views::paper::parts;
use crate::views::paper::sign_off::{
    LabelledLine, PaperSize, ProjectTitle, SheetPart, SheetSigner, SheetTitle, approvers, paper_of, project_of,
};
use crate::views::shared::lines::{field, withdrawn as gone_in_words};
use crate::views::shared::sheet::purpose_key;
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
    /// What rests on something that changed, the earliest order first.
    pub opens_again: Vec<OpenedItem>,
    /// What rests on something that changed, and was looked at: it stays.
    pub unchanged: Vec<OpenedItem>,
    /// The openings that are to be built from another sheet than before.
    pub sheets: Vec<ChangedSheet>,
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

/// An item that stands as before, and rests on one that changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OpenedItem {
    /// The item's number on every sheet.
    pub tag: String,
    /// What it is called.
    pub name: String,
    /// Why it rests on the other, as the words of the sheets have it.
    pub because: &'static str,
    /// What it rests on.
    pub on: String,
    /// The last day to order it; empty where it has none.
    pub by: String,
}

/// An opening that is to be built from another sheet than before.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChangedSheet {
    /// The opening.
    pub name: String,
    /// Its room.
    pub room: String,
    /// What became of it: `changed`, `new`, `gone`.
    pub fate: String,
    /// What of it is another: `width, service points`.
    pub what: String,
}

/// The issues that are compared, the earlier one first; number 0 is the book as it stands.
type Issues<'a> = (&'a Issue, &'a Issue);

/// The change order between two issues of a book: one sheet, or its parts where it has very many items.
pub fn change_order(words: Words, order: &Order, issues: Issues<'_>, book: &Book) -> Vec<ChangeOrder> {
    parts::of_change_order(whole(words, order, issues, book))
}

fn whole(words: Words, order: &Order, (from, to): Issues<'_>, book: &Book) -> ChangeOrder {
    let draft = from.number == 0 || to.number == 0;
    let signing = order.signing((from, to), book);
    let asks = matches!(signing, Signing::By(..));
    let number = |issue: &Issue| match issue.number {
        0 => say!(words, "changes.now"),
        number => number.to_string(),
    };
    let (again, unchanged): (Vec<_>, Vec<_>) =
        order.reopened((from, to), book).into_iter().partition(|one| one.look == Look::OpensAgain);
    ChangeOrder {
        language: words.tag().to_owned(),
        paper: paper_of(book),
        draft,
        project: project_of(book),
        sheet: SheetTitle {
            code: format!("C-{:02}", to.number),
            title: say!(words, "changes.title"),
            scope: say!(words, "changes.scope", from = edition(words, from), to = edition(words, to)),
            mark: mark_of(to),
        },
        issue: say!(words, "units.range", least = number(from), most = number(to)),
        delta: if to.number == 0 { String::new() } else { number(to) },
        date: words.day(to.on),
        statement: statement(words, from, asks, draft),
        facts: facts((words, book), order, (from, to), &signing)
            .into_iter()
            .chain(withdrawn(words, order, book))
            .chain(holding_older(words, to, book))
            .collect(),
        rooms: rooms(words, order, (from, to), book),
        opens_again: again.into_iter().map(|one| opened(words, one)).collect(),
        unchanged: unchanged.into_iter().map(|one| opened(words, one)).collect(),
        sheets: order.built.iter().flatten().map(|sheet| changed_sheet(words, sheet, book)).collect(),
        totals: totals(words, order, book.project.prices),
        approvers: if asks { approvers(book) } else { vec![] },
        rule: if asks { who_signs(words, book) } else { say!(words, "changes.nobody_signs") },
        part: None,
    }
}

fn opened(words: Words, one: Reopened) -> OpenedItem {
    let because = match one.because {
        Reason::Named => "named",
        Reason::Houses => "houses",
        Reason::CutFor => "cut_for",
        Reason::StandsOn => "stands_on",
        Reason::TrimOf => "trim_of",
        Reason::MeasuredOn => "measured_on",
    };
    let by = one.order_by.map_or_else(String::new, |day| words.day(day));
    OpenedItem { tag: one.tag, name: one.name, because, on: one.on, by }
}

fn changed_sheet(words: Words, sheet: &BuiltOtherwise, book: &Book) -> ChangedSheet {
    let fields: Vec<String> = sheet.fields.iter().map(|key| field(words, key).to_lowercase()).collect();
    ChangedSheet {
        name: match &sheet.of {
            SheetOf::Opening(name) => name.clone(),
            SheetOf::Trade(trade) => say!(words, &format!("trades.whose.{}", trade.word())),
            SheetOf::Plan => say!(words, "drawn.plan.name"),
        },
        room: book.room(&sheet.room).map_or(sheet.room.as_str(), |room| room.title()).into(),
        fate: say!(words, fate_key(sheet.fate)),
        what: words.series(&fields),
    }
}

fn edition(words: Words, issue: &Issue) -> String {
    match issue.number {
        0 => say!(words, "changes.as_it_stands"),
        number => say!(words, "changes.issue", n = number.to_string()),
    }
}

/// The mark of the whole book as an issue shows it, as its sign-off sheet bears it.
fn mark_of(issue: &Issue) -> String {
    let in_order: BTreeMap<(&str, &str), Digest> =
        issue.items.iter().map(|item| ((item.room.as_str(), item.item.as_str()), item.mark)).collect();
    shown::in_short(&shown::of_all(in_order.values()))
}

fn statement(words: Words, from: &Issue, asks: bool, draft: bool) -> String {
    let rest = say!(words, "changes.rest", edition = edition(words, from));
    let key = match (draft, asks) {
        (true, _) => "changes.statement.draft",
        (false, true) => "changes.statement.asks",
        (false, false) => "changes.statement.nothing",
    };
    say!(words, key, rest = rest)
}

fn facts(
    (words, book): (Words, &Book),
    order: &Order,
    (from, to): Issues<'_>,
    signing: &Signing<'_>,
) -> Vec<LabelledLine> {
    let line = |key: &str, value: String| LabelledLine { label: say!(words, key), value };
    let named = |issue: &Issue| match issue.number {
        0 => say!(words, "changes.as_of", day = issue.on),
        number => {
            let purpose = say!(words, purpose_key(issue.purpose));
            say!(words, "issued.as", issue = number, purpose = purpose, day = issue.on)
        }
    };
    let mut facts = vec![
        line("changes.from_issue", named(from)),
        line("changes.to_issue", named(to)),
        line("sign.items", tally(words, order)),
    ];
    let money = order.settled.and_then(|sum| Some(difference(words, sum.by()?)));
    facts.extend(money.map(|told| line("changes.money", say!(words, taxed_key(book.project.prices), what = told))));
    facts.extend(days(words, order).map(|told| line("changes.days", told)));
    let signers = match signing {
        Signing::Nobody | Signing::NotIssued => say!(words, "changes.nobody_needs_to"),
        Signing::By(_, names) => signers(words, names, book),
    };
    facts.push(line("sign_says.who", signers));
    let terms: Vec<String> = order.who.iter().map(|change| terms_change(words, change)).collect();
    facts.extend((!terms.is_empty()).then(|| line("changes.who.title", terms.join("; "))));
    let taken = &order.taken;
    facts.extend(taken.because.as_ref().map(|because| {
        let things = words.series(&taken.things);
        line("changes.taken", say!(words, "changes.taken_because", things = things, because = because))
    }));
    let since = &taken.approved_since;
    facts.extend((!since.is_empty()).then(|| line("changes.approved_since", words.series(since))));
    facts
}

/// What is withdrawn that somebody had approved: whoever signs agrees to that.
fn withdrawn(words: Words, order: &Order, book: &Book) -> Vec<LabelledLine> {
    let line =
        |gone: Withdrawn| LabelledLine { label: say!(words, "changes.withdrawn"), value: gone_in_words(words, &gone) };
    order.withdrawn(book).into_iter().map(line).collect()
}

fn terms_change(words: Words, change: &TermsChange) -> String {
    match change {
        TermsChange::Prices(_, Prices::WithTax) => say!(words, "changes.who.with_tax"),
        TermsChange::Prices(_, Prices::BeforeTax) => say!(words, "changes.who.before_tax"),
        TermsChange::Rule(_, WhoMust::All) => say!(words, "changes.who.all"),
        TermsChange::Rule(_, WhoMust::Any) => say!(words, "changes.who.any"),
        TermsChange::NoLonger(name) | TermsChange::Signed(name) => say!(words, "changes.who.no_longer", name = name),
        TermsChange::Too(name) => say!(words, "changes.who.too", name = name),
        TermsChange::Another(_, then, now) => say!(words, "changes.who.another", name = now, other = then),
    }
}

/// Who was sent an older issue, and is not known to hold the later one.
fn holding_older(words: Words, to: &Issue, book: &Book) -> Option<LabelledLine> {
    let holders = transmittals::holding_older(&book.record, to.number, to.purpose);
    let names: Vec<String> = holders.iter().map(Holder::named).collect();
    let value = words.series(&names);
    (!names.is_empty()).then(|| LabelledLine { label: say!(words, "changes.holding_older"), value })
}

/// Approvers by name, with how many of them must sign.
fn signers(words: Words, names: &[&str], book: &Book) -> String {
    let names: Vec<String> = names.iter().map(ToString::to_string).collect();
    let rule = who_signs(words, book);
    if names.len() < 2 { rule } else { format!("{}; {rule}", words.series(&names)) }
}

fn tally(words: Words, order: &Order) -> String {
    let of = |fate: Fate| order.items.iter().filter(|item| item.fate == fate).count();
    let told = [
        (Fate::Changed, "changes.tally.changed"),
        (Fate::Added, "changes.tally.new"),
        (Fate::Gone, "changes.tally.gone"),
        (Fate::Dated, "changes.tally.dated"),
    ];
    let told: Vec<String> =
        told.into_iter().filter(|(fate, _)| of(*fate) > 0).map(|(fate, key)| say!(words, key, n = of(fate))).collect();
    if told.is_empty() { say!(words, "changes.tally.none") } else { told.join(", ") }
}

/// By how much the last days to order move, the earliest and the latest.
pub(super) fn days(words: Words, order: &Order) -> Option<String> {
    let moved: Vec<i64> = order.items.iter().filter_map(Changed::days).collect();
    let sooner = moved.iter().filter(|days| **days < 0).min();
    let later = moved.iter().filter(|days| **days > 0).max();
    let told: Vec<String> = [sooner, later].into_iter().flatten().map(|days| shift(words, *days)).collect();
    let told: Vec<String> = told.iter().map(|days| say!(words, "changes.up_to", days = days)).collect();
    (!told.is_empty()).then(|| say!(words, "changes.orders", days = words.series(&told)))
}

/// What the items came to before, what each sort of change brings, then the sums before and after, which are
/// theirs: base and changes add up to the new sum.
fn totals(words: Words, order: &Order, prices: Prices) -> Vec<ChangeLine> {
    let (base_key, items_key) = match prices {
        Prices::BeforeTax => ("changes.base", "sign_says.items_before_tax"),
        Prices::WithTax => ("changes.base_with_tax", "sign_says.items_with_tax"),
    };
    let base = order.settled.filter(|_| !order.sums.is_empty());
    let base = base.map(|sum| change(say!(words, base_key), words.amount(sum.from), String::new()));
    let sorts = order.sums.iter().map(|(sort, sum)| ChangeLine {
        by: difference(words, *sum),
        ..change(say!(words, sort_key(*sort)), String::new(), String::new())
    });
    let sums = [(items_key, order.settled), ("changes.with_tax", order.with_tax)];
    let terms = order.terms.iter().map(|moved| term(words, moved));
    terms
        .chain(base)
        .chain(sorts)
        .chain(sums.into_iter().filter_map(|(key, sum)| Some(moved(words, key, sum?))))
        .collect()
}

/// The key of a sum with what it says of tax.
pub(super) fn taxed_key(prices: Prices) -> &'static str {
    match prices {
        Prices::BeforeTax => "paper_says.before_tax",
        Prices::WithTax => "paper_says.with_tax",
    }
}

/// The key of what a change of money comes from.
fn sort_key(sort: Sort) -> &'static str {
    match sort {
        Sort::Choice => "changes.sort.choice",
        Sort::Change => "changes.sort.change",
        Sort::New => "changes.sort.new",
        Sort::Withdrawn => "changes.sort.withdrawn",
    }
}

fn moved(words: Words, key: &str, sum: Moved<Money>) -> ChangeLine {
    let by = sum.by().map_or_else(String::new, |by| difference(words, by));
    ChangeLine { what: say!(words, key), from: words.amount(sum.from), to: words.amount(sum.to), by }
}

/// The rooms in the order in which their items stand in the change order.
fn rooms(words: Words, order: &Order, issues: Issues<'_>, book: &Book) -> Vec<ChangedRoom> {
    let (mut rooms, mut at): (Vec<ChangedRoom>, BTreeMap<&str, usize>) = (Vec::new(), BTreeMap::new());
    let issued = (by_item(issues.0), by_item(issues.1));
    let asked = Asked::between(&book.record, issues);
    let here: BTreeMap<(&str, &str), (&BookRoom, &Selection)> =
        book.selections().map(|(room, one)| ((room.folder.as_str(), one.id.as_str()), (room, one))).collect();
    // Who supplies a thing is the office's own.
    for changed in order.items.iter().filter(|changed| changed.fate != Fate::Supplied) {
        let key = (changed.room.as_str(), changed.item.as_str());
        let number = *at.entry(&changed.room).or_insert_with(|| {
            let name = book.room(&changed.room).map_or(changed.room.as_str(), |room| room.title());
            rooms.push(ChangedRoom { name: name.into(), items: vec![] });
            rooms.len() - 1
        });
        let (was, is) = (issued.0.get(&key).copied(), issued.1.get(&key).copied());
        let item = item((words, &asked), changed, (was, is), here.get(&key).copied());
        rooms.get_mut(number).into_iter().for_each(|room| room.items.push(item.clone()));
    }
    rooms
}

/// The items of an issue by room and selection; of two the first.
fn by_item(issue: &Issue) -> BTreeMap<(&str, &str), &IssuedItem> {
    issue.items.iter().rev().map(|item| ((item.room.as_str(), item.item.as_str()), item)).collect()
}
