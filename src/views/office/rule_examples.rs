//! A rule's example in the book's own units: the pages are written in inches.

use crate::book::System;
use crate::units::Length;

/// No length in an example is written longer: `10' 11 15/16"`.
const LONGEST: usize = 14;

const MILLIMETRE: i64 = 1_000_000;

/// A rule's page with the lengths of its examples in whole millimetres, for a book that is planned so.
pub fn in_units(page: &str, units: System) -> String {
    if units == System::Imperial {
        return page.to_string();
    }
    let mut fenced = false;
    let told = page.lines().map(|line| {
        let fence = line.trim_start().starts_with("```");
        fenced ^= fence;
        if fenced && !fence { in_millimetres(line) } else { line.to_string() }
    });
    told.collect::<Vec<_>>().join("\n")
}

/// A line with each length in feet and inches written in millimetres.
fn in_millimetres(line: &str) -> String {
    let mut told = String::new();
    let mut rest = line;
    let mut before = ' ';
    while let Some(first) = rest.chars().next() {
        let begins = first.is_ascii_digit() && !before.is_alphanumeric() && !matches!(before, '/' | '.' | '-');
        if let Some((length, after)) = length_at(rest).filter(|_| begins) {
            told += &format!("{} mm", (length.nanometres() + MILLIMETRE / 2) / MILLIMETRE);
            (rest, before) = (after, 'm');
            continue;
        }
        told.push(first);
        before = first;
        rest = rest.strip_prefix(first).unwrap_or_default();
    }
    told
}

/// The longest length in feet and inches that a text begins with, and what comes after it.
fn length_at(text: &str) -> Option<(Length, &str)> {
    let is_of_it = |letter: &char| letter.is_ascii_digit() || matches!(letter, ' ' | '/' | '.' | '\'' | '"');
    let reach = text.chars().take_while(is_of_it).take(LONGEST).count();
    let ends = text.char_indices().take(reach).filter(|(_, letter)| matches!(letter, '\'' | '"'));
    let ends: Vec<usize> = ends.map(|(at, letter)| at + letter.len_utf8()).collect();
    ends.into_iter().rev().find_map(|end| {
        let (written, after) = text.split_at_checked(end)?;
        Some((Length::parse(written).ok()?, after))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;

    /// Source: the inch is 25.4 mm (international yard and pound agreement, 1959).
    #[test]
    fn lengths_are_written_in_whole_millimetres_and_nothing_else_changes() {
        let told = [
            ("width: 30\"", "width: 762 mm"),
            ("size: 12' 0\" x 9' 6\"", "size: 3658 mm x 2896 mm"),
            ("[30 1/16\", 30\"]  # 1/8\" is usual", "[764 mm, 762 mm]  # 3 mm is usual"),
            ("needs: {power: 120 V 15 A 5-15}", "needs: {power: 120 V 15 A 5-15}"),
            ("on: 2027-01-14", "on: 2027-01-14"),
            ("model: \"K-30\"", "model: \"K-30\""),
        ];
        for (written, wanted) in told {
            assert_eq!(in_millimetres(written), wanted);
        }
        assert_eq!(in_units("30\"\n```yaml\na: 1\"\n```\n30\"", System::Metric), "30\"\n```yaml\na: 25 mm\n```\n30\"");
    }

    #[test]
    fn no_example_of_a_metric_book_is_in_inches_and_each_is_read_as_before() {
        for rule in RULES {
            let page: Vec<&str> = rule.docs.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
            let (page, told) = (page.join("\n"), in_units(&page.join("\n"), System::Metric));
            for (written, metric) in page.split("```").zip(told.split("```")).skip(1).step_by(2) {
                let inches = metric.char_indices().any(|(at, letter)| {
                    letter == '"' && metric[..at].ends_with(|before: char| before.is_ascii_digit())
                });
                assert!(!inches, "{}: {metric}", rule.code);
                let read =
                    |text: &str| serde_yaml::from_str::<serde_yaml::Value>(text.trim_start_matches("yaml")).is_ok();
                assert_eq!(read(written), read(metric), "{}: {metric}", rule.code);
            }
        }
    }
}
