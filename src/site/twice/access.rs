//! What is offered to somebody on weak legs or in a wheelchair, and the inside of a shower: as it is written, and as
//! it is ordered and drawn.

use crate::book::{AccessDistance, ClearDistance, Fixture, Room, Selection};
use crate::site::Site;
use crate::site::distances::{less_for_access, planned, planned_for_access, step};
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::{Differ, TOLERANCE, Twice};

/// The bars at a toilet: the distance that tells their length, and what the one of them is called.
const BARS: [(AccessDistance, Mention, Mention); 2] = [
    (AccessDistance::SideGrabBar, Mention::AtTheSide, Mention::Behind),
    (AccessDistance::RearGrabBar, Mention::Behind, Mention::AtTheSide),
];

/// Distances for access and of showers that two places of a room tell differently.
pub(super) fn of_room<'a>(site: &Site<'a>, room: &'a Room) -> Vec<Twice<'a>> {
    let mut all: Vec<Twice<'a>> = BARS.into_iter().filter_map(|bar| bar_at_a_toilet(room, bar)).collect();
    all.extend(inside_of_a_shower(room));
    all.extend(entry_of_a_shower(room));
    all.extend(step_of_a_shower(room));
    all.extend(FLOORS.into_iter().filter_map(|(key, what)| floor_for_a_chair(site, room, key, what)));
    all.extend(beside_the_toilet(site, room));
    all
}

/// Floors for a chair, by their names, with what they are.
const FLOORS: [(AccessDistance, &str); 3] = [
    (AccessDistance::TurningCircle, "the turning circle"),
    (AccessDistance::ToiletSpaceFromSideWall, "the toilet's space from the wall at its side"),
    (AccessDistance::ToiletSpaceFromRearWall, "the toilet's space from the wall behind it"),
];
/// Floor may be written as so much more than the plan leaves, and a toilet so far beside its place: 2 in (common practice:
/// a room that is out of square).
const ROOMS: Length = Length::from_inches(2);

/// What is let into a floor is lower (common practice: a base of 20 to 40 mm).
const LET_IN: Length = Length::from_inches(2);

/// More floor for a chair than the plan leaves.
fn floor_for_a_chair<'a>(
    site: &Site<'a>,
    room: &'a Room,
    key: AccessDistance,
    what: &'static str,
) -> Option<Twice<'a>> {
    let written = SourcedFigure::written(room.access.distances.least(key)?, Spot::Access);
    let there = less_for_access(site, room, key)?;
    let planned = SourcedFigure { value: there.value, at: there.at, provenance: Provenance::Plan, spot: Spot::Plan };
    (written.value > planned.value + ROOMS)
        .then(|| Some(Twice::of(room.name.spanned()?, what, (written, planned), Differ::Apart).asked()))?
}

/// A toilet that is planned for access stands neither nearer to its wall nor farther from it than its place allows: the
/// plan that has it farther off contradicts what is written.
fn beside_the_toilet<'a>(site: &Site<'a>, room: &'a Room) -> Option<Twice<'a>> {
    let key = ClearDistance::ToiletToSide;
    let written = SourcedFigure::written(room.clearances.distances.least(key)?, Spot::Clearances);
    let plan = site.sound_plan(room).filter(|_| planned_for_access(site.book, room))?;
    // In a place that is wider than it is, it stands to one side.
    let is_placed = plan.of_kind(Kind::Toilet).all(|toilet| toilet.opening.is_none());
    let there = planned(plan, key).filter(|_| is_placed)?;
    let plan = SourcedFigure { value: there.value, at: there.at, provenance: Provenance::Plan, spot: Spot::Plan };
    let what = "the way from the toilet's centre to its side";
    (written.value + ROOMS < plan.value)
        .then(|| Some(Twice::of(room.name.spanned()?, what, (written, plan), Differ::Apart).asked()))?
}

/// A step that is written lower than the tray that is ordered, unless that is let into the floor.
fn step_of_a_shower(room: &Room) -> Option<Twice<'_>> {
    let told = SourcedFigure::written(room.access.distances.least(AccessDistance::ShowerThreshold)?, Spot::Access);
    let (tray, step) = step(room).filter(|(_, step)| step.value >= LET_IN)?;
    let step = SourcedFigure::written(&step, Spot::Selection(&tray.name));
    (told.value + TOLERANCE < step.value)
        .then(|| Twice::of(&tray.name, "the step at its entry", (told, step), Differ::Apart).asked())
}

/// A thing's name, and its length as it is ordered or drawn.
type Bar<'a> = (&'a Spanned<String>, SourcedFigure<'a>);

