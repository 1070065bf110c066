//! What a trade builds from, as typed values: a sheet words it, and its mark is of it.

use std::borrow::Cow;

use crate::book::{ProductOption, Room, Selection};
use crate::shown;
use crate::vocabulary::{Shown, ShownField, ShownGroup, ShownValue, Since};

use super::cells::text;

/// All that stands on a sheet and is built from.
#[derive(Debug, Default)]
pub struct Built<'a> {
    /// What concerns the room as a whole.
    pub tables: Vec<BuiltTable>,
    /// Each thing that is chosen, or is to be.
    pub items: Vec<BuiltItem<'a>>,
}

/// A table of values.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuiltTable {
    /// Its name among the words of `trades.tables`.
    pub key: &'static str,
    /// The run or thing that it is of, by its name in the book; empty where it is of all.
    pub of: String,
    /// Its columns among the words of `trades.fields`; the first names the row.
    pub columns: Vec<&'static str>,
    /// Its rows; a cell that is empty is not known yet.
    pub rows: Vec<Vec<ShownValue>>,
}

/// A thing that is chosen, or is to be.
#[derive(Debug)]
pub struct BuiltItem<'a> {
    /// What is chosen.
    pub selection: &'a Selection,
    /// What is known of it, or asked and not known yet.
    pub facts: Vec<BuiltFact>,
    /// What differs between the options that may still be chosen, by the names of its facts.
    pub open: Vec<&'static str>,
    /// Its parts.
    pub tables: Vec<BuiltTable>,
}

/// A fact with its name among the words of `trades.fields`, or of the book's fields.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuiltFact {
    /// The name.
    pub key: &'static str,
    /// Its value; empty where it is not known yet.
    pub value: ShownValue,
}

/// What a sheet asks of an option.
pub struct Asked {
    /// Its name.
    pub key: &'static str,
    /// Whether nobody can build without it: where it is not known that is said.
    pub must: bool,
    /// Where it stands.
    pub of: fn(&ProductOption) -> ShownValue,
}

/// What must be known.
pub const fn must(key: &'static str, of: fn(&ProductOption) -> ShownValue) -> Asked {
    Asked { key, must: true, of }
}

/// What is told where it is known.
pub const fn may(key: &'static str, of: fn(&ProductOption) -> ShownValue) -> Asked {
    Asked { key, must: false, of }
}

impl<'a> BuiltItem<'a> {
    /// A selection by what is asked of it: of several options only what they agree on.
    pub fn of<'q>(selection: &'a Selection, asked: impl IntoIterator<Item = &'q Asked>) -> Self {
        let (mut facts, mut open) = (Vec::new(), Vec::new());
        for asked in asked {
            let mut values = selection.standing().iter().map(|option| (asked.of)(option));
            let value = values.next().unwrap_or(ShownValue::Nothing);
            if values.any(|other| other != value) {
                open.push(asked.key);
            } else if asked.must || !value.is_empty() {
                facts.push(BuiltFact { key: asked.key, value });
            }
        }
        Self { selection, facts, open, tables: vec![] }
    }

    fn value(&self) -> ShownValue {
        let chosen = self.selection.settled().map(|option| option.id.value.clone());
        let facts = self.facts.iter().map(|fact| field(fact.key, fact.value.clone()));
        ShownValue::Group(vec![
            field("item", self.selection.id.shown()),
            field("chosen", chosen.shown()),
            field("facts", ShownValue::Group(facts.collect())),
            field("open", ShownValue::List(self.open.iter().map(|key| text(*key)).collect())),
            field("with it", with_it(self.selection)),
            field("tables", tables(&self.tables)),
        ])
    }
}

/// What is ordered with the options that may still stand, and what their sheets call for.
fn with_it(selection: &Selection) -> ShownValue {
    let of = |option: &ProductOption| {
        let names = option.accessories.iter().map(|with| with.name.shown()).chain([option.requires.shown()]);
        ShownValue::List(names.collect())
    };
    ShownValue::List(selection.standing().iter().map(of).collect())
}

impl Built<'_> {
    /// Whether there is nothing to build.
    pub fn is_empty(&self) -> bool {
        self.tables.iter().all(|table| table.rows.is_empty()) && self.items.is_empty()
    }

    /// The mark of what is built from, as sheets print it.
    pub fn mark(&self, room: &Room, sheet: &'static str) -> String {
        let items = self.items.iter().map(BuiltItem::value);
        let value = ShownValue::Group(vec![
            field("sheet", text(sheet)),
            field("room", room.folder.shown()),
            field("floor build-up", room.floor_build_up.shown()),
            field("tables", tables(&self.tables)),
            field("items", ShownValue::List(items.collect())),
        ]);
        shown::in_short(&shown::mark_of(&value))
    }
}

fn tables(tables: &[BuiltTable]) -> ShownValue {
    let row = |table: &BuiltTable, row: &Vec<ShownValue>| -> ShownValue {
        let cells = table.columns.iter().zip(row).map(|(column, cell)| field(*column, cell.clone()));
        ShownValue::Group(cells.collect::<ShownGroup>())
    };
    let one = |table: &BuiltTable| {
        let rows = table.rows.iter().map(|cells| row(table, cells)).collect();
        ShownValue::Group(vec![
            field("table", text(table.key)),
            field("of", table.of.shown()),
            field("rows", ShownValue::List(rows)),
        ])
    };
    ShownValue::List(tables.iter().map(one).collect())
}

fn field(key: impl Into<Cow<'static, str>>, value: ShownValue) -> ShownField {
    ShownField::new(key, Since::Second, value)
}
