//! By when each selection must be decided: by its own order, by its hold point, and by the earliest
//! order or closing of what rests on it.

use crate::vocabulary::supply::Worded;
use crate::vocabulary::{HoldPoint, Kind, Slot};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet, BinaryHeap};

use crate::book::{Book, Needs, Selection};
use crate::source::Span;
use crate::units::{Date, Phrase, Wrote, phrase};

use super::dates::Dates;
use super::depends::{Depends, Reason};
use super::hold_points::HoldPoints;
use super::rules::for_thing;

/// The last day to decide a selection, and why it is that day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DecideBy {
    /// The day.
    pub on: Date,
    /// The hold point behind it.
    pub hold_point: String,
    /// What happens on that day.
    pub is: Step,
    /// The thing that it happens to, where that is another one.
    pub rests: Option<Dependent>,
}

/// What rests on a selection, and is due before the selection itself would be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dependent {
    /// Its name.
    pub name: String,
    /// Where it is written.
    pub span: Span,
    /// Why it rests on the selection.
    pub because: Reason,
}

/// What happens on the day that decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// It was ordered.
    Ordered,
    /// It must be ordered.
    Order,
    /// Its hold point comes.
    Closing,
}

impl DecideBy {
    /// Why it is that day, to be read after it: `when Cabinets, built around it, must be ordered`.
    /// Nothing where the thing's own order decides.
    pub fn reason(&self) -> Option<Phrase> {
        let Some(Dependent { name, because, .. }) = &self.rests else {
            return (self.is == Step::Closing).then(|| phrase!("the hold point {}", Wrote(&self.hold_point)));
        };
        let thing = phrase!("{name}, {},", Wrote(name), because.of_it());
        Some(match self.is {
            Step::Ordered => phrase!("when the order of {thing} was placed", thing),
            Step::Order => phrase!("when {thing} must be ordered", thing),
            Step::Closing => phrase!("when {thing} must be settled: the hold point {}", thing, Wrote(&self.hold_point)),
        })
    }
}

/// The last day to decide each selection that any day hangs on, by where it is written.
pub fn all(book: &Book, depends: &Depends<'_>, dates: &Dates) -> BTreeMap<Span, DecideBy> {
    let (points, own) = (HoldPoints::of(book, dates), OwnMoments::of(book, depends));
    let selections: Vec<&Selection> = book.selections().map(|(_, selection)| selection).collect();
    let places: BTreeMap<Span, usize> = selections.iter().enumerate().map(|(at, one)| (one.span, at)).collect();
    let due = |selection: &&Selection| Some((selection.span, own_day(&own, &points, dates, selection)?));
    let mut found: BTreeMap<Span, DecideBy> = selections.iter().filter_map(due).collect();
    let mut waiting: BinaryHeap<Reverse<(Date, usize)>> =
        found.iter().filter_map(|(span, due)| Some(Reverse((due.on, *places.get(span)?)))).collect();
    // The earliest first: what it rests on is due no later, and nothing that comes after can be earlier.
    while let Some(Reverse((on, at))) = waiting.pop() {
        let Some(resting) = selections.get(at) else { continue };
        let Some(due) = found.get(&resting.span).filter(|due| due.on == on).cloned() else { continue };
        for ground in depends.grounds_to_settle(resting) {
            let span = ground.selection.span;
            // Of two reasons for one day, the thing that is built says more than the name of a hold point.
            let plainer = |known: &DecideBy| on == known.on && known.rests.is_none() && known.is == Step::Closing;
            let earlier = found.get(&span).is_none_or(|known| on < known.on || plainer(known));
            let Some(place) = places.get(&span).filter(|_| earlier) else { continue };
            let rests =
                Some(Dependent { name: resting.name.value.clone(), span: resting.span, because: ground.because });
            found.insert(span, DecideBy { rests, ..due.clone() });
            waiting.push(Reverse((on, *place)));
        }
    }
    found
}

