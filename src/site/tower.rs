//! What is set into one cabinet, one above the other: whether it stays inside, and clear of the next.

use crate::book::{Book, DetailName, Opening, Part, PartIs, Room, Selection};
use crate::site::counters::covers;
use crate::units::Length;
use crate::vocabulary::{Clearance, Kind, Slot, Trait};

use super::panel_thickness;

/// How an opening stands out of its cabinet, or into another one.
#[derive(Clone, Debug)]
pub struct Outside<'a> {
    /// The opening.
    pub opening: &'a Opening,
    /// The part that holds it.
    pub part: &'a Part,
    /// What it reaches past.
    pub past: Past<'a>,
    /// How far.
    pub by: Length,
}

/// What an opening reaches past.
#[derive(Clone, Copy, Debug)]
pub enum Past<'a> {
    /// The top of its cabinet, so high above the finished floor.
    Top(Length),
    /// The bottom of its cabinet, likewise.
    Bottom(Length),
    /// It begins below the top of another opening.
    Into(&'a Opening),
}

/// A part of a row that may hold openings, its bottom from the finished floor, what its plinth takes of it, and its
/// height.
#[derive(Clone, Copy)]
struct Housing<'a> {
    part: &'a Part,
    bottom: Length,
    plinth: Length,
    height: Option<Length>,
    /// The underside of the counter that lies on the row.
    under_top: Option<Length>,
    /// The top of that counter.
    counter: Option<Length>,
}

impl Housing<'_> {
    /// Where the box ends that a front is cut into: as it is written, and no higher than the counter over it.
    fn top(&self) -> Option<Length> {
        let written = self.height.map(|height| self.bottom + height);
        let counter = self.under_top.filter(|_| matches!(self.part.is, PartIs::Cabinet(_)));
        written.into_iter().chain(counter).min()
    }

    /// Where a front begins that an opening is cut into: what lies over its edge has none in the plinth.
    fn begins(&self, opening: &Opening) -> Length {
        if opening.takes_one(Trait::LapsOver) { self.bottom + self.plinth } else { self.bottom }
    }
}

/// The thinnest counter that may come to lie there; none is as if it had no thickness.
fn thickness_on(room: &Room, row: &str) -> Length {
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let lying = counters.flat_map(Selection::standing).filter(|option| covers(room, option, row));
    let thick = lying.map(|option| option.length(DetailName::Thickness).map_or(Length::ZERO, |(thick, _)| thick));
    thick.min().unwrap_or(Length::ZERO)
}

fn height_of_part(part: &Part) -> Option<Length> {
    part.height.get().copied()
}

/// Every part of a room's rows that is a cabinet.
fn boxes(room: &Room) -> impl Iterator<Item = Housing<'_>> {
    let runs = room.runs.iter().flat_map(|run| {
        let bottom = run.above_floor.get().copied().unwrap_or_default();
        let plinth = run.toe_kick.get().filter(|_| run.above_floor.is_absent()).copied().unwrap_or_default();
        let height = |part: &Part| part.height.get().or_else(|| run.height.get()).copied();
        let top = run.counter.height.get().filter(|_| run.above_floor.is_absent());
        let under_top = top.map(|top| *top - thickness_on(room, &run.name));
        let counter = top.copied();
        run.parts.iter().map(move |part| Housing { part, bottom, plinth, height: height(part), under_top, counter })
    });
    let sides = room.islands.iter().flat_map(|island| {
        let counter = island.height.get().copied();
        let under_top = counter.map(|top| top - thickness_on(room, &island.name));
        let parts = island.sides().flat_map(|side| side.parts.iter());
        let (bottom, plinth) = (Length::ZERO, Length::ZERO);
        parts.map(move |part| Housing { part, bottom, plinth, height: height_of_part(part), under_top, counter })
    });
    runs.chain(sides).filter(|one| matches!(one.part.is, PartIs::Cabinet(_) | PartIs::Tall(_)))
}

/// Every opening of a room that is not where its cabinet can have it, by their sills and heights.
pub fn outside(room: &Room) -> Vec<Outside<'_>> {
    boxes(room).flat_map(|one| of_part(room, &one)).collect()
}

/// What is set into one cabinet, one above the other, and is higher in all than its inside.
#[derive(Clone, Debug)]
pub struct TooHigh<'a> {
    /// The part that holds it.
    pub part: &'a Part,
    /// What it holds.
    pub holds: Vec<&'a Opening>,
    /// How much height all of it needs.
    pub needs: Length,
    /// How much there is between the cabinet's bottom and its top, its plinth taken off.
    pub inside: Length,
    /// Whether top and bottom of the cabinet, as thick as is usual, were taken off as well.
    pub less_its_panels: bool,
}

