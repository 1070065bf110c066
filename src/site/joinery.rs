//! Which of a room's cabinets is built around a thing, where several are chosen: by the row of the plan that a selection
//! is called after, and by the thing that it is called after.

use crate::book::{Opening, PartIs, Room, Selection};
use crate::vocabulary::{Kind, Mention, words_of};

/// The cabinets that may be built around what goes into an opening, in the book's order: all of them where nothing
/// tells which.
pub fn cabinets_around<'a>(room: &'a Room, opening: Option<&Opening>, thing: Option<&Selection>) -> Vec<&'a Selection> {
    let is_one = |selection: &&Selection| selection.is(Kind::Cabinet) && selection.place.is_absent();
    let all: Vec<&Selection> = room.selections.iter().filter(is_one).collect();
    if all.len() < 2 {
        return all;
    }
    let of_its_row = by_row(room, opening, &all);
    let of_row = if of_its_row.is_empty() { all } else { of_its_row };
    let kind = thing.and_then(|thing| thing.kind.get()).or_else(|| opening?.takes.get()).copied();
    let of_it: Vec<&Selection> =
        of_row.iter().copied().filter(|one| kind.is_some_and(|kind| is_called_after(one, kind))).collect();
    if !of_it.is_empty() {
        return of_it;
    }
    let is_tall = opening.is_some_and(|opening| is_in_a_tall_unit(room, opening));
    let tall: Vec<&Selection> =
        of_row.iter().copied().filter(|one| is_tall && Mention::Tall.is_in(&one.name)).collect();
    if tall.is_empty() { of_row } else { tall }
}

/// Those that are called after the row in which it stands; where none is, those that are called after no other.
fn by_row<'a>(room: &Room, opening: Option<&Opening>, all: &[&'a Selection]) -> Vec<&'a Selection> {
    let rows = room.runs.iter().map(|run| &run.name.value).chain(room.islands.iter().map(|island| &island.name.value));
    let rows: Vec<&String> = rows.collect();
    let stands = opening.and_then(|opening| room.part_of(&opening.name).or_else(|| room.holder(&opening.name)));
    let its = stands.and_then(|row| row.run.map(|run| &run.name).or_else(|| row.island.map(|island| &island.name)));
    let Some(its) = its else { return vec![] };
    let is_of = |one: &Selection, row: &str| {
        let (own, row) = (words_of(&one.name), words_of(row));
        !row.is_empty() && row.iter().all(|word| own.contains(word))
    };
    let called: Vec<&Selection> = all.iter().copied().filter(|one| is_of(one, its)).collect();
    if !called.is_empty() {
        return called;
    }
    let of_another = |one: &Selection| rows.iter().any(|row| **row != its.value && is_of(one, row));
    all.iter().copied().filter(|one| !of_another(one)).collect()
}

/// Whether a selection has a whole name of a kind in its own: `oven`, `fridge`. Of `wall oven` the first word alone tells
/// nothing, and the last one only where it is a thing by itself.
fn is_called_after(selection: &Selection, kind: Kind) -> bool {
    let own = words_of(&selection.name);
    let head = kind.name().split_whitespace().next_back().and_then(Kind::of_a_neighbour);
    let mut names = kind.words().chain(head.into_iter().flat_map(Kind::words));
    names.any(|name| words_of(name).iter().all(|word| own.contains(word)))
}

/// Whether an opening is cut into a tall unit of the plan.
fn is_in_a_tall_unit(room: &Room, opening: &Opening) -> bool {
    let row = room.holder(&opening.name).or_else(|| room.part_of(&opening.name));
    row.is_some_and(|row| matches!(row.part.is, PartIs::Tall(_)))
}
