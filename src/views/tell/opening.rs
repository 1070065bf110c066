//! Tells the sheet at an opening.

use crate::book::{AsWritten, Fit, Opening, ProductOption, Readings, Room, Selection, Slot};
use crate::marks;
use crate::site::fitting::{DimensionCheck, Fitting, Misfit, Skew, build_up, fitting, out_of_square};
use crate::site::plan::Plans;
use crate::units::{Length, LengthRange};
use crate::views::html::Html;
use crate::views::opening::{OpeningPage, SizeCell, SizeRow};
use crate::views::sheet::{Crumb, Fact, Link, Notice};
use crate::views::state::{Shape, State};

use super::chrome::Place;
use super::figures::{self, finer, in_prose};
use super::history::Of;
use super::lines::fact;
use super::{PageBuilder, opening_tape, prose};

/// What an opening's sheet is about.
#[derive(Clone, Copy)]
pub struct At<'a> {
    /// The room.
    pub room: &'a Room,
    /// The opening.
    pub opening: &'a Opening,
    /// What goes in: the selection, and the option that stands or comes first.
    pub thing: Option<(&'a Selection, &'a ProductOption)>,
}

impl<'a> PageBuilder<'a> {
    /// Every opening with what goes in, in the book's order.
    pub fn at_openings(&self) -> Vec<At<'a>> {
        let rooms = self.subject.book.rooms.iter();
        rooms.flat_map(|room| room.openings.iter().map(move |opening| at(room, opening))).collect()
    }

    /// The sheet of one of all openings, by its number.
    pub fn opening_page(&self, plans: &Plans<'_>, all: &[At<'_>], number: usize) -> Option<OpeningPage> {
        let before = number.checked_sub(1).and_then(|before| all.get(before)).map(|at| self.opening_link(*at));
        let after = all.get(number + 1).map(|at| self.opening_link(*at));
        Some(self.opening(plans, *all.get(number)?, (before, after)))
    }

    /// A link to an opening's sheet.
    pub fn opening_link(&self, at: At<'_>) -> Link {
        Link { href: self.chrome.opening_path(at.room, at.opening), name: name(at), number: Some(number(at)) }
    }

    /// Whether what goes in fits, and by how much.
    pub fn opening_verdict(&self, at: At<'_>) -> (State, Html) {
        match at.thing {
            None => {
                (State::new(Shape::FitUnknown, "Nothing chosen"), Html::text("Nothing in the book goes in here yet."))
            }
            Some((selection, option)) => {
                let (state, sentence) = self.verdict(at.room, at.opening, selection, option);
                let open = selection.settled().is_none();
                let lead = if open {
                    Html::text(&format!("Still to be chosen; {} is shown. ", option.title()))
                } else {
                    Html::default()
                };
                (state, lead.then(sentence))
            }
        }
    }

    fn opening(&self, plans: &Plans<'_>, at: At<'_>, (from, onward): (Option<Link>, Option<Link>)) -> OpeningPage {
        let index = Link { href: "index.html".into(), name: "Openings".into(), number: Some("F-00".into()) };
        let place = Place {
            path: self.chrome.opening_path(at.room, at.opening),
            number: number(at),
            name: format!("{}, at the opening", name(at)),
            above: vec![self.chrome.first(), Crumb { name: at.room.title().into(), href: Some("index.html".into()) }],
        };
        let (verdict, sentence) = self.opening_verdict(at);
        let mark =
            at.thing.and_then(|(selection, _)| self.marks.get(&(at.room.folder.as_str(), selection.id.as_str())));
        let mut sheet = self.chrome.sheet(place, mark.map(marks::shown), from.or(Some(index)), onward);
        sheet.scale = Some("by the bar".into());
        let of_thing = |(selection, _): (&Selection, _)| self.revisions(Of::Item(&at.room.folder, &selection.id));
        sheet.revisions = at.thing.map_or_else(Vec::new, of_thing);
        let fit = at.thing.map(|(_, option)| fitting(at.room, at.opening, option));
        OpeningPage {
            sheet,
            label: format!("Installer’s sheet · {} · {}", at.room.title(), number(at)),
            verdict,
            sentence,
            facts: self.opening_facts(plans, at),
            drawings: self.opening_drawings(plans, at),
            sizes: self.size_rows(at, fit.as_ref()),
            sizes_from: Some(self.sizes_from(at)),
            services: services(at),
            services_from: at.thing.map(|_| Html::text("What the maker's sheet asks, and what is there")),
            door: self.door_facts(at),
            carton: self.carton_facts(at),
            way_in: self.way_rows(at),
            cautions: self.opening_cautions(at),
            tape: opening_tape::lines(),
            asks: self.tape_asked(at, fit.as_ref()),
            tape_needs: self.tape_needs(fit.as_ref()),
        }
    }

    fn opening_facts(&self, plans: &Plans<'_>, at: At<'_>) -> Vec<Fact> {
        let mut facts = Vec::new();
        if let Some((_, option)) = at.thing {
            let hinge = option.hinge.get().map_or(String::new(), |hinge| format!(", hinge {hinge}"));
            facts.push(fact("Unit", format!("{}{hinge}", option.title())));
            facts.extend(maker_sheet(option).map(|sheet| fact("Maker’s sheet", sheet)));
        }
        facts.push(fact("Datum", self.datum(at)));
        if let Some(weight) = at.thing.and_then(|(_, option)| option.fit.get()?.weight.get()) {
            facts.push(fact("Weight", self.wording.weight(*weight)));
        }
        facts.extend(self.heat_facts(plans, at));
        if let Some(note) = at.opening.note.get() {
            facts.push(fact("Note", prose::line(note)));
        }
        facts
    }

    /// From what its sizes are taken: floor first, then walls.
    fn datum(&self, at: At<'_>) -> Html {
        let to_lay = build_up(at.room, at.opening);
        let floor = match at.opening.sill.get() {
            Some(sill) => Html::text("finished floor; its bottom stands ")
                .then(figures::length(self.wording, *sill))
                .then(" above it"),
            None if to_lay > Length::ZERO => {
                Html::text("finished floor; ").then(figures::length(self.wording, to_lay)).then(" still to be laid")
            }
            None => Html::text("finished floor"),
        };
        if at.opening.between_studs.get() != Some(&true) {
            return floor;
        }
        let Some(to_come) = at.opening.to_come_on_its_walls() else {
            return floor.then("; between studs, and what comes on them is not known");
        };
        let sides = [("at the left", to_come.left), ("at the right", to_come.right), ("behind", to_come.back)];
        let sides = sides.into_iter().filter(|(_, length)| *length > Length::ZERO);
        sides.fold(floor.then("; finished walls, still to come on the studs"), |told, (side, length)| {
            told.then(format!(" {side} ").as_str()).then(figures::length(self.wording, length))
        })
    }

    /// What the book itself says, beside a newer reading on record.
    fn as_written(&self, before: &AsWritten) -> Html {
        let who = before.measured.get().and_then(|measured| measured.by.get());
        let begin = who.map_or(" The book has it as planned:".to_string(), |who| format!(" The book has {who}'s:"));
        let sides = [("width", &before.width), ("height", &before.height), ("depth", &before.depth)];
        let least = |slot: &Slot<Readings>| Some(slot.get()?.least()?.value);
        let known = sides.into_iter().filter_map(|(name, slot)| Some((name, least(slot)?)));
        known.fold(Html::text(&begin), |told, (name, length)| {
            told.then(format!(" {name} ").as_str()).then(figures::length(self.wording, length))
        })
    }

    fn sizes_from(&self, at: At<'_>) -> Html {
        let sheet = at.thing.and_then(|(_, option)| maker_sheet(option));
        let sheet =
            sheet.map_or_else(|| "No maker's sheet is named.".to_string(), |sheet| format!("Maker's sheet: {sheet}."));
        let measured = at.opening.measured.get().map(|measured| {
            let on = measured.on.get().map_or_else(|| "no date".to_string(), ToString::to_string);
            format!("Opening measured by {}, {on}.", measured.by.get().map_or("nobody named", String::as_str))
        });
        let line = Html::text(&format!("{sheet} {}", measured.unwrap_or_else(|| "Opening as planned: VIF.".into())));
        match &at.opening.as_written {
            Some(before) => line.then(self.as_written(before)),
            None => line,
        }
    }

    fn size_rows(&self, at: At<'_>, fit: Option<&Fitting>) -> Vec<SizeRow> {
        let none = Fitting::default();
        let fit = fit.unwrap_or(&none);
        let there = fitting_of_nothing(at);
        let mut rows = vec![
            self.size_row("Width", "the least governs", &fit.width, there.0, self.sides_cell(fit)),
            self.size_row(
                "Height",
                if at.opening.sill.is_absent() { "from FF" } else { "from its bottom" },
                &fit.height,
                there.1,
                dash(),
            ),
            self.size_row("Depth", "to wall or outlet", &fit.depth, there.2, dash()),
        ];
        rows.extend(self.square_row(at));
        rows
    }

    /// What is left at each side: one figure where it is the same, both where the sheet's air differs.
    fn sides_cell(&self, fit: &Fitting) -> SizeCell {
        let Some((left, right)) = fit.gaps.left.zip(fit.gaps.right) else { return dash() };
        if let each @ Some(_) = fit.gaps.each_side() {
            return self.cell(each);
        }
        let (one, other) = (self.cell(Some(left)), self.cell(Some(right)));
        let both = |one: Html, other: Html| one.then(" left, ").then(other).then(" right");
        SizeCell {
            figure: both(one.figure, other.figure),
            note: one.note.zip(other.note).map(|(one, other)| both(one, other)),
        }
    }

    fn size_row(
        &self,
        name: &str,
        note: &str,
        gauge: &DimensionCheck,
        there: Option<Length>,
        sides: SizeCell,
    ) -> SizeRow {
        let needs = match (gauge.asked, gauge.least()) {
            (Some(asked), _) => self.range_cell(asked),
            (None, Some(least)) => self.range_cell(LengthRange::at_least(least)),
            (None, None) => dash(),
        };
        let left = gauge.left_over();
        let verdict = match (gauge.misfit(), left) {
            (Some(Misfit::TooSmall(_)), _) => State::new(Shape::DoesNotFit, "Too small"),
            (Some(Misfit::TooLarge(_)), _) => State::new(Shape::DoesNotFit, "Too large"),
            (None, Some(_)) => State::new(Shape::Fits, "Fits"),
            (None, None) => State::new(Shape::FitUnknown, "Not known"),
        };
        SizeRow {
            name: name.into(),
            note: Some(Html::text(note)),
            needs,
            measured: self.cell(gauge.there.or(there)),
            left: self.cell(left),
            each_side: sides,
            verdict,
        }
    }

    fn square_row(&self, at: At<'_>) -> Option<SizeRow> {
        let skew = out_of_square(at.room, at.opening)?;
        let left = skew.within - skew.out;
        let note = match skew.by {
            Skew::Diagonals => "two diagonals",
            Skew::Side => "over its height, by the plumb line",
        };
        let verdict = match skew.is_too_far() {
            true => State::new(Shape::DoesNotFit, "Out of square"),
            false => State::new(Shape::Fits, "Square"),
        };
        Some(SizeRow {
            name: "Square".into(),
            note: Some(Html::text(note)),
            needs: self.range_cell(LengthRange::at_most(skew.within)),
            measured: self.cell(Some(skew.out)),
            left: self.cell(Some(left)),
            each_side: dash(),
            verdict,
        })
    }

    fn cell(&self, length: Option<Length>) -> SizeCell {
        length.map_or_else(dash, |length| {
            let wording = finer(self.wording, length);
            SizeCell { figure: wording.first(length), note: Some(wording.second(length)) }
        })
    }

    fn range_cell(&self, range: LengthRange) -> SizeCell {
        SizeCell { figure: self.wording.range(range), note: Some(self.wording.range_second(range)) }
    }

    fn door_facts(&self, at: At<'_>) -> Vec<Fact> {
        let Some((_, option)) = at.thing else { return vec![] };
        let Some(door) = option.fit.get().and_then(|fit| fit.door.get()) else { return vec![] };
        let length = |name: &str, slot: &Slot<Length>| {
            slot.get().map(|length| fact(name, figures::length(self.wording, *length)))
        };
        let mut facts: Vec<Fact> = [
            option.hinge.get().map(|hinge| fact("Hinge", hinge.as_str())),
            length("Drops to", &door.drops),
            length("Swings to", &door.swings),
            length("Pulls out", &door.pulls),
            length("To a wall at the hinge", &door.wall_clearance),
            length("Clear in front, by the sheet", &door.in_front),
            door.angle.get().map(|angle| fact("Opens", angle.as_str())),
        ]
        .into_iter()
        .flatten()
        .collect();
        facts.extend(length("Clear in front, as it is", &at.opening.in_front));
        facts
    }

    /// What to know before it is set, in one box: what can hurt first, then what the review found.
    fn opening_cautions(&self, at: At<'_>) -> Vec<Notice> {
        let mut lines = at.thing.map_or_else(Vec::new, |(selection, _)| self.cautions(at.room, selection));
        let thing = at.thing.map(|(selection, option)| (selection, option.id.as_str()));
        lines.extend(self.told_at_opening(at.room, at.opening, thing));
        if lines.is_empty() { vec![] } else { vec![Notice { title: "Before you set it".into(), lines }] }
    }

    fn tape_needs(&self, fit: Option<&Fitting>) -> Option<Html> {
        let fit = fit?;
        let parts: Vec<Html> =
            [("The width needs", &fit.width), ("the height", &fit.height), ("the depth", &fit.depth)]
                .into_iter()
                .filter_map(|(name, gauge)| {
                    Some(Html::text(name).then(" at least ").then(in_prose(self.wording, gauge.least()?)))
                })
                .collect();
        let last = parts.len().checked_sub(1)?;
        Some(parts.into_iter().enumerate().fold(Html::default(), |text, (at, part)| {
            let text = if at == 0 { text } else { text.then(", ") };
            let part = text.then(part);
            if at == last { part.then(".") } else { part }
        }))
    }
}

