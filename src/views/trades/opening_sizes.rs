//! The sizes on an opening's sheet: what is needed, what is there, what is left over.

use crate::book::{AsWritten, MeasuredFigures, MeasuredHow, Measurement, Opening, Readings, Room, Slot};
use crate::language::say;
use crate::ledger::Side;
use crate::site::Around;
use crate::site::fitting::{AboveIs, DimensionCheck, Direction, Fitting, Misfit, Skew, out_of_square};
use crate::units::{Date, Length, LengthRange};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::capital;
use crate::views::shared::state::{State, StateShape};
use crate::views::trades::opening::SheetOpening;
use serde::Serialize;

/// One size: what is needed, what was measured, what is left over.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SizeRow {
    pub name: String,
    /// From what it is taken: `least of three`.
    pub note: Option<Html>,
    pub needs: SizeCell,
    pub measured: SizeCell,
    pub left: SizeCell,
    /// The gap on each side: `5/32 left, 5/32 right`.
    pub each_side: SizeCell,
    pub verdict: State,
}

/// A figure and its second line: the other unit, and where it was read.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SizeCell {
    pub figure: Html,
    pub note: Option<Html>,
}

impl<'a> PageBuilder<'a> {
    /// What the book itself says, beside a newer reading on record.
    fn as_written(&self, before: &AsWritten) -> Html {
        let who = before.measured.get().and_then(|measured| measured.by.get());
        let sides = [
            ("sizes.was.width", &before.width),
            ("sizes.was.height", &before.height),
            ("sizes.was.depth", &before.depth),
        ];
        let least = |slot: &Slot<Readings>| Some(slot.get()?.least()?.value);
        let known = sides.into_iter().filter_map(|(key, slot)| Some((key, least(slot)?)));
        let known =
            known.map(|(key, length)| show!(self.words, key, length = figures::length(self.wording, length))).collect();
        let sizes = Html::series(self.words, known);
        match who {
            Some(who) => show!(self.words, "sizes.was.by", who = who, sizes = sizes),
            None => show!(self.words, "sizes.was.planned", sizes = sizes),
        }
    }

    /// The height of an opening, by all that ends it.
    pub fn height_of(&self, room: &Room, opening: &Opening) -> Option<Length> {
        crate::site::fitting::height(self.plans.room(room), room, opening)
    }

    pub fn sizes_from(&self, at: SheetOpening<'_>) -> Html {
        let sheet = at.thing.and_then(|(_, option)| self.maker_sheet(option));
        let sheet = sheet
            .map_or_else(|| say!(self.words, "sizes.no_sheet"), |sheet| say!(self.words, "sizes.sheet", sheet = sheet));
        let measured: Vec<String> = at.opening.measurements().iter().map(|one| self.measurement(one)).collect();
        let line = Html::text(&format!("{sheet} {}", measured.join(" ")));
        match &at.opening.as_written {
            Some(before) => line.then(" ").then(self.as_written(before)),
            None => line,
        }
    }

    /// Who measured which figures, and when.
    fn measurement(&self, one: &Measurement<'_>) -> String {
        let what = match &one.of {
            MeasuredFigures::All => None,
            MeasuredFigures::Rest => Some(say!(self.words, "sizes.the_rest")),
            MeasuredFigures::These(sides) => {
                let mut names: Vec<String> = sides.iter().map(|side| say!(self.words, figure(*side))).collect();
                names.dedup();
                Some(capital(&self.words.series(&names)))
            }
        };
        let MeasuredHow::By { who, on, again } = one.how else {
            return match what {
                None => say!(self.words, "sizes.planned"),
                Some(what) => say!(self.words, "sizes.planned_of", what = what),
            };
        };
        let day = |on: Option<Date>| on.map_or_else(|| say!(self.words, "sizes.no_day"), |day| self.words.day(day));
        let named = |who: Option<&str>| who.map_or_else(|| say!(self.words, "sizes.nobody"), str::to_string);
        let told = match what {
            None => say!(self.words, "sizes.measured", who = named(who), day = day(on)),
            Some(what) => say!(self.words, "sizes.measured_of", what = what, who = named(who), day = day(on)),
        };
        match again {
            None => told,
            Some(again) => {
                let (who, on) = (again.by.get().map(String::as_str), again.on.get().copied());
                format!("{told} {}", say!(self.words, "sizes.measured_again", who = named(who), day = day(on)))
            }
        }
    }

