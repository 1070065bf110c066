//! The page of a trade's sheet in a room, and the ways to it.

use crate::assess::rules;
use crate::book::{Room, Selection};
use crate::finding::{Code, Family};
use crate::language::say;
use crate::shown::trades::{Builders, Built, InRoom};
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::figures;
use crate::views::shared::found::{self, Hurts};
use crate::views::shared::html::{Html, show};
use crate::views::shared::sheet::{Crumb, Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::trades::cut_sheets::CutSheetLine;
use crate::views::trades::sheets::worded::{ItemBlock, ReadyLine, TableBlock};
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
    /// What can hurt here, in a line.
    pub notices: Vec<Notice>,
    /// What the review found that is this trade's to settle.
    pub to_settle: Vec<Notice>,
    /// What can hurt, in full words: at the end.
    pub cautions: Vec<Notice>,
    /// What must be on site and set before work begins.
    pub ready: Vec<ReadyLine>,
    pub drawings: Vec<Drawing>,
    pub tables: Vec<TableBlock>,
    pub items: Vec<ItemBlock>,
    /// The makers' own sheets that are worked by.
    pub cut_sheets: Vec<CutSheetLine>,
}

on_sheet!(TradePage);

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
        let of = (room.folder.as_str(), "", trade.word());
        let sheet = self.built_from(self.chrome.sheet(place, self.sheet_mark(of), Some(index), None), of);
        let heed = self.to_heed(room, trade, &built);
        let things: Vec<&Selection> = built.items.iter().map(|item| item.selection).collect();
        let whose = say!(self.words, &format!("trades.whose.{}", trade.word()));
        Some(TradePage {
            sheet: self.with_code(sheet),
            label: say!(self.words, "trades.label", whose = whose, room = room.title(), number = number),
            lead: show!(self.words, &format!("trades.lead.{}", trade.word())),
            facts: self.of_room_facts(room).into_iter().chain(self.approval_facts(room, &things)).collect(),
            notices: heed.notices,
            to_settle: heed.to_settle,
            cautions: heed.cautions,
            ready: match trade {
                Builders::Fabricator => self.ready_for_counters(room, &built),
                _ => vec![],
            },
            drawings: match trade {
                Builders::Fabricator => self.layouts(room, &built),
                _ => vec![],
            },
            tables: built.tables.iter().chain(&built.not_told).map(|table| self.table_block(table)).collect(),
            items: built.items.iter().map(|item| self.item_block(room, item)).collect(),
            cut_sheets: self.cut_sheets(built.by_sheet.iter().copied()),
        })
    }

    fn layouts(&self, room: &Room, built: &Built<'_>) -> Vec<Drawing> {
        built.items.iter().flat_map(|item| self.counter_layouts(room, item.selection)).collect()
    }

    fn builds<'r>(&'r self, room: &'r Room, trade: Builders) -> Built<'r> {
        trade.builds(InRoom::of(room, self.plans.room(room), self.subject.book.project.units))
    }

    fn trade_link(&self, room: &Room, trade: Builders) -> Link {
        let name = say!(self.words, &format!("trades.name.{}", trade.word()));
        Link {
            href: self.chrome.trade_path(room, trade.word()),
            name: say!(self.words, "trades.of_room", name = name, room = room.title()),
            number: Some(format!("{}-{}", room.letter, letters(trade))),
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

    /// What can hurt, and what the review found that is this trade's.
    fn to_heed(&self, room: &Room, trade: Builders, built: &Built<'_>) -> ToHeed {
        let selections: Vec<&Selection> = built.items.iter().map(|item| item.selection).collect();
        let told = self.told_of_things(room, &selections, |code| concerns(trade, code));
        let own: Vec<Hurts<'_>> = selections.iter().flat_map(|selection| self.hurts(room, selection)).collect();
        let all = own.into_iter().chain(told.hazards.iter().copied().map(Hurts::By));
        let (names, mut full) = found::in_short_and_in_full(self.words, all);
        let line = show!(self.words, "trades.heed", what = self.words.series(&names));
        full.push(show!(self.words, "installer_says.general"));
        let notice = |title: &str, lines: Vec<Html>| Notice { title: say!(self.words, title), lines };
        ToHeed {
            notices: if names.is_empty() { vec![] } else { vec![notice("trades.cautions", vec![line])] },
            to_settle: match told.lines.is_empty() {
                true => vec![],
                false => vec![notice("trades.to_settle", told.lines)],
            },
            cautions: vec![notice("trades.cautions", full)],
        }
    }
}

/// What is to be heeded on a trade's sheet.
struct ToHeed {
    notices: Vec<Notice>,
    to_settle: Vec<Notice>,
    cautions: Vec<Notice>,
}

/// What stands behind the room's letter in the sheet's number.
fn letters(trade: Builders) -> &'static str {
    match trade {
        Builders::Fabricator => "CT",
        Builders::Joiner => "JN",
        Builders::Setter => "TL",
        Builders::Electrician => "EL",
        Builders::Plumber => "PL",
    }
}

/// Whose things stand in a schedule.
pub fn of_trade(trade: Trade) -> &'static [Builders] {
    match trade {
        Trade::Finish => &[Builders::Fabricator, Builders::Joiner],
        Trade::Tile => &[Builders::Setter],
        Trade::Lighting => &[Builders::Electrician],
        Trade::Plumbing => &[Builders::Plumber],
        Trade::Appliance | Trade::Hardware | Trade::Other => &[],
    }
}

/// Whether a trade is told of a rule; what can hurt is told of every one.
fn concerns(trade: Builders, rule: Code) -> bool {
    match (trade, rule.family()) {
        (Builders::Electrician, Family::Service) => rules::OF_WIRES_AND_AIR.contains(&rule),
        (Builders::Plumber, Family::Service) => rules::OF_PIPES.contains(&rule),
        (_, family) => families(trade).contains(&family),
    }
}

/// Of which families of rules a trade is told besides services.
fn families(trade: Builders) -> &'static [Family] {
    match trade {
        Builders::Fabricator => &[Family::Top, Family::Fit, Family::Complete, Family::Clear],
        Builders::Joiner => &[Family::Fit, Family::Run, Family::Store, Family::Finish, Family::Complete, Family::Clear],
        Builders::Setter => &[Family::Finish, Family::Complete, Family::Fit],
        Builders::Electrician => &[Family::Light, Family::Complete, Family::Clear],
        Builders::Plumber => &[Family::Complete, Family::Clear],
    }
}
