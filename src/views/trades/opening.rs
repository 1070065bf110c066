//! The sheet at an opening: verdict, drawing, sizes with the gap each side, services, way in.

use crate::assess::codes::Rulings;
use crate::book::{Fit, MeasuredBetween, Opening, ProductOption, Room, Selection, Slot};
use crate::language::say;
use crate::site::Around;
use crate::site::fitting::{Foot, build_up, foot};
use crate::site::plan::Plans;
use crate::units::Length;
use crate::views::pages::PageBuilder;
use crate::views::shared::data::Data;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::{Html, show};
use crate::views::shared::sheet::{Crumb, Fact, Link, Notice, Sheet, SheetPlace, on_sheet};
use crate::views::shared::state::{State, StateShape};
use crate::views::shared::{figures, prose};
use crate::views::trades::cut_sheets::CutSheetLine;
use crate::views::trades::opening_sizes::SizeRow;
use crate::views::trades::opening_tape;
use crate::views::trades::opening_tape::{TapeDatum, TapeLine};
use crate::views::trades::opening_way_in::WayRow;
use serde::Serialize;

/// `openings/<room>-<opening>.html`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpeningPage {
    pub sheet: Sheet,
    /// Installer's sheet, room and item number, above the title.
    pub label: String,
    /// How the tape's readings are written.
    pub tape_scope: String,
    pub verdict: State,
    /// The rest of the verdict: gaps, what governs, how it gets in.
    pub sentence: Html,
    pub facts: Vec<Fact>,
    /// What is near where it heats, and how far off it is to be.
    pub heat: Vec<Fact>,
    pub drawings: Vec<Drawing>,
    pub sizes: Vec<SizeRow>,
    /// Whose sheet and whose measurement the table stands on.
    pub sizes_from: Option<Html>,
    /// The makers' own sheets of what may go in.
    pub cut_sheets: Vec<CutSheetLine>,
    pub services: Vec<Fact>,
    pub services_from: Option<Html>,
    pub door: Vec<Fact>,
    /// Carton and weight.
    pub carton: Vec<Fact>,
    pub way_in: Vec<WayRow>,
    pub cautions: Vec<Notice>,
    /// What to write down, a line each.
    pub tape: Vec<TapeLine>,
    /// From which faces was read.
    pub tape_from: Vec<TapeDatum>,
    /// What is asked of the readings, for the page's scripts.
    pub asks: Data,
    /// What is needed at least, under the lines.
    pub tape_needs: Option<Html>,
}

on_sheet!(OpeningPage);

/// What an opening's sheet is about.
#[derive(Clone, Copy)]
pub struct SheetOpening<'a> {
    /// The room.
    pub room: &'a Room,
    /// The opening.
    pub opening: &'a Opening,
    /// What goes in: the selection, and the option that stands or comes first.
    pub thing: Option<(&'a Selection, &'a ProductOption)>,
}

