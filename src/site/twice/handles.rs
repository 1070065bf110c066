//! How far pulls stand out, as they are chosen, and as a run is planned with them.

use crate::book::{DetailName, Room};
use crate::site::told::{SourcedFigure, Spot};
use crate::units::Length;
use crate::vocabulary::Kind;

use super::{Differ, TOLERANCE, Twice};

/// Runs whose handles are planned to stand out less than any that is chosen.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let pulls = room.selections.iter().filter(|selection| selection.is_any(&[Kind::Pull, Kind::Knob]));
    let told = pulls.filter_map(|selection| {
        let (out, at) = selection.settled()?.length(DetailName::Projection)?;
        Some((out, at, selection))
    });
    let all: Vec<_> = told.collect();
    // Each front may have any of them: no run is planned for less than the least that is chosen.
    let Some((out, at, pull)) = all.into_iter().min_by_key(|(out, ..)| *out) else { return vec![] };
    let less = |planned: Length| planned + TOLERANCE < out;
    let runs = room.runs.iter().filter_map(|run| Some((run, run.handles.spanned().filter(|told| less(told.value))?)));
    let twice = runs.map(|(run, told)| {
        let spot = Spot::Selection(&pull.name);
        let chosen = SourcedFigure { at, ..SourcedFigure::written(told, spot) };
        let chosen = SourcedFigure { value: out, ..chosen };
        let planned = SourcedFigure::planned(told, Spot::Run(&run.name));
        Twice::of(&run.name, "how far its handles stand out", (planned, chosen), Differ::Apart)
    });
    twice.collect()
}
