//! Finds what a room holds by name, without looking through the room for each thing.

use std::borrow::Cow;
use std::collections::HashMap;
use std::sync::OnceLock;

use crate::vocabulary::Kind;

use super::{Island, Opening, Part, PartIs, ProductOption, Room, Run, Selection};

/// The lists of a room by what is looked for; made at the first question, when the room is as it was read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LookUp(OnceLock<Lists>);

#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Lists {
    /// The numbers of openings by their own names; case does not count.
    named: HashMap<String, Vec<usize>>,
    /// The numbers of openings by what they name beside or above them; case does not count.
    naming: HashMap<String, Vec<usize>>,
    /// The numbers of selections by the opening that they go into.
    placed: HashMap<String, Vec<usize>>,
    /// Where openings are cut into a part: the number of its row, and its own there.
    held: HashMap<String, (usize, usize)>,
    /// Where openings are themselves a part.
    parts: HashMap<String, (usize, usize)>,
}

/// A part of a run or of an island's side.
#[derive(Clone, Copy, Debug)]
pub struct InRow<'a> {
    /// The part.
    pub part: &'a Part,
    /// Its own number in the row, as it is written.
    pub number: usize,
    /// All parts of the row, in the order written.
    pub parts: &'a [Part],
    /// The run that it stands in.
    pub run: Option<&'a Run>,
    /// The island in whose side it stands.
    pub island: Option<&'a Island>,
}

impl InRow<'_> {
    /// Depth of the part: its own, or that of its row.
    pub fn depth(&self) -> Option<crate::source::Spanned<crate::units::Length>> {
        let of_row = self.run.map(|run| &run.depth).or_else(|| self.island.map(|island| &island.depth));
        self.part.depth.spanned().or_else(|| of_row?.spanned()).cloned()
    }
}

/// Every row of a room: runs, then the sides of islands.
fn rows(room: &Room) -> impl Iterator<Item = (Option<&Run>, Option<&Island>, &[Part])> {
    let runs = room.runs.iter().map(|run| (Some(run), None, run.parts.as_slice()));
    let islands = room.islands.iter();
    runs.chain(islands.flat_map(|island| island.sides().map(move |side| (None, Some(island), side.parts.as_slice()))))
}

/// A name as the lists hold it: most are written so.
fn in_small(name: &str) -> Cow<'_, str> {
    match name.bytes().any(|byte| byte.is_ascii_uppercase()) {
        true => Cow::Owned(name.to_ascii_lowercase()),
        false => Cow::Borrowed(name),
    }
}

impl Lists {
    /// The cabinet that an oven is built into says whose place it is made around, and does not go into that.
    fn leave_out_what_houses(&mut self, room: &Room) {
        for (place, numbers) in &mut self.placed {
            let Some(opening) = room.openings.iter().find(|opening| opening.name.value == *place) else { continue };
            let is_built_in = opening.takes.get().is_some_and(|takes| *takes != Kind::Cabinet);
            if is_built_in && self.held.contains_key(&place.to_ascii_lowercase()) {
                numbers.retain(|number| !room.selections.get(*number).is_some_and(|one| one.is(Kind::Cabinet)));
            }
        }
    }

    fn of(room: &Room) -> Self {
        let mut lists = Self::default();
        let add = |list: &mut HashMap<String, Vec<usize>>, name: String, number: usize| {
            let numbers = list.entry(name).or_default();
            if numbers.last() != Some(&number) {
                numbers.push(number);
            }
        };
        for (number, opening) in room.openings.iter().enumerate() {
            add(&mut lists.named, opening.name.to_ascii_lowercase(), number);
            let above = opening.above.get().map(|above| &above.what);
            for other in opening.pair.get().into_iter().chain(above) {
                add(&mut lists.naming, other.to_ascii_lowercase(), number);
            }
        }
        for (number, selection) in room.selections.iter().enumerate() {
            if let Some(place) = selection.place.get() {
                add(&mut lists.placed, place.clone(), number);
            }
        }
        lists.leave_out_what_hangs_from_others(room);
        for (row, (_, _, parts)) in rows(room).enumerate() {
            for (number, part) in parts.iter().enumerate() {
                if let PartIs::Opening(name) = &part.is {
                    lists.parts.entry(name.to_ascii_lowercase()).or_insert((row, number));
                }
                for held in &part.holds {
                    lists.held.entry(held.to_ascii_lowercase()).or_insert((row, number));
                }
            }
        }
        lists.leave_out_what_houses(room);
        lists
    }
}

impl Lists {
    /// What hangs from another thing, or stands in it, is at its opening and does not go into it.
    fn leave_out_what_hangs_from_others(&mut self, room: &Room) {
        let kind = |number: usize| room.selections.get(number)?.kind.get().copied();
        for numbers in self.placed.values_mut().filter(|numbers| numbers.len() > 1) {
            let kinds: Vec<Kind> = numbers.iter().filter_map(|number| kind(*number)).collect();
            let hangs = |of: Kind| kinds.iter().any(|other| of.hangs_from(*other));
            numbers.retain(|number| !kind(*number).is_some_and(hangs));
        }
    }
}

impl Room {
    fn lists(&self) -> &Lists {
        self.look_up.0.get_or_init(|| Lists::of(self))
    }

    /// Forgets what was looked up: the lists of the room are no longer as they were.
    pub fn was_changed(&mut self) {
        self.look_up = LookUp::default();
    }

    /// The opening of that name.
    pub fn opening(&self, name: &str) -> Option<&Opening> {
        self.openings_called(name).find(|opening| opening.name.value == name)
    }

    /// The openings of that name, whatever its case, in the order written.
    pub fn openings_called(&self, name: &str) -> impl Iterator<Item = &Opening> {
        let numbers = self.lists().named.get(&*in_small(name)).map_or(&[][..], Vec::as_slice);
        numbers.iter().filter_map(|number| self.openings.get(*number))
    }

    /// The openings that name another as their pair or as what is above them, whatever its case.
    pub fn openings_naming(&self, name: &str) -> impl Iterator<Item = &Opening> {
        let numbers = self.lists().naming.get(&*in_small(name)).map_or(&[][..], Vec::as_slice);
        numbers.iter().filter_map(|number| self.openings.get(*number))
    }

    /// The selections that go into an opening, by its name, in the order of the book; not what hangs from another of
    /// them, as a disposer does from its sink.
    pub fn goes_into(&self, opening: &str) -> impl Iterator<Item = &Selection> {
        let numbers = self.lists().placed.get(opening).map_or(&[][..], Vec::as_slice);
        numbers.iter().filter_map(|number| self.selections.get(*number))
    }

    /// What the sheet of an opening shows in it: the option that stands, or the first of those still open.
    pub fn shown_at(&self, opening: &Opening) -> Option<(&Selection, &ProductOption)> {
        let selection = self.goes_into(&opening.name).next()?;
        Some((selection, selection.standing().first()?))
    }

    /// The part that an opening is cut into.
    pub fn holder(&self, opening: &str) -> Option<InRow<'_>> {
        self.in_row(*self.lists().held.get(&*in_small(opening))?)
    }

    /// The part that an opening itself is.
    pub fn part_of(&self, opening: &str) -> Option<InRow<'_>> {
        self.in_row(*self.lists().parts.get(&*in_small(opening))?)
    }

    fn in_row(&self, (row, number): (usize, usize)) -> Option<InRow<'_>> {
        let (run, island, parts) = rows(self).nth(row)?;
        Some(InRow { part: parts.get(number)?, number, parts, run, island })
    }
}