impl<'a> PageBuilder<'a> {
    /// Every opening with what goes in, in the book's order.
    pub fn at_openings(&self) -> Vec<SheetOpening<'a>> {
        let rooms = self.subject.book.rooms.iter();
        rooms.flat_map(|room| room.openings.iter().map(move |opening| at(room, opening))).collect()
    }

    /// The sheet of one of all openings, by its number.
    pub fn opening_page(&self, plans: &Plans<'_>, all: &[SheetOpening<'_>], number: usize) -> Option<OpeningPage> {
        let before = number.checked_sub(1).and_then(|before| all.get(before)).map(|at| self.opening_link(*at));
        let after = all.get(number + 1).map(|at| self.opening_link(*at));
        Some(self.opening(plans, *all.get(number)?, (before, after)))
    }

    /// A link to an opening's sheet.
    pub fn opening_link(&self, at: SheetOpening<'_>) -> Link {
        Link { href: self.chrome.opening_path(at.room, at.opening), name: name(at), number: Some(number(at)) }
    }

    /// Whether what goes in fits, and by how much.
    pub fn opening_verdict(&self, at: SheetOpening<'_>) -> (State, Html) {
        match at.thing {
            None => (
                State::new(StateShape::FitUnknown, say!(self.words, "opening_says.nothing_chosen")),
                show!(self.words, "opening_says.nothing_goes_in"),
            ),
            Some((selection, option)) => {
                let (state, sentence) = self.verdict(at.room, at.opening, selection, option);
                let open = selection.settled().is_none();
                let sentence = match open {
                    true => show!(self.words, "opening_says.open", option = option.title(), rest = sentence),
                    false => sentence,
                };
                (state, sentence)
            }
        }
    }

    fn opening(
        &self,
        plans: &Plans<'_>,
        at: SheetOpening<'_>,
        (from, onward): (Option<Link>, Option<Link>),
    ) -> OpeningPage {
        let index =
            Link { href: "index.html".into(), name: say!(self.words, "pages.openings"), number: Some("F-00".into()) };
        let place = SheetPlace {
            path: self.chrome.opening_path(at.room, at.opening),
            number: number(at),
            name: say!(self.words, "pages.at_opening", name = name(at)),
            above: vec![self.chrome.first(), Crumb { name: at.room.title().into(), href: Some("index.html".into()) }],
        };
        let (verdict, sentence) = self.opening_verdict(at);
        let of = (at.room.folder.as_str(), at.opening.name.value.as_str(), "");
        let mut sheet = self.chrome.sheet(place, self.sheet_mark(of), from.or(Some(index)), onward);
        sheet.scale = Some(say!(self.words, "opening_says.by_the_bar"));
        sheet = self.with_code(self.built_from(sheet, of));
        let figures = Rulings::of(&self.subject.book.project).heat();
        let around = Around::of((self.subject.book, plans), (at.room, at.opening), at.thing, figures);
        let fit = around.fit.as_ref();
        OpeningPage {
            sheet,
            label: say!(self.words, "opening_says.label", room = at.room.title(), number = number(at)),
            tape_scope: match self.wording.system.is_alone() {
                true => say!(self.words, "opening.tape_scope_alone"),
                false => say!(self.words, "opening.tape_scope"),
            },
            verdict,
            sentence,
            facts: self.opening_facts(at),
            heat: self.heat_facts(&around, at),
            drawings: self.opening_drawings(&around, at),
            sizes: self.size_rows(at, &around),
            sizes_from: Some(self.sizes_from(at)),
            cut_sheets: self.cut_sheets(at.room.goes_into(&at.opening.name)),
            services: self.services(at),
            services_from: at.thing.map(|_| show!(self.words, "opening_says.services_from")),
            door: self.door_facts(at),
            carton: self.carton_facts(at),
            way_in: self.way_rows(&around),
            cautions: self.opening_cautions(at),
            tape: opening_tape::lines(self.words, at),
            tape_from: self.tape_datums(at),
            asks: self.tape_asked(at, fit),
            tape_needs: self.tape_needs(fit),
        }
    }

    fn opening_facts(&self, at: SheetOpening<'_>) -> Vec<Fact> {
        let mut facts = Vec::new();
        if let Some((_, option)) = at.thing {
            let unit = match option.hinge.get() {
                Some(hinge) => {
                    say!(self.words, "opening_says.hinged", name = option.title(), hinge = self.hinge(*hinge))
                }
                None => option.title(),
            };
            facts.push(self.worded("opening_says.unit", unit));
            facts.extend(self.maker_sheet(option).map(|sheet| self.worded("opening_says.sheet", sheet)));
        }
        facts.extend(at.thing.and_then(|(selection, _)| self.approval_fact(at.room, selection)));
        facts.push(self.worded("opening_says.datum", self.datum(at)));
        if let Some(weight) = at.thing.and_then(|(_, option)| option.fit.get()?.weight.get()) {
            facts.push(self.worded("opening_says.weight", self.wording.weight(*weight)));
        }
        let of_thing = at.thing.map(|(_, option)| (option.note.get(), option.fit.get().and_then(|fit| fit.note.get())));
        let of_thing = of_thing.into_iter().flat_map(|(own, of_sheet)| own.into_iter().chain(of_sheet));
        for note in at.opening.note.get().into_iter().chain(of_thing) {
            facts.push(self.worded("opening_says.note", prose::line(note)));
        }
        facts
    }

    /// From what its sizes are taken: floor first, then walls.
    fn datum(&self, at: SheetOpening<'_>) -> Html {
        let to_lay = build_up(at.room, at.opening);
        let floor = match foot(at.room, at.opening) {
            Foot::Above(bottom) => {
                show!(self.words, "opening_says.from.sill", height = figures::length(self.wording, bottom))
            }
            Foot::Unknown => show!(self.words, "opening_says.from.its_foot"),
            Foot::Floor if to_lay > Length::ZERO => {
                show!(self.words, "opening_says.from.to_lay", depth = figures::length(self.wording, to_lay))
            }
            Foot::Floor => show!(self.words, "opening_says.from.floor"),
        };
        if at.opening.measured_between.get() != Some(&MeasuredBetween::Studs) {
            return floor;
        }
        let Some(to_come) = at.opening.to_come_on_its_walls() else {
            return show!(self.words, "opening_says.from.studs", floor = floor);
        };
        let sides = [
            ("opening_says.from.left", to_come.left),
            ("opening_says.from.right", to_come.right),
            ("opening_says.from.behind", to_come.back),
        ];
        let sides = sides.into_iter().filter(|(_, length)| *length > Length::ZERO);
        let sides = sides.map(|(key, length)| show!(self.words, key, depth = figures::length(self.wording, length)));
        let sides = Html::series(self.words, sides.collect());
        show!(self.words, "opening_says.from.walls", floor = floor, sides = sides)
    }

    fn door_facts(&self, at: SheetOpening<'_>) -> Vec<Fact> {
        let Some((_, option)) = at.thing else { return vec![] };
        let Some(door) = option.fit.get().and_then(|fit| fit.door.get()) else { return vec![] };
        let length = |name: &str, slot: &Slot<Length>| {
            slot.get().map(|length| self.worded(name, figures::length(self.wording, *length)))
        };
        let mut facts: Vec<Fact> = [
            option.hinge.get().map(|hinge| self.worded("lines.hinge", self.hinge(*hinge))),
            length("opening_says.door.drops", &door.drops),
            length("opening_says.door.swings", &door.swings),
            length("opening_says.door.pulls", &door.pulls),
            length("opening_says.door.wall", &door.wall_clearance),
            length("opening_says.door.in_front", &door.in_front),
            door.angle.get().map(|angle| self.worded("opening_says.door.opens", angle.as_str())),
        ]
        .into_iter()
        .flatten()
        .collect();
        facts.extend(length("opening_says.door.there", &at.opening.in_front));
        facts
    }

    /// The maker's sheet that an option goes by: its name, revision and day.
    pub(super) fn maker_sheet(&self, option: &ProductOption) -> Option<String> {
        let sheet = option.fit.get()?.sheet.get()?;
        let parts = [
            sheet.name.get().cloned(),
            sheet.revision.get().map(|revision| say!(self.words, "opening_says.revision", revision = revision)),
            sheet.date.get().map(|day| self.words.day(*day)),
        ];
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        if parts.is_empty() { None } else { Some(parts.join(", ")) }
    }

    /// Each service: what the sheet asks, and what is there.
    fn services(&self, at: SheetOpening<'_>) -> Vec<Fact> {
        let none = Fit::default();
        let fit = at.thing.and_then(|(_, option)| option.fit.get()).map(AsRef::as_ref).unwrap_or(&none);
        let (needs, there) = (&fit.needs, &at.opening.service);
        let all = [
            ("opening_says.services.power", words(&needs.power), words(&there.power)),
            ("opening_says.services.gas", words(&needs.gas), words(&there.gas)),
            ("opening_says.services.water", words(&needs.water), words(&there.water)),
            ("opening_says.services.drain", words(&needs.drain), words(&there.drain)),
            ("opening_says.services.duct", words(&needs.duct), words(&there.duct)),
            ("opening_says.services.blocking", words(&needs.blocking), words(&there.blocking)),
        ];
        let told = all.into_iter().filter(|(_, needs, there)| needs.is_some() || there.is_some());
        told.map(|(key, needs, there)| {
            let needs = needs.unwrap_or_else(|| say!(self.words, "opening_says.services.nothing"));
            let there = there.unwrap_or_else(|| say!(self.words, "opening_says.services.not_told"));
            self.worded(key, say!(self.words, "opening_says.services.asks", needs = needs, there = there))
        })
        .collect()
    }

    /// What to know before it is set, in one box: what can hurt first, then what the review found.
    fn opening_cautions(&self, at: SheetOpening<'_>) -> Vec<Notice> {
        let mut lines = at.thing.map_or_else(Vec::new, |(selection, _)| self.cautions(at.room, selection));
        let thing = at.thing.map(|(selection, option)| (selection, option.id.as_str()));
        for line in self.told_at_opening(at.room, at.opening, thing).all() {
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
        if lines.is_empty() { vec![] } else { vec![Notice { title: say!(self.words, "opening.cautions"), lines }] }
    }
}

/// What goes into an opening: the option that stands, or the first of those still open.
pub(super) fn at<'a>(room: &'a Room, opening: &'a Opening) -> SheetOpening<'a> {
    SheetOpening { room, opening, thing: room.shown_at(opening) }
}

/// What an opening's sheet is called: by the thing that goes in, or by the opening's own name.
pub fn name(at: SheetOpening<'_>) -> String {
    at.thing.map_or_else(
        || crate::views::shared::lines::capital(&at.opening.name),
        |(selection, _)| selection.name.value.clone(),
    )
}

/// The sheet's number: the item's, with an F for the field.
pub fn number(at: SheetOpening<'_>) -> String {
    at.thing.map_or_else(|| format!("{}-F", at.room.letter), |(selection, _)| format!("{}F", selection.tag))
}

fn words(slot: &Slot<impl ToString>) -> Option<String> {
    slot.get().map(ToString::to_string)
}
