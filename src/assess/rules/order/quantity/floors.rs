//! Floors larger than the rooms that they are laid in.

use crate::assess::{Context, about, say_area};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::is_floor;
use crate::units::Area;

/// How much more than its rooms a floor may be, of a hundred: doorways and niches (common practice).
const DOORWAYS: i128 = 5;

/// Tells of a floor that is too large, where every room of the book is planned: it may lie in several of them.
pub fn ask(context: &Context<'_>, (room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let laid = option.laid.area.spanned().filter(|_| is_floor(selection))?;
    let areas = context.book.rooms.iter().map(|room| context.site.sound_plan(room)?.area);
    let all: Vec<Area> = areas.collect::<Option<_>>()?;
    let rooms: i128 = all.iter().map(|area| area.square_nanometres()).sum();
    let larger = laid.value.square_nanometres().saturating_mul(100) > rooms.saturating_mul(100 + DOORWAYS);
    let rooms = Area::from_square_nanometres(rooms);
    let message = phrase!(
        "`{}` is laid on {}, and the plan has no more than {}",
        selection.name.value,
        say_area(laid.value, context.book.project.units),
        say_area(rooms, context.book.project.units)
    );
    larger.then(|| {
        let finding = about(room, selection, option, Severity::Query, laid.span, message);
        finding.remedy("correct the area or the outline before it is ordered")
    })
}
