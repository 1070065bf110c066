//! The edges of a counter that are seen: its front, and its ends where the row that it lies on ends in the open.

use crate::book::{End, Opening, Part, PartIs, Room, Run, RunEnd};
use crate::site::plan::{Plan, Row, RowOf, Thing};
use crate::units::Length;
use crate::vocabulary::Trait;

/// What stands nearer than that to an end of a counter hides it (common practice: a hand's breadth).
const HIDES: Length = Length::from_inches(4);

/// The edges of the counter of a run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CounterEdges {
    /// Its front, from end to end.
    pub front: Length,
    /// Its ends that are in the open.
    pub open_ends: Vec<End>,
    /// From its back to its front edge.
    pub depth: Option<Length>,
}

impl CounterEdges {
    /// All of its edges that are seen, as far as they are known: open ends count where its depth is written.
    pub fn length(&self) -> Length {
        let ends = i64::try_from(self.open_ends.len()).unwrap_or_default();
        self.front + self.depth.unwrap_or_default().times(ends)
    }
}

/// The edges of a run's counter: by the plan where the run has a place there, else by its parts. None where a width
/// is not known, or the run hangs.
pub fn counter_edges(plan: Option<&Plan<'_>>, room: &Room, run: &Run) -> Option<CounterEdges> {
    if !run.above_floor.is_absent() {
        return None;
    }
    let is_it = |row: &&Row<'_>| matches!(row.of, RowOf::Run(own) if std::ptr::eq(own, run));
    match plan.and_then(|plan| Some((plan, plan.rows.iter().find(is_it)?))) {
        Some((plan, row)) => in_plan(plan, row, run),
        None => in_words(room, run),
    }
}

fn in_plan(plan: &Plan<'_>, row: &Row<'_>, run: &Run) -> Option<CounterEdges> {
    let counter = row.counter.filter(|_| row.is_whole)?;
    let things = row.things.iter().filter_map(|at| plan.things.get(*at));
    let carried: Vec<&Thing<'_>> = things.filter(|thing| plan.lies_over(row, thing)).collect();
    let left = *carried.iter().min_by_key(|thing| thing.along.0)?;
    let right = *carried.iter().max_by_key(|thing| thing.along.1)?;
    let is_open = |(thing, end): &(&Thing<'_>, End)| {
        let at_the_end = if *end == End::Left { thing.along.0 == row.along.0 } else { thing.along.1 == row.along.1 };
        match said(run, *end).filter(|_| at_the_end) {
            Some(end) => end == RunEnd::Open,
            None => plan.beside(thing, *end).is_none_or(|beside| beside.distance > HIDES),
        }
    };
    let open = [(left, End::Left), (right, End::Right)].into_iter().filter(is_open);
    Some(CounterEdges {
        front: carried.iter().map(|thing| thing.width()).sum(),
        open_ends: open.map(|(_, end)| end).collect(),
        depth: Some(counter.depth()),
    })
}

/// By the parts of a run without a place, from left to right, and what it says that it meets.
fn in_words(room: &Room, run: &Run) -> Option<CounterEdges> {
    let mut parts: Vec<&Part> = run.parts.iter().collect();
    if run.from == End::Right {
        parts.reverse();
    }
    let carries = |part: &&&Part| match &part.is {
        PartIs::Tall(_) => false,
        PartIs::Opening(name) => room.opening(&name.value).is_some_and(is_under_a_counter),
        PartIs::Cabinet(_) | PartIs::Filler(_) | PartIs::Panel(_) | PartIs::Gap(_) => true,
    };
    let width = |part: &&Part| match &part.is {
        PartIs::Filler(wide) | PartIs::Panel(wide) | PartIs::Gap(wide) => Some(*wide),
        PartIs::Opening(name) => room.opening(&name.value)?.governing_width(),
        PartIs::Cabinet(_) | PartIs::Tall(_) => part.width.get().copied(),
    };
    let carried: Vec<&Part> = parts.iter().filter(carries).copied().collect();
    let widths: Option<Vec<Length>> = carried.iter().map(width).collect();
    let ends = [(End::Left, parts.first()), (End::Right, parts.last())].into_iter();
    let open =
        ends.filter(|(end, part)| part.is_some_and(|part| carries(&part)) && said(run, *end) == Some(RunEnd::Open));
    Some(CounterEdges {
        front: widths?.into_iter().sum(),
        open_ends: open.map(|(end, _)| end).collect(),
        depth: run.counter.depth.get().copied(),
    })
}

fn is_under_a_counter(opening: &Opening) -> bool {
    !opening.takes_one(Trait::StandsTall) && !opening.takes_one(Trait::BreaksCounter)
}

fn said(run: &Run, end: End) -> Option<RunEnd> {
    if end == End::Left { run.left_end.get().copied() } else { run.right_end.get().copied() }
}
