//! What a check has to say, before the rule that it checks is put to it.

use crate::source::{Place, Span, Spanned};
use crate::units::System;

use super::{Code, Finding, Fix, Hazard, Id, Phrase, Severity, Subject};

/// Another place that a finding speaks of, and what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Also {
    /// Where.
    pub span: Span,
    /// What stands there, in a few words.
    pub label: Phrase,
}

/// What was met at a place: a finding but for its rule.
///
/// The message says what is wrong and stands alone; how to mend it is in the remedy alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// How much it weighs.
    pub severity: Severity,
    /// What it points at.
    pub place: Place,
    /// Other places that it speaks of.
    pub also: Vec<Also>,
    /// The room's folder name, where it concerns one.
    pub room: Option<String>,
    /// What it is about.
    pub subject: Subject,
    /// Other things that it is as much about: their pages tell of it too.
    pub others: Vec<Id>,
    /// What is wrong: a phrase, lower case, no full stop.
    pub message: Phrase,
    /// It concerns an option that nobody has chosen yet, and would be a stop once it is chosen.
    pub bars: bool,
    /// How to mend it.
    pub remedy: Phrase,
    /// What to write instead, where that is certain.
    pub fix: Option<Box<Fix>>,
    /// The published source of the figure that decided; empty where the book itself decides.
    pub source: String,
    /// What can hurt someone, and whose word counts. A waiver never removes it.
    pub caution: Option<Hazard>,
}

impl Remark {
    /// A remark of that weight, at that place; the rest is added with the methods below.
    pub fn new(severity: Severity, place: impl Into<Place>, message: impl Into<Phrase>) -> Self {
        Self {
            severity,
            place: place.into(),
            also: vec![],
            room: None,
            subject: Subject::Whole,
            others: vec![],
            message: message.into(),
            bars: false,
            remedy: Phrase::default(),
            fix: None,
            source: String::new(),
            caution: None,
        }
    }

    /// What must be fixed or waived before issue.
    pub fn stop(place: impl Into<Place>, message: impl Into<Phrase>) -> Self {
        Self::new(Severity::Stop, place, message)
    }

    /// What wants an answer.
    pub fn query(place: impl Into<Place>, message: impl Into<Phrase>) -> Self {
        Self::new(Severity::Query, place, message)
    }

    /// Advice.
    pub fn note(place: impl Into<Place>, message: impl Into<Phrase>) -> Self {
        Self::new(Severity::Note, place, message)
    }

    /// The same in the units of the book that it is said of.
    #[must_use]
    pub fn in_units(self, units: System) -> Self {
        let also = self.also.into_iter().map(|also| Also { label: also.label.in_units(units), ..also });
        Self {
            message: self.message.in_units(units),
            remedy: self.remedy.in_units(units),
            also: also.collect(),
            ..self
        }
    }

    /// Says how to mend it.
    #[must_use]
    pub fn remedy(mut self, remedy: impl Into<Phrase>) -> Self {
        self.remedy = remedy.into();
        self
    }

    /// Points at another place too.
    #[must_use]
    pub fn also(mut self, span: Span, label: impl Into<Phrase>) -> Self {
        self.also.push(Also { span, label: label.into() });
        self
    }

    /// Names the source of the figure that decided.
    #[must_use]
    pub fn source(mut self, source: impl Into<String>) -> Self {
        self.source = source.into();
        self
    }

    /// Names the room, by its folder.
    #[must_use]
    pub fn room(mut self, room: impl Into<String>) -> Self {
        self.room = Some(room.into());
        self
    }

    /// Names the room, by its folder, where there is one.
    #[must_use]
    pub fn in_room(mut self, room: Option<String>) -> Self {
        self.room = room;
        self
    }

    /// Says that it is about a selection.
    #[must_use]
    pub fn selection(mut self, name: &Spanned<String>) -> Self {
        self.subject = Subject::Selection(name.clone());
        self
    }

    /// Says that it is about one option of a selection alone, by its id.
    #[must_use]
    pub fn option(mut self, of: &Spanned<String>, id: &str) -> Self {
        self.subject = Subject::Option(of.clone(), id.to_string());
        self
    }

    /// Says that it is about an opening.
    #[must_use]
    pub fn opening(mut self, name: &Spanned<String>) -> Self {
        self.subject = Subject::Opening(name.clone());
        self
    }

    /// Says that it is about something else that the book names.
    #[must_use]
    pub fn thing(mut self, name: &Spanned<String>) -> Self {
        self.subject = Subject::Thing(name.clone());
        self
    }

    /// Says that it is as much about other things.
    #[must_use]
    pub fn about_others(mut self, others: impl IntoIterator<Item = Id>) -> Self {
        self.others.extend(others);
        self
    }

    /// Says that it is about a part that has no name of its own.
    #[must_use]
    pub fn part(mut self, words: impl Into<String>) -> Self {
        self.subject = Subject::Part(words.into());
        self
    }

    /// Says what to write instead of what it points at, where that is certain.
    #[must_use]
    pub fn mended_by(mut self, with: Option<&str>) -> Self {
        self.fix = match (&self.place, with) {
            (Place::Text(span), Some(with)) => Some(Box::new(Fix { span: *span, with: with.to_string() })),
            _ => None,
        };
        self
    }

    /// The finding of the rule of that code.
    pub fn of(self, rule: Code) -> Finding {
        Finding { rule, remark: self, past: false, by: None, waived: None }
    }
}

#[cfg(test)]
mod tests {
    use crate::finding::Phrase;
    use crate::units::{Fault, Length, Piece};

    /// Does not compile where any text could be a message: both impls would then name the same function.
    #[test]
    fn no_text_that_is_put_together_is_a_message() {
        trait OnlyOf<Which> {
            fn is() {}
        }
        impl<T: ?Sized> OnlyOf<()> for T {}
        impl<T: Into<Phrase>> OnlyOf<u8> for T {}
        <String as OnlyOf<_>>::is();
    }

    /// Two sizes with a mark of feet that somebody took from another keyboard.
    #[test]
    fn what_an_error_quotes_is_a_piece_whatever_stands_in_it() {
        let fault = Length::parse("3` 6`").unwrap_err();
        let quoted = |phrase: &Phrase| phrase.pieces().iter().any(|piece| *piece == Piece::Quoted("3` 6`".into()));
        assert!(quoted(&fault.message()), "{:?}", fault.message());
    }
}
