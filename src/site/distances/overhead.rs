//! How high the ceiling is where one stands in a bath, against what is written of it.

use crate::book::{Ceiling, ClearDistance, Room};
use crate::site::plan::{Plan, Thing};
use crate::site::{Provenance, Site};
use crate::units::Length;
use crate::vocabulary::Kind;

use super::Distance;
use super::bath::most_headroom;

/// What is written may be so much more than the plan leaves: 2 in (common practice: a ceiling that is out of level).
const OFF: Length = Length::from_inches(2);
/// Whatever of a shower the plan has, and a tub that one may stand in.
const SHOWERS: [Kind; 3] = [Kind::ShowerSet, Kind::ShowerTray, Kind::ShowerGlass];

/// The most headroom that the plan has anywhere over a fixture and the floor before it, where somebody may have measured
/// it; else the most that the room has.
pub fn headroom(site: &Site<'_>, room: &Room, name: ClearDistance) -> Option<Distance> {
    match name {
        ClearDistance::HeadroomAtShower => over_the_shower(site, room),
        ClearDistance::HeadroomAtToilet | ClearDistance::HeadroomAtBasin | ClearDistance::HeadroomAtTub => {
            let there = site.sound_plan(room).and_then(|plan| most_headroom(plan, name));
            there.or_else(|| highest(room))
        }
        _ => None,
    }
}

/// The same, where it is so much less than what is written that both can't be.
pub fn less_than_written(site: &Site<'_>, room: &Room, name: ClearDistance) -> Option<Distance> {
    let written = room.clearances.distances.least(name)?;
    headroom(site, room, name).filter(|there| written.value > there.value + OFF)
}

/// The most that the ceiling has over a room's showers, or over its tubs where it has none; of a shower that stands
/// nowhere in the plan, the most that the room has.
pub fn over_the_shower(site: &Site<'_>, room: &Room) -> Option<Distance> {
    let over = |kinds: &[Kind]| {
        let plan = site.sound_plan(room)?;
        let things = plan.things.iter().filter(|thing| thing.kind.is_some_and(|kind| kinds.contains(&kind)));
        let each = things.filter_map(|thing| Some(Distance::planned(most_over(plan, thing)?, thing.span)));
        each.max_by_key(|there| there.value)
    };
    let has_a_shower = room.clearances.distances.sides.contains_key(&ClearDistance::Shower)
        || room.selections.iter().any(|one| one.kind.get().is_some_and(|kind| SHOWERS.contains(kind)));
    let in_a_tub = || if has_a_shower { None } else { over(&[Kind::Bathtub]) };
    over(&SHOWERS).or_else(in_a_tub).or_else(|| highest(room))
}

/// The most that the ceiling has over a thing; one of no depth may stand before anything.
fn most_over<'a>(plan: &Plan<'a>, thing: &Thing<'a>) -> Option<Length> {
    let is_deep = thing.out.1 > thing.out.0 && thing.width() > Length::ZERO;
    is_deep.then(|| plan.most_ceiling_over(thing, thing.out)).flatten()
}

/// The highest place of a room's ceiling.
fn highest(room: &Room) -> Option<Distance> {
    let written = room.ceiling.spanned()?;
    let (Ceiling::Level(value) | Ceiling::Sloped { high: value, .. }) = written.value;
    Some(Distance { value, at: written.span, provenance: Provenance::Plan })
}
