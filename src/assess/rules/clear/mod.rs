//! The `clear/` rules: whether one can stand, pass, sit and set something down; code and advice told apart.

pub mod above_cooktop;
pub mod access;
pub mod bath_floor;
pub mod beside_cooktop;
pub mod dishwasher;
pub mod door_swing;
pub mod doorway;
pub mod frontage;
pub mod glazing;
pub mod headroom;
pub mod hood;
pub mod landing;
pub mod lavatory;
pub mod microwave;
pub mod prep;
pub mod seating;
pub mod shower;
pub mod toilet;
pub mod triangle;
pub mod walkway;
pub mod work_aisle;

use crate::assess::codes::metric::Printed;
use crate::assess::codes::{self, Basis, Family, PASSAGE};
use crate::assess::{Context, say};
use crate::book::{Room, System};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Provenance;
use crate::site::distances::Distance;
use crate::site::heat::RequiredDistance;
use crate::source::Spanned;
use crate::units::Length;

/// What it weighs that a thing is nearer to heat than is asked.
fn weight(asked: &RequiredDistance) -> Severity {
    if asked.stops { Severity::Stop } else { Severity::Query }
}

/// A figure that a code or a guideline asks for.
#[derive(Clone, Copy)]
struct Figure {
    bound: Bound,
    /// After the figure, in messages: `advised for two cooks`.
    whose: &'static str,
    /// What is published where.
    source: &'static str,
    /// How its source gives it in metric.
    printed: Printed,
    /// The same among the figures of codes: what the book adopts, or sets itself, counts.
    named: Option<&'static codes::Figure>,
}

/// From where on a distance passes; the figure itself passes.
#[derive(Clone, Copy)]
enum Bound {
    Least(Length),
    Most(Length),
}

impl Figure {
    /// What a standard of access asks for, which the book took for its own.
    const fn of_access(bound: Bound, source: &'static str) -> Self {
        let whose = "that the access profile asks for";
        Self { bound, whose, source, printed: Printed::ToFiveMillimetres, named: None }
    }

    /// At least what that figure of a code or guideline says.
    const fn of(named: &'static codes::Figure) -> Self {
        let whose = match named.basis {
            Basis::Code(..) => "that the model code asks for",
            Basis::Guideline | Basis::Practice => "advised",
        };
        let printed = match named.basis {
            Basis::Code(..) => Printed::ToTheMillimetre,
            Basis::Guideline | Basis::Practice => Printed::InInches,
        };
        Self { bound: Bound::Least(named.length()), whose, source: named.source, printed, named: Some(named) }
    }

    /// At most what that figure says.
    const fn most_of(named: &'static codes::Figure) -> Self {
        Self { bound: Bound::Most(named.length()), ..Self::of(named) }
    }

    /// The same, told so: `advised for two cooks`.
    const fn told(self, whose: &'static str) -> Self {
        Self { whose, ..self }
    }

    /// At least so much, as a guideline advises.
    const fn advised(least: Length, source: &'static str) -> Self {
        Self { bound: Bound::Least(least), whose: "advised", source, printed: Printed::InInches, named: None }
    }

    /// At least so much, as is common practice in every country.
    const fn practice(least: Length) -> Self {
        let printed = Printed::AsWritten;
        Self { bound: Bound::Least(least), whose: "usual", source: "common practice", printed, named: None }
    }

    /// At most so much, as a guideline advises.
    const fn advised_most(most: Length, source: &'static str) -> Self {
        Self { bound: Bound::Most(most), whose: "advised", source, printed: Printed::InInches, named: None }
    }

    /// As it counts for this book; none where the edition that it adopts does not have it.
    fn ruled(self, context: &Context<'_>) -> Option<Ruled> {
        let Some(named) = self.named else {
            // A guideline's advice is that of its own country.
            if self.printed == Printed::InInches && !context.rulings().offers(Family::KitchenAndBath) {
                return None;
            }
            return Some(Ruled { figure: self, source: self.source.into(), severity: Severity::Query, own: false });
        };
        let ruling = context.rulings().length(named)?;
        let whose = if ruling.own { "that the book asks for" } else { self.whose };
        let printed = if ruling.own { Printed::AsWritten } else { self.printed };
        let figure = Self { bound: self.bound.with(ruling.value), whose, printed, ..self };
        Some(Ruled { figure, source: ruling.source, severity: ruling.severity, own: ruling.own })
    }

