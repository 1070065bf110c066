//! Sides of cabinets that are seen: where a row ends in the open, where a tall one stands over its neighbour,
//! the ends and the back of an island; and whether anybody says that they are finished.

use crate::book::{
    CabinetEnds, End, Island, IslandSide, Neighbour, Opening, Part, PartIs, Room, Run, RunEnd, Selection,
};
use crate::site::plan::{Plan, Row, RowOf, Thing};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait, Words};

/// What stands nearer hides a side (common practice: nobody looks into less than a hand's breadth).
const HIDES: Length = Length::from_inches(4);

/// What hangs on a wall and is lower than this is a shelf (common practice).
const SHELF: Length = Length::from_inches(6);

/// A side that is seen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SeenSide<'a> {
    /// What it is of: a part by its name, or an island.
    pub of: &'a str,
    /// Which side, in words: `right end`, `back`.
    pub side: &'static str,
    /// The run or island.
    pub row: &'a str,
    /// Where what it is of is written.
    pub at: Span,
    /// Whether it is finished, where anybody says; and where.
    pub finished: Option<(bool, Option<Span>)>,
    /// Whether the thing has no side of its own to be seen, and wants a panel.
    pub wants_panel: bool,
}

/// Every side of a room's cabinets that is seen; none where not all of the room could be read.
pub fn seen_sides<'a>(plan: Option<&Plan<'a>>, room: &'a Room) -> Vec<SeenSide<'a>> {
    if room.partly_unread {
        return vec![];
    }
    let by_selection = of_selections(room);
    let mut all = Vec::new();
    for run in &room.runs {
        for end in [End::Left, End::Right] {
            all.extend(end_of(plan, room, run, end));
        }
        all.extend(over_neighbours(room, run));
    }
    for island in &room.islands {
        let hides = |side: &IslandSide| {
            let clear = plan.and_then(|plan| plan.clear_behind(island, *side));
            clear.is_some_and(|clear| clear.distance <= HIDES)
        };
        let seen = IslandSide::ALL.into_iter().filter(|side| !hides(side));
        all.extend(seen.filter_map(|side| of_island(island, side)));
    }
    for side in all.iter_mut().filter(|side| side.finished.is_none()) {
        side.finished = by_selection;
    }
    all.extend(room.selections.iter().flat_map(|selection| of_a_vanity(room, selection)));
    all.extend(room.openings.iter().flat_map(of_an_appliance));
    all
}

/// What the cabinets' own selections say of their ends, where one answers for all.
fn of_selections(room: &Room) -> Option<(bool, Option<Span>)> {
    let cabinets = room.selections.iter().filter(|one| one.is(Kind::Cabinet) && one.place.is_absent());
    let said = cabinets.flat_map(Selection::standing).filter_map(|option| option.fact::<CabinetEnds>());
    let said: Vec<_> = said.collect();
    let of = |ends: CabinetEnds| said.iter().find(|(own, _)| **own == ends).map(|(_, at)| *at);
    let all = of(CabinetEnds::All).map(|at| (true, Some(at)));
    all.or_else(|| of(CabinetEnds::None).map(|at| (false, Some(at))))
}

/// The outer side of a run's last cabinet, where the run ends in the open.
fn end_of<'a>(plan: Option<&Plan<'a>>, room: &'a Room, run: &'a Run, end: End) -> Option<SeenSide<'a>> {
    let last = if run.from == end { run.parts.first()? } else { run.parts.last()? };
    // Of a shelf, all is seen; it is no box with a side of its own.
    let high = last.height.get().or_else(|| run.height.get());
    if !run.above_floor.is_absent() && high.is_none_or(|high| *high < SHELF) {
        return None;
    }
    let wants_panel = match &last.is {
        PartIs::Cabinet(_) | PartIs::Tall(_) => false,
        PartIs::Opening(name) => room.opening(&name.value)?.takes_one(Trait::WashesDishes),
        PartIs::Filler(_) | PartIs::Panel(_) | PartIs::Gap(_) => return None,
    };
    if matches!(last.is, PartIs::Opening(_)) && !wants_panel {
        return None;
    }
    let said = if end == End::Left { run.left_end.get() } else { run.right_end.get() };
    let is_open = match said {
        Some(word) => *word == RunEnd::Open,
        None => is_open_in_plan(plan?, run, last, end)?,
    };
    is_open.then(|| SeenSide {
        of: last.is.word(),
        side: if end == End::Left { "left end" } else { "right end" },
        row: &run.name.value,
        at: last.span,
        finished: of_both(last, run, end),
        wants_panel,
    })
}

/// Whether nothing stands beside the last part of a placed run.
fn is_open_in_plan(plan: &Plan<'_>, run: &Run, last: &Part, end: End) -> Option<bool> {
    let row: &Row<'_> = plan.rows.iter().find(|row| matches!(row.of, RowOf::Run(own) if std::ptr::eq(own, run)))?;
    let of_part = |thing: &&Thing<'_>| thing.part().is_some_and(|part| std::ptr::eq(part, last));
    let thing = row.things.iter().filter_map(|at| plan.things.get(*at)).find(of_part).filter(|_| row.is_whole)?;
    Some(plan.beside(thing, end).is_none_or(|beside| beside.distance > HIDES))
}

