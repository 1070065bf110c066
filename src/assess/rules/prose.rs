//! The prose of a rule's page, with its figures filled in.

use std::fmt::Write as _;

use crate::finding::Value;
use crate::units::{Length, System};

/// A page with each length of its prose, `{15"}`, in both systems, the given one first. Examples and what is
/// quoted stay as they are.
pub fn filled(docs: &str, units: System) -> String {
    let mut page = String::new();
    for (block, text) in docs.split("```").enumerate() {
        page += if block > 0 { "```" } else { "" };
        for (at, part) in text.split('`').enumerate() {
            page += if at > 0 { "`" } else { "" };
            match block % 2 == 0 && at % 2 == 0 {
                true => fill(part, units, &mut page),
                false => page += part,
            }
        }
    }
    page
}

fn fill(prose: &str, units: System, page: &mut String) {
    let mut rest = prose;
    while let Some((before, hole, after)) = next(rest) {
        *page += before;
        match Length::parse(hole) {
            Ok(length) => _ = write!(page, "{}", Value::Length(length, units)),
            Err(_) => *page += hole,
        }
        rest = after;
    }
    *page += rest;
}

/// What stands before the next hole, what stands in it, and what comes after.
fn next(prose: &str) -> Option<(&str, &str, &str)> {
    let (before, rest) = prose.split_once('{')?;
    let (hole, after) = rest.split_once('}')?;
    Some((before, hole, after))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;

    /// What a page says outside its examples and what it quotes.
    fn prose(docs: &str) -> String {
        let text: String = docs.split("```").step_by(2).collect();
        text.split('`').step_by(2).collect::<Vec<_>>().join(" ")
    }

    /// Source: the inch is 25.4 mm (international yard and pound agreement, 1959).
    #[test]
    fn a_figure_stands_in_both_systems_that_of_the_book_first() {
        let docs = "at least {15\"} of `{edge: 72\"}`\n```yaml\nwide: {at: 1\"}\n```\nand {3'}";
        let told = "at least 15\" (381 mm) of `{edge: 72\"}`\n```yaml\nwide: {at: 1\"}\n```\nand 36\" (914 mm)";
        assert_eq!(filled(docs, System::Imperial), told);
        assert!(filled(docs, System::Metric).starts_with("at least 381 mm (15\") of"));
    }

    #[test]
    fn every_figure_of_a_page_is_a_length_and_none_stands_in_one_system_alone() {
        for rule in RULES {
            let mut prose = prose(rule.docs);
            while let Some((before, hole, after)) = next(&prose) {
                assert!(Length::parse(hole).is_ok(), "{}: {hole}", rule.code);
                prose = format!("{before} {after}");
            }
            let words: Vec<&str> = prose.split_whitespace().collect();
            let is_figure = |word: &str| word.trim_start_matches('(').starts_with(|first: char| first.is_ascii_digit());
            let bare = |word: &&&str| is_figure(word) && word.contains(['"', '\'']);
            let metric =
                |pair: &&[&str]| is_figure(pair[0]) && pair[1].trim_matches(['(', ')', ',', '.', ':', ';']) == "mm";
            assert_eq!(words.iter().find(bare), None, "{}", rule.code);
            assert_eq!(words.windows(2).find(metric), None, "{}", rule.code);
        }
    }
}
