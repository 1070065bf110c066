//! What a trade builds from in the words of its readers.

use crate::book::{Room, Selection};
use crate::language::{Words, say};
use crate::shown::trades::{BuiltItem, BuiltTable};
use crate::views::pages::PageBuilder;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines;
use crate::views::shared::sheet::Fact;
use crate::views::shared::state::State;
use crate::vocabulary::ShownValue;
use serde::Serialize;

/// A thing that is chosen, or is to be.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ItemBlock {
    /// Its anchor on the page.
    pub id: String,
    pub number: String,
    pub name: String,
    /// How far the decision has come.
    pub state: State,
    /// What is chosen, or that it is not, and what that leaves open.
    pub choice: Html,
    pub facts: Vec<Fact>,
    pub tables: Vec<TableBlock>,
    /// What is ordered with it, and what its maker's sheet calls for.
    pub with_it: Vec<Fact>,
}

/// A table of values.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TableBlock {
    pub id: String,
    pub name: String,
    /// The column of the rows' names, then the others.
    pub columns: Vec<String>,
    pub rows: Vec<RowBlock>,
}

/// A row of it.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RowBlock {
    pub name: Html,
    pub cells: Vec<Html>,
}

/// Something that must be on site, or set, before work begins.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ReadyLine {
    pub name: Html,
    /// What is known of it, or that nothing is.
    pub known: Html,
}

/// What a fact or a column is called.
fn named(words: Words, key: &str) -> String {
    let own = format!("trades.fields.{}", key.replace([' ', '-'], "_"));
    if words.has(&own) { say!(words, &own) } else { lines::named(words, key) }
}

impl PageBuilder<'_> {
    /// A value, or that it is not known yet.
    pub(super) fn known(&self, value: &ShownValue) -> Html {
        if value.is_empty() { self.not_known() } else { self.value(value) }
    }

    /// That something is not known yet.
    pub(super) fn not_known(&self) -> Html {
        show!(self.words, "trades.not_known").bold()
    }

    /// A table in words.
    pub(super) fn table_block(&self, table: &BuiltTable) -> TableBlock {
        let name = say!(self.words, &format!("trades.tables.{}", table.key));
        let row = |row: &Vec<ShownValue>| {
            let mut cells = row.iter().map(|cell| self.known(cell));
            RowBlock { name: cells.next().unwrap_or_default(), cells: cells.collect() }
        };
        TableBlock {
            id: table.key.to_string(),
            name: match table.of.as_str() {
                "" => name,
                of => say!(self.words, "trades.tables.of", name = name, of = of),
            },
            columns: table.columns.iter().map(|column| named(self.words, column)).collect(),
            rows: table.rows.iter().map(row).collect(),
        }
    }

    /// A thing in words.
    pub(super) fn item_block(&self, room: &Room, item: &BuiltItem<'_>) -> ItemBlock {
        let selection = item.selection;
        ItemBlock {
            id: format!("item-{}", selection.id),
            number: selection.tag.clone(),
            name: selection.name.value.clone(),
            state: self.decision(room, selection),
            choice: self.choice(item),
            facts: item
                .facts
                .iter()
                .map(|fact| Fact { name: named(self.words, fact.key), value: self.known(&fact.value) })
                .collect(),
            tables: item.tables.iter().map(|table| self.table_block(table)).collect(),
            with_it: self.ordered_with(selection),
        }
    }

    /// What is chosen; or what there is to choose from, and what waits for that.
    fn choice(&self, item: &BuiltItem<'_>) -> Html {
        if let Some(option) = item.selection.settled() {
            return show!(self.words, "trades.chosen", option = option.title());
        }
        let options: Vec<String> = item.selection.options.iter().map(|option| option.title()).collect();
        if options.is_empty() {
            return show!(self.words, "trades.nothing_chosen");
        }
        let told = show!(self.words, "trades.to_choose", options = self.words.series(&options));
        if item.open.is_empty() {
            return told;
        }
        let open: Vec<String> = item.open.iter().map(|key| named(self.words, key).to_lowercase()).collect();
        told.then(" ").then(show!(self.words, "trades.leaves_open", what = self.words.series(&open)))
    }

    /// What is ordered with a thing, and what its sheet calls for: of every option that may still stand.
    fn ordered_with(&self, selection: &Selection) -> Vec<Fact> {
        let is_open = selection.settled().is_none();
        let mut facts: Vec<Fact> = Vec::new();
        for option in selection.standing() {
            let with = option.accessories.iter().map(|with| match with.model.get() {
                Some(model) => format!("{} {model}", with.name.value),
                None => with.name.value.clone(),
            });
            let called: Vec<String> = option.requires.iter().map(|required| required.value.clone()).collect();
            let with: Vec<String> = with.collect();
            let told = [("trades.with_it", with), ("trades.sheet_calls_for", called)];
            for (key, names) in told.into_iter().filter(|(_, names)| !names.is_empty()) {
                let value = self.words.series(&names);
                let value = match is_open {
                    true => say!(self.words, "trades.if_chosen", option = option.title(), what = value),
                    false => value,
                };
                let fact = self.worded(key, value);
                if !facts.contains(&fact) {
                    facts.push(fact);
                }
            }
        }
        facts
    }
}
