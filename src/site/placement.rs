//! Each thing that can be chosen, at the opening that it goes into.

use crate::book::{Book, Opening, ProductOption, Room, Selection};

use crate::vocabulary::Kind;

use super::Site;
use super::plan::{Plan, Thing};
use super::taps::bowl_of;
use super::vanity::vanity_of;

/// A thing that can be chosen, at the opening that it goes into.
#[derive(Clone, Copy, Debug)]
pub struct Placement<'a> {
    /// The room.
    pub room: &'a Room,
    /// The opening.
    pub opening: &'a Opening,
    /// The selection.
    pub selection: &'a Selection,
    /// The option.
    pub option: &'a ProductOption,
    /// Its number among those of the site, which are reckoned once.
    pub(super) number: Option<usize>,
}

impl<'a> Placement<'a> {
    /// An option at an opening that the book does not place it at itself.
    pub fn at(
        (room, opening): (&'a Room, &'a Opening),
        (selection, option): (&'a Selection, &'a ProductOption),
    ) -> Self {
        Self { room, opening, selection, option, number: None }
    }

    /// The plan that the opening has a place in, and that place.
    pub fn placed(&self, site: &'a Site<'a>) -> Option<(&'a Plan<'a>, &'a Thing<'a>)> {
        let plan = site.plan(self.room)?;
        Some((plan, plan.opening(self.opening)?))
    }

    /// Whether this option stands: chosen, or the only one.
    pub fn is_settled(&self) -> bool {
        self.selection.settled().is_some()
    }
}

/// What a site has at its openings.
pub(super) struct AtOpenings<'a> {
    /// What goes into each.
    pub into: Vec<Placement<'a>>,
    /// What hangs from that, and is connected at the same place.
    pub hanging: Vec<Placement<'a>>,
}

/// Every option of a book that still counts, at its opening. What a thing is, or what its opening takes, and could
/// not be read has been told: how a thing of no known kind is fitted nobody can say.
pub(super) fn at_openings(book: &Book) -> AtOpenings<'_> {
    let is_known =
        |selection: &Selection, opening: &&Opening| !selection.kind.is_faulty() && !opening.takes.is_faulty();
    let things = book.selections().flat_map(move |(room, selection)| {
        let opening = selection.place.get().and_then(|place| room.opening(place));
        let opening = opening.or_else(|| connected_at(room, selection));
        let opening = opening.filter(|opening| is_known(selection, opening));
        let options = selection.standing().iter();
        options.filter_map(move |option| Some(Placement::at((room, opening?), (selection, option))))
    });
    let things = things.filter(|one| !is_built_around(one));
    let (into, hanging): (Vec<_>, Vec<_>) = things.partition(fills_its_opening);
    let into = into.into_iter().enumerate().map(|(number, one)| Placement { number: Some(number), ..one });
    AtOpenings { into: into.collect(), hanging }
}

/// Whether it is the cabinet around its opening, whose part holds that.
fn is_built_around(one: &Placement<'_>) -> bool {
    let takes_another = one.opening.takes.get().is_some_and(|takes| *takes != Kind::Cabinet);
    one.selection.is(Kind::Cabinet) && takes_another && one.room.holder(&one.opening.name).is_some()
}

/// Where a thing is connected that names no place of its own: a tap and a disposer at their bowl, or behind the cabinet
/// that carries it.
pub fn connected_at<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Opening> {
    if !selection.place.is_absent() || room.partly_unread {
        return None;
    }
    let bowl = match selection.kind.get()? {
        Kind::Tap => bowl_of(room, selection)?,
        Kind::Disposer => {
            let mut sinks = room.selections.iter().filter(|one| one.is(Kind::Sink));
            sinks.next().filter(|_| sinks.next().is_none())?
        }
        _ => return None,
    };
    match bowl.place.get() {
        Some(place) => room.opening(place),
        None => vanity_of(room, bowl).map(|vanity| vanity.opening),
    }
}

/// Whether it goes into its opening, or, as a pane does, fills it before something else.
fn fills_its_opening(one: &Placement<'_>) -> bool {
    let goes_in = || one.room.goes_into(&one.opening.name).any(|other| std::ptr::eq(other, one.selection));
    one.selection.is(Kind::ShowerGlass) || goes_in()
}
