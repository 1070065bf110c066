//! What bounds an opening in a direction that nobody measured: its row, the counter beside it, the room across.
//!
//! Each of these is known from what stands around the opening, never from the opening itself: it can show that a thing
//! does not go in, not that it does.

use crate::book::{Opening, PartIs, ProductOption, Room};
use crate::site::plan::Plan;
use crate::site::{counter_depth, counter_height};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::Trait;

use super::DimensionCheck;

/// What a measured run leaves for the one opening of it whose width nobody gives.
pub(super) fn left_in_its_run(room: &Room, opening: &Opening) -> Option<Spanned<Length>> {
    let place = room.part_of(&opening.name)?;
    let space = place.run?.space.get()?.least()?;
    let others = place.parts.iter().enumerate().filter(|(number, _)| *number != place.number);
    let widths = others.map(|(_, part)| match &part.is {
        PartIs::Filler(wide) | PartIs::Panel(wide) | PartIs::Gap(wide) => Some(*wide),
        PartIs::Opening(name) => room.opening(name)?.governing_width().or(part.width.get().copied()),
        PartIs::Cabinet(_) | PartIs::Tall(_) => part.width.get().copied(),
    });
    let taken: Length = widths.collect::<Option<Vec<_>>>()?.into_iter().sum();
    Some(Spanned::new(space.value - taken, space.span))
}

/// From the wall behind an opening to the wall across, which is the end of a closet: nothing in it is deeper. None where
/// it stands open there.
pub(super) fn closet_depth(plan: Option<&Plan<'_>>, opening: &Opening) -> Option<Spanned<Length>> {
    let plan = plan.filter(|plan| plan.is_sound())?;
    let own = plan.opening(opening).filter(|own| own.within.is_none() && !plan.is_at_an_island(own))?;
    let across = plan.to_the_wall_before(own, own.out.0)?;
    let number = across.wall()?;
    let at = plan.room.outline.span().filter(|_| !plan.stands_open_before(own, number))?;
    Some(Spanned::new(across.distance, at))
}

/// From the wall to the front of the row that an opening stands in: its counter's edge, or that of its cabinets.
pub(super) fn depth_of_its_row(room: &Room, opening: &Opening) -> Option<Spanned<Length>> {
    let of_cabinets = room.part_of(&opening.name)?.depth();
    let of_counter = counter_depth(room, opening).best().map(|counter| Spanned::new(counter.value, counter.at));
    of_cabinets.into_iter().chain(of_counter).max_by_key(|depth| depth.value)
}

/// What stands on the floor between counters is as high as they are: by how the counter beside it misses the heights
/// that its sheet allows; none where it does not, or where the opening has a height of its own.
pub(super) fn beside_its_counter(room: &Room, opening: &Opening, option: &ProductOption) -> Option<DimensionCheck> {
    let stands = opening.takes_one(Trait::BreaksCounter) && opening.stands_on_the_floor() && opening.height.is_absent();
    let asked = &option.fit.get().filter(|_| stands)?.opening.height;
    let range =
        asked.get().filter(|asked| asked.least.is_some() && asked.most.is_some() && asked.least != asked.most)?;
    let counter = *counter_height(room, opening).best()?;
    let gauge = DimensionCheck {
        asked: Some(*range),
        asked_at: asked.span(),
        there: Some(counter.value),
        there_at: Some(counter.at),
        sheet_alone: true,
        ..DimensionCheck::default()
    };
    gauge.misfit().map(|_| gauge)
}