    /// As it counts against a length that may have been set out in millimetres.
    fn against(self, there: Length, units: System) -> Self {
        let bound = match self.bound {
            Bound::Least(asked) => Bound::Least(self.printed.least(asked, there, units)),
            Bound::Most(asked) => Bound::Most(self.printed.most(asked, there, units)),
        };
        Self { bound, ..self }
    }

    fn asked(self) -> Length {
        match self.bound {
            Bound::Least(asked) | Bound::Most(asked) => asked,
        }
    }

    /// By how much a distance misses it, and which way.
    fn missed_by(self, there: Length) -> Option<(Length, &'static str)> {
        let (by, way) = match self.bound {
            Bound::Least(least) => (least - there, "less"),
            Bound::Most(most) => (there - most, "more"),
        };
        (by > Length::ZERO).then_some((by, way))
    }
}

impl Bound {
    /// The same way, from another length on.
    fn with(self, length: Length) -> Self {
        match self {
            Self::Least(_) => Self::Least(length),
            Self::Most(_) => Self::Most(length),
        }
    }
}

/// A figure as it counts for a book.
struct Ruled {
    figure: Figure,
    source: String,
    severity: Severity,
    own: bool,
}

impl Ruled {
    fn against(self, there: Length, units: System) -> Self {
        Self { figure: self.figure.against(there, units), ..self }
    }
}

/// The clear passage that the building code asks for in a kitchen, where the book adopts that code.
fn passage(context: &Context<'_>) -> Option<Figure> {
    context.rulings().editions().year(Family::Ibc).map(|_| Figure::of(&PASSAGE))
}

/// A distance, and what is asked of it.
struct Measure<'a> {
    room: &'a Room,
    /// The opening or place that it concerns.
    item: Option<&'a Spanned<String>>,
    /// What it is, before and after the figure: `the work aisle`, `wide`.
    is: (Phrase, &'static str),
    there: Distance,
    /// What a guideline advises.
    advised: Option<Figure>,
    /// What a code asks for.
    code: Option<Figure>,
    remedy: &'static str,
}

impl Measure<'_> {
    /// What is missing: of the code's figure first, else of the guideline's. What passes the code and
    /// only misses advice is a note, unless the book itself asks for it.
    fn judge(&self, context: &Context<'_>) -> Option<Remark> {
        let counts = |ruled: Ruled| ruled.against(self.there.value, context.book.project.units);
        let code = self.code.and_then(|figure| figure.ruled(context)).map(counts);
        if let Some(code) = &code
            && let Some(by) = code.figure.missed_by(self.there.value)
        {
            return Some(self.finding(context, code, code.severity, by, ""));
        }
        let advised = counts(self.advised?.ruled(context)?);
        let by = advised.figure.missed_by(self.there.value)?;
        let (severity, enough) = match code {
            Some(_) if !advised.own => (Severity::Note, "enough for the model code, "),
            _ => (advised.severity, ""),
        };
        Some(self.finding(context, &advised, severity, by, enough))
    }

    fn finding(
        &self,
        context: &Context<'_>,
        missed: &Ruled,
        severity: Severity,
        (by, way): (Length, &'static str),
        enough: &'static str,
    ) -> Remark {
        let say = |length| say(length, context.book.project.units);
        let (subject, tail) = &self.is;
        let tail = if tail.is_empty() { Phrase::default() } else { phrase!(" {tail}", tail) };
        let by_the_plan = if self.there.provenance == Provenance::Plan { " by the plan" } else { "" };
        let message = phrase!(
            "{subject} is {}{tail}{by_the_plan}, {enough}{} {way} than the {} {}",
            subject,
            say(self.there.value),
            tail,
            by_the_plan,
            enough,
            say(by),
            way,
            say(missed.figure.asked()),
            missed.figure.whose
        );
        let finding = Remark::new(severity, self.there.at, message).room(&self.room.folder);
        let finding = match self.item {
            Some(item) => finding.thing(item),
            None => finding,
        };
        finding.source(missed.source.clone()).remedy(self.remedy)
    }
}
