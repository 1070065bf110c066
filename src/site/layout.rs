//! The layout of a counter: its pieces with what is let in and where they meet, as far as the book knows it.

use crate::book::{IslandSide, Piece, Room, Selection, Top};
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

use super::counters;
use super::plan::{ConvexShape, Frame, Plan, Row, RowOf, Thing};

/// By how much a piece may differ from its place and still be the one (1/16").
pub(super) const PLAY: Length = Length::from_sixty_fourths(4);
/// How far apart pieces are laid out of which nobody says where they lie.
const APART: Length = Length::from_inches(8);

/// A counter of one run or island from above, its back up; or pieces of which nobody says where they lie.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CounterLayout {
    /// The run or island that it lies on; none of loose pieces: only their sizes are told.
    pub on: Option<String>,
    /// Whether a wall stands behind it.
    pub has_wall: bool,
    /// What is cut in one, from left to right.
    pub pieces: Vec<LayoutPiece>,
    /// What is let into it, or stands between its pieces.
    pub let_in: Vec<LetIn>,
    /// Where pieces meet.
    pub seams: Vec<Length>,
}

/// A piece; lengths are from the left end of the wall or island, and from its back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayoutPiece {
    /// Its name in the book, where it is known which one it is.
    pub name: Option<String>,
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// From its back to its front edge.
    pub depth: Length,
}

/// Something that is let into a counter, or parts it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LetIn {
    /// What it is called.
    pub name: String,
    /// Its left side.
    pub from: Length,
    /// Its right side.
    pub to: Length,
    /// Its back, from that of the counter.
    pub back: Length,
    /// Its front, likewise.
    pub front: Length,
    /// Whether it stands between pieces rather than in one.
    pub parts_it: bool,
    /// Where its back and its front are drawn: those of a bowl with a front of its own are the cabinet's, and the stone
    /// is cut through to its edge before it. What is signed tells where the middle of the depth would have it, as ever.
    pub drawn: (Length, Length),
    /// Whether the counter's edge is cut through before it.
    pub cuts_the_edge: bool,
}

impl LetIn {
    /// Its middle, along the counter.
    pub fn middle(&self) -> Length {
        (self.from + self.to).half()
    }
}

impl CounterLayout {
    /// Its left and its right end.
    pub fn ends(&self) -> (Length, Length) {
        let left = self.pieces.iter().map(|piece| piece.from).min().unwrap_or(Length::ZERO);
        let right = self.pieces.iter().map(|piece| piece.to).max().unwrap_or(Length::ZERO);
        (left, right)
    }

    /// The deepest of its pieces.
    pub fn depth(&self) -> Length {
        self.pieces.iter().map(|piece| piece.depth).max().unwrap_or(Length::ZERO)
    }

    /// Whether its pieces lie anywhere: only their sizes are told.
    pub fn is_loose(&self) -> bool {
        self.on.is_none()
    }
}

/// How a layout lies in the room's plan.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lies {
    /// The front of what it stands at.
    pub frame: Frame,
    /// From that out to its back.
    pub back: Length,
    /// The widths of what carries its left and its right end.
    pub carried: (Length, Length),
}

/// The layout of a counter, for each run and island that it lies on, then the pieces whose place is not known; none
/// where the book knows no piece.
pub fn counter_layouts(plan: Option<&Plan<'_>>, room: &Room, selection: &Selection) -> Vec<CounterLayout> {
    laid_in_plan(plan, room, selection).into_iter().map(|(layout, _)| layout).collect()
}

/// The same with how each lies in the plan.
pub(super) fn laid_in_plan(
    plan: Option<&Plan<'_>>,
    room: &Room,
    selection: &Selection,
) -> Vec<(CounterLayout, Option<Lies>)> {
    let top = same_top(selection);
    let has_pieces = top.is_some_and(|top| !top.pieces.is_empty());
    let alone = || {
        let names = |option| counters::lies_on_alone(room, selection, option);
        selection.standing().iter().all(|option| names(option).is_some_and(|names| !names.is_empty()))
    };
    if !selection.is(Kind::Counter) || !(has_pieces || alone()) {
        return vec![];
    }
    let mut left: Vec<LayoutPiece> = top.map(own_pieces).unwrap_or_default();
    let mut all = Vec::new();
    if let Some(plan) = plan.filter(|_| !room.partly_unread) {
        for name in lies_on(room, selection) {
            let island = room.islands.iter().find(|island| island.name.value == name);
            let laid = match island.and_then(|island| plan.island(island)) {
                Some(thing) => Some(on_island(plan, thing)),
                None => plan.rows.iter().find(|row| is_run(row, name)).and_then(|row| on_run(plan, row, top)),
            };
            let Some((mut layout, lies)) = laid else { continue };
            name_pieces(&mut layout, &mut left);
            layout.on = Some(name.to_string());
            all.push((layout, Some(lies)));
        }
    }
    if !left.is_empty() {
        all.push((CounterLayout { pieces: side_by_side(left), ..CounterLayout::default() }, None));
    }
    all
}

