//! The counter from back to front at what is let into it: how deep it is, what stands up behind it, what is
//! left before that.

use crate::book::{DetailName, Island, IslandSide, Opening, PartIs, ProductOption, Room, Run, Selection, Splash};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Kind;

use super::counters::is_alone;
use super::plan::{HoleIs, Plan};
use super::vanity::vanity_of;
use super::{counter_depth, counter_height, row_of};

/// The counter at an opening, from back to front.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Deck {
    /// From the face of what stands behind it, or from the wall, to its front edge.
    pub clear: Length,
    /// Where its depth is written.
    pub at: Span,
    /// What stands up behind it.
    pub behind: Option<Behind>,
}

/// What stands up behind a counter.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Behind {
    /// How far its face stands out.
    pub thickness: Length,
    /// Where that is written.
    pub at: Span,
    /// What it is.
    pub is: BehindIs,
}

/// What stands up behind a counter, by the name of what it belongs to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BehindIs {
    /// A splash, of a run or a counter.
    Splash(String),
    /// The raised back of an island.
    RaisedBack(String),
    /// Tile that is set there.
    Tile(String),
    /// The sill and casing of a window.
    Window(String),
}

/// The counter at an opening; none where nobody says how deep it is.
pub fn deck(room: &Room, opening: &Opening) -> Option<Deck> {
    let row = row_of(room, opening)?;
    if let Some(island) = row.island {
        return on_an_island(island, opening);
    }
    let depth = *counter_depth(room, opening).best()?;
    let behind = row.run.and_then(|run| behind_a_run(room, run));
    let clear = depth.value - behind.as_ref().map_or(Length::ZERO, |behind| behind.thickness);
    Some(Deck { clear, at: depth.at, behind })
}

/// The top of the vanity that carries a basin which has no opening of its own, by its largest piece or as it says; none
/// where nobody says how deep it is.
pub fn deck_of_a_vanity(room: &Room, basin: &Selection) -> Option<Deck> {
    let (counter, option) = top_of_a_vanity(room, basin)?;
    let (depth, at) = depth_of_top(option)?;
    let splash = option.top.get().and_then(|top| told(&top.splash, BehindIs::Splash(counter.name.value.clone())));
    Some(Deck { clear: depth - splash.as_ref().map_or(Length::ZERO, |splash| splash.thickness), at, behind: splash })
}

/// The one counter that lies on the vanity of a basin, as it is chosen.
pub fn top_of_a_vanity<'a>(room: &'a Room, basin: &Selection) -> Option<(&'a Selection, &'a ProductOption)> {
    let vanity = vanity_of(room, basin)?;
    let lies_there = |option: &&ProductOption| match option.top.get().map_or(&[][..], |top| &top.lies_on) {
        [] => is_alone(room),
        names => [&vanity.opening.name, &vanity.selection.name].iter().any(|own| names.iter().any(|name| name == *own)),
    };
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let mut tops = counters.filter_map(|counter| Some((counter, counter.settled().filter(lies_there)?)));
    tops.next().filter(|_| tops.next().is_none())
}

/// How deep a top is: its deepest piece, else as it says of itself.
fn depth_of_top(option: &ProductOption) -> Option<(Length, Span)> {
    let largest = option.top.get().and_then(|top| top.pieces.iter().max_by_key(|piece| piece.depth));
    let of_piece = largest.map(|piece| (piece.depth, piece.name.span));
    let said = || option.top.get().and_then(|top| top.depth.spanned()).or_else(|| option.size.depth.spanned());
    of_piece.or_else(|| said().map(|depth| (depth.value, depth.span)))
}

/// What stands up along the side of an island across from the one that an opening is in: its raised back.
pub fn raised_back<'a>(room: &'a Room, opening: &Opening) -> Option<&'a Splash> {
    let island = row_of(room, opening)?.island?;
    island.side(across(side_of(island, opening)?)).splash.get()
}