/// Every cabinet of a room whose openings are higher in all than it is, where their places in it are not all written.
pub fn too_high<'a>(book: &Book, room: &'a Room) -> Vec<TooHigh<'a>> {
    let units = book.project.units;
    let judge = |one: Housing<'a>| {
        let whole = one.height? - one.plinth;
        let held = one.part.holds.iter().filter_map(|name| room.opening(name));
        let held: Vec<&Opening> = held.filter(|opening| !opening.takes_one(Trait::CutIntoCounter)).collect();
        let is_placed = |opening: &&Opening| !opening.sill.is_absent() && !opening.height.is_absent();
        // What stands at a written height has been told where it does not.
        if held.len() < 2 || held.iter().all(is_placed) {
            return None;
        }
        let needs: Length = held.iter().filter_map(|opening| height_needed(room, opening)).sum();
        let panels = panel_thickness(one.part.width.get().copied().unwrap_or(whole), units).times(2);
        let less_its_panels = needs <= whole;
        let inside = if less_its_panels { whole - panels } else { whole };
        (needs > inside).then_some((one.part, needs, inside, less_its_panels))
    };
    let found = boxes(room).filter_map(judge);
    found
        .map(|(part, needs, inside, less_its_panels)| {
            let holds = part.holds.iter().filter_map(|name| room.opening(name)).collect();
            TooHigh { part, holds, needs, inside, less_its_panels }
        })
        .collect()
}

/// The height that an opening takes of its cabinet: as it is written; else the least that the sheet of what may go in
/// asks for; else that thing's own, with the air above and below it.
fn height_needed(room: &Room, opening: &Opening) -> Option<Length> {
    if let Some(written) = opening.height.get() {
        return written.least().map(|least| least.value);
    }
    let options = room.goes_into(&opening.name).flat_map(Selection::standing);
    let each = options.map(|option| {
        let fit = option.fit.get();
        let asked = fit.and_then(|fit| fit.opening.height.get().and_then(|asked| asked.least));
        let cabinet = || fit?.cabinet.get()?.inside_height.get()?.least;
        let own = || {
            let air = |slot: &Slot<Clearance>| slot.get().filter(|air| air.holds.is_empty()).map(|air| air.length);
            let air = fit.map_or(Length::ZERO, |fit| {
                air(&fit.air.top).unwrap_or_default() + air(&fit.air.bottom).unwrap_or_default()
            });
            option.size.height.get().and_then(|height| height.least.or(height.most)).map(|own| own + air)
        };
        asked.or_else(cabinet).or_else(own)
    });
    // While the client chooses, the one that needs least may still be taken.
    each.collect::<Option<Vec<_>>>()?.into_iter().min()
}

/// Whether no sheet of what may go into an opening asks for a height of it or of its cabinet: that is held to the cabinet
/// by itself.
fn is_of_its_own_height(room: &Room, opening: &Opening) -> bool {
    room.goes_into(&opening.name).flat_map(Selection::standing).all(|option| {
        let fit = option.fit.get();
        let cabinet = fit.and_then(|fit| fit.cabinet.get());
        fit.is_none_or(|fit| fit.opening.height.is_absent())
            && cabinet.is_none_or(|asked| asked.inside_height.is_absent())
    })
}

/// Bottom and top of an opening that is cut into a front; none for what hangs in a counter, or of no known height.
fn reach(room: &Room, opening: &Opening) -> Option<(Length, Length)> {
    let low = *opening.sill.get().filter(|_| !opening.takes_one(Trait::CutIntoCounter))?;
    let written = opening.height.get().map(|height| height.greatest().map(|greatest| greatest.value));
    let chosen = || height_needed(room, opening).filter(|_| is_of_its_own_height(room, opening));
    Some((low, low + written.unwrap_or_else(chosen)?))
}

/// Bottom and top of what hangs in a counter of that height; none where nobody says how far down it reaches.
fn reach_down(room: &Room, opening: &Opening, counter: Length) -> Option<(Length, Length)> {
    let hangs = opening.takes_one(Trait::CutIntoCounter) && opening.sill.is_absent();
    let down = height_needed(room, opening).filter(|_| hangs)?;
    Some((counter - down, counter))
}

fn of_part<'a>(room: &'a Room, of: &Housing<'a>) -> Vec<Outside<'a>> {
    let part = of.part;
    let held = part.holds.iter().filter_map(|name| room.opening(name));
    let mut held: Vec<(&Opening, (Length, Length))> =
        held.filter_map(|opening| Some((opening, reach(room, opening)?))).collect();
    held.sort_by_key(|(_, reach)| *reach);
    let mut found = Vec::new();
    for (opening, (low, high)) in &held {
        let begins = of.begins(opening);
        let past = match of.top() {
            Some(top) if *high > top => Some((Past::Top(top), *high - top)),
            _ if *low < begins => Some((Past::Bottom(begins), begins - *low)),
            _ => None,
        };
        found.extend(past.map(|(past, by)| Outside { opening, part, past, by }));
    }
    let from_the_top = part.holds.iter().filter_map(|name| room.opening(name));
    held.extend(from_the_top.filter_map(|opening| Some((opening, reach_down(room, opening, of.counter?)?))));
    held.sort_by_key(|(_, reach)| *reach);
    for ((lower, (_, high)), (upper, (low, _))) in held.iter().zip(held.iter().skip(1)) {
        if low < high {
            found.push(Outside { opening: upper, part, past: Past::Into(lower), by: *high - *low });
        }
    }
    found
}
