//! The type of unit that a thing is, wherever it says so.

use crate::book::{CutOut, ProductOption};
use crate::source::Span;
use crate::vocabulary::Mount;

/// How a unit is made to be set in, and where that is written: as it says itself, else by its `mount`.
pub fn made_as(option: &ProductOption) -> Option<(CutOut, Span)> {
    let own = option.fact::<CutOut>().map(|(made_as, at)| (*made_as, at));
    own.or_else(|| {
        let (mount, at) = option.mount_and_place()?;
        let as_bowl = match mount {
            Mount::Under => CutOut::Undermount,
            Mount::DropIn => CutOut::TopMount,
            Mount::Apron => CutOut::Apron,
            Mount::OnCounter | Mount::InNoCabinet => return None,
        };
        Some((as_bowl, at))
    })
}
