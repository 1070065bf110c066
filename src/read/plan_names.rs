//! Names in a room's plan that must be somebody's: openings in runs, selections of fixtures, islands under lights, what
//! switches work.

use std::collections::BTreeSet;

use crate::book::{PartIs, Room, Top};
use crate::finding::{Code, Phrase, phrase};
use crate::source::Spanned;
use crate::vocabulary::NameOf;

use crate::vocabulary::Faults;
use crate::vocabulary::values::unknown_name;

/// Checks every name in a room's plan.
pub fn check(room: &Room, faults: &mut Faults) {
    let runs = room.runs.iter().map(|run| (&run.name, &run.parts));
    let sides = room.islands.iter().flat_map(|island| island.sides().map(|side| (&island.name, &side.parts)));
    for (item, parts) in runs.chain(sides) {
        faults.item = Some(item.clone());
        for part in parts {
            let own = match &part.is {
                PartIs::Opening(name) => Some(name),
                _ => None,
            };
            own.into_iter().chain(&part.holds).for_each(|name| opening(room, name, faults));
        }
    }
    for fixture in &room.fixtures {
        faults.item = Some(fixture.name.clone());
        fixture.opening.spanned().into_iter().for_each(|name| opening(room, name, faults));
        fixture.selection.spanned().into_iter().for_each(|name| selection(room, name, faults));
    }
    for hung in &room.lights {
        faults.item = Some(hung.name.clone());
        hung.selection.spanned().into_iter().for_each(|name| selection(room, name, faults));
        hung.over.spanned().into_iter().for_each(|name| under_lights(room, name, faults));
    }
    for wall_box in room.switches.iter().chain(&room.outlets) {
        faults.item = Some(wall_box.name.clone());
        wall_box.selection.spanned().into_iter().for_each(|name| selection(room, name, faults));
        wall_box.beside.spanned().into_iter().for_each(|name| door_or_window(room, name, faults));
        wall_box.island.spanned().into_iter().for_each(|name| island(room, name, faults));
        wall_box.works.iter().for_each(|name| worked(room, name, faults));
    }
    for (name, top) in tops(room) {
        faults.item = Some(name.clone());
        let on_runs = top.seams.iter().filter_map(|seam| seam.on.spanned());
        top.lies_on.iter().chain(on_runs).for_each(|name| carrier(room, name, faults));
    }
    for (name, run) in behind_runs(room) {
        faults.item = Some(name.clone());
        island_or_run(room, run, faults);
    }
    faults.item = None;
}

/// The runs that surfaces are set behind; what several options share is told once.
fn behind_runs(room: &Room) -> impl Iterator<Item = (&Spanned<String>, &Spanned<String>)> {
    let mut seen = BTreeSet::new();
    let options = room.selections.iter().flat_map(|selection| selection.options.iter().map(move |of| (selection, of)));
    let named = options.flat_map(|(selection, option)| option.laid.behind.iter().map(|run| (&selection.name, run)));
    named.filter(move |(_, run)| seen.insert(run.span))
}

/// The counters of a room; what several options share is told once.
fn tops(room: &Room) -> impl Iterator<Item = (&Spanned<String>, &Top)> {
    let mut seen = BTreeSet::new();
    let options = room.selections.iter().flat_map(|selection| selection.options.iter().map(move |of| (selection, of)));
    options.filter_map(move |(selection, option)| {
        let top = option.top.spanned().filter(|top| seen.insert(top.span))?;
        Some((&selection.name, &top.value))
    })
}

/// What a counter lies on: a run, an island, a place to sit, or a thing that was chosen or stands on the plan, such as a
/// vanity.
fn carrier(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    let seating = room.seating.iter().map(|seating| &seating.name);
    let fixtures = room.fixtures.iter().map(|fixture| &fixture.name);
    let things = room.selections.iter().map(|selection| &selection.name);
    if !seating.chain(fixtures).chain(things).any(|thing| thing.value == name.value) {
        island_or_run(room, name, faults);
    }
}

fn opening(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    if room.opening(name).is_none() {
        let known = room.openings.iter().map(|opening| opening.name.as_str());
        unknown_name(name.span, name, NameOf::Opening, known, faults);
    }
}

fn selection(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    if !room.selections.iter().any(|selection| selection.name.value == name.value) {
        let known = room.selections.iter().map(|selection| selection.name.as_str());
        unknown_name(name.span, name, NameOf::Selection, known, faults);
    }
}

fn island_or_run(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    let known = islands_and_runs(room).collect();
    one_of(known, "there is no island or run called", "write the room's `islands` or `runs` first", name, faults);
}

fn islands_and_runs(room: &Room) -> impl Iterator<Item = &str> {
    let islands = room.islands.iter().map(|island| island.name.value.as_str());
    islands.chain(room.runs.iter().map(|run| run.name.value.as_str()))
}

/// What lights are set out over: an island, a run, a fixture or an opening.
fn under_lights(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    let fixtures = room.fixtures.iter().map(|fixture| fixture.name.value.as_str());
    let openings = room.openings.iter().map(|opening| opening.name.value.as_str());
    let known = islands_and_runs(room).chain(fixtures).chain(openings).collect();
    let first = "write the room's `islands`, `runs` or `fixtures` first";
    one_of(known, "there is no island, run, fixture or opening called", first, name, faults);
}

/// What a switch works: something that is chosen, lights of the plan, or an outlet.
fn worked(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    let things = room.selections.iter().map(|selection| selection.name.value.as_str());
    let lights = room.lights.iter().map(|lights| lights.name.value.as_str());
    let outlets = room.outlets.iter().map(|outlet| outlet.name.value.as_str());
    let known = things.chain(lights).chain(outlets).collect();
    one_of(known, "there is nothing chosen, no light and no outlet called", "write what is chosen first", name, faults);
}

fn door_or_window(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    let doors = room.doors.iter().map(|door| door.name.value.as_str());
    let known = doors.chain(room.windows.iter().map(|window| window.name.value.as_str())).collect();
    one_of(known, "there is no door or window called", "write the room's `doors` or `windows` first", name, faults);
}

fn island(room: &Room, name: &Spanned<String>, faults: &mut Faults) {
    let known = room.islands.iter().map(|island| island.name.value.as_str()).collect();
    one_of(known, "there is no island called", "write the room's `islands` first", name, faults);
}

fn one_of(
    known: Vec<&str>,
    there_is_none: &'static str,
    first: &'static str,
    name: &Spanned<String>,
    faults: &mut Faults,
) {
    if known.contains(&name.value.as_str()) {
        return;
    }
    let message = phrase!("{there_is_none} `{}`", there_is_none, name.value);
    let remedy = match known.as_slice() {
        [] => first.into(),
        known => {
            phrase!("write one of {}", Phrase::joined(known.iter().take(12).map(|name| Phrase::name(name)), ", "))
        }
    };
    faults.stop(Code::UNKNOWN_NAME, name.span, message, remedy);
}
