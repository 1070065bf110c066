//! The page of a rule.

use crate::assess::rules::{RULES, Rule, can_be_waived};

use crate::units::System;

use super::page::{cut, entry, heading, of_comment, paragraph};

/// Every rule with its fault in a line.
pub fn all() -> String {
    let mut text = heading("Rules");
    for rule in RULES {
        text += &entry(rule.code.text(), rule.summary());
    }
    text + "\n"
}

/// A rule's page.
pub fn page(rule: &Rule, units: System) -> String {
    let mut text = heading(&format!("{} ({})", rule.code, rule.severity.word()));
    text += &of_comment(&rule.page(units));
    if !rule.sources.is_empty() {
        text += &paragraph(&format!("Figures from: {}.", rule.sources.join("; ")));
    }
    if let Some(caution) = rule.caution {
        text += &heading("Caution");
        text += &paragraph(&format!("{} A waiver never removes this.", caution.caution()));
    }
    text += &waiving(rule);
    text
}

fn waiving(rule: &Rule) -> String {
    if !can_be_waived(rule.code) {
        return heading("Waiving") + &paragraph("What can't be read can't be trusted: this finding can't be waived.");
    }
    let line = format!("    waive: [{{rule: {}, because: …, by: …, on: 2027-01-12}}]", rule.code);
    heading("Waiving")
        + &paragraph(
            "In the selection, the opening, the room or the book that it concerns; shown to whoever it concerns:",
        )
        + &cut(&line)
}
