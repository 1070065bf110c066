//! Tells what the review checks, rule by rule.

use crate::assess::rules::{RULES, Rule};
use crate::finding::Severity;
use crate::views::html::Html;
use crate::views::rules::{RuleFamily, RuleText, RulesPage};
use crate::views::state::{Shape, State};

use super::{Teller, prose};

/// The families, in order, and what each is about.
const FAMILIES: [(&str, &str); 3] = [
    ("source", "The folder itself: files, keys and values"),
    ("complete", "Nothing needed is missing"),
    ("fit", "The chosen thing against its opening"),
];

impl Teller<'_> {
    /// `rules.html`.
    pub fn rules(&self) -> RulesPage {
        let (place, from, onward) = self.office_place("Q-10");
        let families = FAMILIES.iter().map(|(family, scope)| RuleFamily {
            name: format!("{family}/"),
            scope: Some((*scope).to_string()),
            rules: RULES.iter().filter(|rule| rule.code.starts_with(&format!("{family}/"))).map(text).collect(),
        });
        RulesPage {
            sheet: self.chrome.sheet(place, None, from, onward),
            lead: Html::text("Each rule with what it checks, why, how to mend it, and where its figures come from."),
            families: families.collect(),
        }
    }
}

fn text(rule: &Rule) -> RuleText {
    let shape = match rule.severity {
        Severity::Stop => Shape::Stop,
        Severity::Query => Shape::Query,
        Severity::Note => Shape::Note,
    };
    // Each line of the page begins with the blank that follows its comment mark.
    let docs: Vec<&str> = rule.docs.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
    let page = docs.join("\n");
    let body = page.trim().split_once('\n').map_or("", |(_, body)| body);
    RuleText {
        code: rule.code.into(),
        anchor: rule.code.replace('/', "-"),
        severity: State::new(shape, rule.severity.word()),
        summary: Html::text(rule.summary()),
        text: prose::blocks(body),
        source: Some(rule.sources.join("; ")),
        caution: rule.caution.map(Html::text),
    }
}