/// The sides of tall cabinets that stand over what is beside them in their run.
fn over_neighbours<'a>(room: &'a Room, run: &'a Run) -> Vec<SeenSide<'a>> {
    let low = |part: &Part| match &part.is {
        PartIs::Cabinet(_) => run.above_floor.is_absent(),
        PartIs::Opening(name) => {
            let other = room.opening(&name.value);
            other.is_some_and(|other| !other.takes_one(Trait::StandsTall) && other.sill.is_absent())
        }
        _ => false,
    };
    let pairs = run.parts.iter().zip(run.parts.iter().skip(1));
    let seen = |tall: &'a Part, end: End| SeenSide {
        of: tall.is.word(),
        side: if end == End::Left { "left side" } else { "right side" },
        row: &run.name.value,
        at: tall.span,
        finished: of_part(tall, end).or_else(|| of_run(run, end)),
        wants_panel: false,
    };
    let is_tall = |part: &Part| matches!(part.is, PartIs::Tall(_));
    // From a run's right end its parts go leftwards.
    let (before, after) = if run.from == End::Left { (End::Left, End::Right) } else { (End::Right, End::Left) };
    let of_pair = |(one, other): (&'a Part, &'a Part)| {
        let first = (is_tall(one) && low(other)).then(|| seen(one, after));
        first.or_else(|| (is_tall(other) && low(one)).then(|| seen(other, before)))
    };
    pairs.filter_map(of_pair).collect()
}

/// A side of an island in which nothing stands.
fn of_island(island: &Island, side: IslandSide) -> Option<SeenSide<'_>> {
    let edge = island.side(side);
    let stands = |side: IslandSide| !island.side(side).parts.is_empty();
    if stands(side) || !IslandSide::ALL.into_iter().any(stands) {
        return None;
    }
    Some(SeenSide {
        of: &island.name.value,
        side: side.word(),
        row: &island.name.value,
        at: island.name.span,
        finished: edge.finished.spanned().map(|finished| (finished.value, Some(finished.span))),
        wants_panel: false,
    })
}

/// The sides of a cabinet with a place of its own, such as a vanity, of which its opening says that nothing
/// stands near.
fn of_a_vanity<'a>(room: &'a Room, selection: &'a Selection) -> Vec<SeenSide<'a>> {
    let place = selection.place.get().filter(|_| selection.is(Kind::Cabinet));
    let Some(opening) = place.and_then(|place| room.opening(place)) else { return vec![] };
    let said = selection.standing().iter().find_map(|option| option.fact::<CabinetEnds>());
    let seen = |(end, side): (End, &'static str)| {
        is_free(opening, end).then(|| SeenSide {
            of: &selection.name.value,
            side,
            row: &opening.name.value,
            at: selection.name.span,
            finished: said.map(|(ends, at)| (ends.has(end), Some(at))),
            wants_panel: false,
        })
    };
    [(End::Left, "left side"), (End::Right, "right side")].into_iter().filter_map(seen).collect()
}

/// The sides of a dishwasher of whose opening itself is written that nothing stands near: it has none of its own.
fn of_an_appliance(opening: &Opening) -> Vec<SeenSide<'_>> {
    let seen = |(end, side): (End, &'static str)| {
        let said = if end == End::Left { &opening.left } else { &opening.right };
        (opening.takes_one(Trait::WashesDishes) && is_free(opening, end)).then(|| SeenSide {
            of: &opening.name.value,
            side,
            row: &opening.name.value,
            at: said.span().unwrap_or(opening.span),
            finished: Some((false, None)),
            wants_panel: true,
        })
    };
    [(End::Left, "left side"), (End::Right, "right side")].into_iter().filter_map(seen).collect()
}

/// Whether an opening says that nothing stands near at that side.
fn is_free(opening: &Opening, end: End) -> bool {
    let beside = if end == End::Left { opening.left.get() } else { opening.right.get() };
    let far = |beside: &Neighbour| beside.gap.get().is_some_and(|gap| *gap > HIDES);
    beside.is_some_and(|beside| beside.is_nothing() || far(beside))
}

/// What part and run say of an end together: a run's word on its ends adds to what its last part says of its other side.
fn of_both(part: &Part, run: &Run, end: End) -> Option<(bool, Option<Span>)> {
    let (own, of_run) = (of_part(part, end), of_run(run, end));
    let other = if end == End::Left { End::Right } else { End::Left };
    let speaks_of_the_other = own.is_some_and(|(is, _)| !is) && of_part(part, other).is_some_and(|(is, _)| is);
    let adds = of_run.filter(|(is, _)| *is && speaks_of_the_other);
    adds.or(own).or(of_run)
}

fn of_part(part: &Part, end: End) -> Option<(bool, Option<Span>)> {
    part.finished.spanned().map(|sides| (sides.value.has(end), Some(sides.span)))
}

fn of_run(run: &Run, end: End) -> Option<(bool, Option<Span>)> {
    run.finished_ends.spanned().map(|sides| (sides.value.has(end), Some(sides.span)))
}
