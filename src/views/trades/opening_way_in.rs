//! The sheet at an opening: verdict, drawing, sizes with the gap each side, services, way in.

use crate::book::NarrowPoint;
use crate::language::say;
use crate::site::Around;
use crate::site::fitting::{Passes, play_on_the_way};
use crate::units::Length;
use crate::views::pages::PageBuilder;
use crate::views::shared::html::Html;
use crate::views::shared::sheet::Fact;
use crate::views::shared::state::{State, StateShape};
use crate::views::trades::opening::SheetOpening;
use serde::Serialize;

/// A narrow point between the truck and the room.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayRow {
    pub name: String,
    pub clear: Html,
    pub carton: State,
    /// Out of its carton, doors off; absent when that is not known.
    pub bare: Option<State>,
}

impl PageBuilder<'_> {
    pub fn carton_facts(&self, at: SheetOpening<'_>) -> Vec<Fact> {
        let Some(fit) = at.thing.and_then(|(_, option)| option.fit.get()) else { return vec![] };
        let mut facts = Vec::new();
        facts.extend(fit.carton.get().map(|sides| self.worded("way_in.carton", self.wording.sides(sides.sides()))));
        facts.extend(
            fit.doors_off.get().map(|sides| self.worded("way_in.doors_off", self.wording.sides(sides.sides()))),
        );
        facts.extend(fit.weight.get().map(|weight| self.worded("opening_says.weight", self.wording.weight(*weight))));
        facts
    }

    pub fn way_rows(&self, around: &Around<'_>) -> Vec<WayRow> {
        let points = around.way_in.iter().map(|passage| (passage.point, passage.carton, passage.doors_off));
        let door = around.door.as_ref().map(|door| (&door.point, door.carton, door.doors_off));
        points.chain(door).map(|(point, carton, bare)| self.way_row(point, carton, bare)).collect()
    }

    fn way_row(&self, point: &NarrowPoint, carton: Option<Length>, bare: Option<Length>) -> WayRow {
        let name = crate::views::shared::lines::capital(&point.name);
        WayRow {
            name: if point.turns { say!(self.words, "way_in.turning", name = name) } else { name },
            clear: self.wording.sides(&[point.width, point.height]),
            carton: carton.map_or_else(
                || State::new(StateShape::FitUnknown, say!(self.words, "way_in.unknown")),
                |spare| self.passes(spare),
            ),
            bare: bare.map(|spare| self.passes(spare)),
        }
    }

    fn passes(&self, spare: Length) -> State {
        let length = |length: Length| self.wording.said(length);
        let units = self.subject.book.project.units;
        match Passes::with(spare, units) {
            Passes::Not => {
                State::new(StateShape::DoesNotFit, say!(self.words, "way_in.stops", by = length(spare.abs())))
            }
            Passes::Tightly => {
                let usual = length(play_on_the_way(units));
                let words = say!(self.words, "way_in.tight", by = length(spare), usual = usual);
                State::new(StateShape::FitUnknown, words)
            }
            Passes::Freely => State::new(StateShape::Fits, say!(self.words, "way_in.passes", by = length(spare))),
        }
    }
}
