//! One telling of a figure, and all tellings of it together.

use crate::source::{Span, Spanned};
use crate::units::{Length, Piece, Say, phrase};

/// Who says a figure, the most trusted first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Provenance {
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
    /// In the words of its service.
    Service,
    /// At the points where its services come out.
    ServicePoints,
    /// Among the room's clear distances.
    Clearances,
    /// Among what the room offers for access.
    Access,
    /// At lights that the plan sets out.
    Lights(&'a str),
    /// At a doorway.
    Doorway(&'a str),
    /// At a window.
    Window(&'a str),
    /// By the seams of a counter on that run.
    Seams(&'a str),
    /// It follows from where things stand.
    Plan,
    /// It follows from where things stand, up to what is called so.
    ByThePlan(&'a str),
}

impl crate::units::Told for Spot<'_> {}

impl Say for Spot<'_> {
    fn add_to(&self, pieces: &mut Vec<Piece>) {
        let said = match self {
            Self::Opening(name) => phrase!("at the opening `{name}`", name),
            Self::CabinetOf(name) => phrase!("at the cabinet of the opening `{name}`", name),
            Self::Run(name) => phrase!("in the run `{name}`", name),
            Self::Island(name) => phrase!("at the island `{name}`", name),
            Self::Part(part, row) => phrase!("at `{part}` in `{row}`", part, row),
            Self::Fixture(name) => phrase!("at the fixture `{name}`", name),
            Self::Room => phrase!("in the room"),
            Self::Selection(name) => phrase!("at `{name}`", name),
            Self::Service => phrase!("under `service`"),
            Self::ServicePoints => phrase!("under `service points`"),
            Self::Clearances => phrase!("under `clearances`"),
            Self::Access => phrase!("under `access`"),
            Self::Lights(name) => phrase!("at the lights `{name}`", name),
            Self::Doorway(name) => phrase!("at the doorway `{name}`", name),
            Self::Window(name) => phrase!("at the window `{name}`", name),
            Self::Seams(run) => phrase!("by its seams on `{run}`", run),
            Self::Plan => phrase!("by the plan"),
            Self::ByThePlan(to) => phrase!("by the plan, to `{to}`", to),
        };
        said.add_to(pieces);
    }
}

/// One telling of a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SourcedFigure<'a, T = Length> {
    /// The figure.
    pub value: T,
    /// Where it is written.
    pub at: Span,
    /// Who says it.
    pub provenance: Provenance,
    /// At what it is written, for people.
    pub spot: Spot<'a>,
}

impl<'a, T: Copy> SourcedFigure<'a, T> {
    /// What is written at the thing itself.
    pub fn written(told: &Spanned<T>, spot: Spot<'a>) -> Self {
        Self { value: told.value, at: told.span, provenance: Provenance::Written, spot }
    }

    /// What the plan says.
    pub fn planned(told: &Spanned<T>, spot: Spot<'a>) -> Self {
        Self { provenance: Provenance::Plan, ..Self::written(told, spot) }
    }

    /// The same, as a figure of another type.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> SourcedFigure<'a, U> {
        SourcedFigure { value: change(self.value), at: self.at, provenance: self.provenance, spot: self.spot }
    }
}

/// All that is told of one figure, the most trusted first.
#[derive(Clone, Debug, Default)]
pub struct Answer<'a>(Vec<SourcedFigure<'a>>);

impl<'a> Answer<'a> {
    /// Of these tellings.
    pub fn of(told: impl IntoIterator<Item = Option<SourcedFigure<'a>>>) -> Self {
        let mut all: Vec<SourcedFigure<'a>> = told.into_iter().flatten().collect();
        all.sort_by_key(|told| told.provenance);
        Self(all)
    }

    /// What counts.
    pub fn best(&self) -> Option<&SourcedFigure<'a>> {
        self.0.first()
    }

    /// The figure that counts.
    pub fn value(&self) -> Option<Length> {
        self.best().map(|told| told.value)
    }

    /// What counts, and the first that differs from it by more than that.
    pub fn differing(&self, tolerance: Length) -> Option<(&SourcedFigure<'a>, &SourcedFigure<'a>)> {
        let (best, others) = self.0.split_first()?;
        let other = others.iter().find(|other| (other.value - best.value).abs() > tolerance)?;
        Some((best, other))
    }
}
