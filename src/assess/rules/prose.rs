//! The prose of a rule's page, with its figures filled in.

use crate::assess::words::say_air;
use crate::finding::Value;
use crate::units::{Length, System, Weight};

/// From here on feet and inches tell a length better than inches alone.
const OF_ROOMS: Length = Length::from_inches(240);

/// How a length of rooms is written in a hole.
const IN_FEET: &str = " ft";

/// A page with each length of its prose, `{15"}`, and each weight, `{150 lb}`, in both systems, the given one first,
/// and each airflow, `{100 cfm}`, in the given one. A length in feet, `{6 ft}`, is one of rooms. Examples and what is
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
        match figure(hole, units) {
            Some(figure) => *page += &figure,
            None => *page += hole,
        }
        rest = after;
    }
    *page += rest;
}

/// What a hole holds, in a book's units.
fn figure(hole: &str, units: System) -> Option<String> {
    match (Length::parse(hole), Weight::parse(hole)) {
        (Ok(length), _) if length >= OF_ROOMS || hole.strip_suffix(IN_FEET).is_some() => {
            Some(Value::OfRoom(length, units).to_string())
        }
        (Ok(length), _) => Some(Value::Length(length, units).to_string()),
        (_, Ok(weight)) => Some(Value::Weight(weight, units).to_string()),
        _ => air(hole).map(|cfm| say_air(cfm, units).to_string()),
    }
}

/// An airflow in cubic feet a minute.
fn air(hole: &str) -> Option<u32> {
    hole.strip_suffix(" cfm")?.parse().ok()
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

    /// Source: 1 cfm is 1.699 m³/h, from the foot of 0.3048 m.
    #[test]
    fn an_airflow_stands_in_the_units_of_the_book() {
        assert_eq!(filled("at least {100 cfm}", System::Imperial), "at least 100 cfm");
        assert_eq!(filled("at least {100 cfm}", System::MetricOnly), "at least 170 m³/h");
    }

    /// Source: the pound is 0.453 592 37 kg and the foot 0.3048 m (international yard and pound agreement, 1959).
    #[test]
    fn weights_and_lengths_of_rooms_stand_in_the_units_of_the_book() {
        assert_eq!(filled("or {150 lb}", System::Imperial), "or 150 lb (≈ 68 kg)");
        assert_eq!(filled("or {150 lb}", System::MetricOnly), "or ≈ 68 kg");
        assert_eq!(filled("| {7 ft} |", System::ImperialOnly), "| 7'-0\" |");
        assert_eq!(filled("| {7 ft} |", System::MetricOnly), "| 2134 mm |");
    }

    #[test]
    fn every_figure_of_a_page_is_a_length_and_none_stands_in_one_system_alone() {
        for rule in RULES {
            let mut prose = prose(rule.docs);
            while let Some((before, hole, after)) = next(&prose) {
                assert!(figure(hole, System::Metric).is_some(), "{}: {hole}", rule.code);
                prose = format!("{before} {after}");
            }
            let words: Vec<&str> = prose.split_whitespace().collect();
            let is_figure = |word: &str| word.trim_start_matches('(').starts_with(|first: char| first.is_ascii_digit());
            let bare = |word: &&&str| is_figure(word) && word.contains(['"', '\'']);
            let metric =
                |pair: &&[&str]| is_figure(pair[0]) && pair[1].trim_matches(['(', ')', ',', '.', ':', ';']) == "mm";
            assert_eq!(words.iter().find(bare), None, "{}", rule.code);
            // A source is told as it is written.
            let told = prose.split("## Source").next().unwrap();
            let words_told: Vec<&str> = told.split_whitespace().collect();
            let of_one_system = |pair: &&[&str]| {
                let unit = pair[1].trim_matches(['(', ')', ',', '.', ':', ';']);
                is_figure(pair[0]) && matches!(unit, "cfm" | "ft" | "lb" | "m" | "kg")
            };
            assert_eq!(words_told.windows(2).find(of_one_system), None, "{}", rule.code);
            assert_eq!(words.windows(2).find(metric), None, "{}", rule.code);
        }
    }
}
