//! The pieces of a counter: as its list has them, and as its seams cut them.

use crate::book::{Piece, Room, Selection};
use crate::site::Site;
use crate::site::layout::{CounterLayout, LayoutPiece, counter_layouts};
use crate::site::plan::Plan;
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Kind;

use super::{Differ, Twice};

/// Ends and seams so far apart are cut as measured (as in marks of layouts).
const AS_MEASURED: Length = Length::from_sixty_fourths(32);
/// No piece stands out further past what carries it, both of its ends counted (common practice).
const STANDS_OUT: Length = Length::from_inches(6);

/// Counters of a room whose seams cut other pieces than their list has.
pub(super) fn of_room<'a>(site: &'a Site<'a>, room: &'a Room) -> Vec<Twice<'a>> {
    let Some(plan) = site.plan(room) else { return vec![] };
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    counters.filter_map(|counter| of_counter(plan, room, counter)).collect()
}

/// The first piece of the list that is none of those drawn, where as many are left over on both sides: a seam moves
/// what it takes from one piece to the next.
fn of_counter<'a>(plan: &Plan<'a>, room: &'a Room, counter: &'a Selection) -> Option<Twice<'a>> {
    let top = counter.settled()?.top.get()?;
    let layouts = counter_layouts(Some(plan), room, counter);
    let at_a_seam = layouts.iter().filter(|layout| layout.on.is_some() && !layout.seams.is_empty());
    let drawn: Vec<(&CounterLayout, &LayoutPiece)> =
        at_a_seam.flat_map(|layout| layout.pieces.iter().map(move |piece| (layout, piece))).collect();
    let drawn: Vec<_> = drawn.into_iter().filter(|(_, piece)| piece.name.is_none()).collect();
    let loose = layouts.iter().filter(|layout| layout.on.is_none()).flat_map(|layout| &layout.pieces);
    let is_loose: Vec<&str> = loose.filter_map(|piece| piece.name.as_deref()).collect();
    let mut listed: Vec<&Piece> = top.pieces.iter().filter(|piece| is_loose.contains(&piece.name.as_str())).collect();
    if listed.len() != drawn.len() {
        return None;
    }
    // A list is written in any order: the longest of it is held against the longest that is cut.
    let mut drawn = drawn;
    listed.sort_by_key(|piece| std::cmp::Reverse(piece.length));
    drawn.sort_by_key(|(_, piece)| std::cmp::Reverse(piece.to - piece.from));
    let long = |piece: &LayoutPiece| piece.to - piece.from;
    let sum = |lengths: &mut dyn Iterator<Item = Length>| lengths.fold(Length::ZERO, |sum, one| sum + one);
    let in_all =
        sum(&mut listed.iter().map(|piece| piece.length)) - sum(&mut drawn.iter().map(|(_, piece)| long(piece)));
    let play = if in_all.abs() <= AS_MEASURED { AS_MEASURED } else { STANDS_OUT };
    let apart =
        |(piece, (_, drawn)): &(&Piece, (&CounterLayout, &LayoutPiece))| (piece.length - long(drawn)).abs() > play;
    let (piece, (layout, drawn)) = listed.into_iter().zip(drawn).find(apart)?;
    let run = layout.on.as_deref()?;
    let (seam, on) = top.seams.iter().find_map(|seam| {
        let on = seam.on.spanned().filter(|on| on.value == run)?;
        Some((seam.from_left.span()?, on))
    })?;
    let figure = |value, at: Span, spot| SourcedFigure { value, at, provenance: Provenance::Written, spot };
    let own = figure(piece.length, piece.name.span, Spot::Selection(&counter.name));
    let cut = figure(long(drawn), seam, Spot::Seams(&on.value));
    Some(Twice::of(&piece.name, "the length", (own, cut), Differ::Apart).asked())
}
