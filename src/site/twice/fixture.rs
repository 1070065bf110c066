//! A thing that is larger than the plan sets it out.

use crate::book::{Fixture, Room};
use crate::site::plan::{chosen_for, glass_for, leaf_of, sides_at};
use crate::site::told::{SourcedFigure, Spot};
use crate::source::Spanned;
use crate::units::Length;

use super::{Differ, TOLERANCE, Twice};

/// Fixtures for which something larger is chosen; smaller, it leaves the place that is kept for it.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let larger = room.fixtures.iter().flat_map(|fixture| larger(room, fixture));
    larger.chain(room.fixtures.iter().filter_map(|fixture| leaf(room, fixture))).collect()
}

/// The leaf of a shower's door, where it is set out and as its glass is chosen.
fn leaf<'a>(room: &'a Room, fixture: &'a Fixture) -> Option<Twice<'a>> {
    let planned = fixture.door.spanned()?;
    let glass = glass_for(room, fixture)?;
    let chosen = leaf_of(fixture, glass.settled()?)?;
    let own = SourcedFigure::written(&chosen, Spot::Selection(&glass.name));
    let there = SourcedFigure::planned(planned, Spot::Fixture(&fixture.name));
    let apart = (chosen.value - planned.value).abs() > TOLERANCE;
    apart.then(|| Twice::of(&fixture.name, "the width of its door", (own, there), Differ::Apart))
}

fn larger<'a>(room: &'a Room, fixture: &'a Fixture) -> Vec<Twice<'a>> {
    let Some(selection) = chosen_for(room, fixture) else { return vec![] };
    let options = || selection.standing().iter().map(|option| sides_at(fixture, option));
    let greatest = |sides: Vec<Option<Spanned<Length>>>| sides.into_iter().flatten().max_by_key(|side| side.value);
    let sides = [
        ("the width", &fixture.width, greatest(options().map(|sides| sides.0).collect())),
        ("the depth", &fixture.depth, greatest(options().map(|sides| sides.1).collect())),
    ];
    let twice = sides.into_iter().filter_map(|(what, planned, chosen)| {
        let (planned, chosen) = (planned.spanned()?, chosen?);
        let own = SourcedFigure::written(&chosen, Spot::Selection(&selection.name));
        let there = SourcedFigure::planned(planned, Spot::Fixture(&fixture.name));
        let twice = || Twice::of(&fixture.name, what, (own, there), Differ::Apart);
        let is_settled = selection.settled().is_some();
        let told = || if is_settled { twice() } else { twice().asked() };
        (chosen.value > planned.value + TOLERANCE).then(told)
    });
    twice.collect()
}
