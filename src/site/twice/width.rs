//! The width of a cabinet: in its row, and at the selection of that name; and the length of a pull and of its screws' way.

use crate::book::{DetailName, Part, PartIs, Room, Selection};
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::vocabulary::Kind;

use super::{Differ, TOLERANCE, Twice};

/// Cabinets of a room whose widths differ.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let differs = |(row, part)| {
        let selection = chosen_for(room, part)?;
        let own = SourcedFigure::written(selection.settled()?.size.width.spanned()?, Spot::Selection(&selection.name));
        let there = SourcedFigure::planned(part.width.spanned()?, Spot::Part(part.is.word(), row));
        let apart = (own.value - there.value).abs() > TOLERANCE;
        apart.then(|| Twice::of(&selection.name, "the width", (own, there), Differ::Apart))
    };
    parts(room).filter_map(differs).chain(room.selections.iter().filter_map(shorter_than_its_screws)).collect()
}

/// A pull or a bar that is shorter than the way between its screws.
fn shorter_than_its_screws(selection: &Selection) -> Option<Twice<'_>> {
    let spot = Spot::Selection(&selection.name);
    let each = selection.standing().iter().find_map(|option| {
        let own = option.size.length.spanned()?;
        let (value, at) = option.length(DetailName::CentreToCentre).filter(|(between, _)| *between > own.value)?;
        Some((SourcedFigure::written(own, spot), SourcedFigure { value, at, provenance: Provenance::Written, spot }))
    });
    let is_one = selection.is_any(&[Kind::Pull, Kind::Bar, Kind::GrabBar]);
    let how = Differ::LessThan("the way between its screws");
    each.filter(|_| is_one).map(|figures| Twice::of(&selection.name, "the length", figures, how).asked())
}

/// The cabinet selection that a part names, where one part alone is called so.
pub(super) fn chosen_for<'a>(room: &'a Room, part: &Part) -> Option<&'a Selection> {
    let name = part.is.word();
    let is_one = |other: &Part| matches!(other.is, PartIs::Cabinet(_) | PartIs::Tall(_));
    let called_so = parts(room).filter(|(_, other)| is_one(other) && other.is.word().eq_ignore_ascii_case(name));
    let cabinets = room.selections.iter().filter(|selection| selection.is(Kind::Cabinet));
    let mut cabinets = cabinets.filter(|selection| selection.name.eq_ignore_ascii_case(name));
    cabinets.next().filter(|_| is_one(part) && called_so.count() == 1)
}

/// Every part of a room's rows, with the name of its row.
pub(super) fn parts(room: &Room) -> impl Iterator<Item = (&str, &Part)> {
    let runs = room.runs.iter().flat_map(|run| run.parts.iter().map(|part| (run.name.value.as_str(), part)));
    let islands = room.islands.iter();
    let sides = islands.flat_map(|island| {
        island.sides().flat_map(|side| side.parts.iter().map(|part| (island.name.value.as_str(), part)))
    });
    runs.chain(sides)
}
