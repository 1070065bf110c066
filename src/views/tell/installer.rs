//! Tells the installer's first page, and the drawings of an opening.

use crate::assess::fitting::{build_up, fitting};
use crate::book::{Choice, Neighbour as Beside, Opening, Readings, Room, Selection, Slot};
use crate::drawings::sizes::{
    Beside as Kind, Between, Face, Held, Limits, Needs, Neighbour, OpeningFront, Reading, Thing,
};
use crate::drawings::{Paper, opening_front};
use crate::units::{Length, LengthRange};
use crate::views::drawing::Drawing;
use crate::views::html::Html;
use crate::views::installer::{InstallerIndex, OpeningGroup, OpeningLine};
use crate::views::sheet::Notice;

use super::Teller;
use super::chrome::Place;
use super::figures::{self, count};
use super::fit::door;
use super::lines::fact;
use super::opening::{At, name, number};

impl<'a> Teller<'a> {
    /// `index.html` of the installer's folder.
    pub fn installer_index(&self) -> InstallerIndex {
        let all = self.at_openings();
        let place = Place { path: "index.html".into(), number: "F-00".into(), name: "Openings".into(), above: vec![] };
        let planned = all.iter().filter(|at| at.opening.measured.is_absent()).count();
        let lead = match (all.len(), planned) {
            (0, _) => "No opening is in the book yet.".to_string(),
            (all, 0) => format!("{}, all of them measured.", count(all, "opening", "openings")),
            (all, planned) => {
                format!("{}, {planned} still as planned: verify in field.", count(all, "opening", "openings"))
            }
        };
        let project = &self.subject.book.project;
        let mut facts = Vec::new();
        facts.extend(project.address.get().map(|address| fact("Address", address.as_str())));
        facts.extend(project.firm.phone.get().map(|phone| fact("Office", phone.as_str())));
        let general = "Figures come from makers' sheets and from the tape, as named on each sheet. Where they differ from what you find, or from the local code, stop and call: code, the maker's instructions and licensed trades decide.";
        InstallerIndex {
            sheet: self.chrome.sheet(place, None, None, all.first().map(|at| self.opening_link(*at))),
            lead: Html::text(&lead),
            facts,
            rooms: self.subject.book.rooms.iter().filter_map(|room| self.opening_group(room, &all)).collect(),
            notices: vec![Notice { title: "Before you start".into(), lines: vec![Html::text(general)] }],
        }
    }

    fn opening_group(&self, room: &Room, all: &[At<'_>]) -> Option<OpeningGroup> {
        let here: Vec<&At<'_>> = all.iter().filter(|at| at.room.folder == room.folder).collect();
        if here.is_empty() {
            return None;
        }
        let mut parts: Vec<Html> = Vec::new();
        parts.extend(room.ceiling.get().map(|ceiling| Html::text("Ceiling ").then(self.ceiling(*ceiling))));
        let to_lay = room
            .floor_build_up
            .get()
            .map(|to_lay| figures::length(self.wording, *to_lay).then(" of floor still to be laid"));
        parts.extend(to_lay);
        parts.extend(self.measured(room).map(|measured| Html::text(&format!("measured {measured}"))));
        let line = parts.into_iter().reduce(|line, part| line.then("; ").then(part));
        Some(OpeningGroup {
            room: room.title().into(),
            line,
            openings: here.into_iter().map(|at| self.opening_line(*at)).collect(),
        })
    }

    fn opening_line(&self, at: At<'_>) -> OpeningLine {
        let (verdict, sentence) = self.opening_verdict(at);
        let sizes = [crate::assess::fitting::width(at.opening), crate::assess::fitting::height(at.room, at.opening)];
        let sides: Vec<Length> = sizes.into_iter().flatten().collect();
        let thing = at.thing.map_or_else(|| "nothing yet".to_string(), |(_, option)| option.title());
        OpeningLine {
            link: self.opening_link(at),
            verdict,
            thing,
            size: self.wording.sides(&sides),
            gap: Some(sentence),
        }
    }

    /// The opening's front, to scale; drawn again for a narrow screen.
    pub fn opening_drawings(&self, at: At<'_>) -> Vec<Drawing> {
        let Some(front) = front(at) else { return vec![] };
        let narrow = OpeningFront { id: format!("{}-narrow", front.id), ..front.clone() };
        vec![Drawing {
            name: "Front".into(),
            scope: Some("1:16, to finished faces UON".into()),
            svg: Html::trusted(opening_front(&front, Paper::Desk)),
            narrow: Some(Html::trusted(opening_front(&narrow, Paper::Phone))),
            caption: Some(Html::text("Measured widths where the tape was held; the least one governs.")),
        }]
    }
}

/// What the front of an opening is drawn from; none without a width and a height.
fn front(at: At<'_>) -> Option<OpeningFront> {
    let opening = at.opening;
    let widths = widths(&opening.width);
    let height = crate::assess::fitting::height(at.room, opening)?;
    if widths.is_empty() || height <= Length::ZERO {
        return None;
    }
    let to_lay = build_up(at.room, opening);
    let face = Face {
        widths,
        height,
        sill: opening.sill.get().copied(),
        floor_build_up: Some(to_lay).filter(|to_lay| *to_lay > Length::ZERO),
        measured: opening.measured.get().is_some(),
    };
    Some(OpeningFront {
        id: "front".into(),
        name: name(at).to_lowercase(),
        tag: number(at).trim_end_matches('F').to_string(),
        thing: at.thing.and_then(|(selection, option)| thing(at.room, opening, selection, option)),
        needs: at.thing.map(|(_, option)| needs(option)).unwrap_or_default(),
        left: neighbour(&opening.left),
        right: neighbour(&opening.right),
        above: neighbour(&opening.above),
        services: vec![],
        counter: opening.counter_height.get().copied(),
        opening: face,
    })
}

fn widths(slot: &Slot<Readings>) -> Vec<Reading> {
    let Some(Readings(readings)) = slot.get() else { return vec![] };
    let held: &[Held] = match readings.len() {
        1 => &[Held::Throughout],
        2 => &[Held::Floor, Held::Top],
        _ => &[Held::Floor, Held::Middle, Held::Top],
    };
    readings.iter().zip(held).map(|(reading, held)| Reading { held: *held, width: reading.value }).collect()
}

fn thing(room: &Room, opening: &Opening, selection: &Selection, option: &Choice) -> Option<Thing> {
    let width = *option.size.width.get()?;
    let height = option.size.height.get()?;
    let least = height.least.or(height.most)?;
    let there = fitting(room, opening, option).width.there?;
    Some(Thing {
        name: selection.name.value.to_lowercase(),
        width,
        height: Between { least, most: height.most.unwrap_or(least) },
        gap_left: (there - width).half(),
        door: door(option),
        handle: option.size.depth_with_handle.get().is_some(),
    })
}

fn needs(option: &Choice) -> Needs {
    let limits = |slot: &Slot<LengthRange>| {
        slot.get().map_or_else(Limits::default, |range| Limits { least: range.least, most: range.most })
    };
    option.fit.get().map_or_else(Needs::default, |fit| Needs {
        width: limits(&fit.opening.width),
        height: limits(&fit.opening.height),
        depth: limits(&fit.opening.depth),
    })
}

fn neighbour(slot: &Slot<Beside>) -> Neighbour {
    match slot.get() {
        None => Neighbour { kind: Kind::Open, words: String::new(), underside: None },
        Some(beside) => Neighbour {
            kind: Kind::from_words(&beside.what),
            words: beside.what.clone(),
            underside: beside.height.get().copied(),
        },
    }
}
