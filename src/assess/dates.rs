//! When things are needed, and by when they must be ordered.

use std::collections::{BTreeMap, BTreeSet};

use super::built_in;
use super::critical::{in_order, slack};
use super::decide::{self, DecideBy};
use super::depends::Depends;
use super::hold_points::HoldPoints;
use crate::book::{Book, Later, NeededFor, ProductOption, Selection, When};
use crate::source::Span;
use crate::units::{Calendar, Date, LeadTime};
use crate::vocabulary::HoldPoint;

/// The dates of a book, as of a day.
#[derive(Debug)]
pub struct Dates {
    /// Each milestone whose date follows from the book, by name.
    pub milestones: BTreeMap<String, Date>,
    /// By how many days each of them can slip before the last one moves.
    pub slack: BTreeMap<String, i64>,
    decide: BTreeMap<Span, DecideBy>,
    /// The day on which walls and floors are closed, where the book or a milestone says it.
    closing: Option<Date>,
    /// What is built in behind them.
    built_in: BTreeSet<Span>,
    calendar: Calendar,
    receiving: Option<LeadTime>,
    today: Date,
}

/// When a thing is needed, in hand and ordered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OrderBy {
    /// When work needs it.
    pub needed: Date,
    /// When it must be in hand.
    pub in_hand: Date,
    /// The last day to order it; none while its lead time is unknown.
    pub order: Option<Date>,
}

/// How near the last day to decide is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RunsOut {
    /// It has passed.
    Past,
    /// Within four weeks (common practice).
    Soon,
    /// Later, or no date hangs on it.
    Later,
}

/// How many days before the last day a warning is due: four weeks (common practice).
const SOON: i64 = 28;

impl Dates {
    /// The dates that follow from a book.
    pub fn of(book: &Book, today: Date) -> Self {
        Self::resting(book, &Depends::of(book), today)
    }

    /// The same where it is known what rests on what.
    pub fn resting(book: &Book, depends: &Depends<'_>, today: Date) -> Self {
        let project = &book.project;
        let mut milestones = BTreeMap::new();
        for milestone in in_order(project) {
            let date = match &milestone.when {
                When::On(date) => Some(*date),
                When::Faulty(_) => None,
                When::After(Later { milestones: before, lasts }) => {
                    let before: Option<Vec<Date>> =
                        before.iter().map(|before| milestones.get(&before.value).copied()).collect();
                    let last = before.and_then(|before| before.into_iter().max());
                    last.map(|last| lasts.latest().after(last, &project.calendar))
                }
            };
            if let Some(date) = date {
                milestones.insert(milestone.name.value.clone(), date);
            }
        }
        let slack = slack(project, &milestones);
        let mut dates = Self {
            milestones,
            slack,
            decide: BTreeMap::new(),
            closing: None,
            built_in: built_in::all(book),
            calendar: project.calendar.clone(),
            receiving: project.receiving.get().cloned(),
            today,
        };
        dates.closing = HoldPoints::of(book, &dates).written_day(HoldPoint::RoughInClosed);
        dates.decide = decide::all(book, depends, &dates);
        dates
    }

    /// When a selection is needed: for what waits for it, and no later than what it is built into is closed.
    pub fn needed(&self, selection: &Selection) -> Option<Date> {
        let own = self.day(selection.needed_for.get()?)?;
        Some(self.closed_over(selection).unwrap_or(own))
    }

    /// The day on which the walls are closed over what is built in, where something else is said to wait for it later.
    pub fn closed_over(&self, selection: &Selection) -> Option<Date> {
        let own = self.day(selection.needed_for.get()?)?;
        self.closing.filter(|closing| *closing < own && self.built_in.contains(&selection.span))
    }

    /// Whether something of it is built in behind walls or floors.
    pub fn is_built_in(&self, selection: &Selection) -> bool {
        self.built_in.contains(&selection.span)
    }

    /// The day of a milestone, or the day itself.
    pub fn day(&self, when: &NeededFor) -> Option<Date> {
        match when {
            NeededFor::Day(day) => Some(*day),
            NeededFor::Milestone(name) => self.milestones.get(name).copied(),
        }
    }

    /// When an option of a selection must be in hand and ordered: the need, less the book's
    /// `receiving`, less the longest lead time, on a day that is worked.
    pub fn order_by(&self, selection: &Selection, option: &ProductOption) -> Option<OrderBy> {
        let needed = self.needed(selection)?;
        let in_hand = self.receiving.as_ref().map_or(needed, |receiving| receiving.before(needed, &self.calendar));
        // Nobody takes an order on a day that is not worked.
        let order = option.lead_time.get().map(|lead| self.calendar.worked_by(lead.before(in_hand, &self.calendar)));
        Some(OrderBy { needed, in_hand, order })
    }

    /// When an option that is ordered comes by its longest lead time.
    pub fn comes(&self, option: &ProductOption) -> Option<Date> {
        let placed = *option.order.placed_on.get()?;
        Some(option.lead_time.get()?.latest().after(placed, &self.calendar))
    }

    /// The last day to decide a selection: its own last day to order, its hold point, or the earliest
    /// order or closing of what rests on it, whichever comes first.
    pub fn decide_by(&self, selection: &Selection) -> Option<Date> {
        Some(self.decision(selection)?.on)
    }

    /// The last day to decide a selection, and why it is that day.
    pub fn decision(&self, selection: &Selection) -> Option<&DecideBy> {
        self.decide.get(&selection.span)
    }

    /// The last day to order a selection: the earliest of the options that still count.
    pub fn last_order(&self, selection: &Selection) -> Option<Date> {
        let orders = selection.standing().iter().filter_map(|option| self.order_by(selection, option));
        orders.map(|order| order.order.unwrap_or(order.in_hand)).min()
    }

    /// The first day on which one of the options that still count must be in hand.
    pub fn in_hand(&self, selection: &Selection) -> Option<Date> {
        selection
            .standing()
            .iter()
            .filter_map(|option| self.order_by(selection, option))
            .map(|order| order.in_hand)
            .min()
    }

    /// How near the last day to decide a selection is; what is ordered does not run out.
    pub fn runs_out(&self, selection: &Selection) -> RunsOut {
        self.nearness(self.decide_by(selection), selection)
    }

    /// How near the last day to order a selection is; what is ordered does not run out.
    pub fn order_runs_out(&self, selection: &Selection) -> RunsOut {
        self.nearness(self.last_order(selection), selection)
    }

    fn nearness(&self, last: Option<Date>, selection: &Selection) -> RunsOut {
        match last.filter(|_| !selection.is_ordered()) {
            Some(last) if last < self.today => RunsOut::Past,
            Some(last) if self.today.days_until(last) <= SOON => RunsOut::Soon,
            _ => RunsOut::Later,
        }
    }

    /// The day of the review.
    pub fn today(&self) -> Date {
        self.today
    }
}
