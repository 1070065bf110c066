//! What those who build by rooms build from, and not by openings: one sheet a trade and room, where the room has
//! something for it, as typed values with a mark.

mod boxes;
mod built;
mod cells;
mod electrician;
mod fabricator;
mod joiner;
mod notes;
mod plumber;
mod points;
mod setter;

pub(super) use built::ceiling;
pub use built::{Built, BuiltFact, BuiltItem, BuiltTable};
pub use cells::agreed;
pub use notes::{of_plan as notes_of_plan, of_thing as notes_of_thing};

use crate::book::{Room, System};
use crate::ledger::IssuedSheet;
use crate::site::plan::Plan;
use crate::vocabulary::Version;

use super::built::sheet;
use super::sheet_of::SheetOf;

/// Those who have a sheet of a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Builders {
    /// Whoever cuts counters.
    Fabricator,
    /// Whoever makes cabinets and panels.
    Joiner,
    /// Whoever lays tile and floors.
    Setter,
    /// Whoever brings power and light.
    Electrician,
    /// Whoever brings water and gas, and takes waste away.
    Plumber,
}

impl Builders {
    /// All of them, in the order in which a room lists them.
    pub const ALL: [Self; 5] = [Self::Fabricator, Self::Joiner, Self::Setter, Self::Electrician, Self::Plumber];

    /// The name of the page, and of its words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Fabricator => "fabricator",
            Self::Joiner => "joiner",
            Self::Setter => "setter",
            Self::Electrician => "electrician",
            Self::Plumber => "plumber",
        }
    }

    /// Those who have something to build in a room: what its plan says makes nothing of nothing.
    pub fn of_room(room: &Room) -> impl Iterator<Item = Self> {
        let at = InRoom { room, plan: None, units: System::default() };
        Self::ALL.into_iter().filter(move |trade| !trade.builds(at).is_empty())
    }

    /// The one of that word.
    pub fn called(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|trade| trade.word() == word)
    }

    /// What is built from in a room.
    pub fn builds<'a>(self, at: InRoom<'a, '_>) -> Built<'a> {
        match self {
            Self::Fabricator => fabricator::builds(at),
            Self::Joiner => joiner::builds(at),
            Self::Setter => setter::builds(at),
            Self::Electrician => electrician::builds(at),
            Self::Plumber => plumber::builds(at),
        }
    }

    /// The sheet as it would be issued; none where the room has nothing for it.
    pub fn issued(self, at: InRoom<'_, '_>) -> Option<IssuedSheet> {
        let built = self.builds(at);
        if built.is_empty() {
            return None;
        }
        Some(sheet(SheetOf::Trade(self), at.room, built.value(at.room, self), Version::Third))
    }
}

/// A room, where everything stands in it, and all that is known of the site.
#[derive(Clone, Copy)]
pub struct InRoom<'a, 'p> {
    /// The room.
    pub room: &'a Room,
    /// Its plan.
    pub plan: Option<&'p Plan<'a>>,
    /// The book's units.
    pub units: System,
}

impl<'a, 'p> InRoom<'a, 'p> {
    /// A room with its plan, where all of it could be read and nothing in it is impossible.
    pub fn of(room: &'a Room, plan: Option<&'p Plan<'a>>, units: System) -> Self {
        let plan = plan.filter(|plan| plan.is_sound() && !room.partly_unread);
        Self { room, plan, units }
    }
}