/// What goes into an opening: the option that stands, or the first of those still open.
fn at<'a>(room: &'a Room, opening: &'a Opening) -> At<'a> {
    let selection = room.goes_into(&opening.name).next();
    let thing = selection.and_then(|selection| Some((selection, selection.standing().first()?)));
    At { room, opening, thing }
}

/// The opening's own sizes, for one that nothing goes into yet.
fn fitting_of_nothing(at: At<'_>) -> (Option<Length>, Option<Length>, Option<Length>) {
    (at.opening.governing_width(), crate::site::fitting::height(at.room, at.opening), at.opening.governing_depth())
}

/// What an opening's sheet is called: by the thing that goes in, or by the opening's own name.
pub fn name(at: At<'_>) -> String {
    at.thing.map_or_else(|| super::lines::capital(&at.opening.name), |(selection, _)| selection.name.value.clone())
}

/// The sheet's number: the item's, with an F for the field.
pub fn number(at: At<'_>) -> String {
    at.thing.map_or_else(|| format!("{}-F", at.room.letter), |(selection, _)| format!("{}F", selection.tag))
}

fn maker_sheet(option: &ProductOption) -> Option<String> {
    let sheet = option.fit.get()?.sheet.get()?;
    let parts = [
        sheet.name.get().cloned(),
        sheet.revision.get().map(|revision| format!("rev. {revision}")),
        sheet.date.get().map(ToString::to_string),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    if parts.is_empty() { None } else { Some(parts.join(", ")) }
}

/// Each service: what the sheet asks, and what is there.
fn services(at: At<'_>) -> Vec<Fact> {
    let none = Fit::default();
    let fit = at.thing.and_then(|(_, option)| option.fit.get()).unwrap_or(&none);
    let (needs, there) = (&fit.needs, &at.opening.service);
    let all = [
        ("Power", &needs.power, &there.power),
        ("Gas", &needs.gas, &there.gas),
        ("Water", &needs.water, &there.water),
        ("Drain", &needs.drain, &there.drain),
        ("Duct", &needs.duct, &there.duct),
        ("Blocking", &needs.blocking, &there.blocking),
    ];
    let told = all.into_iter().filter(|(_, needs, there)| needs.get().is_some() || there.get().is_some());
    told.map(|(name, needs, there)| {
        let words = |slot: &Slot<String>, none: &str| slot.get().cloned().unwrap_or_else(|| none.to_string());
        fact(name, format!("Asks {}. There: {}.", words(needs, "nothing"), words(there, "not told, VIF")))
    })
    .collect()
}

fn dash() -> SizeCell {
    SizeCell { figure: Html::text("–"), note: None }
}
