//! What is set into one cabinet, one above the other: whether it stays inside, and clear of the next.

use crate::book::{Opening, Part, PartIs, Room};
use crate::units::Length;
use crate::vocabulary::Trait;

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

/// Every opening of a room that is not where its cabinet can have it, by their sills and heights.
pub fn outside(room: &Room) -> Vec<Outside<'_>> {
    let runs = room.runs.iter().flat_map(|run| {
        let bottom = run.above_floor.get().copied().unwrap_or_default();
        run.parts.iter().map(move |part| (part, bottom, part.height.get().or_else(|| run.height.get()).copied()))
    });
    let islands = room.islands.iter();
    let sides = islands.flat_map(|island| island.sides().flat_map(|side| side.parts.iter()));
    let sides = sides.map(|part| (part, Length::ZERO, part.height.get().copied()));
    runs.chain(sides).flat_map(|(part, bottom, height)| of_part(room, part, (bottom, height))).collect()
}

/// Bottom and top of an opening that is cut into a front; none for what hangs in a counter, or of no known height.
fn reach(opening: &Opening) -> Option<(Length, Length)> {
    let low = *opening.sill.get().filter(|_| !opening.takes_one(Trait::CutIntoCounter))?;
    Some((low, low + opening.height.get()?.greatest()?.value))
}

fn of_part<'a>(room: &'a Room, part: &'a Part, (bottom, height): (Length, Option<Length>)) -> Vec<Outside<'a>> {
    if !matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_)) {
        return vec![];
    }
    let held = part.holds.iter().filter_map(|name| room.opening(name));
    let mut held: Vec<(&Opening, (Length, Length))> =
        held.filter_map(|opening| Some((opening, reach(opening)?))).collect();
    held.sort_by_key(|(_, reach)| *reach);
    let mut found = Vec::new();
    for (opening, (low, high)) in &held {
        let top = height.map(|height| bottom + height);
        let past = match top {
            Some(top) if *high > top => Some((Past::Top(top), *high - top)),
            _ if *low < bottom => Some((Past::Bottom(bottom), bottom - *low)),
            _ => None,
        };
        found.extend(past.map(|(past, by)| Outside { opening, part, past, by }));
    }
    for ((lower, (_, high)), (upper, (low, _))) in held.iter().zip(held.iter().skip(1)) {
        if low < high {
            found.push(Outside { opening: upper, part, past: Past::Into(lower), by: *high - *low });
        }
    }
    found
}
