//! What stands near a cooking surface, where that is written, and whether it burns.

use crate::book::{Burning, Neighbour, Opening, ProductOption, Room, Selection, Window};
use crate::site::fitting::Side;
use crate::site::plan::{HoleIs, RowOf, Thing, Wall, What, chosen_for};
use crate::source::{Span, Spanned};
use crate::vocabulary::Kind;

/// What stands near a cooking surface.
#[derive(Clone, Copy, Debug)]
pub enum Body<'a> {
    /// What the opening says is above or beside it.
    Said(&'a Spanned<Neighbour>, Option<Side>),
    /// A thing of the plan, and the run or island that it stands in.
    Placed(&'a Room, &'a Thing<'a>, Option<RowOf<'a>>),
    /// The hood that is chosen for the room, at its own opening.
    Hood(&'a Selection, &'a Opening),
    /// A window.
    Window(&'a Window),
    /// The trim around a door or a window.
    Casing(HoleIs<'a>),
    /// A wall.
    Wall(&'a Wall<'a>),
    /// Where its own opening ends above it: a chimney breast, a niche.
    Top(&'a Opening),
    /// The ceiling.
    Ceiling(&'a Room),
}

impl<'a> Body<'a> {
    /// What it is called in the book: what is chosen there, the row that it stands in, the opening that it is trim of.
    pub fn names(&self) -> [Option<&'a str>; 2] {
        match *self {
            Self::Said(neighbour, _) => [Some(&neighbour.value.what), None],
            Self::Placed(_, thing, row) => {
                let row = row.map(|row| match row {
                    RowOf::Run(run) => run.name.value.as_str(),
                    RowOf::Side(island, _) => island.name.value.as_str(),
                });
                [Some(self.chosen().map_or(thing.name, |selection| &selection.name.value)), row]
            }
            Self::Hood(hood, _) => [Some(&hood.name.value), None],
            Self::Window(window) | Self::Casing(HoleIs::Window(window)) => [Some(&window.name.value), None],
            Self::Casing(HoleIs::Door(door)) => [Some(&door.name.value), None],
            Self::Wall(wall) => [wall.note.map(|note| note.name.value.as_str()), None],
            Self::Top(_) | Self::Ceiling(_) => [None, None],
        }
    }

    /// What it is, in a word.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Said(..) => "said",
            Self::Placed(..) => "thing",
            Self::Hood(..) => "hood",
            Self::Window(_) => "window",
            Self::Casing(_) => "casing",
            Self::Wall(_) => "wall",
            Self::Top(_) => "top",
            Self::Ceiling(_) => "ceiling",
        }
    }

    /// What is chosen there, where it is a thing of the plan.
    pub fn chosen(&self) -> Option<&'a Selection> {
        match self {
            Self::Placed(room, thing, _) => chosen(room, thing.opening?),
            _ => None,
        }
    }

    /// Where it is written.
    pub fn span(&self) -> Option<Span> {
        match self {
            Self::Said(neighbour, _) => Some(neighbour.span),
            Self::Placed(_, thing, _) => Some(thing.span),
            Self::Hood(_, opening) => opening.sill.span().or(Some(opening.span)),
            Self::Window(window) | Self::Casing(HoleIs::Window(window)) => Some(window.name.span),
            Self::Casing(HoleIs::Door(door)) => Some(door.name.span),
            Self::Wall(wall) => wall.note.map(|note| note.name.span),
            Self::Top(opening) => opening.height.get().and_then(|height| height.least()).map(|least| least.span),
            Self::Ceiling(room) => room.ceiling.span(),
        }
    }

    /// Whether it burns, as far as anybody says.
    pub fn burning(&self) -> Option<Burning> {
        match self {
            Self::Said(neighbour, _) => neighbour.value.burning.get().copied(),
            Self::Placed(room, thing, row) => of_thing(room, thing, *row),
            Self::Hood(hood, _) => of_selection(hood),
            Self::Window(window) | Self::Casing(HoleIs::Window(window)) => window.burning.get().copied(),
            Self::Casing(HoleIs::Door(door)) => door.burning.get().copied(),
            Self::Wall(wall) => wall.note?.burning.get().copied(),
            Self::Top(_) => None,
            Self::Ceiling(room) => room.measured_ceiling.get()?.burning.get().copied(),
        }
    }

    /// Whether it is of the building, and so above or beside everything.
    pub fn is_building(&self) -> bool {
        matches!(self, Self::Wall(_) | Self::Ceiling(_) | Self::Window(_) | Self::Casing(_))
    }

    /// Whether it is a hood, by its kind.
    pub fn is_hood(&self) -> bool {
        match self {
            Self::Hood(..) => true,
            Self::Placed(_, thing, _) => thing.is(Kind::Hood),
            _ => false,
        }
    }

    /// What is chosen there, the options that still count.
    pub fn options(&self) -> &'a [ProductOption] {
        match self {
            Self::Hood(hood, _) => hood.standing(),
            _ => self.chosen().map_or(&[], Selection::standing),
        }
    }
}

/// What is chosen for an opening.
fn chosen<'a>(room: &'a Room, opening: &Opening) -> Option<&'a Selection> {
    room.goes_into(&opening.name).next()
}

/// Whether a thing of the plan burns: by its part, its run, or what is chosen there.
fn of_thing(room: &Room, thing: &Thing<'_>, row: Option<RowOf<'_>>) -> Option<Burning> {
    if let Some(opening) = thing.opening {
        return of_selection(chosen(room, opening)?);
    }
    if let What::Fixture(fixture) = thing.what {
        return fixture.burning.get().copied().or_else(|| of_selection(chosen_for(room, fixture)?));
    }
    let own = thing.part().and_then(|part| part.burning.get().copied());
    let of_run = match row {
        Some(RowOf::Run(run)) => run.burning.get().copied(),
        _ => None,
    };
    own.or(of_run).or_else(|| of_the_cabinets(room))
}

/// Whether all options that still count say the same.
fn of_selection(selection: &Selection) -> Option<Burning> {
    agreed(selection.standing().iter())
}

/// What every cabinet and shelf that is chosen for the room says, if they say the same.
fn of_the_cabinets(room: &Room) -> Option<Burning> {
    let is_joinery = |selection: &&Selection| selection.is_any(&[Kind::Cabinet, Kind::Shelf]);
    agreed(room.selections.iter().filter(is_joinery).flat_map(|selection| selection.standing()))
}

fn agreed<'c>(options: impl Iterator<Item = &'c ProductOption>) -> Option<Burning> {
    let mut said = options.map(|option| option.burning());
    let first = said.next()??;
    said.all(|other| other == Some(first)).then_some(first)
}
