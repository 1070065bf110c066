//! Where a check puts what it met: a place that knows the rule, so that no check names one.

use crate::finding::{Finding, Remark};

use super::Rule;

/// The findings of one rule on a book.
#[derive(Debug)]
pub struct Findings<'r> {
    rule: &'r Rule,
    found: Vec<Finding>,
}

impl<'r> Findings<'r> {
    /// None yet, of that rule.
    pub(super) fn of(rule: &'r Rule) -> Self {
        Self { rule, found: vec![] }
    }

    /// Adds what was met. What does not say how it is mended is mended as the rule says.
    pub fn push(&mut self, remark: Remark) {
        let usual = self.rule.remedy.filter(|_| remark.remedy.is_empty());
        let remark = match usual {
            Some(usual) => remark.remedy(usual),
            None => remark,
        };
        self.found.push(remark.of(self.rule.code));
    }

    /// All that was met, in its order.
    pub(super) fn told(self) -> Vec<Finding> {
        self.found
    }
}

impl Extend<Remark> for Findings<'_> {
    fn extend<T: IntoIterator<Item = Remark>>(&mut self, remarks: T) {
        remarks.into_iter().for_each(|remark| self.push(remark));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;
    use crate::source::Place;

    #[test]
    fn a_remark_becomes_a_finding_of_the_rule_and_is_mended_as_the_rule_says_where_it_says_nothing() {
        let rule = RULES.iter().find(|rule| rule.remedy.is_some()).unwrap();
        let remark = || Remark::stop(Place::Path("book.yaml".into()), "planted");
        let mut findings = Findings::of(rule);
        findings.push(remark());
        findings.extend([remark().remedy("do otherwise")]);
        let told = findings.told();
        assert!(told.iter().all(|finding| finding.rule == rule.code));
        assert_eq!(
            told.iter().map(|one| one.remedy.text()).collect::<Vec<_>>(),
            [rule.remedy.unwrap(), "do otherwise"]
        );
    }
}
