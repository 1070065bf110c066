//! How high the rims of basins are.

use crate::book::{ClearDistance, DetailName, Fixture, Opening, ProductOption, Room, Selection};
use crate::units::Length;
use crate::vocabulary::{Kind, Mention, Mount};

use super::counter_height;
use super::plan::chosen_for;
use super::told::{Provenance, SourcedFigure, Spot};
use super::vanity::vanity_of;

/// A basin's rim from the finished floor: as the room's `clearances` say of its only basin, else by its counter, by the
/// vanity that carries it, or by how high it hangs. None where nobody says how it is set, or how high that is.
pub fn rim_of<'a>(room: &'a Room, basin: &'a Selection, option: &'a ProductOption) -> Option<SourcedFigure<'a>> {
    if let (Some(written), true) = (room.clearances.distances.least(ClearDistance::BasinHeight), is_alone(room)) {
        return Some(SourcedFigure::written(written, Spot::Clearances));
    }
    rim_by_its_place(room, basin, option)
}

/// The same, as its counter, its vanity or its foot has it, whatever is written among the room's distances.
pub fn rim_by_its_place<'a>(
    room: &'a Room,
    basin: &'a Selection,
    option: &'a ProductOption,
) -> Option<SourcedFigure<'a>> {
    let high = || option.size.height.get().and_then(|high| high.least.or(high.most));
    let raised = |from: SourcedFigure<'a>, by: Length| {
        let provenance = if by == Length::ZERO { from.provenance } else { Provenance::Derived };
        SourcedFigure { value: from.value + by, provenance, ..from }
    };
    match option.mount()? {
        Mount::Under | Mount::DropIn | Mount::Apron => counter_of(room, basin),
        Mount::OnCounter => Some(raised(counter_of(room, basin)?, high()?)),
        Mount::InNoCabinet => {
            let opening = place_of(room, basin);
            let stands = || {
                let own = option.size.height.spanned().filter(|_| Mention::Pedestal.is_in(option.mount_words()))?;
                let value = own.value.most.or(own.value.least)?;
                let spot = Spot::Selection(&basin.name);
                Some(SourcedFigure { value, at: own.span, provenance: Provenance::Written, spot })
            };
            let hangs = bottom_of(room, basin).and_then(|bottom| Some(raised(bottom, high()?)));
            hangs.or_else(stands).or_else(|| counter_height(room, opening?).best().copied())
        }
    }
}

/// What a bowl's outlet hangs from, above the finished floor: the counter at its opening; of a basin that stands on that,
/// or hangs on a wall, its own rim.
pub fn top_over(room: &Room, opening: &Opening, bowl: &Selection, option: &ProductOption) -> Option<Length> {
    let stands_free = matches!(option.mount(), Some(Mount::InNoCabinet | Mount::OnCounter));
    let rim = || rim_of(room, bowl, option).map(|rim| rim.value);
    let rim = if bowl.is(Kind::Basin) && stands_free { rim() } else { None };
    rim.or_else(|| counter_height(room, opening).value())
}

fn is_alone(room: &Room) -> bool {
    room.selections.iter().filter(|selection| selection.is(Kind::Basin)).count() == 1
}

fn place_of<'a>(room: &'a Room, basin: &Selection) -> Option<&'a Opening> {
    room.opening(basin.place.get()?)
}

/// The top of the counter that a basin is set into or stands on: at its own opening, else of the vanity under it, with
/// the top that is chosen for that.
fn counter_of<'a>(room: &'a Room, basin: &'a Selection) -> Option<SourcedFigure<'a>> {
    let own = place_of(room, basin).and_then(|opening| counter_height(room, opening).best().copied());
    own.or_else(|| {
        let vanity = vanity_of(room, basin)?;
        let opening = vanity.opening;
        let written = counter_height(room, opening).best().copied();
        written.or_else(|| {
            let high = vanity.selection.settled()?.size.height.spanned()?;
            let body = high.value.most.or(high.value.least)?;
            let tops = room.selections.iter().filter(|one| one.is(Kind::Counter)).flat_map(Selection::standing);
            let thick = tops.filter_map(|top| Some(top.length(DetailName::Thickness)?.0)).max().unwrap_or_default();
            let value = opening.sill.get().copied().unwrap_or_default() + body + thick;
            let spot = Spot::Selection(&vanity.selection.name);
            Some(SourcedFigure { value, at: high.span, provenance: Provenance::Derived, spot })
        })
    })
}

/// How high the bottom of a basin is that hangs on a wall, at its opening or in the plan.
fn bottom_of<'a>(room: &'a Room, basin: &Selection) -> Option<SourcedFigure<'a>> {
    let own = place_of(room, basin);
    let at_opening = own.and_then(|it| Some(SourcedFigure::written(it.sill.spanned()?, Spot::Opening(&it.name))));
    at_opening.or_else(|| {
        let is_its = |fixture: &&Fixture| chosen_for(room, fixture).is_some_and(|one| std::ptr::eq(one, basin));
        let fixture = room.fixtures.iter().find(is_its)?;
        Some(SourcedFigure::planned(fixture.sill.spanned()?, Spot::Fixture(&fixture.name)))
    })
}
