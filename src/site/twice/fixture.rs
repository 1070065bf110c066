//! A thing that is larger than the plan sets it out.

use crate::book::{Fixture, Room};
use crate::site::plan::{chosen_for, sides_at};
use crate::site::told::{SourcedFigure, Spot};
use crate::source::Spanned;
use crate::units::Length;

use super::{Differ, TOLERANCE, Twice};

/// Fixtures for which something larger is chosen; smaller, it leaves the place that is kept for it.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    room.fixtures.iter().flat_map(|fixture| larger(room, fixture)).collect()
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

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// What is larger than the plan sets it out must have its place, and is told; smaller leaves what is kept for it.
    #[test]
    fn what_is_chosen_is_no_larger_than_its_fixture() {
        let tub = |plan: &str, size: &str| {
            Trial::of("source/contradiction")
                .room(&format!(
                    "outline: 9' x 7'\nfixtures: {{tub: {{wall: A, centre: 40\", {plan}, selection: Tub}}}}"
                ))
                .selection("selection: Tub\nkind: bathtub", &format!("size: {{{size}}}"))
        };
        tub("width: 60\", depth: 30\"", "width: 66\", depth: 30\"")
            .finds("the width of `tub` is 66\" (1676 mm) at `Tub`, and 60\" (1524 mm) at the fixture `tub`")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:3:47"]);
        tub("width: 60\", depth: 30\"", "width: 54\", depth: 30\"").stays_silent();
        tub("width: 60\", depth: 30\"", "width: 60 1/8\", depth: 30\"").stays_silent();
        tub("width: 60\", depth: 30\"", "width: 60\", depth: 32\"").finds_one();
        // Its end stands to the wall.
        tub("width: 30\", depth: 60\"", "width: 60\", depth: 30\"").stays_silent();
        tub("width: 30\", depth: 60\"", "width: 66\", depth: 30\"").finds_one();
    }
}
