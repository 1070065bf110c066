//! Which runs and islands a counter lies on, and how thick it is there.

use crate::book::{DetailName, Opening, ProductOption, Room, Selection};
use crate::units::{Area, Length};
use crate::vocabulary::Kind;

use super::plan::{Plan, Row, RowOf, Thing};

/// Whether an option of a counter covers the run, island or place to sit of that name. A room's only
/// counter, of which nobody says where it lies, covers them all.
pub fn covers(room: &Room, option: &ProductOption, name: &str) -> bool {
    match option.top.get().map_or(&[][..], |top| &top.lies_on) {
        [] => is_alone(room),
        names => names.iter().any(|covered| covered.value == name),
    }
}

/// Whether a room has one counter alone.
pub fn is_alone(room: &Room) -> bool {
    let counters = |selection: &&Selection| selection.is(Kind::Counter);
    room.selections.iter().filter(counters).count() == 1
}

/// How much of a run its counter lies on, along its front.
pub fn length_below(plan: &Plan<'_>, row: &Row<'_>) -> Length {
    let things = row.things.iter().filter_map(|at| plan.things.get(*at));
    things.filter(|thing| plan.lies_over(row, thing)).map(Thing::width).sum()
}

/// The area of the runs and islands of those names, holes for sinks and cooktops not taken off: of an island by its
/// size, of a run by what stands below its counter in the plan. None while one of them is not known.
pub fn area_of(plan: Option<&Plan<'_>>, room: &Room, names: &[&str]) -> Option<Area> {
    let area = |one: Length, other: Length| i128::from(one.nanometres()) * i128::from(other.nanometres());
    let each = names.iter().map(|name| {
        if let Some(island) = room.islands.iter().find(|island| island.name.value == *name) {
            let (one, other) = *island.size.get()?;
            return Some(area(one, other));
        }
        let plan = plan.filter(|plan| plan.is_sound())?;
        let row = plan.rows.iter().find(|row| matches!(row.of, RowOf::Run(run) if run.name.value == *name))?;
        let counter = row.counter.filter(|_| row.is_whole)?;
        Some(area(length_below(plan, row), counter.depth()))
    });
    each.sum::<Option<i128>>().map(Area::from_square_nanometres).filter(|area| *area > Area::ZERO)
}

/// What an option of a counter lies on, by the names of runs and islands; none where another counter of the room lies
/// on some of it too, or nobody says.
pub fn lies_on_alone<'a>(room: &'a Room, selection: &Selection, option: &'a ProductOption) -> Option<Vec<&'a str>> {
    let said = option.top.get().map_or(&[][..], |top| &top.lies_on);
    let runs = room.runs.iter().filter(|run| run.above_floor.is_absent() && run.counter.depth.get().is_some());
    let all =
        || runs.map(|run| run.name.value.as_str()).chain(room.islands.iter().map(|island| island.name.value.as_str()));
    let names: Vec<&str> = match said {
        [] if is_alone(room) => all().collect(),
        [] => return None,
        said => said.iter().map(|name| name.value.as_str()).collect(),
    };
    let others = room.selections.iter().filter(|other| other.is(Kind::Counter) && !std::ptr::eq(*other, selection));
    let shared = others.flat_map(Selection::standing).any(|other| names.iter().any(|name| covers(room, other, name)));
    (!shared).then_some(names)
}

/// The thickness of the counter that an opening is cut into: of the one that covers its row, or of the room's only
/// one; of several that may still be chosen, the greatest, which hangs a bowl lowest. None where nobody says.
pub fn thickness_at(room: &Room, opening: &Opening) -> Option<Length> {
    let name = super::row_name(room, opening);
    let lies_there = |option: &&ProductOption| name.map_or(is_alone(room), |name| covers(room, option, name));
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let thick = counters.flat_map(|counter| counter.standing().iter().filter(lies_there));
    thick.filter_map(|option| Some(option.length(DetailName::Thickness)?.0)).max()
}
