//! What is left behind a thing, before the wall, the back of its cabinet or a raised back.

use crate::book::{BackPanel, Opening, ProductOption, Room};
use crate::site::{BehindIs, deck};
use crate::source::Span;
use crate::units::Length;

use super::FigureBasis;
use super::housing::{cabinet_part, inside_depth};

/// What is left behind a thing whose front must not stand out, and where the depth is written that it follows from:
/// the opening's own depth, else that inside its cabinet, else that of an island before its raised back.
pub fn left_behind(room: &Room, opening: &Opening, option: &ProductOption) -> Option<(Length, Option<Span>)> {
    let body = *option.size.depth.get()?;
    let own = || Some((opening.governing_depth()?, opening.depth_at()));
    let of_cabinet = || {
        let inside = inside_depth(room, opening).filter(|inside| inside.by == FigureBasis::Written)?;
        Some((inside.length, Some(inside.span)))
    };
    let before_a_raised_back = || {
        let deck = deck(room, opening)?;
        let behind = deck.behind.filter(|behind| matches!(behind.is, BehindIs::RaisedBack(_)))?;
        Some((deck.clear, Some(behind.at)))
    };
    let (depth, at) = own().or_else(of_cabinet).or_else(before_a_raised_back)?;
    Some(((depth - body).max(Length::ZERO), at))
}

/// What is left between the back panel of a thing's cabinet and the wall: at most, since doors count as part of its
/// depth. None where the back is cut away, or either depth is not known.
pub fn behind_the_back_panel(room: &Room, opening: &Opening) -> Option<(Length, Span)> {
    let cabinet = opening.cabinet.get().filter(|own| own.back_panel.get() != Some(&BackPanel::CutAway))?;
    let inside = cabinet.inside_depth.spanned()?;
    let outside = cabinet_part(room, opening)?.depth()?;
    Some(((outside.value - inside.value).max(Length::ZERO), inside.span))
}
