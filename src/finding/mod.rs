//! What we say about a book: findings, their severity and the source behind them.

mod code;
mod fix;
mod hazard;
mod remark;
mod subject;

pub(crate) use crate::units::phrase;
pub use crate::units::{Phrase, Piece, Say, Value};
pub use code::{Code, Family};
pub use fix::Fix;
pub use hazard::Hazard;
pub use remark::{Also, Remark};
pub use subject::{Id, Subject};

use std::ops::{Deref, DerefMut};

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
    /// When.
    pub on: Date,
    /// The milestone or the day after which it no longer holds.
    pub until: Option<WaivedUntil>,
}

/// After what a waiver no longer holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WaivedUntil {
    /// A day.
    Day(Date),
    /// A milestone, as the book calls it.
    Milestone(String),
}

/// As a book writes it: `2027-06-01`, `cabinets set`.
impl std::fmt::Display for WaivedUntil {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Day(day) => f.write_str(&day.iso()),
            Self::Milestone(name) => f.write_str(name),
        }
    }
}

impl Waived {
    /// Who, when and until when: `Ines Tarrow, 2027-01-12, until cabinets set`.
    pub fn words(&self) -> String {
        let until = self.until.as_ref().map_or(String::new(), |until| format!(", until {until}"));
        format!("{}, {}{until}", self.by, self.on.iso())
    }
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

/// What a rule says about a book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The rule's code, such as `fit/width`.
    pub rule: Code,
    /// What was met, and where: its fields are read as if they were the finding's own.
    pub remark: Remark,
    /// It was a query, and became a stop because its hold point is past.
    pub past: bool,
    /// The moment by which it must be settled.
    pub by: Option<SettleBy>,
    /// Set when a waiver in the book sets this finding aside.
    pub waived: Option<Box<Waived>>,
}

impl Deref for Finding {
    type Target = Remark;

    fn deref(&self) -> &Remark {
        &self.remark
    }
}

impl DerefMut for Finding {
    fn deref_mut(&mut self) -> &mut Remark {
        &mut self.remark
    }
}

impl Finding {
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
