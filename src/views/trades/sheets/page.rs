//! The page of a trade's sheet in a room, and the ways to it.

use std::collections::BTreeSet;

use crate::book::{Room, Selection};
use crate::language::say;
use crate::site::plan::Plan;
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::figures;
use crate::views::shared::html::{Html, show};
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Crumb, Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::trades::sheets::built::Built;
use crate::views::trades::sheets::setter;
use crate::views::trades::sheets::worded::{ItemBlock, ReadyLine, TableBlock};
use serde::Serialize;

/// `trades/<room>/<trade>.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TradePage {
    pub sheet: Sheet,
    /// Whose sheet, room and number, above the title.
    pub label: String,
    /// What to do with it.
    pub lead: Html,
    pub facts: Vec<Fact>,
    pub cautions: Vec<Notice>,
    /// What must be on site and set before work begins.
    pub ready: Vec<ReadyLine>,
    pub drawings: Vec<Drawing>,
    pub tables: Vec<TableBlock>,
    pub items: Vec<ItemBlock>,
}

on_sheet!(TradePage);

/// Those who have a sheet of a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Builders {
    /// Whoever lays tile and floors.
    Setter,
}

impl Builders {
    /// All of them, in the order in which a room lists them.
    pub const ALL: [Self; 1] = [Self::Setter];

    /// The name of the page, and of its words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Setter => "setter",
        }
    }

    /// What stands behind the room's letter in the sheet's number.
    fn letters(self) -> &'static str {
        match self {
            Self::Setter => "TL",
        }
    }

    fn builds<'a>(self, at: InRoom<'a, '_>) -> Built<'a> {
        match self {
            Self::Setter => setter::builds(at),
        }
    }
}

/// A room, where everything stands in it, and all that is known of the site.
#[derive(Clone, Copy)]
pub struct InRoom<'a, 'p> {
    /// The room.
    pub room: &'a Room,
    /// Its plan.
    pub plan: Option<&'p Plan<'a>>,
}

impl<'a> PageBuilder<'a> {
    /// The sheets of those who build in a room, where it has something for them.
    pub fn trade_sheets(&self, room: &Room) -> Vec<Link> {
        let here = Builders::ALL.into_iter().filter(|trade| !self.builds(room, *trade).is_empty());
        here.map(|trade| self.trade_link(room, trade)).collect()
    }

    /// A trade's sheet of a room; none where the room has nothing for it.
    pub fn trade_page(&self, room: &Room, trade: Builders) -> Option<TradePage> {
        let built = self.builds(room, trade);
        if built.is_empty() {
            return None;
        }
        let link = self.trade_link(room, trade);
        let place = SheetPlace {
            path: link.href,
            number: link.number.unwrap_or_default(),
            name: link.name,
            above: vec![self.chrome.first(), Crumb { name: room.title().into(), href: Some("index.html".into()) }],
        };
        let index =
            Link { href: "index.html".into(), name: say!(self.words, "pages.openings"), number: Some("F-00".into()) };
        let number = place.number.clone();
        let sheet = self.chrome.sheet(place, Some(built.mark(room, trade.word())), Some(index), None);
        let items: BTreeSet<(&str, &str)> =
            built.items.iter().map(|item| (room.folder.as_str(), item.selection.id.as_str())).collect();
        let whose = say!(self.words, &format!("trades.whose.{}", trade.word()));
        Some(TradePage {
            sheet: self.revised(sheet, RevisionScope::Items(&items)),
            label: say!(self.words, "trades.label", whose = whose, room = room.title(), number = number),
            lead: show!(self.words, &format!("trades.lead.{}", trade.word())),
            facts: self.of_room_facts(room),
            cautions: self.cautions_for(room, trade, &built),
            ready: vec![],
            drawings: vec![],
            tables: built.tables.iter().map(|table| self.table_block(table)).collect(),
            items: built.items.iter().map(|item| self.item_block(room, item)).collect(),
        })
    }

    fn builds<'r>(&'r self, room: &'r Room, trade: Builders) -> Built<'r> {
        trade.builds(InRoom { room, plan: self.plans.room(room) })
    }

    fn trade_link(&self, room: &Room, trade: Builders) -> Link {
        let name = say!(self.words, &format!("trades.name.{}", trade.word()));
        Link {
            href: self.chrome.trade_path(room, trade.word()),
            name: say!(self.words, "trades.of_room", name = name, room = room.title()),
            number: Some(format!("{}-{}", room.letter, trade.letters())),
        }
    }

    /// What holds for the whole room: its ceiling, its floor, who measured, whom to call.
    fn of_room_facts(&self, room: &Room) -> Vec<Fact> {
        let mut facts = Vec::new();
        facts.extend(room.ceiling.get().map(|ceiling| self.worded("trades.facts.ceiling", self.ceiling(ceiling))));
        let floor = match room.floor_build_up.get() {
            Some(to_lay) => {
                show!(self.words, "trades.facts.to_lay", depth = figures::length(self.wording, *to_lay))
            }
            None => show!(self.words, "trades.facts.floor"),
        };
        facts.push(self.worded("trades.facts.heights", floor));
        facts.extend(self.measured(room).map(|measured| self.worded("trades.facts.measured", measured)));
        let project = &self.subject.book.project;
        facts.extend(project.address.get().map(|address| self.worded("installer_says.address", address.as_str())));
        facts.extend(project.firm.phone.get().map(|phone| self.worded("installer_says.office", phone.as_str())));
        facts
    }

    /// What can hurt first, then what the review found, in one box.
    fn cautions_for(&self, room: &Room, _trade: Builders, built: &Built<'_>) -> Vec<Notice> {
        let selections: Vec<&Selection> = built.items.iter().map(|item| item.selection).collect();
        let mut lines: Vec<Html> = Vec::new();
        let own = selections.iter().flat_map(|selection| self.cautions(room, selection));
        for line in own.chain(self.told_of_things(room, &selections).all()) {
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
        lines.push(show!(self.words, "installer_says.general"));
        vec![Notice { title: say!(self.words, "trades.cautions"), lines }]
    }
}
