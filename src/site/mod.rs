//! What is known of the site, resolved from every place where it may be written.
//!
//! An [`Answer`] holds all that was written of one figure, the most trusted first: what was measured,
//! else what is written at the thing itself, else what the plan gives, else what follows from it. What is
//! written in two places that differ is in [`twice::of_room`]. Where nothing is written there is no answer.

mod around;
pub mod boxes;
mod cabinet;
pub mod corners;
mod counter_edges;
pub mod counters;
mod deck;
pub mod distances;
pub mod doorways;
mod ends;
pub mod fitting;
pub mod heat;
pub mod joinery;
pub mod layout;
pub mod lights;
mod made_as;
pub mod outlets;
pub mod panels;
mod placement;
pub mod plan;
pub mod rims;
pub mod taps;
mod told;
pub mod tower;
pub mod twice;
pub mod vanity;
pub mod water;

pub use around::{Around, Beside, Overhead};
pub use cabinet::{Inside, inside_width, outside_width, panel_thickness};
pub use counter_edges::{CounterEdges, counter_edges};
pub use deck::{Behind, BehindIs, Deck, deck, deck_of_a_vanity, raised_back, top_of_a_vanity, window_trim_behind};
pub use ends::{SeenSide, seen_sides};
pub use made_as::made_as;
pub use placement::{Placement, connected_at};
pub use told::{Answer, Provenance, SourcedFigure, Spot};

use std::borrow::Cow;
use std::collections::HashMap;
use std::ops::Range;

use rayon::prelude::*;

use doorways::RoomDoor;
use fitting::Fitting;
use placement::AtOpenings;
use plan::{Plan, Plans};

use crate::book::{Book, InRow, Opening, PartIs, ProductOption, Room, Selection};
use crate::source::Spanned;
use crate::units::Length;

/// Whether a selection is a floor: of a kind of its own, or tile that says so.
pub fn is_floor(selection: &Selection) -> bool {
    selection.is_a_floor()
}

/// The plan of a room of which all could be read: what could not may be what decides.
fn read_whole<'p, 'a>(plans: &'p Plans<'a>, room: &Room) -> Option<&'p Plan<'a>> {
    plans.room(room).filter(|_| !room.partly_unread)
}

/// The one model of a book's rooms: where everything stands, and what goes into which opening.
#[derive(Debug)]
pub struct Site<'a> {
    /// The book.
    pub book: &'a Book,
    plans: Plans<'a>,
    fitted: Vec<Placement<'a>>,
    hanging: Vec<Placement<'a>>,
    /// Each of `fitted` against its opening.
    fittings: Vec<Fitting>,
    /// Which of `fitted` are in a room, by its folder.
    in_rooms: HashMap<&'a str, Range<usize>>,
    /// The doorway through which all comes into a room, by its folder.
    doors: HashMap<&'a str, RoomDoor>,
}

impl<'a> Site<'a> {
    /// Works it out, once for all who ask.
    pub fn of(book: &'a Book) -> Self {
        let (plans, at_openings) = rayon::join(|| Plans::of(book), || placement::at_openings(book));
        let AtOpenings { into: fitted, hanging } = at_openings;
        // All at once: whoever had to wait for one that another thread is at would wait for each.
        let fittings = fitted.par_iter().map(|one| fitting_of(read_whole(&plans, one.room), one)).collect();
        let mut in_rooms: HashMap<&str, Range<usize>> = HashMap::new();
        for (number, one) in fitted.iter().enumerate() {
            in_rooms.entry(one.room.folder.as_str()).or_insert(number..number).end = number + 1;
        }
        let door = |room: &'a Room| Some((room.folder.as_str(), doorways::way_through(read_whole(&plans, room)?)?));
        let doors = book.rooms.iter().filter_map(door).collect();
        Self { book, plans, fitted, hanging, fittings, in_rooms, doors }
    }

    /// The doorway through which all comes into a room: the widest of its plan, where nobody wrote a way in of its own.
    pub fn door_of(&self, room: &Room) -> Option<&RoomDoor> {
        self.doors.get(room.folder.as_str())
    }

    /// A thing against its opening.
    pub fn fitting(&self, placement: &Placement<'_>) -> Cow<'_, Fitting> {
        match placement.number.and_then(|number| self.fittings.get(number)) {
            Some(known) => Cow::Borrowed(known),
            None => Cow::Owned(fitting_of(self.plan(placement.room), placement)),
        }
    }

    /// Every option that still counts, at its opening.
    pub fn fitted(&self) -> impl Iterator<Item = Placement<'a>> {
        self.fitted.iter().copied()
    }

