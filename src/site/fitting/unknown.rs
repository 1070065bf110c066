//! In which directions it is not known whether a thing fits: nobody measured the opening there, or from a face that
//! nobody names, or the thing's own size is not known yet.

use crate::book::{MeasuredFrom, Opening, ProductOption, Room};
use crate::site::is_floor;
use crate::site::plan::Plan;
use crate::vocabulary::Trait;

use super::{DimensionCheck, Direction, Stack, above, housing, loses_to_the_floor};

/// The width, height and depth of a thing against its opening.
pub(super) type Gauges<'g> = [(Direction, &'g DimensionCheck); 3];

/// Everything that is not known yet. What misses is known, and a direction of which nothing is asked does not count.
pub(super) fn unknown(
    plan: Option<&Plan<'_>>,
    (room, opening): (&Room, &Opening),
    option: &ProductOption,
    gauges: Gauges<'_>,
) -> Vec<Direction> {
    let unmeasured = unmeasured(plan, (room, opening), option, gauges);
    let is_unknown = |(direction, gauge): &(Direction, &DimensionCheck)| {
        let no_face = match direction {
            Direction::Width => !opening.width.is_absent() || !opening.plumb.is_absent(),
            Direction::Height => false,
            Direction::Depth => !opening.depth.is_absent() && (gauge.asked.is_some() || !gauge.sheet_alone),
        };
        let no_size = gauge.asked.is_none() && gauge.body.is_none() && lacks(option, *direction);
        let no_floor = *direction == Direction::Height && gauge.there.is_some() && floor_is_unknown(room, opening);
        gauge.misfit().is_none()
            && (unmeasured.contains(direction)
                || gauge.body_is_larger_by().is_some()
                || (gauge.there.is_none() && no_face)
                || (gauge.there.is_some() && no_size)
                || (gauge.least().is_some() && no_floor))
    };
    gauges.iter().filter(|gauge| is_unknown(gauge)).map(|(direction, _)| *direction).collect()
}

/// The sizes that the sheet asks for, that the opening lacks, and that nothing around it bounds.
pub(super) fn unmeasured(
    plan: Option<&Plan<'_>>,
    (room, opening): (&Room, &Opening),
    option: &ProductOption,
    gauges: Gauges<'_>,
) -> Vec<Direction> {
    let Some(asked) = option.fit.get().map(|fit| &fit.opening) else { return vec![] };
    let lacks = |(direction, gauge): &(Direction, &DimensionCheck)| {
        gauge.there.is_none()
            && match direction {
                Direction::Width => {
                    let inside = || opening.cabinet.get().is_some_and(|own| own.inside_width.get().is_some());
                    let is_written = !opening.width.is_absent() || !opening.plumb.is_absent();
                    asked.width.get().is_some()
                        && !is_written
                        && !inside()
                        && housing::cabinet_part(room, opening).is_none()
                }
                Direction::Height => {
                    let ends_above = || above(plan, room, opening).is_some() || Stack::of(room, opening).is_some();
                    let stands_free = opening.takes_one(Trait::BreaksCounter) || opening.takes_one(Trait::DropsIn);
                    let is_asked = asked.height.get().is_some() && opening.height.is_absent() && !stands_free;
                    is_asked && !ends_above() && housing::inside_height(room, opening).is_none()
                }
                Direction::Depth => {
                    let is_asked = asked.depth.get().is_some() && opening.depth.is_absent();
                    is_asked && housing::inside_depth(room, opening).is_none()
                }
            }
    };
    gauges.iter().filter(|gauge| lacks(gauge)).map(|(direction, _)| *direction).collect()
}

/// Whether what it takes must say how large it is there, and does not.
fn lacks(option: &ProductOption, direction: Direction) -> bool {
    option.unwritten.contains(&direction.of_its_size())
}

/// Whether its height was taken from a floor that nobody names, in a room that gets a new one.
pub fn floor_is_unknown(room: &Room, opening: &Opening) -> bool {
    let is_to_come = room.floor_build_up.is_absent() && room.selections.iter().any(is_floor);
    is_to_come && is_from_the_present_floor(room, opening)
}

/// Whether its height was taken from the floor, without a word about which, or from one on which something is to come.
pub fn is_from_the_present_floor(room: &Room, opening: &Opening) -> bool {
    let from = &opening.measured_from;
    let is_present = from.is_absent() || from.get() == Some(&MeasuredFrom::PresentFloor);
    is_present && loses_to_the_floor(room, opening) && !opening.height.is_absent()
}
