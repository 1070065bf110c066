//! The cabinet that houses a thing: its width outside and inside, wherever it is written.

use crate::book::{InRow, Opening, PartIs, Room, System};
use crate::units::Length;

use super::told::{Answer, Provenance, SourcedFigure, Spot};

/// How thick a cabinet's side panel is where nobody says: 3/4 in, or 18 mm where the cabinet is set out in
/// millimetres (common practice).
pub fn panel_thickness(outside: Length, units: System) -> Length {
    /// 1/64 in.
    const GRID: i64 = 396_875;
    const MILLIMETRE: i64 = 1_000_000;
    let whole = |step: i64| outside.nanometres() % step == 0;
    let in_millimetres = !whole(GRID) && (units.is_metric() || whole(MILLIMETRE));
    if in_millimetres { Length::from_millimetres(18) } else { Length::from_sixty_fourths(48) }
}

/// The part that houses what goes into an opening: a cabinet or a tall unit that holds it.
pub fn housed_in_a_cabinet<'a>(room: &'a Room, opening: &Opening) -> Option<InRow<'a>> {
    let is_cabinet = |holder: &InRow<'_>| matches!(holder.part.is, PartIs::Cabinet(_) | PartIs::Tall(_));
    room.holder(&opening.name).filter(is_cabinet)
}

/// Where a part is, for people.
pub(super) fn spot_of<'a>(holder: &InRow<'a>) -> Spot<'a> {
    let run = holder.run.map(|run| run.name.value.as_str());
    let island = holder.island.map(|island| island.name.value.as_str());
    Spot::Part(holder.part.is.word(), run.or(island).unwrap_or_default())
}

/// Width of the housing cabinet over its sides.
pub fn outside_width<'a>(room: &'a Room, opening: &'a Opening) -> Answer<'a> {
    let written = opening.cabinet.get().and_then(|cabinet| cabinet.outside_width.spanned());
    let written = written.map(|told| SourcedFigure::written(told, Spot::CabinetOf(&opening.name)));
    let of_part = housed_in_a_cabinet(room, opening)
        .and_then(|holder| Some(SourcedFigure::planned(holder.part.width.spanned()?, spot_of(&holder))));
    Answer::of([written, of_part])
}

/// The clear width inside a cabinet.
#[derive(Clone, Copy, Debug)]
pub struct Inside<'a> {
    /// The figure, and where it comes from.
    pub told: SourcedFigure<'a>,
    /// The width outside that it follows from, where nobody wrote it.
    pub from_outside: Option<Length>,
}

/// The clear width between the sides of the housing cabinet: as written, else its outside less two panels.
pub fn inside_width<'a>(room: &'a Room, opening: &'a Opening, units: System) -> Option<Inside<'a>> {
    if let Some(written) = opening.cabinet.get().and_then(|cabinet| cabinet.inside_width.spanned()) {
        let told = SourcedFigure::written(written, Spot::CabinetOf(&opening.name));
        return Some(Inside { told, from_outside: None });
    }
    let outside = *outside_width(room, opening).best()?;
    let said = opening.cabinet.get().and_then(|cabinet| cabinet.sides.get().copied());
    let side = said.unwrap_or_else(|| panel_thickness(outside.value, units));
    let value = outside.value - side.times(2);
    Some(Inside {
        told: SourcedFigure { value, provenance: Provenance::Derived, ..outside },
        from_outside: Some(outside.value),
    })
}
