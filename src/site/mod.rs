//! What is known of the site, resolved from every place where it may be written.
//!
//! An [`Answer`] holds all that was written of one figure, the most trusted first: what was measured,
//! else what is written at the thing itself, else what the plan gives, else what follows from it. What is
//! written in two places that differ is in [`twice::of_room`]. Where nothing is written there is no answer.

mod cabinet;
mod mount;
mod told;
pub mod twice;

pub use cabinet::{Inside, inside_width, outside_width, panel_thickness};
pub use mount::Mount;
pub use told::{Answer, Spot, Told, Whence};

use crate::book::{InRow, Opening, Room};
use crate::source::Spanned;
use crate::units::Length;

/// The row that an opening stands in, or whose part it is cut into.
fn row_of<'a>(room: &'a Room, opening: &Opening) -> Option<InRow<'a>> {
    room.part_of(&opening.name).or_else(|| room.holder(&opening.name))
}

/// Top of the counter that an opening stands at, from the finished floor.
pub fn counter_height<'a>(room: &'a Room, opening: &'a Opening) -> Answer<'a> {
    let row = row_of(room, opening);
    let of_run = row
        .and_then(|row| row.run)
        .and_then(|run| run.counter_height.spanned().map(|told| Told::planned(told, Spot::Run(&run.name))));
    let of_island = row
        .and_then(|row| row.island)
        .and_then(|island| island.height.spanned().map(|told| Told::planned(told, Spot::Island(&island.name))));
    Answer::of([at_opening(opening, opening.counter_height.spanned()), of_run, of_island])
}

/// From the wall to the front edge of the counter that an opening stands at.
pub fn counter_depth<'a>(room: &'a Room, opening: &'a Opening) -> Answer<'a> {
    let of_run = row_of(room, opening)
        .and_then(|row| row.run)
        .and_then(|run| run.counter_depth.spanned().map(|told| Told::planned(told, Spot::Run(&run.name))));
    Answer::of([at_opening(opening, opening.counter_depth.spanned()), of_run])
}

/// What is written at the opening itself.
fn at_opening<'a>(opening: &'a Opening, written: Option<&Spanned<Length>>) -> Option<Told<'a>> {
    written.map(|written| Told::written(written, Spot::Opening(&opening.name)))
}
