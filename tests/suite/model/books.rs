//! The books that histories are of: every state that their items and rules can be in, read once.

use std::collections::BTreeMap;

use bookmatch::book::{Approval, Approver, Book, Prices, Record};
use bookmatch::ledger::{IssuedItem, Named, Terms, WhoMust};
use bookmatch::read::read;
use bookmatch::shown::{self, Versions};
use bookmatch::source::Folder;
use bookmatch::vocabulary::Version;
use serde_json::{Value, json};

use super::history::History;

/// What is written of the range: open, with one chosen, with the other; each at two prices.
const RANGES: [&str; 6] = [
    "options: [{id: steel, price: 900.00}, {id: black, price: 950.00}]",
    "options: [{id: steel, price: 900.00}, {id: black, price: 950.00}]\nchosen: steel",
    "options: [{id: steel, price: 900.00}, {id: black, price: 950.00}]\nchosen: black",
    "options: [{id: steel, price: 920.00}, {id: black, price: 950.00}]",
    "options: [{id: steel, price: 920.00}, {id: black, price: 950.00}]\nchosen: steel",
    "options: [{id: steel, price: 920.00}, {id: black, price: 950.00}]\nchosen: black",
];
/// What is written of the rug: nothing at all, two finishes, and what the first and the second version have no field for.
const RUGS: [&str; 5] =
    ["", "finish: wool", "finish: jute", "finish: wool\nincludes: [underlay]", "finish: wool\nnature: natural stone"];
/// Who decides.
const APPROVERS: [&str; 6] = [
    "[{id: ada, name: Ada Marrowby}, {id: sven, name: Sven Lint}]",
    "[{id: ada, name: Ada Marrowby}]",
    "[{id: sven, name: Sven Lint}, {id: ada, name: Ada Marrowby}, {id: teo, name: Teo Varrick}]",
    "[{id: ada, name: Ada Quill}, {id: sven, name: Sven Lint}]",
    "[{id: sven, name: Sven Lint}]",
    "[{id: ada, name: Ada Marrowby}, {id: teo, name: Teo Varrick}]",
];

/// How a book stands: what is written of its items, and its rules.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stand {
    /// Of `RANGES`.
    pub range: usize,
    /// Of `RUGS`.
    pub rug: usize,
    /// Of `APPROVERS`.
    pub approvers: usize,
    /// Any one of them may approve.
    pub any: bool,
    /// Tax is in every price.
    pub with_tax: bool,
}

impl Stand {
    /// How many states of each there are.
    pub const COUNTS: (usize, usize, usize) = (RANGES.len(), RUGS.len(), APPROVERS.len());
}

/// The range, the rug, whether tax is in prices, the version of the content, and the oldest that counts besides.
type Frozen = (usize, usize, bool, Version, Version);

/// Every book.
pub struct Books {
    books: Vec<Book>,
    approvers: Vec<Vec<Approver>>,
    items: BTreeMap<Frozen, Vec<IssuedItem>>,
}

impl Books {
    /// Reads them all.
    pub fn read() -> Self {
        let pairs = (0..RANGES.len()).flat_map(|range| (0..RUGS.len()).map(move |rug| (range, rug)));
        let approvers: Vec<Vec<Approver>> =
            APPROVERS.iter().map(|approvers| book(RANGES[0], "", approvers).project.approvers).collect();
        let mut all = Self { books: vec![], approvers, items: BTreeMap::new() };
        for (range, rug) in pairs {
            let mut read = book(RANGES[range], RUGS[rug], APPROVERS[0]);
            for with_tax in [false, true] {
                read.project.prices = prices(with_tax);
                for (version, oldest) in versions() {
                    all.items.insert((range, rug, with_tax, version, oldest), frozen(&read, version, oldest));
                }
            }
            all.books.push(read);
        }
        all
    }

    /// The items of a book as an issue of that version holds them, where the record has issues of an older one.
    pub fn items(&self, stand: &Stand, version: Version, oldest: Version) -> &[IssuedItem] {
        &self.items[&(stand.range, stand.rug, stand.with_tax, version, oldest.min(version))]
    }

    /// Who decides.
    pub fn terms(&self, stand: &Stand) -> Terms {
        let named = |one: &Approver| Named { id: one.id.value.clone(), name: one.name.clone() };
        Terms {
            approval: if stand.any { WhoMust::Any } else { WhoMust::All },
            approvers: self.approvers[stand.approvers].iter().map(named).collect(),
            tax_in_prices: stand.with_tax,
        }
    }

    /// The book as a history leaves it, with its record.
    pub fn as_it_stands(&mut self, history: &History) -> &Book {
        let Stand { range, rug, approvers, any, with_tax } = history.stand;
        let book = &mut self.books[range * RUGS.len() + rug];
        book.project.approvers.clone_from(&self.approvers[approvers]);
        book.project.approval = if any { Approval::Any } else { Approval::All };
        book.project.prices = prices(with_tax);
        book.record = Record {
            lines: history.lines.clone(),
            issues: history.issues.iter().map(|issue| (issue.number, issue.clone())).collect(),
            heads: history.heads(),
            ..Record::default()
        };
        book
    }

    /// All that any item is ever shown as, by its mark.
    pub fn contents(&self) -> Value {
        let items = self.items.values().flatten();
        let contents: serde_json::Map<String, Value> =
            items.map(|item| (item.mark.to_string(), item.content.clone())).collect();
        json!({ "contents": contents })
    }
}

fn prices(with_tax: bool) -> Prices {
    if with_tax { Prices::WithTax } else { Prices::BeforeTax }
}

fn book(range: &str, rug: &str, approvers: &str) -> Book {
    let project =
        format!("title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\ntax: 8 %\napprovers: {approvers}\n");
    let mut files = vec![
        ("book.yaml", project),
        ("rooms/kitchen/room.yaml", "name: Kitchen\n".to_string()),
        ("rooms/kitchen/range.yaml", format!("selection: Range\nkind: range\n{range}\n")),
    ];
    if !rug.is_empty() {
        files.push(("rooms/kitchen/rug.yaml", format!("selection: Rug\nkind: rug\n{rug}\n")));
    }
    read(&Folder::in_memory(files)).expect("the book can be read").book
}

/// Each version with each that is no newer.
fn versions() -> impl Iterator<Item = (Version, Version)> {
    let all = Version::ALL.into_iter();
    all.flat_map(|version| {
        Version::ALL.into_iter().filter(move |oldest| *oldest <= version).map(move |old| (version, old))
    })
}

/// Its items as an issue holds them: a release knows no version that came after it.
fn frozen(book: &Book, version: Version, oldest: Version) -> Vec<IssuedItem> {
    let items = shown::under(book, Versions { asked: version, oldest }, &|_| None).into_iter();
    let older: Vec<Version> = Version::ALL.into_iter().filter(|other| *other < version).collect();
    let frozen = items.map(|((room, item), marked)| IssuedItem {
        room: room.into(),
        item: item.into(),
        tag: if item == "range" { "K-01".into() } else { "K-02".into() },
        name: item.into(),
        mark: marked.mark,
        also: {
            let marks: Vec<_> = older.iter().map(|older| shown::of(&marked.shown.content(*older))).collect();
            marked.also.into_iter().filter(|mark| marks.contains(mark)).collect()
        },
        content: marked.content,
        price: None,
        lead_time: None,
        order_by: None,
        supplier: None,
    });
    frozen.collect()
}
