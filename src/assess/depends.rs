//! Which selection rests on which: what must stand before another can be ordered, and what a change re-opens.
//!
//! Some of it follows from kinds and places (trade practice: appliances before cabinets, sink and taps
//! before the counter, the floor before heights and panels, the valve before its trim, tile before
//! glass, the maker's sheet before the opening); the rest the book names with `depends on`, and that
//! counts first.

use crate::site;
use std::collections::{BTreeMap, HashMap, HashSet, VecDeque};

use serde_json::Value;

use crate::book::{Book, DetailName, Names, Opening, ProductOption, Room, Selection, circles};
use crate::shown::{Change, ChangedField, changes, changes_to_rest_on};
use crate::source::Span;
use crate::vocabulary::{Kind, Trade};

use super::approval::Approvals;

/// Why one selection rests on another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// The book says so.
    Named,
    /// It is built around the other.
    Houses,
    /// It is cut for the other.
    CutFor,
    /// Its heights are taken from the other.
    StandsOn,
    /// It is the trim of the other.
    TrimOf,
    /// It is measured when the other is set.
    MeasuredOn,
}

impl Reason {
    /// In words, after the name of what rests: `is built around`.
    pub fn words(self) -> &'static str {
        match self {
            Self::Named => "depends on",
            Self::Houses => "is built around",
            Self::CutFor => "is cut for",
            Self::StandsOn => "takes its heights from",
            Self::TrimOf => "is the trim of",
            Self::MeasuredOn => "is measured on",
        }
    }

    /// What of a ground of a kind changed that what rests on it for this reason may be touched by, between two contents,
    /// with the option of it that is chosen: nothing where nothing does; no change in particular where nobody can tell what.
    pub fn touched_by(
        self,
        kind: Option<Kind>,
        (was, is): (&Value, &Value),
        chosen: Option<&str>,
    ) -> Option<Vec<Change>> {
        if changes(was, is).is_empty() {
            return Some(vec![]);
        }
        let mut told = changes_to_rest_on(was, is, chosen);
        told.retain(|change| self.is_touched_by(kind, &change.what));
        (!told.is_empty()).then_some(told)
    }

    fn is_touched_by(self, kind: Option<Kind>, changed: &ChangedField) -> bool {
        match self {
            Self::StandsOn => changed.may_move_a_height(),
            // A finish may say that the joiner makes the front, `panel ready`: no word of it proves that nothing is built.
            Self::Houses if changed.is_finish() => kind.is_none_or(|kind| kind.takes_a_panel()),
            Self::Houses | Self::CutFor | Self::MeasuredOn => changed.may_move_a_figure(),
            Self::Named | Self::TrimOf => changed.may_be_rested_on(),
        }
    }

    /// In words, after the name of what rests, where the ground is spoken of: `built around it`.
    pub fn of_it(self) -> &'static str {
        match self {
            Self::Named => "which depends on it",
            Self::Houses => "built around it",
            Self::CutFor => "cut for it",
            Self::StandsOn => "set to its height",
            Self::TrimOf => "the trim of it",
            Self::MeasuredOn => "measured on it",
        }
    }
}

/// What another selection rests on.
#[derive(Clone, Copy, Debug)]
pub struct Prerequisite<'a> {
    /// Its room.
    pub room: &'a Room,
    /// The selection.
    pub selection: &'a Selection,
    /// Why.
    pub because: Reason,
}

/// What keeps a ground from being built on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsettled {
    /// Several options, none chosen.
    Choice,
    /// No sheet of the maker's with a revision or a date.
    Sheet,
    /// Somebody must approve it, and has not.
    Approval,
}

impl Unsettled {
    /// In words, after the ground's name.
    pub fn words(self) -> &'static str {
        match self {
            Self::Choice => "is not chosen",
            Self::Sheet => "has no maker's sheet",
            Self::Approval => "is not approved",
        }
    }

    /// In words, after the names of several.
    pub fn words_of_many(self) -> &'static str {
        match self {
            Self::Choice => "are not chosen",
            Self::Sheet => "have no maker's sheet",
            Self::Approval => "are not approved",
        }
    }
}

