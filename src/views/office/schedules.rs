//! The office's schedules: finish, appliance, plumbing, lighting, hardware, tile.

use crate::assess::Amounts;
use crate::book::{ProductOption, Room, Selection};
use crate::views::office::tables::{Cell, Column, SchedulePage, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::figures::{count, money};
use crate::views::shared::html::Html;
use crate::views::shared::lines::fact;
use crate::views::shared::revisions::RevisionScope;
use crate::vocabulary::Trade;

/// The schedules, in order.
pub const TITLES: [Title; 7] = [
    Title {
        trade: Trade::Finish,
        name: "Finish schedule",
        number: "Q-01",
        columns: &["Finish", "Colour", "Thickness", "Pattern"],
    },
    Title {
        trade: Trade::Appliance,
        name: "Appliance schedule",
        number: "Q-02",
        columns: &["Width", "Height", "Depth", "Hinge"],
    },
    Title {
        trade: Trade::Plumbing,
        name: "Plumbing fixture schedule",
        number: "Q-03",
        columns: &["Finish", "Mount", "Holes", "Rough-in", "Drain"],
    },
    Title {
        trade: Trade::Lighting,
        name: "Lighting schedule",
        number: "Q-04",
        columns: &["Finish", "Lamp", "Colour of light, K", "Dimming"],
    },
    Title {
        trade: Trade::Hardware,
        name: "Hardware schedule",
        number: "Q-05",
        columns: &["Finish", "Centre to centre", "Projection"],
    },
    Title {
        trade: Trade::Tile,
        name: "Tile schedule",
        number: "Q-06",
        columns: &["Face size", "Thickness", "Joint", "Grout", "Pattern", "Edge trim"],
    },
    Title { trade: Trade::Other, name: "Other items", number: "Q-12", columns: &["Finish"] },
];

/// A schedule's names.
pub struct Title {
    /// Its trade.
    pub trade: Trade,
    /// Its name.
    pub name: &'static str,
    /// Its sheet number.
    pub number: &'static str,
    /// Facts of the option, by their labels, that have a column of their own.
    pub columns: &'static [&'static str],
}

impl PageBuilder<'_> {
    /// Every schedule.
    pub fn schedules(&self) -> Vec<SchedulePage> {
        TITLES.iter().map(|title| self.schedule(title)).collect()
    }

    fn schedule(&self, title: &Title) -> SchedulePage {
        let (place, from, onward) = self.office_place(title.number);
        let of_trade = |selection: &Selection| selection.kind.get().is_some_and(|kind| kind.trade() == title.trade);
        let chosen: Vec<(&Room, &Selection)> =
            self.subject.book.selections().filter(|(_, selection)| of_trade(selection)).collect();
        let open = chosen.iter().filter(|(_, selection)| selection.settled().is_none()).count();
        let lead = match (chosen.len(), open) {
            (0, _) => "Nothing of this kind is in the book.".into(),
            (all, 0) => format!("{}, every one settled.", count(all, "selection", "selections")),
            (all, open) => format!("{}, {open} still to be chosen.", count(all, "selection", "selections")),
        };
        let mut names = vec!["Item", "Room", "Maker and model"];
        names.extend(title.columns);
        names.extend(["Quantity", "Order by", "Price", "Cost", "Margin"]);
        let figures = ["Price", "Cost", "Margin"];
        let columns =
            names.iter().map(|name| Column { name: (*name).into(), figures: figures.contains(name) }).collect();
        let rows = chosen.iter().flat_map(|(room, selection)| {
            selection.standing().iter().map(|option| self.row(title, room, selection, option)).collect::<Vec<_>>()
        });
        let listed = chosen.iter().map(|(room, selection)| (room.folder.as_str(), selection.id.as_str())).collect();
        SchedulePage {
            sheet: self.revised(self.chrome.sheet(place, None, from, onward), RevisionScope::Items(&listed)),
            lead: Html::text(&lead),
            facts: vec![fact("Prices", self.terms())],
            drawings: vec![],
            tables: vec![Table {
                name: title.name.into(),
                scope: Some("By room and number; while an item is open, each of its options has a row".into()),
                columns,
                rows: rows.collect(),
                totals: vec![],
            }],
            notices: vec![],
        }
    }

    fn row(&self, title: &Title, room: &Room, selection: &Selection, option: &ProductOption) -> Vec<Cell> {
        let facts = self.description(option);
        let open = selection.settled().is_none();
        let name = if open {
            format!("{}, option {}", selection.name.value, option.title())
        } else {
            selection.name.value.clone()
        };
        let mut notes: Vec<Html> = Vec::new();
        notes.extend(selection.private.get().map(|private| Html::text(private)));
        let noted = option.note.get().into_iter().chain(option.fit.get().and_then(|fit| fit.note.get()));
        notes.extend(noted.map(|note| Html::text(note)));
        let item = Cell {
            text: Html::text(&format!("{} {name}", selection.tag)),
            note: notes.into_iter().reduce(|one, next| one.then(" ").then(next)),
            ..Cell::default()
        };
        let product = [option.maker.text(), option.model.text()]
            .into_iter()
            .filter(|word| !word.is_empty())
            .collect::<Vec<_>>()
            .join(" ");
        let supplier = option.supplier.get().map(|supplier| Html::text(&format!("from {supplier}")));
        let mut row: Vec<Cell> = vec![item, room.title().into(), Cell { note: supplier, ..dashed(&product) }];
        for column in title.columns {
            let found = facts.iter().find(|fact| fact.name == *column);
            row.push(found.map_or_else(|| "–".into(), |fact| fact.value.clone().into()));
        }
        let order = self.subject.assessment.dates.order_by(selection, option).and_then(|order| order.order);
        let (price, cost) = (Amounts::price(option), Amounts::cost(option));
        let margin = price.zip(cost).and_then(|(price, cost)| price.checked_sub(cost).ok());
        row.push(dashed(&self.quantity(option).unwrap_or_default()));
        let lead = option.lead_time.get().map(|lead| Html::text(&format!("takes {lead}")));
        row.push(Cell { note: lead, ..dashed(&figures::day(self.words, order)) });
        row.extend([price, cost, margin].map(|amount| money(self.wording, amount).into()));
        row
    }
}

/// Words, or a dash for none.
pub fn dashed(words: &str) -> Cell {
    if words.is_empty() { "–".into() } else { words.into() }
}