/// By when a selection must be decided for its own sake: its order, or the hold point of its kind.
fn own_day(own: &OwnMoments, points: &HoldPoints, dates: &Dates, selection: &Selection) -> Option<DecideBy> {
    let placed = selection.settled().and_then(|option| option.order.placed_on.get()).copied();
    let order = placed.map(|day| (day, Step::Ordered)).or_else(|| Some((dates.last_order(selection)?, Step::Order)));
    let moments = own.of_thing(selection).into_iter().chain(decides_what_is_roughed_in(selection));
    let closing = moments.filter_map(|moment| Some((points.written_day(moment)?, moment.name()))).min_by_key(|at| at.0);
    let ordered = if is_cabinet(selection) { HoldPoint::CabinetsOrdered } else { HoldPoint::GoodsOrdered };
    let due = |on, hold_point: &str, is| DecideBy { on, hold_point: hold_point.into(), is, rests: None };
    match (order, closing) {
        (Some((on, Step::Order)), Some((day, name))) if day < on => Some(due(day, name, Step::Closing)),
        (Some((on, is)), _) => Some(due(on, ordered.name(), is)),
        (None, Some((day, name))) => Some(due(day, name, Step::Closing)),
        (None, None) => None,
    }
}

/// An open choice that decides what goes into the walls: the duct of a hood or a fan, or services that its options ask
/// for and that differ.
fn decides_what_is_roughed_in(selection: &Selection) -> Option<HoldPoint> {
    let open = selection.options.len() > 1 && selection.settled().is_none();
    let needs: Vec<&Needs> = selection.standing().iter().filter_map(|one| Some(&one.fit.get()?.needs)).collect();
    let differ = needs.iter().zip(needs.iter().skip(1)).any(|(one, other)| !are_alike(one, other));
    (open && (differ || selection.is_any(&[Kind::Hood, Kind::Fan]))).then_some(HoldPoint::RoughInClosed)
}

/// Whether two ask for the same in the walls.
fn are_alike(one: &Needs, other: &Needs) -> bool {
    fn is<T: PartialEq>(one: &Slot<Worded<T>>, other: &Slot<Worded<T>>) -> bool {
        one.get().map(|one| &one.is) == other.get().map(|other| &other.is)
    }
    is(&one.power, &other.power)
        && is(&one.gas, &other.gas)
        && is(&one.water, &other.water)
        && is(&one.drain, &other.drain)
        && is(&one.duct, &other.duct)
}

/// Which hold point is a thing's own.
#[derive(Debug)]
pub struct OwnMoments {
    /// What cabinets are built around, by where it is written; none where the book has no cabinets.
    housed: Option<BTreeSet<Span>>,
}

impl OwnMoments {
    /// Of the things of a book.
    pub fn of(book: &Book, depends: &Depends<'_>) -> Self {
        let cabinets: Vec<&Selection> =
            book.selections().map(|(_, selection)| selection).filter(|selection| is_cabinet(selection)).collect();
        let grounds = cabinets.iter().flat_map(|cabinet| depends.grounds(cabinet));
        let housed: BTreeSet<Span> = grounds.map(|ground| ground.selection.span).collect();
        Self { housed: (!cabinets.is_empty()).then_some(housed) }
    }

    /// The hold point of a thing itself; none where its order alone counts. The order of cabinets counts
    /// for what they are built around; in a book without cabinets, for all that they are usually built around.
    pub fn of_thing(&self, selection: &Selection) -> Option<HoldPoint> {
        let housed = |selection: &Selection| self.housed.as_ref().is_none_or(|all| all.contains(&selection.span));
        match for_thing(Some(selection)) {
            HoldPoint::GoodsOrdered => None,
            HoldPoint::CabinetsOrdered if !is_cabinet(selection) && !housed(selection) => None,
            moment => Some(moment),
        }
    }
}

fn is_cabinet(selection: &Selection) -> bool {
    selection.is(Kind::Cabinet)
}

#[cfg(test)]
mod tests;
