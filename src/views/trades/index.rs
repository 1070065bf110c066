//! The installer's first page: every opening, room by room, verdict first.

use crate::assess::rules::Reader;
use crate::book::Room;
use crate::language::say;
use crate::site::plan::Plans;
use crate::units::Length;
use crate::views::pages::PageBuilder;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::figures;
use crate::views::shared::html::{Html, show};
use crate::views::shared::sheet::{Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::shared::state::State;
use crate::views::trades::cut_sheets::CutSheetLine;
use crate::views::trades::delivery::Load;
use crate::views::trades::opening::SheetOpening;
use serde::Serialize;

/// `index.html` of the installer's folder.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct InstallerIndex {
    pub sheet: Sheet,
    pub lead: Html,
    pub facts: Vec<Fact>,
    pub rooms: Vec<OpeningGroup>,
    pub deliveries: Vec<DeliveryLine>,
    /// Every maker's own sheet that is attached to something.
    pub cut_sheets: Vec<CutSheetLine>,
    pub notices: Vec<Notice>,
}

/// A room's openings, and what was found of it where it has none.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OpeningGroup {
    pub room: String,
    /// Ceiling, floor still to be laid, who measured.
    pub line: Option<Html>,
    pub openings: Vec<OpeningLine>,
    /// The sheets of those who build by rooms.
    pub sheets: Vec<Link>,
    /// The room's plan, with the openings by their numbers.
    pub drawings: Vec<Drawing>,
    /// What was found of the room as a whole, what can hurt first.
    pub found: Vec<Html>,
}

/// An opening in the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpeningLine {
    pub link: Link,
    pub verdict: State,
    /// The thing that goes in.
    pub thing: String,
    /// The governing size of the opening.
    pub size: Html,
    /// The tightest gap, or what is missing, in a phrase.
    pub gap: Option<Html>,
}

/// A delivery in the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DeliveryLine {
    pub link: Link,
    /// How many things it brings.
    pub brings: String,
}

on_sheet!(InstallerIndex);

impl<'a> PageBuilder<'a> {
    /// `index.html` of the installer's folder.
    pub fn installer_index(&self, plans: &Plans<'_>, all: &[SheetOpening<'_>], loads: &[Load<'_>]) -> InstallerIndex {
        let place = SheetPlace {
            path: "index.html".into(),
            number: "F-00".into(),
            name: say!(self.words, "pages.openings"),
            above: vec![],
        };
        let planned = all.iter().filter(|at| at.opening.is_as_planned()).count();
        let lead = match (all.len(), planned) {
            (0, _) => say!(self.words, "installer.none"),
            (all, 0) => say!(self.words, "installer_says.all_measured", n = all),
            (all, planned) => say!(self.words, "installer_says.planned", n = all, planned = planned),
        };
        // They stand in the order of the rooms.
        let mut rest = all;
        let mut here = |room: &Room| {
            let (here, after) = rest.split_at_checked(room.openings.len()).unwrap_or((rest, &[]));
            rest = after;
            here
        };
        let project = &self.subject.book.project;
        let mut facts = Vec::new();
        facts.extend(project.address.get().map(|address| self.worded("installer_says.address", address.as_str())));
        facts.extend(project.firm.phone.get().map(|phone| self.worded("installer_says.office", phone.as_str())));
        let onward = all.first().map(|at| self.opening_link(*at));
        let sheet = self.chrome.sheet(place, self.plans_mark(), None, onward);
        InstallerIndex {
            sheet: self.with_code(Sheet {
                revisions: self.plans_revisions(),
                marks_before: self.plans_marks_before(),
                ..sheet
            }),
            lead: Html::text(&lead),
            facts,
            rooms: self
                .subject
                .book
                .rooms
                .iter()
                .filter_map(|room| self.opening_group(plans, room, here(room)))
                .collect(),
            deliveries: self.delivery_lines(loads),
            cut_sheets: self.cut_sheets(self.subject.book.selections().map(|(_, selection)| selection)),
            notices: vec![Notice {
                title: say!(self.words, "installer.know"),
                lines: vec![show!(self.words, "installer_says.general")],
            }],
        }
    }

    fn opening_group(&self, plans: &Plans<'_>, room: &Room, here: &[SheetOpening<'_>]) -> Option<OpeningGroup> {
        let found = self.told_of_room(room, Reader::Installer).all();
        let (sheets, drawings) = (self.trade_sheets(room), self.room_drawings(plans, room));
        if here.is_empty() && found.is_empty() && sheets.is_empty() && drawings.is_empty() {
            return None;
        }
        let mut parts: Vec<Html> = Vec::new();
        parts.extend(
            room.ceiling
                .get()
                .map(|ceiling| show!(self.words, "installer_says.ceiling", height = self.ceiling(ceiling))),
        );
        let to_lay = room
            .floor_build_up
            .get()
            .map(|to_lay| show!(self.words, "installer_says.to_lay", depth = figures::length(self.wording, *to_lay)));
        parts.extend(to_lay);
        parts.extend(self.measured(room).map(|measured| show!(self.words, "installer_says.measured", when = measured)));
        let line = parts.into_iter().reduce(|line, part| line.then("; ").then(part));
        Some(OpeningGroup {
            room: room.title().into(),
            line,
            openings: here.iter().map(|at| self.opening_line(*at)).collect(),
            sheets,
            drawings,
            found,
        })
    }

    fn opening_line(&self, at: SheetOpening<'_>) -> OpeningLine {
        let (verdict, sentence) = self.opening_verdict(at);
        let sizes = [at.opening.governing_width(), self.height_of(at.room, at.opening)];
        let sides: Vec<Length> = sizes.into_iter().flatten().collect();
        let thing = at.thing.map_or_else(|| say!(self.words, "installer_says.nothing"), |(_, option)| option.title());
        OpeningLine {
            link: self.opening_link(at),
            verdict,
            thing,
            size: self.wording.sides(&sides),
            gap: Some(sentence),
        }
    }
}
