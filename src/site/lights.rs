//! Lights where they hang: as their selection says, and as the plan sets them out.

use crate::book::{Hanging, HangsOver, HungLights, Island, Room, Run, Selection, Slot};
use crate::source::Spanned;
use crate::units::Length;

use super::told::{SourcedFigure, Spot};

/// What lights hang over.
#[derive(Clone, Copy, Debug)]
pub struct Beneath<'a> {
    /// An island or a counter.
    pub over: HangsOver,
    /// Its length.
    pub length: Option<SourcedFigure<'a>>,
    /// Its top from the finished floor.
    pub top: Option<SourcedFigure<'a>>,
}

/// The lights of a room's plan that are of a selection.
pub fn set_out<'a>(room: &'a Room, selection: &Selection) -> Vec<&'a HungLights> {
    let is_it = |lights: &&HungLights| lights.selection.get() == Some(&selection.name.value);
    room.lights.iter().filter(is_it).collect()
}

/// What they hang over: as the plan names it, else the only island of a room whose lights hang over one.
pub fn beneath<'a>(room: &'a Room, selection: &Selection, hangs: &Hanging) -> Option<Beneath<'a>> {
    let named = match set_out(room, selection).as_slice() {
        [lights] => lights.over.get(),
        [] => None,
        _ => return None,
    };
    let islands: Vec<&Island> = room.islands.iter().collect();
    if let Some(name) = named {
        let island = islands.iter().find(|island| island.name.value == *name).map(|island| of_island(island));
        return island.or_else(|| room.runs.iter().find(|run| run.name.value == *name).map(of_run));
    }
    match islands.as_slice() {
        [only] if hangs.over.get() == Some(&HangsOver::Island) => Some(of_island(only)),
        _ if hangs.over.get() == Some(&HangsOver::Counter) => the_only_counter(room),
        _ => None,
    }
}

/// The counter of a room whose runs have one height of counter.
fn the_only_counter(room: &Room) -> Option<Beneath<'_>> {
    let mut runs = room.runs.iter().filter(|run| run.above_floor.is_absent() && !run.counter.height.is_absent());
    let first = runs.next()?;
    let same = runs.all(|run| run.counter.height.get() == first.counter.height.get());
    same.then(|| of_run(first))
}

fn of_island(island: &Island) -> Beneath<'_> {
    let spot = Spot::Island(&island.name);
    let along = |size: &(Length, Length)| if island.turned.get() == Some(&true) { size.1 } else { size.0 };
    let length =
        island.size.spanned().map(|size| SourcedFigure::planned(&Spanned::new(along(&size.value), size.span), spot));
    Beneath {
        over: HangsOver::Island,
        length,
        top: island.height.spanned().map(|top| SourcedFigure::planned(top, spot)),
    }
}

/// A run is as long as its parts, which the plan adds up; what hangs over it says how long.
fn of_run(run: &Run) -> Beneath<'_> {
    let top = run.counter.height.spanned().map(|top| SourcedFigure::planned(top, Spot::Run(&run.name)));
    Beneath { over: HangsOver::Counter, length: None, top }
}

/// Where the lights of a selection hang: as it says itself, and for what it leaves out, as the plan has it.
pub fn hanging(room: &Room, selection: &Selection) -> Option<Hanging> {
    let own = selection.hangs.get();
    let lights = set_out(room, selection);
    if own.is_none() && (lights.is_empty() || !selection.hangs.is_absent()) {
        return None;
    }
    let mut hangs = own.cloned().unwrap_or_default();
    let Some(below) = beneath(room, selection, &hangs) else {
        return own.cloned().or_else(|| is_over_a_fixture(room, &lights).then_some(hangs));
    };
    let given = |told: Option<SourcedFigure<'_>>| told.map(|told| Slot::Given(Spanned::new(told.value, told.at)));
    if let (true, [one]) = (hangs.over.is_absent(), lights.as_slice()) {
        let at = one.over.span().unwrap_or(one.name.span);
        hangs.over = Slot::Given(Spanned::new(below.over, at));
    }
    // What is told to hang over something else is not as high as what the plan has below it.
    if hangs.over.get().is_some_and(|over| *over != below.over) {
        return Some(hangs);
    }
    if hangs.length.is_absent() {
        hangs.length = given(below.length).unwrap_or_default();
    }
    if hangs.top.is_absent() {
        hangs.top = given(below.top).unwrap_or_default();
    }
    if let (true, [one]) = (hangs.at.is_absent(), lights.as_slice()) {
        hangs.at = one.at.clone();
    }
    Some(hangs)
}

/// Whether they are set out over a fixture or an opening, of which nothing is known but its place.
fn is_over_a_fixture(room: &Room, lights: &[&HungLights]) -> bool {
    let over = |name: &String| room.fixtures.iter().any(|fixture| fixture.name.value == *name);
    let is_over =
        |lights: &&HungLights| lights.over.get().is_some_and(|name| over(name) || room.opening(name).is_some());
    lights.iter().any(is_over)
}

/// How many of a selection the plan sets out, where it says a number.
pub fn planned(room: &Room, selection: &Selection) -> Option<usize> {
    let [lights] = set_out(room, selection).try_into().ok()?;
    let lights: &HungLights = lights;
    let points = lights.at.get().map(|at| at.0.len());
    points.or_else(|| usize::try_from(*lights.count.get()?).ok())
}
