//! The page of a trade's sheet in a room, and the ways to it.

use std::collections::BTreeSet;

use crate::book::{Room, Selection, System};
use crate::finding::Family;
use crate::language::say;
use crate::site::plan::Plan;
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::figures;
use crate::views::shared::html::{Html, show};
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Crumb, Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::trades::sheets::built::Built;
use crate::views::trades::sheets::worded::{ItemBlock, ReadyLine, TableBlock};
use crate::views::trades::sheets::{electrician, fabricator, joiner, plumber, setter};
use crate::vocabulary::Trade;
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
    /// Whoever cuts counters.
    Fabricator,
    /// Whoever makes cabinets and panels.
    Joiner,
    /// Whoever lays tile and floors.
    Setter,
    /// Whoever brings power and light.
    Electrician,
    /// Whoever brings water and gas, and takes waste away.
    Plumber,
}

impl Builders {
    /// All of them, in the order in which a room lists them.
    pub const ALL: [Self; 5] = [Self::Fabricator, Self::Joiner, Self::Setter, Self::Electrician, Self::Plumber];

    /// The name of the page, and of its words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Fabricator => "fabricator",
            Self::Joiner => "joiner",
            Self::Setter => "setter",
            Self::Electrician => "electrician",
            Self::Plumber => "plumber",
        }
    }

    /// What stands behind the room's letter in the sheet's number.
    fn letters(self) -> &'static str {
        match self {
            Self::Fabricator => "CT",
            Self::Joiner => "JN",
            Self::Setter => "TL",
            Self::Electrician => "EL",
            Self::Plumber => "PL",
        }
    }

    /// Those who have something to build in a room: what its plan says makes nothing of nothing.
    pub fn of_room(room: &Room) -> impl Iterator<Item = Self> {
        let at = InRoom { room, plan: None, units: System::default() };
        Self::ALL.into_iter().filter(move |trade| !trade.builds(at).is_empty())
    }

    /// Whose things stand in a schedule.
    pub fn of_trade(trade: Trade) -> &'static [Self] {
        match trade {
            Trade::Finish => &[Self::Fabricator, Self::Joiner],
            Trade::Tile => &[Self::Setter],
            Trade::Lighting => &[Self::Electrician],
            Trade::Plumbing => &[Self::Plumber],
            Trade::Appliance | Trade::Hardware | Trade::Other => &[],
        }
    }

    /// Of which rules a trade is told; what can hurt is told of every one.
    fn families(self) -> &'static [Family] {
        match self {
            Self::Fabricator => &[Family::Top, Family::Fit, Family::Complete, Family::Clear],
            Self::Joiner => &[Family::Fit, Family::Run, Family::Store, Family::Finish, Family::Complete, Family::Clear],
            Self::Setter => &[Family::Finish, Family::Complete, Family::Fit],
            Self::Electrician => &[Family::Service, Family::Light, Family::Complete, Family::Clear],
            Self::Plumber => &[Family::Service, Family::Complete, Family::Clear],
        }
    }

    fn builds<'a>(self, at: InRoom<'a, '_>) -> Built<'a> {
        match self {
            Self::Fabricator => fabricator::builds(at),
            Self::Joiner => joiner::builds(at),
            Self::Setter => setter::builds(at),
            Self::Electrician => electrician::builds(at),
            Self::Plumber => plumber::builds(at),
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
    /// The book's units.
    pub units: System,
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
            sheet: self.with_code(self.revised(sheet, RevisionScope::Items(&items))),
            label: say!(self.words, "trades.label", whose = whose, room = room.title(), number = number),
            lead: show!(self.words, &format!("trades.lead.{}", trade.word())),
            facts: self.of_room_facts(room),
            cautions: self.cautions_for(room, trade, &built),
            ready: match trade {
                Builders::Fabricator => self.ready_for_counters(room, &built),
                _ => vec![],
            },
            drawings: match trade {
                Builders::Fabricator => self.layouts(room, &built),
                _ => vec![],
            },
            tables: built.tables.iter().map(|table| self.table_block(table)).collect(),
            items: built.items.iter().map(|item| self.item_block(room, item)).collect(),
        })
    }

    fn layouts(&self, room: &Room, built: &Built<'_>) -> Vec<Drawing> {
        built.items.iter().flat_map(|item| self.counter_layouts(room, item.selection)).collect()
    }

    fn builds<'r>(&'r self, room: &'r Room, trade: Builders) -> Built<'r> {
        let plan = self.plans.room(room).filter(|plan| plan.faults.is_empty() && !room.partly_unread);
        trade.builds(InRoom { room, plan, units: self.subject.book.project.units })
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

    /// What can hurt first, then what the review found that is this trade's, in one box.
    fn cautions_for(&self, room: &Room, trade: Builders, built: &Built<'_>) -> Vec<Notice> {
        let selections: Vec<&Selection> = built.items.iter().map(|item| item.selection).collect();
        let mut lines: Vec<Html> = Vec::new();
        let own = selections.iter().flat_map(|selection| self.cautions(room, selection));
        let told = self.told_of_things(room, &selections, trade.families());
        for line in own.chain(told.all()) {
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
        lines.push(show!(self.words, "installer_says.general"));
        vec![Notice { title: say!(self.words, "trades.cautions"), lines }]
    }
}