/// The runs and islands that a counter lies on, as far as all of its options agree.
pub fn lies_on<'a>(room: &'a Room, selection: &Selection) -> Vec<&'a str> {
    let runs = room.runs.iter().filter(|run| run.above_floor.is_absent()).map(|run| run.name.value.as_str());
    let all = runs.chain(room.islands.iter().map(|island| island.name.value.as_str()));
    let options = selection.standing();
    let covered = |name: &&str| options.iter().all(|option| counters::covers(room, option, name));
    all.filter(|name| !options.is_empty() && covered(name)).collect()
}

/// What is said of a counter by all options alike, as far as its pieces and seams go.
pub fn same_top(selection: &Selection) -> Option<&Top> {
    let mut tops = selection.standing().iter().map(|option| option.top.get());
    let first = tops.next()??;
    let is_same = |other: Option<&Top>| other.is_some_and(|top| top.pieces == first.pieces && top.seams == first.seams);
    tops.all(is_same).then_some(first)
}

fn is_run(row: &Row<'_>, name: &str) -> bool {
    matches!(row.of, RowOf::Run(run) if run.name.value == name)
}

/// The pieces by their own sizes.
fn own_pieces(top: &Top) -> Vec<LayoutPiece> {
    let piece = |piece: &Piece| LayoutPiece {
        name: Some(piece.name.value.clone()),
        from: Length::ZERO,
        to: piece.length,
        depth: piece.depth,
    };
    top.pieces.iter().map(piece).collect()
}

/// Pieces laid out one beside the other.
fn side_by_side(pieces: Vec<LayoutPiece>) -> Vec<LayoutPiece> {
    let mut next = Length::ZERO;
    let lay = |piece: LayoutPiece| {
        let from = next;
        next = from + piece.to + APART;
        LayoutPiece { from, to: from + piece.to, ..piece }
    };
    pieces.into_iter().map(lay).collect()
}

/// The counter of a run: cut where something parts it and at seams; none where it is not known how it lies.
fn on_run(plan: &Plan<'_>, row: &Row<'_>, top: Option<&Top>) -> Option<(CounterLayout, Lies)> {
    let counter = row.counter.filter(|_| row.is_whole)?;
    let mut things: Vec<&Thing<'_>> = row.things.iter().filter_map(|at| plan.things.get(*at)).collect();
    things.retain(|thing| thing.row.is_some());
    things.sort_by_key(|thing| thing.along.0);
    let mut stretches: Vec<(Length, Length)> = Vec::new();
    for thing in things.iter().filter(|thing| plan.lies_over(row, thing)) {
        match stretches.last_mut().filter(|last| (last.1 - thing.along.0).abs() <= PLAY) {
            Some(last) => last.1 = thing.along.1,
            None => stretches.push(thing.along),
        }
    }
    let seams = top.map_or(&[][..], |top| &top.seams).iter();
    let here = seams.filter(|seam| seam.on.get().is_some_and(|on| on == row.of.name()));
    let inside = |place: &Length| stretches.iter().any(|(from, to)| from < place && place < to);
    let seams: Vec<Length> = here.filter_map(|seam| seam.from_left.get().copied()).filter(inside).collect();
    let (first, last) = (stretches.first()?.0, stretches.last()?.1);
    let between = things.iter().filter(|thing| !row.carries(thing) && thing.along.0 > first && thing.along.1 < last);
    let between = between
        .filter(|thing| thing.opening.is_some())
        .map(|thing| let_in(plan, thing, (counter.back, counter.depth()), true));
    let holes = cut_into(plan, row).map(|thing| let_in(plan, thing, (counter.back, counter.depth()), false));
    let layout = CounterLayout {
        has_wall: true,
        pieces: cut(&stretches, &seams, counter.depth()),
        let_in: between.chain(holes).collect(),
        seams,
        ..CounterLayout::default()
    };
    let mut below = things.iter().filter(|thing| plan.lies_over(row, thing)).map(|thing| thing.width());
    let first_thing = below.next().unwrap_or_default();
    let carried = (first_thing, below.next_back().unwrap_or(first_thing));
    Some((layout, Lies { frame: row.frame, back: counter.back, carried }))
}

/// What is cut into the counter of a row: sinks and cooktops in its cabinets.
fn cut_into<'p, 'a>(plan: &'p Plan<'a>, row: &'p Row<'a>) -> impl Iterator<Item = &'p Thing<'a>> {
    let is_here = move |thing: &&Thing<'a>| {
        let within = thing.within.and_then(|number| plan.things.get(number));
        let in_row = |thing: &Thing<'a>| {
            row.things.iter().filter_map(|at| plan.things.get(*at)).any(|own| own.span == thing.span)
        };
        within.is_some_and(in_row) || thing.row.is_some() && in_row(thing)
    };
    plan.with(Trait::CutIntoCounter).filter(is_here)
}

