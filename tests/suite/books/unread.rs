//! A length that can't be read in a room's plan is one fault, and is told once: nothing else follows from it.

use std::collections::BTreeSet;

use bookmatch::finding::Family;

use super::shelf::{TODAY, Texts, Whole, books_in, place, review_on, shelf};

/// The day on which the books of an evening were written.
const THE_EVENING: &str = "2026-11-29";
/// Of so many lengths one is tried: the test is of the class, not of each.
const ONE_OF: usize = 4;

/// Where the lengths of a text begin and end that stand alone behind a key: `width: 24"`, `sill: 900 mm`.
fn lengths(text: &str) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    for (at, _) in text.match_indices(": ") {
        let (start, rest) = (at + 2, &text[at + 2..]);
        let long = rest.find([',', '}', '\n']).unwrap_or(rest.len());
        let value = &rest[..long];
        let is_length = value.starts_with(|letter: char| letter.is_ascii_digit())
            && (value.ends_with('"') || value.ends_with(" mm"))
            && value.chars().all(|letter| letter.is_ascii_digit() || " /\"m".contains(letter));
        if is_length {
            found.push((start, start + long));
        }
    }
    found
}

/// Where the words and counts of a text begin and end that stand alone behind a key: `pipes: covered`, `count: 2`.
fn words(text: &str) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    for (at, _) in text.match_indices(": ") {
        let (start, rest) = (at + 2, &text[at + 2..]);
        let long = rest.find([',', '}', '\n']).unwrap_or(rest.len());
        let is_plain = |letter: char| letter.is_ascii_alphanumeric() || letter == ' ' || letter == '-';
        if long > 0 && rest[..long].chars().all(is_plain) {
            found.push((start, start + long));
        }
    }
    found
}

/// Of so many words one is tried; most stand in fields that take any.
const ONE_WORD_OF: usize = 3;

#[test]
fn a_word_of_a_room_that_cannot_be_read_brings_no_other_finding() {
    let evenings = books_in(&place().join("evenings")).into_iter().map(|book| (book, THE_EVENING));
    let (mut tried, mut faults) = (0, Vec::new());
    for (book, day) in shelf().into_iter().map(|book| (book, TODAY)).chain(evenings) {
        let told = |files: &Texts| -> BTreeSet<(String, String)> {
            let found = review_on(files, day).findings.into_iter();
            found.map(|finding| (finding.rule.text().to_string(), finding.message.text().to_string())).collect()
        };
        let Whole { name, files } = book;
        let before = told(&files);
        for (path, text) in files.iter().filter(|(path, _)| path.ends_with("/room.yaml")) {
            for (start, end) in words(text).into_iter().step_by(ONE_WORD_OF) {
                let unread = format!("{}yellow zebra{}", &text[..start], &text[end..]);
                let after = told(&files.clone().into_iter().chain([(path.clone(), unread)]).collect());
                let new: Vec<_> = after.difference(&before).collect();
                // A field that takes any words has understood these.
                if !new.iter().any(|(rule, _)| rule == "source/wrong-type") {
                    continue;
                }
                let line = text[..start].matches('\n').count() + 1;
                let others = new.iter().filter(|(rule, _)| !rule.starts_with("source/"));
                let of = &text[start..end];
                faults.extend(others.map(|(rule, message)| format!("{name} {path}:{line}: `{of}`: {rule}: {message}")));
                tried += 1;
            }
        }
    }
    println!("{tried} words made unreadable");
    assert!(tried >= 50, "only {tried} words");
    assert!(faults.is_empty(), "{} follow-ons:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn a_length_of_a_room_that_cannot_be_read_brings_no_other_finding() {
    let evenings = books_in(&place().join("evenings")).into_iter().map(|book| (book, THE_EVENING));
    let (mut tried, mut faults) = (0, Vec::new());
    for (book, day) in shelf().into_iter().map(|book| (book, TODAY)).chain(evenings) {
        let told = |files: &Texts| -> BTreeSet<(String, String)> {
            let found = review_on(files, day).findings.into_iter();
            let others = found.filter(|finding| finding.rule.family() != Family::Source);
            others.map(|finding| (finding.rule.text().to_string(), finding.message.text().to_string())).collect()
        };
        let Whole { name, files } = book;
        let before = told(&files);
        for (path, text) in files.iter().filter(|(path, _)| path.ends_with("/room.yaml")) {
            for (start, end) in lengths(text).into_iter().step_by(ONE_OF) {
                // A number of two points is none, in a field of lengths and in the words of a pipe.
                let unread = format!("{}'1.2.3 mm'{}", &text[..start], &text[end..]);
                let after = told(&files.clone().into_iter().chain([(path.clone(), unread)]).collect());
                let line = text[..start].matches('\n').count() + 1;
                let new = after.difference(&before);
                faults.extend(new.map(|(rule, message)| format!("{name} {path}:{line}: {rule}: {message}")));
                tried += 1;
            }
        }
    }
    println!("{tried} lengths made unreadable");
    assert!(tried >= 100, "only {tried} lengths");
    assert!(faults.is_empty(), "{} follow-ons:\n{}", faults.len(), faults.join("\n"));
}
