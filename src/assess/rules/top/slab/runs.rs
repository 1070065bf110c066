//! The pieces of a counter against the runs that it lies on.

use crate::assess::{Context, say, say_area};
use crate::book::{Island, Piece, Room, Run, Top};
use crate::finding::{Remark, Severity, phrase};
use crate::site::counters::{area_of, length_below};
use crate::site::plan::{ConvexShape, Plan, Row, RowOf};
use crate::source::{Span, Spanned};
use crate::units::{Area, Length};

use super::super::{Counter, counters};

/// What pieces may be short of what they lie on: a joint (common practice).
const JOINT: Length = Length::from_sixty_fourths(8);
const REMEDY: &str = "correct the pieces or the run; whoever templates gets the same figures";

/// Pieces that do not cover the islands that a counter lies on: side by side where one piece covers one
/// island, else by their area, since which piece lies where is for whoever cuts them.
pub fn small(context: &Context<'_>, counter: &Counter<'_>, top: &Top) -> Option<Remark> {
    let at = top.pieces.first()?.name.span;
    let island = |name: &Spanned<String>| {
        let island = counter.room.islands.iter().find(|island| island.name.value == name.value)?;
        Some((island, *island.size.get()?))
    };
    let islands: Vec<(&Island, (Length, Length))> = top.lies_on.iter().filter_map(island).collect();
    let pieces: Vec<&Piece> = all_pieces(context, counter, top)?.collect();
    let (first, (one, other)) = *islands.first()?;
    let covered = match pieces.as_slice() {
        [piece] if islands.len() == 1 && top.lies_on.len() == 1 => covers(piece, (one, other)),
        several => {
            let wanted: i128 = islands.iter().map(|(_, (one, other))| area(*one - JOINT, *other - JOINT)).sum();
            several.iter().map(|piece| area(piece.length, piece.depth)).sum::<i128>() >= wanted
        }
    };
    (!covered).then(|| uncovered(context, counter, first, at))
}

fn area(one: Length, other: Length) -> i128 {
    i128::from(one.nanometres()) * i128::from(other.nanometres())
}

/// Pieces that are together shorter than the runs below them, or none as deep as their counter; where the counter lies on
/// islands too, theirs are left out, and of a single island whose piece does not cover it that is told.
pub fn short(context: &Context<'_>, counter: &Counter<'_>, top: &Top) -> Option<Remark> {
    let plan = context.site.plan(counter.room).filter(|plan| plan.is_sound())?;
    let island = |name: &&Spanned<String>| counter.room.islands.iter().any(|island| island.name.value == name.value);
    let rows: Vec<&Row<'_>> = top
        .lies_on
        .iter()
        .filter(|name| !island(name))
        .map(|name| plan.rows.iter().find(|row| row.of.name() == name.value))
        .collect::<Option<_>>()?;
    let islands: Vec<&Island> = counter
        .room
        .islands
        .iter()
        .filter(|island| top.lies_on.iter().any(|name| name.value == island.name.value))
        .collect();
    let whole = |row: &&Row<'_>| row.is_whole && row.counter.is_some() && matches!(row.of, RowOf::Run(_));
    if rows.is_empty() || !rows.iter().all(whole) {
        return None;
    }
    let depths = || rows.iter().filter_map(|row| row.counter).map(|counter| counter.depth());
    let (deepest, least) = (depths().max()?, depths().min()?);
    let (of_islands, pieces): (Vec<&Piece>, Vec<&Piece>) =
        all_pieces(context, counter, top)?.partition(|piece| is_of_an_island(piece, &islands, deepest));
    match (of_islands.as_slice(), islands.as_slice()) {
        ([], []) => {}
        ([piece], [island]) if !covers(piece, *island.size.get()?) => {
            return Some(uncovered(context, counter, island, piece.name.span));
        }
        (found, islands) if found.len() == islands.len() => {}
        // Which lies where is for whoever cuts them: `less` takes them together.
        _ => return None,
    }
    let at = pieces.first().or(of_islands.first())?.name.span;
    let needs: Length = rows.iter().map(|row| length_below(plan, row)).sum();
    let runs = Runs { deepest, least, needs };
    too_few(context, counter, &pieces, &runs, at)
}

/// What pieces are to cover of runs: how deep it is at most and at least, and how long in all.
struct Runs {
    deepest: Length,
    least: Length,
    needs: Length,
}

