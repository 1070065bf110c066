//! One telling of a figure, and all tellings of it together.

use std::fmt;

use crate::source::{Span, Spanned};
use crate::units::Length;

/// Who says a figure, the most trusted first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Whence {
    /// Somebody measured it there.
    Measured,
    /// It is written at the thing itself.
    Written,
    /// It stands in the room's plan.
    Plan,
    /// It follows from what stands there, by what is usual.
    Derived,
}

/// Where a figure is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot<'a> {
    /// At an opening.
    Opening(&'a str),
    /// At the cabinet of an opening.
    CabinetOf(&'a str),
    /// In a run.
    Run(&'a str),
    /// At an island.
    Island(&'a str),
    /// At a part, in the run or island of that name.
    Part(&'a str, &'a str),
    /// At a fixture of the plan.
    Fixture(&'a str),
    /// In the room.
    Room,
    /// At a selection.
    Selection(&'a str),
    /// Among the room's clear distances.
    Clearances,
    /// At lights that the plan sets out.
    Lights(&'a str),
    /// At a doorway.
    Doorway(&'a str),
    /// At a window.
    Window(&'a str),
    /// It follows from where things stand.
    Plan,
    /// It follows from where things stand, up to what is called so.
    ByThePlan(&'a str),
}

impl fmt::Display for Spot<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Opening(name) => write!(f, "at the opening `{name}`"),
            Self::CabinetOf(name) => write!(f, "at the cabinet of the opening `{name}`"),
            Self::Run(name) => write!(f, "in the run `{name}`"),
            Self::Island(name) => write!(f, "at the island `{name}`"),
            Self::Part(part, row) => write!(f, "at `{part}` in `{row}`"),
            Self::Fixture(name) => write!(f, "at the fixture `{name}`"),
            Self::Room => f.write_str("in the room"),
            Self::Selection(name) => write!(f, "at `{name}`"),
            Self::Clearances => f.write_str("under `clearances`"),
            Self::Lights(name) => write!(f, "at the lights `{name}`"),
            Self::Doorway(name) => write!(f, "at the doorway `{name}`"),
            Self::Window(name) => write!(f, "at the window `{name}`"),
            Self::Plan => f.write_str("by the plan"),
            Self::ByThePlan(to) => write!(f, "by the plan, to `{to}`"),
        }
    }
}

/// One telling of a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told<'a, T = Length> {
    /// The figure.
    pub value: T,
    /// Where it is written.
    pub at: Span,
    /// Who says it.
    pub whence: Whence,
    /// At what it is written, for people.
    pub spot: Spot<'a>,
}

impl<'a, T: Copy> Told<'a, T> {
    /// What is written at the thing itself.
    pub fn written(told: &Spanned<T>, spot: Spot<'a>) -> Self {
        Self { value: told.value, at: told.span, whence: Whence::Written, spot }
    }

    /// What the plan says.
    pub fn planned(told: &Spanned<T>, spot: Spot<'a>) -> Self {
        Self { whence: Whence::Plan, ..Self::written(told, spot) }
    }

    /// The same, as a figure of another type.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Told<'a, U> {
        Told { value: change(self.value), at: self.at, whence: self.whence, spot: self.spot }
    }
}

/// All that is told of one figure, the most trusted first.
#[derive(Clone, Debug, Default)]
pub struct Answer<'a>(Vec<Told<'a>>);

impl<'a> Answer<'a> {
    /// Of these tellings.
    pub fn of(told: impl IntoIterator<Item = Option<Told<'a>>>) -> Self {
        let mut all: Vec<Told<'a>> = told.into_iter().flatten().collect();
        all.sort_by_key(|told| told.whence);
        Self(all)
    }

    /// What counts.
    pub fn best(&self) -> Option<&Told<'a>> {
        self.0.first()
    }

    /// The figure that counts.
    pub fn value(&self) -> Option<Length> {
        self.best().map(|told| told.value)
    }

    /// What counts, and the first that differs from it by more than that.
    pub fn differing(&self, tolerance: Length) -> Option<(&Told<'a>, &Told<'a>)> {
        let (best, others) = self.0.split_first()?;
        let other = others.iter().find(|other| (other.value - best.value).abs() > tolerance)?;
        Some((best, other))
    }
}
