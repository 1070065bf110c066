//! What a trade builds from, as typed values: a sheet words it, and its mark is of it.

use std::borrow::Cow;

use crate::book::{Accessory, Ceiling, ProductOption, Room, Selection};
use crate::vocabulary::{Shown, ShownField, ShownGroup, ShownValue, Since};

use super::Builders;
use super::cells::text;
use crate::shown::changes::KNOWN_BY;
use crate::shown::content::{laid_out, layouts};

/// All that stands on a sheet and is built from.
#[derive(Debug, Default)]
pub struct Built<'a> {
    /// What concerns the room as a whole.
    pub tables: Vec<BuiltTable>,
    /// What stands on the sheet besides, to say that nobody knows it yet: nothing is built from it, and it is in no
    /// mark.
    pub not_told: Vec<BuiltTable>,
    /// Each thing that is chosen, or is to be.
    pub items: Vec<BuiltItem<'a>>,
    /// The things whose makers' own sheets are worked by, as far as such a sheet is attached to them.
    pub by_sheet: Vec<&'a Selection>,
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

    fn value(&self) -> ShownGroup {
        let chosen = self.selection.settled().map(|option| option.id.value.clone());
        let facts = self.facts.iter().map(|fact| field(fact.key, fact.value.clone()));
        vec![
            field(KNOWN_BY, self.selection.id.shown()),
            field("name", self.selection.name.shown()),
            field("chosen", chosen.shown()),
            field("facts", ShownValue::Group(facts.collect())),
            field("open", ShownValue::List(self.open.iter().map(|key| text(*key)).collect())),
            field("with it", with_it(self.selection)),
            field("choice", choice(self.selection)),
            field("models", models(self.selection)),
            field("tables", tables(&self.tables)),
        ]
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

/// What the chosen option is called; while none is, what each is called that may be.
fn choice(selection: &Selection) -> ShownValue {
    let titles = |options: &[ProductOption]| options.iter().map(|option| text(option.title())).collect();
    ShownValue::List(selection.settled().map_or_else(|| titles(&selection.options), |one| vec![text(one.title())]))
}

/// What is ordered with the options that may still stand and has a model of its own, with that.
fn models(selection: &Selection) -> ShownValue {
    let with = selection.standing().iter().flat_map(|option| &option.accessories);
    let named = |with: &Accessory| Some(text(format!("{} {}", with.name.value, with.model.get()?)));
    ShownValue::List(with.filter_map(named).collect())
}

impl Built<'_> {
    /// Whether there is nothing to build.
    pub fn is_empty(&self) -> bool {
        self.tables.iter().all(|table| table.rows.is_empty()) && self.items.is_empty()
    }

    /// All that is built from, as its mark is taken of it; of a counter with the layout that its sheet draws.
    pub(super) fn value(&self, room: &Room, trade: Builders) -> ShownGroup {
        let items = self.items.iter().map(|item| {
            let mut fields = item.value();
            if trade == Builders::Fabricator {
                fields.push(field("layout", laid_out(layouts(room, item.selection))));
            }
            ShownValue::Group(fields)
        });
        vec![
            field("sheet", text(trade.word())),
            field("room", room.folder.shown()),
            field("ceiling", ceiling(room)),
            field("floor build-up", room.floor_build_up.shown()),
            field("tables", tables(&self.tables)),
            field("items", ShownValue::List(items.collect())),
            field("cut sheets", ShownValue::List(self.by_sheet.iter().flat_map(|one| cut_sheets(one)).collect())),
        ]
    }
}

/// The makers' own sheets that are attached to what may still be chosen.
fn cut_sheets(selection: &Selection) -> Vec<ShownValue> {
    let sheet = |option: &ProductOption| {
        let sheet = option.cut_sheet.get()?;
        let fields = vec![
            field(KNOWN_BY, text(format!("{}/{}", selection.id, option.id.value))),
            field("name", text(format!("{} ({})", selection.name.value, option.title()))),
            field("cut sheet", sheet.shown()),
        ];
        Some(ShownValue::Group(fields))
    };
    selection.standing().iter().filter_map(sheet).collect()
}

/// The ceiling of a room: its height, or where it slopes the least and the greatest.
pub fn ceiling(room: &Room) -> ShownValue {
    match room.ceiling.get() {
        None => ShownValue::Nothing,
        Some(Ceiling::Level(height)) => height.shown(),
        Some(Ceiling::Sloped { low, high, .. }) => ShownValue::Sides(vec![*low, *high]),
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
            field(KNOWN_BY, text(format!("{} {}", table.key, table.of))),
            field("name", text(table.key)),
            field("of", table.of.shown()),
            field("rows", ShownValue::List(rows)),
        ])
    };
    ShownValue::List(tables.iter().map(one).collect())
}

fn field(key: impl Into<Cow<'static, str>>, value: ShownValue) -> ShownField {
    ShownField::new(key, Since::Second, value)
}