    /// The same of one room.
    pub fn fitted_in(&self, room: &Room) -> impl Iterator<Item = Placement<'a>> {
        let here = self.in_rooms.get(room.folder.as_str()).and_then(|here| self.fitted.get(here.clone()));
        here.unwrap_or_default().iter().copied()
    }

    /// The same as [`Site::fitted`], and what hangs from such a thing and is connected at the same place: a disposer
    /// under its sink, a tap at its bowl, whether or not they name the place themselves.
    pub fn connected(&self) -> impl Iterator<Item = Placement<'a>> {
        self.fitted().chain(self.hanging.iter().copied())
    }

    /// The plan of a room, where the book says anything of it, and all that it says could be read.
    pub fn plan(&self, room: &Room) -> Option<&Plan<'a>> {
        read_whole(&self.plans, room)
    }

    /// Every room's plan.
    pub fn plans(&self) -> impl Iterator<Item = &Plan<'a>> {
        self.plans.all()
    }

    /// The plan of a room, where nothing is written in it that can't be: it alone can be reckoned with.
    pub fn sound_plan(&self, room: &Room) -> Option<&Plan<'a>> {
        self.plan(room).filter(|plan| plan.is_sound())
    }

    /// Every option that still counts, with its room and selection.
    pub fn options(&self) -> impl Iterator<Item = (&'a Room, &'a Selection, &'a ProductOption)> + use<'a> {
        let book = self.book;
        book.selections()
            .flat_map(|(room, selection)| selection.standing().iter().map(move |option| (room, selection, option)))
    }
}

/// A thing against its opening, by the plan of its room.
fn fitting_of(plan: Option<&Plan<'_>>, placement: &Placement<'_>) -> Fitting {
    fitting::fitting(plan, placement.room, placement.opening, placement.option)
}

/// The row that an opening stands in, or whose part it is cut into.
fn row_of<'a>(room: &'a Room, opening: &Opening) -> Option<InRow<'a>> {
    room.part_of(&opening.name).or_else(|| room.holder(&opening.name))
}

/// The name of the run or island that an opening stands in, or whose part it is cut into.
pub fn row_name<'a>(room: &'a Room, opening: &Opening) -> Option<&'a str> {
    let row = row_of(room, opening)?;
    let run = row.run.map(|run| run.name.value.as_str());
    run.or_else(|| row.island.map(|island| island.name.value.as_str()))
}

/// Whether an opening is in an island, with no wall behind it.
pub fn is_in_an_island(room: &Room, opening: &Opening) -> bool {
    row_of(room, opening).is_some_and(|row| row.island.is_some())
}

/// The row whose counter an opening stands at: none for what a tall cabinet holds, which has no counter.
fn row_with_counter<'a>(room: &'a Room, opening: &Opening) -> Option<InRow<'a>> {
    row_of(room, opening).filter(|row| !matches!(row.part.is, PartIs::Tall(_)))
}

/// Top of the counter that an opening stands at, from the finished floor.
pub fn counter_height<'a>(room: &'a Room, opening: &'a Opening) -> Answer<'a> {
    let row = row_with_counter(room, opening);
    let of_run = row
        .and_then(|row| row.run)
        .and_then(|run| run.counter.height.spanned().map(|told| SourcedFigure::planned(told, Spot::Run(&run.name))));
    let of_island = row.and_then(|row| row.island).and_then(|island| {
        island.height.spanned().map(|told| SourcedFigure::planned(told, Spot::Island(&island.name)))
    });
    Answer::of([at_opening(opening, opening.counter_height.spanned()), of_run, of_island])
}

/// From the wall to the front edge of the counter that an opening stands at.
pub fn counter_depth<'a>(room: &'a Room, opening: &'a Opening) -> Answer<'a> {
    let of_run = row_with_counter(room, opening)
        .and_then(|row| row.run)
        .and_then(|run| run.counter.depth.spanned().map(|told| SourcedFigure::planned(told, Spot::Run(&run.name))));
    Answer::of([at_opening(opening, opening.counter_depth.spanned()), of_run])
}

/// What is written at the opening itself.
fn at_opening<'a>(opening: &'a Opening, written: Option<&Spanned<Length>>) -> Option<SourcedFigure<'a>> {
    written.map(|written| SourcedFigure::written(written, Spot::Opening(&opening.name)))
}
