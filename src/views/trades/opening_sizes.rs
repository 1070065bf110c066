//! The sizes on an opening's sheet: what is needed, what is there, what is left over.

use crate::book::{AsWritten, Opening, Readings, Room, Slot};
use crate::site::fitting::{DimensionCheck, Fitting, Misfit, Skew, out_of_square};
use crate::units::{Length, LengthRange};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::figures::finer;
use crate::views::shared::html::Html;
use crate::views::shared::state::{State, StateShape};
use crate::views::trades::opening::{SheetOpening, maker_sheet};
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
        let begin = who.map_or(" The book has it as planned:".to_string(), |who| format!(" The book has {who}'s:"));
        let sides = [("width", &before.width), ("height", &before.height), ("depth", &before.depth)];
        let least = |slot: &Slot<Readings>| Some(slot.get()?.least()?.value);
        let known = sides.into_iter().filter_map(|(name, slot)| Some((name, least(slot)?)));
        known.fold(Html::text(&begin), |told, (name, length)| {
            told.then(format!(" {name} ").as_str()).then(figures::length(self.wording, length))
        })
    }

    /// The opening's own sizes, for one that nothing goes into yet.
    fn fitting_of_nothing(&self, at: SheetOpening<'_>) -> (Option<Length>, Option<Length>, Option<Length>) {
        let height = self.height_of(at.room, at.opening);
        (at.opening.governing_width(), height, at.opening.governing_depth())
    }

    /// The height of an opening, by all that ends it.
    pub fn height_of(&self, room: &Room, opening: &Opening) -> Option<Length> {
        crate::site::fitting::height(self.plans.room(room), room, opening)
    }

    pub fn sizes_from(&self, at: SheetOpening<'_>) -> Html {
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

    pub fn size_rows(&self, at: SheetOpening<'_>, fit: Option<&Fitting>) -> Vec<SizeRow> {
        let none = Fitting::default();
        let fit = fit.unwrap_or(&none);
        let there = self.fitting_of_nothing(at);
        let from = if at.opening.stands_on_the_floor() { "from FF" } else { "from its bottom" };
        let under = fit.under.as_ref().and_then(|above| above.is.name());
        let from = under.map_or(from.to_string(), |under| format!("{from}, under {under}"));
        let mut rows = vec![
            self.size_row("Width", "the least governs", &fit.width, there.0, self.sides_cell(fit)),
            self.size_row("Height", &from, &fit.height, there.1, dash()),
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
            (Some(Misfit::TooSmall(_)), _) => State::new(StateShape::DoesNotFit, "Too small"),
            (Some(Misfit::TooLarge(_)), _) => State::new(StateShape::DoesNotFit, "Too large"),
            (None, Some(_)) => State::new(StateShape::Fits, "Fits"),
            (None, None) => State::new(StateShape::FitUnknown, "Not known"),
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

    fn square_row(&self, at: SheetOpening<'_>) -> Option<SizeRow> {
        let skew = out_of_square(at.room, at.opening)?;
        let left = skew.within - skew.out;
        let note = match skew.by {
            Skew::Diagonals => "two diagonals",
            Skew::Side => "over its height, by the plumb line",
        };
        let verdict = match skew.is_too_far() {
            true => State::new(StateShape::DoesNotFit, "Out of square"),
            false => State::new(StateShape::Fits, "Square"),
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
}

fn dash() -> SizeCell {
    SizeCell { figure: Html::text("–"), note: None }
}
