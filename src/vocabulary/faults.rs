//! Gathers the faults of one file, each with its room and item.

use crate::finding::{Code, Finding, Phrase, Remark, Subject, phrase};
use crate::source::yaml::Node;
use crate::source::{Span, Spanned};
use crate::units::Currency;

use super::FieldType;

/// The faults met so far, and what is being read.
#[derive(Debug)]
pub struct Faults {
    /// The faults.
    pub findings: Vec<Finding>,
    /// The room being read, by its folder.
    pub room: Option<String>,
    /// The name of the selection or opening being read.
    pub item: Option<Spanned<String>>,
    /// The currency of every amount.
    pub currency: Currency,
    /// The key whose value is being read.
    pub key: &'static str,
}

impl Default for Faults {
    fn default() -> Self {
        Self { findings: vec![], room: None, item: None, currency: Currency::USD, key: "" }
    }
}

impl Faults {
    /// Faults of a room.
    pub fn of_room(room: &str) -> Self {
        Self { room: Some(room.to_string()), ..Self::default() }
    }

    /// The same, of a book whose amounts are in that currency.
    #[must_use]
    pub fn in_currency(self, currency: Currency) -> Self {
        Self { currency, ..self }
    }

    /// Adds a stop of that rule.
    pub fn stop(&mut self, rule: Code, span: Span, message: impl Into<Phrase>, remedy: impl Into<Phrase>) {
        self.add(Remark::stop(span, message).remedy(remedy).of(rule));
    }

    /// Adds a finding, with the room and item being read.
    pub fn add(&mut self, mut finding: Finding) {
        if finding.room.is_none() {
            finding.room.clone_from(&self.room);
        }
        if let Some(item) = self.item.as_ref().filter(|_| finding.subject == Subject::Whole) {
            finding.remark = finding.remark.thing(item);
        }
        self.findings.push(finding);
    }

    /// A value that is not of the shape wanted.
    pub fn wrong_type(&mut self, node: &Node, shape: &FieldType) {
        let message = phrase!("this should be {}, and is {}", shape.name(), node.what());
        self.stop(Code::WRONG_TYPE, node.span, message, phrase!("write {}", shape.wanted()));
    }
}
