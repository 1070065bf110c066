//! What a rule looks at: the book, its dates, and each thing at its opening.

use crate::book::{Book, Choice, Opening, Room, Selection};
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Plans, Thing};
use crate::source::{Place, Span};
use crate::units::Date;

use super::approval::Approvals;
use super::codes::Rulings;
use super::dates::Dates;
use super::depends::Depends;

/// What a rule looks at.
#[derive(Clone, Copy, Debug)]
pub struct Context<'a> {
    /// The book.
    pub book: &'a Book,
    /// Its dates.
    pub dates: &'a Dates,
    /// What rests on what.
    pub depends: &'a Depends<'a>,
    /// What stands of each item's approval.
    pub approvals: &'a Approvals,
    /// The rooms' plans.
    pub plans: &'a Plans<'a>,
    /// Every option that still counts, at its opening.
    pub fitted: &'a [Placement<'a>],
    /// The day of the review.
    pub today: Date,
}

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
    pub option: &'a Choice,
}

impl<'a> Context<'a> {
    /// The figures of codes and guidelines as they count for this book.
    pub fn rulings(&self) -> Rulings<'a> {
        Rulings::of(&self.book.project)
    }

    /// Every option that still counts, at its opening.
    pub fn fitted(&self) -> impl Iterator<Item = Placement<'a>> {
        self.fitted.iter().copied()
    }

    /// The plan of a room, where the book says anything of it.
    pub fn plan(&self, room: &Room) -> Option<&'a Plan<'a>> {
        self.plans.room(room)
    }

    /// Every option that still counts, with its room and selection.
    pub fn options(&self) -> impl Iterator<Item = (&'a Room, &'a Selection, &'a Choice)> {
        self.book
            .selections()
            .flat_map(|(room, selection)| selection.standing().iter().map(move |option| (room, selection, option)))
    }
}

impl<'a> Placement<'a> {
    /// The plan that the opening has a place in, and that place.
    pub fn placed(&self, context: &Context<'a>) -> Option<(&'a Plan<'a>, &'a Thing<'a>)> {
        let plan = context.plan(self.room)?;
        Some((plan, plan.opening(self.opening)?))
    }
}

impl Placement<'_> {
    /// Whether this option stands: chosen, or the only one.
    pub fn is_settled(&self) -> bool {
        self.selection.settled().is_some()
    }

    /// A finding about this thing at its opening. While the client still chooses, what would be a
    /// stop is a query: another option can be taken.
    pub fn finding(
        &self,
        rule: &'static str,
        severity: Severity,
        span: impl Into<Place>,
        message: impl Into<String>,
    ) -> Finding {
        about(self.room, self.selection, self.option, rule, severity, span, message)
    }

    /// Where the opening is written.
    pub fn opening_span(&self) -> Span {
        self.opening.span
    }
}

/// Every option of a book that still counts, at its opening; found once for all rules.
pub fn at_openings(book: &Book) -> Vec<Placement<'_>> {
    let things = book.selections().flat_map(|(room, selection)| {
        let opening = selection.place.get().and_then(|place| room.opening(place));
        let options = selection.standing().iter();
        options.filter_map(move |option| opening.map(|opening| Placement { room, opening, selection, option }))
    });
    things.collect()
}

/// A finding about an option of a selection; a stop only when the option stands.
pub fn about(
    room: &Room,
    selection: &Selection,
    option: &Choice,
    rule: &'static str,
    severity: Severity,
    span: impl Into<Place>,
    message: impl Into<String>,
) -> Finding {
    let settled = selection.settled().is_some();
    let bars = !settled && severity == Severity::Stop;
    let severity = if settled { severity } else { severity.max(Severity::Query) };
    let message = message.into();
    let message = if settled { message } else { format!("option `{}`: {message}", option.id.value) };
    let finding = Finding::new(rule, severity, span, message).room(&room.folder).item(&selection.name);
    Finding { option: Some(option.id.value.clone()), bars, ..finding }
}