fn too_few(context: &Context<'_>, counter: &Counter<'_>, pieces: &[&Piece], runs: &Runs, at: Span) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let Runs { deepest, least, needs } = *runs;
    // Which of its sides is which nobody tells of a piece that is too deep for any counter.
    let is_deep = |piece: &Piece| piece.depth + JOINT >= deepest && piece.depth <= deepest + JOINT;
    let deep_of = |piece: &Piece| if is_deep(piece) { piece.depth } else { piece.depth.min(piece.length) };
    let deep = pieces.iter().map(|piece| deep_of(piece)).max().unwrap_or_default();
    if deep + JOINT < deepest && !pieces.is_empty() {
        let message = phrase!(
            "no piece of `{}` is as deep as the counter of {} that it lies on: {} at most",
            counter.name(),
            say(deepest),
            say(deep)
        );
        return Some(counter.finding(Severity::Stop, at, message).remedy(REMEDY));
    }
    let long =
        |depth: Length| -> Length { pieces.iter().filter(|piece| piece.depth > depth).map(|piece| piece.length).sum() };
    let there = long(deepest.half());
    if there + JOINT < needs {
        let message = phrase!(
            "the pieces of `{}` are {} long together, {} less than the {} of cabinets below",
            counter.name(),
            say(there),
            say(needs - there),
            say(needs)
        );
        return Some(counter.finding(Severity::Stop, at, message).remedy(REMEDY));
    }
    // What is less deep may lie elsewhere, as long as the others reach.
    let shallow = pieces.iter().find(|piece| piece.depth > deepest.half() && piece.depth + JOINT < least)?;
    let message = phrase!(
        "the piece `{}` of `{}` is {} deep, {} less than the counter that it lies on",
        shallow.name.value,
        counter.name(),
        say(shallow.depth),
        say(least - shallow.depth)
    );
    (long(least - JOINT - JOINT) + JOINT < needs)
        .then(|| counter.finding(Severity::Query, shallow.name.span, message).remedy(REMEDY))
}

/// Whether a piece is meant for an island: by its name, or since it is deeper than any run.
fn is_of_an_island(piece: &Piece, islands: &[&Island], deepest: Length) -> bool {
    let named = |island: &&Island| piece.name.to_lowercase().contains(&island.name.to_lowercase());
    !islands.is_empty() && (piece.length.min(piece.depth) > deepest + JOINT || islands.iter().any(named))
}

/// Whether a piece covers an island, whichever way it lies.
fn covers(piece: &Piece, (one, other): (Length, Length)) -> bool {
    let (long, short) = (piece.length.max(piece.depth), piece.length.min(piece.depth));
    long + JOINT >= one.max(other) && short + JOINT >= one.min(other)
}

fn uncovered(context: &Context<'_>, counter: &Counter<'_>, island: &Island, at: Span) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let (one, other) = island.size.get().copied().unwrap_or_default();
    let message = phrase!(
        "the pieces of `{}` do not cover the island `{}`, {} by {}",
        counter.name(),
        island.name.value,
        say(one),
        say(other)
    );
    counter.finding(Severity::Stop, at, message).remedy(REMEDY)
}

/// A piece that is longer than all that it can lie on, with what may stand out at both ends: the only run of the counter,
/// or the one that it is named by; in a room with no run around the corner that it may reach into.
pub fn long(context: &Context<'_>, counter: &Counter<'_>, top: &Top) -> Option<Remark> {
    let plan = context.site.plan(counter.room).filter(|plan| plan.is_sound())?;
    let row = |name: &str| plan.rows.iter().find(|row| matches!(row.of, RowOf::Run(run) if run.name.value == name));
    let found = top.pieces.iter().find_map(|piece| {
        let row = match top.lies_on.as_slice() {
            [only] => row(&only.value)?,
            several => {
                let is_named = |name: &&Spanned<String>| name.value.eq_ignore_ascii_case(&piece.name.value);
                row(&several.iter().find(is_named)?.value)?
            }
        };
        let depth = row.counter.filter(|_| row.is_whole && !meets_another(plan, row))?.depth();
        let needs = length_below(plan, row);
        let most = needs + top.overhang.get().copied().unwrap_or_default().max(STANDS_OUT).times(2);
        let is_long = piece.length > most && piece.depth > depth.half() && needs > Length::ZERO;
        is_long.then_some((piece, needs))
    });
    let (piece, needs) = found?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the piece `{}` of `{}` is {} long, {} more than the {} of cabinets below",
        piece.name.value,
        counter.name(),
        say(piece.length),
        say(piece.length - needs),
        say(needs)
    );
    let remedy = "correct the piece or the run; where it lies on something else besides, name that in `lies on`";
    Some(counter.finding(Severity::Query, piece.name.span, message).remedy(remedy))
}

/// Whether the counter of another run meets that of a row around a corner.
fn meets_another(plan: &Plan<'_>, row: &Row<'_>) -> bool {
    let shape = |row: &Row<'_>, reach: Length| {
        let counter = row.counter?;
        let along = (row.along.0 - reach, row.along.1 + reach);
        Some(ConvexShape::rectangle(&row.frame, along, (counter.back, counter.front)))
    };
    let own = shape(row, Length::from_inches(1));
    let others = plan.rows.iter().filter(|other| other.of.name() != row.of.name());
    others
        .filter_map(|other| shape(other, Length::ZERO))
        .any(|other| own.as_ref().is_some_and(|own| own.overlaps(&other)))
}

