//! Which of a room's cabinets is built around a thing, where several are chosen: by the row of the plan that a selection
//! is called after, and by the thing that it is called after.

use crate::book::{Opening, Room, Selection};
use crate::vocabulary::{Kind, words_of};

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
    let kind = thing.and_then(|thing| thing.kind.get()).or_else(|| opening.and_then(|opening| opening.takes.get()));
    let called: Vec<String> = kind.into_iter().flat_map(|kind| kind.words()).flat_map(words_of).collect();
    let of_it: Vec<&Selection> = of_row.iter().copied().filter(|one| has_one_of(one, &called)).collect();
    if of_it.is_empty() { of_row } else { of_it }
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

fn has_one_of(selection: &Selection, words: &[String]) -> bool {
    words_of(&selection.name).iter().any(|word| words.contains(word))
}
