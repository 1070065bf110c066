//! Tells what the review checks, rule by rule.

use crate::assess::rules::{RULES, Rule};
use crate::book::System;
use crate::finding::Severity;
use crate::views::html::Html;
use crate::views::rules::{RuleFamily, RuleText, RulesPage};
use crate::views::state::{Shape, State};

use super::examples::in_units;
use super::{PageBuilder, prose};

/// The families, in order, and what each is about.
const FAMILIES: [(&str, &str); 15] = [
    ("source", "The folder itself: files, keys and values"),
    ("complete", "Nothing needed is missing"),
    ("fit", "The chosen thing against its opening"),
    ("service", "Power, gas, water and air"),
    ("clear", "The room: to pass, to work, to sit, to wash"),
    ("top", "Counters and islands"),
    ("light", "Light where it is needed, at the height where it hangs well"),
    ("run", "Cabinets and fillers along a wall"),
    ("store", "What is kept where"),
    ("finish", "Colours, hands, edges and joints"),
    ("order", "What is ordered when, and how much of it"),
    ("money", "Prices against allowances"),
    ("depends", "What rests on what"),
    ("waive", "What was set aside"),
    ("approve", "What was signed, and what changed since"),
];

impl PageBuilder<'_> {
    /// `rules.html`.
    pub fn rules(&self) -> RulesPage {
        let (place, from, onward) = self.office_place("Q-10");
        let units = self.subject.book.project.units;
        let with_rules = FAMILIES.iter().filter(|(family, _)| RULES.iter().any(|rule| is_of(rule, family)));
        let families = with_rules.map(|(family, scope)| RuleFamily {
            name: format!("{family}/"),
            scope: Some((*scope).to_string()),
            rules: RULES.iter().filter(|rule| is_of(rule, family)).map(|rule| text(rule, units)).collect(),
        });
        RulesPage {
            sheet: self.chrome.sheet(place, None, from, onward),
            lead: Html::text("Each rule with what it checks, why, how to mend it, and where its figures come from."),
            families: families.collect(),
        }
    }
}

fn is_of(rule: &Rule, family: &str) -> bool {
    rule.code.split_once('/').is_some_and(|(own, _)| own == family)
}

fn text(rule: &Rule, units: System) -> RuleText {
    let shape = match rule.severity {
        Severity::Stop => Shape::Stop,
        Severity::Query => Shape::Query,
        Severity::Note => Shape::Note,
    };
    // Each line of the page begins with the blank that follows its comment mark.
    let docs: Vec<&str> = rule.docs.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
    let page = in_units(&docs.join("\n"), units);
    let body = page.trim().split_once('\n').map_or("", |(_, body)| body);
    RuleText {
        code: rule.code.into(),
        anchor: rule.code.replace('/', "-"),
        severity: State::new(shape, rule.severity.word()),
        summary: Html::text(rule.summary()),
        text: prose::blocks(body),
        source: Some(rule.sources.join("; ")),
        caution: rule.caution.map(|caution| Html::text(caution.words())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_is_of_a_family_that_is_told() {
        for rule in RULES {
            assert!(FAMILIES.iter().any(|(family, _)| is_of(rule, family)), "{}", rule.code);
        }
    }
}