/// How far a counter stands out at an end where nobody says it, at most (common practice: 1" to 1 1/2").
const STANDS_OUT: Length = Length::from_inches(2);

/// Pieces that are together less than the runs and islands that a counter lies on, where it lies on both.
pub fn less(context: &Context<'_>, counter: &Counter<'_>, top: &Top) -> Option<Remark> {
    let at = top.pieces.first()?.name.span;
    let names: Vec<&str> = top.lies_on.iter().map(|name| name.value.as_str()).collect();
    let is_island = |name: &&str| counter.room.islands.iter().any(|island| island.name.value == **name);
    let islands = names.iter().filter(|name| is_island(name)).count();
    if islands == 0 || islands == names.len() {
        return None;
    }
    let needs = area_of(context.site.plan(counter.room), counter.room, &names)?;
    let pieces = all_pieces(context, counter, top)?;
    let there = Area::from_square_nanometres(pieces.map(|piece| area(piece.length, piece.depth)).sum());
    let say = |area| say_area(area, context.book.project.units);
    // Joints, and what a piece stands back from a wall, take less (common practice: an eighth of an inch each).
    if there.square_nanometres().saturating_mul(100) >= needs.square_nanometres().saturating_mul(97) {
        return None;
    }
    let message = phrase!(
        "the pieces of `{}` come to {}, less than the {} of the runs and islands that it lies on",
        counter.name(),
        say(there),
        say(needs)
    );
    Some(counter.finding(Severity::Stop, at, message).remedy(REMEDY))
}

/// Runs and islands of a room that no counter lies on, though the room has counters and all say where they lie.
pub fn bare(context: &Context<'_>) -> Vec<Remark> {
    let mut found = Vec::new();
    for room in &context.book.rooms {
        let of_the_room: Vec<Counter<'_>> =
            counters(context).filter(|counter| std::ptr::eq(counter.room, room)).collect();
        let says = |counter: &Counter<'_>| counter.top().is_some_and(|top| !top.lies_on.is_empty());
        if of_the_room.is_empty() || !of_the_room.iter().all(says) {
            continue;
        }
        let runs = room.runs.iter().filter(|run| run.above_floor.is_absent() && run.counter.depth.get().is_some());
        let names = runs.map(|run| &run.name).chain(room.islands.iter().map(|island| &island.name));
        for name in names.filter(|name| !of_the_room.iter().any(|counter| counter.covers(name))) {
            let message = phrase!("no counter lies on `{}`", name.value);
            let finding = Remark::query(name.span, message).room(&room.folder).thing(name);
            let remedy = "name it where a counter's own selection says on what it lies, or add a counter for it";
            found.push(finding.remedy(remedy));
        }
    }
    found
}

/// Counters that end behind the fronts below them: of a run as it says, else as the counter does that lies on it.
pub fn shallow(context: &Context<'_>) -> Vec<Remark> {
    let rooms = context.book.rooms.iter();
    rooms.flat_map(|room| room.runs.iter().filter_map(|run| behind_its_fronts(context, room, run))).collect()
}

fn behind_its_fronts(context: &Context<'_>, room: &Room, run: &Run) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let fronts = run.depth.spanned().filter(|_| run.above_floor.is_absent())?;
    let of_counter = || {
        let here = counters(context).filter(|counter| std::ptr::eq(counter.room, room) && counter.covers(&run.name));
        here.filter_map(|counter| counter.top()?.depth.spanned()).min_by_key(|depth| depth.value)
    };
    let depth = if run.counter.depth.is_absent() { of_counter() } else { run.counter.depth.spanned() }?;
    let by = Some(fronts.value - depth.value).filter(|by| *by > Length::ZERO)?;
    let message = phrase!(
        "the counter of the run `{}` is {} deep, {} less than the fronts below it",
        run.name.value,
        say(depth.value),
        say(by)
    );
    let finding = Remark::query(depth.span, message).room(&room.folder).thing(&run.name).source("common practice");
    let finding = finding.also(fronts.span, "the fronts");
    Some(finding.remedy("make the counter deeper: it is usual that it stands out an inch or so past the fronts"))
}

/// The pieces of this counter, and of the others that lie on a run of it; none where one of those has none.
fn all_pieces<'a>(
    context: &Context<'a>,
    counter: &Counter<'a>,
    top: &'a Top,
) -> Option<impl Iterator<Item = &'a Piece>> {
    let shares = |other: &Top| other.lies_on.iter().any(|name| top.lies_on.iter().any(|own| own.value == name.value));
    let mut all: Vec<&'a Piece> = top.pieces.iter().collect();
    for other in counters(context) {
        let same = other.selection.span == counter.selection.span || other.room.folder != counter.room.folder;
        let Some(others) = other.top().filter(|other| !same && shares(other)) else { continue };
        if others.pieces.is_empty() {
            return None;
        }
        all.extend(others.pieces.iter());
    }
    Some(all.into_iter())
}
