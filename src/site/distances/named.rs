//! How near the centre of a toilet or a basin is to what its opening names beside it.

use crate::book::{ClearDistance, Neighbour, Opening, Plainly, Room};
use crate::site::fitting::Side;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention};

use super::Distance;

/// From the centre of what stands in the middle of its opening to the nearest that is named beside it: between two that
/// are named it is no farther than the middle from one of them, wherever it stands.
pub fn to_what_is_named(room: &Room, name: ClearDistance) -> Option<Distance> {
    let kind = match name {
        ClearDistance::ToiletToSide => Kind::Toilet,
        ClearDistance::BasinToSide => Kind::Basin,
        _ => return None,
    };
    let openings = room.openings.iter().filter(|opening| opening.takes_a(kind));
    openings.filter_map(|opening| of_opening(opening, kind)).min_by_key(|told| told.value)
}

fn of_opening(opening: &Opening, kind: Kind) -> Option<Distance> {
    let wide = opening.governing_width()?;
    let sides = [Side::Left, Side::Right].map(|side| {
        let said = side.of(opening).spanned()?;
        stands_there(&said.value, kind).then(|| (said.value.gap.get().copied().unwrap_or_default(), said.span))
    });
    let (value, at) = match sides {
        [Some((one, at)), Some((other, also))] => ((wide + one + other).half(), if one <= other { at } else { also }),
        [Some((gap, at)), None] | [None, Some((gap, at))] => (wide.half() + gap, at),
        [None, None] => return None,
    };
    Some(Distance::written(value, at))
}

/// Whether what is named beside it is in the way of who sits or washes there: beside a basin a wall, or what is tall.
fn stands_there(said: &Neighbour, kind: Kind) -> bool {
    let is_free = said.is_nothing() || Mention::Open.is_in(&said.what);
    let is_wall = said.plainly() == Some(Plainly::Wall) || Mention::Wall.is_in(&said.what);
    let is_tall = Mention::Tall.is_in(&said.what) || said.top.get().is_some_and(|top| *top > TALL);
    !is_free && (kind == Kind::Toilet || is_wall && !Mention::Furniture.is_in(&said.what) || is_tall)
}

/// What is higher than this is tall beside a basin.
const TALL: Length = Length::from_inches(48);
