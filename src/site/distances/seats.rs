//! Seats at counters, tables and islands.

use crate::book::{Room, Seating, Traffic};
use crate::site::Site;
use crate::units::Length;

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
                knees: island.side(side).overhang.get().map(|overhang| fact(*overhang)),
                behind: plan.clear_behind(island, side).map(|clear| fact(clear.distance)),
                traffic: None,
                wheelchair: false,
            }
        })
    });
    sides.collect()
}