fn let_in(plan: &Plan<'_>, thing: &Thing<'_>, (back, depth): (Length, Length), parts_it: bool) -> LetIn {
    let selection = thing.opening.and_then(|opening| plan.room.goes_into(&opening.name).next());
    let (behind, before) = (thing.out.0 - back, thing.out.1 - back);
    let cuts_the_edge = !parts_it && plan.has_its_own_front(thing);
    let moved = plan.moved_to_the_face(thing);
    LetIn {
        name: selection.map_or(thing.name, |selection| selection.name.as_str()).to_string(),
        from: thing.along.0,
        to: thing.along.1,
        back: behind - moved,
        front: before - moved,
        parts_it,
        drawn: (behind, if cuts_the_edge { before.max(depth) } else { before }),
        cuts_the_edge,
    }
}

fn cut(stretches: &[(Length, Length)], seams: &[Length], depth: Length) -> Vec<LayoutPiece> {
    let mut pieces = Vec::new();
    for (from, to) in stretches {
        let mut places = vec![*from, *to];
        places.extend(seams.iter().filter(|place| from < *place && *place < to));
        places.sort_unstable();
        let each = places.iter().zip(places.iter().skip(1));
        pieces.extend(each.map(|(from, to)| LayoutPiece { name: None, from: *from, to: *to, depth }));
    }
    pieces
}

/// An island's top with what is cut into it, the wall that it is set out from behind it.
fn on_island(plan: &Plan<'_>, island: &Thing<'_>) -> (CounterLayout, Lies) {
    let deep = island.out.1 - island.out.0;
    let is_its_own = |thing: &&Thing<'_>| {
        let row = thing.row.or_else(|| plan.things.get(thing.within?)?.row).and_then(|row| plan.rows.get(row));
        row.is_some_and(|row| matches!(row.of, RowOf::Side(own, _) if own.name.value == island.name))
    };
    let hole = |thing: &Thing<'_>| {
        let place = let_in(plan, thing, (Length::ZERO, Length::ZERO), false);
        let moved = plan.moved_to_the_face(thing);
        let (signed_along, signed) = seen_from(island, &thing.moved_back(moved).footprint())?;
        let (_, own) = seen_from(island, &thing.footprint())?;
        let (back, front) = (signed.0 + deep, signed.1 + deep);
        // Its own front is drawn at the edge that it stands at, where the drawing has that at its foot: the room's side.
        let cuts_the_edge = place.cuts_the_edge && side_of(plan, thing) == Some(IslandSide::Room);
        let drawn = (own.0 + deep, if cuts_the_edge { deep } else { own.1 + deep });
        Some(LetIn { from: signed_along.0, to: signed_along.1, back, front, drawn, cuts_the_edge, ..place })
    };
    let holes = plan.with(Trait::CutIntoCounter).filter(is_its_own).filter_map(hole);
    let layout = CounterLayout {
        pieces: vec![LayoutPiece { name: None, from: island.along.0, to: island.along.1, depth: deep }],
        let_in: holes.collect(),
        ..CounterLayout::default()
    };
    (layout, Lies { frame: island.frame, back: island.out.0, carried: (Length::ZERO, Length::ZERO) })
}

/// The side of an island that a thing stands at.
fn side_of(plan: &Plan<'_>, thing: &Thing<'_>) -> Option<IslandSide> {
    let row = thing.row.or_else(|| plan.things.get(thing.within?)?.row)?;
    match plan.rows.get(row)?.of {
        RowOf::Side(_, side) => Some(side),
        RowOf::Run(_) => None,
    }
}

/// What a shape covers along an island's front, and out from it.
fn seen_from(island: &Thing<'_>, shape: &ConvexShape) -> Option<((Length, Length), (Length, Length))> {
    let local: Vec<(i128, i128)> = shape.corners().iter().map(|corner| island.frame.local(*corner)).collect();
    let whole = |part: i128| Length::from_nanometres(i64::try_from(part).unwrap_or_default());
    let (along, out) = (|at: &(i128, i128)| at.0, |at: &(i128, i128)| at.1);
    let span =
        |of: fn(&(i128, i128)) -> i128| Some((whole(local.iter().map(of).min()?), whole(local.iter().map(of).max()?)));
    Some((span(along)?, span(out)?))
}

/// Names each drawn piece by the book's piece of its length, which then has its place.
fn name_pieces(layout: &mut CounterLayout, left: &mut Vec<LayoutPiece>) {
    for drawn in &mut layout.pieces {
        let long = drawn.to - drawn.from;
        let is_it = |piece: &LayoutPiece| (piece.to - long).abs() <= PLAY && (piece.depth - drawn.depth).abs() <= PLAY;
        if let Some(at) = left.iter().position(is_it) {
            drawn.name = left.remove(at).name;
        }
    }
}