impl Prerequisite<'_> {
    /// What keeps it from being built on; nothing once it is chosen, its sheet is at hand and, where anything
    /// was issued for approval, it is approved as it is now. What is ordered is settled: that it was ordered
    /// unapproved is told of itself.
    pub fn lacks(&self, approvals: &Approvals) -> Option<Unsettled> {
        let Some(option) = self.selection.settled() else { return Some(Unsettled::Choice) };
        let wants_sheet = self.selection.kind.get().is_some_and(|kind| kind.wants_sheet());
        if wants_sheet && !has_sheet(option) {
            return Some(Unsettled::Sheet);
        }
        let settled = self.selection.is_ordered() || approvals.is_orderable(self.room, self.selection);
        let asked = approvals.item(self.room, self.selection);
        let by_nobody = asked.is_none_or(|item| item.waits_for.is_empty() && item.words.is_empty());
        (!settled && !by_nobody).then_some(Unsettled::Approval)
    }
}

fn has_sheet(option: &ProductOption) -> bool {
    let sheet = option.fit.get().and_then(|fit| fit.sheet.get());
    sheet.is_some_and(|sheet| sheet.revision.get().is_some() || sheet.date.get().is_some())
}

/// What rests on what in a book.
#[derive(Debug, Default)]
pub struct Depends<'a> {
    grounds: BTreeMap<Span, Vec<Prerequisite<'a>>>,
    /// Every pair of what rests and what it rests on.
    pairs: HashSet<(Span, Span)>,
}

impl<'a> Depends<'a> {
    /// Follows a book's kinds, places and `depends on`.
    pub fn of(book: &'a Book) -> Self {
        let (mut depends, names) = (Self::default(), Names::of(book));
        let named: Vec<(&Selection, Prerequisite<'_>)> = book
            .selections()
            .flat_map(|(room, resting)| resting.depends_on.iter().map(move |name| (room, resting, name)))
            .filter_map(|(room, resting, name)| {
                let (room, selection) = names.selection(room, name)?;
                Some((resting, Prerequisite { room, selection, because: Reason::Named }))
            })
            .collect();
        let said: HashSet<(Span, Span)> =
            named.iter().map(|(resting, ground)| (resting.span, ground.selection.span)).collect();
        for room in &book.rooms {
            for (resting, selection, because) in implied(room) {
                // What the book says the other way round counts first.
                if !said.contains(&(selection.span, resting.span)) {
                    depends.add(resting, Prerequisite { room, selection, because });
                }
            }
        }
        for (resting, ground) in named {
            depends.add(resting, ground);
        }
        depends
    }

    fn add(&mut self, resting: &Selection, ground: Prerequisite<'a>) {
        if self.pairs.insert((resting.span, ground.selection.span)) {
            self.grounds.entry(resting.span).or_default().push(ground);
        }
    }

    /// What a selection rests on.
    pub fn grounds(&self, selection: &Selection) -> &[Prerequisite<'a>] {
        self.grounds.get(&selection.span).map_or(&[], Vec::as_slice)
    }

    /// What a selection rests on that can't be built on yet, with what it lacks.
    pub fn waits_for(&self, selection: &Selection, approvals: &Approvals) -> Vec<(Prerequisite<'a>, Unsettled)> {
        self.grounds_to_settle(selection).filter_map(|ground| Some((*ground, ground.lacks(approvals)?))).collect()
    }

    /// What must be settled before a selection can be. Heights are known once the room says what is still
    /// to be laid, whichever floor is chosen.
    pub fn grounds_to_settle(&self, selection: &Selection) -> impl Iterator<Item = &Prerequisite<'a>> {
        let open =
            |ground: &&Prerequisite<'a>| ground.because != Reason::StandsOn || ground.room.floor_build_up.is_absent();
        self.grounds(selection).iter().filter(open)
    }

    /// The groups of selections that rest on each other in circles, found once for the whole book.
    pub fn circles(&self, book: &'a Book) -> Vec<Circle<'a>> {
        let all: Vec<(&Room, &Selection)> = book.selections().collect();
        let numbers: HashMap<Span, usize> =
            all.iter().enumerate().map(|(number, (_, selection))| (selection.span, number)).collect();
        let links: Vec<Vec<usize>> = all
            .iter()
            .map(|(_, selection)| {
                let grounds = self.grounds(selection).iter();
                grounds.filter_map(|ground| numbers.get(&ground.selection.span).copied()).collect()
            })
            .collect();
        let told = |group: Vec<usize>| {
            // Some of it follows from kinds: the book's own word is the one that can be taken out.
            let says = |number: &&usize| all.get(**number).is_some_and(|(_, one)| !one.depends_on.is_empty());
            let from = *group.iter().find(says)?;
            let way = around(&links, &group, from);
            let others = group.len() - way.len();
            let (room, selection) = *all.get(from)?;
            let way = way.into_iter().filter_map(|number| Some(all.get(number)?.1)).collect();
            Some(Circle { room, selection, way, others })
        };
        circles(&links).into_iter().filter_map(told).collect()
    }
}

/// Selections that rest on each other.
#[derive(Debug)]
pub struct Circle<'a> {
    /// The room of the first of them that says what it depends on.
    pub room: &'a Room,
    /// That selection.
    pub selection: &'a Selection,
    /// A shortest way from it back to it: itself last.
    pub way: Vec<&'a Selection>,
    /// How many more of its group stand in circles with these.
    pub others: usize,
}

