//! Seats at counters, tables and islands.

use crate::book::{Island, IslandSide, Room, Seating, Selection, Traffic};
use crate::site::Site;
use crate::site::counters::covers;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Kind;

use super::Distance;

/// Where people sit, and what is known of it.
#[derive(Clone, Debug)]
pub struct Seats<'a> {
    /// What the room calls it.
    pub name: &'a str,
    /// Length of the edge.
    pub edge: Option<Distance>,
    /// How many.
    pub seats: Option<u32>,
    /// Top of the surface from the finished floor.
    pub height: Option<Distance>,
    /// Clear for knees.
    pub knees: Option<Distance>,
    /// Clear floor behind, from the edge.
    pub behind: Option<Distance>,
    /// Whether others go by.
    pub traffic: Option<Traffic>,
    /// Whether somebody goes by in a wheelchair.
    pub wheelchair: bool,
}

/// Every place where people sit: as `seating` says, and what it leaves out as the plan has it; then the
/// islands that only the plan knows.
pub fn seats<'a>(site: &Site<'a>, room: &'a Room) -> Vec<Seats<'a>> {
    let planned = islands(site, room);
    let mut all: Vec<Seats<'a>> = Vec::new();
    for seating in &room.seating {
        let written = written(seating);
        let at_island = planned.iter().find(|planned| planned.name == written.name);
        all.push(at_island.map_or_else(|| written.clone(), |planned| completed(written.clone(), planned)));
    }
    let unwritten = |seats: &Seats<'_>| !room.seating.iter().any(|seating| seating.name.value == seats.name);
    all.extend(planned.iter().filter(|seats| unwritten(seats)).cloned());
    all
}

fn written(seating: &Seating) -> Seats<'_> {
    let fact = |slot: &crate::book::Slot<Length>| slot.spanned().map(Distance::from);
    Seats {
        name: &seating.name.value,
        edge: fact(&seating.edge),
        seats: seating.seats.get().copied(),
        height: fact(&seating.height),
        knees: fact(&seating.knee_depth),
        behind: fact(&seating.behind),
        traffic: seating.traffic.get().copied(),
        wheelchair: seating.wheelchair.get() == Some(&true),
    }
}

fn completed<'a>(written: Seats<'a>, planned: &Seats<'a>) -> Seats<'a> {
    Seats {
        edge: written.edge.or(planned.edge),
        seats: written.seats.or(planned.seats),
        height: written.height.or(planned.height),
        knees: written.knees.or(planned.knees),
        behind: written.behind.or(planned.behind),
        ..written
    }
}

/// Sides of islands with seats.
fn islands<'a>(site: &Site<'a>, room: &'a Room) -> Vec<Seats<'a>> {
    let Some(plan) = site.sound_plan(room) else { return vec![] };
    let sides = room.islands.iter().flat_map(|island| {
        plan.seats(island).into_iter().filter(|(_, edge)| edge.seats > 0).map(move |(side, edge)| {
            let fact = |value: Length| Distance::planned(value, island.name.span);
            Seats {
                name: &island.name.value,
                edge: Some(fact(edge.edge)),
                seats: Some(edge.seats),
                height: edge.height.map(fact),
                knees: knees(room, island, side).map(|(knees, at)| Distance::planned(knees, at)),
                behind: plan.clear_behind(island, side).map(|clear| fact(clear.distance)),
                traffic: None,
                wheelchair: false,
            }
        })
    });
    sides.collect()
}

/// What is clear for knees at a side of an island: as the side says; as the counter says that lies on it; else what its
/// cabinets leave of its counter.
fn knees(room: &Room, island: &Island, side: IslandSide) -> Option<(Length, Span)> {
    let own = island.side(side);
    if !own.overhang.is_absent() {
        return own.overhang.spanned().map(|overhang| (overhang.value, island.name.span));
    }
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let options = counters.flat_map(Selection::standing).filter(|option| covers(room, option, &island.name));
    let of_counter = options.filter_map(|option| option.top.get()?.overhang.spanned());
    let of_counter = of_counter.map(|overhang| (overhang.value, overhang.span)).min_by_key(|(overhang, _)| *overhang);
    of_counter.or_else(|| left_by_its_cabinets(island, side))
}

fn left_by_its_cabinets(island: &Island, side: IslandSide) -> Option<(Length, Span)> {
    let (across, is_there) = match side {
        IslandSide::Wall => (IslandSide::Room, true),
        IslandSide::Room => (IslandSide::Wall, true),
        IslandSide::Left | IslandSide::Right => (side, false),
    };
    let (one, other) = *island.size.get()?;
    let deep = if island.turned.get() == Some(&true) { one } else { other };
    let across = island.side(across);
    // Where cabinets stand back to back, or at the ends too, nobody knows how deep they are together.
    if !is_there || !island.side(side).parts.is_empty() || across.parts.is_empty() {
        return None;
    }
    let depths = across.parts.iter().map(|part| part.depth.get().or(island.depth.get()).copied());
    let body = depths.collect::<Option<Vec<_>>>()?.into_iter().max()?;
    let left = deep - body - across.overhang.get().copied().unwrap_or_default();
    Some((left.max(Length::ZERO), island.size.span()?))
}
