//! Who measured which figures of an opening, and when: the book says it of all of them, a reading on record of those
//! that it took the place of.

use super::{MeasuredAgain, Opening, Slot};
use crate::ledger::Side;
use crate::units::Date;

/// A figure that was read by a tape and stands on record, in place of what the book says of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TakenFigure {
    /// What was measured.
    pub what: Side,
    /// Who measured it.
    pub by: String,
    /// The day.
    pub on: Date,
}

/// What of an opening one person measured on one day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measurement<'a> {
    /// Which figures.
    pub of: MeasuredFigures,
    /// How they are known.
    pub how: MeasuredHow<'a>,
}

/// Figures of an opening that are known in the same way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MeasuredFigures {
    /// All that it has.
    All,
    /// These.
    These(Vec<Side>),
    /// All others that it has.
    Rest,
}

/// How figures of an opening are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredHow<'a> {
    /// They were measured.
    By {
        /// By whom, if that is said.
        who: Option<&'a str>,
        /// On which day, if that is said.
        on: Option<Date>,
        /// By whom, and when, they were measured a second time.
        again: Option<&'a MeasuredAgain>,
    },
    /// Nobody measured them.
    Planned,
}

impl Opening {
    /// Who measured what of it, the newest reading on record first, then what the book says of the rest.
    pub fn measurements(&self) -> Vec<Measurement<'_>> {
        let mut told: Vec<Measurement<'_>> = Vec::new();
        for taken in self.taken.iter().rev() {
            let how = MeasuredHow::By { who: Some(&taken.by), on: Some(taken.on), again: None };
            match told.iter_mut().find(|one| one.how == how) {
                Some(Measurement { of: MeasuredFigures::These(sides), .. }) => sides.push(taken.what),
                _ => told.push(Measurement { of: MeasuredFigures::These(vec![taken.what]), how }),
            }
        }
        for one in &mut told {
            if let MeasuredFigures::These(sides) = &mut one.of {
                sides.sort_unstable();
            }
        }
        let rest = self.rest();
        match (told.as_mut_slice(), self.has_more_than_was_taken()) {
            ([], _) => told.push(Measurement { of: MeasuredFigures::All, how: rest }),
            ([alone], false) => alone.of = MeasuredFigures::All,
            (_, false) => {}
            (_, true) => told.push(Measurement { of: MeasuredFigures::Rest, how: rest }),
        }
        told
    }

    /// Whether its sizes, or some of them, are as planned: nobody measured them.
    pub fn is_as_planned(&self) -> bool {
        match &self.as_written {
            None => self.measured.is_absent(),
            Some(before) => before.measured.is_absent() && self.has_sizes_that_nobody_took(),
        }
    }

    /// The names of all who measured anything of it.
    pub fn measurers(&self) -> Vec<&str> {
        let written = self.as_written.as_ref().map_or(&self.measured, |before| &before.measured).get();
        let by = written.and_then(|measured| measured.by.get());
        let again = written.and_then(|measured| measured.again.get()?.by.get());
        by.into_iter().chain(again).map(String::as_str).chain(self.taken.iter().map(|one| one.by.as_str())).collect()
    }

    /// What the book itself says of who measured.
    fn rest(&self) -> MeasuredHow<'_> {
        let written = self.as_written.as_ref().map_or(&self.measured, |before| &before.measured);
        match written {
            Slot::Given(measured) => MeasuredHow::By {
                who: measured.value.by.get().map(String::as_str),
                on: measured.value.on.get().copied(),
                again: measured.value.again.get(),
            },
            Slot::Absent => MeasuredHow::Planned,
            Slot::Invalid => MeasuredHow::By { who: None, on: None, again: None },
        }
    }

    fn is_taken(&self, what: Side) -> bool {
        self.taken.iter().any(|taken| taken.what == what)
    }

    fn has_sizes_that_nobody_took(&self) -> bool {
        let by_plumb = self.is_taken(Side::PlumbLeft);
        let sizes = [
            (&self.width, self.is_taken(Side::Width) || by_plumb),
            (&self.height, self.is_taken(Side::Height)),
            (&self.depth, self.is_taken(Side::Depth)),
        ];
        sizes.into_iter().any(|(size, taken)| size.get().is_some() && !taken)
    }

    fn has_more_than_was_taken(&self) -> bool {
        let own = [
            (&self.sill, Side::Sill),
            (&self.in_front, Side::InFront),
            (&self.counter_height, Side::CounterHeight),
            (&self.counter_depth, Side::CounterDepth),
            (&self.apron_opening, Side::Apron),
        ];
        let besides = own.into_iter().any(|(slot, what)| slot.get().is_some() && !self.is_taken(what));
        let width = self.width.get().is_some() && !self.is_taken(Side::Width);
        let plumb = self.plumb.get().is_some() && !self.is_taken(Side::PlumbLeft);
        let diagonals = self.diagonals.get().is_some() && !self.is_taken(Side::Diagonal);
        self.has_sizes_that_nobody_took() || width || plumb || diagonals || besides
    }
}