/// A shortest way from a thing of a group back to it, itself last.
fn around(links: &[Vec<usize>], group: &[usize], from: usize) -> Vec<usize> {
    let here: HashSet<usize> = group.iter().copied().collect();
    // Each is reached once, and remembers from where.
    let mut came: HashMap<usize, usize> = HashMap::new();
    let mut ahead = VecDeque::from([from]);
    while let Some(at) = ahead.pop_front() {
        for next in links.get(at).into_iter().flatten().filter(|next| here.contains(next)) {
            if *next == from {
                let back = |step: &usize| came.get(step).copied();
                let mut way: Vec<usize> = std::iter::successors(Some(at), back).filter(|step| *step != from).collect();
                way.reverse();
                way.push(from);
                return way;
            }
            if !came.contains_key(next) {
                came.insert(*next, at);
                ahead.push_back(*next);
            }
        }
    }
    vec![from]
}

/// The selection whose sheet an opening is made by: a new revision of it re-opens the opening.
pub fn made_for<'a>(room: &'a Room, opening: &Opening) -> Option<&'a Selection> {
    room.goes_into(&opening.name).next()
}

type Implied<'a> = (&'a Selection, &'a Selection, Reason);

/// Kinds that rest on others without a word in the book.
const RESTING: &[Kind] = &[Kind::Cabinet, Kind::Counter, Kind::PanelDishwasher, Kind::ShowerSet, Kind::ShowerGlass];

fn implied(room: &Room) -> Vec<Implied<'_>> {
    let counter = main_counter(room);
    let mut found = Vec::new();
    for resting in room.selections.iter().filter(|resting| resting.is_any(RESTING)) {
        for ground in room.selections.iter().filter(|ground| ground.span != resting.span) {
            let is_counter = counter.is_some_and(|counter| counter.span == resting.span);
            let because = because(resting, ground, is_counter);
            if let Some(because) = because.filter(|why| *why != Reason::Houses || houses(room, resting, ground)) {
                found.push((resting, ground, because));
            }
        }
    }
    found
}

/// Whether a selection of cabinets is one of those that are built around a thing.
fn houses(room: &Room, cabinets: &Selection, thing: &Selection) -> bool {
    let opening = thing.place.get().and_then(|place| room.opening(place));
    let around = site::joinery::cabinets_around(room, opening, Some(thing));
    around.iter().any(|one| one.span == cabinets.span)
}

/// The counter that sink and cooktop are cut into: the one that covers most.
fn main_counter(room: &Room) -> Option<&Selection> {
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    counters.rev().max_by_key(|counter| counter.covers.get().copied().unwrap_or_default())
}

fn because(resting: &Selection, ground: &Selection, is_counter: bool) -> Option<Reason> {
    let run_of_cabinets = resting.is(Kind::Cabinet) && resting.place.is_absent();
    let appliance = ground.kind.get().is_some_and(|kind| kind.trade() == Trade::Appliance && kind.takes_opening());
    if run_of_cabinets && (appliance || ground.is(Kind::Sink)) {
        return Some(Reason::Houses);
    }
    if is_counter && ground.is_any(&[Kind::Sink, Kind::Basin, Kind::Tap, Kind::Cooktop, Kind::Grill]) {
        return Some(Reason::CutFor);
    }
    if (run_of_cabinets || resting.is(Kind::PanelDishwasher)) && site::is_floor(ground) {
        return Some(Reason::StandsOn);
    }
    if resting.is(Kind::ShowerSet) && names_valve(resting, ground) {
        return Some(Reason::TrimOf);
    }
    (resting.is(Kind::ShowerGlass) && ground.is(Kind::Tile) && !site::is_floor(ground)).then_some(Reason::MeasuredOn)
}

/// Whether the valve that a shower set is trim for is a selection of its own, by its model.
pub(super) fn names_valve(set: &Selection, valve: &Selection) -> bool {
    let models = valve.options.iter().filter_map(|option| option.model.get());
    let valves = || set.options.iter().filter_map(|option| option.words(DetailName::Valve));
    models.into_iter().any(|model| valves().any(|(words, _)| words.split_whitespace().any(|word| word == model)))
}

#[cfg(test)]
mod tests;
