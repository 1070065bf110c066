//! How far a thing stands out of its opening.

use crate::book::{Fit, Opening, ProductOption, Room};
use crate::site::counter_depth;
use crate::units::Length;

use super::{everywhere, flush, lets_in_from_above};

/// Where the front of what stands around the opening is: the counter's edge, or the opening's own.
pub fn front_edge(room: &Room, opening: &Opening) -> Option<Length> {
    counter_depth(room, opening).value().or_else(|| opening.governing_depth())
}

/// How far the case, without door and handle, stands out; nothing where it stays behind the edge.
pub fn case_stands_out(room: &Room, opening: &Opening, option: &ProductOption) -> Length {
    let air = option.fit.get().map_or(Length::ZERO, |fit| everywhere(&fit.air.back));
    let out = option.size.depth.get().zip(front_edge(room, opening)).map(|(depth, edge)| *depth + air - edge);
    out.unwrap_or(Length::ZERO).max(Length::ZERO)
}

/// How far out of its opening a thing stands with door and handle, past what is around it.
pub(super) fn projection(room: &Room, opening: &Opening, option: &ProductOption, fit: &Fit) -> Option<Length> {
    if lets_in_from_above(opening) {
        return None;
    }
    let size = &option.size;
    let with_panel = size.depth.get().map(|depth| *depth + flush::panel_before(option));
    let out = [&size.depth_with_handle, &size.depth_with_door];
    let out = out.into_iter().find_map(|depth| depth.get().copied()).or(with_panel)?;
    // A front that covers the edge stops the case there, whatever is left behind it.
    if let Some(case) = size.depth.get().filter(|_| fit.face.get().is_some()) {
        return Some(out - *case);
    }
    Some(out + everywhere(&fit.air.back) - front_edge(room, opening)?)
}