/// The side of an island that an opening is in.
fn side_of(island: &Island, opening: &Opening) -> Option<IslandSide> {
    let is_in = |side: &IslandSide| {
        let parts = island.side(*side).parts.iter();
        let held = |part: &crate::book::Part| part.holds.iter().any(|held| held.eq_ignore_ascii_case(&opening.name));
        let is_it = |part: &crate::book::Part| match &part.is {
            PartIs::Opening(name) => name.eq_ignore_ascii_case(&opening.name),
            _ => false,
        };
        parts.into_iter().any(|part| held(part) || is_it(part))
    };
    IslandSide::ALL.into_iter().find(is_in)
}

fn across(side: IslandSide) -> IslandSide {
    match side {
        IslandSide::Wall => IslandSide::Room,
        IslandSide::Room => IslandSide::Wall,
        IslandSide::Left => IslandSide::Right,
        IslandSide::Right => IslandSide::Left,
    }
}

/// A raised back along the side of an island across from the one that an opening is in.
fn on_an_island(island: &Island, opening: &Opening) -> Option<Deck> {
    let side = side_of(island, opening)?;
    let size = island.size.spanned()?;
    let (long, deep) = if island.turned.get() == Some(&true) { (size.value.1, size.value.0) } else { size.value };
    let whole = if matches!(side, IslandSide::Wall | IslandSide::Room) { deep } else { long };
    let behind = told(&island.side(across(side)).splash, BehindIs::RaisedBack(island.name.value.clone()))?;
    Some(Deck { clear: whole - behind.thickness, at: size.span, behind: Some(behind) })
}

/// The farthest that stands up behind the counter of a run: a splash of the run or of the counter that lies on
/// it, tile that is set there.
fn behind_a_run(room: &Room, run: &Run) -> Option<Behind> {
    let named = |names: &[crate::source::Spanned<String>]| names.iter().any(|name| name.value == run.name.value);
    let own = told(&run.counter.splash, BehindIs::Splash(run.name.value.clone()));
    let options = |kind: Kind| {
        let of_kind = room.selections.iter().filter(move |selection| selection.is(kind));
        of_kind.flat_map(|selection| Selection::standing(selection).iter().map(move |option| (selection, option)))
    };
    let of_counters = options(Kind::Counter).filter_map(|(selection, option)| {
        let top = option.top.get().filter(|top| named(&top.lies_on))?;
        told(&top.splash, BehindIs::Splash(selection.name.value.clone()))
    });
    let of_tile = options(Kind::Tile).filter(|(_, option)| named(&option.laid.behind));
    let of_tile = of_tile.filter_map(|(selection, option)| {
        let (thickness, at) = option.length(DetailName::Thickness)?;
        Some(Behind { thickness, at, is: BehindIs::Tile(selection.name.value.clone()) })
    });
    own.into_iter().chain(of_counters).chain(of_tile).max_by_key(|behind| behind.thickness)
}

fn told(splash: &crate::book::Slot<Splash>, is: BehindIs) -> Option<Behind> {
    let thickness = splash.get()?.thickness.spanned()?;
    Some(Behind { thickness: thickness.value, at: thickness.span, is })
}

/// How high over a counter a lever turns, at most (common practice).
const LEVER: Length = Length::from_inches(12);

/// The trim under a window behind the counter of an opening that begins so low that a lever meets it.
pub fn window_trim_behind(plan: &Plan<'_>, room: &Room, opening: &Opening) -> Option<Behind> {
    let own = plan.opening(opening)?;
    let top = counter_height(room, opening).value()?;
    let behind = plan.holes.iter().filter(|hole| hole.frame == own.frame);
    let before = behind.filter(|hole| hole.along.0 < own.along.1 && hole.along.1 > own.along.0);
    let trims = before.filter_map(|hole| {
        let HoleIs::Window(window) = hole.is else { return None };
        let thickness = window.casing_thickness.spanned()?;
        let low = hole.low? - window.casing.get().copied().unwrap_or_default();
        let reached = low < top + LEVER && hole.high.is_none_or(|high| high > top);
        let is = BehindIs::Window(window.name.value.clone());
        reached.then_some(Behind { thickness: thickness.value, at: thickness.span, is })
    });
    trims.max_by_key(|trim| trim.thickness)
}
