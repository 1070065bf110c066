//! What the review checks: each rule's own page of text, for the office.

use crate::assess::rules::examples::with_primes;
use crate::assess::rules::{RULES, Rule};
use crate::book::System;
use crate::finding::{Family, Severity};
use crate::views::pages::PageBuilder;
use crate::views::shared::html::Html;
use crate::views::shared::prose;
use crate::views::shared::sheet::{Sheet, on_sheet};
use crate::views::shared::state::{State, StateShape};
use serde::Serialize;

/// The families, in order, and what each is about.
const FAMILIES: [(Family, &str); 15] = [
    (Family::Source, "The folder itself: files, keys and values"),
    (Family::Complete, "Nothing needed is missing"),
    (Family::Fit, "The chosen thing against its opening"),
    (Family::Service, "Power, gas, water and air"),
    (Family::Clear, "The room: to pass, to work, to sit, to wash"),
    (Family::Top, "Counters and islands"),
    (Family::Light, "Light where it is needed, at the height where it hangs well"),
    (Family::Run, "Cabinets and fillers along a wall"),
    (Family::Store, "What is kept where"),
    (Family::Finish, "Colours, hands, edges and joints"),
    (Family::Order, "What is ordered when, and how much of it"),
    (Family::Money, "Prices against allowances"),
    (Family::Depends, "What rests on what"),
    (Family::Waive, "What was set aside"),
    (Family::Approve, "What was signed, and what changed since"),
];

/// `rules.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RulesPage {
    pub sheet: Sheet,
    pub lead: Html,
    pub families: Vec<RuleFamily>,
}

/// Rules that belong together.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RuleFamily {
    pub name: String,
    pub scope: Option<String>,
    pub rules: Vec<RuleText>,
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RuleText {
    /// `fit/width`.
    pub code: String,
    /// The code as a fragment that a link may name: `fit-width`.
    pub anchor: String,
    pub severity: State,
    pub summary: Html,
    /// The rule's documentation, as HTML made from Markdown.
    pub text: Html,
    pub source: Option<String>,
    pub caution: Option<Html>,
}

on_sheet!(RulesPage);

impl PageBuilder<'_> {
    /// `rules.html`.
    pub fn rules(&self) -> RulesPage {
        let (place, from, onward) = self.office_place("Q-10");
        let units = self.subject.book.project.units;
        let with_rules = FAMILIES.iter().filter(|(family, _)| RULES.iter().any(|rule| rule.code.family() == *family));
        let families = with_rules.map(|(family, scope)| RuleFamily {
            name: format!("{}/", family.word()),
            scope: Some((*scope).to_string()),
            rules: RULES.iter().filter(|rule| rule.code.family() == *family).map(|rule| text(rule, units)).collect(),
        });
        RulesPage {
            sheet: self.chrome.sheet(place, None, from, onward),
            lead: Html::text("Each rule with what it checks, why, how to mend it, and where its figures come from."),
            families: families.collect(),
        }
    }
}

fn text(rule: &Rule, units: System) -> RuleText {
    let shape = match rule.severity {
        Severity::Stop => StateShape::Stop,
        Severity::Query => StateShape::Query,
        Severity::Note => StateShape::Note,
    };
    // Each line of the page begins with the blank that follows its comment mark.
    let page = rule.page(units);
    let docs: Vec<&str> = page.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
    let page = with_primes(&docs.join("\n"));
    let body = page.trim().split_once('\n').map_or("", |(_, body)| body);
    RuleText {
        code: rule.code.text().into(),
        anchor: rule.code.anchor(),
        severity: State::new(shape, rule.severity.word()),
        summary: Html::text(rule.summary()),
        text: prose::blocks(body),
        source: Some(rule.sources.join("; ")),
        caution: rule.caution.map(|hazard| Html::text(hazard.caution())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_is_of_a_family_that_is_told() {
        for rule in RULES {
            assert!(FAMILIES.iter().any(|(family, _)| rule.code.family() == *family), "{}", rule.code);
        }
    }
}
