//! Lights: where the plan sets them out, and where the selection hangs them.

use crate::book::{Hanging, HungLights, Room, Selection};
use crate::site::lights::{Beneath, beneath, set_out};
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::units::Length;

use super::{ComparedValue, Differ, Joined, TOLERANCE, Twice};

/// Centres, and what is below them, may differ by so much: 1 in (common practice).
const CENTRES: Length = Length::from_inches(1);

/// Lights of a room that two places hang differently.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let hung = room.selections.iter().filter_map(|selection| Some((selection, selection.hangs.get()?)));
    hung.flat_map(|(selection, hangs)| of(room, selection, hangs)).collect()
}

fn of<'a>(room: &'a Room, selection: &'a Selection, hangs: &'a Hanging) -> Vec<Twice<'a>> {
    let mut all = Vec::new();
    let planned = set_out(room, selection);
    if let [lights] = planned.as_slice() {
        all.extend(number(selection, hangs, lights).or_else(|| centres(selection, hangs, lights)));
    }
    if let Some(below) = beneath(room, selection, hangs) {
        all.extend(over(selection, hangs, &below));
    }
    all
}

/// How many.
fn number<'a>(selection: &'a Selection, hangs: &'a Hanging, lights: &'a HungLights) -> Option<Twice<'a>> {
    let own = hangs.at.spanned()?;
    let at = lights.at.spanned().map(|at| (at.value.0.len(), at.span));
    let (planned, span) = at.or_else(|| {
        let count = lights.count.spanned()?;
        Some((usize::try_from(count.value).ok()?, count.span))
    })?;
    let count = |many: usize| ComparedValue::Count(u32::try_from(many).unwrap_or(u32::MAX));
    let spot = Spot::Selection(&selection.name);
    (planned != own.value.0.len()).then(|| Twice {
        about: &selection.name,
        what: "the number",
        joined: Joined::Of,
        counts: SourcedFigure { value: count(own.value.0.len()), at: own.span, provenance: Provenance::Written, spot },
        differs: SourcedFigure {
            value: count(planned),
            at: span,
            provenance: Provenance::Plan,
            spot: Spot::Lights(&lights.name),
        },
        how: Differ::Apart,
        decides_a_fit: false,
    })
}

/// Where each hangs: the first that differs.
fn centres<'a>(selection: &'a Selection, hangs: &'a Hanging, lights: &'a HungLights) -> Option<Twice<'a>> {
    let pairs = hangs.at.get()?.0.iter().zip(&lights.at.get()?.0);
    let mut apart = pairs.filter(|(own, planned)| (own.value - planned.value).abs() > CENTRES);
    let (own, planned) = apart.next()?;
    let own = SourcedFigure::written(own, Spot::Selection(&selection.name));
    let planned = SourcedFigure::planned(planned, Spot::Lights(&lights.name));
    Some(Twice::of(&selection.name, "the centre of one", (own, planned), Differ::Apart).asked())
}

/// Length and top of what they hang over.
fn over<'a>(selection: &'a Selection, hangs: &'a Hanging, below: &Beneath<'a>) -> Vec<Twice<'a>> {
    let spot = Spot::Selection(&selection.name);
    let pairs = [
        ("the length below", &hangs.length, below.length, CENTRES),
        ("the top below", &hangs.top, below.top, TOLERANCE),
    ];
    let differs = pairs.into_iter().filter_map(|(what, own, planned, tolerance)| {
        let (own, planned) = (SourcedFigure::written(own.spanned()?, spot), planned?);
        let apart = (own.value - planned.value).abs() > tolerance;
        apart.then(|| Twice::of(&selection.name, what, (own, planned), Differ::Apart).asked())
    });
    differs.collect()
}
