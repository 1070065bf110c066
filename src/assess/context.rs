//! What a rule looks at: the book, its dates, and each thing at its opening.

use crate::book::{Book, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity};
use crate::site::heat::Hearth;
use crate::site::{Placement, Site};
use crate::source::Place;
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
    /// What is known of the site.
    pub site: &'a Site<'a>,
    /// The day of the review.
    pub today: Date,
}

impl<'a> Context<'a> {
    /// The figures of codes and guidelines as they count for this book.
    pub fn rulings(&self) -> Rulings<'a> {
        Rulings::of(&self.book.project)
    }

    /// The cooking surface of a thing at its opening, with what is near it; none for what has none.
    pub fn hearth(&self, fitted: Placement<'a>) -> Option<Hearth<'a>> {
        Hearth::of(fitted, self.site.plan(fitted.room), self.rulings().heat())
    }
}

impl Placement<'_> {
    /// A remark about this thing at its opening. While the client still chooses, what would be a
    /// stop is a query: another option can be taken.
    pub fn finding(&self, severity: Severity, span: impl Into<Place>, message: impl Into<Phrase>) -> Remark {
        about(self.room, self.selection, self.option, severity, span, message)
    }
}

/// A remark about an option of a selection; a stop only when the option stands.
pub fn about(
    room: &Room,
    selection: &Selection,
    option: &ProductOption,
    severity: Severity,
    span: impl Into<Place>,
    message: impl Into<Phrase>,
) -> Remark {
    let settled = selection.settled().is_some();
    let bars = !settled && severity == Severity::Stop;
    let severity = if settled { severity } else { severity.max(Severity::Query) };
    let message = message.into();
    let message = if settled { message } else { message.of_option(&option.id.value) };
    let remark = Remark::new(severity, span, message).room(&room.folder).option(&selection.name, &option.id.value);
    Remark { bars, ..remark }
}
