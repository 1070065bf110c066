//! What we say about a book: findings, their severity and the source behind them.

mod cut;

use crate::source::{Place, Span, Spanned};
use crate::units::Date;

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Must be fixed or waived before issue.
    Stop,
    /// Wants an answer.
    Query,
    /// Advice.
    Note,
}

impl Severity {
    /// The word that is printed.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Query => "query",
            Self::Note => "note",
        }
    }
}

/// Who set a finding aside, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waived {
    /// The reason given.
    pub because: String,
    /// Who answers for it.
    pub by: String,
    /// When, as `2027-01-15`.
    pub on: String,
    /// The milestone or the day after which it no longer holds.
    pub until: Option<String>,
}

impl Waived {
    /// Who, when and until when: `Ines Tarrow, 2027-01-12, until cabinets set`.
    pub fn words(&self) -> String {
        let until = self.until.as_ref().map_or(String::new(), |until| format!(", until {until}"));
        format!("{}, {}{until}", self.by, self.on)
    }
}

/// Another place that a finding speaks of, and what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Also {
    /// Where.
    pub span: Span,
    /// What stands there, in a few words.
    pub label: String,
}

/// The moment by which a finding must be settled.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SettleBy {
    /// The hold point: work or an order after which a mistake is dear.
    pub hold_point: String,
    /// Its day, where the book dates it.
    pub on: Option<Date>,
}

impl SettleBy {
    /// In words: `cabinets ordered, 8 Feb 2027`.
    pub fn words(&self) -> String {
        self.on.map_or_else(|| self.hold_point.clone(), |on| format!("{}, {on}", self.hold_point))
    }
}

/// One fault of a book.
///
/// The message says what is wrong and stands alone; how to mend it is in the remedy alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The rule's code, such as `fit/width`.
    pub rule: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// What it points at.
    pub place: Place,
    /// Other places that it speaks of.
    pub also: Vec<Also>,
    /// The room's folder name, where it concerns one.
    pub room: Option<String>,
    /// The selection or opening that it concerns, by the name in the book: for people, since two may
    /// have one name.
    pub item: Option<String>,
    /// Which of them that is: where its name is written, which nothing else in the book shares.
    pub about: Option<Span>,
    /// The option of the selection that it concerns, by its id, where it concerns one alone.
    pub option: Option<String>,
    /// What is wrong: a phrase, lower case, no full stop.
    pub message: String,
    /// It concerns an option that nobody has chosen yet, and would be a stop once it is chosen.
    pub bars: bool,
    /// It was a query, and became a stop because its hold point is past.
    pub past: bool,
    /// How to mend it.
    pub remedy: String,
    /// The published source of the figure that decided; empty where the book itself decides.
    pub source: String,
    /// The moment by which it must be settled.
    pub by: Option<SettleBy>,
    /// What can hurt someone, and whose word counts. A waiver never removes it.
    pub caution: Option<&'static str>,
    /// Set when a waiver in the book sets this finding aside.
    pub waived: Option<Waived>,
}

impl Finding {
    /// A finding of that rule, at that place; the rest is added with the methods below.
    pub fn new(rule: &'static str, severity: Severity, place: impl Into<Place>, message: impl Into<String>) -> Self {
        Self {
            rule,
            severity,
            place: place.into(),
            also: vec![],
            room: None,
            item: None,
            about: None,
            option: None,
            message: cut::cut(message.into()),
            bars: false,
            past: false,
            remedy: String::new(),
            source: String::new(),
            by: None,
            caution: None,
            waived: None,
        }
    }

    /// Says how to mend it.
    #[must_use]
    pub fn remedy(mut self, remedy: impl Into<String>) -> Self {
        self.remedy = cut::cut(remedy.into());
        self
    }

    /// Points at another place too.
    #[must_use]
    pub fn also(mut self, span: Span, label: impl Into<String>) -> Self {
        self.also.push(Also { span, label: cut::cut(label.into()) });
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

    /// Says which selection or opening, or what else the book names, it is about.
    #[must_use]
    pub fn item(mut self, name: &Spanned<String>) -> Self {
        self.item = Some(name.value.clone());
        self.about = Some(name.span);
        self
    }

    /// Names what it is about, for people alone: a part of a run, say, at which no waiver can stand.
    #[must_use]
    pub fn named(mut self, item: impl Into<String>) -> Self {
        self.item = Some(item.into());
        self
    }

    /// Whether it stands in the way: a stop that nobody waived.
    pub fn stops(&self) -> bool {
        self.severity == Severity::Stop && self.waived.is_none()
    }
}

/// How many findings of each weight stand, and how many are waived.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Stops that nobody waived.
    pub stops: usize,
    /// Queries that nobody waived.
    pub queries: usize,
    /// Notes that nobody waived.
    pub notes: usize,
    /// Findings set aside by a waiver.
    pub waived: usize,
}

impl Counts {
    /// Counts a list of findings.
    pub fn of(findings: &[Finding]) -> Self {
        let mut counts = Self::default();
        for finding in findings {
            match (finding.waived.is_some(), finding.severity) {
                (true, _) => counts.waived += 1,
                (_, Severity::Stop) => counts.stops += 1,
                (_, Severity::Query) => counts.queries += 1,
                (_, Severity::Note) => counts.notes += 1,
            }
        }
        counts
    }
}