    pub fn size_rows(&self, at: SheetOpening<'_>, around: &Around<'_>) -> Vec<SizeRow> {
        let none = Fitting::default();
        let fit = around.fit.as_ref().unwrap_or(&none);
        let there = (at.opening.governing_width(), around.height, around.depth);
        let from = say!(
            self.words,
            match at.opening.stands_on_the_floor() {
                true => "sizes.from_floor",
                false => "sizes.from_bottom",
            }
        );
        let from = match fit.under.as_ref().map(|above| &above.is) {
            Some(AboveIs::Hung(name) | AboveIs::Counter(name)) => {
                say!(self.words, "sizes.under", from = from, what = name)
            }
            Some(AboveIs::Ceiling) => say!(self.words, "sizes.under_ceiling", from = from),
            Some(AboveIs::Said) | None => from,
        };
        let (governs, wall) = (say!(self.words, "sizes.least_governs"), say!(self.words, "sizes.to_wall"));
        let told = |there: Option<Length>, direction: Direction| (there, fit.unknown.contains(&direction));
        let mut rows = vec![
            self.size_row("sizes.width", &governs, &fit.width, told(there.0, Direction::Width), self.sides_cell(fit)),
            self.size_row("sizes.height", &from, &fit.height, told(there.1, Direction::Height), dash()),
            self.size_row("sizes.depth", &wall, &fit.depth, told(there.2, Direction::Depth), dash()),
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
        let both = |one: Html, other: Html| show!(self.words, "sizes.both", left = one, right = other);
        SizeCell {
            figure: both(one.figure, other.figure),
            note: one.note.zip(other.note).map(|(one, other)| both(one, other)),
        }
    }

    fn size_row(
        &self,
        key: &str,
        note: &str,
        gauge: &DimensionCheck,
        (there, unknown): (Option<Length>, bool),
        sides: SizeCell,
    ) -> SizeRow {
        let needs = match (gauge.asked, gauge.least()) {
            (Some(asked), _) => self.range_cell(asked),
            (None, Some(least)) => self.range_cell(LengthRange::at_least(least)),
            (None, None) => dash(),
        };
        let misfit = gauge.misfit();
        // What is too large is told where it is largest, and by how much.
        let (there, left) = match misfit {
            Some(Misfit::TooLarge(by)) => (gauge.at_most(), Some(by)),
            _ => (gauge.there.or(there), gauge.left_over()),
        };
        let verdict = match (misfit, left) {
            _ if unknown => State::new(StateShape::FitUnknown, say!(self.words, "fit.unknown")),
            (Some(Misfit::TooSmall(_)), _) => State::new(StateShape::DoesNotFit, say!(self.words, "sizes.too_small")),
            (Some(Misfit::TooLarge(_)), _) => State::new(StateShape::DoesNotFit, say!(self.words, "sizes.too_large")),
            (None, Some(_)) => State::new(StateShape::Fits, say!(self.words, "fit.yes")),
            // What its sheet asks for is bounded by what is around it, which leaves enough.
            (None, None) if gauge.asked.is_some() => State::new(StateShape::Fits, say!(self.words, "fit.yes")),
            (None, None) => State::new(StateShape::FitUnknown, say!(self.words, "sizes.nothing")),
        };
        SizeRow {
            name: say!(self.words, key),
            note: Some(Html::text(note)),
            needs,
            measured: self.cell(there),
            left: self.cell(left),
            each_side: sides,
            verdict,
        }
    }

    fn square_row(&self, at: SheetOpening<'_>) -> Option<SizeRow> {
        let skew = out_of_square(at.room, at.opening)?;
        let left = skew.within - skew.out;
        let note = match skew.by {
            Skew::Diagonals => "sizes.diagonals",
            Skew::Side => "sizes.by_plumb",
        };
        let verdict = match skew.is_too_far() {
            true => State::new(StateShape::DoesNotFit, say!(self.words, "sizes.skew")),
            false => State::new(StateShape::Fits, say!(self.words, "sizes.square")),
        };
        Some(SizeRow {
            name: say!(self.words, "sizes.square"),
            note: Some(show!(self.words, note)),
            needs: self.range_cell(LengthRange::at_most(skew.within)),
            measured: self.cell(Some(skew.out)),
            left: self.cell(Some(left)),
            each_side: dash(),
            verdict,
        })
    }

    fn cell(&self, length: Option<Length>) -> SizeCell {
        length.map_or_else(dash, |length| SizeCell {
            figure: self.wording.first(length),
            note: self.wording.second(length),
        })
    }

    fn range_cell(&self, range: LengthRange) -> SizeCell {
        SizeCell { figure: self.wording.range(range), note: self.wording.range_second(range) }
    }
}

/// What a figure is called where it is told who read it.
fn figure(side: Side) -> &'static str {
    match side {
        Side::Width => "sizes.figure.width",
        Side::Height => "sizes.figure.height",
        Side::Depth => "sizes.figure.depth",
        Side::Diagonal => "sizes.figure.diagonals",
        Side::PlumbLeft | Side::PlumbRight => "sizes.figure.plumb",
        Side::Power | Side::Gas | Side::Water | Side::Drain | Side::Duct => "sizes.figure.services",
        Side::Sill
        | Side::InFront
        | Side::CounterDepth
        | Side::CounterHeight
        | Side::InsideWidth
        | Side::InsideDepth
        | Side::InsideHeight
        | Side::Below
        | Side::Apron
        | Side::Cavity
        | Side::RoughIn
        | Side::Valve => "sizes.figure.around",
    }
}

fn dash() -> SizeCell {
    SizeCell { figure: Html::text("–"), note: None }
}
