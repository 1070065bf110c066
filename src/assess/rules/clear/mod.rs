//! The `clear/` rules: whether one can stand, pass, sit and set something down; code and advice told apart.

pub mod above_cooktop;
pub mod access;
pub mod bath_floor;
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

use crate::assess::room_facts::{Fact, Whence};
use crate::assess::{Context, say};
use crate::book::Room;
use crate::finding::{Finding, Severity};
use crate::units::Length;

/// A figure that a code or a guideline asks for.
#[derive(Clone, Copy)]
struct Figure {
    bound: Bound,
    /// After the figure, in messages: `advised for two cooks`.
    whose: &'static str,
    /// What is published where.
    source: &'static str,
}

/// From where on a distance passes; the figure itself passes.
#[derive(Clone, Copy)]
enum Bound {
    Least(Length),
    Most(Length),
}

impl Figure {
    /// At least so much, as a guideline advises.
    const fn advised(least: Length, source: &'static str) -> Self {
        Self { bound: Bound::Least(least), whose: "advised", source }
    }

    /// At most so much, as a guideline advises.
    const fn advised_most(most: Length, source: &'static str) -> Self {
        Self { bound: Bound::Most(most), whose: "advised", source }
    }

    /// At least so much, as the model code asks.
    const fn code(least: Length, source: &'static str) -> Self {
        Self { bound: Bound::Least(least), whose: "that the model code asks for", source }
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

/// A distance, and what is asked of it.
struct Measure<'a> {
    rule: &'static str,
    room: &'a Room,
    /// The opening or place that it concerns.
    item: Option<&'a str>,
    /// What it is, before and after the figure: `the work aisle`, `wide`.
    is: (String, &'static str),
    there: Fact,
    /// What a guideline advises.
    advised: Option<Figure>,
    /// What a code asks for.
    code: Option<Figure>,
    remedy: &'static str,
}

impl Measure<'_> {
    /// What is missing: of the code's figure first, else of the guideline's. What passes the code and
    /// only misses advice is a note.
    fn judge(&self, context: &Context<'_>) -> Option<Finding> {
        let missed =
            |figure: Option<Figure>| figure.and_then(|figure| Some((figure, figure.missed_by(self.there.value)?)));
        if let Some((figure, by)) = missed(self.code) {
            return Some(self.finding(context, Severity::Query, figure, by, ""));
        }
        let (figure, by) = missed(self.advised)?;
        let (severity, enough) = match self.code {
            Some(_) => (Severity::Note, "enough for the model code, "),
            None => (Severity::Query, ""),
        };
        Some(self.finding(context, severity, figure, by, enough))
    }

    fn finding(
        &self,
        context: &Context<'_>,
        severity: Severity,
        figure: Figure,
        (by, way): (Length, &str),
        enough: &str,
    ) -> Finding {
        let say = |length| say(length, context.book.project.units);
        let (subject, tail) = &self.is;
        let tail = if tail.is_empty() { String::new() } else { format!(" {tail}") };
        let by_the_plan = if self.there.whence == Whence::Plan { " by the plan" } else { "" };
        let message = format!(
            "{subject} is {}{tail}{by_the_plan}, {enough}{} {way} than the {} {}",
            say(self.there.value),
            say(by),
            say(figure.asked()),
            figure.whose
        );
        let finding = Finding::new(self.rule, severity, self.there.at, message).room(&self.room.folder);
        let finding = match self.item {
            Some(item) => finding.item(item),
            None => finding,
        };
        finding.source(figure.source).remedy(self.remedy)
    }
}