/// A bar that is ordered or drawn shorter than it is written; one that is called so is as long as that.
fn bar_at_a_toilet<'a>(room: &'a Room, (key, own, other): (AccessDistance, Mention, Mention)) -> Option<Twice<'a>> {
    let told = SourcedFigure::written(room.access.distances.least(key)?, Spot::Access);
    let bars = || bars(room).filter(|(name, _)| !other.is_in(&name.value) || own.is_in(&name.value));
    let named: Vec<Bar<'a>> = bars().filter(|(name, _)| own.is_in(&name.value)).collect();
    let (name, there, apart) = if named.is_empty() {
        // Any of them may be the one that is meant: the longest.
        let (name, longest) = bars().max_by_key(|(_, bar)| bar.value)?;
        (name, longest, told.value - longest.value)
    } else {
        let (name, bar) = named.into_iter().max_by_key(|(_, bar)| (bar.value - told.value).abs())?;
        (name, bar, (bar.value - told.value).abs())
    };
    (apart > TOLERANCE).then(|| Twice::of(name, "the length", (told, there), Differ::Apart))
}

/// Every bar to hold on to of a room, with its length.
fn bars(room: &Room) -> impl Iterator<Item = Bar<'_>> {
    let of_selection = |selection: &'_ Selection| selection.is(Kind::GrabBar);
    let ordered = room.selections.iter().filter(move |selection| of_selection(selection)).flat_map(|selection| {
        selection.standing().iter().filter_map(move |option| {
            Some((
                &selection.name,
                SourcedFigure::written(option.size.length.spanned()?, Spot::Selection(&selection.name)),
            ))
        })
    });
    let drawn = room.fixtures.iter().filter(|fixture| fixture.takes.get() == Some(&Kind::GrabBar));
    ordered.chain(drawn.filter_map(|fixture| {
        Some((&fixture.name, SourcedFigure::planned(fixture.width.spanned()?, Spot::Fixture(&fixture.name))))
    }))
}

/// The only shower of the plan.
fn shower(room: &Room) -> Option<&Fixture> {
    let mut showers = room
        .fixtures
        .iter()
        .filter(|fixture| fixture.takes.get().is_some_and(|kind| [Kind::ShowerSet, Kind::ShowerGlass].contains(kind)));
    showers.next().filter(|_| showers.next().is_none())
}

/// A shower that is written larger inside than it is drawn, or than the opening that it stands in.
fn inside_of_a_shower(room: &Room) -> Option<Twice<'_>> {
    let told = room.clearances.distances.sides.get(&ClearDistance::Shower)?;
    let written = |value: Length| SourcedFigure::written(&Spanned::new(value, told.span), Spot::Clearances);
    let (one, other) = told.value;
    let (name, sides) = drawn_shower(room)?;
    let (lesser, greater) = if sides.0.value <= sides.1.value { sides } else { (sides.1, sides.0) };
    let more = |written: SourcedFigure<'_>, there: &SourcedFigure<'_>| written.value > there.value + TOLERANCE;
    let pairs = [
        ("the lesser inside", written(one.min(other)), lesser),
        ("the greater inside", written(one.max(other)), greater),
    ];
    let (what, is, there) = pairs.into_iter().find(|(_, is, there)| more(*is, there))?;
    Some(Twice::of(name, what, (is, there), Differ::Apart))
}

/// No shower is less deep (common practice: a tray of 700 mm, and a bench in it).
const SHALLOWEST: Length = Length::from_inches(20);

/// Width and depth of a room's only shower, in the plan, else at its opening.
fn drawn_shower(room: &Room) -> Option<(&Spanned<String>, (SourcedFigure<'_>, SourcedFigure<'_>))> {
    let fixture = || {
        let fixture = shower(room)?;
        let side = |side| Some(SourcedFigure::planned(side, Spot::Fixture(&fixture.name)));
        Some((&fixture.name, (side(fixture.width.spanned()?)?, side(fixture.depth.spanned()?)?)))
    };
    let opening = || {
        let mut all = room.openings.iter().filter(|opening| opening.takes_a(Kind::ShowerSet));
        let opening = all.next().filter(|_| all.next().is_none())?;
        // The hole of a mixer in its wall is no shower.
        let opening = Some(opening).filter(|one| one.governing_depth().is_none_or(|deep| deep >= SHALLOWEST))?;
        let side = |side: &Spanned<Length>| SourcedFigure::written(side, Spot::Opening(&opening.name));
        let (width, depth) = (opening.width.get()?.least()?, opening.depth.get()?.least()?);
        Some((&opening.name, (side(width), side(depth))))
    };
    fixture().or_else(opening)
}

/// An entry that is written wider than the door that is drawn for it.
fn entry_of_a_shower(room: &Room) -> Option<Twice<'_>> {
    let told = SourcedFigure::written(room.access.distances.least(AccessDistance::ShowerEntry)?, Spot::Access);
    let fixture = shower(room)?;
    let door = SourcedFigure::planned(fixture.door.spanned()?, Spot::Fixture(&fixture.name));
    let how = Differ::MoreThan("the width of its door");
    (told.value > door.value + TOLERANCE).then(|| Twice::of(&fixture.name, "the entry", (told, door), how))
}
